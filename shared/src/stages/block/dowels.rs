//! Dowels: deformed bars grouted into the rock on which the block stands.

use crate::{path, paths};
use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Kilonewton, Unit};
use crate::notes::{AssumedValue, Assumption, Check, Notes};
use crate::rules::en_1997_1_2004::eccentric_base as base;
use crate::rules::rock_dowel as rule;
use crate::site_plan::site::RockKind;
use crate::source::Source;
use crate::stages::block::actions::Actions;
use crate::stages::block::age::characteristic;
use crate::stages::block::outline::Outline;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::units::{Force, Length, kilonewton, kilonewton_metre, megapascal, metre, millimetre};

/// Dowels that the planner chooses: one near each corner.
const CHOSEN: u32 = 4;
const CHOSEN_MM: f64 = 16.0;
/// Their distance from the block's faces, twice the least cover.
pub const FROM_FACE_M: f64 = 0.15;
/// Least length in rock.
const LEAST_LENGTH_M: f64 = 0.4;
/// Length over diameter in sound rock, and in weathered rock.
const LENGTH_RATIO: [f64; 2] = [15.0, 25.0];
/// Length in the block over diameter.
const IN_BLOCK_RATIO: f64 = 20.0;
/// Hole over bar.
const HOLE_EXTRA_MM: f64 = 9.0;
/// Strength of the bars, MPa.
const YIELD_MPA: f64 = 500.0;
/// Design bond of a ribbed bar in grout, MPa: EN 1992-1-1, 8.4.2, C25/30.
const BAR_BOND_MPA: f64 = 2.7;
/// Rock steeper than this is not judged from a form.
const STEEP_DEG: f64 = 10.0;

const SOURCE: Source = Source::judgement("layout and lengths of dowels under a small block");

/// The dowels.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Dowels {
    /// How many.
    pub count: u32,
    /// Diameter of a bar.
    #[serde(rename = "diameter_mm", with = "millimetre")]
    pub diameter: Length,
    /// Length in the rock.
    #[serde(rename = "length_in_rock_mm", with = "millimetre")]
    pub length: Length,
    /// Length in the block.
    #[serde(rename = "length_in_block_mm", with = "millimetre")]
    pub in_block: Length,
    /// Diameter of the hole.
    #[serde(rename = "hole_diameter_mm", with = "millimetre")]
    pub hole: Length,
    /// Tension that one is asked for.
    #[serde(rename = "tension_kn", with = "kilonewton")]
    pub tension: Force,
    /// Force that the pull test holds.
    #[serde(rename = "pull_test_kn", with = "kilonewton")]
    pub pull_test: Force,
}

/// Whether the block stands on rock.
fn on_rock(ground: &Ground, outline: &Outline) -> bool {
    let slack = metre::new(1e-6);
    ground.group == Group::Rock
        || ground
            .rock_depth
            .is_some_and(|rock| outline.depth + slack >= rock)
}

/// How far the worst push carries the resultant off the centre, and how far it may go before the block lifts off the rock.
fn opening(outline: &Outline, actions: &Actions) -> Option<[f64; 2]> {
    let off = base::eccentricity(actions.worst().moment, actions.weight)?;
    Some([metre::get(off), metre::get(outline.shorter()) / 6.0])
}

/// The dowels of a block on rock: the person's, or four where a push would lift it off the rock.
pub(super) fn find(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    notes: &mut Notes,
) -> Option<Dowels> {
    if !on_rock(ground, outline) {
        return None;
    }
    let said = &brief.block.dowels;
    let opens = opening(outline, actions).is_none_or(|[off, most]| off > most);
    let count = said.count.unwrap_or(if opens { CHOSEN } else { 0 });
    if count == 0 {
        return None;
    }
    if said.count.is_none() {
        notes.assumptions.push(Assumption {
            field: path!(block.dowel_count),
            value: AssumedValue::Number(f64::from(CHOSEN)),
            unit: Unit::Count,
            why: "the worst push would lift one side of the block off the rock".into(),
            effect: "bars, grout and holes in the rock; a pull test before they count".into(),
            source: SOURCE,
        });
    }
    let diameter = said.diameter.unwrap_or(millimetre::new(CHOSEN_MM));
    let ratio = LENGTH_RATIO[usize::from(is_weathered(brief, ground))];
    let length = said
        .length
        .unwrap_or((diameter * ratio).max(metre::new(LEAST_LENGTH_M)));
    let tension = tension(outline, actions, count);
    let thickness = outline.height() - millimetre::new(75.0);
    Some(Dowels {
        count,
        diameter,
        length,
        in_block: (diameter * IN_BLOCK_RATIO).min(thickness),
        hole: diameter + millimetre::new(HOLE_EXTRA_MM),
        tension,
        pull_test: tension * rule::PROOF_RATIO,
    })
}

fn is_weathered(brief: &Brief, ground: &Ground) -> bool {
    let soft = brief.site.stated.rock_kind.is_some_and(RockKind::is_soft);
    soft || (ground.group == Group::Rock && !ground.is_stable_rock())
}

