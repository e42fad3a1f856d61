//! EN 206-1:2000, concrete: exposure classes, and the concrete as it comes off the lorry.

pub mod exposure;
pub mod fresh;
