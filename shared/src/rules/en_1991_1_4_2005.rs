//! EN 1991-1-4:2005, wind actions.

pub mod cylinder;
pub mod gust;
pub mod turbulence;
