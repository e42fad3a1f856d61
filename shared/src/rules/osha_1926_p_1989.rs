//! 29 CFR 1926 Subpart P, Excavations, as published in 1989 and in force since.

pub mod distances;
pub mod slopes;
