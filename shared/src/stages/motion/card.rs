//! Where to stand: words for a card on the wall.

use crate::brief::Brief;
use crate::figure::{Unit, Units};
use crate::stages::motion::people::Ground;
use crate::stages::motion::quiet::{DIRECTIONS, Quiet, person_kg, turn};
use crate::stages::motion::system::System;
use crate::units::metre;

/// Distance of a person's middle from a wall, m.
const FROM_WALL_M: f64 = 0.3;

/// What the card is written from.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// Modes.
    pub system: &'a System,
    /// Ground and floor.
    pub ground: Ground<'a>,
    /// Budget, arcsec.
    pub budget_arcsec: f64,
    /// Quiet distance of somebody who stands, and of somebody who walks.
    pub quiet: [Option<Quiet>; 2],
    /// How many times as far as somebody who stands a step moves the star.
    pub step_ratio: f64,
    /// Time for a knock to die.
    pub wait_s: Option<f64>,
    /// What a walk along the path does in the softest ground, alone and with somebody who follows.
    pub walking_arcsec: Option<[f64; 2]>,
}

/// A place at the floor's edge, and what a person there does to the star.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Edge {
    name: &'static str,
    distance_m: f64,
    arcsec: f64,
}

/// The card's sentences.
#[must_use]
pub fn words(parts: &Parts<'_>) -> Vec<String> {
    let units = parts.brief.units;
    let edges = edges(parts);
    let mut words = standing(parts, &edges);
    words.push(walking(parts, &edges));
    let stillest = edges
        .iter()
        .min_by(|a, b| a.arcsec.total_cmp(&b.arcsec))
        .filter(|_| !anywhere(parts.quiet[0]));
    words.extend(stillest.map(|edge| {
        format!(
            "The stillest place is to the {}, {} from the middle of the pier: a person there moves the star by {}.",
            edge.name,
            units.say(edge.distance_m, Unit::Metre),
            arcsec_up(units, edge.arcsec)
        )
    }));
    words.push(together(parts));
    words.push("Touch neither pier, telescope nor anything that is fixed to them, and keep feet, bags and chairs off the block.".into());
    words.push(match parts.wait_s {
        Some(wait) => format!(
            "After a bump, a slew or a flip across the meridian, wait {} before the next exposure.",
            units.say(wait.max(1.0).ceil(), Unit::Second)
        ),
        None => {
            "After a bump, a slew or a flip across the meridian, wait until the star stands still."
                .into()
        }
    });
    words
}

fn anywhere(quiet: Option<Quiet>) -> bool {
    quiet.is_some_and(|quiet| quiet.anywhere)
}

fn standing(parts: &Parts<'_>, edges: &[Edge]) -> Vec<String> {
    let units = parts.brief.units;
    let budget = units.say(parts.budget_arcsec, Unit::Arcsecond);
    let still = |edge: &&Edge| edge.arcsec <= parts.budget_arcsec;
    match (edges.iter().filter(still).count(), parts.quiet[0]) {
        (_, Some(quiet)) if quiet.anywhere => vec![format!(
            "While an exposure runs you may stand anywhere on this floor, off the block: a person who stands still moves the star by less \
             than {budget}."
        )],
        (8, Some(quiet)) => vec![format!(
            "While an exposure runs, stand at least {} from the middle of the pier; out there a person who stands still moves the star by \
             less than {budget}.",
            metres_up(units, quiet.distance_m)
        )],
        (0, _) => {
            let least = edges
                .iter()
                .map(|edge| edge.arcsec)
                .reduce(f64::min)
                .unwrap_or(0.0);
            vec![format!(
                "Nowhere on this floor is far enough from the pier: leave the room while an exposure runs. Even in the stillest place a \
                 person moves the star by {}, and {budget} is the most that is acceptable.",
                arcsec_up(units, least)
            )]
        }
        _ => {
            let good: Vec<&str> = edges.iter().filter(still).map(|edge| edge.name).collect();
            let bad: Vec<&str> = edges
                .iter()
                .filter(|edge| !still(edge))
                .map(|edge| edge.name)
                .collect();
            vec![
                format!(
                    "While an exposure runs, stand by the walls to the {} of the pier.",
                    list(&good)
                ),
                format!(
                    "Do not stand to the {} of it: there is too little room to be far enough.",
                    list(&bad)
                ),
            ]
        }
    }
}

