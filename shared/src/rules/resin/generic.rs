//! Times of a resin of which only the kind is known: the shortest working and the longest curing time of its class.

use crate::site_plan::anchors::Resin;
use crate::units::hour;

use super::Times;
use crate::table::{Row, Table};

/// The table: a row holds from its temperature up to the next row's; an empty pair of cells is a no.
pub static TABLE: Table = Table::new(
    "resin_times.csv",
    include_str!("../../../data/resin_times.csv"),
);
/// Warmest concrete in which any resin is set, °C.
pub const WARMEST_C: f64 = 40.0;
/// Colder than this only where the product's own sheet allows it, °C.
pub const SHEET_BELOW_C: f64 = 5.0;

/// Times at a temperature of the concrete; none where the kind is not set at it.
///
/// # Source
/// `data/resin_times.csv`, each cell with what it rests on.
///
/// # Valid for
/// Steps, never stretched across a no: colder is never quicker. A resin whose kind is not known is taken at the shortest working
/// and the longest curing time of both kinds.
pub fn times(kind: Option<Resin>, concrete_c: f64) -> Option<Times> {
    if concrete_c > WARMEST_C {
        return None;
    }
    let reached = |row: &&Row| row.maybe("from_c").is_some_and(|from| from <= concrete_c);
    let row = TABLE.rows().iter().take_while(reached).last()?;
    let (working_min, cure_h) = match kind {
        Some(Resin::Vinylester) => ("vinylester_work_min", "vinylester_cure_h"),
        Some(Resin::Epoxy) => ("epoxy_work_min", "epoxy_cure_h"),
        None => ("unknown_work_min", "unknown_cure_h"),
    };
    Some(Times {
        temperature_c: concrete_c,
        working: hour::new(row.maybe(working_min)? / 60.0),
        cure: hour::new(row.maybe(cure_h)?),
    })
}

/// Coldest and warmest concrete in which the kind is set, °C.
///
/// # Source
/// `data/resin_times.csv`: the first and the last row in which the kind has times.
pub fn range_c(kind: Option<Resin>) -> [f64; 2] {
    let coldest = match kind {
        Some(Resin::Vinylester) => -10.0,
        Some(Resin::Epoxy) | None => SHEET_BELOW_C,
    };
    [coldest, WARMEST_C]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::hour;

    const KINDS: [Option<Resin>; 3] = [Some(Resin::Vinylester), Some(Resin::Epoxy), None];

    /// The table of published sheets: epoxy 60 min and 72 h from 5 to 10 °C, vinylester 3 min and 2 h from 20 to 30 °C.
    #[test]
    fn steps_hold_from_their_temperature() {
        let at = |kind, celsius| {
            times(kind, celsius)
                .map(|times| (60.0 * hour::get(times.working), hour::get(times.cure)))
        };
        let same = |found: Option<(f64, f64)>, wanted: (f64, f64)| {
            let (work, cure) = found.unwrap();
            assert!(
                (work - wanted.0).abs() < 1e-9 && (cure - wanted.1).abs() < 1e-9,
                "{work} {cure}"
            );
        };
        same(at(Some(Resin::Epoxy), 9.9), (60.0, 72.0));
        same(at(Some(Resin::Vinylester), 20.0), (3.0, 2.0));
        same(at(None, 38.0), (1.5, 24.0));
        assert!(
            at(None, -6.0).is_none()
                && at(None, 1.0).is_none()
                && at(Some(Resin::Epoxy), 4.9).is_none()
        );
        assert!(
            at(Some(Resin::Vinylester), -6.0).is_some()
                && at(Some(Resin::Vinylester), -10.1).is_none()
        );
        assert!(
            KINDS
                .iter()
                .all(|kind| at(*kind, 40.1).is_none() && at(*kind, 40.0).is_some())
        );
    }

    #[test]
    fn colder_is_never_quicker_and_the_kinds_begin_where_their_range_says() {
        for kind in KINDS {
            let [coldest, warmest] = range_c(kind);
            assert!(times(kind, coldest).is_some() && times(kind, coldest - 0.1).is_none());
            let mut before = f64::INFINITY;
            for tenth in 0..=((warmest - coldest) * 10.0) as i32 {
                let found = times(kind, coldest + 0.1 * f64::from(tenth));
                let cure = hour::get(found.unwrap().cure);
                assert!(cure <= before, "{kind:?} {tenth}");
                before = cure;
            }
        }
    }
}
