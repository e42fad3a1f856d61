//! Depths and distances at an excavation.
//! 29 CFR 1926 Subpart P, 1926.651 and 1926.652.

use crate::source::Source;
use crate::units::customary::FOOT_M;
use crate::units::{Length, metre};

/// Source of the depth from which a pit's sides need protection.
pub const PROTECTION: Source =
    Source::second_hand("29 CFR 1926 Subpart P", "1989", "1926.652(a)(1)");
/// Source of the way out.
pub const WAY_OUT: Source = Source::second_hand(
    "29 CFR 1926 Subpart P",
    "1989",
    "1926.651(c)(2), its number from memory",
);
/// Source of the spoil's distance.
pub const SPOIL: Source = Source::second_hand(
    "29 CFR 1926 Subpart P",
    "1989",
    "1926.651(j)(2), its number from memory",
);

/// Depth from which the sides of a pit that a person enters need a protective system, unless in stable rock: 5 ft.
///
/// # Source
/// 29 CFR 1926.652(a)(1). Below it protection is still needed wherever the ground may cave in.
pub fn protection_from() -> Length {
    metre::new(5.0 * FOOT_M)
}

/// Depth from which a ladder, ramp or stair must be at hand: 4 ft.
///
/// # Source
/// 29 CFR 1926.651(c)(2).
pub fn way_out_from() -> Length {
    metre::new(4.0 * FOOT_M)
}

/// Longest way along the pit to that ladder: 25 ft.
///
/// # Source
/// 29 CFR 1926.651(c)(2).
pub fn farthest_way_out() -> Length {
    metre::new(25.0 * FOOT_M)
}

/// Least distance of spoil, tools and materials from the pit's edge: 2 ft.
///
/// # Source
/// 29 CFR 1926.651(j)(2).
pub fn spoil_from_edge() -> Length {
    metre::new(2.0 * FOOT_M)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_feet_is_610_millimetres() {
        assert!((metre::get(spoil_from_edge()) - 0.6096).abs() < 1e-12);
        assert!((metre::get(protection_from()) - 1.524).abs() < 1e-12);
    }
}
