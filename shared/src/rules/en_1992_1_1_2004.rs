//! EN 1992-1-1:2004, design of concrete structures: strength by age, maturity, modulus, least steel.

pub mod maturity;
pub mod minimum_steel;
pub mod strength;
pub mod strength_by_age;
