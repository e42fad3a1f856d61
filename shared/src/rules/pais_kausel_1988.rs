//! Pais & Kausel 1988: static stiffness of a rigid rectangular footing, embedded with full contact of its sides.
//!
//! Read as transcribed in NIST GCR 12-917-21, Tables 2-2a and 2-3a. Half-sides `L` ≥ `B`, depth of the base `D`; `x` along
//! the longer side; stiffness about the centre of the base. The paper itself was not read, and its abstract, read
//! second-hand, names no percentage for the fit. The forms stand here as a check on the solver, which is nearer to other solutions
//! than they are (`docs/ground-validation.md`), and as the figure a reader's own handbook gives.

pub mod dynamic;

use crate::source::Source;
use crate::units::{
    Length, LinearStiffness, Pressure, RotationalStiffness, metre, newton_metre_per_radian,
    newton_per_metre, pascal,
};

/// Surface stiffness and the factors for embedment.
pub const SOURCE: Source = Source::second_hand(
    "Pais & Kausel",
    "1988",
    "as tabulated in NIST GCR 12-917-21, Tables 2-2a and 2-3a",
);

/// A rectangular footing: half its longer side, half its shorter side, depth of its base, and the ground round it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Footing {
    /// Shear modulus `G`.
    pub shear_modulus: Pressure,
    /// Poisson's ratio `ν`.
    pub poisson_ratio: f64,
    /// Half the longer side, `L`.
    pub half_length: Length,
    /// Half the shorter side, `B`.
    pub half_width: Length,
    /// Depth of the base, `D`.
    pub depth: Length,
}

impl Footing {
    fn long_ratio(&self) -> f64 {
        metre::get(self.half_length) / metre::get(self.half_width)
    }

    fn depth_ratio(&self) -> f64 {
        metre::get(self.depth) / metre::get(self.half_width)
    }

    fn gb(&self) -> f64 {
        pascal::get(self.shear_modulus) * metre::get(self.half_width)
    }

    fn gb3(&self) -> f64 {
        self.gb() * metre::get(self.half_width).powi(2)
    }
}

/// Vertical stiffness on the surface: `GB/(1−ν) [3.1 (L/B)^0.75 + 1.6]`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 4, on the surface.
pub fn surface_vertical(footing: &Footing) -> LinearStiffness {
    newton_per_metre::new(
        footing.gb() / (1.0 - footing.poisson_ratio)
            * (3.1 * footing.long_ratio().powf(0.75) + 1.6),
    )
}

/// Horizontal stiffness along the longer side on the surface: `GB/(2−ν) [6.8 (L/B)^0.65 + 2.4]`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 4, on the surface.
pub fn surface_along(footing: &Footing) -> LinearStiffness {
    newton_per_metre::new(
        footing.gb() / (2.0 - footing.poisson_ratio)
            * (6.8 * footing.long_ratio().powf(0.65) + 2.4),
    )
}

/// Horizontal stiffness along the shorter side on the surface: `GB/(2−ν) [6.8 (L/B)^0.65 + 0.8 L/B + 1.6]`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 4, on the surface.
pub fn surface_across(footing: &Footing) -> LinearStiffness {
    let l = footing.long_ratio();
    newton_per_metre::new(
        footing.gb() / (2.0 - footing.poisson_ratio) * (6.8 * l.powf(0.65) + 0.8 * l + 1.6),
    )
}

/// Rocking about the longer axis, the softer way, on the surface: `GB³/(1−ν) [3.2 L/B + 0.8]`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 4, on the surface.
pub fn surface_rocking_short(footing: &Footing) -> RotationalStiffness {
    newton_metre_per_radian::new(
        footing.gb3() / (1.0 - footing.poisson_ratio) * (3.2 * footing.long_ratio() + 0.8),
    )
}

/// Rocking about the shorter axis, the stiffer way, on the surface: `GB³/(1−ν) [3.73 (L/B)^2.4 + 0.27]`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 4, on the surface.
pub fn surface_rocking_long(footing: &Footing) -> RotationalStiffness {
    newton_metre_per_radian::new(
        footing.gb3() / (1.0 - footing.poisson_ratio)
            * (3.73 * footing.long_ratio().powf(2.4) + 0.27),
    )
}

