//! Depth of frost: stated, or from the freezing index, or taken.

use crate::brief::Brief;
use crate::figure::{CelsiusDay, KilojoulePerCubicMetre, Metre, One, Unit, WattPerMetreKelvin};
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::path;
use crate::rules::ufc_3_130_06_2004::{berggren, stefan};
use crate::rules::yearly_wave::season;
use crate::source::Source;
use crate::stages::ground::STATED;
use crate::stages::ground::soil_table::{self, SoilRow};
use crate::units::{Length, kilogram_per_cubic_metre, metre};

/// What the ground's surface feels of the air's freezing index: a shaded surface clear of snow (UFC 3-130-06, Table 2-4;
/// bare soil there is 0.7, turf 0.5).
const SURFACE_FACTOR: f64 = 0.9;
/// Taken where nothing is known.
const ASSUMED_M: f64 = 0.8;
/// Where the year's mean is above this, frost is not reckoned with unless it is stated.
const WARM_MEAN_C: f64 = 18.0;

/// Finds the depth to which frost goes in a hard winter: a stated one goes before a calculated one, and that before none.
pub fn depth(brief: &Brief, row: &SoilRow, notes: &mut Notes) -> Length {
    let stated = &brief.site.stated;
    match (stated.frost_depth_m, stated.freezing_index_c_days) {
        (Some(depth), index) => as_stated(brief, row, metre::new(depth), index, notes),
        (None, Some(index)) => from_index(brief, row, index, notes),
        (None, None) => assumed(brief, notes),
    }
}

/// A stated depth, held against the calculated one where the freezing index is stated too.
fn as_stated(
    brief: &Brief,
    row: &SoilRow,
    depth: Length,
    air_index: Option<f64>,
    notes: &mut Notes,
) -> Length {
    let line = Working::new(
        "ground.frost_depth",
        "Frost depth, as stated",
        "X stated",
        STATED,
    );
    notes.working(line.gives("X", depth, Metre));
    if let Some(index) = air_index {
        let _ = calculate(brief, row, index, "ground.frost_depth_calculated", notes);
    }
    depth
}

/// A stated depth, and the one that the stated freezing index gives, where both are known.
pub fn stated_and_calculated(brief: &Brief) -> Option<[Length; 2]> {
    let stated = &brief.site.stated;
    let (depth, index) = stated.frost_depth_m.zip(stated.freezing_index_c_days)?;
    let row = soil_table::row(brief.site.soil.value);
    let found = calculate(
        brief,
        &row,
        index,
        "ground.frost_depth",
        &mut Notes::default(),
    );
    Some([metre::new(depth), found.depth])
}

/// What the freezing index gives.
struct Calculated {
    depth: Length,
    /// Without the ground's own warmth.
    bound: Length,
}

/// By the modified Berggren equation where the year's mean temperature is known, else by Stefan's, which goes deeper.
fn calculate(
    brief: &Brief,
    row: &SoilRow,
    air_index: f64,
    id: &'static str,
    notes: &mut Notes,
) -> Calculated {
    let heat = stefan::latent_heat_j_m3(
        kilogram_per_cubic_metre::new(row.dry_density_kg_m3),
        row.water_content_ratio,
    );
    let bound = stefan::depth(
        row.frozen_conductivity_w_mk,
        SURFACE_FACTOR * air_index,
        heat,
    );
    let lambda = brief
        .site
        .stated
        .mean_annual_temperature_c
        .map_or(1.0, |mean| lambda(mean, air_index, row, heat, notes));
    let depth = bound * lambda;
    notes.working(
        Working::new(
            id,
            "Frost depth in a hard winter",
            "X = λ √(2 k n I · 86 400 / L)",
            berggren::SOURCE,
        )
        .with("λ", lambda, One)
        .with("k", row.frozen_conductivity_w_mk, WattPerMetreKelvin)
        .with("n", SURFACE_FACTOR, One)
        .with("I", air_index, CelsiusDay)
        .with("L", heat / 1000.0, KilojoulePerCubicMetre)
        .gives("X", depth, Metre),
    );
    Calculated { depth, bound }
}

fn from_index(brief: &Brief, row: &SoilRow, air_index: f64, notes: &mut Notes) -> Length {
    let found = calculate(brief, row, air_index, "ground.frost_depth", notes);
    let why = match brief.site.stated.mean_annual_temperature_c {
        Some(_) => format!(
            "from the freezing index by the modified Berggren equation in ground kept clear of snow; without the ground's own warmth it \
             would be {}",
            brief.units.say( found.bound, Metre)
        ),
        None => "from the freezing index by Stefan's equation, which leaves out the ground's own warmth and so goes deep; the year's mean \
                 temperature would make it less"
            .to_owned(),
    };
    let why = match &brief.site.stated.climate_source {
        Some(source) => format!("{why}. The climate figures come from: {source}"),
        None => why,
    };
    note(notes, metre::get(found.depth), why, berggren::SOURCE);
    found.depth
}

/// λ for this winter: how long it lasts follows from the year's mean and the freezing index.
fn lambda(mean_c: f64, air_index: f64, row: &SoilRow, heat: f64, notes: &mut Notes) -> f64 {
    let season_d = season(mean_c, air_index).days;
    let index = SURFACE_FACTOR * air_index;
    if index <= 0.0 || season_d <= 0.0 {
        return 1.0;
    }
    let alpha = berggren::thermal_ratio(mean_c, index, season_d);
    let capacity = berggren::heat_capacity_j_m3_k(row.dry_density_kg_m3, row.water_content_ratio);
    let mu = berggren::fusion_ratio(index, season_d, capacity, heat);
    let lambda = berggren::lambda_factor(alpha, mu);
    notes.working(
        Working::new(
            "ground.frost_lambda",
            "What the ground's warmth leaves of the frost",
            "λ = g √(2/μ), e^(−g²)/erf g − α e^(−g²)/erfc g = g √π / μ",
            berggren::SOURCE,
        )
        .with("α", alpha, One)
        .with("μ", mu, One)
        .with("t", season_d, Unit::Day)
        .gives("λ", lambda, One),
    );
    lambda
}

fn assumed(brief: &Brief, notes: &mut Notes) -> Length {
    let warm = brief
        .site
        .stated
        .mean_annual_temperature_c
        .is_some_and(|mean| mean > WARM_MEAN_C);
    let (value, why) = if warm {
        (
            0.0,
            "a place this warm over the year has no frost in the ground",
        )
    } else {
        (
            ASSUMED_M,
            "a hard winter of the middle latitudes inland; the building office knows the figure for the place",
        )
    };
    let source = Source::judgement("frost of the middle latitudes");
    notes.working(
        Working::new(
            "ground.frost_depth",
            "Depth of frost, taken",
            "X taken",
            source,
        )
        .gives("X", value, Unit::Metre),
    );
    note(notes, value, why.to_owned(), source);
    metre::new(value)
}

fn note(notes: &mut Notes, value: f64, why: String, source: Source) {
    notes.assumptions.push(Assumption {
        field: path!(site.frost_depth_m),
        value: AssumedValue::Number(value),
        unit: Unit::Metre,
        why,
        effect: "least depth of the block's base; a base above it is lifted and tilted by freezing ground".into(),
        source,
    });
}
