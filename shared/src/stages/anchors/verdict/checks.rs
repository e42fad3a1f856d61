//! The checks of the chosen code, and those of the layout.

use super::{Judged, Verdict};
use crate::brief::{Brief, Given, Origin};
use crate::field::Path;
use crate::figure::{Kilonewton, Millimetre, One, Unit};
use crate::notes::{Check, Notes};
use crate::paths;
use crate::rules::aci_318_19::{self as aci, breakout, shear as aci_shear};
use crate::rules::en_1992_4_2018::{
    self as en, bond, cone, edge, interaction, shear, splitting, steel,
};
use crate::site_plan::Code;
use crate::source::Source;
use crate::stages::anchors::layout::Group;
use crate::stages::anchors::situation::Situation;
use crate::stages::anchors::strength::{Mode, Resistances};
use crate::units::{Length, kilonewton, millimetre};

/// Fields that move each check.
const SIZE: &[Path] = paths![
    anchors.size,
    anchors.strength_class,
    anchors.count,
    anchors.circle_diameter_mm,
];
const DEPTH: &[Path] = paths![
    anchors.embedment_mm,
    block.length_m,
    block.width_m,
    anchors.circle_diameter_mm,
];
const BOND: &[Path] = paths![
    anchors.bond_strength_mpa,
    anchors.embedment_mm,
    anchors.size,
    anchors.count,
];
const GAP: &[Path] = paths![pier.gap_mm, anchors.size, pier.levelling];
const EDGES: &[Path] = paths![block.length_m, block.width_m, anchors.circle_diameter_mm];

/// Name, source and fields of a mode's check.
fn about(mode: Mode, code: Code) -> (&'static str, Source, &'static [Path]) {
    let eurocode = code == Code::Eurocode;
    let pick = |en: Source, aci: Source| if eurocode { en } else { aci };
    match mode {
        Mode::Steel => (
            "anchors.steel",
            pick(steel::TENSION, aci::steel::TENSION),
            SIZE,
        ),
        Mode::Cone => ("anchors.cone", pick(cone::CONE, breakout::BREAKOUT), DEPTH),
        Mode::Bond => ("anchors.bond", pick(bond::BOND, aci::bond::BOND), BOND),
        Mode::BondSustained => (
            "anchors.bond_sustained",
            pick(bond::SUSTAINED, aci::bond::SUSTAINED),
            BOND,
        ),
        Mode::Splitting => ("anchors.splitting", splitting::SPLITTING, EDGES),
        Mode::ShearSteel => (
            "anchors.shear_steel",
            pick(steel::SHEAR, aci::steel::SHEAR),
            SIZE,
        ),
        Mode::ShearLever => ("anchors.shear_lever_arm", steel::LEVER, GAP),
        Mode::PryOut => (
            "anchors.pry_out",
            pick(shear::PRY_OUT, aci_shear::PRY_OUT),
            DEPTH,
        ),
        Mode::Edge => ("anchors.edge", pick(edge::EDGE, aci_shear::BREAKOUT), EDGES),
    }
}

/// Where a mode's rule stands in a code.
pub(super) fn source(mode: Mode, code: Code) -> Source {
    about(mode, code).1
}

/// Puts the checks of the chosen code.
pub fn put(
    situation: &Situation,
    group: &Group,
    verdict: &Verdict,
    resistances: &Resistances,
    notes: &mut Notes,
) {
    let code = situation.brief.code.value;
    for judged in &verdict.modes {
        notes.check(mode_check(situation, judged, code));
    }
    together(verdict, code, notes);
    push(situation, verdict, resistances, notes);
    layout(situation, group, notes);
}

fn mode_check(situation: &Situation, judged: &Judged, code: Code) -> Check {
    let (id, source, fields) = about(judged.of, code);
    let (demand, capacity) = (
        kilonewton::get(judged.demand),
        kilonewton::get(judged.capacity),
    );
    let mut note = format!(
        "Governing load: {}. To make it stronger: {}.",
        judged.under,
        judged.of.raised_by()
    );
    if matches!(judged.of, Mode::Bond | Mode::PryOut) && !situation.brief.anchors.product.known() {
        note.push_str(" The bond strength is a code's least value, a placeholder until a product's approval is at hand.");
    }
    Check::at_most(
        id,
        judged.of.question(),
        demand,
        capacity,
        Unit::Kilonewton,
        source,
    )
    .note(note)
    .moved_by(fields)
}