/// Tension of one dowel of the row that is pulled: of what keeps the block from overturning with its factors, and of what brings the
/// resultant back into the middle third without them, the larger.
fn tension(outline: &Outline, actions: &Actions, count: u32) -> Force {
    let moment = kilonewton_metre::get(actions.worst().moment);
    let weight = kilonewton::get(actions.weight - actions.lift);
    let side = metre::get(outline.shorter());
    let lever = (side - 2.0 * FROM_FACE_M).max(0.1);
    let overturning = 1.5 * moment - 0.9 * weight * side / 2.0;
    let closing = moment - weight * side / 6.0;
    let row = overturning.max(closing).max(0.0) / lever;
    kilonewton::new(row / (f64::from(count) / 2.0).floor().max(1.0))
}

/// What one dowel may carry in tension: the least of bar, bar in grout, grout in rock.
fn capacity(brief: &Brief, dowels: &Dowels) -> Force {
    let rock = rule::ultimate_bond(brief.site.stated.rock_kind) / rule::BOND_FACTOR;
    rule::steel_tension(dowels.diameter, megapascal::new(YIELD_MPA))
        .min(rule::bond(
            dowels.diameter,
            dowels.length,
            megapascal::new(BAR_BOND_MPA),
        ))
        .min(rule::bond(dowels.hole, dowels.length, rock))
}

/// The checks of a block on rock: dowels in tension and in shear, or whether it stays closed without them.
pub(super) fn checks(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    dowels: Option<&Dowels>,
) -> Vec<Check> {
    if !on_rock(ground, outline) {
        return Vec::new();
    }
    match dowels {
        Some(dowels) => vec![
            pulled(brief, ground, dowels),
            sheared(brief, actions, dowels),
        ],
        None => closed(outline, actions).into_iter().collect(),
    }
}

fn closed(outline: &Outline, actions: &Actions) -> Option<Check> {
    let [off, most] = opening(outline, actions)?;
    let check = Check::at_most(
        "block.rock_closed",
        "Does the block stay closed on the rock?",
        off,
        most,
        Unit::Metre,
        Source::derived("no tension across a joint while the force stays within the middle third"),
    );
    let note = "Without dowels a base on rock lifts on one side when the force leaves its middle third, and grit falls into the gap. A \
                thicker or wider block stays closed; so does one with dowels.";
    Some(check.asks_beyond().note(note).moved_by(paths![
        block.dowel_count,
        block.depth_m,
        block.length_m,
        block.width_m,
    ]))
}

fn pulled(brief: &Brief, ground: &Ground, dowels: &Dowels) -> Check {
    let tested = brief
        .block
        .dowels
        .proof
        .is_some_and(|proof| proof >= dowels.pull_test);
    let steep = brief
        .site
        .stated
        .slope_deg
        .is_some_and(|slope| slope > STEEP_DEG);
    let needed = dowels.tension > kilonewton::new(0.0);
    let unsure = needed && (!tested || steep || is_weathered(brief, ground));
    let check = Check::at_most(
        "block.dowels",
        "Do the dowels hold the block down on the rock?",
        dowels.tension,
        capacity(brief, dowels),
        Kilonewton,
        rule::BOND_SOURCE,
    );
    let fails = check.verdict == crate::notes::Verdict::Fails;
    let note = format!(
        "Tension of one dowel, against the least of bar, bar in grout and grout in rock, the last with a third of the ultimate bond. It \
         counts only after a pull test to {}: enter the force that was held. Weathered, loose-jointed or steep rock is for an engineer \
         to look at. The check of overturning does not count the dowels.",
        brief.units.say(dowels.pull_test, Kilonewton)
    );
    // What is asked for comes first: until the dowels were pulled no other count of them answers it.
    let fields = if unsure && !tested && !fails {
        paths![
            block.dowel_proof_kn,
            block.dowel_count,
            block.dowel_length_mm,
            site.rock_kind,
        ]
    } else {
        paths![
            block.dowel_count,
            block.dowel_length_mm,
            block.dowel_proof_kn,
            site.rock_kind,
        ]
    };
    check.ask_when(unsure && !fails).note(note).moved_by(fields)
}

fn sheared(brief: &Brief, actions: &Actions, dowels: &Dowels) -> Check {
    let one = rule::shear(
        dowels.diameter,
        characteristic(brief.block.concrete.value),
        megapascal::new(YIELD_MPA),
    );
    Check::at_most(
        "block.dowel_shear",
        "Do the dowels hold the block against sliding on the rock?",
        1.5 * kilonewton::get(actions.push()),
        f64::from(dowels.count) * kilonewton::get(one),
        Unit::Kilonewton,
        rule::SHEAR_SOURCE,
    )
    .note("The push times one and a half, against the dowels alone; the base's friction comes on top.")
    .moved_by(paths![block.dowel_count, block.dowel_diameter_mm])
}
