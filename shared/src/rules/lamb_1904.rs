//! Lamb 1904, Philosophical Transactions of the Royal Society A 203: waves of a load on the surface of a half-space.

pub mod slope;
