//! Presumed bearing pressure: stated, or by soil, less what water takes.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::rules::ibc_2012::presumptive;
use crate::source::Source;
use crate::stages::ground::STATED;
use crate::stages::ground::soil_table::{self, SoilRow};
use crate::units::{Length, Pressure, Spread, kilopascal, metre};

/// Water nearer than a block's depth and width below the surface takes half of a sand's bearing.
const WATER_REACH_M: f64 = 2.0;
/// What is left of the bearing of grains under water, whose weight is about halved.
const WET_FACTOR: f64 = 0.5;

/// Finds the presumed bearing pressure; none where a ground engineer has to say.
pub fn bearing(
    brief: &Brief,
    row: &SoilRow,
    groundwater: Option<Length>,
    notes: &mut Notes,
) -> Option<Spread<Pressure>> {
    if let Some(stated) = brief.site.stated.presumed_bearing_kpa {
        let line = Working::new(
            "ground.presumed_bearing",
            "Bearing pressure, as stated",
            "q stated",
            STATED,
        );
        notes.working(line.gives("q", stated, Unit::Kilopascal));
        return Some(Spread::exactly(kilopascal::new(stated)));
    }
    let [low, typical, high] = row.bearing_kpa?;
    let wet = row.group.is_granular()
        && groundwater.is_some_and(|depth| metre::get(depth) < WATER_REACH_M);
    let factor = if wet { WET_FACTOR } else { 1.0 };
    notes.working(
        Working::new(
            "ground.presumed_bearing",
            "Bearing pressure presumed for the soil in words",
            "q = c q₀",
            presumptive::SOURCE,
        )
        .with("q₀", typical, Unit::Kilopascal)
        .with("c, for groundwater", factor, Unit::One)
        .gives("q", typical * factor, Unit::Kilopascal),
    );
    // Where nobody knows the water, the low end reckons with it.
    let unknown_water = row.group.is_granular() && groundwater.is_none();
    let (low, typical) = (
        low * if unknown_water { WET_FACTOR } else { factor },
        typical * factor,
    );
    let (halved, source) = if wet {
        (
            "; halved, because groundwater is near the base",
            Source::common_practice("bearing of sand halved by groundwater"),
        )
    } else {
        ("", presumptive::SOURCE)
    };
    notes.assumptions.push(Assumption {
        field: "site.presumed_bearing_kpa",
        value: AssumedValue::Number(typical),
        unit: Unit::Kilopascal,
        why: format!(
            "presumed for {}{halved}; soil of this name carries from {} up to {} where it has been tested",
            soil_table::words(brief.site.soil.value),
            brief.units.say(low, Unit::Kilopascal),
            brief.units.say(high, Unit::Kilopascal)
        ),
        effect: "least area of the block's base; a pier's block seldom presses half as hard".into(),
        source,
    });
    Some(Spread { low, typical, high }.map(kilopascal::new))
}
