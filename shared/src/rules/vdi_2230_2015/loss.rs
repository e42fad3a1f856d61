//! What a stud keeps of its preload: stretch, settling of the faces, creep of the resin.

use crate::source::Source;
use crate::units::{
    Area, Force, Length, LinearStiffness, Pressure, Time, hour, newton, newton_per_metre,
};

/// Settling of the faces.
pub const SETTLING: Source = Source::from_memory("VDI 2230-1", "2015", "5.4.2");
/// Creep of the resin.
pub const CREEP: Source = Source::judgement(
    "preload falls with the logarithm of time, 5 % a decade of hours (3 to 10 %)",
);

/// Stiffness of a stretched bar k = E A/l.
///
/// # Source
/// Mechanics.
pub fn bar_stiffness(modulus: Pressure, area: Area, length: Length) -> LinearStiffness {
    (modulus * area / length).into()
}

/// Stretch of a bar δ = F/k.
///
/// # Source
/// Mechanics.
pub fn stretch(force: Force, stiffness: LinearStiffness) -> Length {
    force / stiffness
}

/// Two springs one behind the other, 1/(1/k₁ + 1/k₂).
///
/// # Source
/// Mechanics.
pub fn in_series(first: LinearStiffness, second: LinearStiffness) -> LinearStiffness {
    let (a, b) = (newton_per_metre::get(first), newton_per_metre::get(second));
    newton_per_metre::new(1.0 / (1.0 / a + 1.0 / b))
}

/// Preload lost when faces settle by f_Z: ΔF = f_Z/(1/k_b + 1/k_p), at most all of it.
///
/// # Source
/// VDI 2230-1:2015, 5.4.2.
pub fn settling(
    preload: Force,
    settling: Length,
    stud: LinearStiffness,
    clamped: LinearStiffness,
) -> Force {
    let lost: Force = settling * in_series(stud, clamped);
    newton::new(newton::get(lost).min(newton::get(preload)))
}

/// Preload left after creep, F(t) = F₀ (1 − r log₁₀(t/1 h)), from one hour on.
///
/// # Source
/// Judgement: no general law for resin was found; r is an input.
pub fn after_creep(preload: Force, loss_per_decade_ratio: f64, after: Time) -> Force {
    let decades = hour::get(after).max(1.0).log10();
    preload * (1.0 - loss_per_decade_ratio * decades).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{day, kilonewton, megapascal, micrometre, millimetre, square_millimetre};

    /// Computed: an M16 over 36 mm is 916 kN/mm; settling by 5 µm against a stiff plate costs 4.6 kN of 25.
    #[test]
    fn short_studs_lose_most() {
        let short = bar_stiffness(
            megapascal::new(210_000.0),
            square_millimetre::new(157.0),
            millimetre::new(36.0),
        );
        assert!((newton_per_metre::get(short) / 1e6 - 916.0).abs() < 1.0);
        let rigid = newton_per_metre::new(1e15);
        let lost = settling(kilonewton::new(25.0), micrometre::new(5.0), short, rigid);
        assert!((kilonewton::get(lost) - 4.58).abs() < 0.01);
    }

    /// Computed: after ten years three quarters are left at 5 % a decade.
    #[test]
    fn ten_years_leave_three_quarters() {
        let left = after_creep(kilonewton::new(1.0), 0.05, day::new(3652.5));
        assert!((kilonewton::get(left) - 0.753).abs() < 0.001);
    }
}
