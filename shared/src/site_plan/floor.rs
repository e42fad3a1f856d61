//! Observing floor: what people stand on, where, and how they walk.

mod contradictions;

use crate::path;
use serde::{Deserialize, Serialize};

pub use contradictions::contradictions;

use crate::field::{Answer, Cell, Kind, Problem, choice, section};
use crate::figure::{Unit, Units};
use crate::site_plan::{HOUSE, SitePlan, text_problem};

/// Most stands a floor may have.
pub const MOST_STANDS: usize = 12;
/// Most corners a walk may have.
pub const MOST_WALK_POINTS: usize = 40;
/// Most posts a deck may have.
pub const MOST_SUPPORTS: usize = 40;
/// Farthest from the pier that a place may be, m.
pub const FARTHEST_M: f64 = 50.0;

choice! {
    /// What people stand on.
    pub enum FloorKind {
        /// The ground itself.
        Ground = "ground", "The ground itself";
        /// A slab on the ground, separate from the block.
        Slab = "slab", "A slab on the ground, separate from the block";
        /// A deck on joists and posts.
        Deck = "deck", "A deck on joists and posts";
    }
}

choice! {
    /// Soles of the walker.
    pub enum Soles {
        /// Soft.
        Soft = "soft", "Soft";
        /// Hard heels.
        Hard = "hard", "Hard heels";
    }
}

choice! {
    /// Which way a deck's joists run.
    pub enum Joists {
        /// East and west.
        X = "x", "East to west";
        /// North and south.
        Y = "y", "North to south";
    }
}

choice! {
    /// A wall of the house round the floor.
    pub enum Wall {
        /// North.
        North = "north", "North";
        /// East.
        East = "east", "East";
        /// South.
        South = "south", "South";
        /// West.
        West = "west", "West";
    }
}

/// A place where somebody stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stand {
    /// What it is called.
    pub name: String,
    /// East of the pier's axis.
    pub x_m: f64,
    /// North of the pier's axis.
    pub y_m: f64,
    /// Mass of the person or thing.
    pub mass_kg: f64,
}

impl Answer for Vec<[f64; 2]> {
    // A walk and the posts of a deck may have as many.
    const KIND: Kind = Kind::Points(MOST_WALK_POINTS);
}

impl Answer for Vec<Stand> {
    const KIND: Kind = Kind::Rows(
        &[
            Cell::text("name", "What it is called."),
            Cell::number("x_m", "East of the pier's axis, m."),
            Cell::number("y_m", "North of the pier's axis, m."),
            Cell::number("mass_kg", "Mass of the person or thing, kg."),
        ],
        MOST_STANDS,
    );
}

section! {
    /// Observing floor.
    pub struct Floor in floor {
        numbers {
            /// Floor gap: clear space between floor and pier, all round.
            gap_mm: Millimetre, 0.0..=1000.0, "zero touches the pier, more than 1000 is a hole to fall into",
                asks "Floor gap: clear space between floor and pier",
                hint "All round. A mouse gets through the width of a pencil, a dropped screw through less.",
                takes 25.0, because "wide enough never to touch, narrow enough not to catch a heel",
                changes "whether the floor touches the pier", from HOUSE;
            /// Level of the finished floor above ground level.
            level_m: Metre, -1.0..=6.0, "from a sunk pit to a raised tower",
                asks "Level of the floor above the ground",
                hint "Below ground level is negative.",
                unknown "The floor is assumed to lie at ground level.";
            /// Extent of the floor along x.
            length_m: Metre, 1.0..=30.0, "smaller holds nobody, larger is a hall",
                asks "Length of the floor, east to west",
                takes 3.0, because "a common small observatory",
                changes "the drawn floor, and where a deck's posts may stand", from HOUSE;
            /// Extent of the floor along y.
            width_m: Metre, 1.0..=30.0, "smaller holds nobody, larger is a hall",
                asks "Width of the floor, north to south",
                takes 3.0, because "a common small observatory",
                changes "the drawn floor, and where a deck's posts may stand", from HOUSE;
            /// Thickness of a slab.
            slab_thickness_mm: Millimetre, 40.0..=400.0, "thinner cracks, thicker is a foundation",
                asks "Thickness of the slab",
                takes 100.0, because "a common garden slab",
                changes "how far a slab spreads a weight", from HOUSE;
            /// Speed of the walk.
            walk_speed_m_s: MetrePerSecond, 0.2..=3.0, "slower is standing, faster is running",
                asks "How fast do they walk?",
                takes 1.0, because "a walk in a dark room",
                changes "how long a walk lasts", from HOUSE;
            /// Steps a second.
            pace_hz: Hertz, 1.0..=3.0, "from a stroll to a run",
                asks "Steps a second",
                takes 1.8, because "a usual pace",
                changes "what the walk shakes", from HOUSE;
            /// Mass of the walker.
            walker_mass_kg: Kilogram, 10.0..=250.0, "from a child to the heaviest adult with kit",
                asks "What does the walker weigh?",
                hint "With coat and bag.",
                because "an adult",
                changes "what the walk shakes", from HOUSE;
            /// Place of the door's middle along its wall, from the wall's middle: east or north is positive.
            door_offset_m: Metre, -15.0..=15.0, "farther out the longest floor has no wall",
                asks "How far is it from the middle of that wall?",
                hint "In a north or south wall, east is positive; in an east or west wall, north is.",
                takes 0.0, because "a door in the middle of its wall",
                changes "what a slamming door does to the star", from HOUSE;
        }
        counts {}
        others {
            /// What people stand on.
            kind: FloorKind,
                asks "What is the floor?",
                takes FloorKind::Ground, because "the worst for a pier: weight goes straight into the ground beside it",
                changes "where a person's weight reaches the ground", from HOUSE;
            /// Soles of the walker.
            soles: Soles,
                asks "What kind of soles?",
                takes Soles::Soft, because "usual at night",
                changes "what the walk shakes", from HOUSE;
            /// Which way a deck's joists run.
            joists: Joists,
                asks "Which way do the joists run?",
                hint "Joists are the beams right under the boards; they lie across the boards. Only for a deck.",
                unknown "The posts round a person share the weight.";
            /// Wall in which the door is.
            door_wall: Wall,
                asks "In which wall is the door?",
                unknown "All four walls are tried and the worst one counts.",
                because "of the four walls the one whose door moves the star most",
                changes "what a slamming door does to the star", from HOUSE;
            /// Places where people stand; null where not known.
            stands: Vec<Stand>,
                asks "Places where someone stands or sits",
                because "where an observer usually stands",
                changes "tilt from standing", from HOUSE;
            /// Corners of the path people walk, x and y; null where not known.
            walk: Vec<[f64; 2]>,
                asks "Corners of the route people walk",
                hint "From the door to the desk, for instance.",
                because "the way from a door to the eyepiece",
                changes "trail of the star", from HOUSE;
            /// Posts of a deck, x and y; null where not known.
            supports: Vec<[f64; 2]>,
                asks "Posts of a deck",
                hint "Only for a deck. From the middle of the pier.",
                unknown "Posts at the corners of the deck are assumed.";
        }
    }
}

