//! ACI 207.2R-07, thermal and volume change effects in mass concrete.

pub mod adiabatic_rise;
