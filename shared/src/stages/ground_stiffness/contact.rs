//! Side contact: how much of what a perfect grip of the ground would give the block has.
//!
//! Full bonding of the sides is the most that can be had, not the middle. Near the surface some depth `z0` is lost to topsoil,
//! frost, drying or a face that ran, and below it the grip has a quality `c`: `K = K_free + c (K(z0) − K_free)`, each K from
//! the solver. Two field cases bound it, a backfilled model building with 0.67 to 0.80 of the bonded rocking stiffness and a
//! mat with 0.70 (`docs/ground-validation.md`). Nothing was found for concrete cast against cut ground: the cases are
//! judgement between these, and that of which nothing is known gives a metre cube 0.50, 0.73 and 1.00.

mod case;
mod curve;

use serde::Serialize;

use super::Reach;
use crate::halfspace::{Linings, Shape, Solved};
use crate::source::{Source, Standing};
use crate::units::Spread;

pub use case::{Case, of};
use curve::Curve;

/// Where the range comes from.
pub const SOURCE: Source = Source::new(
    "Side contact",
    "",
    "judgement between Sugawara and others 1997 (abstract) and Tileylioglu, Stewart and Nigbor 2011 (second-hand); docs/ground-validation.md",
    Standing::Judgement,
);

/// Least scatter of the logarithm where nobody stated the contact: two tests are few.
const LEAST_SD_LN: f64 = 0.22;
/// A triangle's range over its standard deviation, its middle half way.
const TRIANGLE: f64 = 24.0;
/// Standard deviations between the 5th and the 95th of a hundred.
const NINE_TENTHS: f64 = 3.29;
/// So far off the block's side the weight stands by which the lean's scatter is judged.
const STEP_M: f64 = 0.5;
/// In the order of the axes: about x, about y.
const ROCKING: [usize; 2] = [3, 4];

/// The rocking stiffness about the softer axis over that of a block bonded from the surface to its base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SideContact {
    /// At worst.
    pub low: f64,
    /// The middle, with which every typical figure is found.
    pub typical: f64,
    /// At best.
    pub high: f64,
    /// Which case it is, in words.
    pub case: &'static str,
    /// Depth whose grip is lost: `low` at the soft end.
    pub lost_depth_m: Spread<f64>,
    /// Quality of the grip below it.
    pub quality_ratio: Spread<f64>,
    /// Scatter of the rocking stiffness's logarithm by the contact alone.
    pub sd_ln: f64,
    /// The same in the order of the axes.
    #[serde(skip)]
    pub axis_sd_ln: [f64; 6],
    /// The same of the lean under a weight beside the block.
    #[serde(skip)]
    pub lean_sd_ln: f64,
}

impl SideContact {
    /// What is counted on, in a sentence.
    pub fn sentence(&self) -> String {
        if self.low >= self.typical && self.typical < 0.97 {
            return "No more of the sides is held than was said: nothing is counted on beyond it."
                .to_owned();
        }
        format!(
            "We count on {} of what a perfect grip of the ground would give; at worst {}.",
            share(self.typical),
            share(self.low).trim_start_matches("about ")
        )
    }
}

/// A share in words.
fn share(ratio: f64) -> &'static str {
    match ratio {
        ratio if ratio > 0.97 => "all",
        ratio if ratio > 0.82 => "about nine tenths",
        ratio if ratio > 0.70 => "about three quarters",
        ratio if ratio > 0.58 => "about two thirds",
        ratio if ratio > 0.45 => "about a half",
        ratio if ratio > 0.36 => "about two fifths",
        ratio if ratio > 0.28 => "about a third",
        ratio if ratio > 0.22 => "about a quarter",
        ratio if ratio > 0.15 => "about a sixth",
        _ => "about a tenth",
    }
}

/// The shape of the middle contact: the block's own, less the depth that is lost.
pub fn middle(case: &Case, geometry: &Shape) -> Shape {
    Shape {
        contact_from_m: geometry
            .contact_from_m
            .max(case.lost_m.typical)
            .min(geometry.contact_to_m),
        ..*geometry
    }
}

