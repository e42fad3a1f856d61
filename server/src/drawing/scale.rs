//! The scale of a drawing, out of the recommended ones.

use crate::drawing::{Point, at};

/// Reductions of ISO 5455, with full size first.
pub const REDUCTIONS: [u32; 13] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000];

/// The largest recommended scale at which a thing of so many metres fits into so many millimetres; the smallest one
/// when none does.
#[must_use]
pub fn fitting(width_m: f64, height_m: f64, room_width: f64, room_height: f64) -> u32 {
    REDUCTIONS
        .into_iter()
        .find(|&n| {
            width_m * 1000.0 / f64::from(n) <= room_width
                && height_m * 1000.0 / f64::from(n) <= room_height
        })
        .unwrap_or(10_000)
}

/// Scales in steps of about a quarter, for a drawing that is reduced to its side anyway and is measured by its bar.
const STEPS: [u32; 22] = [
    1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250,
];

/// The scale that is so many steps smaller; the smallest one where there are not so many.
#[must_use]
pub fn smaller(scale: u32, steps: u8) -> u32 {
    STEPS
        .into_iter()
        .filter(|&n| n >= scale)
        .nth(usize::from(steps))
        .unwrap_or(scale)
}

/// A view: where the origin of its coordinates stands on paper, and its scale. Coordinates are metres, to the right and
/// upwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct View {
    /// Denominator of the scale.
    pub scale: u32,
    /// The origin on paper.
    pub origin: Point,
}

impl View {
    /// The place on paper.
    #[must_use]
    pub fn at(&self, x_m: f64, y_m: f64) -> Point {
        at(self.origin.x + self.mm(x_m), self.origin.y - self.mm(y_m))
    }

    /// A length on paper.
    #[must_use]
    pub fn mm(&self, length_m: f64) -> f64 {
        length_m * 1000.0 / f64::from(self.scale)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_is_the_largest_recommended_one_that_fits() {
        assert_eq!(fitting(1.2, 2.4, 110.0, 150.0), 20);
        assert_eq!(fitting(0.1, 0.1, 110.0, 110.0), 1);
        assert_eq!(fitting(2.21, 1.0, 110.0, 150.0), 50);
        assert_eq!([0, 1, 4].map(|steps| smaller(10, steps)), [10, 12, 25]);
        assert_eq!(smaller(10_000, 3), 10_000);
    }

    #[test]
    fn a_metre_at_one_to_twenty_is_fifty_millimetres() {
        let view = View {
            scale: 20,
            origin: at(10.0, 100.0),
        };
        assert_eq!(view.at(1.0, 0.5), at(60.0, 75.0));
    }
}