fn walking(parts: &Parts<'_>, edges: &[Edge]) -> String {
    let units = parts.brief.units;
    let times = format!("{:.1}", parts.step_ratio);
    let room = edges.iter().map(|edge| edge.distance_m).fold(0.0, f64::max);
    match parts.quiet[1] {
        Some(quiet) if quiet.anywhere => {
            format!(
                "You may walk about as well: a step moves the star {times} times as far as somebody who stands there, and that is within it too."
            )
        }
        Some(quiet) if quiet.distance_m <= room => format!(
            "Walk no nearer than {} to the middle of the pier: a step moves the star {times} times as far as somebody who stands there.",
            metres_up(units, quiet.distance_m)
        ),
        _ => format!(
            "Do not walk about while an exposure runs: a step moves the star {times} times as far as somebody who stands there."
        ),
    }
}

/// Several people: each counts, and where one may walk but two may not, that is said.
fn together(parts: &Parts<'_>) -> String {
    let units = parts.brief.units;
    match parts.walking_arcsec {
        Some([one, two]) if one <= parts.budget_arcsec && two > parts.budget_arcsec => format!(
            "Two people count double, three threefold. Along the drawn path walk one at a time: two in step move the star by {}.",
            arcsec_up(units, two)
        ),
        _ => "Two people count double, three threefold.".into(),
    }
}

fn list(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

/// A distance to keep, rounded up to what a tape on a wall shows: a tenth of a metre, half a foot.
fn metres_up(units: Units, metres: f64) -> String {
    let step = match units {
        Units::Metric => 0.1,
        Units::Imperial => 0.5 * 0.3048,
    };
    units.say((metres / step - 1e-9).ceil() * step, Unit::Metre)
}

/// A movement rounded up to a hundredth of an arcsecond, above one to a tenth.
fn arcsec_up(units: Units, arcsec: f64) -> String {
    let steps = if arcsec < 1.0 { 100.0 } else { 10.0 };
    units.say((arcsec * steps - 1e-9).ceil() / steps, Unit::Arcsecond)
}

/// What a person does at the eight places where the floor ends.
fn edges(parts: &Parts<'_>) -> Vec<Edge> {
    let floor = &parts.brief.floor;
    let half = |extent: f64| (extent / 2.0 - FROM_WALL_M).max(0.2);
    let (length, width) = (
        half(metre::get(floor.length.value)),
        half(metre::get(floor.width.value)),
    );
    DIRECTIONS
        .iter()
        .map(|(name, x, y)| {
            let place = [x * length, y * width];
            Edge {
                name,
                distance_m: place[0].hypot(place[1]),
                arcsec: turn(
                    &parts.system.low,
                    &parts.ground,
                    person_kg(parts.brief),
                    place,
                ),
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_hangs_on_the_wall_is_rounded_to_the_safe_side() {
        let plain = |text: String| text.replace('\u{a0}', " ");
        assert_eq!(plain(metres_up(Units::Metric, 1.141)), "1.2 m");
        assert_eq!(plain(metres_up(Units::Metric, 1.1)), "1.1 m");
        assert_eq!(plain(metres_up(Units::Imperial, 1.141)), "4 ft");
        assert_eq!(plain(arcsec_up(Units::Metric, 0.051)), "0.06 arcsec");
        assert_eq!(plain(arcsec_up(Units::Metric, 1.51)), "1.6 arcsec");
    }
}
