//! Least steel that spreads the cracks of a cooling and drying face.
//! EN 1992-1-1:2004, 7.3.2(2), expression (7.1).

use crate::source::Source;
use crate::units::{Area, Pressure, megapascal};

/// Where this comes from.
pub const SOURCE: Source = Source::second_hand(
    "EN 1992-1-1",
    "2004",
    "7.3.2(2), expression (7.1), as an open library has it",
);

/// Least area of steel, A_s,min = k_c k f_ct,eff A_ct / σ_s, with k_c = 1 (pure tension of a surface zone).
///
/// # Source
/// EN 1992-1-1:2004, expression (7.1).
///
/// # Valid for
/// A zone that is wholly in tension before its first crack; `depth_factor` is k, 1.0 to 300 mm and 0.65 from 800 mm.
///
/// # Example
/// ```
/// use stillground::{rules::en_1992_1_1_2004::minimum_steel::least, units::{megapascal, square_millimetre}};
/// let area = least(1.0, megapascal::new(1.534), square_millimetre::new(200_000.0), megapascal::new(500.0));
/// assert!((square_millimetre::get(area) - 614.0).abs() < 1.0);
/// ```
pub fn least(depth_factor: f64, tensile: Pressure, zone: Area, steel_stress: Pressure) -> Area {
    zone * (depth_factor * megapascal::get(tensile) / megapascal::get(steel_stress))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{megapascal, square_millimetre};

    // 0.65 × 2.56 × 500 000 / 360: the full face of a metre-thick block where the width of a crack counts.
    #[test]
    fn a_thick_face_asks_for_more() {
        let area = least(
            0.65,
            megapascal::new(1.534),
            square_millimetre::new(500_000.0),
            megapascal::new(360.0),
        );
        assert!((square_millimetre::get(area) - 1385.0).abs() < 1.0);
    }
}
