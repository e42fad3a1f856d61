//! What is sold: the catalogue of parts in two families, and the round sizes in which the rest is set out.
//!
//! Each row stands in a table of `shared/data` with its standard, the edition and how that was met. A plan is made of
//! rows of one family, apart from the units in which it is read and from the code that it is checked by; what a person states
//! beyond them is taken as stated, checked, and named as no stock size.

pub mod goods;
pub mod words;

use crate::field::choice;
use crate::figure::{Unit, Units, inches};
use crate::units::customary::INCH_MM;
use crate::units::{Length, metre, millimetre};

choice! {
    /// Which parts are sold where the pier is built.
    pub enum Stock {
        /// Metric tube, plate, rod and concrete classes.
        Metric = "metric", "Metric: tube and plate in millimetres, M16 rod, C30/37, bags of 25 kg";
        /// Inch pipe, plate, rod and concrete by its psi.
        Inch = "inch", "Inch: pipe by its nominal size, 5/8 inch rod, 4,000 psi, bags of 80 lb";
    }
}

impl Stock {
    /// The family that readers of these units usually buy from.
    pub const fn of(units: Units) -> Self {
        match units {
            Units::Metric => Self::Metric,
            Units::Imperial => Self::Inch,
        }
    }

    /// Of two the one for this family.
    pub fn either<T>(self, metric: T, inch: T) -> T {
        match self {
            Self::Metric => metric,
            Self::Inch => inch,
        }
    }

    /// So many steps in which pit and block are set out, m: 50 mm or 2 in.
    pub fn steps_m(self, number: f64) -> f64 {
        self.either(number / 20.0, number * 508.0 / 10_000.0)
    }

    /// One such step, m.
    pub fn step_m(self) -> f64 {
        self.steps_m(1.0)
    }

    /// A side of a plate or a circle, up to the next 10 mm or 1/2 in, mm.
    pub fn plate_up_mm(self, value: f64) -> f64 {
        let step = self.either(10.0, INCH_MM / 2.0);
        (value / step - 1e-9).ceil() * step
    }

    /// A side of a plate that goes with a larger tube, up to the next millimetre or 1/2 in, mm.
    pub fn side_up_mm(self, value: f64) -> f64 {
        self.either(value.ceil(), self.plate_up_mm(value))
    }

    /// A depth of a hole or a length of a stud, down to the last 5 mm or 1/4 in, mm.
    pub fn depth_down_mm(self, value: f64) -> f64 {
        let step = self.either(5.0, INCH_MM / 4.0);
        (value / step + 1e-9).floor() * step
    }

    /// An assumed length as a tape of this family has it: where inches are sold, the nearest round one within 2 %, such as 1 in
    /// for 25 mm. What is no length, or already on a mark, stays.
    pub fn round(self, unit: Unit, value: f64) -> f64 {
        match (self, unit) {
            (Self::Inch, Unit::Metre) => inches::near(value * 1000.0) / 1000.0,
            (Self::Inch, Unit::Millimetre) => inches::near(value),
            _ => value,
        }
    }

    /// The nearest size that a rule of this family can be set to, 1 mm or 1/16 in.
    pub fn on_a_rule(self, length: Length) -> Length {
        let step = self.either(1.0, INCH_MM / 16.0);
        millimetre::new((millimetre::get(length) / step).round() * step)
    }

    /// A length up to the next mark of an inch tape, 1/16 in; metric as it is.
    pub fn up_to_a_mark(self, length: Length) -> Length {
        match self {
            Self::Metric => length,
            Self::Inch => {
                let step = INCH_MM / 16.0;
                millimetre::new((millimetre::get(length) / step - 1e-6).ceil() * step)
            }
        }
    }

    /// The same down to the last mark.
    pub fn down_to_a_mark(self, length: Length) -> Length {
        match self {
            Self::Metric => length,
            Self::Inch => {
                let step = INCH_MM / 16.0;
                millimetre::new((millimetre::get(length) / step + 1e-6).floor() * step)
            }
        }
    }

    /// Millimetres up to the next mark.
    pub fn mark_up_mm(self, value: f64) -> f64 {
        millimetre::get(self.up_to_a_mark(millimetre::new(value)))
    }

    /// Millimetres down to the last mark.
    pub fn mark_down_mm(self, value: f64) -> f64 {
        millimetre::get(self.down_to_a_mark(millimetre::new(value)))
    }

    /// Whether a side or a depth of concrete can be set out by a tape: whole 10 mm, or whole inches.
    pub fn is_round(self, length: Length) -> bool {
        let step = self.either(0.01, INCH_MM / 1000.0);
        let steps = metre::get(length) / step;
        (steps - steps.round()).abs() < 1e-3
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_sizes_of_their_family() {
        assert_eq!(Stock::Metric.steps_m(21.0), 1.05);
        assert!((Stock::Inch.steps_m(21.0) / 0.0254 - 42.0).abs() < 1e-12);
        assert_eq!(Stock::Metric.plate_up_mm(401.0), 410.0);
        assert!((Stock::Inch.plate_up_mm(398.0) / 25.4 - 16.0).abs() < 1e-12);
        assert_eq!(Stock::Metric.depth_down_mm(124.0), 120.0);
        assert!(Stock::Inch.is_round(metre::new(42.0 * 0.0254)));
        assert!(!Stock::Inch.is_round(metre::new(1.05)));
        assert!(Stock::Metric.is_round(metre::new(1.05)));
    }
}
