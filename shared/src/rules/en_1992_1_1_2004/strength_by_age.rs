//! Strength of concrete by its age.
//! EN 1992-1-1:2004, 3.1.2(5) and (6), expressions (3.1) and (3.2).

use crate::source::Source;
use crate::units::{Pressure, Time, day, megapascal};

/// Where these come from.
pub const SOURCE: Source = Source::second_hand(
    "EN 1992-1-1",
    "2004",
    "3.1.2(5)–(6), expressions (3.1), (3.2), as an open library has them",
);

/// Coefficient s of a cement of class R.
pub const RAPID_FACTOR: f64 = 0.20;
/// Coefficient s of a cement of class N.
pub const NORMAL_FACTOR: f64 = 0.25;
/// Coefficient s of a cement of class S.
pub const SLOW_FACTOR: f64 = 0.38;

/// Share of the 28-day mean strength at an age, β_cc = exp{s [1 − √(28 / t)]}.
///
/// # Source
/// EN 1992-1-1:2004, expression (3.2).
///
/// # Valid for
/// Curing at 20 °C by EN 12390; other temperatures through the adjusted age of [`super::maturity`]. At no age there
/// is no strength.
///
/// # Example
/// ```
/// use stillground::{rules::en_1992_1_1_2004::strength_by_age as age, units::day};
/// assert_eq!(age::share_ratio(day::new(28.0), age::NORMAL_FACTOR), 1.0);
/// ```
pub fn share_ratio(age: Time, cement_factor: f64) -> f64 {
    let days = day::get(age);
    if days <= 0.0 {
        0.0
    } else {
        (cement_factor * (1.0 - (28.0 / days).sqrt())).exp()
    }
}

/// Mean cylinder strength at an age, f_cm(t) = β_cc(t) f_cm.
///
/// # Source
/// EN 1992-1-1:2004, expression (3.1).
///
/// # Valid for
/// As [`share_ratio`].
pub fn mean_at(age: Time, mean_28: Pressure, cement_factor: f64) -> Pressure {
    mean_28 * share_ratio(age, cement_factor)
}

/// Characteristic strength at an age, f_ck(t) = f_cm(t) − 8 MPa between 3 and 28 days, f_ck from 28 days on.
///
/// # Source
/// EN 1992-1-1:2004, 3.1.2(5).
///
/// # Valid for
/// From 3 days on; earlier there is none without tests.
pub fn characteristic_at(
    age: Time,
    characteristic_28: Pressure,
    cement_factor: f64,
) -> Option<Pressure> {
    let days = day::get(age);
    if days >= 28.0 {
        return Some(characteristic_28);
    }
    let mean = mean_at(age, super::strength::mean(characteristic_28), cement_factor);
    let found = mean - megapascal::new(8.0);
    (days > 3.0 && found > megapascal::new(0.0)).then_some(found)
}

/// Age at 20 °C at which the characteristic strength reaches a wanted one: the two expressions solved for t.
///
/// # Source
/// EN 1992-1-1:2004, expressions (3.1) and (3.2), solved for t.
///
/// # Valid for
/// A wanted strength up to the class's own, which is reached at 28 days; nothing is promised beyond.
pub fn age_for(wanted: Pressure, characteristic_28: Pressure, cement_factor: f64) -> Option<Time> {
    if wanted > characteristic_28 {
        return None;
    }
    let share_ratio =
        (megapascal::get(wanted) + 8.0) / megapascal::get(super::strength::mean(characteristic_28));
    let root = 1.0 - share_ratio.ln() / cement_factor;
    Some(day::new((28.0 / (root * root)).max(3.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    // Values of the expressions for C25/30, class N: 19.7, 25.7, 29.8, 31.7, 33.0 MPa at 3, 7, 14, 21, 28 days.
    #[test]
    fn mean_strength_grows_as_the_expression_says() {
        for (days, reference) in [
            (3.0, 19.742),
            (7.0, 25.700),
            (14.0, 29.754),
            (21.0, 31.743),
            (28.0, 33.0),
        ] {
            let found = megapascal::get(mean_at(
                day::new(days),
                megapascal::new(33.0),
                NORMAL_FACTOR,
            ));
            assert!((found - reference).abs() < 0.02, "{days}: {found}");
        }
    }

    #[test]
    fn the_age_for_a_strength_gives_that_strength() {
        let class = megapascal::new(25.0);
        let age = age_for(megapascal::new(20.0), class, NORMAL_FACTOR).unwrap();
        assert!((day::get(age) - 10.2).abs() < 0.1, "{}", day::get(age));
        let back = characteristic_at(age, class, NORMAL_FACTOR).unwrap();
        assert!((megapascal::get(back) - 20.0).abs() < 1e-9);
        assert!(age_for(megapascal::new(26.0), class, NORMAL_FACTOR).is_none());
    }

    #[test]
    fn no_strength_is_promised_too_early() {
        assert!(characteristic_at(day::new(3.0), megapascal::new(25.0), NORMAL_FACTOR).is_none());
        assert_eq!(share_ratio(day::new(0.0), SLOW_FACTOR), 0.0);
    }
}
