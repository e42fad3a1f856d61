//! How the ground holds the block: stiffness by ground, what is not even in it, and ground that stiffens with depth.

use stillground::figure::{One, Unit, Units};
use stillground::stages::ground_stiffness::{GroundStiffness, Stiffness};
use stillground::units::{Spread, newton_metre_per_radian, newton_per_metre};

use super::{Chapter, Table, by_ground, grounds};
use crate::planned::Planned;
use crate::views::words::sentence;

/// The footing's chapters; none where the ground is not known.
pub fn chapters(planned: &Planned) -> Vec<Chapter> {
    let (stiffness, units) = (&planned.design.ground_stiffness, planned.brief.units);
    if stiffness.solved.is_none() {
        return Vec::new();
    }
    let mut chapters = vec![held(stiffness, units)];
    if !stiffness.layers.is_empty() {
        chapters.push(uneven(stiffness, units));
    }
    if !stiffness.stiffening.is_empty() {
        chapters.push(stiffening(stiffness, units));
    }
    chapters
}

/// A stiffness: its name, its figure in one ground, its unit.
type Held = (&'static str, fn(&Stiffness) -> Option<f64>, Unit);

const HELD: [Held; 6] = [
    (
        "Against settling",
        |k| k.vertical.map(|k| newton_per_metre::get(k) / 1e6),
        Unit::MeganewtonPerMetre,
    ),
    (
        "Against sliding, east–west",
        |k| k.horizontal_x.map(|k| newton_per_metre::get(k) / 1e6),
        Unit::MeganewtonPerMetre,
    ),
    (
        "Against sliding, north–south",
        |k| k.horizontal_y.map(|k| newton_per_metre::get(k) / 1e6),
        Unit::MeganewtonPerMetre,
    ),
    (
        "Against rocking, east–west",
        |k| k.rocking_y.map(|k| newton_metre_per_radian::get(k) / 1e6),
        Unit::MeganewtonMetrePerRadian,
    ),
    (
        "Against rocking, north–south",
        |k| k.rocking_x.map(|k| newton_metre_per_radian::get(k) / 1e6),
        Unit::MeganewtonMetrePerRadian,
    ),
    (
        "Against twisting",
        |k| k.torsion.map(|k| newton_metre_per_radian::get(k) / 1e6),
        Unit::MeganewtonMetrePerRadian,
    ),
];

fn held(stiffness: &GroundStiffness, units: Units) -> Chapter {
    let row = |(name, get, unit): Held| {
        let spread = get(&stiffness.low)
            .zip(get(&stiffness.typical))
            .zip(get(&stiffness.high));
        let spread = spread.map(|((low, typical), high)| Spread { low, typical, high });
        (name.to_owned(), by_ground(spread, unit, units))
    };
    Chapter {
        title: "How the ground holds the block",
        told: stiffness
            .side_contact
            .iter()
            .map(|contact| contact.sentence())
            .collect(),
        words: vec!["About the centre of the base, by the solver with the middle side contact: force or moment for a unit of each movement. What is uncertain \
             in the ground's speed, the side contact, Poisson's ratio and the method is independent and adds as squares; soft and stiff are \
             the twentieth at either end."
            .to_owned()],
        table: Some(Table { names: "The ground’s hold", columns: grounds(), rows: HELD.map(row).into() }),
        after: Vec::new(),
    }
}

fn uneven(stiffness: &GroundStiffness, units: Units) -> Chapter {
    let rows = stiffness.layers.iter().map(|effect| {
        let factor = Spread {
            low: effect.low_factor,
            typical: effect.estimate_factor,
            high: effect.high_factor,
        };
        (
            sentence(&format!("{}: {}", effect.layer, effect.quantity))
                .trim_end_matches('.')
                .to_owned(),
            by_ground(Some(factor), Unit::One, units),
        )
    });
    Chapter {
        title: "Where this ground is not even",
        told: Vec::new(),
        words: vec![
            "Topsoil, rock below and the width of a lining are in every figure of the plan by these factors on even ground; soft ground \
             takes the unfavourable end."
                .to_owned(),
        ],
        table: Some(Table { names: "Layer and what it changes", columns: grounds(), rows: rows.collect() }),
        after: vec!["Bounds and estimates, compared with finite elements, not a solution of their own.".to_owned()],
    }
}

fn stiffening(stiffness: &GroundStiffness, units: Units) -> Chapter {
    let rows = stiffness.stiffening.iter().map(|row| {
        let figures = vec![
            units.say(row.depth_m, Unit::Metre),
            units.say(row.factor, One),
        ];
        (
            sentence(row.quantity).trim_end_matches('.').to_owned(),
            figures,
        )
    });
    Chapter {
        title: "If this ground stiffens with depth",
        told: Vec::new(),
        words: vec![
            "Grains press on each other harder with depth. Each quantity feels the ground’s modulus at a depth of its own; if the modulus \
             grows with the root of depth, the plan’s figure for even ground is multiplied by this."
                .to_owned(),
        ],
        table: Some(Table {
            names: "Quantity",
            columns: vec!["Feels the ground at".to_owned(), "Times the plan’s figure".to_owned()],
            rows: rows.collect(),
        }),
        after: vec![format!(
            "The plan’s own figures do not have this in them: its modulus is the one at about {}.",
            units.either("a metre", "a yard")
        )],
    }
}
