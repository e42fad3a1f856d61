//! What stands in the way of a plan that may not be built or is not still, whatever is chosen.

use serde::Serialize;

use crate::field::Path;
use crate::figure::Unit;

/// One thing that stands in the way.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Obstacle {
    /// What it is.
    pub what: String,
    /// The answer that it is about; null where it is no single one.
    pub field: Option<Path>,
    /// How much there is; for a check, what is asked of it.
    pub now: Option<f64>,
    /// How much would do, everything else as it is; null where no amount that was tried does.
    pub would_do: Option<f64>,
    /// Unit of both.
    pub unit: Unit,
    /// The same in a sentence.
    pub says: String,
}
