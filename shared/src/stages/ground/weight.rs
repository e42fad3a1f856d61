//! Unit weight and Poisson's ratio: stated, or by soil and water.

use crate::brief::Brief;
use crate::figure::{Unit, UnitOf};
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::path;
use crate::rules::en_1997_1_2004::uplift;
use crate::source::Source;
use crate::stages::ground::STATED;
use crate::stages::ground::soil_table::{self, Group, SoilRow};
use crate::stages::ground::water::Water;
use crate::units::{Spread, UnitWeight, kilonewton_per_cubic_metre};

/// Soil of one name varies by so much in weight either way.
const WEIGHT_BAND_KN_M3: f64 = 1.0;

/// Unit weight of the soil above and below the water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layers {
    /// Above it.
    pub moist: UnitWeight,
    /// Below it, with all pores full.
    pub saturated: UnitWeight,
}

impl Layers {
    /// What the soil below the water weighs there; never less than nought.
    pub fn buoyant(&self) -> UnitWeight {
        (self.saturated - uplift::water()).max(kilonewton_per_cubic_metre::new(0.0))
    }
}

/// Both weights: the stated one, or those of the soil in words.
pub fn layers(brief: &Brief, row: &SoilRow) -> Layers {
    let stated = brief.site.stated.unit_weight_kn_m3;
    Layers {
        moist: kilonewton_per_cubic_metre::new(stated.unwrap_or(row.unit_weight_kn_m3)),
        saturated: kilonewton_per_cubic_metre::new(stated.unwrap_or(row.wet_unit_weight_kn_m3)),
    }
}

/// Finds the unit weight.
pub fn unit_weight(
    brief: &Brief,
    row: &SoilRow,
    water: &Water,
    notes: &mut Notes,
) -> Spread<UnitWeight> {
    if let Some(stated) = brief.site.stated.unit_weight_kn_m3 {
        line(
            (
                "ground.unit_weight",
                "Unit weight, as stated",
                "γ stated",
                "γ",
            ),
            stated,
            Unit::KilonewtonPerCubicMetre,
            STATED,
            notes,
        );
        return Spread::exactly(kilonewton_per_cubic_metre::new(stated));
    }
    let typical = water.mean(row.unit_weight_kn_m3, row.wet_unit_weight_kn_m3);
    let names = (
        "ground.unit_weight",
        "Unit weight, usual for this soil",
        "γ from the table of soils, by the share under water",
        "γ",
    );
    line(
        names,
        typical,
        Unit::KilonewtonPerCubicMetre,
        row.cited(),
        notes,
    );
    notes.assumptions.push(Assumption {
        field: path!(site.unit_weight_kn_m3),
        value: AssumedValue::Number(typical),
        unit: Unit::KilonewtonPerCubicMetre,
        why: format!(
            "usual for {} {}",
            soil_table::words(brief.site.soil.value),
            above_or_below(water)
        ),
        effect: "shear modulus for a speed of waves, in proportion; weight of the spoil".into(),
        source: soil_table::SOURCE,
    });
    let spread = Spread {
        low: typical - WEIGHT_BAND_KN_M3,
        typical,
        high: typical + WEIGHT_BAND_KN_M3,
    };
    spread.map(kilonewton_per_cubic_metre::new)
}

/// Finds Poisson's ratio; water raises it, since what is full of water hardly changes its volume.
pub fn poisson_ratio(
    brief: &Brief,
    row: &SoilRow,
    water: &Water,
    notes: &mut Notes,
) -> Spread<f64> {
    if let Some(stated) = brief.site.stated.poisson_ratio {
        line(
            (
                "ground.poisson_ratio",
                "Poisson's ratio, as stated",
                "ν stated",
                "ν",
            ),
            stated,
            Unit::One,
            STATED,
            notes,
        );
        return Spread::exactly(stated);
    }
    let [low, typical, high] =
        std::array::from_fn(|i| water.mean(row.poisson_ratio[i], row.wet_poisson_ratio[i]));
    let raised = if water.wet && row.group != Group::Rock {
        "; water in the pores raises it"
    } else {
        ""
    };
    let names = (
        "ground.poisson_ratio",
        "Poisson's ratio, usual for this soil",
        "ν from the table of soils, by the share under water",
        "ν",
    );
    line(names, typical, Unit::One, row.cited(), notes);
    notes.assumptions.push(Assumption {
        field: path!(site.poisson_ratio),
        value: AssumedValue::Number(typical),
        unit: Unit::One,
        why: format!(
            "usual for {} {}{raised}",
            soil_table::words(brief.site.soil.value),
            above_or_below(water)
        ),
        effect: "tilts, by about 1 − ν: less of it tilts more".into(),
        source: soil_table::SOURCE,
    });
    Spread { low, typical, high }
}

fn above_or_below(water: &Water) -> &'static str {
    if water.wet {
        "with groundwater beside the block"
    } else {
        "above the groundwater"
    }
}

/// The line behind a figure that is stated or read from the table: its id, title, formula and symbol.
fn line<Q>(
    names: (&'static str, &'static str, &'static str, &'static str),
    quantity: Q,
    unit: impl UnitOf<Q>,
    source: Source,
    notes: &mut Notes,
) {
    let (id, title, formula, symbol) = names;
    notes.working(Working::new(id, title, formula, source).gives(symbol, quantity, unit));
}
