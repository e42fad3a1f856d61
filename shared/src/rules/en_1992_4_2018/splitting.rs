//! Splitting of the concrete under load.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{Force, Length, newton};

/// Splitting under load.
pub const SPLITTING: Source = clause("7.2.1.7", Standing::FromMemory);

/// Whether splitting needs no check: an edge of 1.0 (one stud) or 1.2 (a group) c_cr,sp and the least thickness.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.7 (2) a.
pub fn ruled_out(
    single: bool,
    edge: Length,
    splitting_edge: Length,
    thickness: Length,
    least_thickness: Length,
) -> bool {
    let needed_factor = if single { 1.0 } else { 1.2 };
    edge >= splitting_edge * needed_factor && thickness >= least_thickness
}

/// Basic value: the smaller of the single stud's bond and cone.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.7 (2) b.
pub fn basic(bond: Force, cone: Force) -> Force {
    newton::new(newton::get(bond).min(newton::get(cone)))
}

/// Effect of thickness ψ_h,sp = (h/h_min)^(2/3), at most max(1, ((h_ef + 1.5 c₁)/h_min)^(2/3)) and 2.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.7 (2) b.
pub fn thickness_factor(
    thickness: Length,
    least_thickness: Length,
    embedment: Length,
    edge: Length,
) -> f64 {
    let power = |ratio: f64| ratio.max(0.0).powf(2.0 / 3.0);
    let cap = power(((embedment + edge * 1.5) / least_thickness).value).max(1.0);
    power((thickness / least_thickness).value).min(cap).min(2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::millimetre;

    /// Computed: a block of 900 mm reaches the cap of 2.
    #[test]
    fn a_deep_block_reaches_the_cap() {
        let mm = millimetre::new;
        assert!((thickness_factor(mm(900.0), mm(200.0), mm(160.0), mm(300.0)) - 2.0).abs() < 1e-12);
        assert!((thickness_factor(mm(200.0), mm(200.0), mm(160.0), mm(300.0)) - 1.0).abs() < 1e-12);
        assert!(ruled_out(true, mm(330.0), mm(320.0), mm(900.0), mm(200.0)));
        assert!(!ruled_out(
            false,
            mm(330.0),
            mm(320.0),
            mm(900.0),
            mm(200.0)
        ));
    }
}