/// Finds the range; none where the comparison has no solution.
pub fn range(case: &Case, geometry: &Shape, reach: &Reach) -> Option<SideContact> {
    let linings = reach.pure.linings()?;
    let softer = if geometry.length_m <= geometry.width_m {
        ROCKING[1]
    } else {
        ROCKING[0]
    };
    let parts = Parts {
        case,
        geometry,
        pure: &reach.pure,
        linings,
    };
    let bonded = linings.bonded.stiffness_over_g[softer][softer];
    let corner = |lost: f64, quality: f64| parts.held(softer, lost, quality) / bonded;
    let typical = reach.solved.stiffness_over_g[softer][softer] / bonded;
    let own: [f64; 6] = std::array::from_fn(|axis| parts.sd_ln(axis));
    // The least scatter is one of rocking; the other motions feel the sides less and have their part of it.
    let rocking = own[softer];
    let least = if case.is_stated || parts.is_free() {
        rocking
    } else {
        rocking.max(LEAST_SD_LN)
    };
    let times = if rocking > 0.0 { least / rocking } else { 0.0 };
    let axis_sd_ln = own.map(|sd| times * sd);
    Some(SideContact {
        low: corner(case.lost_m.low, case.quality.low).min(typical),
        typical,
        high: corner(case.lost_m.high, case.quality.high).max(typical),
        case: case.words,
        lost_depth_m: case.lost_m,
        quality_ratio: case.quality,
        sd_ln: axis_sd_ln[softer],
        axis_sd_ln,
        lean_sd_ln: parts.lean_sd_ln(softer, axis_sd_ln[softer], &reach.solved),
    })
}

struct Parts<'a> {
    case: &'a Case,
    geometry: &'a Shape,
    pure: &'a Solved,
    linings: &'a Linings,
}

impl Parts<'_> {
    /// Whether no side is held at all.
    fn is_free(&self) -> bool {
        self.geometry.contact_from_m >= self.geometry.contact_to_m
    }

    /// Stiffness over G with contact from a depth, of a quality.
    fn held(&self, axis: usize, lost_m: f64, quality: f64) -> f64 {
        let at = |solved: &Solved| solved.stiffness_over_g[axis][axis];
        let own = at(self.pure);
        if self.is_free() {
            return own;
        }
        let free = at(&self.linings.full).min(own);
        let from = if self.case.is_stated {
            own
        } else {
            let depth = self.geometry.depth_m;
            Curve::through(
                [
                    (0.0, at(&self.linings.bonded)),
                    (0.5 * depth, at(&self.linings.half)),
                    (depth, free),
                ],
                (self.pure.shape.contact_from_m, own),
            )
            .at(lost_m.max(self.geometry.contact_from_m).min(depth))
        };
        free + quality * (from - free).max(0.0)
    }

    /// Scatter of one stiffness's logarithm. A stated contact lies between its ends nine times of ten; else depth and quality
    /// vary each by itself, between their ends, the middle the likeliest.
    fn sd_ln(&self, axis: usize) -> f64 {
        let (lost, quality) = (self.case.lost_m, self.case.quality);
        let apart = |soft: f64, stiff: f64| (stiff / soft).ln().max(0.0);
        if self.case.is_stated {
            return apart(
                self.held(axis, lost.low, quality.low),
                self.held(axis, lost.high, quality.high),
            ) / NINE_TENTHS;
        }
        let by_depth = apart(
            self.held(axis, lost.low, quality.typical),
            self.held(axis, lost.high, quality.typical),
        );
        let by_quality = apart(
            self.held(axis, lost.typical, quality.low),
            self.held(axis, lost.typical, quality.high),
        );
        by_depth.hypot(by_quality) / TRIANGLE.sqrt()
    }

    /// Scatter of the lean: as much of the rocking's as the lean changes with it between a bonded block and a free one.
    fn lean_sd_ln(&self, softer: usize, rocking_sd_ln: f64, solved: &Solved) -> f64 {
        let shape = &solved.shape;
        let place = 0.5 * shape.length_m.min(shape.width_m) + STEP_M;
        let [x, y] = if softer == ROCKING[1] {
            [place, 0.0]
        } else {
            [0.0, place]
        };
        let lean = |solved: &Solved| solved.under_weight(x, y)[softer].abs();
        let stiffness = |solved: &Solved| solved.stiffness_over_g[softer][softer];
        let (bonded, free) = (&self.linings.bonded, &self.linings.full);
        let (leans, holds) = (
            (lean(free) / lean(bonded)).ln(),
            (stiffness(bonded) / stiffness(free)).ln(),
        );
        if holds > 0.0 && leans.is_finite() {
            rocking_sd_ln * (leans / holds).clamp(0.0, 1.0)
        } else {
            0.0
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests;
