//! Figures of the block, and of the ground under it.

#![expect(missing_docs, reason = "a figure's label says what it is")]

use crate::figure::{
    CubicMetre, Day, Kilogram, Kilopascal, MeganewtonMetrePerRadian, Metre, Millimetre,
};
use crate::stages::figures::{Figure, known, one, sides, words};

pub const LENGTH: Figure = Figure::new("block.length", "Block, east to west", |_, design| {
    one(design.block.length, Metre)
});
pub const WIDTH: Figure = Figure::new("block.width", "Block, north to south", |_, design| {
    one(design.block.width, Metre)
});
pub const SIDES: Figure = Figure::new("block.length", "Block", |_, design| {
    sides(design.block.length, design.block.width, Metre)
});
pub const DEPTH: Figure = Figure::new(
    "block.depth",
    "Base of the block below ground",
    |_, design| one(design.block.depth, Metre),
);
pub const UPSTAND: Figure = Figure::new(
    "block.upstand",
    "Top of the block above ground",
    |_, design| one(design.block.upstand, Metre),
);
pub const VOLUME: Figure = Figure::new("block.volume", "Concrete in place", |_, design| {
    one(design.block.volume, CubicMetre)
});
pub const ORDER_VOLUME: Figure =
    Figure::new("block.order_volume", "Concrete to order", |_, design| {
        one(design.block.order_volume, CubicMetre)
    });
pub const CONCRETE: Figure = Figure::new(
    "block.concrete",
    "Strength class of the concrete",
    |brief, _| words(brief.block.concrete.value.said()),
);
pub const MASS: Figure = Figure::new("block.mass", "Mass of the block", |_, design| {
    one(design.block.mass, Kilogram)
});
pub const BEARING_PRESSURE: Figure = Figure::new(
    "block.bearing_pressure",
    "Highest bearing pressure under the base",
    |_, design| one(design.block.bearing_pressure, Kilopascal),
);
pub const CURING: Figure = Figure::new("block.curing", "Keep damp and covered for", |_, design| {
    one(design.block.curing, Day)
});
pub const DRILL_AFTER: Figure =
    Figure::new("block.drill_after", "Wait before drilling", |_, design| {
        one(design.block.drill_after, Day)
    });
pub const LOAD_AFTER: Figure = Figure::new(
    "block.load_after",
    "Wait before the full load",
    |_, design| one(design.block.load_after, Day),
);
pub const DUCTS: Figure = Figure::new("block.ducts", "Ducts", |_, design| {
    words(design.block.ducts.count.to_string())
});
pub const DUCT_DIAMETER: Figure = Figure::new(
    "block.ducts",
    "Inside diameter of each duct",
    |_, design| one(design.block.ducts.inside_diameter, Millimetre),
);
pub const ROCKING_EAST_WEST: Figure = Figure::new(
    "ground_stiffness.rocking_y",
    "Rocking stiffness of the ground, east–west",
    |_, design| {
        known(
            design.ground_stiffness.typical.rocking_y,
            MeganewtonMetrePerRadian,
        )
    },
);
pub const ROCKING_NORTH_SOUTH: Figure = Figure::new(
    "ground_stiffness.rocking_x",
    "Rocking stiffness of the ground, north–south",
    |_, design| {
        known(
            design.ground_stiffness.typical.rocking_x,
            MeganewtonMetrePerRadian,
        )
    },
);
