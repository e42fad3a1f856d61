//! Sight over a wall or a dome's edge: plane geometry.

use crate::source::Source;
use crate::units::{Length, metre};

/// Where it comes from.
pub const SOURCE: Source =
    Source::derived("the lower edge of the telescope's beam clears the wall's edge");

/// Height of the telescope's axes above the floor from which its whole beam clears a wall at an altitude:
/// H = h − d tan a + r/cos a.
///
/// # Source
/// Geometry in the plane.
/// # Valid for
/// Altitudes below the zenith; the tube is taken to lie through the crossing of the axes.
///
/// # Example
/// ```
/// use stillground::{rules::sightline::axis_height, units::metre};
/// let height = axis_height(metre::new(2.0), metre::new(1.5), 45.0, metre::new(0.0));
/// assert!((metre::get(height) - 0.5).abs() < 1e-9);
/// ```
pub fn axis_height(
    wall_height: Length,
    wall_distance: Length,
    altitude_deg: f64,
    beam_radius: Length,
) -> Length {
    let (sin, cos) = altitude_deg.to_radians().sin_cos();
    wall_height - wall_distance * (sin / cos) + beam_radius / cos
}

/// Lowest altitude in degrees at which the whole beam clears the wall, 0 where it clears it at the horizon:
/// a = atan((h − H)/d) + asin(r/√(d² + (h − H)²)).
///
/// # Source
/// Geometry in the plane, the inverse of [`axis_height`].
/// # Valid for
/// A wall farther away than the beam is thick; nearer, the telescope sees nothing below 90°.
pub fn lowest_altitude_deg(
    wall_height: Length,
    wall_distance: Length,
    axis: Length,
    beam_radius: Length,
) -> f64 {
    let (rise, away, radius) = (
        metre::get(wall_height - axis),
        metre::get(wall_distance),
        metre::get(beam_radius),
    );
    let far = rise.hypot(away);
    if radius >= far {
        return 90.0;
    }
    (rise.atan2(away) + (radius / far).asin())
        .to_degrees()
        .max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn height_and_altitude_are_each_other_s_inverse() {
        let (wall, away, radius) = (metre::new(2.1), metre::new(1.8), metre::new(0.15));
        for altitude in [15.0, 30.0, 60.0] {
            let axis = axis_height(wall, away, altitude, radius);
            assert!((lowest_altitude_deg(wall, away, axis, radius) - altitude).abs() < 1e-9);
        }
        assert_eq!(
            lowest_altitude_deg(metre::new(0.5), away, metre::new(1.5), radius),
            0.0
        );
    }
}
