//! Wider instead of deeper: the block that a shallow pit needs to be as stiff as a metre cube.

use crate::rules::pais_kausel_1988::{Footing, rocking_short_factor, surface_rocking_short};
use crate::stages::ground::soil_table::Group;
use crate::units::{Length, RotationalStiffness, metre, pascal};

/// Common practice: a metre deep and a metre square.
pub const CUSTOMARY_DEPTH_M: f64 = 1.0;
/// Halvings of the interval in which the side is sought.
const STEPS: usize = 50;

/// Rocking stiffness of a square block in ground of unit modulus.
fn rocking(side_m: f64, depth_m: f64) -> RotationalStiffness {
    let half = metre::new(0.5 * side_m);
    let footing = Footing {
        shear_modulus: pascal::new(1.0),
        poisson_ratio: 0.3,
        half_length: half,
        half_width: half,
        depth: metre::new(depth_m),
    };
    surface_rocking_short(&footing) * rocking_short_factor(&footing)
}

/// Side of a square block at a depth that is as stiff in rocking as a metre cube in the same ground; none where a metre
/// can be dug, and none in rock, where any block is stiff enough.
///
/// # Source
/// Derived from the rocking stiffness of Pais and Kausel by bisection.
///
/// # Valid for
/// Depths above nought; the side lies between one and two metres.
pub fn as_stiff_side(group: Group, depth: Length) -> Option<Length> {
    let depth = metre::get(depth);
    if depth >= CUSTOMARY_DEPTH_M || group == Group::Rock {
        return None;
    }
    let wanted = rocking(1.0, CUSTOMARY_DEPTH_M);
    let (mut low, mut high) = (1.0, 2.5);
    for _ in 0..STEPS {
        let side = 0.5 * (low + high);
        if rocking(side, depth) < wanted {
            low = side;
        } else {
            high = side;
        }
    }
    Some(metre::new(high))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_as_deep_is_half_as_wide_again() {
        let side = metre::get(as_stiff_side(Group::Clay, metre::new(0.5)).unwrap());
        assert!((rocking(side, 0.5) / rocking(1.0, 1.0)).value - 1.0 < 1e-9);
        assert!((side - 1.53).abs() < 0.01, "{side}");
        assert!(as_stiff_side(Group::Clay, metre::new(1.0)).is_none());
    }
}
