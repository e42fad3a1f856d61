//! A base plate on a round column with a rib on either side of each stud: what gives between stud and wall, one behind the
//! other. The plate bends as a strip from rib to rib, the two ribs with their share of the plate bend and shear as brackets,
//! and the wall yields where the ribs press it.

use crate::rules::annular_plate::{Plate, wall_decay};
use crate::source::Source;
use crate::units::{Length, LinearStiffness, megapascal, millimetre, newton_per_metre};

/// The chain of strip, brackets and wall.
pub const CHAIN: Source = Source::derived(
    "beam from rib to rib, ribs with their plate as T-shaped brackets, ring load on a long cylinder",
);

/// Poisson's ratio of steel.
const POISSON_RATIO: f64 = 0.3;
/// Area of a rectangle that counts in shear.
const SHEAR_RATIO: f64 = 5.0 / 6.0;

/// A pair of ribs at each stud.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ribs {
    /// Thickness of a rib.
    pub thickness: Length,
    /// Height above the plate.
    pub height: Length,
    /// From one rib of a pair to the other, axis to axis.
    pub apart: Length,
}

/// What gives at one stud, N/mm each.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Parts {
    strip: f64,
    brackets: f64,
    wall: f64,
}

/// Stiffness at a stud, 1/(1/k_strip + 1/k_ribs + 1/k_wall).
///
/// # Source
/// Mechanics: a strip of the plate free to turn at both ribs, k = 48 E I/s³ with I = w t³/[12(1 − ν²)] and its shear; two
/// brackets, k = 1/[e³/(3 E I_T) + e/(G A_w)] with I_T of a rib on half the strip's span of plate; the wall under the ribs'
/// couple F e/h as a ring load, w = p β a²/(2 E t).
///
/// # Valid for
/// A rib on either side of each stud, welded to plate and wall over its height; the strip's ends are not held by the ribs, and
/// what the plate carries to the wall by itself is left out, both to the safe side. The wall's ovalling between studs is not
/// in it.
pub fn stiffness_per_stud(plate: &Plate, ribs: &Ribs, count: usize) -> LinearStiffness {
    let Parts {
        strip,
        brackets,
        wall,
    } = parts(plate, ribs, count);
    newton_per_metre::new(1000.0 / (1.0 / strip + 1.0 / brackets + 1.0 / wall))
}

fn parts(plate: &Plate, ribs: &Ribs, count: usize) -> Parts {
    let mm = millimetre::get;
    let modulus = megapascal::get(plate.modulus);
    let shear = modulus / (2.0 * (1.0 + POISSON_RATIO));
    let (thick, wall) = (mm(plate.thickness), mm(plate.wall));
    let outside = mm(plate.wall_radius) + wall / 2.0;
    // From rib to rib: as wide as the plate stands out.
    let (wide, span) = (mm(plate.outer_radius) - outside, mm(ribs.apart));
    let of_strip = wide * thick.powi(3) / (12.0 * (1.0 - POISSON_RATIO * POISSON_RATIO));
    let strip = 1.0
        / (span.powi(3) / (48.0 * modulus * of_strip)
            + span / (4.0 * shear * SHEAR_RATIO * wide * thick));
    // The ribs as brackets from the wall to the stud.
    let (lever, high) = (mm(plate.stud_radius) - outside, mm(ribs.height));
    let web = mm(ribs.thickness) * high;
    let flange = span / 2.0 * thick;
    let apart = (high + thick) / 2.0;
    let of_tee = mm(ribs.thickness) * high.powi(3) / 12.0
        + span / 2.0 * thick.powi(3) / 12.0
        + web * flange / (web + flange) * apart * apart;
    let brackets =
        2.0 / (lever.powi(3) / (3.0 * modulus * of_tee) + lever / (shear * SHEAR_RATIO * web));
    // The couple of the ribs, pushed in at their tops: spread over the stud's share of the wall.
    let radius = mm(plate.wall_radius);
    let decay = wall_decay(plate.wall_radius, plate.wall) / 1000.0;
    let share = std::f64::consts::TAU * radius / count as f64;
    let yields = decay * radius * radius / (2.0 * modulus * wall * share);
    Parts {
        strip,
        brackets,
        wall: (high / lever).powi(2) / yields,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed apart, by hand: tube 219.1 × 6.3, four studs on a circle of 300 mm, a plate 15 mm thick and 350 mm wide; ribs 10 mm
    /// thick and 100 mm high, 64 mm apart. The strip is 65.45 mm wide, I 20,228 mm⁴: 777.8 kN/mm in bending, 4130 in shear, 654.5
    /// together. A tee about its own centroid has 1,914,631 mm⁴; the wall under a ring load yields by p/(8 β³ D), β 0.04965/mm,
    /// spread over 167.1 mm.
    #[test]
    fn a_strip_brackets_and_a_wall_one_behind_the_other() {
        let plate = Plate {
            wall_radius: millimetre::new(106.4),
            wall: millimetre::new(6.3),
            stud_radius: millimetre::new(150.0),
            outer_radius: millimetre::new(175.0),
            thickness: millimetre::new(15.0),
            modulus: megapascal::new(210_000.0),
        };
        let ribs = Ribs {
            thickness: millimetre::new(10.0),
            height: millimetre::new(100.0),
            apart: millimetre::new(64.0),
        };
        let found = parts(&plate, &ribs, 4);
        println!("{found:?}");
        let near = |found: f64, wanted: f64| (found / wanted - 1.0).abs() < 0.01;
        assert!(near(found.strip, 654_548.0), "{found:?}");
        assert!(near(found.brackets, 3_049_521.0), "{found:?}");
        assert!(near(found.wall, 4_808_742.0), "{found:?}");
    }
}
