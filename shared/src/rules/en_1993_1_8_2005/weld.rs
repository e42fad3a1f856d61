//! Fillet weld between column and plate.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{
    Force, Length, LinearStiffness, Moment, Pressure, megapascal, millimetre, newton, newton_metre,
    newton_per_metre,
};

/// Strength of the weld.
pub const STRENGTH: Source = clause("4.5.3.3", Standing::SecondHand);
/// Line force round a tube.
pub const LINE: Source = Source::derived("moment spread round a thin ring");

/// Shear strength of a weld f_vw,d = f_u/(√3 β_w γ_M2), γ_M2 = 1.25.
///
/// # Source
/// EN 1993-1-8:2005, 4.5.3.3 (3).
pub fn strength(ultimate: Pressure, correlation_factor: f64) -> Pressure {
    ultimate / (3f64.sqrt() * correlation_factor * 1.25)
}

/// Resistance of a metre of weld F_w,Rd = f_vw,d a; the throat a is the leg over √2.
///
/// # Source
/// EN 1993-1-8:2005, 4.5.3.3 (2).
pub fn resistance(strength: Pressure, leg: Length) -> LinearStiffness {
    let throat = millimetre::get(leg) / std::f64::consts::SQRT_2;
    newton_per_metre::new(1000.0 * megapascal::get(strength) * throat)
}

/// Largest line force round a tube, √[(M/(πr²) + N/(2πr))² + (V/(πr))²].
///
/// # Source
/// Mechanics: a thin ring under bending, thrust and shear.
pub fn line_force(moment: Moment, axial: Force, shear: Force, radius: Length) -> LinearStiffness {
    let r = millimetre::get(radius);
    let pull = newton_metre::get(moment) * 1000.0 / (std::f64::consts::PI * r * r)
        + newton::get(axial).abs() / (std::f64::consts::TAU * r);
    let across = newton::get(shear) / (std::f64::consts::PI * r);
    newton_per_metre::new(1000.0 * pull.hypot(across))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed: S235 207.8 MPa, a throat of 4 mm 831 N/mm; 6 kN m round 109.55 mm 159 N/mm.
    #[test]
    fn weld_of_the_usual_foot() {
        let strength = strength(megapascal::new(360.0), 0.8);
        assert!((megapascal::get(strength) - 207.8).abs() < 0.1);
        let held = resistance(strength, millimetre::new(4.0 * std::f64::consts::SQRT_2));
        assert!((newton_per_metre::get(held) / 1000.0 - 831.4).abs() < 0.5);
        let nothing = newton::new(0.0);
        let line = line_force(
            newton_metre::new(6000.0),
            nothing,
            nothing,
            millimetre::new(109.55),
        );
        assert!((newton_per_metre::get(line) / 1000.0 - 159.1).abs() < 0.2);
    }
}
