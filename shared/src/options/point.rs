//! A point of the picture: one pier with what it costs to dig and what the star does on it.

use serde::Serialize;

use crate::brief::Brief;
use crate::cast::failing;
use crate::design::{Design, design};
use crate::halfspace::Shelf;
use crate::site_plan::anchors::Size as StudSize;
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::costs::Money;
use crate::stages::motion::improvement::NewField;
use crate::units::{Outcome, cubic_metre, hertz, kilogram, metre, millimetre};
use crate::verdict::{Says, Within};

/// The block of a point.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PointBlock {
    /// Along x.
    pub length_m: f64,
    /// Along y.
    pub width_m: f64,
    /// Base below ground.
    pub depth_m: f64,
    /// Top above ground.
    pub upstand_m: f64,
    /// Concrete in place.
    pub volume_m3: f64,
    /// Its mass.
    pub mass_kg: f64,
}

/// The column of a point.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PointPier {
    /// Height with its plates.
    pub height_m: f64,
    /// Outside diameter.
    pub outside_diameter_mm: f64,
    /// Wall.
    pub wall_mm: f64,
    /// Fill.
    pub fill: Fill,
    /// What the plate stands on.
    pub levelling: Levelling,
    /// Side of the base plate.
    pub plate_side_mm: f64,
    /// Thickness of the base plate.
    pub plate_thickness_mm: f64,
    /// Column, fill and plates.
    pub mass_kg: f64,
}

/// The studs of a point.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PointAnchors {
    /// How many.
    pub count: u32,
    /// Thread.
    pub size: StudSize,
    /// Length of a stud.
    pub length_mm: f64,
    /// Embedment.
    pub embedment_mm: f64,
    /// Stud circle.
    pub circle_diameter_mm: f64,
}

/// A point.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Point {
    /// The block.
    pub block: PointBlock,
    /// The column.
    pub pier: PointPier,
    /// The studs.
    pub anchors: PointAnchors,
    /// Ground to dig.
    pub dig_volume_m3: f64,
    /// Concrete to order.
    pub order_volume_m3: f64,
    /// What the lines come to that have a price; null where none has.
    pub cost: Option<Money>,
    /// The star's growth with nobody there; null where the ground is not known.
    pub star_growth_ratio: Option<Outcome<f64>>,
    /// Whether that is within what is asked; null where it is not known.
    pub still: Option<Within>,
    /// First natural frequency with a rigid load, typical ground.
    pub frequency_hz: Option<f64>,
    /// From here on somebody who stands costs the star less than is asked.
    pub quiet_distance_m: Option<f64>,
    /// Whether nobody who stands off the block is felt, so that no distance has to be kept.
    pub quiet_anywhere: bool,
    /// The rule for people.
    pub conduct_rule: String,
    /// May it be built.
    pub build: Says,
    /// Checks of building that fail.
    pub fails: Vec<&'static str>,
    /// The answers that make it of the plan.
    pub fields: Vec<NewField>,
}

impl Point {
    /// The point of complete inputs.
    pub fn of(brief: &Brief, fields: Vec<NewField>, shelf: &dyn Shelf) -> Self {
        Self::read(brief, &design(brief, shelf), fields)
    }

    fn read(brief: &Brief, design: &Design, fields: Vec<NewField>) -> Self {
        let (block, pier, studs) = (&design.block, &design.pier, &brief.anchors);
        let motion = &design.motion;
        Self {
            block: PointBlock {
                length_m: metre::get(block.length),
                width_m: metre::get(block.width),
                depth_m: metre::get(block.depth),
                upstand_m: metre::get(block.upstand),
                volume_m3: cubic_metre::get(block.volume),
                mass_kg: kilogram::get(block.mass),
            },
            pier: PointPier {
                height_m: metre::get(pier.height),
                outside_diameter_mm: millimetre::get(pier.outside_diameter),
                wall_mm: millimetre::get(pier.wall),
                fill: brief.pier.fill.value,
                levelling: brief.pier.levelling.value,
                plate_side_mm: millimetre::get(pier.plate_side),
                plate_thickness_mm: millimetre::get(pier.plate_thickness),
                mass_kg: kilogram::get(pier.mass),
            },
            anchors: PointAnchors {
                count: studs.number() as u32,
                size: studs.size.value,
                length_mm: millimetre::get(studs.length.value),
                embedment_mm: millimetre::get(studs.embedment.value),
                circle_diameter_mm: millimetre::get(studs.circle_diameter.value),
            },
            dig_volume_m3: cubic_metre::get(design.excavation.volume),
            order_volume_m3: cubic_metre::get(block.order_volume),
            cost: (!design.costs.lines.is_empty()).then_some(design.costs.total),
            star_growth_ratio: design.verdict.still.star_growth_ratio,
            still: design.verdict.still.says,
            frequency_hz: motion
                .rigid_load
                .frequencies
                .first()
                .copied()
                .map(hertz::get),
            quiet_distance_m: motion.quiet_distance_m,
            quiet_anywhere: motion.quiet.is_some_and(|quiet| quiet.anywhere),
            conduct_rule: design.verdict.conduct_rule.clone(),
            build: design.verdict.build.says,
            fails: failing(&design.checks).collect(),
            fields,
        }
    }
}
