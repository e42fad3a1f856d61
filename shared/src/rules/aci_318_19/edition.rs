//! The two editions of the code: ACI 318-19 in pounds and inches, and ACI 318M-19 in SI with rounded constants.

use crate::stock::Stock;
use crate::units::customary::{INCH_MM, POUND_FORCE_N, PSI_MPA};
use crate::units::{Force, Length, Pressure, megapascal, millimetre, newton};

/// An edition: its equations hold in its own units.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edition {
    /// ACI 318-19: lb, in and psi.
    Inch,
    /// ACI 318M-19: N, mm and MPa.
    Si,
}

impl Edition {
    /// The edition that parts of a family are checked by.
    ///
    /// # Source
    /// ACI 318-19 and ACI 318M-19, notation and units.
    pub fn of(stock: Stock) -> Self {
        stock.either(Self::Si, Self::Inch)
    }

    /// Of two constants that of this edition.
    ///
    /// # Source
    /// ACI 318-19 and ACI 318M-19, notation and units.
    pub const fn either<T: Copy>(self, inch: T, si: T) -> T {
        match self {
            Self::Inch => inch,
            Self::Si => si,
        }
    }

    /// A length in its unit.
    ///
    /// # Source
    /// ACI 318-19 and ACI 318M-19, notation and units.
    pub fn length(self, length: Length) -> f64 {
        millimetre::get(length) / self.either(INCH_MM, 1.0)
    }

    /// A stress in its unit.
    ///
    /// # Source
    /// ACI 318-19 and ACI 318M-19, notation and units.
    pub fn stress(self, stress: Pressure) -> f64 {
        megapascal::get(stress) / self.psi_mpa()
    }

    /// So many of its unit of stress.
    ///
    /// # Source
    /// ACI 318-19 and ACI 318M-19, notation and units.
    pub fn stress_of(self, count: f64) -> Pressure {
        megapascal::new(count * self.psi_mpa())
    }

    /// So many of its unit of force.
    ///
    /// # Source
    /// ACI 318-19 and ACI 318M-19, notation and units.
    pub fn force_of(self, count: f64) -> Force {
        newton::new(count * self.either(POUND_FORCE_N, 1.0))
    }

    const fn psi_mpa(self) -> f64 {
        self.either(PSI_MPA, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_edition_counts_in_its_own_units() {
        let inch = millimetre::new(25.4);
        assert_eq!(
            (Edition::Inch.length(inch), Edition::Si.length(inch)),
            (1.0, 25.4)
        );
        let stress = Edition::Inch.stress_of(4000.0);
        assert!((megapascal::get(stress) - 27.579).abs() < 0.001);
        assert!((Edition::Inch.stress(stress) - 4000.0).abs() < 1e-9);
        assert!((newton::get(Edition::Inch.force_of(1.0)) - 4.448).abs() < 0.001);
        assert_eq!(Edition::of(Stock::Metric), Edition::Si);
    }
}
