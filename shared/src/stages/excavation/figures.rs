//! Figures of the pit.

#![expect(missing_docs, reason = "a figure's label says what it is")]

use crate::figure::{Count, CubicMetre, Hour, Metre};
use crate::stages::figures::{Figure, one, sides};
use crate::units::hour;

pub const LENGTH: Figure = Figure::new(
    "excavation.length",
    "Pit at ground level, east to west",
    |_, design| one(design.excavation.length, Metre),
);
pub const WIDTH: Figure = Figure::new(
    "excavation.width",
    "Pit at ground level, north to south",
    |_, design| one(design.excavation.width, Metre),
);
pub const AT_GROUND_LEVEL: Figure =
    Figure::new("excavation.length", "Pit at ground level", |_, design| {
        sides(design.excavation.length, design.excavation.width, Metre)
    });
pub const AT_THE_BOTTOM: Figure = Figure::new(
    "excavation.bottom_length",
    "Pit at the bottom",
    |_, design| {
        sides(
            design.excavation.bottom_length,
            design.excavation.bottom_width,
            Metre,
        )
    },
);
pub const DEPTH: Figure = Figure::new("excavation.depth", "Depth of the pit", |_, design| {
    one(design.excavation.depth, Metre)
});
pub const VOLUME: Figure = Figure::new("excavation.volume", "Soil to dig", |_, design| {
    one(design.excavation.volume, CubicMetre)
});
pub const SPOIL_VOLUME: Figure =
    Figure::new("excavation.spoil_volume", "Spoil, loose", |_, design| {
        one(design.excavation.spoil_volume, CubicMetre)
    });
pub const SPOIL_DISTANCE: Figure = Figure::new(
    "excavation.spoil_distance",
    "Spoil kept back from the edge",
    |_, design| one(design.excavation.spoil_distance, Metre),
);
pub const BACKFILL: Figure = Figure::new("excavation.backfill", "Soil to put back", |_, design| {
    one(design.excavation.backfill_volume, CubicMetre)
});
pub const BARROW_LOADS: Figure =
    Figure::new("excavation.barrow_loads", "Barrow loads", |_, design| {
        one(f64::from(design.excavation.barrow_loads), Count)
    });
pub const SKIPS: Figure = Figure::new("excavation.skips", "Skips", |_, design| {
    one(f64::from(design.excavation.skips), Count)
});
pub const DIGGING: Figure = Figure::new("excavation.digging", "Time to dig", |_, design| {
    one(hour::new(design.excavation.digging_h), Hour)
});
