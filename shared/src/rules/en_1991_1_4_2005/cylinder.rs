//! Force coefficient of a round column across the wind.
//!
//! EN 1991-1-4:2005, 7.9.2 and Figure 7.28.

use crate::source::Source;
use crate::units::{Length, Velocity, metre, metre_per_second};

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory("EN 1991-1-4", "2005", "7.9.2 and Figure 7.28");
/// Kinematic viscosity of air, m²/s.
pub const VISCOSITY_M2_S: f64 = 15e-6;
/// Force coefficient of telescope and mount, a short rough body: that of a cylinder across the wind (judgement).
pub const TELESCOPE_FORCE_FACTOR: f64 = 1.2;
/// Reynolds number up to which a cylinder's coefficient is greatest.
const CRITICAL_REYNOLDS: f64 = 2e5;
/// The coefficient up to there.
const GREATEST_FACTOR: f64 = 1.2;

/// Force coefficient of a round column without end effect: 1.2 below a Reynolds number of 2·10⁵, then the curve of a
/// slightly rough surface, 1.2 + 0.18 lg(10 k/b)/(1 + 0.4 lg(Re/10⁶)), never below 0.4.
///
/// # Source
/// EN 1991-1-4:2005, Figure 7.28, k/b = 10⁻³.
/// # Valid for
/// Painted or galvanised tube.
pub fn cylinder_factor(speed: Velocity, diameter: Length) -> f64 {
    let reynolds = metre_per_second::get(speed) * metre::get(diameter) / VISCOSITY_M2_S;
    if reynolds < CRITICAL_REYNOLDS {
        return GREATEST_FACTOR;
    }
    let rough: f64 = 10.0 * 1e-3;
    (1.2 + 0.18 * rough.log10() / (1.0 + 0.4 * (reynolds / 1e6).log10()))
        .clamp(0.4, GREATEST_FACTOR)
}

/// The coefficient with which a storm's force is the greatest that any wind up to its speed makes. Where the air's flow round
/// the column changes, a faster wind pushes less; a storm passes through that speed too.
///
/// # Source
/// Derived from [`cylinder_factor`]: max over v' ≤ v of c(v') v'², over v².
/// # Valid for
/// As [`cylinder_factor`]; never below it.
pub fn enveloped_factor(speed: Velocity, diameter: Length) -> f64 {
    let reynolds = metre_per_second::get(speed) * metre::get(diameter) / VISCOSITY_M2_S;
    let critical = GREATEST_FACTOR * (CRITICAL_REYNOLDS / reynolds).powi(2).min(1.0);
    cylinder_factor(speed, diameter).max(critical)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Judgement: a bigger gust is never kinder, which the bare curve breaks where the flow changes.
    #[test]
    fn a_bigger_gust_never_pushes_less() {
        for diameter in [0.06, 0.1, 0.2191, 0.4] {
            let force = |speed: f64| {
                let (v, d) = (metre_per_second::new(speed), metre::new(diameter));
                enveloped_factor(v, d) * speed * speed
            };
            for step in 20..1000 {
                let speed = f64::from(step) / 10.0;
                assert!(
                    force(speed + 0.1) >= force(speed) * (1.0 - 1e-12),
                    "{diameter} m, {speed} m/s"
                );
            }
        }
    }

    #[test]
    fn a_storm_finds_a_column_slimmer_than_a_breeze_does() {
        let d = metre::new(0.2191);
        assert_eq!(cylinder_factor(metre_per_second::new(5.0), d), 1.2);
        let storm = cylinder_factor(metre_per_second::new(40.0), d);
        assert!(storm > 0.6 && storm < 0.9, "{storm}");
    }
}
