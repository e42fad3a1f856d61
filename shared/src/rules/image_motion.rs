//! What movement does to an image: scale, the star's places and its width, blur within an exposure, drift of a polar axis.

pub mod fit;
pub mod places;
pub mod polar;
pub mod scale;
pub mod width;
