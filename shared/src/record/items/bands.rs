//! Bands of figures, written lowest first.

use crate::figure::Unit;
use crate::record::item::{Answer, Asks, Band};
use crate::record::verdict::Verdict;

/// Bands in the making.
pub(super) struct Bands(Vec<Band>);

/// Figures up to a limit, and what follows from them.
pub(super) fn up_to(limit: f64, verdict: Verdict) -> Bands {
    Bands(vec![Band {
        up_to: Some(limit),
        verdict,
    }])
}

/// As the plan has it, up to a limit.
pub(super) fn fine_to(limit: f64) -> Bands {
    up_to(limit, Verdict::Within)
}

impl Bands {
    /// The next band. A limit that is not above the last one adds nothing.
    pub(super) fn up_to(mut self, limit: f64, verdict: Verdict) -> Self {
        if self
            .0
            .last()
            .and_then(|band| band.up_to)
            .is_some_and(|last| limit > last)
        {
            self.0.push(Band {
                up_to: Some(limit),
                verdict,
            });
        }
        self
    }

    /// As the plan has it, up to a limit.
    pub(super) fn fine_to(self, limit: f64) -> Self {
        self.up_to(limit, Verdict::Within)
    }

    /// Everything above the last limit.
    pub(super) fn above(mut self, verdict: Verdict) -> Vec<Band> {
        self.0.push(Band {
            up_to: None,
            verdict,
        });
        self.0
    }
}

/// A figure of a unit within what can be meant.
pub(super) fn number(unit: Unit, meant: [f64; 2], bands: Vec<Band>) -> Asks {
    Asks::Number {
        unit,
        least: meant[0],
        most: meant[1],
        none: None,
        bands,
    }
}

/// The same, or an answer in place of it.
pub(super) fn number_or(unit: Unit, meant: [f64; 2], none: Answer, bands: Vec<Band>) -> Asks {
    Asks::Number {
        unit,
        least: meant[0],
        most: meant[1],
        none: Some(none),
        bands,
    }
}
