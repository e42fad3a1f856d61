//! What a lining round the block costs and buys: the same block bonded, lined to half its depth, lined fully.

use serde::Serialize;

use super::{PERSON_KG, arcsec_band, lean};
use crate::brief::Brief;
use crate::figure::{Arcsecond, One, Unit};
use crate::halfspace::Solved;
use crate::notes::{Notes, Working};
use crate::stages::block::Block;
use crate::stages::ground_stiffness::SOURCE;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::stages::pier::Pier;
use crate::units::{Pressure, STANDARD_GRAVITY_M_S2, Spread, metre, pascal};

/// A hand's push at the telescope: about the weight of a bottle of water.
pub const PUSH_N: f64 = 10.0;
/// Where the person stands, from the axis, unless the block reaches as far.
const PERSON_M: f64 = 1.0;
/// Least distance of the person from the block's side.
const OFF_SIDE_M: f64 = 0.3;

/// One way of bedding the block.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct IsolationRow {
    /// In words.
    pub contact: &'static str,
    /// Depth to which it is lined.
    pub lined_to_m: f64,
    /// Rocking stiffness about the softer axis in typical ground.
    pub rocking_n_m_per_rad: f64,
    /// Lean from the person, by ground: low is the softest.
    pub person_arcsec: Spread<f64>,
    /// Lean of the block from the push, by ground; the column's own bending comes on top, the same for all.
    pub push_arcsec: Spread<f64>,
}

/// The three ways side by side.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Isolation {
    /// Mass of the person.
    pub person_kg: f64,
    /// Distance of the person from the axis, along the softer way.
    pub person_at_m: f64,
    /// The push.
    pub push_n: f64,
    /// Its height above ground.
    pub push_at_m: f64,
    /// Bonded, half lined, fully lined.
    pub rows: Vec<IsolationRow>,
    /// What the figures say, in words.
    pub words: Vec<String>,
}

pub fn find(
    brief: &Brief,
    block: &Block,
    pier: &Pier,
    solved: &Solved,
    g: Spread<Pressure>,
    notes: &mut Notes,
) -> Option<Isolation> {
    let linings = solved.linings()?;
    let shape = &solved.shape;
    // The softer way is along the shorter side.
    let along_x = shape.length_m <= shape.width_m;
    let half = 0.5 * shape.length_m.min(shape.width_m);
    let person_at_m = PERSON_M.max(half + OFF_SIDE_M);
    let push_at_m =
        metre::get(block.upstand + pier.gap + pier.height + brief.load.centre_above_pier.value);
    let row = |(contact, lined_to_m, solved): (&'static str, f64, &Solved)| IsolationRow {
        contact,
        lined_to_m,
        rocking_n_m_per_rad: solved.stiffness_over_g[if along_x { 4 } else { 3 }]
            [if along_x { 4 } else { 3 }]
            * pascal::get(g.typical),
        person_arcsec: person(solved, along_x, person_at_m, g),
        push_arcsec: push(solved, along_x, push_at_m, g),
    };
    let depth = shape.depth_m;
    let rows: Vec<IsolationRow> = [
        (
            "soil hard against the sides to the full depth",
            0.0,
            &*linings.bonded,
        ),
        ("lined to half the depth", depth / 2.0, &*linings.half),
        ("lined to the base", depth, &*linings.full),
    ]
    .into_iter()
    .map(row)
    .collect();
    let words = words(brief, &rows, person_at_m);
    note(&rows, notes);
    Some(Isolation {
        person_kg: PERSON_KG,
        person_at_m,
        push_n: PUSH_N,
        push_at_m,
        rows,
        words,
    })
}

fn person(solved: &Solved, along_x: bool, at_m: f64, g: Spread<Pressure>) -> Spread<f64> {
    let [x_m, y_m] = if along_x { [at_m, 0.0] } else { [0.0, at_m] };
    let lean = lean(solved, &Factors::EVEN, x_m, y_m);
    arcsec_band(lean, PERSON_KG * STANDARD_GRAVITY_M_S2, g)
}

fn push(solved: &Solved, along_x: bool, at_m: f64, g: Spread<Pressure>) -> Spread<f64> {
    let force = if along_x {
        [1.0, 0.0, 0.0]
    } else {
        [0.0, 1.0, 0.0]
    };
    let motion = solved.under_block_force([0.0, 0.0, at_m], force);
    arcsec_band([motion[4], -motion[3]], PUSH_N, g)
}

fn words(brief: &Brief, rows: &[IsolationRow], person_at_m: f64) -> Vec<String> {
    let [bonded, half, full] = rows else {
        return Vec::new();
    };
    let say = |value: f64| brief.units.say(value, Arcsecond);
    let times = |row: &IsolationRow| bonded.rocking_n_m_per_rad / row.rocking_n_m_per_rad;
    let person = |row: &IsolationRow| {
        100.0 * (row.person_arcsec.typical / bonded.person_arcsec.typical - 1.0)
    };
    let verdict = |change: f64| match change {
        change if change < -3.0 => format!("{:.0} % less", -change),
        change if change > 3.0 => format!("{change:.0} % more"),
        _ => "the same within a few per cent".to_owned(),
    };
    vec![
        format!(
            "Lined to half its depth the block rocks {:.1} times as easily as with soil hard against all of it, lined to the base {:.1} times.",
            times(half),
            times(full)
        ),
        format!(
            "A person of {} at {} leans the bonded block {}; half lined it is {}, fully lined {}.",
            brief.units.say(PERSON_KG, Unit::Kilogram),
            brief.units.say(person_at_m, Unit::Metre),
            say(bonded.person_arcsec.typical),
            verdict(person(half)),
            verdict(person(full))
        ),
        format!(
            "A hand's push of {} at the telescope leans the bonded block {}, half lined {}, fully lined {}.",
            brief.units.say(PUSH_N, Unit::Newton),
            say(bonded.push_arcsec.typical),
            say(half.push_arcsec.typical),
            say(full.push_arcsec.typical)
        ),
        conclusion(person(half).min(person(full))).to_owned(),
        "The three are compared in even ground and with a lining that has no width of its own; a real one makes the lined block softer still."
            .to_owned(),
    ]
}

/// Whether any lining quietens the person at all.
fn conclusion(best: f64) -> &'static str {
    if best < -3.0 {
        "Here a lining does keep a little of a footstep out, and pays for it with a block that wind, hand and mount move more."
    } else {
        "A lining keeps no footstep out here: the ground's dish reaches the base, and the sides that would have held the block are gone."
    }
}

fn note(rows: &[IsolationRow], notes: &mut Notes) {
    let [bonded, _, full] = rows else { return };
    notes.working(
        Working::new(
            "motion.isolation",
            "How much softer a full lining makes the block's rocking",
            "K_bonded/K_lined",
            SOURCE,
        )
        .with(
            "K_bonded",
            bonded.rocking_n_m_per_rad / 1e6,
            Unit::MeganewtonMetrePerRadian,
        )
        .with(
            "K_lined",
            full.rocking_n_m_per_rad / 1e6,
            Unit::MeganewtonMetrePerRadian,
        )
        .gives(
            "ratio",
            bonded.rocking_n_m_per_rad / full.rocking_n_m_per_rad,
            One,
        ),
    );
}
