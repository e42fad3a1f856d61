//! The movements: what each thing does to the star within one exposure, and how sure its own size is.

use crate::brief::Brief;
use crate::rules::en_1991_1_4_2005::turbulence;
use crate::rules::{li_2010, mechanics};
use crate::site_plan::floor::Stand;
use crate::site_plan::load::Enclosure;
use crate::source::Source;
use crate::stages::motion::growth::{Exposure, Likely, Movement};
use crate::stages::motion::history::History;
use crate::stages::motion::people::{self, Ground};
use crate::stages::motion::season;
use crate::stages::motion::system::{Planes, System};
use crate::stages::motion::walked::Peaks;
use crate::stages::motion::{Heat, Season};
use crate::units::second;

use super::{Moved, Parts};

/// Weight over its middle at the unfavourable twentieth: what a person who is asked for their weight has on.
const WEIGHT_RATIO: f64 = 1.1;
/// Way from foot to foot, and weight of sitting down, over their middle: half as much again (judgement).
const HABIT_RATIO: f64 = 1.5;
/// Blow of a door over its middle: 20 N s against 10 (judgement).
const DOOR_RATIO: f64 = 2.0;
/// Force of the wind over its middle, in the open: drag of what stands on the pier (judgement).
const DRAG_RATIO: f64 = 1.3;
/// The same behind walls and in a dome, whose share of the wind nobody has measured there (judgement).
const SHELTER_RATIO: f64 = 1.6;
/// Warmth over its middle where nobody measured it (judgement).
const WARMTH_RATIO: f64 = 2.0;
/// Lean of the axis in a year over its middle (judgement).
const SEASON_RATIO: f64 = 2.0;
/// Movement across the wind over that along it: the eddies across are three quarters as strong (EN 1991-1-4 gives none; from
/// memory of full-scale measurements), and turn the drag where those along it change it twice as fast.
const ACROSS_RATIO: f64 = 0.375;

pub type Line = (&'static str, &'static str, Option<Moved>, Source);

/// Everything that moves the star.
pub fn all(parts: &Parts<'_>) -> Vec<Line> {
    let mut all = Vec::from(alone(parts));
    all.extend(walkers(parts));
    all.extend(at_a_place(parts));
    all.push(door(parts));
    all
}

/// What happens with nobody there.
pub fn alone(parts: &Parts<'_>) -> [Line; 3] {
    let flutter = parts
        .wind
        .map(|wind| (wind.guided_rms_arcsec, wind.worst_arcsec));
    with_nobody(parts.brief, flutter, parts.heat, parts.season)
}

/// The same from the flutter in the wind: its rms in typical ground, and in the worst ground as the amplitude of a swing.
pub fn with_nobody(
    brief: &Brief,
    flutter: Option<(f64, f64)>,
    heat: &Heat,
    season: Option<Season>,
) -> [Line; 3] {
    let wind = flutter.map(|(guided_rms_arcsec, worst_arcsec)| {
        let along = |rms: f64| Movement::steady([rms, ACROSS_RATIO * rms]);
        Moved {
            arcsec: 2f64.sqrt() * guided_rms_arcsec,
            likely: Likely {
                expected: along(guided_rms_arcsec),
                soft: along(worst_arcsec / 2f64.sqrt()),
                load_ratio: match brief.load.enclosure.value {
                    Enclosure::Open => DRAG_RATIO,
                    Enclosure::RollOff | Enclosure::Dome => SHELTER_RATIO,
                },
            },
        }
    });
    let heat = drift(heat.guided_arcsec, WARMTH_RATIO);
    let season = season.map(|season| {
        let load = &brief.load;
        let window = load.guiding_interval.value.min(load.exposure.value);
        drift(
            season.drift_arcsec_per_min * second::get(window) / 60.0,
            SEASON_RATIO,
        )
    });
    [
        (
            "wind",
            "Wind on telescope, mount and column",
            wind,
            turbulence::SOURCE,
        ),
        (
            "thermal",
            "Warmth on one side of the column, between two corrections",
            Some(heat),
            mechanics::heat::SOURCE,
        ),
        (
            "season",
            "The axis leans in a year: drift between two corrections",
            season,
            season::SOURCE,
        ),
    ]
}

/// A way that is gone evenly: nobody knows in which direction, so that it is put along one axis.
fn drift(arcsec: f64, load_ratio: f64) -> Moved {
    Moved {
        arcsec,
        likely: Likely::in_any_ground(Movement::steady([arcsec / 12f64.sqrt(), 0.0]), load_ratio),
    }
}

