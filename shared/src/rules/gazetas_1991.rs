//! Gazetas 1991: static stiffness of a rigid rectangular footing in a trench, its sides partly in contact.
//!
//! Read as transcribed in NIST GCR 12-917-21, Tables 2-2a and 2-3a, after Journal of Geotechnical Engineering 117(9), 1363.
//! Half-sides `L` ≥ `B`, depth of the base `D`, height of the side contact `d_w` up from the base; `x` along the longer
//! side; stiffness about the centre of the base. The factor for rocking about the shorter axis is printed there with
//! `d_w/B`; with `d_w/L`, as FEMA 356 has it, a square footing is the same both ways, so that form stands here.

use crate::source::Source;
use crate::units::{
    Length, LinearStiffness, Pressure, RotationalStiffness, metre, newton_metre_per_radian,
    newton_per_metre, pascal,
};

/// Surface stiffness, trench and side contact.
pub const SOURCE: Source = Source::second_hand(
    "Gazetas",
    "1991",
    "as tabulated in NIST GCR 12-917-21, Tables 2-2a and 2-3a",
);

/// A rectangular footing in a trench.
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
    /// Height of effective contact with the side walls, `d_w`.
    pub contact_height: Length,
}

impl Footing {
    fn g(&self) -> f64 {
        pascal::get(self.shear_modulus)
    }

    fn l(&self) -> f64 {
        metre::get(self.half_length)
    }

    fn b(&self) -> f64 {
        metre::get(self.half_width)
    }

    fn d(&self) -> f64 {
        metre::get(self.depth)
    }

    fn d_w(&self) -> f64 {
        metre::get(self.contact_height)
    }

    fn wall_area(&self) -> f64 {
        4.0 * (self.b() + self.l()) * self.d_w()
    }

    fn wall_depth(&self) -> f64 {
        self.d() - self.d_w() / 2.0
    }
}

/// Vertical stiffness on the surface: `2GL/(1−ν) (0.73 + 1.54 (B/L)^0.75)`.
///
/// # Source
/// Gazetas 1991, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 10, on the surface.
pub fn surface_vertical(footing: &Footing) -> LinearStiffness {
    let chi = footing.b() / footing.l();
    newton_per_metre::new(
        2.0 * footing.g() * footing.l() / (1.0 - footing.poisson_ratio)
            * (0.73 + 1.54 * chi.powf(0.75)),
    )
}

/// Horizontal stiffness along the shorter side on the surface: `2GL/(2−ν) (2 + 2.5 (B/L)^0.85)`.
///
/// # Source
/// Gazetas 1991, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 10, on the surface.
pub fn surface_across(footing: &Footing) -> LinearStiffness {
    let chi = footing.b() / footing.l();
    newton_per_metre::new(
        2.0 * footing.g() * footing.l() / (2.0 - footing.poisson_ratio)
            * (2.0 + 2.5 * chi.powf(0.85)),
    )
}

/// Horizontal stiffness along the longer side on the surface: `K_y − 0.2/(0.75−ν) GL (1 − B/L)`.
///
/// # Source
/// Gazetas 1991, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 10, on the surface.
pub fn surface_along(footing: &Footing) -> LinearStiffness {
    let less = 0.2 / (0.75 - footing.poisson_ratio)
        * footing.g()
        * footing.l()
        * (1.0 - footing.b() / footing.l());
    surface_across(footing) - newton_per_metre::new(less)
}

/// Rocking about the longer axis on the surface: `G/(1−ν) I_x^0.75 (L/B)^0.25 (2.4 + 0.5 B/L)`.
///
/// # Source
/// Gazetas 1991, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 10, on the surface.
pub fn surface_rocking_short(footing: &Footing) -> RotationalStiffness {
    let (l, b) = (footing.l(), footing.b());
    let second_moment = 4.0 * l * b.powi(3) / 3.0;
    let shape = (l / b).powf(0.25) * (2.4 + 0.5 * b / l);
    newton_metre_per_radian::new(
        footing.g() / (1.0 - footing.poisson_ratio) * second_moment.powf(0.75) * shape,
    )
}

/// Rocking about the shorter axis on the surface: `G/(1−ν) I_y^0.75 · 3 (L/B)^0.15`.
///
/// # Source
/// Gazetas 1991, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 10, on the surface.
pub fn surface_rocking_long(footing: &Footing) -> RotationalStiffness {
    let (l, b) = (footing.l(), footing.b());
    let second_moment = 4.0 * b * l.powi(3) / 3.0;
    newton_metre_per_radian::new(
        footing.g() / (1.0 - footing.poisson_ratio)
            * second_moment.powf(0.75)
            * 3.0
            * (l / b).powf(0.15),
    )
}

/// Torsion on the surface: `G J^0.75 [4 + 11 (1 − B/L)^10]`.
///
/// # Source
/// Gazetas 1991, Table 2-2a of NIST GCR 12-917-21.
///
/// # Valid for
/// L/B up to 10, on the surface.
pub fn surface_torsion(footing: &Footing) -> RotationalStiffness {
    let (l, b) = (footing.l(), footing.b());
    let polar = 4.0 * l * b * (l * l + b * b) / 3.0;
    newton_metre_per_radian::new(
        footing.g() * polar.powf(0.75) * (4.0 + 11.0 * (1.0 - b / l).powi(10)),
    )
}

/// Factor of trench and side walls, vertical: `[1 + D/(21B) (1 + 1.3 B/L)] [1 + 0.2 (A_w/4BL)^(2/3)]`.
///
/// # Source
/// Gazetas 1991, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, contact from the base up to `d_w`.
pub fn vertical_factor(footing: &Footing) -> f64 {
    let (l, b) = (footing.l(), footing.b());
    let trench = 1.0 + footing.d() / (21.0 * b) * (1.0 + 1.3 * b / l);
    trench * (1.0 + 0.2 * (footing.wall_area() / (4.0 * b * l)).powf(2.0 / 3.0))
}

