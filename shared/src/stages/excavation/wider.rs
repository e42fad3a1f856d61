//! Wider instead of deeper: the block that a shallow pit needs to be as stiff as a metre cube.

use crate::source::{Source, Standing};
use crate::units::{Length, metre};

/// Source of the comparison.
pub const SOURCE: Source = Source::new(
    "Pais and Kausel, Soil Dyn. Earthq. Eng. 7",
    "1988",
    "rocking of an embedded square, compared at equal stiffness",
    Standing::SecondHand,
);

/// Common practice: a metre deep and a metre square.
pub const CUSTOMARY_DEPTH_M: f64 = 1.0;
/// Halvings of the interval in which the side is sought.
const STEPS: usize = 50;

/// Rocking stiffness of a square block over G/(1 − ν), m³: 4 B³ (1 + D/B + 1.6/1.35 (D/B)²), B half its side.
///
/// # Source
/// Pais and Kausel 1988, as tabulated in NIST GCR 12-917-21, Tables 2-2a and 2-3a, with L = B.
///
/// # Valid for
/// Ground hard against all of its sides; D/B to about 2, beyond which it is an extrapolation.
#[must_use]
pub fn rocking_m3(side_m: f64, depth_m: f64) -> f64 {
    let half = 0.5 * side_m;
    4.0 * half * (half * half + half * depth_m + 1.6 / 1.35 * depth_m * depth_m)
}

/// Side of a square block at a depth that is as stiff in rocking as a metre cube in the same ground; none where a metre
/// can be dug.
///
/// # Source
/// Derived from [`rocking_m3`] by bisection.
///
/// # Valid for
/// Depths above nought; the side lies between one and two metres.
#[must_use]
pub fn as_stiff_side(depth: Length) -> Option<Length> {
    let depth = metre::get(depth);
    if depth >= CUSTOMARY_DEPTH_M {
        return None;
    }
    let wanted = rocking_m3(1.0, CUSTOMARY_DEPTH_M);
    let (mut low, mut high) = (1.0, 2.5);
    for _ in 0..STEPS {
        let side = 0.5 * (low + high);
        if rocking_m3(side, depth) < wanted {
            low = side;
        } else {
            high = side;
        }
    }
    Some(metre::new(high))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_as_deep_is_half_as_wide_again() {
        let side = metre::get(as_stiff_side(metre::new(0.5)).unwrap());
        assert!((rocking_m3(side, 0.5) - rocking_m3(1.0, 1.0)).abs() < 1e-9);
        assert!((side - 1.53).abs() < 0.01, "{side}");
        assert!(as_stiff_side(metre::new(1.0)).is_none());
    }
}