fn together(verdict: &Verdict, code: Code, notes: &mut Notes) {
    let mut hold = |id, title, value, source, note| {
        notes.check(
            Check::at_most(id, title, value, 1.0, One, source)
                .note(note)
                .moved_by(SIZE),
        )
    };
    let each = "The two ratios taken together by the code's rule; neither may exceed one by itself either.";
    if code == Code::Eurocode {
        let rule = interaction::INTERACTION;
        hold(
            "anchors.interaction_steel",
            "Do the studs resist tension and shear together?",
            verdict.steel_interaction,
            rule,
            each,
        );
        hold(
            "anchors.interaction_concrete",
            "Does the concrete resist tension and shear together?",
            verdict.concrete_interaction,
            rule,
            each,
        );
    } else {
        hold(
            "anchors.interaction",
            "Do studs and concrete resist tension and shear together?",
            verdict.concrete_interaction,
            aci_shear::INTERACTION,
            "The worst ratio in tension and the worst in shear, be they of steel or concrete, over 1.2.",
        );
    }
}

/// Studs under a plate on nuts are pushed as well; the bond carries that too, and nothing says that the bottom of a hole does.
fn push(situation: &Situation, verdict: &Verdict, resistances: &Resistances, notes: &mut Notes) {
    let Some(push) = verdict
        .worst_by(|trial| kilonewton::get(trial.forces.push()))
        .map(|trial| trial.forces.push())
    else {
        return;
    };
    if kilonewton::get(push) <= 0.0 {
        return;
    }
    // Pressed concrete does not crack: the uncracked bond counts, by its share of the cracked one.
    let closed_factor = (situation.bond_uncracked / situation.bond).value.max(1.0);
    let capacity = resistances.single.design(Mode::Bond) * closed_factor;
    notes.check(
        Check::at_most(
            "anchors.push",
            "Does the resin bond resist the compression on levelling nuts?", push, capacity, Kilonewton,
            Source::judgement("uncracked bond, since pressed concrete does not crack; the hole's bottom is not relied on"),
        )
        .note("The studs on the pressed side carry weight and moment down into the concrete through their bond.")
        .moved_by(BOND),
    );
}

fn layout(situation: &Situation, group: &Group, notes: &mut Notes) {
    let product = &situation.brief.anchors.product;
    let from_memory = crate::source::Standing::FromMemory;
    let (source, thin) = match situation.brief.code.value {
        Code::Eurocode => (
            Source::new(
                "EN 1992-4",
                "2018",
                "7.2.1.7 (1), as the product states",
                from_memory,
            ),
            None,
        ),
        Code::Aci => (
            Source::new(
                "ACI 318",
                "19",
                "17.9.2, six diameters unless the product states less",
                from_memory,
            ),
            Some(Source::new(
                "ACI 355.4",
                "19",
                "least thickness, as the product states",
                from_memory,
            )),
        ),
    };
    if let Some((_, least)) = group.spacing() {
        notes.check(
            Check::at_least(
                "anchors.spacing",
                "Are the studs far enough apart?", least, product.min_spacing.value, Millimetre,
                source,
            )
            .note("Nearer to each other, drilling and tightening may split the concrete between them.")
            .moved_by(paths![anchors.circle_diameter_mm, anchors.count, anchors.min_spacing_mm]),
        );
    }
    notes.check(
        Check::at_least(
            "anchors.edge_distance",
            "Are the studs far enough from the block's edge?", group.nearest_edge(), product.min_edge.value, Millimetre,
            source,
        )
        .note("Nearer to an edge, drilling and tightening may split it off. From 1.5 times the embedment depth, the edge does not weaken the concrete cone.")
        .moved_by(EDGES),
    );
    notes.check(
        Check::at_least(
            "anchors.thickness",
            "Is the concrete thick enough below the studs?",
            group.concrete.thickness,
            product.min_thickness.value,
            Millimetre,
            thin.unwrap_or(source),
        )
        .note("Thinner, and the drill or the pull breaks out below.")
        .moved_by(paths![block.depth_m, block.upstand_m, anchors.embedment_mm]),
    );
    plate(situation, group, notes);
    range(situation.brief, situation, notes);
}

