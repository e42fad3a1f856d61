//! Speed of shear waves by blow count and stress: the form that several regressions share, `ln Vs = c0 + c1 ln N60 + c2 ln σ'v`.
//!
//! Each paper's module has its own coefficients and its own source; only the form stands here.

use crate::units::{Pressure, Velocity, kilopascal, metre_per_second};

/// A row of coefficients, for m/s and kPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// c0.
    pub constant: f64,
    /// c1, on the logarithm of the blow count.
    pub on_blows: f64,
    /// c2, on the logarithm of the effective stress.
    pub on_stress: f64,
}

impl Row {
    /// A row as its paper prints it: c0, c1, c2.
    ///
    /// # Source
    /// The paper whose [`Row`] it is.
    pub const fn new(constant: f64, on_blows: f64, on_stress: f64) -> Self {
        Self {
            constant,
            on_blows,
            on_stress,
        }
    }

    /// Median speed of shear waves.
    ///
    /// # Source
    /// The paper whose [`Row`] it is.
    ///
    /// # Valid for
    /// The stresses of its boreholes, few of them below 20 kPa: at a metre's depth it is stretched.
    pub fn median(&self, n60_ratio: f64, effective_stress: Pressure) -> Velocity {
        let stress = kilopascal::get(effective_stress);
        let logarithm =
            self.constant + self.on_blows * n60_ratio.ln() + self.on_stress * stress.ln();
        metre_per_second::new(logarithm.exp())
    }

    /// How the speed in the same soil changes with its effective stress: `(σ'/σ'₀)^c2`.
    ///
    /// # Source
    /// The paper whose [`Row`] it is, the exponent of the stress.
    ///
    /// # Valid for
    /// Positive stresses.
    pub fn stress_ratio(&self, stress: Pressure, reference: Pressure) -> f64 {
        (stress.value / reference.value).powf(self.on_stress)
    }
}
