//! Torque: what the nuts may be tightened to, what that gives, and what each reading of "kilos" would do.

mod kilos;
mod order;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes, Working};
use crate::rules::threads::{self, StudSteel, Thread};
use crate::rules::vdi_2230_2015::{self as tightening, scatter};
use crate::source::{Source, Standing};
use crate::stages::anchors::seat::Seat;
use crate::units::{Force, Moment, Spread, kilonewton, millimetre, newton, newton_metre};

pub use kilos::{Lesson, Reading};
pub use order::Pass;

/// What a product's sheet says.
const PRODUCT: Source = Source::new(
    "The product's sheet",
    "",
    "largest installation torque",
    Standing::SecondHand,
);
/// The band below the limit in which the nuts are tightened.
const BAND: Source = Source::judgement("from 80 % of the lowest limit up to it, aiming at 90 %");

/// A ceiling of the torque.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limit {
    /// What would suffer.
    pub what: &'static str,
    /// The torque.
    #[serde(rename = "torque_n_m", serialize_with = "newton_metre::serialize")]
    pub torque: Moment,
    /// Whether it is the lowest.
    pub governs: bool,
}

/// One way in which the plate can stand, and the torque that it allows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Case {
    /// Where the preload goes.
    pub seat: Seat,
    /// What it means.
    pub words: &'static str,
    /// Whether this plan builds it.
    pub built: bool,
    /// The lowest limit.
    #[serde(rename = "high_n_m", serialize_with = "newton_metre::serialize")]
    pub high: Moment,
    /// What would suffer.
    pub what: &'static str,
}

/// Torque of the nuts.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Torque {
    /// What is aimed at when nothing is stated.
    #[serde(rename = "recommended_n_m", serialize_with = "newton_metre::serialize")]
    pub recommended: Moment,
    /// Low end of the band.
    #[serde(rename = "low_n_m", serialize_with = "newton_metre::serialize")]
    pub low: Moment,
    /// High end of the band: the lowest limit.
    #[serde(rename = "high_n_m", serialize_with = "newton_metre::serialize")]
    pub high: Moment,
    /// What the plan uses: stated, else recommended.
    #[serde(rename = "used_n_m", serialize_with = "newton_metre::serialize")]
    pub used: Moment,
    /// Torque at which a typical stud would reach its proof load.
    #[serde(rename = "yields_n_m", serialize_with = "newton_metre::serialize")]
    pub yields: Moment,
    /// Torque at which a typical stud would break.
    #[serde(rename = "breaks_n_m", serialize_with = "newton_metre::serialize")]
    pub breaks: Moment,
    /// Ceilings.
    pub limits: Vec<Limit>,
    /// The three ways in which the plate can stand, with the limit of each.
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

/// The stud as the torque sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Screw {
    /// Diameter.
    pub diameter: crate::units::Length,
    /// Nut factor.
    pub nut_factor: Spread<f64>,
    /// Share of the typical preload at either end.
    pub share: Spread<f64>,
    /// Proof load.
    pub proof: Force,
    /// Least breaking load.
    pub breaking: Force,
}

impl Screw {
    /// From the brief.
    #[must_use]
    pub fn of(brief: &Brief) -> Self {
        let anchors = &brief.anchors;
        let (thread, steel) = (
            anchors.thread(),
            threads::steel(anchors.strength_class.value, anchors.size.value),
        );
        let nut_factor = match anchors.frictions {
            Some((thread_friction, under_head)) => {
                Spread::exactly(tightening::nut_factor(&thread, thread_friction, under_head))
            }
            None => scatter::nut_factor(
                anchors.lubrication.value,
                anchors.coating.value,
                steel.stainless,
            ),
        };
        let tool = scatter::preload_share(scatter::tightening_factor(
            anchors.tool.value,
            anchors.frictions.is_some(),
        ));
        let share = Spread {
            low: tool.low.min(nut_factor.typical / nut_factor.high),
            typical: 1.0,
            high: tool.high.max(nut_factor.typical / nut_factor.low),
        };
        Self {
            share,
            ..Self::with(&thread, &steel, nut_factor)
        }
    }

    /// Any stud, its preload without scatter.
    #[must_use]
    pub fn with(thread: &Thread, steel: &StudSteel, nut_factor: Spread<f64>) -> Self {
        Self {
            diameter: thread.diameter,
            nut_factor,
            share: Spread::exactly(1.0),
            proof: thread.stress_area * steel.proof,
            breaking: thread.stress_area * steel.least_ultimate,
        }
    }

    /// Typical preload of a torque.
    #[must_use]
    pub fn typical(&self, torque: Moment) -> Force {
        tightening::preload(torque, self.nut_factor.typical, self.diameter)
    }

    /// Preload of a torque with its scatter.
    #[must_use]
    pub fn preload(&self, torque: Moment) -> Spread<Force> {
        let typical = self.typical(torque);
        self.share.map(|share| typical * share)
    }

