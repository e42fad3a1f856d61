//! A number that carries its slope along three directions, so that a stress follows from a displacement's formula
//! without a second formula to get wrong.

use std::ops::{Add, Mul, Neg, Sub};

/// What a kernel's formula needs of its numbers.
pub trait Number:
    Copy
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Mul<f64, Output = Self>
    + Neg<Output = Self>
{
    /// A number that does not change.
    fn constant(value: f64) -> Self;
    /// Square root.
    fn sqrt(self) -> Self;
    /// One over it.
    fn recip(self) -> Self;
}

impl Number for f64 {
    fn constant(value: f64) -> Self {
        value
    }
    fn sqrt(self) -> Self {
        self.sqrt()
    }
    fn recip(self) -> Self {
        1.0 / self
    }
}

/// A value and its slope along x, y and depth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sloped {
    /// The value.
    pub value: f64,
    /// Its partial derivatives.
    pub slope: [f64; 3],
}

impl Sloped {
    /// A coordinate: slope one along its own direction.
    pub fn coordinate(value: f64, axis: usize) -> Self {
        let mut slope = [0.0; 3];
        slope[axis] = 1.0;
        Self { value, slope }
    }

    fn scaled(self, value: f64, by: f64) -> Self {
        let [a, b, c] = self.slope;
        Self {
            value,
            slope: [a * by, b * by, c * by],
        }
    }
}

impl Add for Sloped {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        let ([a, b, c], [d, e, f]) = (self.slope, o.slope);
        Self {
            value: self.value + o.value,
            slope: [a + d, b + e, c + f],
        }
    }
}

impl Sub for Sloped {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        let ([a, b, c], [d, e, f]) = (self.slope, o.slope);
        Self {
            value: self.value - o.value,
            slope: [a - d, b - e, c - f],
        }
    }
}

impl Mul for Sloped {
    type Output = Self;
    fn mul(self, o: Self) -> Self {
        let ([a, b, c], [d, e, f], u, v) = (self.slope, o.slope, self.value, o.value);
        Self {
            value: u * v,
            slope: [a * v + d * u, b * v + e * u, c * v + f * u],
        }
    }
}

impl Mul<f64> for Sloped {
    type Output = Self;
    fn mul(self, o: f64) -> Self {
        self.scaled(self.value * o, o)
    }
}

impl Neg for Sloped {
    type Output = Self;
    fn neg(self) -> Self {
        self.scaled(-self.value, -1.0)
    }
}

impl Number for Sloped {
    fn constant(value: f64) -> Self {
        Self {
            value,
            slope: [0.0; 3],
        }
    }
    fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        self.scaled(root, 0.5 / root)
    }
    fn recip(self) -> Self {
        let one_over = 1.0 / self.value;
        self.scaled(one_over, -one_over * one_over)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slopes_follow_the_rules_of_calculus() {
        let (x, y) = (Sloped::coordinate(3.0, 0), Sloped::coordinate(4.0, 1));
        let r = (x * x + y * y).sqrt();
        assert!(
            (r.value - 5.0).abs() < 1e-15
                && (r.slope[0] - 0.6).abs() < 1e-15
                && (r.slope[1] - 0.8).abs() < 1e-15
        );
        let over = r.recip() * 2.0 - x;
        assert!((over.slope[0] - (-2.0 * 0.6 / 25.0 - 1.0)).abs() < 1e-15);
    }
}
