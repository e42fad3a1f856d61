//! Figures of the star's movement.

#![expect(missing_docs, reason = "a figure's label says what it is")]

use crate::figure::{Amount, Arcsecond, Hertz, Kelvin, Metre, Pixel, Second};
use crate::stages::figures::{Figure, Shown, known, one, words};
use crate::stages::motion::Quiet;
use crate::units::{metre, second};

pub const LIMIT: Figure = Figure::new(
    "motion.budget",
    "Limit on a swing all through an exposure",
    |_, design| one(design.motion.budget_arcsec, Arcsecond),
);
pub const WALK_RMS: Figure = Figure::new("motion.walk", "Walk, root mean square", |_, design| {
    known(design.motion.walk.rms_arcsec, Arcsecond)
});
pub const WALK_PEAK: Figure = Figure::new("motion.walk", "Walk, largest", |_, design| {
    known(design.motion.walk.peak_arcsec, Arcsecond)
});
pub const TRAIL: Figure = Figure::new(
    "motion.walk",
    "Star’s trail during a walk, end to end",
    |_, design| known(design.motion.walk.trail_arcsec, Arcsecond),
);
pub const TRAIL_ON_SENSOR: Figure = Figure::new(
    "motion.walk",
    "Star’s trail during a walk, on the sensor",
    |_, design| known(design.motion.walk.trail_pixels, Pixel),
);
pub const WIND: Figure = Figure::new("motion.wind", "Wind while observing", |_, design| {
    known(design.motion.wind_arcsec, Arcsecond)
});
pub const THERMAL: Figure = Figure::new(
    "motion.thermal",
    "Column warmer on one side",
    |_, design| known(design.motion.thermal_arcsec, Arcsecond),
);
pub const THERMAL_DIFFERENCE: Figure = Figure::new(
    "motion.thermal",
    "Column warmer on one side, by",
    |_, design| one(design.motion.thermal_difference_k, Kelvin),
);
pub const SETTLING: Figure =
    Figure::new("motion.settle", "Settling time after a tap", |_, design| {
        known(design.motion.settle_s.map(second::new), Second)
    });
pub const KEEP_STANDING: Figure = Figure::new(
    "motion.quiet_distance",
    "Distance to keep from the pier’s axis, standing",
    |_, design| distance(design.motion.quiet),
);
pub const KEEP_WALKING: Figure = Figure::new(
    "motion.quiet_distance",
    "Distance to keep from the pier’s axis, walking",
    |_, design| distance(design.motion.quiet_walking),
);
pub const FREQUENCIES: Figure =
    Figure::new("motion.frequency_1", "Natural frequencies", |_, design| {
        let found = &design.motion.frequencies;
        if found.is_empty() {
            return Shown::Missing("not known");
        }
        Shown::List(found.iter().map(|one| Amount::of(*one, Hertz)).collect())
    });
pub const FIRST_FREQUENCY: Figure = Figure::new(
    "motion.frequency_1",
    "First natural frequency",
    |_, design| known(design.motion.frequencies.first().copied(), Hertz),
);
pub const SECOND_FREQUENCY: Figure = Figure::new(
    "motion.frequency_2",
    "Second natural frequency",
    |_, design| known(design.motion.frequencies.get(1).copied(), Hertz),
);

fn distance(quiet: Option<Quiet>) -> Shown {
    match quiet {
        // Where nobody is felt anywhere on the floor, a distance would only say how wide the opening is.
        Some(quiet) if quiet.anywhere => words("none: anywhere off the block"),
        Some(quiet) => one(metre::new(quiet.distance_m), Metre),
        None => Shown::Missing("nowhere within reach, or not known"),
    }
}
