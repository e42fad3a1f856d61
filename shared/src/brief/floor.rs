//! Observing floor, decided.

use crate::brief::{Ask, Given, Taken};
use crate::field::Number;
use crate::figure::{Metre, Unit};
use crate::path;
use crate::site_plan::floor::{FloorKind, Joists, Soles, Stand, Wall};
use crate::site_plan::{self, Floor as Said, SitePlan};
use crate::source::Source;
use crate::units::{Frequency, Length, Mass, Velocity};

/// Complete answers about the floor.
#[derive(Debug, Clone, PartialEq)]
pub struct Floor {
    /// What people stand on.
    pub kind: Given<FloorKind>,
    /// Gap to the pier.
    pub gap: Given<Length>,
    /// Level above ground.
    pub level: Given<Length>,
    /// Extent along x.
    pub length: Given<Length>,
    /// Extent along y.
    pub width: Given<Length>,
    /// Thickness of a slab.
    pub slab_thickness: Given<Length>,
    /// Speed of the walk.
    pub walk_speed: Given<Velocity>,
    /// Steps a second.
    pub pace: Given<Frequency>,
    /// Walker.
    pub walker_mass: Given<Mass>,
    /// Soles.
    pub soles: Given<Soles>,
    /// Places where people stand.
    pub stands: Given<Vec<Stand>>,
    /// Path, x and y in metres.
    pub walk: Given<Vec<[f64; 2]>>,
    /// Posts of a deck, x and y in metres; empty: none stated.
    pub supports: Vec<[f64; 2]>,
    /// Which way a deck's joists run, where that was said.
    pub joists: Option<Joists>,
    /// Wall with the door, where that was said.
    pub door_wall: Option<Wall>,
    /// Place of the door along its wall, from the wall's middle.
    pub door_offset: Given<Length>,
}

/// Decides the floor's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Floor {
    let said = &plan.floor;
    let kind = ask.choice(
        Said::kind,
        FloorKind::Ground,
        Taken::new(
            "the worst for a pier: weight goes straight into the ground beside it",
            "where a person's weight reaches the ground",
            HOUSE,
        ),
    );
    Floor {
        kind,
        gap: gap(ask),
        level: level(kind.value, ask),
        length: extent(Said::length_m, ask),
        width: extent(Said::width_m, ask),
        slab_thickness: slab_thickness(ask),
        walk_speed: walk_speed(ask),
        pace: pace(ask),
        walker_mass: walker_mass(ask),
        soles: ask.choice(
            Said::soles,
            Soles::Soft,
            Taken::new("usual at night", "what the walk shakes", HOUSE),
        ),
        stands: stands(said, ask),
        walk: walk(said, ask),
        supports: said.supports.clone().unwrap_or_default(),
        joists: said.joists,
        door_wall: door_wall(said, ask),
        door_offset: door_offset(ask),
    }
}

/// A person, where nobody said how heavy, kg.
const PERSON_KG: f64 = 80.0;
/// Source of what is usual.
const HOUSE: Source = Source::judgement("house default");

fn gap(ask: &mut Ask) -> Given<Length> {
    let taken = Taken::new(
        "wide enough never to touch, narrow enough not to catch a heel",
        "whether the floor touches the pier",
        HOUSE,
    );
    ask.number(Said::gap_mm, 25.0, taken)
}

/// Ground and slab lie level with the ground; a deck's joists must clear the block's top.
fn level(kind: FloorKind, ask: &mut Ask) -> Given<Length> {
    let (value, why) = match kind {
        FloorKind::Ground | FloorKind::Slab => (0.0, "level with the ground"),
        FloorKind::Deck => (
            0.3,
            "the joists clear the block's top, and two steps lead up",
        ),
    };
    let taken = Taken::new(
        why,
        "height of the eye, the walls and the pier above the floor",
        HOUSE,
    );
    ask.number(Said::level_m, value, taken)
}

fn extent(row: Number<Metre>, ask: &mut Ask) -> Given<Length> {
    let taken = Taken::new(
        "a common small observatory",
        "the drawn floor, and where a deck's posts may stand",
        HOUSE,
    );
    ask.number(row, 3.0, taken)
}

fn slab_thickness(ask: &mut Ask) -> Given<Length> {
    let taken = Taken::new(
        "a common garden slab",
        "how far a slab spreads a weight",
        HOUSE,
    );
    ask.number(Said::slab_thickness_mm, 100.0, taken)
}

fn walk_speed(ask: &mut Ask) -> Given<Velocity> {
    let taken = Taken::new("a walk in a dark room", "how long a walk lasts", HOUSE);
    ask.number(Said::walk_speed_m_s, 1.0, taken)
}

fn pace(ask: &mut Ask) -> Given<Frequency> {
    ask.number(
        Said::pace_hz,
        1.8,
        Taken::new("a usual pace", "what the walk shakes", HOUSE),
    )
}

fn walker_mass(ask: &mut Ask) -> Given<Mass> {
    let taken = Taken::new("an adult", "what the walk shakes", HOUSE);
    ask.number(Said::walker_mass_kg, PERSON_KG, taken)
}

/// Where no wall was said, each of the four is tried and the worst one counts.
fn door_wall(said: &site_plan::Floor, ask: &mut Ask) -> Option<Wall> {
    if said.door_wall.is_none() {
        let taken = Taken::new(
            "of the four walls the one whose door moves the star most",
            "what a door that falls shut does to the star",
            HOUSE,
        );
        ask.note_text(
            path!(floor.door_wall),
            "All four walls are tried and the worst one counts".into(),
            taken,
        );
    }
    said.door_wall
}

fn door_offset(ask: &mut Ask) -> Given<Length> {
    let taken = Taken::new(
        "a door in the middle of its wall",
        "what a door that falls shut does to the star",
        HOUSE,
    );
    ask.number(Said::door_offset_m, 0.0, taken)
}

fn stands(said: &site_plan::Floor, ask: &mut Ask) -> Given<Vec<Stand>> {
    if let Some(stands) = &said.stands {
        return Given::said(stands.clone());
    }
    let out = ask.stock.either(1.0, 0.9906);
    let place = format!(
        "one person of {}, {} south",
        ask.units.say(PERSON_KG, Unit::Kilogram),
        ask.units.say(out, Unit::Metre)
    );
    let taken = Taken::new(
        "where an observer usually stands",
        "tilt from standing",
        HOUSE,
    );
    ask.note_text(path!(floor.stands), place, taken);
    Given::assumed(vec![Stand {
        name: "Observer".into(),
        x_m: 0.0,
        y_m: -out,
        mass_kg: PERSON_KG,
    }])
}

fn walk(said: &site_plan::Floor, ask: &mut Ask) -> Given<Vec<[f64; 2]>> {
    if let Some(walk) = &said.walk {
        return Given::said(walk.clone());
    }
    let out = ask.stock.either(1.2, 1.2192);
    let path = format!(
        "past the south side, {} from the axis",
        ask.units.say(out, Unit::Metre)
    );
    let taken = Taken::new(
        "the way from a door to the eyepiece",
        "trail of the star",
        HOUSE,
    );
    ask.note_text(path!(floor.walk), path, taken);
    Given::assumed(vec![[-2.0, -out], [2.0, -out]])
}
