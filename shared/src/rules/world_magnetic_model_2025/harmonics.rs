//! Associated Legendre functions in Schmidt's seminormalisation, and their slopes.
//! World Magnetic Model 2025, equation 5; the recurrences are the standard ones, differentiated term by term.

/// Highest degree of the model.
pub const DEGREE: usize = 12;

/// All functions at one latitude.
pub struct Legendre {
    value: [[f64; DEGREE + 1]; DEGREE + 1],
    slope: [[f64; DEGREE + 1]; DEGREE + 1],
}

impl Legendre {
    /// The functions of sin φ at a geocentric latitude φ, and their derivatives in φ.
    ///
    /// # Source
    /// World Magnetic Model 2025, equation 5; recurrences in degree at fixed order.
    ///
    /// # Valid for
    /// Every latitude: no division by the cosine.
    pub fn at(latitude_rad: f64) -> Self {
        let (sin, cos) = latitude_rad.sin_cos();
        let mut value = [[0.0; DEGREE + 1]; DEGREE + 1];
        let mut slope = [[0.0; DEGREE + 1]; DEGREE + 1];
        value[0][0] = 1.0;
        for n in 1..=DEGREE {
            let factor = if n == 1 {
                1.0
            } else {
                (1.0 - 0.5 / n as f64).sqrt()
            };
            value[n][n] = factor * cos * value[n - 1][n - 1];
            slope[n][n] = factor * (cos * slope[n - 1][n - 1] - sin * value[n - 1][n - 1]);
            for m in 0..n {
                let (degree, order) = (n as f64, m as f64);
                let over = (degree * degree - order * order).sqrt();
                let step = (2.0 * degree - 1.0) / over;
                let back = ((degree - 1.0).powi(2) - order * order).max(0.0).sqrt() / over;
                let (two_below, its_slope) = if n >= 2 {
                    (value[n - 2][m], slope[n - 2][m])
                } else {
                    (0.0, 0.0)
                };
                value[n][m] = step * sin * value[n - 1][m] - back * two_below;
                slope[n][m] =
                    step * (cos * value[n - 1][m] + sin * slope[n - 1][m]) - back * its_slope;
            }
        }
        Self { value, slope }
    }

    /// Value and slope of a degree and order, both at most [`DEGREE`].
    ///
    /// # Source
    /// World Magnetic Model 2025, equation 5; the table that was made for the place.
    pub fn of(&self, n: usize, m: usize) -> (f64, f64) {
        (self.value[n][m], self.slope[n][m])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_few_are_the_textbooks() {
        let latitude = 0.7_f64;
        let (sin, cos) = latitude.sin_cos();
        let found = Legendre::at(latitude);
        for (n, m, value, slope) in [
            (1, 0, sin, cos),
            (1, 1, cos, -sin),
            (2, 0, 1.5 * sin * sin - 0.5, 3.0 * sin * cos),
            (
                2,
                1,
                3f64.sqrt() * sin * cos,
                3f64.sqrt() * (cos * cos - sin * sin),
            ),
            (
                2,
                2,
                3f64.sqrt() / 2.0 * cos * cos,
                -3f64.sqrt() * cos * sin,
            ),
        ] {
            assert!(
                (found.of(n, m).0 - value).abs() < 1e-15
                    && (found.of(n, m).1 - slope).abs() < 1e-14,
                "{n} {m}"
            );
        }
    }
}
