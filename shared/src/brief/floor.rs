//! Observing floor, decided.

use crate::brief::{Ask, Given, Taken, taken, usual};
use crate::figure::Unit;
use crate::path;
use crate::site_plan::floor::{FloorKind, Joists, Soles, Stand, Wall};
use crate::site_plan::{self, Floor as Said, HOUSE, SitePlan};
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
    let kind = usual!(ask, Said::kind);
    Floor {
        kind,
        gap: gap(ask),
        level: level(kind.value, ask),
        length: usual!(ask, Said::length_m),
        width: usual!(ask, Said::width_m),
        slab_thickness: slab_thickness(ask),
        walk_speed: walk_speed(ask),
        pace: pace(ask),
        walker_mass: walker_mass(ask),
        soles: usual!(ask, Said::soles),
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

fn gap(ask: &mut Ask) -> Given<Length> {
    usual!(ask, Said::gap_mm)
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

fn slab_thickness(ask: &mut Ask) -> Given<Length> {
    usual!(ask, Said::slab_thickness_mm)
}

fn walk_speed(ask: &mut Ask) -> Given<Velocity> {
    usual!(ask, Said::walk_speed_m_s)
}

fn pace(ask: &mut Ask) -> Given<Frequency> {
    usual!(ask, Said::pace_hz)
}

fn walker_mass(ask: &mut Ask) -> Given<Mass> {
    taken!(ask, Said::walker_mass_kg, PERSON_KG)
}

/// Where no wall was said, each of the four is tried and the worst one counts.
fn door_wall(said: &site_plan::Floor, ask: &mut Ask) -> Option<Wall> {
    if said.door_wall.is_none() {
        ask.note_text(
            path!(floor.door_wall),
            "All four walls are tried and the worst one counts".into(),
            taken!(Said::door_wall),
        );
    }
    said.door_wall
}

fn door_offset(ask: &mut Ask) -> Given<Length> {
    usual!(ask, Said::door_offset_m)
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
    ask.note_text(path!(floor.stands), place, taken!(Said::stands));
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
    ask.note_text(path!(floor.walk), path, taken!(Said::walk));
    Given::assumed(vec![[-2.0, -out], [2.0, -out]])
}
