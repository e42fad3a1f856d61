//! Slope of the ground beside a load that swings, over its slope beside the same load at rest.
//!
//! Lamb 1904: the surface's displacement under a vertical harmonic load as an integral over wave numbers. The values were
//! computed from it apart (`tests/engineering/reference/waves.py`); Poisson's ratio from 0.25 to 0.45 changes them by 3 %.

use crate::source::{Source, Standing};

/// Where it comes from.
pub const SOURCE: Source = Source::new(
    "Lamb, Phil. Trans. R. Soc. A 203",
    "1904",
    "vertical load on a half-space; computed here from the integral",
    Standing::Derived,
);

/// Phase ωr/V_s of the shear wave and the slope's ratio, Poisson's ratio 0.35, damping 2 %.
const TABLE: [[f64; 2]; 9] = [
    [0.0, 1.0],
    [0.25, 1.044],
    [0.5, 1.165],
    [1.0, 1.559],
    [1.5, 2.063],
    [2.0, 2.631],
    [3.0, 3.892],
    [4.0, 5.268],
    [6.0, 8.136],
];

/// Ratio of the slopes at a phase ωr/V_s: straight between the computed values, and on along the last line beyond them.
///
/// # Source
/// Lamb 1904, computed.
/// # Valid for
/// Even ground without a layer; phases to 6, beyond which the line goes on.
pub fn ratio(phase: f64) -> f64 {
    let upper = TABLE
        .iter()
        .position(|row| phase <= row[0])
        .unwrap_or(TABLE.len() - 1)
        .max(1);
    let ([x, y], [u, v]) = (TABLE[upper - 1], TABLE[upper]);
    (y + (phase - x) / (u - x) * (v - y)).max(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of this project's basis, computed there apart: 1.04, 1.17, 1.57, 2.1, 2.7.
    #[test]
    fn a_load_that_swings_tilts_the_ground_farther_than_one_at_rest() {
        for (phase, expected) in [
            (0.25, 1.04),
            (0.5, 1.17),
            (1.0, 1.57),
            (1.5, 2.1),
            (2.0, 2.7),
        ] {
            let found = ratio(phase);
            assert!((found / expected - 1.0).abs() < 0.03, "{phase}: {found}");
        }
        assert_eq!(ratio(0.0), 1.0);
        assert!((ratio(5.0) - 6.702).abs() < 1e-9 && (ratio(7.0) - 9.57).abs() < 1e-9);
    }
}