/// Factor of trench and side walls, along the shorter side: `[1 + 0.15 √(D/B)] [1 + 0.52 (z_w A_w/(B L²))^0.4]`.
///
/// # Source
/// Gazetas 1991, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, contact from the base up to `d_w`.
pub fn across_factor(footing: &Footing) -> f64 {
    let (l, b) = (footing.l(), footing.b());
    let walls = footing.wall_depth() * footing.wall_area() / (b * l * l);
    (1.0 + 0.15 * (footing.d() / b).sqrt()) * (1.0 + 0.52 * walls.powf(0.4))
}

/// Factor of trench and side walls, along the longer side: `[1 + 0.15 √(D/B)] [1 + 0.52 (z_w A_w/(L B²))^0.4]`.
///
/// # Source
/// Gazetas 1991, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, contact from the base up to `d_w`.
pub fn along_factor(footing: &Footing) -> f64 {
    let (l, b) = (footing.l(), footing.b());
    let walls = footing.wall_depth() * footing.wall_area() / (l * b * b);
    (1.0 + 0.15 * (footing.d() / b).sqrt()) * (1.0 + 0.52 * walls.powf(0.4))
}

/// Factor of side walls, rocking about the longer axis: `1 + 1.26 (d_w/B) [1 + (d_w/B) (d_w/D)^−0.2 √(B/L)]`.
///
/// # Source
/// Gazetas 1991, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, contact from the base up to `d_w`.
pub fn rocking_short_factor(footing: &Footing) -> f64 {
    if footing.d_w() <= 0.0 {
        return 1.0;
    }
    let (w, d) = (footing.d_w() / footing.b(), footing.d_w() / footing.d());
    1.0 + 1.26 * w * (1.0 + w * d.powf(-0.2) * (footing.b() / footing.l()).sqrt())
}

/// Factor of side walls, rocking about the shorter axis: `1 + 0.92 (d_w/L)^0.6 [1.5 + (d_w/L)^1.9 (d_w/D)^−0.6]`.
///
/// # Source
/// Gazetas 1991, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, contact from the base up to `d_w`.
pub fn rocking_long_factor(footing: &Footing) -> f64 {
    if footing.d_w() <= 0.0 {
        return 1.0;
    }
    let (w, d) = (footing.d_w() / footing.l(), footing.d_w() / footing.d());
    1.0 + 0.92 * w.powf(0.6) * (1.5 + w.powf(1.9) * d.powf(-0.6))
}

/// Factor of side walls, torsion: `1 + 1.4 (1 + B/L) (d_w/B)^0.9`.
///
/// # Source
/// Gazetas 1991, Table 2-3a of NIST GCR 12-917-21.
///
/// # Valid for
/// D/B up to 2, contact from the base up to `d_w`.
pub fn torsion_factor(footing: &Footing) -> f64 {
    1.0 + 1.4 * (1.0 + footing.b() / footing.l()) * (footing.d_w() / footing.b()).powf(0.9)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::megapascal;

    // Metre cube, G 30 MPa, ν 0.35: values computed from the printed forms by hand calculator, MN/m and MN m/rad.
    fn cube(contact_m: f64) -> Footing {
        Footing {
            shear_modulus: megapascal::new(30.0),
            poisson_ratio: 0.35,
            half_length: metre::new(0.5),
            half_width: metre::new(0.5),
            depth: metre::new(1.0),
            contact_height: metre::new(contact_m),
        }
    }

    fn near(found: f64, expected: f64) {
        assert!(
            (found / expected - 1.0).abs() < 1e-3,
            "found {found}, expected {expected}"
        );
    }

    #[test]
    fn a_metre_cube_with_full_half_and_no_contact() {
        for (contact, vertical, horizontal, short, long, torsion) in [
            (1.0, 192.1, 255.5, 177.7, 178.2, 194.9),
            (0.5, 168.3, 238.5, 77.0, 81.1, 118.9),
            (0.0, 127.7, 99.2, 20.76, 21.48, 31.3),
        ] {
            let c = cube(contact);
            near(
                newton_per_metre::get(surface_vertical(&c)) / 1e6 * vertical_factor(&c),
                vertical,
            );
            near(
                newton_per_metre::get(surface_across(&c)) / 1e6 * across_factor(&c),
                horizontal,
            );
            near(
                newton_per_metre::get(surface_along(&c)) / 1e6 * along_factor(&c),
                horizontal,
            );
            near(
                newton_metre_per_radian::get(surface_rocking_short(&c)) / 1e6
                    * rocking_short_factor(&c),
                short,
            );
            near(
                newton_metre_per_radian::get(surface_rocking_long(&c)) / 1e6
                    * rocking_long_factor(&c),
                long,
            );
            near(
                newton_metre_per_radian::get(surface_torsion(&c)) / 1e6 * torsion_factor(&c),
                torsion,
            );
        }
    }

    // Footing 3 m by 2 m on the surface, G 30 MPa, ν 0.3: a transcription test of the rocking forms.
    #[test]
    fn a_rectangle_on_the_surface() {
        let footing = Footing {
            poisson_ratio: 0.3,
            half_length: metre::new(1.5),
            half_width: metre::new(1.0),
            depth: metre::new(0.0),
            ..cube(0.0)
        };
        near(
            newton_metre_per_radian::get(surface_rocking_short(&footing)) / 1e6,
            218.0,
        );
        near(
            newton_metre_per_radian::get(surface_rocking_long(&footing)) / 1e6,
            422.2,
        );
    }
}
