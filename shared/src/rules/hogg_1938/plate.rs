//! How a slab spreads a load over the ground.
//! Hogg, Philosophical Magazine 25, 1938: plate of bending stiffness D on a smooth elastic half-space.
//!
//! The pressure at distance r is p = P/(2π l²) ∫ t J₀(t r/l)/(1 + t³) dt with l³ = 2 D (1 − ν²)/E = D (1 − ν)/G, so that
//! the load inside a radius r is a share C(r/l) = (r/l) ∫ J₁(t r/l)/(1 + t³) dt of the whole.

use crate::source::Source;
use crate::units::{BendingStiffness, Length, Pressure, metre, newton_square_metre, pascal};

/// Source of the form.
pub const SOURCE: Source = Source::from_memory(
    "Hogg, Philosophical Magazine 25",
    "1938",
    "plate on an elastic half-space",
);

/// Radii, in characteristic lengths, inside which a quarter and three quarters of the load lie: C = 0.25 and 0.75.
///
/// # Source
/// Computed from the module's C(r/l) by quadrature between the zeros of J₁.
pub const QUARTILE_RADII: [f64; 2] = [0.808_76, 1.949_21];

/// Bending stiffness of a metre's width of slab, D = E h³/(12 (1 − ν²)), N m, typed per metre of width.
///
/// # Source
/// Plate theory; ν of concrete 0.2.
///
/// # Valid for
/// Slabs without a crack through them.
pub fn slab_stiffness_n_m(modulus: Pressure, thickness: Length) -> f64 {
    let beam: BendingStiffness =
        newton_square_metre::new(pascal::get(modulus) * metre::get(thickness).powi(3) / 12.0);
    newton_square_metre::get(beam) / (1.0 - 0.2 * 0.2)
}

/// Characteristic length, l = (D (1 − ν)/G)^(1/3).
///
/// # Source
/// Hogg 1938 with E = 2 G (1 + ν).
///
/// # Valid for
/// A slab that lies on the ground all over and ends two characteristic lengths or more from the load.
pub fn characteristic_length(
    slab_stiffness_n_m: f64,
    shear_modulus: Pressure,
    poisson_ratio: f64,
) -> Length {
    metre::new((slab_stiffness_n_m * (1.0 - poisson_ratio) / pascal::get(shear_modulus)).cbrt())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{megapascal, millimetre};

    #[test]
    fn a_garden_slab_spreads_over_a_third_of_a_metre() {
        let stiffness = slab_stiffness_n_m(megapascal::new(30_000.0), millimetre::new(100.0));
        assert!((stiffness - 2.604e6).abs() < 1e3);
        let length = characteristic_length(stiffness, megapascal::new(40.0), 0.45);
        assert!((metre::get(length) - (2.604_17e6_f64 * 0.55 / 40e6).cbrt()).abs() < 1e-6);
    }
}
