//! Lengths that are read off a tape, in the reader's system.

use super::{Figure, Unit, UnitOf, Units, inches};

/// How near to a whole quarter an amount is one.
const ON_A_QUARTER: f64 = 0.001;

/// `1 3/4` of an amount that is in quarters.
fn quarters(amount: f64) -> Option<String> {
    let quarters = (amount * 4.0).round();
    let is_one = (1.0..400.0).contains(&quarters) && (amount * 4.0 - quarters).abs() < ON_A_QUARTER;
    is_one.then(|| {
        let (whole, part) = (quarters as u32 / 4, quarters as u32 % 4);
        let part = match part {
            1 => "1/4",
            2 => "1/2",
            3 => "3/4",
            _ => return whole.to_string(),
        };
        if whole == 0 {
            part.to_owned()
        } else {
            format!("{whole}\u{a0}{part}")
        }
    })
}

impl Units {
    /// A length, in millimetres, that somebody sets out or measures: metric as any, in inches to the nearest mark of a tape.
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

    /// A length finer than a tape, in millimetres, that a calculation gives to two digits: as a feeler gauge names it.
    pub fn to_feel(self, millimetres: f64) -> Figure {
        let (value, unit) = self.convert(millimetres, Unit::Millimetre);
        Figure {
            digits: super::significant(value, 2),
            unit,
        }
    }

    /// A length in feet and inches, where it is one that a tape shows; whole quarters of a cubic yard as a plant
    /// takes them, and of a gallon as a counter sells them.
    pub(super) fn as_on_a_tape(self, amount: f64, unit: Unit) -> Option<Figure> {
        let length = |digits| Figure { digits, unit: "" };
        match (self, unit) {
            (Self::Imperial, Unit::Metre) => inches::distance(amount * 1000.0).map(length),
            (Self::Imperial, Unit::Millimetre) => inches::on_a_mark(amount).map(length),
            (Self::Imperial, Unit::CubicMetre | Unit::Litre) => {
                quarters(amount * unit.imperial_factor()).map(|digits| Figure {
                    digits,
                    unit: unit.imperial_symbol(),
                })
            }
            _ => None,
        }
    }
}
