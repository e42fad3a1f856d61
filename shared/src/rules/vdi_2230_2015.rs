//! VDI 2230-1:2015 and ISO 16047:2005: torque, preload, scatter, and what a stud keeps of it.

pub mod loss;
pub mod scatter;

use crate::rules::threads::{Thread, pitch_diameter};
use crate::source::Source;
use crate::units::{Force, Length, Moment, millimetre, newton, newton_metre};

/// Torque by thread and under-head friction.
pub const LONG_FORM: Source = Source::from_memory(
    "ISO 16047",
    "2005",
    "relation of torque and friction; VDI 2230-1, eq. (R13/1)",
);
/// Torque by a nut factor.
pub const SHORT_FORM: Source = Source::common_practice("T = K F d");
/// Where seven tenths come from. VDI 2230-1 itself goes to nine tenths of the yield strength (a table of torques that names its
/// 2003 edition was read), which leaves less room for friction that nobody measured.
pub const PROOF_SHARE: Source =
    Source::common_practice("seven tenths of the proof load, room for the scatter of friction");
/// Share of the proof load that tightening may use.
pub const PROOF_SHARE_RATIO: f64 = 0.7;

/// Mean diameter of friction under the nut, D_b = (d_w + d_h)/2, with the nut's face d_w = 0.95 s.
///
/// # Source
/// VDI 2230-1:2015, 5.4.3; ISO 4032 for the face.
pub fn bearing_diameter(thread: &Thread) -> Length {
    (thread.across_flats * 0.95 + thread.bolt_hole) / 2.0
}

/// Nut factor of the long form, K = [P/(2π) + μ_t d₂/(2 cos 30°) + μ_b D_b/2]/d.
///
/// # Source
/// ISO 16047:2005 and VDI 2230-1:2015, R13.
pub fn nut_factor(
    thread: &Thread,
    thread_friction_factor: f64,
    bearing_friction_factor: f64,
) -> f64 {
    let [pitch, flank, face] = shares(thread, thread_friction_factor, bearing_friction_factor);
    pitch + flank + face
}

/// The three parts of the nut factor: what stretches the stud, friction in the thread, friction under the nut.
///
/// # Source
/// ISO 16047:2005 and VDI 2230-1:2015, R13.
pub fn shares(
    thread: &Thread,
    thread_friction_factor: f64,
    bearing_friction_factor: f64,
) -> [f64; 3] {
    let of_diameter = |length: Length| (length / thread.diameter).value;
    [
        of_diameter(thread.pitch) / std::f64::consts::TAU,
        thread_friction_factor * of_diameter(pitch_diameter(thread)) / 3f64.sqrt(),
        bearing_friction_factor * of_diameter(bearing_diameter(thread)) / 2.0,
    ]
}

/// Torque by the short form T = K F d.
///
/// # Source
/// Common practice.
pub fn torque_by_nut_factor(preload: Force, nut_factor: f64, diameter: Length) -> Moment {
    preload * diameter * nut_factor
}

/// Preload by the short form F = T/(K d).
///
/// # Source
/// Common practice.
pub fn preload(torque: Moment, nut_factor: f64, diameter: Length) -> Force {
    newton::new(newton_metre::get(torque) * 1000.0 / (nut_factor * millimetre::get(diameter)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::threads;
    use crate::site_plan::anchors::Size;
    use crate::units::kilonewton;

    /// Computed for M16: .113, .136, .159, .182, .252 and .368.
    #[test]
    fn nut_factors_of_m16() {
        let thread = threads::thread(Size::M16);
        for (friction, expected) in [
            (0.08, 0.113),
            (0.10, 0.136),
            (0.12, 0.1591),
            (0.14, 0.182),
            (0.20, 0.252),
            (0.30, 0.368),
        ] {
            let found = nut_factor(&thread, friction, friction);
            assert!((found - expected).abs() < 0.0006, "{friction}: {found}");
        }
    }

    /// Computed: 80 N m at K 0.2 stretch an M16 by 25 kN.
    #[test]
    fn eighty_newton_metres_on_m16() {
        let thread = threads::thread(Size::M16);
        let force = preload(newton_metre::new(80.0), 0.2, thread.diameter);
        assert!((kilonewton::get(force) - 25.0).abs() < 1e-9);
    }
}
