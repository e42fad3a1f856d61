//! Limits of composition by exposure class.
//! EN 206-1:2000, Annex F, Table F.1 (recommended values; national annexes differ).

use crate::source::Source;
use crate::units::{MassDensity, Pressure, kilogram_per_cubic_metre, megapascal};

/// Where this comes from.
pub const SOURCE: Source = Source::read("EN 206-1", "2000", "Annex F, Table F.1");

/// What surrounds the concrete.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// Wet, rarely dry: most footings.
    Xc2,
    /// Wet and dry by turns: what stands out of the ground.
    Xc4,
    /// Frost on an upright face, without salt.
    Xf1,
    /// Frost on a level face that water stands on, without salt.
    Xf3,
}

/// What the table asks of concrete in one class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Name of the class.
    pub name: &'static str,
    /// Largest ratio of water to cement by mass.
    pub water_cement_ratio: f64,
    /// Least characteristic cylinder strength.
    pub strength: Pressure,
    /// Name of that strength class.
    pub strength_class: &'static str,
    /// Least cement.
    pub cement: MassDensity,
    /// Least entrained air, per cent of the volume; none where the table asks for none.
    pub air_per_cent: Option<f64>,
}

/// The table's row.
///
/// # Source
/// EN 206-1:2000, Table F.1.
///
/// # Valid for
/// Cement CEM I, a working life of 50 years; national annexes replace the figures.
///
/// # Example
/// ```
/// use stillground::rules::en_206_1_2000::exposure::{Exposure, limits};
/// assert_eq!(limits(Exposure::Xc2).water_cement_ratio, 0.60);
/// ```
pub fn limits(exposure: Exposure) -> Limits {
    let (name, water_cement_ratio, strength, strength_class, cement, air_per_cent) = match exposure
    {
        Exposure::Xc2 => ("XC2", 0.60, 25.0, "C25/30", 280.0, None),
        Exposure::Xc4 => ("XC4", 0.50, 30.0, "C30/37", 300.0, None),
        Exposure::Xf1 => ("XF1", 0.55, 30.0, "C30/37", 300.0, None),
        Exposure::Xf3 => ("XF3", 0.50, 30.0, "C30/37", 320.0, Some(4.0)),
    };
    let (strength, cement) = (
        megapascal::new(strength),
        kilogram_per_cubic_metre::new(cement),
    );
    Limits {
        name,
        water_cement_ratio,
        strength,
        strength_class,
        cement,
        air_per_cent,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_level_face_in_frost_asks_for_air() {
        let found = limits(Exposure::Xf3);
        assert_eq!(
            (found.strength_class, found.air_per_cent),
            ("C30/37", Some(4.0))
        );
        assert_eq!(kilogram_per_cubic_metre::get(found.cement), 320.0);
    }
}
