//! Torque: what the nuts may be tightened to, what that gives, and what each reading of "kilos" would do.

mod kilos;
mod limits;
mod lines;
mod order;
mod screw;
mod way;
mod words;

use serde::Serialize;

use crate::brief::Brief;
use crate::source::Source;
use crate::stages::anchors::seat::Seat;
use crate::stock::Stock;
use crate::units::customary::POUND_FORCE_FOOT_N_M;
use crate::units::{Force, Length, Moment, Spread, newton_metre};

pub use kilos::{Lesson, Reading};
pub use lines::notes;
pub use order::Pass;
pub use screw::Screw;
pub use way::{WaitsFor, Way};

/// A ceiling of the torque.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limit {
    /// What would suffer.
    pub what: &'static str,
    /// The torque.
    #[serde(rename = "torque_n_m", with = "newton_metre")]
    pub torque: Moment,
    /// Whether it is the lowest.
    pub governs: bool,
    /// Where it comes from.
    pub source: Source,
}

/// One way in which the plate can stand, and the torque that it allows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Case {
    /// Which way.
    pub way: Way,
    /// The same in a few words.
    pub name: &'static str,
    /// Where the preload goes.
    pub seat: Seat,
    /// What it means.
    pub words: &'static str,
    /// Whether this plan builds it.
    pub built: bool,
    /// The lowest limit.
    #[serde(rename = "high_n_m", with = "newton_metre")]
    pub high: Moment,
    /// What would suffer.
    pub what: &'static str,
}

/// Torque of the nuts.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Torque {
    /// What is aimed at when nothing is stated.
    #[serde(rename = "recommended_n_m", with = "newton_metre")]
    pub recommended: Moment,
    /// Low end of the band.
    #[serde(rename = "low_n_m", with = "newton_metre")]
    pub low: Moment,
    /// High end of the band: the lowest limit.
    #[serde(rename = "high_n_m", with = "newton_metre")]
    pub high: Moment,
    /// What the plan uses: stated, else recommended.
    #[serde(rename = "used_n_m", with = "newton_metre")]
    pub used: Moment,
    /// What the wrench is set to on the site, the same figure on page, sheet and record: what the plan uses, or what is recommended
    /// where a stated torque is above the lowest limit.
    #[serde(rename = "set_n_m", with = "newton_metre")]
    pub set: Moment,
    /// What must be there before a nut is tightened to it.
    pub waits_for: WaitsFor,
    /// What to do, with the figure, and what decides it: one sentence or two.
    pub says: String,
    /// Torque at which a typical stud would reach its proof load.
    #[serde(rename = "yields_n_m", with = "newton_metre")]
    pub yields: Moment,
    /// Torque at which a typical stud would break.
    #[serde(rename = "breaks_n_m", with = "newton_metre")]
    pub breaks: Moment,
    /// Ceilings.
    pub limits: Vec<Limit>,
    /// The four ways in which the plate can stand, with the limit of each.
    pub cases: Vec<Case>,
    /// Passes over the studs.
    pub passes: Vec<Pass>,
    /// Order of the studs in each pass, counted from 1 in the drawing.
    pub order: Vec<usize>,
    /// What "kilos" could mean, and what each does to this stud.
    pub kilos_readings: Vec<Reading>,
    /// The number and the stud of common practice, beside this plan's.
    pub lesson: Lesson,
    /// Nut factor K.
    pub nut_factor: Spread<f64>,
    /// What happens below the band.
    pub below: String,
    /// What happens above it.
    pub above: String,
}

/// What preload may ask of resin and steel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bears {
    /// Pull that the bond of one stud may carry for good.
    pub lasting: Force,
    /// Preload that plate and wall may be bent with.
    pub bending: Option<Force>,
}

/// Finds the torque; `edge` is the stud's distance from the nearest edge of the block.
pub fn find(brief: &Brief, seat: Seat, screw: &Screw, edge: Length, bears: Bears) -> Torque {
    let way = Way::of(brief, seat);
    let limits = limits::of(brief, way, screw, edge, bears);
    let stock = brief.stock.value;
    let high = handy(stock, limits::lowest(&limits));
    let aim = handy(stock, 0.9 * high);
    let used = brief.anchors.torque.unwrap_or(newton_metre::new(aim));
    let set = if newton_metre::get(used) > high {
        newton_metre::new(aim)
    } else {
        used
    };
    let waits_for = WaitsFor::of(brief, way);
    let (below, above) = words::around(brief, seat, screw, high);
    Torque {
        recommended: newton_metre::new(aim),
        low: newton_metre::new(handy(stock, 0.8 * high)),
        high: newton_metre::new(high),
        used,
        set,
        waits_for,
        says: words::says(brief, way, waits_for, set, newton_metre::new(high), &limits),
        yields: screw.torque(screw.proof),
        breaks: screw.torque(screw.breaking),
        limits,
        cases: Way::ALL
            .map(|case| {
                one_case(
                    brief,
                    case,
                    way,
                    &limits::of(brief, case, screw, edge, bears),
                )
            })
            .to_vec(),
        passes: order::passes(set),
        order: order::star(brief.anchors.number()),
        kilos_readings: kilos::readings(brief, screw, used, newton_metre::new(high)),
        lesson: kilos::lesson(brief, screw, used, newton_metre::new(high)),
        nut_factor: screw.nut_factor,
        below,
        above,
    }
}

fn one_case(brief: &Brief, case: Way, built: Way, limits: &[Limit]) -> Case {
    let lowest = limits.iter().find(|limit| limit.governs);
    let high = lowest.map_or(0.0, |limit| newton_metre::get(limit.torque));
    Case {
        way: case,
        name: case.name(),
        seat: case.seat(),
        words: case.words(),
        built: case == built,
        high: newton_metre::new(handy(brief.stock.value, high)),
        what: match WaitsFor::of(brief, case) {
            WaitsFor::Grout => {
                "nothing safe to set before grout is under the plate; this is for afterwards"
            }
            WaitsFor::Nothing | WaitsFor::Sheet => lowest.map_or("", |limit| limit.what),
        },
    }
}

/// Down to a figure that a wrench shows, one that is sold there: fives above 50 N m or lbf ft, whole ones above 10, tenths
/// below.
fn handy(stock: Stock, torque: f64) -> f64 {
    let unit = stock.either(1.0, POUND_FORCE_FOOT_N_M);
    let step = match torque / unit {
        t if t > 50.0 => 5.0,
        t if t > 10.0 => 1.0,
        _ => 0.1,
    };
    (torque / unit / step + 1e-9).floor() * step * unit
}
