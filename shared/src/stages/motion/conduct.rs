//! Conduct: what people do while the telescope exposes, what each of it costs the star, and the rule that avoids it.
//!
//! Nothing here fails a pier: who stands, walks or shuts a door can leave it until the exposure ends.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::exceeds;
use crate::rules::image_motion::width;
use crate::stages::motion::{Disturbance, Knock, ModeShape, Quiet};
use crate::units::{Outcome, hertz, second};

/// The disturbances that come with nobody near.
pub const ALONE: [&str; 2] = ["wind", "thermal"];

/// What a movement does to a star within one exposure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Cost {
    /// Growth of its width: 0.05 is a twentieth wider.
    pub star_growth_ratio: Outcome<f64>,
    /// Share of its peak that is left.
    pub peak_left_ratio: Outcome<f64>,
}

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
}

/// What the rules are written from.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// Everything that moves the star.
    pub disturbances: &'a [Disturbance],
    /// A bump by hand.
    pub bump: Option<Knock>,
    /// Modes, slowest first.
    pub modes: &'a [ModeShape],
    /// Distances to keep of somebody who stands, and of somebody who walks.
    pub quiet: [Option<Quiet>; 2],
}

/// What people do, the dearest first.
#[must_use]
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

/// What the star's width comes to with nobody there; none where that is not known.
#[must_use]
pub fn left_alone(disturbances: &[Disturbance], seeing_arcsec: f64) -> Option<Cost> {
    let mut variance = Outcome {
        expected: 0.0,
        worst: 0.0,
    };
    for id in ALONE {
        let one = disturbances.iter().find(|one| one.id == id)?;
        let rms = rms_arcsec(one)?;
        variance.expected += rms.expected.powi(2);
        variance.worst += rms.worst.powi(2);
    }
    Some(cost(seeing_arcsec, variance.map(f64::sqrt)))
}

/// Root mean square along one axis within one exposure, expected and in the softest ground.
fn rms_arcsec(one: &Disturbance) -> Option<Outcome<f64>> {
    let (rms, typical, worst) = (one.rms_arcsec?, one.arcsec?, one.worst_arcsec?);
    let softer = if typical > 0.0 { worst / typical } else { 1.0 };
    Some(Outcome {
        expected: rms,
        worst: rms * softer.max(1.0),
    })
}

/// The movement is taken to be alike along both axes of the image.
fn cost(seeing_arcsec: f64, rms_arcsec: Outcome<f64>) -> Cost {
    let grown = rms_arcsec.map(|rms| width::grown_arcsec(seeing_arcsec, rms) / seeing_arcsec);
    Cost {
        star_growth_ratio: grown.map(|times| times - 1.0),
        peak_left_ratio: grown.map(|times| times.powi(-2)),
    }
}

fn of(parts: &Parts<'_>, one: &Disturbance) -> Conduct {
    let cost = rms_arcsec(one).map(|rms| cost(parts.brief.load.seeing_arcsec.value, rms));
    let bearable = cost.is_some_and(|cost| {
        !exceeds(
            cost.star_growth_ratio.worst,
            parts.brief.load.asked_growth_ratio.value,
        )
    });
    Conduct {
        id: one.id,
        event: one.title,
        star_growth_ratio: cost.map(|cost| cost.star_growth_ratio),
        peak_left_ratio: cost.map(|cost| cost.peak_left_ratio),
        tilt_arcsec: one.arcsec,
        rule: if bearable {
            "It may happen while the telescope exposes.".to_owned()
        } else {
            rule(parts, one.id)
        },
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

/// A bump by hand: a swing that dies away within the exposure.
fn bump(parts: &Parts<'_>) -> Conduct {
    let seeing = parts.brief.load.seeing_arcsec.value;
    let exposure = second::get(parts.brief.load.exposure.value);
    let cost = parts.bump.zip(parts.modes.first()).map(|(bump, mode)| {
        let decay = std::f64::consts::TAU * hertz::get(mode.frequency.typical) * mode.damping_ratio;
        // The mean of A² exp(−2δt)/2 over the exposure, never more than of a swing that does not die.
        let rms = bump.arcsec * (0.25 / (decay * exposure)).min(0.5).sqrt();
        cost(
            seeing,
            Outcome {
                expected: rms,
                worst: rms,
            },
        )
    });
    let rule = match parts.bump.and_then(|bump| bump.worst_settle_s) {
        Some(wait) => format!(
            "Touch neither pier nor telescope while it exposes; after a touch wait {}.",
            parts.brief.units.say(wait.max(1.0).ceil(), Unit::Second)
        ),
        None => "Touch neither pier nor telescope while it exposes.".to_owned(),
    };
    Conduct {
        id: "bump",
        event: "Somebody bumps the telescope by hand",
        star_growth_ratio: cost.map(|cost| cost.star_growth_ratio),
        peak_left_ratio: cost.map(|cost| cost.peak_left_ratio),
        tilt_arcsec: parts.bump.map(|bump| bump.arcsec),
        rule,
    }
}
