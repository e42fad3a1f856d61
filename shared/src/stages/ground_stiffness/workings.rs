//! The workings behind the solved stiffness: what the shape gives over G, and G.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::halfspace::Solved;
use crate::notes::{Notes, Working};
use crate::stages::ground_stiffness::SOURCE;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::units::{Pressure, Spread, megapascal};

/// One entry of the matrix: working, words, row, column, unit of the entry over G, unit of the entry.
type Entry = (&'static str, &'static str, usize, usize, Unit, Unit);

const ENTRIES: [Entry; 8] = [
    (
        "ground_stiffness.vertical",
        "Vertical stiffness",
        2,
        2,
        Unit::Metre,
        Unit::MeganewtonPerMetre,
    ),
    (
        "ground_stiffness.horizontal_x",
        "Horizontal stiffness along x",
        0,
        0,
        Unit::Metre,
        Unit::MeganewtonPerMetre,
    ),
    (
        "ground_stiffness.horizontal_y",
        "Horizontal stiffness along y",
        1,
        1,
        Unit::Metre,
        Unit::MeganewtonPerMetre,
    ),
    (
        "ground_stiffness.rocking_x",
        "Rocking stiffness about x",
        3,
        3,
        Unit::CubicMetre,
        Unit::MeganewtonMetrePerRadian,
    ),
    (
        "ground_stiffness.rocking_y",
        "Rocking stiffness about y",
        4,
        4,
        Unit::CubicMetre,
        Unit::MeganewtonMetrePerRadian,
    ),
    (
        "ground_stiffness.torsion",
        "Torsional stiffness",
        5,
        5,
        Unit::CubicMetre,
        Unit::MeganewtonMetrePerRadian,
    ),
    (
        "ground_stiffness.coupling_x_ry",
        "Force along x for a turn about y",
        0,
        4,
        Unit::SquareMetre,
        Unit::NewtonPerRadian,
    ),
    (
        "ground_stiffness.coupling_y_rx",
        "Force along y for a turn about x",
        1,
        3,
        Unit::SquareMetre,
        Unit::NewtonPerRadian,
    ),
];

/// Writes them down, each with its band.
pub fn note(
    brief: &Brief,
    solved: &Solved,
    g: Spread<Pressure>,
    uneven: &Spread<Factors>,
    notes: &mut Notes,
) {
    let shape = &solved.shape;
    for (id, words, row, column, over_unit, unit) in ENTRIES {
        let over_g = solved.stiffness_over_g[row][column];
        let scale = if unit == Unit::NewtonPerRadian {
            1e6
        } else {
            1.0
        };
        let value = |g: Pressure, factors: &Factors| {
            over_g * megapascal::get(g) * scale * factors.entry_ratio(row, column)
        };
        let (low, typical, high) = (
            value(g.low, &uneven.low),
            value(g.typical, &uneven.typical),
            value(g.high, &uneven.high),
        );
        let say = |value| brief.units.say(value, unit);
        let title = format!(
            "{words} about the centre of the base: {} to {} between soft and stiff ground",
            say(low),
            say(high)
        );
        notes.working(
            Working::new(
                id,
                title,
                "K = G k(l, w, D, contact, ν) f, k from the solver, f of layers",
                SOURCE,
            )
            .with("G", megapascal::get(g.typical), Unit::Megapascal)
            .with("k", over_g, over_unit)
            .with("l", shape.length_m, Unit::Metre)
            .with("w", shape.width_m, Unit::Metre)
            .with("D", shape.depth_m, Unit::Metre)
            .with("contact from", shape.contact_from_m, Unit::Metre)
            .with("contact to", shape.contact_to_m, Unit::Metre)
            .with("ν", shape.poisson_ratio, Unit::One)
            .with("f", uneven.typical.entry_ratio(row, column), Unit::One)
            .gives("K", typical, unit),
        );
    }
}
