//! An axis with marks at round values.

use crate::drawing::pen::{Pen, SMALL};
use crate::drawing::{Anchor, Label, Line, Point, at};

/// A straight axis: where its ends stand, and the values there.
#[derive(Debug, Clone, Copy)]
pub struct Axis {
    /// Where the low value stands.
    pub from: Point,
    /// Where the high value stands.
    pub to: Point,
    /// The low value.
    pub low: f64,
    /// The high value.
    pub high: f64,
}

impl Axis {
    /// Where a value stands.
    #[must_use]
    pub fn place(&self, value: f64) -> Point {
        let part = (value - self.low) / (self.high - self.low);
        at(
            self.from.x + part * (self.to.x - self.from.x),
            self.from.y + part * (self.to.y - self.from.y),
        )
    }

    /// A stroke out of the axis and the value's name beyond it; `out` says which way and how far.
    pub fn mark(&self, pen: &mut Pen, value: f64, out: Point, name: &str) {
        let place = self.place(value);
        pen.line(Line::Thin, &[place, at(place.x + out.x, place.y + out.y)]);
        let (anchor, label) = if out.x > 0.0 {
            (
                Anchor::Start,
                at(place.x + out.x + 0.8, place.y + 0.35 * SMALL),
            )
        } else {
            (Anchor::Middle, at(place.x, place.y + out.y + SMALL + 0.4))
        };
        pen.label(Label {
            at: label,
            size: SMALL,
            anchor,
            upright: false,
            bold: false,
            text: name.to_owned(),
        });
    }
}

/// Round values from one end to the other, about so many: steps of 1, 2 or 5 times a power of ten.
#[must_use]
pub fn steps(low: f64, high: f64, about: usize) -> Vec<f64> {
    let span = high - low;
    if !span.is_finite() || span <= 0.0 {
        return Vec::new();
    }
    let rough = span / about.max(1) as f64;
    let power = 10f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|digit| digit * power)
        .find(|step| *step >= rough * 0.999)
        .unwrap_or(10.0 * power);
    let first = (low / step - 1e-9).ceil() as i64;
    (0..=(span / step) as i64 + 1)
        .map(|i| (first + i) as f64 * step)
        .filter(|value| *value <= high + 1e-9 * span)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::steps;

    #[test]
    fn marks_stand_at_round_values_within_the_axis() {
        assert_eq!(steps(0.0, 0.1, 2), [0.0, 0.05, 0.1]);
        assert_eq!(
            steps(3.2, 11.1, 8),
            [4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0]
        );
        assert!(steps(1.0, 1.0, 5).is_empty() && steps(0.0, f64::NAN, 5).is_empty());
    }
}
