//! Lengths that are read off a tape, in the reader's system.

use super::{Figure, Unit, UnitOf, Units, inches};

impl Units {
    /// A length, in millimetres, that somebody sets out or measures: metric as any, in inches to the nearest mark of a tape.
    #[must_use]
    pub fn to_measure(self, millimetres: f64) -> Figure {
        match self {
            Self::Metric => self.figure(millimetres, Unit::Millimetre),
            Self::Imperial => Figure {
                digits: inches::dimension(millimetres),
                unit: "",
            },
        }
    }

    /// A round size of common practice, as the trade of these units has it: what is 300 mm to one is 12 in to the other. For
    /// a size that nothing was calculated with, or that is chosen as this one.
    #[must_use]
    pub fn about<Q>(self, quantity: Q, unit: impl UnitOf<Q>) -> String {
        let of = unit.unit();
        let amount = unit.count(quantity);
        match (self, of) {
            (Self::Imperial, Unit::Metre) => {
                self.say(inches::nominal(amount * 1000.0) / 1000.0, of)
            }
            (Self::Imperial, Unit::Millimetre) => self.say(inches::nominal(amount), of),
            _ => self.say(amount, of),
        }
    }

    /// A length in feet and inches, where it is one that a tape shows.
    pub(super) fn as_on_a_tape(self, amount: f64, unit: Unit) -> Option<String> {
        match (self, unit) {
            (Self::Imperial, Unit::Metre) => inches::distance(amount * 1000.0),
            (Self::Imperial, Unit::Millimetre) => inches::on_a_mark(amount),
            _ => None,
        }
    }
}
