//! The inputs of the anchorage, each with where it came from.

use stillground::brief::{Brief, Given, Origin};
use stillground::design::Design;
use stillground::figure::Unit;
use stillground::units::{megapascal, metre, millimetre, newton_metre};

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

    fn figure<T: Copy>(&mut self, what: &str, given: &Given<T>, get: fn(T) -> f64, unit: Unit) {
        let said = self.brief.units.say(get(given.value), unit);
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
    lines.figure("Studs", &said.count, |count| count, Unit::Count);
    lines.words("Thread", said.size.value.key(), origin(said.size.origin));
    lines.words(
        "Strength class",
        said.strength_class.value.key(),
        origin(said.strength_class.origin),
    );
    lines.figure(
        "Embedment",
        &said.embedment,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Hole",
        &said.hole_diameter,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Circle",
        &said.circle_diameter,
        millimetre::get,
        Unit::Millimetre,
    );
    let torque = said.torque.map(|torque| {
        lines
            .brief
            .units
            .say(newton_metre::get(torque), Unit::NewtonMetre)
    });
    match torque {
        Some(torque) => lines.words("Torque", torque, "stated"),
        None => lines.words("Torque", "as recommended", "the plan"),
    }
}

fn product(lines: &mut Lines<'_>) {
    let product = &lines.brief.anchors.product;
    lines.figure(
        "Bond, cracked",
        &product.bond_cracked,
        megapascal::get,
        Unit::Megapascal,
    );
    lines.figure(
        "Bond, uncracked",
        &product.bond_uncracked,
        megapascal::get,
        Unit::Megapascal,
    );
    lines.figure(
        "Installation factor γ_inst",
        &product.installation_factor,
        |factor| factor,
        Unit::One,
    );
    lines.figure(
        "Factor for lasting load ψ⁰_sus",
        &product.sustained_factor,
        |factor| factor,
        Unit::One,
    );
    lines.figure(
        "Least embedment",
        &product.min_embedment,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Greatest embedment",
        &product.max_embedment,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Least edge distance",
        &product.min_edge,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Least spacing",
        &product.min_spacing,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Least thickness",
        &product.min_thickness,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Edge distance against splitting",
        &product.splitting_edge,
        millimetre::get,
        Unit::Millimetre,
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
        format!("{}, {cracked}", brief.block.concrete.value.key()),
        origin(brief.block.concrete.origin),
    );
    lines.words(
        "Reinforcement",
        brief.block.reinforcement.value.key().replace('_', " "),
        origin(brief.block.reinforcement.origin),
    );
    let block = &design.block;
    let [length, width, thickness] = [block.length, block.width, block.depth + block.upstand]
        .map(|side| units.say(metre::get(side), Unit::Metre));
    lines.words(
        "Block",
        format!("{length} by {width}, {thickness} thick"),
        "the plan",
    );
    lines.figure(
        "Base plate, side",
        &brief.pier.plate_side,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Base plate, thickness",
        &brief.pier.plate_thickness,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Gap under the plate",
        &brief.pier.gap,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.figure(
        "Weld, leg",
        &brief.pier.weld_leg,
        millimetre::get,
        Unit::Millimetre,
    );
    lines.words(
        "Steel of plate and column",
        brief.pier.steel.value.key(),
        origin(brief.pier.steel.origin),
    );
    lines.words(
        "Where the preload goes",
        design.anchors.seat.words(),
        "the plan",
    );
}
