//! Observing floor, decided.

use crate::brief::{Ask, Given, Taken};
use crate::figure::Unit;
use crate::notes::AssumedValue;
use crate::site_plan::SitePlan;
use crate::site_plan::floor::{FloorKind, Soles, Stand};
use crate::source::Source;
use crate::units::{Frequency, Length, Mass, Velocity, hertz, kilogram, metre, metre_per_second, millimetre};

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
}

/// Decides the floor's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Floor {
    let said = &plan.floor;
    let house = Source::judgement("house default");
    let stands = match &said.stands {
        Some(stands) => Given::said(stands.clone()),
        None => {
            ask.note(
                "floor.stands",
                AssumedValue::Text("one person of 80 kg, 1 m south".into()),
                Unit::One,
                Taken::new("where an observer usually stands", "tilt from standing", house),
            );
            Given::assumed(vec![Stand { name: "Observer".into(), x_m: 0.0, y_m: -1.0, mass_kg: 80.0 }])
        }
    };
    let walk = match &said.walk {
        Some(walk) => Given::said(walk.clone()),
        None => {
            ask.note(
                "floor.walk",
                AssumedValue::Text("past the south side, 1.2 m from the axis".into()),
                Unit::One,
                Taken::new("the way from a door to the eyepiece", "trail of the star", house),
            );
            Given::assumed(vec![[-2.0, -1.2], [2.0, -1.2]])
        }
    };
    Floor {
        kind: ask.choice(
            "floor.kind",
            said.kind,
            FloorKind::Ground,
            FloorKind::key,
            Taken::new(
                "the worst for a pier: weight goes straight into the ground beside it",
                "where a person's weight reaches the ground",
                house,
            ),
        ),
        gap: ask.number(
            "floor.gap_mm",
            Unit::Millimetre,
            said.gap_mm,
            millimetre::new,
            25.0,
            Taken::new("wide enough never to touch, narrow enough not to catch a heel", "whether the floor touches the pier", house),
        ),
        level: ask.number(
            "floor.level_m",
            Unit::Metre,
            said.level_m,
            metre::new,
            0.0,
            Taken::new("level with the ground", "height of the pier above the floor", house),
        ),
        length: ask.number(
            "floor.length_m",
            Unit::Metre,
            said.length_m,
            metre::new,
            3.0,
            Taken::new("a common small observatory", "the drawn floor", house),
        ),
        width: ask.number(
            "floor.width_m",
            Unit::Metre,
            said.width_m,
            metre::new,
            3.0,
            Taken::new("a common small observatory", "the drawn floor", house),
        ),
        slab_thickness: ask.number(
            "floor.slab_thickness_mm",
            Unit::Millimetre,
            said.slab_thickness_mm,
            millimetre::new,
            100.0,
            Taken::new("a common garden slab", "how a slab spreads a load", house),
        ),
        walk_speed: ask.number(
            "floor.walk_speed_m_s",
            Unit::MetrePerSecond,
            said.walk_speed_m_s,
            metre_per_second::new,
            1.0,
            Taken::new("a walk in a dark room", "how long a walk lasts", house),
        ),
        pace: ask.number(
            "floor.pace_hz",
            Unit::Hertz,
            said.pace_hz,
            hertz::new,
            1.8,
            Taken::new("a usual pace", "what the walk shakes", house),
        ),
        walker_mass: ask.number(
            "floor.walker_mass_kg",
            Unit::Kilogram,
            said.walker_mass_kg,
            kilogram::new,
            80.0,
            Taken::new("an adult", "what the walk shakes", house),
        ),
        soles: ask.choice("floor.soles", said.soles, Soles::Soft, Soles::key, Taken::new("usual at night", "what the walk shakes", house)),
        stands,
        walk,
        supports: said.supports.clone().unwrap_or_default(),
    }
}
