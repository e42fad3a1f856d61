//! What movement does to an image: scale, width of a star, blur within an exposure, drift of a polar axis.

pub mod polar;
pub mod scale;
pub mod width;
