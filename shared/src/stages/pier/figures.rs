//! Figures of the column and of what it carries.

#![expect(missing_docs, reason = "a figure's label says what it is")]

use crate::figure::{
    Kilogram, MeganewtonMetrePerRadian, MeganewtonPerMetre, Metre, Millimetre, NewtonSquareMetre,
};
use crate::site_plan::pier::Fill;
use crate::stages::figures::{Figure, one, words};

pub const HEIGHT: Figure = Figure::new(
    "pier.height",
    "Height of the column with its plates",
    |_, design| one(design.pier.height, Metre),
);
pub const OUTSIDE_DIAMETER: Figure = Figure::new(
    "pier.outside_diameter",
    "Outside diameter of the column",
    |_, design| one(design.pier.outside_diameter, Millimetre),
);
pub const WALL: Figure = Figure::new("pier.wall", "Wall thickness of the column", |_, design| {
    one(design.pier.wall, Millimetre)
});
pub const FILL: Figure = Figure::new("pier.fill", "The column is", |brief, _| {
    words(fill_words(brief.pier.fill.value))
});
pub const STEEL: Figure = Figure::new("pier.steel", "Steel", |brief, _| {
    words(brief.pier.steel.value.said())
});
pub const PLATE_SIDE: Figure = Figure::new("pier.plate_side", "Base plate, side", |_, design| {
    one(design.pier.plate_side, Millimetre)
});
pub const PLATE_THICKNESS: Figure = Figure::new(
    "pier.plate_thickness",
    "Base plate, thickness",
    |_, design| one(design.pier.plate_thickness, Millimetre),
);
pub const GAP: Figure = Figure::new("pier.gap", "Gap under the plate", |_, design| {
    one(design.pier.gap, Millimetre)
});
pub const MASS: Figure = Figure::new(
    "pier.mass",
    "Mass of column, fill and plates",
    |_, design| one(design.pier.mass, Kilogram),
);
pub const BENDING_STIFFNESS: Figure = Figure::new(
    "pier.bending_stiffness",
    "Bending stiffness of the column",
    |_, design| one(design.pier.bending_stiffness, NewtonSquareMetre),
);
pub const BASE_JOINT: Figure = Figure::new(
    "pier.base_joint_stiffness",
    "Stiffness of the base joint",
    |_, design| one(design.pier.base_joint_stiffness, MeganewtonMetrePerRadian),
);
pub const TOP_STIFFNESS: Figure =
    Figure::new("pier.top_stiffness", "Stiffness at the top", |_, design| {
        one(design.pier.top_stiffness, MeganewtonPerMetre)
    });
pub const CARRIED: Figure = Figure::new("load.mass", "Telescope and mount", |brief, _| {
    one(brief.load.mass.value, Kilogram)
});

/// What is in the tube.
pub fn fill_words(fill: Fill) -> &'static str {
    match fill {
        Fill::None => "empty",
        Fill::Sand => "filled with dry sand",
        Fill::Concrete => "filled with concrete",
    }
}
