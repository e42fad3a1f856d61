//! Slopes of the sides of an excavation.
//! 29 CFR 1926 Subpart P, Appendix B, Table B-1.

use serde::Serialize;

use crate::source::Source;
use crate::units::customary::FOOT_M;
use crate::units::{Length, metre};

/// Source of the slopes.
pub const SOURCE: Source =
    Source::second_hand("29 CFR 1926 Subpart P", "1989", "Appendix B, Table B-1");

/// Type of soil for the slope of a pit's side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SlopeType {
    /// Natural solid rock that stands vertical while it is open.
    StableRock,
    /// Cohesive soil of at least 144 kPa unconfined strength, neither fissured, vibrated nor disturbed before.
    A,
    /// Cohesive soil of 48 to 144 kPa, angular gravel, silt, dry rock that is not stable.
    B,
    /// Weaker or granular soil, and any soil that is submerged or that water seeps from.
    C,
}

/// Run of the slope for a rise of one: the steepest that is allowed for a pit up to 20 ft deep.
///
/// # Source
/// 29 CFR 1926 Subpart P, Appendix B, Table B-1: vertical, 3/4 : 1, 1 : 1, 1 1/2 : 1.
///
/// # Valid for
/// Pits up to 6.1 m (20 ft); soil without signs of distress and without loads at the edge.
pub const fn run_over_rise_ratio(soil: SlopeType) -> f64 {
    match soil {
        SlopeType::StableRock => 0.0,
        SlopeType::A => 0.75,
        SlopeType::B => 1.0,
        SlopeType::C => 1.5,
    }
}

/// The same slope as an angle from level, degrees.
///
/// # Source
/// 29 CFR 1926 Subpart P, Appendix B, Table B-1, which rounds it to 90°, 53°, 45° and 34°.
///
/// # Valid for
/// As [`run_over_rise_ratio`].
pub fn angle_deg(soil: SlopeType) -> f64 {
    1f64.atan2(run_over_rise_ratio(soil)).to_degrees()
}

/// Deepest pit for which the table holds without an engineer's design, 20 ft.
///
/// # Source
/// 29 CFR 1926 Subpart P, Appendix B, Table B-1, footnote 3.
pub fn deepest() -> Length {
    metre::new(20.0 * FOOT_M)
}

/// Type of a soil when water stands in it or seeps from it: C, unless it is stable rock.
///
/// # Source
/// 29 CFR 1926 Subpart P, Appendix A, (b), type C (iii) and (iv).
pub const fn when_wet(soil: SlopeType) -> SlopeType {
    match soil {
        SlopeType::StableRock => SlopeType::StableRock,
        _ => SlopeType::C,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn angles_round_to_those_printed_in_table_b_1() {
        let rounded = [
            SlopeType::StableRock,
            SlopeType::A,
            SlopeType::B,
            SlopeType::C,
        ]
        .map(|soil| angle_deg(soil).round());
        assert_eq!(rounded, [90.0, 53.0, 45.0, 34.0]);
    }
}
