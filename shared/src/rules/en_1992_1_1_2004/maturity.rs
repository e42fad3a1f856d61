//! Age of concrete adjusted for its temperature.
//! EN 1992-1-1:2004, Annex B, expression (B.10).

use crate::source::Source;
use crate::units::{Time, day};

/// Where this comes from.
pub const SOURCE: Source = Source::second_hand("EN 1992-1-1", "2004", "Annex B, expression (B.10)");

/// How much faster than at 20 °C concrete ages at a temperature, exp(13.65 − 4000 / (273 + T)).
///
/// # Source
/// EN 1992-1-1:2004, expression (B.10).
///
/// # Valid for
/// 0 to 80 °C of the concrete itself; the air's mean is taken for it, which is careful, since the concrete warms itself.
///
/// # Example
/// ```
/// let factor = stillground::rules::en_1992_1_1_2004::maturity::pace_factor(10.0);
/// assert!((factor - 0.616).abs() < 0.001);
/// ```
pub fn pace_factor(temperature_c: f64) -> f64 {
    (13.65 - 4000.0 / (273.0 + temperature_c)).exp()
}

/// Adjusted age after a time at a steady temperature.
///
/// # Source
/// EN 1992-1-1:2004, expression (B.10), one interval.
///
/// # Valid for
/// As [`pace_factor`].
pub fn adjusted_age(time: Time, temperature_c: f64) -> Time {
    time * pace_factor(temperature_c)
}

/// Time that a steady temperature takes to reach an adjusted age.
///
/// # Source
/// EN 1992-1-1:2004, expression (B.10), solved for the time.
///
/// # Valid for
/// As [`pace_factor`].
pub fn time_for(adjusted: Time, temperature_c: f64) -> Time {
    day::new(day::get(adjusted) / pace_factor(temperature_c))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cold_concrete_ages_slowly() {
        for (temperature, factor) in [
            (5.0, 0.478),
            (10.0, 0.616),
            (15.0, 0.788),
            (20.0, 0.998),
            (30.0, 1.566),
        ] {
            assert!(
                (pace_factor(temperature) - factor).abs() < 0.002,
                "{temperature}: {}",
                pace_factor(temperature)
            );
        }
        assert!((day::get(time_for(day::new(28.0), 10.0)) - 45.4).abs() < 0.1);
        let there_and_back = adjusted_age(time_for(day::new(28.0), 3.0), 3.0);
        assert!((day::get(there_and_back) - 28.0).abs() < 1e-9);
    }
}
