//! The rule for people, and where to stand: words for the plan, for a card on the wall and for the record.

use crate::brief::Brief;
use crate::figure::{Arcsecond, PerCent, Unit, Units};
use crate::stages::motion::Conduct;
use crate::stages::motion::people::Ground;
use crate::stages::motion::quiet::{DIRECTIONS, Gait, Loud, Quiet, person_kg, turn};
use crate::stages::motion::system::System;
use crate::text::lower;
use crate::units::customary::FOOT_M;
use crate::units::{Outcome, metre};

/// Distance of a person's middle from a wall, m.
const FROM_WALL_M: f64 = 0.3;
/// Growth below which nothing shows: a thousandth.
const SHOWS_RATIO: f64 = 0.001;

/// What the card is written from.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// Modes under a rigid load.
    pub system: &'a System,
    /// Ground and floor.
    pub ground: Ground<'a>,
    /// From which movement on a person costs more than is asked.
    pub loud: Loud,
    /// Quiet distance of somebody who stands, and of somebody who walks.
    pub quiet: [Option<Quiet>; 2],
    /// Time for a knock to die.
    pub wait_s: Option<f64>,
    /// What people do, with what it costs.
    pub conduct: &'a [Conduct],
}

/// A place at the floor's edge, and what a person there does to the star in the softest ground.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Edge {
    name: &'static str,
    distance_m: f64,
    arcsec: f64,
    loud: bool,
}

/// The card's sentences, the rule first.
pub fn words(parts: &Parts<'_>) -> Vec<String> {
    let units = parts.brief.units;
    let edges = edges(parts);
    let mut words = vec![rule(parts, &edges)];
    words.extend(costs(parts));
    words.extend(no_room(&edges));
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

/// The one rule: where to stand, whether to walk, and the door.
fn rule(parts: &Parts<'_>, edges: &[Edge]) -> String {
    format!(
        "While it exposes, {}; {}; {}.",
        standing(parts, edges),
        walking(parts, edges),
        door(parts)
    )
}

fn standing(parts: &Parts<'_>, edges: &[Edge]) -> String {
    match parts.quiet[0] {
        Some(quiet) if quiet.anywhere => "you may stand anywhere off the block".into(),
        _ if edges.iter().all(|edge| edge.loud) => "nobody in the room".into(),
        Some(quiet) => format!(
            "nobody nearer than {} to the middle of the pier",
            metres_up(parts.brief.units, quiet.distance_m)
        ),
        None => format!(
            "stand only to the {} of the pier, by the wall",
            list(&still(edges))
        ),
    }
}

fn walking(parts: &Parts<'_>, edges: &[Edge]) -> String {
    let room = edges.iter().map(|edge| edge.distance_m).fold(0.0, f64::max);
    let away = |quiet: Quiet| {
        format!(
            "walk no nearer than {}",
            metres_up(parts.brief.units, quiet.distance_m)
        )
    };
    match (cost_of(parts, "walk"), parts.quiet[1]) {
        (Some((true, cost)), Some(quiet)) if quiet.anywhere => {
            format!("walking there {}", price(parts, cost))
        }
        (Some((true, cost)), _) => format!("walking the drawn route {}", price(parts, cost)),
        (_, Some(quiet)) if quiet.anywhere => "you may walk about there".into(),
        (_, Some(quiet)) if quiet.distance_m <= room => away(quiet),
        _ => "do not walk about".into(),
    }
}

fn door(parts: &Parts<'_>) -> String {
    match cost_of(parts, "door") {
        Some((true, cost)) => format!("a slamming door {}", price(parts, cost)),
        _ => "leave the door".into(),
    }
}

/// Whether a thing that people do is bearable, and its growth; none where that is not known.
fn cost_of(parts: &Parts<'_>, id: &str) -> Option<(bool, Outcome<f64>)> {
    let one = parts.conduct.iter().find(|one| one.id == id)?;
    Some((one.bearable, one.star_growth_ratio?))
}

fn price(parts: &Parts<'_>, growth: Outcome<f64>) -> String {
    if growth.worst < SHOWS_RATIO {
        "does not show".into()
    } else {
        format!("costs {}", per_cent_up(parts.brief.units, growth.worst))
    }
}

/// What each of the things that people do costs when it happens once in an exposure.
fn costs(parts: &Parts<'_>) -> Option<String> {
    let units = parts.brief.units;
    let told: Vec<String> = parts
        .conduct
        .iter()
        .filter_map(|one| {
            let (growth, left) = (one.star_growth_ratio?, one.peak_left_ratio?);
            let fainter = 1.0 - left.worst;
            (growth.worst.max(fainter) >= SHOWS_RATIO).then(|| {
                format!(
                    "{}, {} wider and {} off its peak",
                    lower(one.event),
                    per_cent_up(units, growth.worst),
                    per_cent_up(units, fainter)
                )
            })
        })
        .collect();
    (!told.is_empty()).then(|| {
        format!(
            "What it costs the star at worst, once in an exposure: {}.",
            told.join("; ")
        )
    })
}

fn still(edges: &[Edge]) -> Vec<&'static str> {
    edges
        .iter()
        .filter(|edge| !edge.loud)
        .map(|edge| edge.name)
        .collect()
}

