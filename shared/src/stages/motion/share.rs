//! Who moves the star: each disturbance with its movement, what it does to the star's width, its share, and its verdict.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Verdict;
use crate::rules::image_motion::width;
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::influence::Influence;
use crate::stages::motion::people::{self, Ground};
use crate::stages::motion::system::{Planes, System};
use crate::stages::motion::walk::Peaks;
use crate::stages::motion::{Heat, Wind};
use crate::units::second;

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
    /// Root mean square along one axis within one exposure in which it happens, typical ground.
    pub rms_arcsec: Option<f64>,
    /// Full width of the star in such an exposure, seeing and this movement alone.
    pub star_width_arcsec: Option<f64>,
    /// The movement in the softest ground held against the budget.
    pub verdict: Verdict,
    /// Where its size comes from.
    pub source: Source,
}

/// Width of the star when everything happens within one exposure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StarWidth {
    /// Full width by the seeing alone.
    pub seeing_arcsec: f64,
    /// With every disturbance once in it, in quadrature; the second person left out.
    pub width_arcsec: f64,
    /// Growth over the seeing: 0.1 is a tenth.
    pub growth_ratio: f64,
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
    /// The walk in short, alone and with somebody who follows; none where it is not known.
    pub walk: Option<[Peaks; 2]>,
    /// Wind.
    pub wind: Option<&'a Wind>,
    /// Warmth.
    pub heat: &'a Heat,
    /// Budget, arcsec.
    pub budget_arcsec: f64,
}

/// Movement in typical and in the softest ground, and root mean square within one exposure.
#[derive(Debug, Clone, Copy)]
struct Moved {
    typical: f64,
    worst: f64,
    rms: f64,
}

/// Lists the disturbances, largest first.
#[must_use]
pub fn find(parts: &Parts<'_>) -> Vec<Disturbance> {
    let moved = |peaks: Peaks| Moved {
        typical: peaks.typical,
        worst: peaks.worst,
        rms: peaks.rms / 2f64.sqrt(),
    };
    let walk = parts.walk.map(|[one, _]| moved(one));
    let two = parts.walk.map(|[_, two]| moved(two));
    let wind = parts.wind.map(|wind| Moved {
        typical: 2f64.sqrt() * wind.guided_rms_arcsec,
        worst: wind.worst_arcsec,
        rms: wind.guided_rms_arcsec,
    });
    // Warmth turns the top at a steady rate: evenly over its way.
    let warmth = parts.heat.guided_arcsec;
    let heat = Moved {
        typical: warmth,
        worst: warmth,
        rms: warmth / 12f64.sqrt(),
    };
    let line = |id, title, moved, source| self::line(parts, id, title, moved, source);
    let mut all = vec![
        line(
            "walk",
            "Somebody walks along the path",
            walk,
            crate::rules::li_2010::step::SOURCE,
        ),
        line(
            "second_person",
            "A second person follows in step",
            two,
            Source::judgement("the same steps once more, a metre behind, both feet down at once"),
        ),
        line(
            "wind",
            "Wind on telescope, mount and column",
            wind,
            crate::rules::en_1991_1_4_2005::turbulence::SOURCE,
        ),
        line(
            "thermal",
            "Warmth on one side of the column, between two corrections",
            Some(heat),
            crate::rules::mechanics::heat::SOURCE,
        ),
    ];
    all.extend(people(parts));
    // A second walker comes on top of the first one and is no disturbance of its own.
    let sum: f64 = all
        .iter()
        .filter(|one| is_own(one))
        .filter_map(|one| one.arcsec)
        .map(|a| a * a)
        .sum();
    for one in all.iter_mut().filter(|one| is_own(one)) {
        one.share_ratio = one.arcsec.filter(|_| sum > 0.0).map(|a| a * a / sum);
    }
    all.sort_by(|a, b| b.arcsec.unwrap_or(0.0).total_cmp(&a.arcsec.unwrap_or(0.0)));
    all
}

fn is_own(one: &Disturbance) -> bool {
    one.id != "second_person"
}

