//! Heat: one side of the column colder than the other, and how fast that comes about.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Arcsecond, Kelvin, Metre, Millimetre, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::mechanics::heat as rule;
use crate::source::Source;
use crate::stages::pier::Pier;
use crate::units::{ARCSEC_PER_RADIAN, second};

/// Time in which the difference comes about after dusk, s: a thin tube follows the air within an hour.
pub const BARE_TIME_S: f64 = 3600.0;
/// The same with a fill, whose heat slows it.
pub const FILLED_TIME_S: f64 = 3.0 * 3600.0;

/// What warmth on one side does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Heat {
    /// Turn of the top for the whole difference.
    pub arcsec: f64,
    /// Time in which it comes about.
    pub over_s: f64,
    /// Turn in a minute while it comes about.
    pub arcsec_per_min: f64,
    /// Turn within one exposure, not guided.
    pub unguided_arcsec: f64,
    /// Turn between two corrections of the guider.
    pub guided_arcsec: f64,
}

/// Finds the turn.
pub fn find(brief: &Brief, pier: &Pier, notes: &mut Notes) -> Heat {
    let difference = brief.load.thermal_difference_k.value;
    let arcsec = ARCSEC_PER_RADIAN
        * rule::top_turn_ratio(
            material::EXPANSION_PER_K,
            difference,
            pier.height,
            pier.outside_diameter,
        );
    let over_s = match brief.pier.fill.value {
        crate::site_plan::pier::Fill::None => BARE_TIME_S,
        _ => FILLED_TIME_S,
    };
    let exposure = second::get(brief.load.exposure.value);
    let within = |window: f64| arcsec * (window / over_s).min(1.0);
    notes.working(
        Working::new(
            "motion.thermal",
            "Tilt of the top by warmth on one side",
            "θ = α ΔT h/d",
            rule::SOURCE,
        )
        .with("α", material::EXPANSION_PER_K, One)
        .with("ΔT", difference, Kelvin)
        .with("h", pier.height, Metre)
        .with("d", pier.outside_diameter, Millimetre)
        .gives("θ", arcsec, Arcsecond),
    );
    notes.working(
        Working::new(
            "motion.thermal_drift",
            "Of which within one exposure, not guided",
            "θ t/T",
            Source::judgement("an hour for a bare tube, three for a filled one"),
        )
        .with("θ", arcsec, Arcsecond)
        .with("t", exposure, Unit::Second)
        .with("T", over_s, Unit::Second)
        .gives("θ_t", within(exposure), Arcsecond),
    );
    let guided = exposure.min(second::get(brief.load.guiding_interval.value));
    Heat {
        arcsec,
        over_s,
        arcsec_per_min: 60.0 * arcsec / over_s,
        unguided_arcsec: within(exposure),
        guided_arcsec: within(guided),
    }
}
