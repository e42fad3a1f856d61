//! A base plate on grout: pressure, effective width, and stiffness of its parts.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{
    Area, Force, Length, Pressure, RotationalStiffness, megapascal, millimetre, newton,
    newton_metre_per_radian, square_millimetre,
};

/// Pressure and effective width.
pub const PRESSURE: Source = clause("6.2.5", Standing::SecondHand);
/// Stiffness of the parts.
pub const PARTS: Source = clause("Table 6.11", Standing::FromMemory);
/// Stiffness of the joint.
pub const JOINT: Source = clause("6.3.1 and Table 6.12", Standing::FromMemory);
/// A rigid disc on the concrete.
pub const DISC: Source = Source::from_memory(
    "Borowicka",
    "1943",
    "rigid disc under a moment on a half-space",
);

/// Pressure that the concrete bears under the plate, f_jd = (2/3) k_j f_ck/γ_c, with k_j = √(A_c1/A_c0) from 1 to 3.
///
/// # Source
/// EN 1993-1-8:2005, 6.2.5 (7); γ_c = 1.5, α_cc = 1.
pub fn bearing(strength: Pressure, concentration_factor: f64) -> Pressure {
    strength * (2.0 / 3.0 * concentration_factor.clamp(1.0, 3.0) / 1.5)
}

/// Width beside the wall over which the plate presses, c = t √(f_y/(3 f_jd)).
///
/// # Source
/// EN 1993-1-8:2005, 6.2.5 (4).
pub fn effective_width(thickness: Length, yield_strength: Pressure, bearing: Pressure) -> Length {
    thickness * (megapascal::get(yield_strength) / (3.0 * megapascal::get(bearing))).sqrt()
}

/// Compression of the concrete with grout, k₁₃ = E_c √(b_eff l_eff)/(1.275 E).
///
/// # Source
/// EN 1993-1-8:2005, Table 6.11.
pub fn concrete_part(concrete: Pressure, steel: Pressure, width: Length, length: Length) -> Length {
    let side = (millimetre::get(width) * millimetre::get(length)).sqrt();
    millimetre::new((concrete / steel).value * side / 1.275)
}

/// Plate in bending under a pulled row of two, k₁₅ = 0.85 l_eff t³/m³ with prying, 0.425 without.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.11.
pub fn plate_part(
    effective_length: Length,
    thickness: Length,
    lever: Length,
    prying: bool,
) -> Length {
    let factor = if prying { 0.85 } else { 0.425 };
    effective_length * (factor * (thickness / lever).value.powi(3))
}

/// A pulled row of two studs, k₁₆ = 1.6 A_s/L_b with prying, 2.0 without.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.11.
pub fn stud_part(stress_area: Area, stretched_length: Length, prying: bool) -> Length {
    let factor = if prying { 1.6 } else { 2.0 };
    millimetre::new(
        factor * square_millimetre::get(stress_area) / millimetre::get(stretched_length),
    )
}

/// Turning stiffness of the open joint S_j = E z²/(1/k_T + 1/k_C), for a moment with hardly any axial force.
///
/// # Source
/// EN 1993-1-8:2005, 6.3.1 and Table 6.12, with μ = 1 below two thirds of the resistance.
pub fn joint(
    steel: Pressure,
    lever: Length,
    pulled: Length,
    pressed: Length,
) -> RotationalStiffness {
    let (kt, kc) = (millimetre::get(pulled), millimetre::get(pressed));
    let springs = 1.0 / (1.0 / kt + 1.0 / kc);
    newton_metre_per_radian::new(
        megapascal::get(steel) * millimetre::get(lever).powi(2) * springs / 1000.0,
    )
}

/// Turning stiffness of a joint that its preload keeps closed, as a rigid disc on the concrete: 4 E a³/[3(1 − ν²)].
///
/// # Source
/// Borowicka 1943; in the shape of a rocking disc 8 G a³/[3(1 − ν)].
pub fn closed(concrete: Pressure, poisson_ratio: f64, radius: Length) -> RotationalStiffness {
    let a = millimetre::get(radius);
    let stiffness =
        4.0 * megapascal::get(concrete) * a.powi(3) / (3.0 * (1.0 - poisson_ratio * poisson_ratio));
    newton_metre_per_radian::new(stiffness / 1000.0)
}

/// Moment that opens a closed disc: all that presses, times a quarter of its radius.
///
/// # Source
/// Kern of a disc.
pub fn opening_moment(pressing: Force, radius: Length) -> crate::units::Moment {
    crate::units::newton_metre::new(newton::get(pressing) * millimetre::get(radius) / 4000.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton, newton_metre};

    /// Computed for C25/30 and a plate of 20 mm in S235: f_jd 16.7, c 42.4, k₁₃ 14.3, k₁₅ 10.25, k₁₆ 1.98, 13.6 MN m/rad.
    #[test]
    fn parts_of_the_usual_base() {
        let (mm, mpa) = (millimetre::new, megapascal::new);
        let pressure = bearing(mpa(25.0), 1.5);
        assert!((megapascal::get(pressure) - 16.67).abs() < 0.01);
        assert!(
            (millimetre::get(effective_width(mm(20.0), mpa(225.0), pressure)) - 42.4).abs() < 0.05
        );
        let k13 = concrete_part(mpa(31_000.0), mpa(210_000.0), mm(91.0), mm(167.0));
        assert!((millimetre::get(k13) - 14.3).abs() < 0.05);
        let k15 = plate_part(mm(286.8), mm(20.0), mm(45.65), false);
        assert!((millimetre::get(k15) - 10.25).abs() < 0.02);
        let k16 = stud_part(square_millimetre::new(157.0), mm(158.5), false);
        assert!((millimetre::get(k16) - 1.98).abs() < 0.005);
        let kt = 1.0 / (1.0 / 10.25 + 1.0 / 1.98);
        let stiffness = joint(mpa(210_000.0), mm(209.0), mm(kt), k13);
        assert!((newton_metre_per_radian::get(stiffness) / 1e6 - 13.6).abs() < 0.1);
    }

    /// A published sheet prints 1.80 mm for 314 mm² in two studs over 350 mm; computed 1.794 for 2.0 A_s/L_b.
    #[test]
    fn the_published_sheet_s_stud_part() {
        let part = stud_part(square_millimetre::new(314.0), millimetre::new(350.0), false);
        assert!((millimetre::get(part) - 1.794).abs() < 0.001);
    }

    /// Computed: a 152 mm gives 151 MN m/rad, 175 mm 231; four studs of 25 kN and 3 kN hold it closed to 3.9 kN m.
    #[test]
    fn a_closed_joint_is_ten_times_stiffer() {
        for (radius, expected) in [(152.0, 151.0), (175.0, 231.0)] {
            let found = closed(megapascal::new(31_000.0), 0.2, millimetre::new(radius));
            assert!((newton_metre_per_radian::get(found) / 1e6 - expected).abs() < 1.0);
        }
        let opens = opening_moment(kilonewton::new(103.0), millimetre::new(152.0));
        assert!((newton_metre::get(opens) - 3914.0).abs() < 1.0);
    }
}