/// Texts and places out of range.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let (floor, units) = (&plan.floor, plan.units.unwrap_or_default());
    let mut problems = Vec::new();
    let stands = floor.stands.as_deref().unwrap_or_default();
    problems.extend(too_many(&path!(floor.stands), stands.len(), MOST_STANDS));
    for (i, stand) in stands.iter().enumerate() {
        problems.extend(text_problem(
            &format!("floor.stands[{i}].name"),
            &stand.name,
            80,
        ));
        problems.extend(place_problem(
            &format!("floor.stands[{i}].x_m"),
            stand.x_m,
            units,
        ));
        problems.extend(place_problem(
            &format!("floor.stands[{i}].y_m"),
            stand.y_m,
            units,
        ));
        if !(stand.mass_kg.is_finite() && (1.0..=2000.0).contains(&stand.mass_kg)) {
            problems.push(Problem {
                fields: vec![format!("floor.stands[{i}].mass_kg")],
                value: stand.mass_kg.is_finite().then_some(stand.mass_kg),
                said: format!(
                    "{} is outside the range of {} to {}: from a tool bag to a group of people.",
                    units.say(stand.mass_kg, Unit::Kilogram),
                    units.say(1.0, Unit::Kilogram),
                    units.say(2000.0, Unit::Kilogram)
                ),
            });
        }
    }
    for (field, points, most) in [
        (path!(floor.walk), &floor.walk, MOST_WALK_POINTS),
        (path!(floor.supports), &floor.supports, MOST_SUPPORTS),
    ] {
        let points = points.as_deref().unwrap_or_default();
        problems.extend(too_many(&field, points.len(), most));
        for (i, point) in points.iter().enumerate() {
            for (j, &coordinate) in point.iter().enumerate() {
                problems.extend(place_problem(
                    &format!("{field}[{i}][{j}]"),
                    coordinate,
                    units,
                ));
            }
        }
    }
    problems
}

fn too_many(field: &str, count: usize, most: usize) -> Option<Problem> {
    (count > most).then(|| Problem {
        fields: vec![field.to_owned()],
        value: Some(count as f64),
        said: format!("There are {count}; {most} is the most that a drawing shows."),
    })
}

fn place_problem(field: &str, value: f64, units: Units) -> Option<Problem> {
    (!value.is_finite() || value.abs() > FARTHEST_M).then(|| Problem {
        fields: vec![field.to_owned()],
        value: value.is_finite().then_some(value),
        said: format!(
            "{} is outside the range of {} to {} from the pier: farther away nobody moves the pier.",
            units.say(value, Unit::Metre),
            units.say(-FARTHEST_M, Unit::Metre),
            units.say(FARTHEST_M, Unit::Metre)
        ),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stand_out_of_range_is_told_in_the_readers_units() {
        let stand = Stand {
            name: "Far".into(),
            x_m: 100.0,
            y_m: 0.0,
            mass_kg: 5000.0,
        };
        let mut plan = SitePlan {
            units: Some(Units::Imperial),
            ..SitePlan::unknown()
        };
        plan.floor.stands = Some(vec![stand]);
        let said: Vec<String> = problems(&plan)
            .into_iter()
            .map(|problem| problem.said)
            .collect();
        assert!(
            said.len() == 2 && said[0].contains('\u{2032}') && said[1].contains("lb"),
            "{said:?}"
        );
        assert!(
            said.iter()
                .all(|said| !said.contains("\u{a0}m ") && !said.contains("kg")),
            "{said:?}"
        );
    }
}
