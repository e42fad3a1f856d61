//! The inputs of the anchorage, each with where it came from.

use stillground::brief::{Brief, Given, Origin};
use stillground::design::Design;
use stillground::figure::{Count, Megapascal, Metre, Millimetre, NewtonMetre, One, UnitOf};

use super::Listing;

/// A line of the list.
struct Lines<'a> {
    brief: &'a Brief,
    rows: Vec<Vec<String>>,
}

const fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Said => "stated",
        Origin::Assumed => "assumed",
        Origin::Measured => "measured",
    }
}

impl Lines<'_> {
    fn words(&mut self, what: &str, said: impl Into<String>, from: &str) {
        self.rows
            .push(vec![what.to_owned(), said.into(), from.to_owned()]);
    }

    fn figure<T: Copy>(&mut self, what: &str, given: &Given<T>, unit: impl UnitOf<T>) {
        let said = self.brief.units.say(given.value, unit);
        self.words(what, said, origin(given.origin));
    }
}

/// The list.
pub(super) fn listing(brief: &Brief, design: &Design) -> Listing {
    let mut lines = Lines {
        brief,
        rows: Vec::new(),
    };
    studs(&mut lines);
    product(&mut lines);
    around(&mut lines, design);
    Listing {
        title: "Inputs".to_owned(),
        heads: vec![("Input", 1.6), ("Value", 1.4), ("From", 0.6)],
        rows: lines.rows,
    }
}

fn studs(lines: &mut Lines<'_>) {
    let said = &lines.brief.anchors;
    lines.figure("Studs", &said.count, Count);
    lines.words("Thread", said.size.value.said(), origin(said.size.origin));
    lines.words(
        "Strength class",
        said.strength_class.value.said(),
        origin(said.strength_class.origin),
    );
    lines.figure("Embedment", &said.embedment, Millimetre);
    lines.figure("Hole", &said.hole_diameter, Millimetre);
    lines.figure("Circle", &said.circle_diameter, Millimetre);
    let torque = said
        .torque
        .map(|torque| lines.brief.units.say(torque, NewtonMetre));
    match torque {
        Some(torque) => lines.words("Torque", torque, "stated"),
        None => lines.words("Torque", "as recommended", "the plan"),
    }
}

fn product(lines: &mut Lines<'_>) {
    let product = &lines.brief.anchors.product;
    lines.figure("Bond, cracked", &product.bond_cracked, Megapascal);
    lines.figure("Bond, uncracked", &product.bond_uncracked, Megapascal);
    lines.figure(
        "Installation factor γ_inst",
        &product.installation_factor,
        One,
    );
    lines.figure(
        "Factor for lasting load ψ⁰_sus",
        &product.sustained_factor,
        One,
    );
    lines.figure("Least embedment", &product.min_embedment, Millimetre);
    lines.figure("Greatest embedment", &product.max_embedment, Millimetre);
    lines.figure("Least edge distance", &product.min_edge, Millimetre);
    lines.figure("Least spacing", &product.min_spacing, Millimetre);
    lines.figure("Least thickness", &product.min_thickness, Millimetre);
    lines.figure(
        "Edge distance against splitting",
        &product.splitting_edge,
        Millimetre,
    );
}

fn around(lines: &mut Lines<'_>, design: &Design) {
    let (brief, units) = (lines.brief, lines.brief.units);
    let cracked = if brief.anchors.cracked.value {
        "may be cracked"
    } else {
        "uncracked"
    };
    lines.words(
        "Concrete",
        format!("{}, {cracked}", brief.block.concrete.value.said()),
        origin(brief.block.concrete.origin),
    );
    lines.words(
        "Reinforcement",
        brief.block.reinforcement.value.key().replace('_', " "),
        origin(brief.block.reinforcement.origin),
    );
    let block = &design.block;
    let [length, width, thickness] =
        [block.length, block.width, block.depth + block.upstand].map(|side| units.say(side, Metre));
    lines.words(
        "Block",
        format!("{length} by {width}, {thickness} thick"),
        "the plan",
    );
    lines.figure("Base plate, side", &brief.pier.plate_side, Millimetre);
    lines.figure(
        "Base plate, thickness",
        &brief.pier.plate_thickness,
        Millimetre,
    );
    lines.figure("Gap under the plate", &brief.pier.gap, Millimetre);
    lines.figure("Weld, leg", &brief.pier.weld_leg, Millimetre);
    lines.words(
        "Steel of plate and column",
        brief.pier.steel.value.said(),
        origin(brief.pier.steel.origin),
    );
    lines.words(
        "Where the preload goes",
        design.anchors.seat.words(),
        "the plan",
    );
}
