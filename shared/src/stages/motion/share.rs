//! Who moves the star: each disturbance with its movement, in order, and its share of the whole.

use serde::Serialize;

use crate::brief::Brief;
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::influence::Influence;
use crate::stages::motion::people::{self, Ground};
use crate::stages::motion::system::System;
use crate::stages::motion::{Heat, Wind};

/// One disturbance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Disturbance {
    /// Stable name.
    pub id: &'static str,
    /// What it is, in a customer's words.
    pub title: &'static str,
    /// Movement of the star, typical ground; null when unknown.
    pub arcsec: Option<f64>,
    /// Movement in the softest ground thought likely.
    pub worst_arcsec: Option<f64>,
    /// Share of the sum of squares of all that are known.
    pub share_ratio: Option<f64>,
    /// Where its size comes from.
    pub source: Source,
}

/// All that shares are reckoned from.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// Modes; none where the ground is not known.
    pub system: Option<&'a System>,
    /// Floor.
    pub floor: &'a Floor,
    /// Influence of a weight; none where it is not solved.
    pub influence: Option<&'a dyn Influence>,
    /// Peak of the walk in typical and in the softest ground.
    pub walk: Option<(f64, f64)>,
    /// Wind.
    pub wind: Option<&'a Wind>,
    /// Warmth.
    pub heat: &'a Heat,
}

/// Lists the disturbances, largest first.
#[must_use]
pub fn find(parts: &Parts<'_>) -> Vec<Disturbance> {
    let mut all = vec![
        line("walk", "Somebody walks along the path", parts.walk, crate::rules::li_2010::step::SOURCE),
        line(
            "second_person",
            "A second person walks beside, in step",
            parts.walk.map(|(a, b)| (2.0 * a, 2.0 * b)),
            Source::judgement("in step, the worst case: twice the movement of one"),
        ),
        line(
            "wind",
            "Wind on telescope, mount and column",
            parts.wind.map(|wind| (2f64.sqrt() * wind.guided_rms_arcsec, wind.worst_arcsec)),
            crate::rules::en_1991_1_4_2005::turbulence::SOURCE,
        ),
        line(
            "thermal",
            "Warmth on one side of the column, between two corrections",
            Some((parts.heat.guided_arcsec, parts.heat.guided_arcsec)),
            crate::rules::mechanics::heat::SOURCE,
        ),
    ];
    all.extend(people(parts));
    // A second walker is the first one doubled, not a disturbance of its own.
    let own = |one: &Disturbance| one.id != "second_person";
    let sum: f64 = all.iter().filter(|one| own(one)).filter_map(|one| one.arcsec).map(|a| a * a).sum();
    for one in all.iter_mut().filter(|one| own(one)) {
        one.share_ratio = one.arcsec.filter(|_| sum > 0.0).map(|a| a * a / sum);
    }
    all.sort_by(|a, b| b.arcsec.unwrap_or(0.0).total_cmp(&a.arcsec.unwrap_or(0.0)));
    all
}

fn people(parts: &Parts<'_>) -> Vec<Disturbance> {
    let felt = parts.system.zip(parts.influence).map(|(system, influence)| (system, Ground { floor: parts.floor, influence }));
    let stands = &parts.brief.floor.stands.value;
    let most = |figure: &dyn Fn(&Ground<'_>, &crate::stages::motion::system::Planes) -> f64| {
        felt.map(|(system, ground)| (figure(&ground, &system.typical), figure(&ground, &system.low)))
    };
    let of_stands = |one: &dyn Fn(&Ground<'_>, &crate::stages::motion::system::Planes, &crate::site_plan::floor::Stand) -> f64| {
        most(&|ground, planes| stands.iter().map(|stand| one(ground, planes, stand)).fold(0.0, f64::max))
    };
    let standing = of_stands(&|ground, planes, stand| {
        let [x, y] = ground.under(planes, stand.mass_kg, [stand.x_m, stand.y_m]);
        x.hypot(y)
    });
    vec![
        line("standing", "Somebody comes to a stand, or leaves it", standing, Source::derived("reciprocity on the solved half-space")),
        line(
            "shifting",
            "Somebody at a stand shifts from foot to foot",
            of_stands(&|ground, planes, stand| ground.shifting_arcsec(planes, stand)),
            people::SHIFT_SOURCE,
        ),
        line(
            "sitting",
            "Somebody at a stand sits down or kneels",
            of_stands(&|ground, planes, stand| ground.sitting_arcsec(planes, stand)),
            people::SITTING_SOURCE,
        ),
        line(
            "door",
            "A door falls shut",
            most(&|ground, planes| ground.door_arcsec(planes, people::door_distance_m(parts.brief))),
            people::DOOR_SOURCE,
        ),
    ]
}

fn line(id: &'static str, title: &'static str, arcsec: Option<(f64, f64)>, source: Source) -> Disturbance {
    let (typical, worst) = arcsec.unzip();
    Disturbance { id, title, arcsec: typical, worst_arcsec: worst, share_ratio: None, source }
}
