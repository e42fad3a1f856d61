//! EN 206-1:2000, concrete: exposure classes.

pub mod exposure;
