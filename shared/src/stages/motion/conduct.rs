//! Conduct: what people do while the telescope exposes, what each of it costs the star, and the rule that avoids it.
//!
//! Nothing here fails a pier: who stands, walks or shuts a door can leave it until the exposure ends.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::Verdict;
use crate::stages::motion::growth::{Cost, Exposure, Likely, Movement};
use crate::stages::motion::modes::Mode;
use crate::stages::motion::system::Planes;
use crate::stages::motion::{Budget, Disturbance, Knock, Quiet, knock};
use crate::units::Outcome;

pub use crate::stages::motion::share::ALONE;

/// One thing that people do, once within an exposure.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Conduct {
    /// Stable name, the same as of the disturbance.
    pub id: &'static str,
    /// What happens.
    pub event: &'static str,
    /// Growth of the star's width; null when not known.
    pub star_growth_ratio: Option<Outcome<f64>>,
    /// Share of the star's peak that is left; null when not known.
    pub peak_left_ratio: Option<Outcome<f64>>,
    /// Movement of the star that is expected, arcsec; null when not known.
    pub tilt_arcsec: Option<f64>,
    /// What to do about it.
    pub rule: String,
    /// Whether it costs no more than is asked of the pier.
    pub bearable: bool,
}

/// What the rules are written from.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// How the star is recorded.
    pub exposure: Exposure,
    /// What is asked.
    pub budget: &'a Budget,
    /// Everything that moves the star.
    pub disturbances: &'a [Disturbance],
    /// A bump by hand.
    pub bump: Option<Knock>,
    /// Modes with the load on its mount, typical ground; none where the ground is not known.
    pub planes: Option<&'a Planes>,
    /// Distances to keep of somebody who stands, and of somebody who walks.
    pub quiet: [Option<Quiet>; 2],
}

/// What people do, the dearest first.
pub fn find(parts: &Parts<'_>) -> Vec<Conduct> {
    let people = parts
        .disturbances
        .iter()
        .filter(|one| !ALONE.contains(&one.id));
    let mut all: Vec<Conduct> = people.map(|one| of(parts, one)).collect();
    all.push(bump(parts));
    let worst = |one: &Conduct| one.star_growth_ratio.map_or(0.0, |ratio| ratio.worst);
    all.sort_by(|a, b| worst(b).total_cmp(&worst(a)));
    all
}

/// Growth that a mount adds to what the pier does alone.
pub fn added(pier: &Cost, with_mount: &Cost) -> Outcome<f64> {
    let (pier, all) = (pier.star_growth_ratio, with_mount.star_growth_ratio);
    Outcome {
        expected: (all.expected - pier.expected).max(0.0),
        worst: (all.worst - pier.worst).max(0.0),
    }
}

fn of(parts: &Parts<'_>, one: &Disturbance) -> Conduct {
    let bearable = matches!(one.verdict, Verdict::Holds | Verdict::Close);
    Conduct {
        id: one.id,
        event: one.title,
        star_growth_ratio: one.star_growth_ratio,
        peak_left_ratio: one.peak_left_ratio,
        tilt_arcsec: one.arcsec,
        rule: if bearable {
            "It may happen while the telescope exposes.".to_owned()
        } else {
            rule(parts, one.id)
        },
        bearable,
    }
}

/// What to do where it costs more than is asked, or where nobody knows.
fn rule(parts: &Parts<'_>, id: &str) -> String {
    let away = |quiet: Option<Quiet>| {
        quiet
            .filter(|quiet| !quiet.anywhere)
            .map(|quiet| parts.brief.units.say(quiet.distance_m, Unit::Metre))
    };
    match (id, away(parts.quiet[0]), away(parts.quiet[1])) {
        ("standing" | "shifting" | "sitting", Some(away), _) => {
            format!("While the telescope exposes, nobody nearer than {away} to the pier's axis.")
        }
        ("walk", _, Some(away)) => {
            format!(
                "While the telescope exposes, nobody walks nearer than {away} to the pier's axis."
            )
        }
        ("second_person", ..) => "While the telescope exposes, walk one at a time.".to_owned(),
        ("door", ..) => "Leave the door while the telescope exposes.".to_owned(),
        _ => "Not while the telescope exposes.".to_owned(),
    }
}

/// Bump over its middle at the unfavourable twentieth: 20 N against 10 (judgement).
const BUMP_RATIO: f64 = 2.0;
/// Longest time of a bump that is followed, s.
const BUMP_LASTS_S: f64 = 20.0;

/// A bump by hand: a swing that dies away within the exposure, at most so far.
fn bump(parts: &Parts<'_>) -> Conduct {
    let likely = parts.planes.map(|planes| {
        let plane = |modes: &&[Mode]| {
            let history = knock::after_bump(modes, BUMP_LASTS_S);
            let movement = Movement::once(parts.exposure.of_history(&history));
            (parts.exposure.star(&movement).growth_ratio(), movement)
        };
        // Along the axis in which it widens the star more.
        let [x, y] = planes.both().each_ref().map(plane);
        Likely::in_any_ground(if x.0 > y.0 { x.1 } else { y.1 }, BUMP_RATIO)
    });
    let cost = likely.map(|likely| parts.exposure.cost(&likely));
    let rule = match parts.bump.and_then(|bump| bump.worst_settle_s) {
        Some(wait) => format!(
            "Touch neither pier nor telescope while it exposes; after a touch wait {}.",
            parts.brief.units.say(wait.max(1.0).ceil(), Unit::Second)
        ),
        None => "Touch neither pier nor telescope while it exposes.".to_owned(),
    };
    let arcsec = parts.bump.map(|bump| bump.arcsec);
    Conduct {
        id: "bump",
        event: "Somebody bumps the telescope by hand",
        star_growth_ratio: cost.map(|cost| cost.star_growth_ratio),
        peak_left_ratio: cost.map(|cost| cost.peak_left_ratio),
        tilt_arcsec: arcsec,
        rule,
        bearable: cost.zip(arcsec).is_some_and(|(cost, arcsec)| {
            parts.budget.used_ratio(&cost, BUMP_RATIO * arcsec) <= 1.0
        }),
    }
}
