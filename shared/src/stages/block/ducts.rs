//! Ducts for power and data through the block and up inside the column, a drain, and the earth.

use crate::paths;
use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Metre, Millimetre, Unit, Units};
use crate::notes::{Check, Notes};
use crate::source::Source;
use crate::units::customary::INCH_MM;
use crate::units::{Length, metre, millimetre};

use super::outline::Outline;

/// Wall of a duct, mm.
const WALL_MM: f64 = 3.0;
/// Bend radius over inside diameter.
const BEND_FACTOR: f64 = 6.0;
/// Least bend radius for a stiff data cable or a drawn power cable, mm.
const LEAST_BEND_MM: f64 = 250.0;
/// Diameter of the hole that drains the column, mm.
const WEEP_MM: f64 = 10.0;
/// Clear distance between the power duct and the data ducts, mm.
const APART_MM: f64 = 50.0;
/// Cover of a buried power cable outside the block, m.
const ENTRY_DEPTH_M: f64 = 0.6;
/// Radius of the circle round so many equal circles that touch, over theirs, for none to six.
const PACKING: [f64; 7] = [0.0, 1.0, 2.0, 2.154_7, 2.414_2, 2.701_3, 3.0];

/// What is said of the earth.
const EARTHING: [&str; 2] = [
    "Leave a galvanised or copper earthing tail of at least ",
    " beside the column's foot, bonded to the \
    reinforcement where there is any, and weld or bolt an M10 earthing lug to the column. A licensed electrician connects both to the \
    earth of the supply or to a rod, and decides about lightning.",
];

/// What is said of the earth, in the reader's units.
pub(super) fn earthing(units: Units) -> String {
    EARTHING.join(units.either("0.5\u{a0}m", "20\u{a0}in"))
}

/// Where the ducts run.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ducts {
    /// How many.
    pub count: u32,
    /// Inside diameter.
    #[serde(rename = "inside_diameter_mm", with = "millimetre")]
    pub inside_diameter: Length,
    /// Least radius of a bend.
    #[serde(rename = "bend_radius_mm", with = "millimetre")]
    pub bend_radius: Length,
    /// Depth at which they leave the block's side.
    #[serde(rename = "entry_depth_m", with = "metre")]
    pub entry_depth: Length,
    /// Clear distance between power and data.
    #[serde(rename = "apart_mm", with = "millimetre")]
    pub apart: Length,
    /// Length of one duct from outside the block to the column's inside.
    #[serde(rename = "each_m", with = "metre")]
    pub each: Length,
    /// Diameter of the round hole in the base plate that they all pass.
    #[serde(rename = "plate_hole_mm", with = "millimetre")]
    pub plate_hole: Length,
    /// How they run, in sentences.
    pub says: Vec<String>,
}

/// Lays them.
pub(super) fn lay(brief: &Brief, outline: &Outline, notes: &mut Notes) -> Ducts {
    let count = brief.block.duct_count.value.round().clamp(0.0, 6.0) as usize;
    let stock = brief.stock.value;
    let inside = millimetre::get(brief.block.duct_diameter.value);
    let outside = inside + 2.0 * WALL_MM;
    let bend = (BEND_FACTOR * inside).max(stock.either(LEAST_BEND_MM, 10.0 * INCH_MM));
    let entry = stock
        .either(ENTRY_DEPTH_M, 24.0 * INCH_MM / 1000.0)
        .min((metre::get(outline.depth) - outside / 1000.0).max(outside / 1000.0));
    let bundle = PACKING.get(count).copied().unwrap_or(3.0) * outside;
    let each = metre::get(outline.longer()) / 2.0 + entry + metre::get(outline.upstand) + 0.8;
    if count > 0 {
        fits(brief, bundle, notes);
    }
    let mut ducts = Ducts {
        count: count as u32,
        inside_diameter: millimetre::new(inside),
        bend_radius: millimetre::new(bend),
        entry_depth: metre::new(entry),
        apart: millimetre::new(stock.either(APART_MM, 2.0 * INCH_MM)),
        each: metre::new(each),
        plate_hole: millimetre::new(if count > 0 {
            let step = stock.either(5.0, INCH_MM / 4.0);
            (bundle / step).ceil() * step + step
        } else {
            0.0
        }),
        says: Vec::new(),
    };
    ducts.says = says(brief, &ducts);
    ducts
}

fn fits(brief: &Brief, bundle: f64, notes: &mut Notes) {
    let bore = millimetre::get(brief.pier.outside_diameter.value - brief.pier.wall.value * 2.0);
    let studs =
        millimetre::get(brief.anchors.circle_diameter.value - brief.anchors.hole_diameter.value)
            - 2.0 * APART_MM;
    notes.check(
        Check::at_most(
            "block.ducts",
            "Do the ducts rise inside the column, clear of the studs?",
            bundle,
            bore.min(studs),
            Unit::Millimetre,
            Source::derived("circles packed in a circle"),
        )
        .note(format!(
            "All ducts rise together inside the column's bore and {} clear of every hole, so that no drill meets a cable.",
            brief.units.about(APART_MM, Unit::Millimetre)
        ))
        .moved_by(paths![block.duct_count, block.duct_diameter_mm, pier.outside_diameter_mm, anchors.circle_diameter_mm]),
    );
}

fn says(brief: &Brief, ducts: &Ducts) -> Vec<String> {
    if ducts.count == 0 {
        return vec!["No duct is cast in: power and data come from outside, where they can be tripped over. Two are advised.".to_owned()];
    }
    let mm = |length: Length| brief.units.say(length, Millimetre);
    vec![
        format!(
            "They leave the block's side {} below ground and turn up under the column's middle in one sweep of at least {} radius, so \
             that a plug and its cable can be drawn through; no tight elbows.",
            brief.units.say(ducts.entry_depth, Metre),
            mm(ducts.bend_radius)
        ),
        format!(
            "Power runs in a duct of its own, data in the others, {} apart outside the column; leave a draw cord in each and tape the \
             ends shut before the pour.",
            mm(ducts.apart)
        ),
        format!(
            "They pass the base plate through one round hole of {} in its middle, with a grommet, clear of every stud.",
            mm(ducts.plate_hole)
        ),
        format!(
            "They fall gently away from the block to a gravel pocket or a drain, so that water and condensation run out; a weep of {} at \
             the plate's lowest edge, left open in any grout, drains the column.",
            brief.units.about(WEEP_MM, Unit::Millimetre)
        ),
    ]
}
