//! The closed forms of one harmonic of a plate, and what each does at a radius. Lengths in wall radii, D = 1.

use super::POISSON_RATIO;

/// A closed form r^p, or r^p ln r.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shape {
    power: f64,
    log: bool,
    /// Square of the harmonic's number.
    square: f64,
}

/// The four closed forms of a harmonic, the two that stay finite at the middle first.
pub(super) fn shapes(harmonic: usize) -> [Shape; 4] {
    let m = harmonic as f64;
    let shape = |power: f64, log: bool| Shape {
        power,
        log,
        square: m * m,
    };
    match harmonic {
        0 => [
            shape(0.0, false),
            shape(2.0, false),
            shape(0.0, true),
            shape(2.0, true),
        ],
        1 => [
            shape(1.0, false),
            shape(3.0, false),
            shape(-1.0, false),
            shape(1.0, true),
        ],
        _ => [
            shape(m, false),
            shape(m + 2.0, false),
            shape(-m, false),
            shape(2.0 - m, false),
        ],
    }
}

impl Shape {
    /// The form itself.
    pub(super) fn value(&self, r: f64) -> f64 {
        r.powf(self.power) * if self.log { r.ln() } else { 1.0 }
    }

    /// Its slope.
    pub(super) fn slope(&self, r: f64) -> f64 {
        let p = self.power;
        r.powf(p - 1.0) * if self.log { p * r.ln() + 1.0 } else { p }
    }

    fn second(&self, r: f64) -> f64 {
        let p = self.power;
        r.powf(p - 2.0)
            * if self.log {
                p * (p - 1.0) * r.ln() + 2.0 * p - 1.0
            } else {
                p * (p - 1.0)
            }
    }

    /// Slope of ∇²w.
    fn laplacian_slope(&self, r: f64) -> f64 {
        let p = self.power;
        let k = p * p - self.square;
        r.powf(p - 3.0)
            * if self.log {
                (p - 2.0) * (k * r.ln() + 2.0 * p) + k
            } else {
                k * (p - 2.0)
            }
    }
}

/// Radial moment −[w'' + ν(w'/r − m² w/r²)].
pub(super) fn moment(shape: &Shape, r: f64) -> f64 {
    -(shape.second(r)
        + POISSON_RATIO * (shape.slope(r) / r - shape.square * shape.value(r) / (r * r)))
}

/// Kirchhoff's shear −(∇²w)' + (1 − ν) m² (w'/r² − w/r³).
pub(super) fn shear(shape: &Shape, r: f64) -> f64 {
    -shape.laplacian_slope(r)
        + (1.0 - POISSON_RATIO)
            * shape.square
            * (shape.slope(r) / (r * r) - shape.value(r) / r.powi(3))
}
