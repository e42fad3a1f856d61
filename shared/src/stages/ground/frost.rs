//! Depth of frost: stated, or from the freezing index, or taken.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::rules::ufc_3_130_06_2004::{berggren, stefan};
use crate::rules::yearly_wave::season;
use crate::source::Source;
use crate::stages::ground::soil_table::SoilRow;
use crate::units::{Length, kilogram_per_cubic_metre, metre};

/// What the ground's surface feels of the air's freezing index: bare or paved ground that is kept clear of snow.
const SURFACE_FACTOR: f64 = 0.9;
/// Taken where nothing is known.
const ASSUMED_M: f64 = 0.8;
/// Where the year's mean is above this, frost is not reckoned with unless it is stated.
const WARM_MEAN_C: f64 = 18.0;

/// Finds the depth to which frost goes in a hard winter.
pub fn depth(brief: &Brief, row: &SoilRow, notes: &mut Notes) -> Length {
    let stated = &brief.site.stated;
    match (stated.frost_depth_m, stated.freezing_index_c_days) {
        (Some(depth), _) => metre::new(depth),
        (None, Some(index)) => from_index(brief, row, index, notes),
        (None, None) => assumed(brief, notes),
    }
}

/// By the modified Berggren equation where the year's mean temperature is known, else by Stefan's, which goes deeper.
fn from_index(brief: &Brief, row: &SoilRow, air_index: f64, notes: &mut Notes) -> Length {
    let index = SURFACE_FACTOR * air_index;
    let heat = stefan::latent_heat_j_m3(kilogram_per_cubic_metre::new(row.dry_density_kg_m3), row.water_content_ratio);
    let bound = stefan::depth(row.frozen_conductivity_w_mk, index, heat);
    let lambda = brief.site.stated.mean_annual_temperature_c.map_or(1.0, |mean| lambda(mean, air_index, row, heat, notes));
    let depth = bound * lambda;
    notes.working(
        Working::new("ground.frost_depth", "Depth of frost in a hard winter", "X = λ √(2 k n I · 86 400 / L)", berggren::SOURCE)
            .with("λ", lambda, Unit::One)
            .with("k", row.frozen_conductivity_w_mk, Unit::WattPerMetreKelvin)
            .with("n", SURFACE_FACTOR, Unit::One)
            .with("I", air_index, Unit::CelsiusDay)
            .with("L", heat / 1000.0, Unit::KilojoulePerCubicMetre)
            .gives("X", metre::get(depth), Unit::Metre),
    );
    let say = |value| brief.units.say(value, Unit::Metre);
    let why = match brief.site.stated.mean_annual_temperature_c {
        Some(_) => format!(
            "from the freezing index by the modified Berggren equation in ground kept clear of snow; without the ground's own warmth it \
             would be {}",
            say(metre::get(bound))
        ),
        None => "from the freezing index by Stefan's equation, which leaves out the ground's own warmth and so goes deep; the year's mean \
                 temperature would make it less"
            .to_owned(),
    };
    note(notes, metre::get(depth), why, berggren::SOURCE);
    depth
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
        .with("α", alpha, Unit::One)
        .with("μ", mu, Unit::One)
        .with("t", season_d, Unit::Day)
        .gives("λ", lambda, Unit::One),
    );
    lambda
}

fn assumed(brief: &Brief, notes: &mut Notes) -> Length {
    let warm = brief.site.stated.mean_annual_temperature_c.is_some_and(|mean| mean > WARM_MEAN_C);
    let (value, why) = if warm {
        (0.0, "a place this warm over the year has no frost in the ground")
    } else {
        (ASSUMED_M, "a hard winter of the middle latitudes inland; the building office knows the figure for the place")
    };
    note(notes, value, why.to_owned(), Source::judgement("frost of the middle latitudes"));
    metre::new(value)
}

fn note(notes: &mut Notes, value: f64, why: String, source: Source) {
    notes.assumptions.push(Assumption {
        field: "site.frost_depth_m",
        value: AssumedValue::Number(value),
        unit: Unit::Metre,
        why,
        effect: "least depth of the block's base; a base above it is lifted and tilted by freezing ground".into(),
        source,
    });
}