/// Torsion on the surface: `GB³ [4.25 (L/B)^2.45 + 4.06]`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 4, on the surface.
pub fn surface_torsion(footing: &Footing) -> RotationalStiffness {
    newton_metre_per_radian::new(footing.gb3() * (4.25 * footing.long_ratio().powf(2.45) + 4.06))
}

/// Factor of embedment, vertical: `1 + [0.25 + 0.25 B/L] (D/B)^0.8`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, L/B up to 4, sides bonded from surface to base.
pub fn vertical_factor(footing: &Footing) -> f64 {
    1.0 + (0.25 + 0.25 / footing.long_ratio()) * footing.depth_ratio().powf(0.8)
}

/// Factor of embedment, horizontal, both ways: `1 + [0.33 + 1.34/(1 + L/B)] (D/B)^0.8`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, L/B up to 4, sides bonded from surface to base.
pub fn horizontal_factor(footing: &Footing) -> f64 {
    1.0 + (0.33 + 1.34 / (1.0 + footing.long_ratio())) * footing.depth_ratio().powf(0.8)
}

/// Factor of embedment, torsion: `1 + [1.3 + 1.32 B/L] (D/B)^0.9`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, L/B up to 4, sides bonded from surface to base.
pub fn torsion_factor(footing: &Footing) -> f64 {
    1.0 + (1.3 + 1.32 / footing.long_ratio()) * footing.depth_ratio().powf(0.9)
}

/// Factor of embedment, rocking about the longer axis: `1 + D/B + [1.6/(0.35 + L/B)] (D/B)²`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, L/B up to 4, sides bonded from surface to base.
pub fn rocking_short_factor(footing: &Footing) -> f64 {
    let d = footing.depth_ratio();
    1.0 + d + 1.6 / (0.35 + footing.long_ratio()) * d * d
}

/// Factor of embedment, rocking about the shorter axis: `1 + D/B + [1.6/(0.35 + (L/B)⁴)] (D/B)²`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, L/B up to 4, sides bonded from surface to base.
pub fn rocking_long_factor(footing: &Footing) -> f64 {
    let d = footing.depth_ratio();
    1.0 + d + 1.6 / (0.35 + footing.long_ratio().powi(4)) * d * d
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::megapascal;

    // Metre cube, G 30 MPa, ν 0.35: values computed from the printed forms by hand calculator, MN/m and MN m/rad.
    const CUBE: fn() -> Footing = || Footing {
        shear_modulus: megapascal::new(30.0),
        poisson_ratio: 0.35,
        half_length: metre::new(0.5),
        half_width: metre::new(0.5),
        depth: metre::new(1.0),
    };

    fn near(found: f64, expected: f64) {
        assert!(
            (found / expected - 1.0).abs() < 5e-4,
            "found {found}, expected {expected}"
        );
    }

    #[test]
    fn a_metre_cube() {
        let cube = CUBE();
        let vertical = newton_per_metre::get(surface_vertical(&cube)) / 1e6;
        let along = newton_per_metre::get(surface_along(&cube)) / 1e6;
        let rocking = newton_metre_per_radian::get(surface_rocking_short(&cube)) / 1e6;
        near(vertical, 108.5);
        near(vertical * vertical_factor(&cube), 202.9);
        near(along, 83.64);
        near(along * horizontal_factor(&cube), 229.3);
        near(rocking, 23.08);
        near(rocking * rocking_short_factor(&cube), 178.6);
        near(
            newton_metre_per_radian::get(surface_torsion(&cube)) / 1e6 * torsion_factor(&cube),
            183.5,
        );
    }

    #[test]
    fn a_rectangle() {
        let footing = Footing {
            half_length: metre::new(0.75),
            depth: metre::new(0.9),
            ..CUBE()
        };
        near(
            newton_per_metre::get(surface_across(&footing)) / 1e6 * horizontal_factor(&footing),
            252.7,
        );
        near(
            newton_per_metre::get(surface_along(&footing)) / 1e6 * horizontal_factor(&footing),
            244.0,
        );
        near(
            newton_metre_per_radian::get(surface_rocking_long(&footing)) / 1e6
                * rocking_long_factor(&footing),
            219.8,
        );
        near(
            newton_metre_per_radian::get(surface_rocking_short(&footing)) / 1e6
                * rocking_short_factor(&footing),
            181.0,
        );
    }
}
