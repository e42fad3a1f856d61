//! How far preload strays from what the torque was meant to give.

use crate::site_plan::anchors::{Coating, Lubrication, Tool};
use crate::source::Source;
use crate::units::Spread;

/// Nut factors by the state of the thread.
pub const NUT_FACTOR: Source = Source::second_hand(
    "Published tables of nut factors",
    "",
    "by state of the thread",
);

/// Nut factor K by state of thread and coating: low, typical, high.
///
/// # Source
/// Published tables: dry 0.20 to 0.25, zinc with oil 0.18 to 0.22, paste 0.10 to 0.18; stainless without paste galls,
/// 0.12 to 0.30.
pub fn nut_factor(lubrication: Lubrication, coating: Coating, stainless: bool) -> Spread<f64> {
    let (low, typical, high) = match (lubrication, stainless, coating) {
        (Lubrication::Paste, true, _) => (0.14, 0.16, 0.18),
        (Lubrication::Paste, false, Coating::Galvanised) => (0.15, 0.17, 0.20),
        (Lubrication::Paste, false, _) => (0.10, 0.13, 0.16),
        (Lubrication::Oiled, true, _) => (0.15, 0.21, 0.28),
        (Lubrication::Oiled, false, Coating::Galvanised) => (0.15, 0.20, 0.25),
        (Lubrication::Oiled, false, _) => (0.16, 0.20, 0.24),
        (Lubrication::Dry, true, _) => (0.20, 0.30, 0.40),
        (Lubrication::Dry, false, Coating::Galvanised) => (0.20, 0.27, 0.35),
        (Lubrication::Dry, false, _) => (0.18, 0.23, 0.30),
    };
    Spread { low, typical, high }
}

/// Tightening factor α_A = F_max/F_min by tool: 1.6 with a torque wrench and estimated friction, 4 by feel; where both
/// frictions were measured, 1.4.
///
/// # Source
/// VDI 2230-1:2015, Table A8: 1.4 to 1.6 (friction known), 1.6 to 2.5 (estimated), 2.5 to 4 (impact or feel).
pub fn tightening_factor(tool: Tool, friction_measured: bool) -> f64 {
    match (tool, friction_measured) {
        (Tool::Feel, _) => 4.0,
        (Tool::TorqueWrench, true) => 1.4,
        (Tool::TorqueWrench, false) => 1.6,
    }
}

/// Low, typical and high share of the typical preload for a tightening factor: the ends are √α_A apart on either side.
///
/// # Source
/// VDI 2230-1:2015, 5.4.3: F_max = α_A F_min; the typical value is their geometric mean.
pub fn preload_share(tightening_factor: f64) -> Spread<f64> {
    let root = tightening_factor.max(1.0).sqrt();
    Spread {
        low: 1.0 / root,
        typical: 1.0,
        high: root,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_are_the_tightening_factor_apart() {
        let share = preload_share(tightening_factor(Tool::TorqueWrench, false));
        assert!((share.high / share.low - 1.6).abs() < 1e-12);
        let dry = nut_factor(Lubrication::Dry, Coating::Plain, false);
        let paste = nut_factor(Lubrication::Paste, Coating::Plain, false);
        assert!(paste.high < dry.low);
    }
}
