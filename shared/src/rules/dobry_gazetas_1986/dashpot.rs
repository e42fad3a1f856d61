//! Radiation dashpots of an embedded rectangular block.
//!
//! Dobry & Gazetas 1986, J. Geotech. Eng. 112(2); Gazetas 1991, J. Geotech. Eng. 117(9), Tables 1 and 2.

use std::f64::consts::PI;

use crate::source::Source;
use crate::units::{Velocity, metre_per_second};

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory(
    "Gazetas, J. Geotech. Eng. 117(9)",
    "1991",
    "Tables 1 and 2, dashpots",
);

/// Speed of the waves that a pushed face sends out, Lysmer's analog: V_La = 3.4 V_s/[π(1 − ν)].
///
/// # Source
/// Dobry & Gazetas 1986.
/// # Valid for
/// ν up to about 0.45.
pub fn lysmer_speed(shear: Velocity, poisson_ratio: f64) -> Velocity {
    metre_per_second::new(3.4 * metre_per_second::get(shear) / (PI * (1.0 - poisson_ratio)))
}

/// A block and its ground, for motion along `length`; SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// Density of the ground, kg/m³.
    pub density: f64,
    /// Speed of shear waves, m/s.
    pub shear_speed: f64,
    /// Poisson's ratio of the ground.
    pub poisson_ratio: f64,
    /// Side along the motion, m.
    pub length: f64,
    /// Side across it, m.
    pub width: f64,
    /// Height above the base from which the sides touch the ground, m.
    pub contact_from: f64,
    /// Height above the base to which they do, m.
    pub contact_to: f64,
}

/// Dashpots about the base's centre: sway, coupling, rocking; N s/m, N s, N m s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dashpots {
    /// Force for a speed of sway.
    pub sway: f64,
    /// Force for a speed of rocking, and moment for a speed of sway.
    pub coupling: f64,
    /// Moment for a speed of rocking.
    pub rocking: f64,
}

impl Block {
    /// Dashpots at a circular frequency: the base shears, two sides shear and two are pushed; in rocking the base
    /// pushes with a share that vanishes slowly, c̃ = a₀²/(1.8 + a₀²) for a square, and the sides with
    /// c₁ = 0.25 + 0.65 √a₀ (D/B)^(−1/4).
    ///
    /// # Source
    /// Gazetas 1991, Tables 1 and 2; the base's c̃ follows the rocking of a square on the surface in Pais & Kausel 1988.
    /// # Valid for
    /// a₀ = ωB/V_s up to about 1.5; homogeneous ground. Layers below the block radiate less.
    pub fn dashpots(&self, omega: f64) -> Dashpots {
        let rho = self.density;
        let push = rho
            * metre_per_second::get(lysmer_speed(
                metre_per_second::new(self.shear_speed),
                self.poisson_ratio,
            ));
        let slide = rho * self.shear_speed;
        let half = 0.5 * self.length;
        let a0 = omega * 0.5 * self.length.min(self.width) / self.shear_speed;
        let (low, high) = (self.contact_from, self.contact_to.max(self.contact_from));
        // Force for a speed of sway of one metre of side: two pushed and two sheared faces.
        let side = 2.0 * self.width * push + 2.0 * self.length * slide;
        let deep = (high / half).max(1e-6);
        let sides = (0.25 + 0.65 * a0.sqrt() * deep.powf(-0.25)).min(1.0);
        let base_turn = push * self.width * self.length.powi(3) / 12.0 * a0 * a0 / (1.8 + a0 * a0);
        Dashpots {
            sway: slide * self.length * self.width + side * (high - low),
            coupling: side * sides * (high.powi(2) - low.powi(2)) / 2.0,
            rocking: base_turn + side * sides * (high.powi(3) - low.powi(3)) / 3.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis, computed for the metre cube in ground of 129.1 m/s and 1800 kg/m³ at ν = 0.35: V_La 215.0 m/s, sway 232 kN s/m
    /// on the surface and 1471 kN s/m embedded.
    #[test]
    fn the_metre_cube_radiates_as_the_basis_says() {
        let block = Block {
            density: 1800.0,
            shear_speed: 129.1,
            poisson_ratio: 0.35,
            length: 1.0,
            width: 1.0,
            contact_from: 0.0,
            contact_to: 1.0,
        };
        assert!(
            (metre_per_second::get(lysmer_speed(metre_per_second::new(129.1), 0.35)) - 215.0).abs()
                < 0.1
        );
        assert!((block.dashpots(100.0).sway / 1e3 - 1471.0).abs() < 2.0);
        let bare = Block {
            contact_to: 0.0,
            ..block
        };
        assert!((bare.dashpots(100.0).sway / 1e3 - 232.4).abs() < 0.5);
    }
}
