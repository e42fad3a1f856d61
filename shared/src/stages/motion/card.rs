//! Where to stand: words for a card on the wall.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::site_plan::floor::FloorKind;
use crate::stages::motion::people::Ground;
use crate::stages::motion::system::{Planes, System};
use crate::units::{kilogram, metre};

/// The eight directions, clockwise from north.
const DIRECTIONS: [(&str, f64, f64); 8] = [
    ("north", 0.0, 1.0),
    ("north-east", 1.0, 1.0),
    ("east", 1.0, 0.0),
    ("south-east", 1.0, -1.0),
    ("south", 0.0, -1.0),
    ("south-west", -1.0, -1.0),
    ("west", -1.0, 0.0),
    ("north-west", -1.0, 1.0),
];
/// Distance of a person's middle from a wall, m.
const FROM_WALL_M: f64 = 0.3;
/// Rounds of the search for the quiet distance.
const ROUNDS: usize = 6;
/// Farthest that is looked at, m.
const FARTHEST_M: f64 = 20.0;

/// A place at the floor's edge, and what a person there does to the star.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Edge {
    name: &'static str,
    distance_m: f64,
    arcsec: f64,
}

/// Distance from which on a person moves the star by less than the budget, in the low ground, whichever way from the pier.
///
/// The movement falls about as the square of the distance, so that a few steps towards the budget find it; it is then
/// looked at again that no direction is louder.
#[must_use]
pub fn quiet_distance_m(brief: &Brief, system: &System, ground: &Ground<'_>, budget_arcsec: f64) -> Option<f64> {
    let mass = person_kg(brief);
    // Without posts the block's two planes of symmetry make one quarter stand for all.
    let asked = if ground.floor.kind != FloorKind::Deck { 3 } else { DIRECTIONS.len() };
    let loudest = |distance: f64| {
        DIRECTIONS
            .iter()
            .take(asked)
            .map(|(_, x, y)| {
                let length = x.hypot(*y);
                turn(&system.low, ground, mass, [x / length * distance, y / length * distance])
            })
            .fold(0.0, f64::max)
    };
    let nearest = 0.5 * metre::get(brief.pier.outside_diameter.value);
    let mut distance = 1.5;
    for _ in 0..ROUNDS {
        let next = (distance * (loudest(distance) / budget_arcsec).sqrt()).clamp(nearest, FARTHEST_M);
        let settled = (next / distance - 1.0).abs() < 0.01;
        distance = next;
        if settled {
            break;
        }
    }
    (distance < FARTHEST_M).then_some(distance)
}

/// The card's sentences.
#[must_use]
pub fn words(
    brief: &Brief,
    system: &System,
    ground: &Ground<'_>,
    budget_arcsec: f64,
    quiet_m: Option<f64>,
    wait_s: Option<f64>,
) -> Vec<String> {
    let edges = edges(brief, system, ground);
    let still = |edge: &&Edge| edge.arcsec <= budget_arcsec;
    let mut words = Vec::new();
    let least = edges.iter().min_by(|a, b| a.arcsec.total_cmp(&b.arcsec));
    let quiet = quiet_m.map(|quiet| quiet.max(metre::get(brief.pier.outside_diameter.value)));
    match (edges.iter().filter(still).count(), quiet) {
        (8, Some(quiet)) => words.push(format!(
            "While an exposure runs, walk and stand at least {} from the pier; out there a person moves the star by less than {}.",
            brief.units.say(quiet, Unit::Metre),
            brief.units.say(budget_arcsec, Unit::Arcsecond)
        )),
        (0, _) => words.push(format!(
            "Nowhere on this floor is far enough from the pier: leave the room while an exposure runs. Even in the stillest place a \
             person moves the star by {}.",
            least.map_or_else(String::new, |edge| brief.units.say(edge.arcsec, Unit::Arcsecond))
        )),
        _ => {
            let good: Vec<&str> = edges.iter().filter(still).map(|edge| edge.name).collect();
            let bad: Vec<&str> = edges.iter().filter(|edge| !still(edge)).map(|edge| edge.name).collect();
            words.push(format!("While an exposure runs, stand by the walls to the {} of the pier.", list(&good)));
            words.push(format!("Do not stand or walk to the {} of it.", list(&bad)));
        }
    }
    if let Some(edge) = least {
        words.push(format!(
            "The stillest place is to the {}, {} from the pier: a person there moves the star by {}.",
            edge.name,
            brief.units.say(edge.distance_m, Unit::Metre),
            brief.units.say(edge.arcsec, Unit::Arcsecond)
        ));
    }
    words.push("Touch neither pier, telescope nor anything that is fixed to them, and keep bags and chairs off the block.".into());
    if let Some(wait) = wait_s {
        words.push(format!(
            "After a bump, a slew or a step close to the pier, wait {} before the next exposure.",
            brief.units.say(wait.max(1.0).ceil(), Unit::Second)
        ));
    }
    words
}

fn list(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

/// What a person does at the eight places where the floor ends.
fn edges(brief: &Brief, system: &System, ground: &Ground<'_>) -> Vec<Edge> {
    let half = |extent: f64| (extent / 2.0 - FROM_WALL_M).max(0.2);
    let (length, width) = (half(metre::get(brief.floor.length.value)), half(metre::get(brief.floor.width.value)));
    DIRECTIONS
        .iter()
        .map(|(name, x, y)| {
            let place = [x * length, y * width];
            Edge { name, distance_m: place[0].hypot(place[1]), arcsec: turn(&system.low, ground, person_kg(brief), place) }
        })
        .collect()
}

fn person_kg(brief: &Brief) -> f64 {
    kilogram::get(brief.floor.walker_mass.value)
}

fn turn(planes: &Planes, ground: &Ground<'_>, mass_kg: f64, place: [f64; 2]) -> f64 {
    let [x, y] = ground.under(planes, mass_kg, place);
    x.hypot(y)
}
