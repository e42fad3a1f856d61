//! A mount's stiffness from how fast it trembles when it is tapped.
//!
//! Mechanics: a body on a spring that turns it about the pier's top.

use std::f64::consts::PI;

use crate::source::Source;
use crate::units::{
    Frequency, Length, Mass, MomentOfInertia, RotationalStiffness, hertz, kilogram,
    kilogram_square_metre, metre, newton_metre_per_radian,
};

/// Where it comes from.
pub const SOURCE: Source =
    Source::derived("a load that turns about the pier's top on the mount's spring");

/// Inertia of a load about the pier's top, J + m c².
///
/// # Source
/// Parallel axes.
/// # Valid for
/// A rigid load.
pub fn inertia_about_top(own: MomentOfInertia, mass: Mass, centre: Length) -> MomentOfInertia {
    kilogram_square_metre::new(
        kilogram_square_metre::get(own) + kilogram::get(mass) * metre::get(centre).powi(2),
    )
}

/// Stiffness of the mount from the frequency at which the load trembles, K = (2πf)² J.
///
/// # Source
/// Mechanics: one body on one spring.
/// # Valid for
/// A pier much stiffer than the mount; on a softer one the mount is stiffer than this.
pub fn stiffness(frequency: Frequency, inertia: MomentOfInertia) -> RotationalStiffness {
    newton_metre_per_radian::new(
        (2.0 * PI * hertz::get(frequency)).powi(2) * kilogram_square_metre::get(inertia),
    )
}

/// The frequency that goes with a stiffness.
///
/// # Source
/// [`stiffness`], turned round.
/// # Valid for
/// As the stiffness; an inertia above nought.
pub fn frequency(stiffness: RotationalStiffness, inertia: MomentOfInertia) -> Frequency {
    hertz::new(
        (newton_metre_per_radian::get(stiffness) / kilogram_square_metre::get(inertia)).sqrt()
            / (2.0 * PI),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis, computed: 60 kg with 9.2 kg m² about the pier's top and 2·10⁵ N m/rad tremble at 23.5 Hz; 10 Hz is 3.6·10⁴ and
    /// 5 Hz 9·10³ N m/rad.
    #[test]
    fn a_tap_says_how_stiff_a_mount_is() {
        let inertia = kilogram_square_metre::new(9.2);
        let hertz_of = |k| hertz::get(frequency(newton_metre_per_radian::new(k), inertia));
        assert!((hertz_of(2e5) - 23.5).abs() < 0.05);
        for (f, k) in [(10.0, 3.6e4), (5.0, 9.1e3)] {
            let found = newton_metre_per_radian::get(stiffness(hertz::new(f), inertia));
            assert!((found / k - 1.0).abs() < 0.01, "{f}: {found}");
        }
        let about = inertia_about_top(
            kilogram_square_metre::new(3.75),
            kilogram::new(60.0),
            metre::new(0.3),
        );
        assert!((kilogram_square_metre::get(about) - 9.15).abs() < 1e-9);
    }
}
