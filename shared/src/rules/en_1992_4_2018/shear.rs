//! Pry-out of the concrete behind a stud in shear.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{Force, Length, millimetre, newton};

/// Pry-out.
pub const PRY_OUT: Source = clause("7.2.2.4", Standing::SecondHand);

/// Factor k₈: 1 for embedments below 60 mm, else 2.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.4, where the product states none.
pub fn k8_factor(embedment: Length) -> f64 {
    if millimetre::get(embedment) < 60.0 {
        1.0
    } else {
        2.0
    }
}

/// Pry-out V_Rk,cp = k₈ min(N_Rk,c; N_Rk,p).
///
/// # Source
/// EN 1992-4:2018, 7.2.2.4.
pub fn pry_out(k8_factor: f64, cone: Force, bond: Force) -> Force {
    newton::new(k8_factor * newton::get(cone).min(newton::get(bond)))
}

/// Edge distance beyond which the concrete's edge need not be checked, max(10 h_ef, 60 d).
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (1).
pub fn far_edge(embedment: Length, diameter: Length) -> Length {
    millimetre::new((10.0 * millimetre::get(embedment)).max(60.0 * millimetre::get(diameter)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed: a pair at 160 mm with a bond of 95.8 kN: 191.5 kN.
    #[test]
    fn pry_out_follows_the_weaker_of_cone_and_bond() {
        let found = pry_out(
            k8_factor(millimetre::new(160.0)),
            kilonewton::new(116.9),
            kilonewton::new(95.75),
        );
        assert!((kilonewton::get(found) - 191.5).abs() < 0.1);
        assert!(
            (millimetre::get(far_edge(millimetre::new(125.0), millimetre::new(16.0))) - 1250.0)
                .abs()
                < 1e-9
        );
    }
}
