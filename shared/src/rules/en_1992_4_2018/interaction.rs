//! Tension and shear together.

use super::clause;
use crate::source::{Source, Standing};

/// Interaction of tension and shear.
pub const INTERACTION: Source = clause("Table 7.3", Standing::SecondHand);

/// Steel: β_N² + β_V² ≤ 1; the value is the left side.
///
/// # Source
/// EN 1992-4:2018, Table 7.3, line 1.
pub fn steel_ratio(tension_ratio: f64, shear_ratio: f64) -> f64 {
    tension_ratio.powi(2) + shear_ratio.powi(2)
}

/// Concrete: β_N^1.5 + β_V^1.5 ≤ 1, or β_N + β_V ≤ 1.2; the value is the better of the two as a share of its limit.
///
/// # Source
/// EN 1992-4:2018, Table 7.3, line 2.
pub fn concrete_ratio(tension_ratio: f64, shear_ratio: f64) -> f64 {
    let (n, v) = (tension_ratio.max(0.0), shear_ratio.max(0.0));
    // Neither form may hide a single ratio above one.
    (n.powf(1.5) + v.powf(1.5)).min((n + v) / 1.2).max(n).max(v)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_better_of_two_forms_counts_and_none_hides_an_excess() {
        assert!((concrete_ratio(0.6, 0.6) - 0.929_516).abs() < 1e-5);
        assert!((concrete_ratio(1.1, 0.0) - 1.1).abs() < 1e-12);
        assert!((steel_ratio(0.6, 0.8) - 1.0).abs() < 1e-12);
    }
}
