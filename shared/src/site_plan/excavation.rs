//! Excavation.

use crate::field::{Problem, choice, section};
use crate::site_plan::SitePlan;

choice! {
    /// Who digs.
    pub enum Method {
        /// Spade and barrow.
        Hand = "hand",
        /// A digger.
        Machine = "machine",
    }
}

choice! {
    /// Sides of the pit.
    pub enum Sides {
        /// Cut straight, concrete poured against the ground.
        Vertical = "vertical",
        /// Battered back to a stable slope, concrete poured in a form and backfilled.
        Sloped = "sloped",
    }
}

section! {
    /// Excavation.
    pub struct Excavation in excavation {
        numbers {
            /// Deepest that can be dug.
            max_depth_m: Metre, 0.1..=6.0, "less than 0.1 is no pit, and deeper than 6 needs an engineer's shoring";
            /// Longest pit there is room for, along x (east).
            max_length_m: Metre, 0.2..=20.0, "a block shorter than 0.2 takes no studs, one longer than 20 is a floor";
            /// Widest pit there is room for, along y (north).
            max_width_m: Metre, 0.2..=20.0, "a block narrower than 0.2 takes no studs, one wider than 20 is a floor";
            /// Room to work around the block where the pit is battered or the block shuttered.
            working_space_m: Metre, 0.0..=2.0, "more than two metres is no working space but another pit";
            /// Volume of a barrow load.
            barrow_m3: CubicMetre, 0.02..=0.3, "a bucket is 0.02 and nobody pushes 0.3";
            /// Volume of a skip.
            skip_m3: CubicMetre, 1.0..=40.0, "skips are hired from about one to forty cubic metres";
        }
        counts {}
        others {
            /// Who digs.
            method: Option<Method>,
            /// Sides of the pit.
            sides: Option<Sides>,
        }
    }
}

/// Answers about the pit that contradict each other.
#[must_use]
pub fn contradictions(_plan: &SitePlan) -> Vec<Problem> {
    Vec::new()
}
