//! Figures of the ground.

#![expect(missing_docs, reason = "a figure's label says what it is")]

use crate::figure::{
    Degree, KilonewtonPerCubicMetre, Kilopascal, Megapascal, Metre, MetrePerSecond, One,
};
use crate::stages::figures::{Figure, one, one_or, range};

pub const SHEAR_MODULUS: Figure = Figure::new(
    "ground.shear_modulus",
    "Shear modulus of the ground",
    |_, design| range(design.ground.shear_modulus, Megapascal),
);
pub const SHEAR_WAVE_SPEED: Figure = Figure::new(
    "ground.shear_wave_speed",
    "Shear-wave speed",
    |_, design| range(design.ground.shear_wave_speed, MetrePerSecond),
);
pub const UNIT_WEIGHT: Figure = Figure::new("ground.unit_weight", "Unit weight", |_, design| {
    one(design.ground.unit_weight, KilonewtonPerCubicMetre)
});
pub const POISSON_RATIO: Figure =
    Figure::new("ground.poisson_ratio", "Poisson’s ratio", |_, design| {
        one(design.ground.poisson_ratio, One)
    });
pub const PRESUMED_BEARING: Figure = Figure::new(
    "ground.presumed_bearing",
    "Allowable bearing pressure, net, at the least",
    |_, design| {
        one_or(
            design.ground.presumed_bearing,
            Kilopascal,
            "a ground engineer has to say",
        )
    },
);
pub const FROST_DEPTH: Figure = Figure::new("ground.frost_depth", "Frost depth", |_, design| {
    one(design.ground.frost_depth, Metre)
});
pub const GROUNDWATER: Figure = Figure::new(
    "ground.groundwater_depth",
    "Highest groundwater below ground",
    |_, design| one_or(design.ground.groundwater_depth, Metre, "deep, or not known"),
);
pub const SAFE_SLOPE: Figure = Figure::new(
    "ground.safe_slope",
    "Slope of the sides that stands",
    |_, design| one(design.ground.safe_slope_deg, Degree),
);
