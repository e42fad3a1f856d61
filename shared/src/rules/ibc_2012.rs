//! International Building Code, 2012 edition: presumed values of ground.

pub mod presumptive;
pub mod sliding;
