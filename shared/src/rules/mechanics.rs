//! Mechanics of a column: beams and heat, derived here and checked against books.

pub mod cantilever;
pub mod heat;
