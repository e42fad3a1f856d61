//! ACI 318-19 chapter 17, anchoring to concrete: what a ring of bonded studs asks for, inch parts by the inch edition and metric ones
//! by the SI edition, ACI 318M.
//!
//! The text of the code was not at hand in full; each clause says how it was met.

pub mod bond;
pub mod breakout;
pub mod edition;
pub mod exposure;
pub mod factors;
pub mod shear;
pub mod steel;

use crate::source::{Source, Standing};

/// A clause, and how it was met.
const fn clause(clause: &'static str, standing: Standing) -> Source {
    Source::new("ACI 318", "19", clause, standing)
}
