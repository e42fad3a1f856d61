//! From a latitude on the ellipsoid to the sphere in which the model is written.
//! World Magnetic Model 2025, equations 7 and 8.

/// Larger half-axis of the WGS 84 ellipsoid, m.
const SEMI_MAJOR_M: f64 = 6_378_137.0;
/// Flattening of the WGS 84 ellipsoid.
const FLATTENING: f64 = 1.0 / 298.257_223_563;
/// The model's radius of the Earth, m.
const MODEL_RADIUS_M: f64 = 6_371_200.0;

/// A place as seen from the Earth's centre.
pub struct Geocentric {
    /// Latitude there, radians.
    pub latitude_rad: f64,
    /// The model's radius over the distance from the centre.
    pub reach_ratio: f64,
}

impl Geocentric {
    /// The place of a latitude and a height above the ellipsoid.
    ///
    /// # Source
    /// World Magnetic Model 2025, equations 7 and 8.
    pub fn of(latitude_deg: f64, height_m: f64) -> Self {
        let (sin, cos) = latitude_deg.to_radians().sin_cos();
        let eccentricity_squared = FLATTENING * (2.0 - FLATTENING);
        let curvature = SEMI_MAJOR_M / (1.0 - eccentricity_squared * sin * sin).sqrt();
        let from_axis = (curvature + height_m) * cos;
        let above_equator = (curvature * (1.0 - eccentricity_squared) + height_m) * sin;
        Self {
            latitude_rad: above_equator.atan2(from_axis),
            reach_ratio: MODEL_RADIUS_M / from_axis.hypot(above_equator),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_reports_worked_example_comes_out() {
        // Report, table 3b: 80° S, 100 km up.
        let place = Geocentric::of(-80.0, 100_000.0);
        assert!((place.latitude_rad + 1.395_128_958_9).abs() < 5e-11);
        assert!((MODEL_RADIUS_M / place.reach_ratio - 6_457_402.348_447_37).abs() < 1e-6);
    }
}