fn walkers(parts: &Parts<'_>) -> Vec<Line> {
    let of = |peaks: &Peaks| Moved {
        arcsec: peaks.typical,
        likely: peaks.likely.clone(),
    };
    let [walk, two] = match parts.walk {
        Some(both) => [Some(of(&both[0])), Some(of(&both[1]))],
        None => [None, None],
    };
    vec![
        (
            "walk",
            "Someone walks the route",
            walk,
            li_2010::step::SOURCE,
        ),
        (
            "second_person",
            "A second person follows in step",
            two,
            Source::judgement("the same steps once more, a metre behind, both feet down at once"),
        ),
    ]
}

/// The ground as people are felt through it.
fn felt<'a>(parts: &'a Parts<'_>) -> Option<(&'a System, Ground<'a>)> {
    let (system, influence) = parts.system.zip(parts.influence)?;
    let floor = parts.floor;
    Some((system, Ground { floor, influence }))
}

/// People at the places where somebody stands: of each thing that they do, the place from which it moves the star most.
fn at_a_place(parts: &Parts<'_>) -> Vec<Line> {
    type Turn = fn(&Ground<'_>, &Planes, &Stand) -> [f64; 2];
    let exposure = &parts.exposure;
    let most = |turn: Turn, shifts: bool, load_ratio: f64| {
        let (system, ground) = felt(parts)?;
        let stands = &parts.brief.floor.stands.value;
        let turns = |planes: &Planes| -> Vec<[f64; 2]> {
            let each = stands.iter().map(|stand| turn(&ground, planes, stand));
            each.collect()
        };
        let seen = |turn: [f64; 2]| {
            Movement::once(if shifts {
                exposure.of_shift(turn)
            } else {
                exposure.of_step(turn)
            })
        };
        let worst = |turns: Vec<[f64; 2]>| worst(exposure, turns.into_iter().map(seen));
        let typical = turns(&system.typical);
        Some(Moved {
            arcsec: typical.iter().map(|[x, y]| x.hypot(*y)).fold(0.0, f64::max),
            likely: Likely {
                expected: worst(typical),
                soft: worst(turns(&system.low)),
                load_ratio,
            },
        })
    };
    let stands: Turn =
        |ground, planes, stand| ground.under(planes, stand.mass_kg, [stand.x_m, stand.y_m]);
    vec![
        (
            "standing",
            "Someone comes to a place or leaves it",
            most(stands, false, WEIGHT_RATIO),
            Source::derived("reciprocity on the solved half-space"),
        ),
        (
            "shifting",
            "Someone shifts from foot to foot",
            most(
                |ground, planes, stand| ground.shifting(planes, stand),
                true,
                HABIT_RATIO,
            ),
            people::SHIFT_SOURCE,
        ),
        (
            "sitting",
            "Someone sits down or kneels",
            most(
                |ground, planes, stand| ground.sitting(planes, stand),
                false,
                HABIT_RATIO,
            ),
            people::SITTING_SOURCE,
        ),
    ]
}

/// A door where it was said to be; else of doors in the middle of the four walls the one that moves the star farthest, and the one
/// that widens it most.
fn door(parts: &Parts<'_>) -> Line {
    let moved = felt(parts).map(|(system, ground)| {
        let [typical, soft] = [&system.typical, &system.low].map(|planes| {
            let each = people::doors(parts.brief).into_iter();
            each.map(|door| ground.door_history(planes, door))
                .collect::<Vec<_>>()
        });
        let worst = |histories: &[History]| {
            let seen = |history| Movement::once(parts.exposure.of_history(history));
            worst(&parts.exposure, histories.iter().map(seen))
        };
        Moved {
            arcsec: typical.iter().map(History::peak_arcsec).fold(0.0, f64::max),
            likely: Likely {
                expected: worst(&typical),
                soft: worst(&soft),
                load_ratio: DOOR_RATIO,
            },
        }
    });
    ("door", "A door slams", moved, people::DOOR_SOURCE)
}

/// Of several movements the one that widens the star most: chosen by what is read from it, so that it does not jump where another
/// takes its place.
fn worst(exposure: &Exposure, movements: impl Iterator<Item = Movement>) -> Movement {
    let grown = movements.map(|one| (exposure.star(&one).growth_ratio(), one));
    grown
        .max_by(|(a, _), (b, _)| a.total_cmp(b))
        .map(|(_, one)| one)
        .unwrap_or_default()
}