/// The sides on which the floor ends too near to the pier.
fn no_room(edges: &[Edge]) -> Option<String> {
    let bad: Vec<&str> = edges
        .iter()
        .filter(|edge| edge.loud)
        .map(|edge| edge.name)
        .collect();
    (!bad.is_empty() && bad.len() < edges.len()).then(|| {
        format!(
            "Do not stand to the {} of it: there is too little room to be far enough.",
            list(&bad)
        )
    })
}

/// Several people: each counts, and where one may walk but two may not, that is said.
fn together(parts: &Parts<'_>) -> String {
    match (cost_of(parts, "walk"), cost_of(parts, "second_person")) {
        (Some((true, _)), Some((false, two))) => format!(
            "Two people count double, three threefold. Along the drawn route walk one at a time: two in step make the star {} wider.",
            per_cent_up(parts.brief.units, two.worst)
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
pub fn metres_up(units: Units, metres: f64) -> String {
    let step = match units {
        Units::Metric => 0.1,
        Units::Imperial => 0.5 * FOOT_M,
    };
    units.say((metres / step - 1e-9).ceil() * step, Unit::Metre)
}

/// A movement rounded up to a hundredth of an arcsecond, above one to a tenth.
fn arcsec_up(units: Units, arcsec: f64) -> String {
    let steps = if arcsec < 1.0 { 100.0 } else { 10.0 };
    units.say((arcsec * steps - 1e-9).ceil() / steps, Arcsecond)
}

/// A share rounded up to a tenth of a per cent.
fn per_cent_up(units: Units, ratio: f64) -> String {
    units.say((ratio * 1000.0 - 1e-9).ceil() / 10.0, PerCent)
}

/// What a person does at the eight places where the floor ends.
fn edges(parts: &Parts<'_>) -> Vec<Edge> {
    let floor = &parts.brief.floor;
    let half = |extent: f64| (extent / 2.0 - FROM_WALL_M).max(0.2);
    let (length, width) = (
        half(metre::get(floor.length.value)),
        half(metre::get(floor.width.value)),
    );
    let (planes, mass_kg) = (&parts.system.low, person_kg(parts.brief));
    let edge = |(name, x, y): &(&'static str, f64, f64)| {
        let place = [x * length, y * width];
        Edge {
            name,
            distance_m: place[0].hypot(place[1]),
            arcsec: turn(planes, &parts.ground, mass_kg, place),
            loud: parts
                .loud
                .is_loud(planes, &parts.ground, mass_kg, place, Gait::Stands),
        }
    };
    DIRECTIONS.iter().map(edge).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_hangs_on_the_wall_is_rounded_to_the_safe_side() {
        let plain = |text: String| text.replace('\u{a0}', " ");
        assert_eq!(plain(metres_up(Units::Metric, 1.141)), "1.2 m");
        assert_eq!(plain(metres_up(Units::Metric, 1.1)), "1.1 m");
        assert_eq!(plain(metres_up(Units::Imperial, 1.141)), "4\u{2032}");
        assert_eq!(plain(arcsec_up(Units::Metric, 0.051)), "0.06 arcsec");
        assert_eq!(plain(arcsec_up(Units::Metric, 1.51)), "1.6 arcsec");
        assert_eq!(plain(per_cent_up(Units::Metric, 0.0021)), "0.3%");
    }
}
