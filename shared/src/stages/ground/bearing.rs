//! Presumed net bearing pressure: stated, or by soil, less what falling ground takes.

use crate::brief::Brief;
use crate::figure::{One, Unit};
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::path;
use crate::rules::base_on_slope;
use crate::source::Source;
use crate::stages::ground::STATED;
use crate::stages::ground::bearing_table::{self, BearingRow};
use crate::stages::ground::soil_table::{self, Group, SoilRow};
use crate::units::{Pressure, Spread, kilopascal};

/// What the ground is presumed to carry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Presumed {
    /// Net pressure, low, typical and high, before water near the base is counted.
    pub pressure: Spread<Pressure>,
    /// Where each of the three stands.
    pub sources: Spread<Source>,
}

/// Finds the presumed bearing pressure; none where a ground engineer has to say.
pub fn bearing(brief: &Brief, row: &SoilRow, notes: &mut Notes) -> Option<Presumed> {
    if let Some(stated) = brief.site.stated.presumed_bearing_kpa {
        let line = Working::new(
            "ground.presumed_bearing",
            "Bearing pressure, as stated",
            "q stated",
            STATED,
        );
        notes.working(line.gives("q", stated, Unit::Kilopascal));
        return Some(Presumed {
            pressure: Spread::exactly(kilopascal::new(stated)),
            sources: Spread::exactly(STATED),
        });
    }
    let table = bearing_table::row(brief.site.soil.value)?;
    let factor = slope_factor(brief, row.group);
    let [low, typical, high] = table.pressure_kpa.map(|pressure| pressure * factor);
    notes.working(
        Working::new(
            "ground.presumed_bearing",
            "Least net bearing pressure that tables allow for this soil",
            "q = g q₀, g for ground that falls away",
            table.sources[0],
        )
        .with("q₀", table.pressure_kpa[0], Unit::Kilopascal)
        .with("g", factor, One)
        .gives("q", low, Unit::Kilopascal),
    );
    notes
        .assumptions
        .push(assumed(brief, &table, [low, typical, high]));
    let [from_low, from_typical, from_high] = table.sources;
    Some(Presumed {
        pressure: Spread { low, typical, high }.map(kilopascal::new),
        sources: Spread {
            low: from_low,
            typical: from_typical,
            high: from_high,
        },
    })
}

/// What falling ground leaves of a bearing pressure: the factor of cohesion in clay, of overburden and weight in grains.
fn slope_factor(brief: &Brief, group: Group) -> f64 {
    let falling = base_on_slope::falling(brief.site.stated.slope_deg.unwrap_or(0.0));
    match group {
        Group::Clay => falling.cohesion_factor,
        Group::Silt | Group::Sand | Group::Gravel => falling.weight_factor,
        Group::Rock | Group::Unfit => 1.0,
    }
}

fn assumed(brief: &Brief, table: &BearingRow, [low, typical, high]: [f64; 3]) -> Assumption {
    let say = |value, from: Source| {
        let value = brief.units.say(value, Unit::Kilopascal);
        format!("{value} ({from})")
    };
    let slope = match brief.site.stated.slope_deg {
        Some(slope) if slope > 0.0 => "; each of them reduced for the slope",
        _ => "",
    };
    Assumption {
        field: path!(site.presumed_bearing_kpa),
        value: AssumedValue::Number(low),
        unit: Unit::Kilopascal,
        why: format!(
            "the least that a table allows for {}, by which the block is judged: {}. In between: {}. The most: {}{slope}.",
            soil_table::words(brief.site.soil.value),
            say(low, table.sources[0]),
            say(typical, table.sources[1]),
            say(high, table.sources[2]),
        ),
        effect: "least area of the block's base; a pier's block seldom presses half as hard".into(),
        source: table.sources[0],
    }
}
