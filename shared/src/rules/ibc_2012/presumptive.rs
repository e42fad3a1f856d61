//! Presumptive load-bearing values.
//! IBC 2012, Table 1806.2; the later editions repeat the figures.

use crate::source::{Source, Standing};
use crate::units::{Pressure, kilopascal};

/// Source of the table.
pub const SOURCE: Source = Source::new(
    "IBC",
    "2012",
    "Table 1806.2, vertical foundation pressure",
    Standing::SecondHand,
);

/// Source of what the table is not for.
pub const UNFIT: Source = Source::new(
    "IBC",
    "2012",
    "1806.2, last paragraph: no value for mud, organic soil, peat and unprepared fill",
    Standing::SecondHand,
);

/// One pound-force per square foot in kilopascals: 4.448 221 615 N over 0.3048² m².
pub const PSF_KPA: f64 = 4.448_221_615_260_5 / (0.3048 * 0.3048) / 1000.0;

/// Class of material, a row of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Class {
    /// 1: crystalline bedrock.
    CrystallineRock,
    /// 2: sedimentary and foliated rock.
    SedimentaryRock,
    /// 3: sandy gravel and gravel (GW, GP).
    Gravel,
    /// 4: sand, silty and clayey sand, silty and clayey gravel (SW, SP, SM, SC, GM, GC).
    Sand,
    /// 5: clay, sandy and silty clay, clayey silt, silt (CL, ML, MH, CH).
    ClayOrSilt,
}

/// Vertical foundation pressure, psf in the table.
///
/// # Source
/// IBC 2012, Table 1806.2.
///
/// # Valid for
/// Undisturbed ground; not mud, organic silt, organic clay, peat or unprepared fill (1806.2, last paragraph).
#[must_use]
pub fn bearing(class: Class) -> Pressure {
    let psf = match class {
        Class::CrystallineRock => 12_000.0,
        Class::SedimentaryRock => 4_000.0,
        Class::Gravel => 3_000.0,
        Class::Sand => 2_000.0,
        Class::ClayOrSilt => 1_500.0,
    };
    kilopascal::new(psf * PSF_KPA)
}

/// Lateral bearing for each metre below grade, psf per foot in the table.
///
/// # Source
/// IBC 2012, Table 1806.2.
///
/// # Valid for
/// As [`bearing`].
#[must_use]
pub fn lateral_kpa_per_m(class: Class) -> f64 {
    let psf_per_foot = match class {
        Class::CrystallineRock => 1_200.0,
        Class::SedimentaryRock => 400.0,
        Class::Gravel => 200.0,
        Class::Sand => 150.0,
        Class::ClayOrSilt => 100.0,
    };
    psf_per_foot * PSF_KPA / 0.3048
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clay_carries_fifteen_hundred_pounds_a_square_foot() {
        assert!((kilopascal::get(bearing(Class::ClayOrSilt)) - 71.8).abs() < 0.05);
        assert!((lateral_kpa_per_m(Class::Sand) - 23.56).abs() < 0.01);
    }
}
