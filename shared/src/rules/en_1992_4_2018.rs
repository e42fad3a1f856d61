//! EN 1992-4:2018, design of fastenings for use in concrete: what a ring of bonded studs asks for.
//!
//! The text of the standard was not at hand in full; each clause says how it was met.

pub mod bond;
pub mod cone;
pub mod edge;
pub mod factors;
pub mod interaction;
pub mod shear;
pub mod splitting;
pub mod steel;

use crate::source::{Source, Standing};

/// A clause known from memory and confirmed by a published example or worksheet.
const fn clause(clause: &'static str, standing: Standing) -> Source {
    Source::new("EN 1992-4", "2018", clause, standing)
}
