//! Limits of composition by exposure class.
//! ACI 318-19, Table 19.3.2.1.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::customary::PSI_MPA;
use crate::units::{Pressure, megapascal};

/// Where this comes from.
pub const SOURCE: Source = clause("Table 19.3.2.1", Standing::FromMemory);

/// What surrounds the concrete.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// Steel in it, moisture, no chlorides.
    C1,
    /// Freezing and thawing, seldom wet: an upright face.
    F1,
    /// Freezing and thawing, often wet: a level face.
    F2,
}

/// What the table asks of concrete in one class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Name of the class.
    pub name: &'static str,
    /// Largest ratio of water to cement by mass; none where the table has none.
    pub water_cement_ratio: Option<f64>,
    /// Least specified strength.
    pub strength: Pressure,
    /// The same as it is ordered.
    pub strength_class: &'static str,
    /// Entrained air, per cent, for stone of 3/4 in, Table 19.3.3.1; none where none is asked.
    pub air_per_cent: Option<f64>,
}

/// The table's row.
///
/// # Source
/// ACI 318-19, Table 19.3.2.1 and Table 19.3.3.1.
pub fn limits(exposure: Exposure) -> Limits {
    let (name, water_cement_ratio, psi, strength_class, air_per_cent) = match exposure {
        Exposure::C1 => ("C1", None, 2500.0, "2500 psi", None),
        Exposure::F1 => ("F1", Some(0.55), 3500.0, "3500 psi", Some(5.0)),
        Exposure::F2 => ("F2", Some(0.45), 4500.0, "4500 psi", Some(6.0)),
    };
    Limits {
        name,
        water_cement_ratio,
        strength: megapascal::new(psi * PSI_MPA),
        strength_class,
        air_per_cent,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ACI 318-19 Table 19.3.2.1 (from memory): F2 4500 psi and 0.45.
    #[test]
    fn a_level_face_in_frost_asks_for_4500_psi_and_air() {
        let found = limits(Exposure::F2);
        assert!((megapascal::get(found.strength) - 31.026).abs() < 0.001);
        assert_eq!(found.water_cement_ratio, Some(0.45));
        assert_eq!(found.air_per_cent, Some(6.0));
    }
}
