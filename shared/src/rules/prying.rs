//! Prying: how much more a stud is pulled when the plate's edge levers on the grout.

use crate::source::Source;
use crate::units::{Force, Length, Pressure, megapascal, millimetre, newton};

/// The prying model.
pub const PRYING: Source = Source::from_memory("AISC Manual", "15th", "Part 9, prying action");

/// A plate's strip at one stud.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// From the weld to the near side of the stud, b' = b − d/2.
    pub inner: Length,
    /// From the near side of the stud to the plate's edge, a' = a + d/2, at most 1.25 b + d/2.
    pub outer: Length,
    /// Width of the strip.
    pub width: Length,
    /// Hole in the plate.
    pub hole: Length,
    /// Thickness.
    pub thickness: Length,
    /// Ultimate strength of the plate.
    pub ultimate: Pressure,
}

/// Thickness at which the plate needs no prying to carry the stud's strength, t_c = √(4 B b'/(p F_u)).
///
/// # Source
/// AISC Manual, 15th edition, Part 9, without the reduction factor.
pub fn needed_thickness(strip: &Strip, stud: Force) -> Length {
    let area = millimetre::get(strip.width) * megapascal::get(strip.ultimate);
    millimetre::new((4.0 * newton::get(stud) * millimetre::get(strip.inner) / area).sqrt())
}

/// Pull of the stud over the pull without prying: 1 + Q/T with Q = B δ α ρ (t/t_c)², α = [(T/B)(t_c/t)² − 1]/δ from 0 to 1.
///
/// # Source
/// AISC Manual, 15th edition, Part 9.
///
/// # Valid for
/// A plate whose edge can press on grout or concrete; over an open gap nothing pries.
pub fn factor(strip: &Strip, pull: Force, stud: Force) -> f64 {
    let (pull, strength) = (newton::get(pull), newton::get(stud));
    if pull <= 0.0 || strength <= 0.0 {
        return 1.0;
    }
    let thin = (needed_thickness(strip, stud) / strip.thickness)
        .value
        .powi(2);
    let rho = (strip.inner / strip.outer).value;
    let delta = 1.0 - (strip.hole / strip.width).value;
    let alpha = ((pull / strength * thin - 1.0) / delta).clamp(0.0, 1.0);
    1.0 + strength * delta * alpha * rho / thin / pull
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    #[test]
    fn a_thin_plate_pries_and_a_thick_one_does_not() {
        let mm = millimetre::new;
        let strip = |thickness| Strip {
            inner: mm(40.0),
            outer: mm(48.0),
            width: mm(90.0),
            hole: mm(18.0),
            thickness: mm(thickness),
            ultimate: megapascal::new(360.0),
        };
        let pull = kilonewton::new(20.0);
        assert!((factor(&strip(20.0), pull, kilonewton::new(80.0)) - 1.0).abs() < 1e-12);
        assert!(factor(&strip(6.0), pull, kilonewton::new(80.0)) > 1.1);
    }
}
