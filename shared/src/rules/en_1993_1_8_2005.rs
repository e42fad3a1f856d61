//! EN 1993-1-8:2005, design of joints: base plates, equivalent T-stubs, fillet welds.

pub mod base_plate;
pub mod t_stub;
pub mod weld;

use crate::source::{Source, Standing};

/// A clause, and how it was met.
const fn clause(clause: &'static str, standing: Standing) -> Source {
    Source::new("EN 1993-1-8", "2005", clause, standing)
}
