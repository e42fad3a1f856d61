//! The workings behind the solved stiffness: what the shape gives over G, and G.

use crate::brief::Brief;
use crate::figure::{Megapascal, One, Unit};
use crate::halfspace::Solved;
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::path;
use crate::rules::scatter;
use crate::stages::ground_stiffness::SOURCE;
use crate::stages::ground_stiffness::contact::{self, SideContact};
use crate::stages::ground_stiffness::doubt::Doubt;
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
            "{words} about the centre of the base: {} at worst, {} at best",
            say(low),
            say(high)
        );
        notes.working(
            Working::new(
                id,
                title,
                "K = G k(l, w, D, contact, ν) f, k from the solver with the middle side contact, f of layers",
                SOURCE,
            )
            .with("G", g.typical, Megapascal)
            .with("k", over_g, over_unit)
            .with("l", shape.length_m, Unit::Metre)
            .with("w", shape.width_m, Unit::Metre)
            .with("D", shape.depth_m, Unit::Metre)
            .with("contact from", shape.contact_from_m, Unit::Metre)
            .with("contact to", shape.contact_to_m, Unit::Metre)
            .with("ν", shape.poisson_ratio, One)
            .with("f", uneven.typical.entry_ratio(row, column), One)
            .gives("K", typical, unit),
        );
    }
}

/// The side contact and the sum of all doubt.
pub fn note_contact(
    brief: &Brief,
    contact: Option<&SideContact>,
    doubt: &Doubt,
    notes: &mut Notes,
) {
    if let Some(contact) = contact {
        let share = |ratio: f64| format!("{:.0} %", 100.0 * ratio);
        notes.working(
            Working::new(
                "ground_stiffness.side_contact",
                format!(
                    "Rocking stiffness over that of a perfect grip of the sides ({}): {} at worst, {} at best",
                    contact.case,
                    share(contact.low),
                    share(contact.high)
                ),
                "κ = [K_free + c (K(z₀) − K_free)]/K_bonded, each K from the solver",
                contact::SOURCE,
            )
            .with("z₀", contact.lost_depth_m.typical, Unit::Metre)
            .with("c", contact.quality_ratio.typical, One)
            .gives("κ", contact.typical, One),
        );
    }
    notes.working(
        Working::new(
            "ground_stiffness.doubt",
            "Scatter of the rocking stiffness's logarithm, all independent causes together",
            "s = √[(2 s_Vs)² + s_κ² + s_ν² + s_model²], worst = middle × e^(−1.645 s)",
            scatter::SOURCE,
        )
        .with("2 s_Vs", doubt.modulus_sd_ln, One)
        .with("s_κ", doubt.side_contact_sd_ln, One)
        .with("s_ν", doubt.poisson_sd_ln, One)
        .with("s_model", doubt.model_sd_ln, One)
        .gives("s", doubt.together_sd_ln, One),
    );
    notes
        .assumptions
        .extend(contact.and_then(|contact| counted_on(brief, contact)));
}

/// What is counted on of the sides' grip, where the person did not say; none where no side is held.
fn counted_on(brief: &Brief, contact: &SideContact) -> Option<Assumption> {
    let said = &brief.block;
    if said.side_contact_from.is_some() && said.side_contact_to.is_some() || contact.sd_ln <= 0.0 {
        return None;
    }
    let share = |ratio: f64| format!("{:.0} %", 100.0 * ratio);
    Some(Assumption {
        field: path!(block.side_contact_to_m),
        value: AssumedValue::Text(format!(
            "{} of a perfect grip, at worst {}",
            share(contact.typical),
            share(contact.low)
        )),
        unit: Unit::One,
        why: format!(
            "{} Assumed for: {}. Topsoil, frost, drying and a face that ran keep the ground from holding all of the sides.",
            contact.sentence(),
            contact.case
        ),
        effect: "Every tilt and frequency. Cut the face clean, pour the day it is cut, and fill with concrete whatever fell out; the lean test \
                 says what grip there is.".into(),
        source: contact::SOURCE,
    })
}
