//! Mechanics of a column: beams, heat and oscillators, derived here and checked against books.

pub mod beam_element;
pub mod cantilever;
pub mod guider;
pub mod heat;
pub mod mount;
pub mod oscillator;
pub mod settlement;