    /// Torque for a typical preload.
    #[must_use]
    pub fn torque(&self, preload: Force) -> Moment {
        tightening::torque_by_nut_factor(preload, self.nut_factor.typical, self.diameter)
    }
}

/// Finds the torque; `lasting` is the pull that the bond of one stud may carry for good, `bending` the preload that plate
/// and wall may be bent with.
#[must_use]
pub fn find(
    brief: &Brief,
    seat: Seat,
    screw: &Screw,
    lasting: Force,
    bending: Option<Force>,
) -> Torque {
    let limits = limits(brief, seat, screw, lasting, bending);
    let high = limits
        .iter()
        .map(|limit| newton_metre::get(limit.torque))
        .fold(f64::INFINITY, f64::min);
    let high = handy(high);
    let aim = handy(0.9 * high);
    let used = brief.anchors.torque.unwrap_or(newton_metre::new(aim));
    let (below, above) = around(brief, seat, screw, high);
    Torque {
        recommended: newton_metre::new(aim),
        low: newton_metre::new(handy(0.8 * high)),
        high: newton_metre::new(high),
        used,
        yields: screw.torque(screw.proof),
        breaks: screw.torque(screw.breaking),
        limits,
        cases: [Seat::Nuts, Seat::Bedded, Seat::Dished]
            .map(|case| one_case(brief, case, seat, screw, lasting, bending))
            .to_vec(),
        passes: order::passes(if newton_metre::get(used) > high {
            newton_metre::new(aim)
        } else {
            used
        }),
        order: order::star(brief.anchors.number()),
        kilos_readings: kilos::readings(
            brief,
            screw,
            newton_metre::get(used),
            newton_metre::new(high),
        ),
        lesson: kilos::lesson(brief, screw, used, newton_metre::new(high)),
        nut_factor: screw.nut_factor,
        below,
        above,
    }
}

fn one_case(
    brief: &Brief,
    case: Seat,
    built: Seat,
    screw: &Screw,
    lasting: Force,
    bending: Option<Force>,
) -> Case {
    let limits = limits(brief, case, screw, lasting, bending);
    let lowest = limits.iter().find(|limit| limit.governs);
    let high = lowest.map_or(0.0, |limit| newton_metre::get(limit.torque));
    Case {
        seat: case,
        words: case.words(),
        built: case == built,
        high: newton_metre::new(handy(high)),
        what: lowest.map_or("", |limit| limit.what),
    }
}

/// Down to a figure that a wrench shows: fives above 50 N m, whole ones above 10, tenths below.
fn handy(torque: f64) -> f64 {
    let step = match torque {
        t if t > 50.0 => 5.0,
        t if t > 10.0 => 1.0,
        _ => 0.1,
    };
    (torque / step + 1e-9).floor() * step
}

fn limits(
    brief: &Brief,
    seat: Seat,
    screw: &Screw,
    lasting: Force,
    bending: Option<Force>,
) -> Vec<Limit> {
    let limit = |what, torque| Limit {
        what,
        torque,
        governs: false,
    };
    let mut limits = vec![limit(
        "seven tenths of the stud's proof load",
        screw.torque(screw.proof * tightening::PROOF_SHARE_RATIO),
    )];
    if seat.pulls_on_bond() {
        // The strongest of the scattered preloads must not pull the resin loose.
        limits.push(limit(
            "lasting pull on the resin",
            screw.torque(lasting / screw.share.high),
        ));
    }
    if let (Seat::Dished, Some(bending)) = (seat, bending) {
        limits.push(limit(
            "bending of plate and wall",
            screw.torque(bending / screw.share.high),
        ));
    }
    if let Some(most) = brief.anchors.max_torque {
        limits.push(limit("the product's own maximum", most));
    }
    let lowest = limits
        .iter()
        .map(|limit| newton_metre::get(limit.torque))
        .fold(f64::INFINITY, f64::min);
    for limit in &mut limits {
        limit.governs = newton_metre::get(limit.torque) <= lowest;
    }
    limits
}

fn around(brief: &Brief, seat: Seat, screw: &Screw, high: f64) -> (String, String) {
    let say = |torque: Moment| {
        brief
            .units
            .say(newton_metre::get(torque), Unit::NewtonMetre)
    };
    let below = match seat {
        Seat::Nuts => {
            "Below the band the nuts may work loose with heat and cold; the foot is no softer for it while they hold."
        }
        Seat::Bedded => {
            "Below the band the joint opens sooner under wind or a leaning person, and the foot then turns about ten times as easily."
        }
        Seat::Dished => {
            "Below the band the plate is bent less and lifts sooner from the column's edge."
        }
    };
    let first = match seat {
        Seat::Nuts => "Above the band the stud's thread comes near to yielding.",
        Seat::Bedded | Seat::Dished => {
            "Above the band the resin is asked to hold more than it can for good: it creeps, and the preload goes."
        }
    };
    let above = format!(
        "{first} A typical stud begins to stretch for good at about {} and breaks at about {}; the limit for this plan is {}.",
        say(screw.torque(screw.proof)),
        say(screw.torque(screw.breaking)),
        say(newton_metre::new(high))
    );
    (below.to_owned(), above)
}

