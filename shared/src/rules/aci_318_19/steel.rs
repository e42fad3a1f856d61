//! Steel strength of a stud.

use super::clause;
use super::edition::Edition;
use crate::source::{Source, Standing};
use crate::units::{Area, Force, Pressure, megapascal};

/// Steel in tension.
pub const TENSION: Source = clause("17.6.1.2", Standing::SecondHand);
/// Steel in shear.
pub const SHEAR: Source = clause("17.7.1.2", Standing::SecondHand);
/// Steel in shear on a grout pad.
pub const GROUT: Source = clause("17.7.1.2.1", Standing::FromMemory);

/// Ultimate strength that counts, at most 1.9 f_ya and 125 000 psi, in SI 860 MPa.
///
/// # Source
/// ACI 318-19 and ACI 318M-19, 17.6.1.2.
pub fn ultimate_that_counts(
    edition: Edition,
    ultimate: Pressure,
    yield_strength: Pressure,
) -> Pressure {
    let most = edition.stress_of(edition.either(125_000.0, 860.0));
    megapascal::new(
        megapascal::get(ultimate)
            .min(1.9 * megapascal::get(yield_strength))
            .min(megapascal::get(most)),
    )
}

/// Tension N_sa = A_se f_uta.
///
/// # Source
/// ACI 318-19, eq. (17.6.1.2).
pub fn tension(stress_area: Area, ultimate: Pressure) -> Force {
    stress_area * ultimate
}

/// Shear of threaded rod V_sa = 0.6 A_se f_uta, eight tenths of it on a grout pad.
///
/// # Source
/// ACI 318-19, eq. (17.7.1.2b) and 17.7.1.2.1.
///
/// # Valid for
/// A plate on the concrete or on grout. It has no rule for a plate on an open gap: there the lever arm of EN 1992-4 is
/// used beside it.
pub fn shear(stress_area: Area, ultimate: Pressure, grouted: bool) -> Force {
    stress_area * ultimate * if grouted { 0.48 } else { 0.6 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton, square_millimetre};

    /// Computed for M16 8.8: φN 94.2, φV 49.0, on grout 39.2 kN.
    #[test]
    fn steel_of_the_usual_stud() {
        let (area, ultimate) = (square_millimetre::new(157.0), megapascal::new(800.0));
        assert!((0.75 * kilonewton::get(tension(area, ultimate)) - 94.2).abs() < 0.05);
        assert!((0.65 * kilonewton::get(shear(area, ultimate, false)) - 49.0).abs() < 0.05);
        assert!((0.65 * kilonewton::get(shear(area, ultimate, true)) - 39.2).abs() < 0.05);
        assert!(
            (megapascal::get(ultimate_that_counts(
                Edition::Si,
                megapascal::new(1000.0),
                megapascal::new(900.0)
            )) - 860.0)
                .abs()
                < 1e-9
        );
    }
}
