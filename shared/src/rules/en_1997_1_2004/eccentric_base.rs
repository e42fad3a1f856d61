//! Pressure under a rigid rectangular base that is loaded off its centre.
//! EN 1997-1:2004, 6.5.4 and Annex D (effective area); the edge pressure is elementary statics.

use crate::source::Source;
use crate::units::{
    Area, Force, Length, Moment, Pressure, kilonewton, kilonewton_metre, kilopascal, metre,
};

/// Where the effective area comes from.
pub const SOURCE: Source =
    Source::from_memory("EN 1997-1", "2004", "Annex D.3, effective foundation area");
/// Where the edge pressure comes from.
pub const EDGE_SOURCE: Source =
    Source::derived("linear pressure without tension under a rigid base");

/// How far off the centre a force acts, e = M / N.
///
/// # Source
/// Statics.
///
/// # Valid for
/// A downward force; without one there is no base pressure and the answer is none.
pub fn eccentricity(moment: Moment, force: Force) -> Option<Length> {
    let force = kilonewton::get(force);
    (force > 0.0).then(|| metre::new(kilonewton_metre::get(moment).abs() / force))
}

/// Largest pressure at the edge: N/A (1 + 6e/B) within the kern, 2N / (3 L (B/2 − e)) outside it.
///
/// # Source
/// Statics: linear pressure, no tension between base and ground.
///
/// # Valid for
/// A moment along `along` only; none when the force falls on or outside the edge, since nothing balances it there.
///
/// # Example
/// ```
/// use stillground::{rules::en_1997_1_2004::eccentric_base::edge_pressure, units::{kilonewton, kilopascal, metre}};
/// let edge = edge_pressure(kilonewton::new(24.0), metre::new(0.0), metre::new(1.0), metre::new(1.0));
/// assert_eq!(edge.map(kilopascal::get), Some(24.0));
/// ```
pub fn edge_pressure(
    force: Force,
    eccentricity: Length,
    along: Length,
    across: Length,
) -> Option<Pressure> {
    let (n, e) = (kilonewton::get(force), metre::get(eccentricity));
    let (b, l) = (metre::get(along), metre::get(across));
    if e <= b / 6.0 {
        return Some(kilopascal::new(n / (b * l) * (1.0 + 6.0 * e / b)));
    }
    (e < b / 2.0).then(|| kilopascal::new(2.0 * n / (3.0 * l * (b / 2.0 - e))))
}

/// Effective area, A' = (B − 2 e) L: the part of the base that carries evenly.
///
/// # Source
/// EN 1997-1:2004, Annex D.
///
/// # Valid for
/// A moment along `along` only; none when nothing is left of the base.
pub fn effective_area(eccentricity: Length, along: Length, across: Length) -> Option<Area> {
    let left = along - eccentricity * 2.0;
    (left > metre::new(0.0)).then(|| left * across)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::square_metre;

    #[test]
    fn both_forms_meet_at_the_kern() {
        let (n, side) = (kilonewton::new(30.0), metre::new(1.2));
        let at = edge_pressure(n, metre::new(0.2), side, side).unwrap();
        let beyond = edge_pressure(n, metre::new(0.2 + 1e-9), side, side).unwrap();
        assert!((kilopascal::get(at) - kilopascal::get(beyond)).abs() < 1e-5);
        assert!((kilopascal::get(at) - 2.0 * 30.0 / 1.44).abs() < 1e-9);
    }

    #[test]
    fn nothing_balances_a_force_outside_the_base() {
        assert!(
            edge_pressure(
                kilonewton::new(30.0),
                metre::new(0.6),
                metre::new(1.2),
                metre::new(1.2)
            )
            .is_none()
        );
        assert!(effective_area(metre::new(0.6), metre::new(1.2), metre::new(1.2)).is_none());
        let left = effective_area(metre::new(0.1), metre::new(1.2), metre::new(1.5)).unwrap();
        assert!((square_metre::get(left) - 1.5).abs() < 1e-12);
    }
}
