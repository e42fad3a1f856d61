//! Strengths of the structural steels that a plan may name.

use crate::rules::en_1993_1_1_2005::material;
use crate::site_plan::pier::Steel;
use crate::stock::goods::COLUMN_STEELS;
use crate::units::{Length, Pressure, megapascal};

/// A grade's strengths, a row of `column_steels.csv`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// Nominal yield strength, of parts up to 40 mm thick.
    yields: Pressure,
    /// Ultimate strength.
    pub ultimate: Pressure,
    /// Correlation factor of a fillet weld.
    pub correlation: f64,
}

impl Grade {
    /// The strengths of a grade.
    pub fn of(steel: Steel) -> Self {
        let row = COLUMN_STEELS.row(steel.key());
        let cell = |column| row.as_ref().map_or(f64::NAN, |row| row.value(column));
        Self {
            yields: megapascal::new(cell("yield_mpa")),
            ultimate: megapascal::new(cell("ultimate_mpa")),
            correlation: cell("weld_correlation"),
        }
    }

    /// Yield strength of a part of this thickness.
    pub fn yield_strength(self, thickness: Length) -> Pressure {
        material::yield_strength(self.yields, thickness)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::millimetre;

    /// EN 1993-1-1:2005, Table 3.1: S235 235/215, S275 275/255, S355 355/335 MPa below and above 40 mm.
    #[test]
    fn each_grade_yields_at_its_name_and_twenty_less_where_it_is_thick() {
        for (steel, thin, thick) in [
            (Steel::S235, 235.0, 215.0),
            (Steel::S275, 275.0, 255.0),
            (Steel::S355, 355.0, 335.0),
        ] {
            let at = |mm| megapascal::get(Grade::of(steel).yield_strength(millimetre::new(mm)));
            assert!((at(20.0) - thin).abs() < 1e-9 && (at(50.0) - thick).abs() < 1e-9);
        }
    }
}
