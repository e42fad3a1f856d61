//! Steel failure of a stud.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{
    Area, Force, Length, Moment, Pressure, SectionModulus, cubic_millimetre, megapascal,
    millimetre, newton, newton_metre,
};

/// Steel in tension.
pub const TENSION: Source = clause("7.2.1.3", Standing::SecondHand);
/// Steel in shear without lever arm.
pub const SHEAR: Source = clause("7.2.2.3.1", Standing::SecondHand);
/// Steel in shear with lever arm.
pub const LEVER: Source = clause("7.2.2.3.2", Standing::SecondHand);
/// When shear acts with a lever arm, and how long it is.
pub const LEVER_LENGTH: Source = clause("6.2.2.3 (1) to (3)", Standing::Read);

/// Resistance to tension N_Rk,s = A_s f_uk.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.3.
///
/// # Valid for
/// f_uk up to 1000 MPa.
pub fn tension(stress_area: Area, ultimate: Pressure) -> Force {
    stress_area * ultimate
}

/// Factor k₆ of shear: 0.6 to 500 MPa, else 0.5.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.1 (1). At just 500 MPa (class 5.8) some assessments use 0.5; so does this.
pub fn k6_factor(ultimate: Pressure) -> f64 {
    if megapascal::get(ultimate) < 500.0 {
        0.6
    } else {
        0.5
    }
}

/// Resistance to shear of one fastener without lever arm V⁰_Rk,s = k₆ A_s f_uk.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.1 (1).
pub fn shear_single(stress_area: Area, ultimate: Pressure) -> Force {
    stress_area * ultimate * k6_factor(ultimate)
}

/// Ductility factor k₇ in groups: 1.0 where the steel stretches by more than 8 %, else 0.8.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.1 (2).
pub fn k7_factor(elongation_ratio: f64) -> f64 {
    if elongation_ratio > 0.08 { 1.0 } else { 0.8 }
}

/// Section modulus of the stress area as a round bar, W_el = π d_s³/32.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.2 (2), with the diameter of the stress area.
pub fn section_modulus(stress_diameter: Length) -> SectionModulus {
    cubic_millimetre::new(std::f64::consts::PI * millimetre::get(stress_diameter).powi(3) / 32.0)
}

/// Bending resistance M⁰_Rk,s = 1.2 W_el f_uk.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.2 (2).
pub fn bending(section_modulus: SectionModulus, ultimate: Pressure) -> Moment {
    newton_metre::new(1.2e-3 * cubic_millimetre::get(section_modulus) * megapascal::get(ultimate))
}

/// Bending resistance left beside a tension, M_Rk,s = M⁰_Rk,s (1 − N_Ed/N_Rd,s), never below nothing.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.2 (2).
pub fn bending_with_tension(bending: Moment, tension: Force, design_tension: Force) -> Moment {
    let used_ratio = newton::get(tension).abs() / newton::get(design_tension);
    bending * (1.0 - used_ratio).max(0.0)
}

/// Lever arm l_a = a₃ + e₁, with a₃ = 0.5 d where no nut is clamped against the concrete, else nothing.
///
/// # Source
/// EN 1992-4:2018, 6.2.2.3 (3): e₁ from the concrete to the middle of the plate.
///
/// # Valid for
/// A plate over a gap, or on mortar thicker than half a diameter; (1) spares thinner mortar as strong as the concrete, and
/// (2) spares mortar to 40 mm only where no moment and no tension acts on the plate.
pub fn lever_arm(diameter: Length, gap: Length, plate: Length, clamped: bool) -> Length {
    let into = if clamped {
        millimetre::new(0.0)
    } else {
        diameter * 0.5
    };
    into + gap + plate / 2.0
}

/// How much a stud is held against turning at the plate, α_M: 2 where another stud keeps the plate from turning, 1 where it
/// stands alone.
///
/// # Source
/// EN 1992-4:2018, 6.2.2.3 (3).
pub const fn restraint_factor(studs: usize) -> f64 {
    if studs > 1 { 2.0 } else { 1.0 }
}

/// Resistance to shear with lever arm V_Rk,s,M = α_M M_Rk,s/l_a, with α_M from [`restraint_factor`].
///
/// # Source
/// EN 1992-4:2018, 7.2.2.3.2 (1).
pub fn shear_with_lever(bending: Moment, lever_arm: Length, restraint_factor: f64) -> Force {
    bending * restraint_factor / lever_arm
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::threads;
    use crate::site_plan::anchors::Size;
    use crate::units::kilonewton;

    /// Computed for M16 8.8, plate 20, gaps 25, 40 and 60: 9.88, 7.32 and 5.45 kN at α_M = 2 and γ = 1.25.
    #[test]
    fn a_lever_arm_costs_most_of_the_shear() {
        let thread = threads::thread(Size::M16);
        let held = bending(
            section_modulus(threads::stress_diameter(&thread)),
            megapascal::new(800.0),
        );
        for (gap, expected) in [(25.0, 9.88), (40.0, 7.32), (60.0, 5.45)] {
            let arm = lever_arm(
                thread.diameter,
                millimetre::new(gap),
                millimetre::new(20.0),
                false,
            );
            let found = kilonewton::get(shear_with_lever(held, arm, 2.0)) / 1.25;
            assert!(
                (found - expected).abs() < 0.005 * expected,
                "gap {gap}: {found}"
            );
        }
    }

    #[test]
    fn the_usual_stud_breaks_at_125_6_kn() {
        let thread = threads::thread(Size::M16);
        assert!(
            (kilonewton::get(tension(thread.stress_area, megapascal::new(800.0))) - 125.6).abs()
                < 0.05
        );
        assert!(
            (kilonewton::get(shear_single(thread.stress_area, megapascal::new(800.0))) - 62.8)
                .abs()
                < 0.05
        );
    }
}
