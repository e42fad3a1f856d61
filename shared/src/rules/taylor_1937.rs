//! Taylor 1937: the stability number of a slope in clay.

pub mod vertical_cut;
