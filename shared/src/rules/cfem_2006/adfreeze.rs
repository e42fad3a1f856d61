//! Frost that grips the sides of a foundation and lifts it.
//!
//! # Source
//! Canadian Foundation Engineering Manual 4th ed. after Penner 1974 and Penner & Goodrich 1983, second-hand: 65 kPa between
//! fine-grained soil and wood or concrete, 100 kPa on steel, mean over the frozen depth. The low end and what a smooth sleeve
//! passes on are judgement between a maker's field tests of sleeved shafts and the weak classes of other codes.

use crate::source::Source;
use crate::units::{Force, Length, Pressure, Spread, kilopascal, metre};

/// Bond of frozen soil.
pub const SOURCE: Source = Source::second_hand(
    "Canadian Foundation Engineering Manual",
    "2006",
    "adfreeze bond of fine-grained soil, after Penner 1974",
);
/// Part of the weight that counts as holding down, as against uplift by water.
pub const WEIGHT_FACTOR: f64 = 0.9;

/// Bond of frozen fine-grained soil to concrete: low, middle, high.
pub fn bond() -> Spread<Pressure> {
    Spread {
        low: kilopascal::new(40.0),
        typical: kilopascal::new(65.0),
        high: kilopascal::new(100.0),
    }
}

/// The same through a sleeve of two greased layers, or beside drained clean gravel.
pub fn sleeved_bond() -> Spread<Pressure> {
    Spread {
        low: kilopascal::new(15.0),
        typical: kilopascal::new(20.0),
        high: kilopascal::new(25.0),
    }
}

/// Lift of the frozen ground, `T = τ p z_f`.
pub fn lift(bond: Pressure, perimeter: Length, frozen: Length) -> Force {
    bond * (perimeter * frozen)
}

/// What holds the block down: `R = 0.9 W + a p (D − z_f)`.
pub fn resistance(
    weight: Force,
    adhesion: Pressure,
    perimeter: Length,
    below_frost: Length,
) -> Force {
    let below = below_frost.max(metre::new(0.0));
    weight * WEIGHT_FACTOR + adhesion * (perimeter * below)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// T/R of a block with p 4 m, W 26 kN at D 1 m and 24 kN more for each metre, a 12 kPa.
    fn ratio(bond_kpa: f64, depth_m: f64, frozen_m: f64) -> f64 {
        let perimeter = metre::new(4.0);
        let lift = lift(kilopascal::new(bond_kpa), perimeter, metre::new(frozen_m));
        let resistance = resistance(
            kilonewton::new(26.0 + 24.0 * (depth_m - 1.0)),
            kilopascal::new(12.0),
            perimeter,
            metre::new(depth_m - frozen_m),
        );
        kilonewton::get(lift) / kilonewton::get(resistance)
    }

    // Computed apart (the same formula in Python): τ 65 kPa, z_f 0.1, 0.2, 0.3, 0.45, 0.6 m.
    #[test]
    fn lift_over_resistance_as_computed_apart() {
        let frozen = [0.1, 0.2, 0.3, 0.45, 0.6];
        for (depth, expected) in [
            (1.0, [0.39, 0.84, 1.37, 2.35, 3.66]),
            (1.2, [0.32, 0.69, 1.10, 1.84, 2.76]),
            (1.5, [0.26, 0.54, 0.85, 1.38, 2.02]),
        ] {
            for (frozen, expected) in frozen.into_iter().zip(expected) {
                let found = ratio(65.0, depth, frozen);
                assert!(
                    (found - expected).abs() < 0.0055,
                    "{depth} {frozen}: {found} {expected}"
                );
            }
        }
        for (frozen, expected) in frozen.into_iter().zip([0.12, 0.26, 0.42, 0.72, 1.13]) {
            assert!((ratio(20.0, 1.0, frozen) - expected).abs() < 0.0055);
        }
        assert!((ratio(20.0, 1.5, 0.8) - 0.94).abs() < 0.0055);
    }

    // Computed apart: T = R at z_f 0.232 m (65 kPa), 0.159 m (100 kPa), 0.558 m (20 kPa), D 1 m.
    #[test]
    fn where_lift_and_resistance_are_equal() {
        for (bond, frozen) in [(65.0, 0.232), (100.0, 0.159), (20.0, 0.558)] {
            assert!((ratio(bond, 1.0, frozen) - 1.0).abs() < 0.006);
        }
    }
}
