//! Deformed bars grouted into holes drilled in rock.
//!
//! # Source
//! Bond of grout to rock: Post-Tensioning Institute and FHWA's tables, from memory, low ends, divided by three; no design
//! guideline for such anchors exists, and joints and weathering rule. Steel and bond of the bar: EN 1992-1-1. Shear: the dowel of
//! fib Model Code 2010, from memory.

use std::f64::consts::PI;

use crate::site_plan::site::RockKind;
use crate::source::Source;
use crate::units::{Area, Force, Length, Pressure, megapascal};

/// Bond of grout to rock.
pub const BOND_SOURCE: Source = Source::from_memory(
    "PTI DC35.1",
    "2014",
    "typical ultimate bond of grout to rock, low ends",
);
/// Shear of a dowel.
pub const SHEAR_SOURCE: Source = Source::from_memory("fib Model Code", "2010", "dowel action");
/// Ultimate bond is divided by this.
pub const BOND_FACTOR: f64 = 3.0;
/// A dowel's tension counts when a pull test held so many times as much.
pub const PROOF_RATIO: f64 = 1.25;
/// Partial factors of reinforcement and of a dowel's shear.
const STEEL_FACTOR: f64 = 1.15;
const SHEAR_FACTOR: f64 = 1.5;

/// Ultimate bond of grout to a kind of rock; where none is named, the least of all.
pub fn ultimate_bond(kind: Option<RockKind>) -> Pressure {
    megapascal::new(match kind {
        Some(RockKind::Granite) => 1.7,
        Some(RockKind::Dolomite) => 1.4,
        Some(RockKind::SoftLimestone) => 1.0,
        Some(RockKind::Slate | RockKind::Sandstone) => 0.8,
        Some(RockKind::WeatheredSandstone) => 0.7,
        Some(RockKind::SoftShale | RockKind::Chalk) | None => 0.2,
    })
}

/// A bar's section.
pub fn section(diameter: Length) -> Area {
    diameter * diameter * (PI / 4.0)
}

/// Design tension of the bar itself, `A_s f_yk/1.15`.
pub fn steel_tension(diameter: Length, yield_strength: Pressure) -> Force {
    section(diameter) * yield_strength / STEEL_FACTOR
}

/// Design bond over a cylinder: of bar to grout with `f_bd`, of grout to rock with a third of the ultimate bond.
pub fn bond(diameter: Length, length: Length, design_bond: Pressure) -> Force {
    diameter * length * PI * design_bond
}

/// Design shear, `min(1.6 A_s √(f_cc f_y); A_s f_y/√3)/1.5`.
pub fn shear(diameter: Length, concrete: Pressure, yield_strength: Pressure) -> Force {
    let mean = megapascal::get(concrete) * megapascal::get(yield_strength);
    let crushing = section(diameter) * megapascal::new(1.6 * mean.max(0.0).sqrt());
    let steel = section(diameter) * yield_strength / 3.0_f64.sqrt();
    crushing.min(steel) / SHEAR_FACTOR
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton, millimetre};

    // Computed apart: bar of 16 mm in a hole of 25 mm, 400 mm long, f_yk 500, f_bd 2.7, concrete 25 MPa.
    #[test]
    fn a_bar_of_sixteen_as_computed_apart() {
        let (bar, hole, length) = (
            millimetre::new(16.0),
            millimetre::new(25.0),
            millimetre::new(400.0),
        );
        let near = |force: Force, expected: f64| {
            let found = kilonewton::get(force);
            assert!((found - expected).abs() < 0.06, "{found} {expected}");
        };
        near(steel_tension(bar, megapascal::new(500.0)), 87.4);
        near(bond(bar, length, megapascal::new(2.7)), 54.3);
        for (kind, expected) in [
            (None, 2.1),
            (Some(RockKind::Sandstone), 8.4),
            (Some(RockKind::Granite), 17.8),
        ] {
            near(
                bond(hole, length, ultimate_bond(kind) / BOND_FACTOR),
                expected,
            );
        }
        near(
            shear(bar, megapascal::new(25.0), megapascal::new(500.0)),
            24.0,
        );
    }
}
