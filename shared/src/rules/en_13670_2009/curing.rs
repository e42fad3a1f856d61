//! How long concrete is kept damp and protected.
//! EN 13670:2009, 8.5 and Annex F, Table F.2 (curing class 3: half of the strength).

use crate::source::Source;
use crate::units::{Time, day};

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory(
    "EN 13670",
    "2009",
    "8.5, Annex F, Table F.2 (curing class 3)",
);

/// How fast a concrete gains strength, by the ratio of its mean strengths at 2 and 28 days.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Development {
    /// Ratio of 0.5 and more.
    Rapid,
    /// 0.3 to 0.5.
    Medium,
    /// 0.15 to 0.3, and what is slower still.
    Slow,
}

/// Class of the strength's development.
///
/// # Source
/// EN 13670:2009, Table F.2.
///
/// # Valid for
/// r = f_cm2 / f_cm28; below 0.15 the standard asks for a project's own rule, and the slowest row is taken here.
pub fn development(two_to_twenty_eight_ratio: f64) -> Development {
    match two_to_twenty_eight_ratio {
        ratio if ratio >= 0.5 => Development::Rapid,
        ratio if ratio >= 0.3 => Development::Medium,
        _ => Development::Slow,
    }
}

/// Least curing time for curing class 3; none below 5 °C, where no time counts as curing.
///
/// # Source
/// EN 13670:2009, Table F.2.
///
/// # Valid for
/// Surface temperatures of 5 °C and more; the table's bands, not interpolated.
///
/// # Example
/// ```
/// use stillground::{rules::en_13670_2009::curing::{Development, least}, units::day};
/// assert_eq!(least(12.0, Development::Medium).map(day::get), Some(7.0));
/// ```
pub fn least(surface_c: f64, development: Development) -> Option<Time> {
    let row = match surface_c {
        t if t >= 25.0 => [1.5, 2.5, 3.5],
        t if t >= 15.0 => [2.0, 4.0, 7.0],
        t if t >= 10.0 => [2.5, 7.0, 12.0],
        t if t >= 5.0 => [3.5, 9.0, 18.0],
        _ => return None,
    };
    Some(day::new(match development {
        Development::Rapid => row[0],
        Development::Medium => row[1],
        Development::Slow => row[2],
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cold_and_slow_concrete_is_cured_longer() {
        assert!(least(4.0, Development::Rapid).is_none());
        for development in [Development::Rapid, Development::Medium, Development::Slow] {
            let days: Vec<_> = [30.0, 20.0, 12.0, 7.0]
                .iter()
                .filter_map(|&t| least(t, development))
                .collect();
            assert!(days.windows(2).all(|pair| pair[0] < pair[1]) && days.len() == 4);
        }
        assert_eq!(development(0.5), Development::Rapid);
    }
}
