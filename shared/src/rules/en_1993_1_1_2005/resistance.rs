//! Resistance of a tube's cross-section.
//!
//! EN 1993-1-1:2005, Table 5.2 sheet 3 and 6.2.

use crate::source::Source;
use crate::units::{
    Area, Force, Length, Moment, Pressure, SectionModulus, megapascal, millimetre, newton_metre,
};

/// Where the resistances come from.
pub const SOURCE: Source = Source::from_memory("EN 1993-1-1", "2005", "6.2.4, 6.2.5, 6.2.1(7)");
/// Where the classes come from.
pub const CLASS_SOURCE: Source = Source::from_memory("EN 1993-1-1", "2005", "Table 5.2, sheet 3");
/// Partial factors γ_M0 and γ_M1.
pub const GAMMA_M: f64 = 1.0;

/// Class of a tube, 1 to 4: d/t within 50 ε², 70 ε², 90 ε², or beyond; ε² = 235 MPa/f_y.
///
/// # Source
/// EN 1993-1-1:2005, Table 5.2, sheet 3.
/// # Valid for
/// Tubes in bending or compression; class 4 is a shell, EN 1993-1-6.
pub fn class(outside: Length, wall: Length, yield_strength: Pressure) -> u8 {
    let slender =
        millimetre::get(outside) / millimetre::get(wall) * megapascal::get(yield_strength) / 235.0;
    match slender {
        s if s <= 50.0 => 1,
        s if s <= 70.0 => 2,
        s if s <= 90.0 => 3,
        _ => 4,
    }
}

/// Resistance to compression, N_c,Rd = A f_y/γ_M0.
///
/// # Source
/// EN 1993-1-1:2005, 6.2.4(2).
/// # Valid for
/// Classes 1 to 3.
pub fn compression(area: Area, yield_strength: Pressure) -> Force {
    area * yield_strength / GAMMA_M
}

/// Resistance to bending, M_c,Rd = W f_y/γ_M0, with the elastic modulus: the side without plastic reserve.
///
/// # Source
/// EN 1993-1-1:2005, 6.2.5(2).
/// # Valid for
/// Classes 1 to 3.
pub fn bending(elastic_modulus: SectionModulus, yield_strength: Pressure) -> Moment {
    newton_metre::new((elastic_modulus * yield_strength).value / GAMMA_M)
}

/// Use of the section under compression and bending, N/N_Rd + M/M_Rd.
///
/// # Source
/// EN 1993-1-1:2005, 6.2.1(7): the conservative sum.
/// # Valid for
/// Classes 1 to 3.
pub fn use_ratio(force: Force, compression: Force, moment: Moment, bending: Moment) -> f64 {
    let (n, m): (f64, f64) = ((force / compression).value, (moment / bending).value);
    n + m
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{cubic_millimetre, kilonewton_metre};

    #[test]
    fn a_common_tube_is_stocky_and_strong() {
        assert_eq!(
            class(
                millimetre::new(219.1),
                millimetre::new(6.3),
                megapascal::new(235.0)
            ),
            1
        );
        assert_eq!(
            class(
                millimetre::new(500.0),
                millimetre::new(4.0),
                megapascal::new(235.0)
            ),
            4
        );
        let m = bending(cubic_millimetre::new(270_160.0), megapascal::new(235.0));
        assert!((kilonewton_metre::get(m) - 63.49).abs() < 0.01);
    }
}