/// Width of the star when all of them fall into one exposure; none where nothing is known.
#[must_use]
pub fn star_width(brief: &Brief, disturbances: &[Disturbance]) -> Option<StarWidth> {
    let own = disturbances.iter().filter(|one| is_own(one));
    let variance = own
        .filter_map(|one| one.rms_arcsec)
        .map(|rms| rms * rms)
        .reduce(|a, b| a + b)?;
    let seeing = brief.load.seeing_arcsec.value;
    let width = width::grown_arcsec(seeing, variance.sqrt());
    Some(StarWidth {
        seeing_arcsec: seeing,
        width_arcsec: width,
        growth_ratio: width / seeing - 1.0,
    })
}

fn people(parts: &Parts<'_>) -> Vec<Disturbance> {
    let felt = parts
        .system
        .zip(parts.influence)
        .map(|(system, influence)| {
            (
                system,
                Ground {
                    floor: parts.floor,
                    influence,
                },
            )
        });
    let stands = &parts.brief.floor.stands.value;
    let of_stands = |one: &dyn Fn(&Ground<'_>, &Planes, &crate::site_plan::floor::Stand) -> f64,
                     seen: f64| {
        felt.map(|(system, ground)| {
            let most = |planes| {
                stands
                    .iter()
                    .map(|stand| one(&ground, planes, stand))
                    .fold(0.0, f64::max)
            };
            let typical = most(&system.typical);
            Moved {
                typical,
                worst: most(&system.low),
                rms: typical * seen,
            }
        })
    };
    let under = |ground: &Ground<'_>, planes: &Planes, stand: &crate::site_plan::floor::Stand| {
        let [x, y] = ground.under(planes, stand.mass_kg, [stand.x_m, stand.y_m]);
        x.hypot(y)
    };
    let once = step_rms_ratio(parts.brief);
    let door = felt.map(|(system, ground)| {
        let typical = ground.door(&system.typical, parts.brief);
        let seen = (people::DOOR_LASTS_S / second::get(parts.brief.load.exposure.value))
            .min(1.0)
            .sqrt();
        Moved {
            typical: typical.peak_arcsec,
            worst: ground.door(&system.low, parts.brief).peak_arcsec,
            rms: typical.rms_arcsec * seen,
        }
    });
    let reciprocity = Source::derived("reciprocity on the solved half-space");
    vec![
        line(
            parts,
            "standing",
            "Somebody comes to a stand, or leaves it",
            of_stands(&under, once),
            reciprocity,
        ),
        line(
            parts,
            "shifting",
            "Somebody at a stand shifts from foot to foot",
            // To and fro all through the exposure.
            of_stands(
                &|ground, planes, stand| ground.shifting_arcsec(planes, stand),
                0.5,
            ),
            people::SHIFT_SOURCE,
        ),
        line(
            parts,
            "sitting",
            "Somebody at a stand sits down or kneels",
            of_stands(
                &|ground, planes, stand| ground.sitting_arcsec(planes, stand),
                once,
            ),
            people::SITTING_SOURCE,
        ),
        line(
            parts,
            "door",
            "A door falls shut",
            door,
            people::DOOR_SOURCE,
        ),
    ]
}

/// Root mean square over the step, of a step that comes once and is taken out by the guider at its next correction:
/// √(p (1 − p)) for the share p of the exposure that it shows, a half where nothing corrects it.
fn step_rms_ratio(brief: &Brief) -> f64 {
    let share = (second::get(brief.load.guiding_interval.value)
        / second::get(brief.load.exposure.value))
    .clamp(0.0, 0.5);
    (share * (1.0 - share)).sqrt()
}

fn line(
    parts: &Parts<'_>,
    id: &'static str,
    title: &'static str,
    moved: Option<Moved>,
    source: Source,
) -> Disturbance {
    let seeing = parts.brief.load.seeing_arcsec.value;
    Disturbance {
        id,
        title,
        arcsec: moved.map(|moved| moved.typical),
        worst_arcsec: moved.map(|moved| moved.worst),
        share_ratio: None,
        rms_arcsec: moved.map(|moved| moved.rms),
        star_width_arcsec: moved.map(|moved| width::grown_arcsec(seeing, moved.rms)),
        verdict: moved.map_or(Verdict::Unknown, |moved| {
            Verdict::of(moved.worst / parts.budget_arcsec)
        }),
        source,
    }
}
