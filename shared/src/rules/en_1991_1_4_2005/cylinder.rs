//! Force coefficient of a round column across the wind.
//!
//! EN 1991-1-4:2005, 7.9.2 and Figure 7.28.

use crate::source::{Source, Standing};
use crate::units::{Length, Velocity, metre, metre_per_second};

/// Where it comes from.
pub const SOURCE: Source = Source::new(
    "EN 1991-1-4",
    "2005",
    "7.9.2 and Figure 7.28",
    Standing::FromMemory,
);
/// Kinematic viscosity of air, m²/s.
pub const VISCOSITY_M2_S: f64 = 15e-6;
/// Force coefficient of telescope and mount: between a cylinder across the wind and a plate.
pub const TELESCOPE_FORCE_FACTOR: f64 = 1.3;

/// Force coefficient of a round column without end effect: 1.2 below a Reynolds number of 2·10⁵, then the curve of a
/// slightly rough surface, 1.2 + 0.18 lg(10 k/b)/(1 + 0.4 lg(Re/10⁶)), never below 0.4.
///
/// # Source
/// EN 1991-1-4:2005, Figure 7.28, k/b = 10⁻³.
/// # Valid for
/// Painted or galvanised tube.
#[must_use]
pub fn cylinder_factor(speed: Velocity, diameter: Length) -> f64 {
    let reynolds = metre_per_second::get(speed) * metre::get(diameter) / VISCOSITY_M2_S;
    if reynolds < 2e5 {
        return 1.2;
    }
    let rough: f64 = 10.0 * 1e-3;
    (1.2 + 0.18 * rough.log10() / (1.0 + 0.4 * (reynolds / 1e6).log10())).clamp(0.4, 1.2)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_storm_finds_a_column_slimmer_than_a_breeze_does() {
        let d = metre::new(0.2191);
        assert_eq!(cylinder_factor(metre_per_second::new(5.0), d), 1.2);
        let storm = cylinder_factor(metre_per_second::new(40.0), d);
        assert!(storm > 0.6 && storm < 0.9, "{storm}");
    }
}
