//! A plate pulled by studs, as an equivalent T-stub.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{
    Area, Force, Length, Moment, Pressure, megapascal, millimetre, newton, newton_metre,
    square_millimetre,
};

/// The T-stub and its modes.
pub const T_STUB: Source = clause("6.2.4 and Table 6.2", Standing::SecondHand);

/// Distance from a stud to the yield line beside the weld, m = e − 0.8 a √2.
///
/// # Source
/// EN 1993-1-8:2005, Figures 6.2 and 6.8; a is the weld's throat.
pub fn lever(stud_radius: Length, column_diameter: Length, weld_leg: Length) -> Length {
    let throat = weld_leg / std::f64::consts::SQRT_2;
    stud_radius - column_diameter / 2.0 - throat * (0.8 * std::f64::consts::SQRT_2)
}

/// Effective length of one outer bolt, the lesser of the round pattern 2πm and the straight one 4m + 1.25e, at most the
/// distance to its neighbours.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.6, bolt rows outside the column.
pub fn effective_length(lever: Length, edge: Length, neighbour: Length) -> Length {
    let (m, e) = (millimetre::get(lever), millimetre::get(edge));
    let round = std::f64::consts::TAU * m;
    millimetre::new(
        round
            .min(4.0 * m + 1.25 * e)
            .min(millimetre::get(neighbour)),
    )
}

/// Plastic moment of the yield line, M_pl = 0.25 l_eff t² f_y.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2; γ_M0 is 1.0.
pub fn plastic_moment(
    effective_length: Length,
    thickness: Length,
    yield_strength: Pressure,
) -> Moment {
    let (l, t) = (
        millimetre::get(effective_length),
        millimetre::get(thickness),
    );
    newton_metre::new(0.25e-3 * l * t * t * megapascal::get(yield_strength))
}

/// Longest stretch of stud with which the plate's edge still pries, L_b* = 8.8 m³ A_s/(l_eff t³).
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2, for one row with one stud in l_eff.
pub fn prying_limit(
    lever: Length,
    stress_area: Area,
    effective_length: Length,
    thickness: Length,
) -> Length {
    let cube = |length: Length| millimetre::get(length).powi(3);
    let area = square_millimetre::get(stress_area);
    millimetre::new(
        8.8 * cube(lever) * area / (millimetre::get(effective_length) * cube(thickness)),
    )
}

/// Stretched length of a stud in a base, L_b = 8 d + grout + plate + washer + half a nut.
///
/// # Source
/// EN 1993-1-8:2005, 6.2.6.12 and Table 6.2.
pub fn stretched_length(
    diameter: Length,
    grout: Length,
    plate: Length,
    washer: Length,
    nut: Length,
) -> Length {
    diameter * 8.0 + grout + plate + washer + nut / 2.0
}

/// Resistance of two studs in tension, ΣF_t,Rd = 2 · 0.9 A_s f_ub/γ_M2 with γ_M2 = 1.25.
///
/// # Source
/// EN 1993-1-8:2005, Table 3.4.
pub fn two_studs(stress_area: Area, ultimate: Pressure) -> Force {
    stress_area * ultimate * (2.0 * 0.9 / 1.25)
}

/// Resistance of the plate without prying, F_1-2 = 2 M_pl/m.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2.
pub fn without_prying(plastic_moment: Moment, lever: Length) -> Force {
    newton::new(2000.0 * newton_metre::get(plastic_moment) / millimetre::get(lever))
}

/// Mode 1, the plate yields in two lines: F_1 = 4 M_pl/m.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2, method 1.
pub fn mode_1(plastic_moment: Moment, lever: Length) -> Force {
    without_prying(plastic_moment, lever) * 2.0
}

/// Mode 2, the plate yields in one line and the studs break: F_2 = (2 M_pl + n ΣF_t)/(m + n), n ≤ 1.25 m.
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2.
pub fn mode_2(plastic_moment: Moment, lever: Length, edge: Length, studs: Force) -> Force {
    let m = millimetre::get(lever);
    let n = millimetre::get(edge).min(1.25 * m);
    newton::new((2000.0 * newton_metre::get(plastic_moment) + n * newton::get(studs)) / (m + n))
}

/// Half of a T-stub with prying, for one of its two studs: ½ min(F_1; F_2; ΣF_t).
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2. The table counts both flanges of a T; a base plate's stud outside the column has one.
pub fn half_prying(plastic_moment: Moment, lever: Length, edge: Length, two_studs: Force) -> Force {
    let (first, second) = (
        mode_1(plastic_moment, lever),
        mode_2(plastic_moment, lever, edge, two_studs),
    );
    let least = if first < second { first } else { second };
    (if least < two_studs { least } else { two_studs }) / 2.0
}

/// Half of a T-stub without prying, for one of its two studs: ½ min(F_1-2; ΣF_t).
///
/// # Source
/// EN 1993-1-8:2005, Table 6.2, whose third mode stands beside both others.
pub fn half_without_prying(plastic_moment: Moment, lever: Length, two_studs: Force) -> Force {
    let plate = without_prying(plastic_moment, lever);
    (if plate < two_studs { plate } else { two_studs }) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed: m 45.65, 2πm 286.8, 4m + 1.25·40 232.6; plates of 20 mm with 225 MPa carry 283 and 229 kN a stud.
    #[test]
    fn the_usual_plate_is_far_stronger_than_its_studs() {
        let mm = millimetre::new;
        let m = lever(mm(160.0), mm(219.1), mm(6.0));
        assert!((millimetre::get(m) - 45.65).abs() < 0.01);
        let length = effective_length(m, mm(40.0), mm(1e4));
        assert!((millimetre::get(length) - 232.6).abs() < 0.1);
        let force = without_prying(plastic_moment(length, mm(20.0), megapascal::new(225.0)), m);
        assert!((kilonewton::get(force) - 229.0).abs() < 0.5);
        let limit = prying_limit(m, square_millimetre::new(157.0), mm(286.8), mm(20.0));
        assert!((millimetre::get(limit) - 57.0).abs() < 0.5);
        let stretched = stretched_length(mm(16.0), mm(0.0), mm(20.0), mm(3.0), mm(14.8));
        assert!((millimetre::get(stretched) - 158.4).abs() < 0.2);
        // Without prying the studs themselves are the third mode: 0.9 · 157 · 800/1.25 = 90.4 kN each.
        let studs = two_studs(square_millimetre::new(157.0), megapascal::new(800.0));
        let half = half_without_prying(
            plastic_moment(length, mm(20.0), megapascal::new(225.0)),
            m,
            studs,
        );
        assert!((kilonewton::get(half) - 90.4).abs() < 0.1);
    }
}
