//! EN 1993-1-1:2005: design of steel structures.

pub mod buckling;
pub mod material;
pub mod resistance;
