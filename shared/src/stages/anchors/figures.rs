//! Figures of studs, holes, resin and nuts.

#![expect(missing_docs, reason = "a figure's label says what it is")]

use crate::figure::{Count, Hour, Kilonewton, Millilitre, Millimetre, Minute, NewtonMetre};
use crate::stages::figures::{Figure, known, one, one_or, range, words};
use crate::stock::words::cartridge;
use crate::units::millilitre;

pub const STUDS: Figure = Figure::new("anchors.studs", "Studs", |_, design| {
    one(design.anchors.studs.len() as f64, Count)
});
pub const THREAD: Figure = Figure::new("anchors.size", "Thread", |brief, _| {
    words(brief.anchors.size.value.said())
});
pub const STRENGTH_CLASS: Figure =
    Figure::new("anchors.strength_class", "Strength class", |brief, _| {
        words(brief.anchors.strength_class.value.said())
    });
pub const LENGTH: Figure = Figure::new("anchors.length", "Length of a stud", |brief, _| {
    one(brief.anchors.length.value, Millimetre)
});
pub const CIRCLE: Figure = Figure::new(
    "anchors.circle_diameter",
    "Diameter of the stud circle",
    |brief, _| one(brief.anchors.circle_diameter.value, Millimetre),
);
pub const HOLES: Figure = Figure::new("anchors.studs", "Drilled holes", |_, design| {
    one(design.anchors.studs.len() as f64, Count)
});
pub const HOLE_DIAMETER: Figure =
    Figure::new("anchors.hole_diameter", "Hole diameter", |_, design| {
        one(design.anchors.hole_diameter, Millimetre)
    });
pub const HOLE_DEPTH: Figure = Figure::new("anchors.hole_depth", "Hole depth", |_, design| {
    one(design.anchors.hole_depth, Millimetre)
});
pub const EMBEDMENT: Figure = Figure::new("anchors.embedment", "Embedment depth", |_, design| {
    one(design.anchors.embedment, Millimetre)
});
pub const RESIN: Figure = Figure::new(
    "anchors.resin",
    "Resin for all holes, with waste",
    |brief, design| {
        let cartridges = design.anchors.setting.cartridges;
        let each = millilitre::get(brief.anchors.product.cartridge.value);
        words(format!(
            "{cartridges} {} of {} for {}",
            if cartridges == 1 {
                "cartridge"
            } else {
                "cartridges"
            },
            cartridge(brief.stock.value, brief.units, each),
            brief.units.say(design.anchors.resin_volume, Millilitre)
        ))
    },
);
pub const RESIN_PER_HOLE: Figure =
    Figure::new("anchors.resin", "Resin in each hole", |_, design| {
        one(design.anchors.setting.resin_per_hole, Millilitre)
    });
pub const CLEANING_ROUNDS: Figure =
    Figure::new("anchors.cleaning", "Rounds of cleaning", |_, design| {
        words(design.anchors.setting.cleaning_rounds.to_string())
    });
pub const WORKING_TIME: Figure = Figure::new(
    "anchors.gel_time",
    "Working time of the resin",
    |_, design| known(design.anchors.setting.gel_time, Minute),
);
pub const CURING_TIME: Figure = Figure::new(
    "anchors.cure_time",
    "Curing time of the resin",
    |_, design| known(design.anchors.setting.cure_time, Hour),
);
pub const PRELOAD: Figure = Figure::new("anchors.preload", "Pull in a stud", |_, design| {
    range(design.anchors.preload, Kilonewton)
});
pub const TORQUE_STATED: Figure = Figure::new("anchors.torque", "Torque stated", |brief, _| {
    one_or(brief.anchors.torque, NewtonMetre, "none stated")
});
pub const TORQUE_MAXIMUM: Figure = Figure::new(
    "anchors.max_torque",
    "Maximum torque of the product",
    |brief, _| {
        one_or(
            brief.anchors.max_torque,
            NewtonMetre,
            "not known: ask for it before tightening",
        )
    },
);
pub const TORQUE: Figure = Figure::new("anchors.torque", "Torque", |_, design| {
    one(design.anchors.torque.set, NewtonMetre)
});
pub const TORQUE_LIMIT: Figure =
    Figure::new("anchors.torque", "Torque never above", |_, design| {
        one(design.anchors.torque.high, NewtonMetre)
    });