/// The checks and lines of calculation of the torque.
pub fn notes(brief: &Brief, torque: &Torque, screw: &Screw, notes: &mut Notes) {
    let preload = screw.preload(torque.used);
    let governing = torque
        .limits
        .iter()
        .find(|limit| limit.governs)
        .map_or("", |limit| limit.what);
    let source = if governing.starts_with("the product") {
        PRODUCT
    } else {
        tightening::SHORT_FORM
    };
    let (used, high) = (
        newton_metre::get(torque.used),
        newton_metre::get(torque.high),
    );
    notes.check(
        Check::at_most("anchors.torque", "Is the torque within its limit?", used, high, Unit::NewtonMetre, source)
            .note(format!(
                "The lowest limit is {governing}. A stated torque in \"kilos\" must be understood first: newton metres, kilogram-force \
                 metres and pound-force feet differ up to tenfold."
            ))
            .moved_by(&[
                "anchors.torque_n_m",
                "anchors.max_torque_n_m",
                "anchors.strength_class",
                "anchors.bond_strength_mpa",
                "anchors.lower_nuts",
            ]),
    );
    notes.check(
        Check::at_most(
            "anchors.proof",
            "Is the preload below the stud's proof load?",
            kilonewton::get(preload.high),
            kilonewton::get(screw.proof),
            Unit::Kilonewton,
            threads::THREADS,
        )
        .note("The high end of the scattered preload: beyond the proof load a stud stretches for good.")
        .moved_by(&["anchors.torque_n_m", "anchors.size", "anchors.strength_class", "anchors.lubrication"]),
    );
    workings(brief, torque, screw, preload, notes);
    kilos::workings(&torque.lesson, notes);
}

fn workings(
    brief: &Brief,
    torque: &Torque,
    screw: &Screw,
    preload: Spread<Force>,
    notes: &mut Notes,
) {
    let thread = brief.anchors.thread();
    let (source, formula) = match brief.anchors.frictions {
        Some(_) => (
            tightening::LONG_FORM,
            "K = [P/(2π) + μ_t d₂/(2 cos 30°) + μ_b D_b/2]/d",
        ),
        None => (scatter::NUT_FACTOR, "K by the state of the thread"),
    };
    let mut factor = Working::new("anchors.nut_factor", "Nut factor", formula, source);
    if let Some((thread_friction, under_head)) = brief.anchors.frictions {
        factor = factor
            .with("P", millimetre::get(thread.pitch), Unit::Millimetre)
            .with("μ_t", thread_friction, Unit::One)
            .with("μ_b", under_head, Unit::One);
    }
    notes.working(
        factor
            .with("K_low", torque.nut_factor.low, Unit::One)
            .with("K_high", torque.nut_factor.high, Unit::One)
            .gives("K", torque.nut_factor.typical, Unit::One),
    );
    notes.working(
        Working::new(
            "anchors.preload",
            "Preload of one stud",
            "F = T/(K d), with its scatter",
            tightening::SHORT_FORM,
        )
        .with("T", newton_metre::get(torque.used), Unit::NewtonMetre)
        .with("K", torque.nut_factor.typical, Unit::One)
        .with("d", millimetre::get(thread.diameter), Unit::Millimetre)
        .with("F_low", kilonewton::get(preload.low), Unit::Kilonewton)
        .with("F_high", kilonewton::get(preload.high), Unit::Kilonewton)
        .gives("F", kilonewton::get(preload.typical), Unit::Kilonewton),
    );
    notes.working(
        Working::new(
            "anchors.proof_load",
            "Proof load of one stud",
            "F_p = A_s S_p",
            threads::THREADS,
        )
        .with(
            "A_s",
            crate::units::square_millimetre::get(thread.stress_area),
            Unit::SquareMillimetre,
        )
        .with(
            "S_p",
            newton::get(screw.proof) / crate::units::square_millimetre::get(thread.stress_area),
            Unit::Megapascal,
        )
        .gives("F_p", kilonewton::get(screw.proof), Unit::Kilonewton),
    );
    notes.working(
        Working::new(
            "anchors.torque_band",
            "Band of the torque",
            "from 0.8 of the lowest limit up to it, aiming at 0.9",
            BAND,
        )
        .with("T_low", newton_metre::get(torque.low), Unit::NewtonMetre)
        .with("T_high", newton_metre::get(torque.high), Unit::NewtonMetre)
        .gives(
            "T",
            newton_metre::get(torque.recommended),
            Unit::NewtonMetre,
        ),
    );
}
