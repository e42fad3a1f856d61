//! ACI 211.1-91, proportions of concrete.

pub mod absolute_volume;
