//! How far a tree dries clay, by its height and its thirst.
//! A house warranty standard, chapter 4.2.

use crate::site_plan::site::WaterDemand;
use crate::source::Source;

/// Where this comes from.
pub const SOURCE: Source = Source::read(
    "A house warranty standard",
    "",
    "chapter 4.2, zone of influence of trees",
);

/// Reach over the height of the grown tree: 1.25, 0.75 and 0.5 for high, moderate and low water demand.
///
/// # Source
/// A house warranty standard, chapter 4.2.
///
/// # Valid for
/// Clay whose fines have a plasticity index of 10 % or more, from the trunk's middle; root barriers do not replace it, and felled
/// trees count with the height that they had.
pub const fn over_height_ratio(demand: WaterDemand) -> f64 {
    match demand {
        WaterDemand::High => 1.25,
        WaterDemand::Moderate => 0.75,
        WaterDemand::Low => 0.5,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard's zones; a thirsty tree of 20 m reaches 25 m.
    #[test]
    fn a_thirsty_tree_reaches_farther_than_it_is_high() {
        assert!((20.0 * over_height_ratio(WaterDemand::High) - 25.0).abs() < 1e-12);
        assert!(over_height_ratio(WaterDemand::Low) < over_height_ratio(WaterDemand::Moderate));
    }
}
