//! Terzaghi: Theoretical Soil Mechanics, 1943.

pub mod vertical_cut;