/// Holes inside the plate, nuts outside the column.
fn plate(situation: &Situation, group: &Group, notes: &mut Notes) {
    let (pier, thread, mm) = (&situation.brief.pier, &situation.thread, millimetre::get);
    let reach = group
        .studs
        .iter()
        .map(|stud| mm(stud.x).abs().max(mm(stud.y).abs()))
        .fold(0.0, f64::max);
    let needed = 2.0 * (reach + 1.2 * mm(thread.plate_hole));
    notes.check(
        Check::at_least(
            "anchors.plate_edge",
            "Is there enough base plate outside the stud holes?",
            mm(pier.plate_side.value),
            needed,
            Unit::Millimetre,
            PLATE_EDGE,
        )
        .note("From the middle of a hole to the plate's edge 1.2 hole diameters at least.")
        .moved_by(paths![
            pier.plate_side_mm,
            anchors.circle_diameter_mm,
            anchors.size,
        ]),
    );
    let clear = mm(pier.outside_diameter.value)
        + 2.0 * mm(pier.weld_leg.value)
        + mm(thread.washer_diameter);
    notes.check(
        Check::at_least(
            "anchors.reach",
            "Is the stud circle clear of column and weld?",
            mm(situation.brief.anchors.circle_diameter.value),
            clear,
            Unit::Millimetre,
            REACH,
        )
        .note("Washers must lie flat beside the weld, and a socket must reach the nuts.")
        .moved_by(paths![
            anchors.circle_diameter_mm,
            pier.outside_diameter_mm,
            pier.weld_leg_mm,
        ]),
    );
    let (hole, stud) = (
        mm(situation.brief.anchors.hole_diameter.value),
        mm(thread.diameter),
    );
    notes.check(
        Check::at_most(
            "anchors.hole",
            "Is the drilled hole no wider than usual for the stud?",
            hole,
            (1.35 * stud).max(stud + 5.0),
            Unit::Millimetre,
            HOLE,
        )
        .note(format!(
            "{} to {} wider than the stud is usual; a wide ring of resin is weaker and creeps more.",
            situation.brief.units.about(2.0, Unit::Millimetre),
            situation.brief.units.about(4.0, Unit::Millimetre)
        ))
        .moved_by(paths![anchors.hole_diameter_mm, anchors.size]),
    );
}

/// Edge of a hole in a plate.
const PLATE_EDGE: Source = Source::from_memory("EN 1993-1-8", "2005", "Table 3.3");
/// Room for washers.
const REACH: Source = Source::derived("column, weld and washers side by side");
/// Width of the hole.
const HOLE: Source = Source::common_practice("hole two to four millimetres wider than the stud");

/// The bond model's range of depth.
fn range(brief: &Brief, situation: &Situation, notes: &mut Notes) {
    let (depth, diameter) = (
        millimetre::get(situation.embedment),
        millimetre::get(situation.thread.diameter),
    );
    let eurocode = brief.code.value == Code::Eurocode;
    let product = &brief.anchors.product;
    let code_least = if eurocode { 6.0 } else { 4.0 };
    let source = if eurocode {
        en::bond::BOND
    } else {
        aci::bond::BOND
    };
    let stated = |limit: &Given<Length>| limit.origin != Origin::Assumed;
    // A product may be narrower than the code, and is never wider.
    let least = (code_least * diameter).max(millimetre::get(product.min_embedment.value));
    let most = (20.0 * diameter).min(millimetre::get(product.max_embedment.value));
    let whose = if stated(&product.min_embedment) || stated(&product.max_embedment) {
        " The product's own limits count where they are narrower."
    } else {
        ""
    };
    notes.check(
        Check::at_least(
            "anchors.embedment_least",
            "Is the embedment deep enough for the bond model?",
            depth,
            least,
            Unit::Millimetre,
            source,
        )
        .note(format!(
            "The model holds from {code_least:.0} to 20 diameters.{whose}"
        ))
        .moved_by(paths![
            anchors.embedment_mm,
            anchors.size,
            anchors.min_embedment_mm,
        ]),
    );
    notes.check(
        Check::at_most(
            "anchors.embedment_most",
            "Is the embedment shallow enough for the bond model?",
            depth,
            most,
            Unit::Millimetre,
            source,
        )
        .note(format!(
            "Deeper than twenty diameters the bond is no longer even along the stud.{whose}"
        ))
        .moved_by(paths![
            anchors.embedment_mm,
            anchors.size,
            anchors.max_embedment_mm,
        ]),
    );
}
