//! The whole lengths in which a thing is sold: how many of them, and what is left over.

use serde::Serialize;

use crate::figure::{Unit, Units};
use crate::stock::Stock;
use crate::units::customary::FOOT_M;

/// A saw cut and the squaring of its ends, m.
pub(super) const SAW_M: f64 = 0.005;

/// A whole length in which a line can be had.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StockLength {
    /// Its name among the lines.
    pub id: &'static str,
    /// Length of one, m.
    pub length_m: f64,
    /// How many.
    pub pieces: u32,
    /// What is left over of all of them, saw cuts included, m.
    pub waste_m: f64,
    /// The same in words.
    pub says: String,
}

/// The lengths offered for something, by what is sold: name, and length in metres or in feet.
pub(super) struct Offer {
    pub metric: &'static [(&'static str, f64)],
    pub inch: &'static [(&'static str, f64)],
}

impl Offer {
    /// How many of each whole length these cuts take, each a length in metres and how many of it. A length that is too
    /// short for one of them is not offered.
    pub(super) fn of(
        &self,
        stock_of: Stock,
        units: Units,
        cuts: &[(f64, f64)],
    ) -> Vec<StockLength> {
        let (lengths, unit_m) = stock_of.either((self.metric, 1.0), (self.inch, FOOT_M));
        lengths
            .iter()
            .filter_map(|&(id, length)| stock(id, length * unit_m, units, cuts))
            .collect()
    }
}

fn stock(
    id: &'static str,
    length_m: f64,
    units: Units,
    cuts: &[(f64, f64)],
) -> Option<StockLength> {
    let pieces = needed(length_m, cuts)?;
    let used: f64 = cuts.iter().map(|(length, count)| length * count).sum();
    let waste_m = ((f64::from(pieces) * length_m - used) * 1000.0)
        .round()
        .max(0.0)
        / 1000.0;
    let says = format!(
        "{pieces} of {}; {} left over",
        units.say(length_m, Unit::Metre),
        units.say(waste_m, Unit::Metre)
    );
    Some(StockLength {
        id,
        length_m,
        pieces,
        waste_m,
        says,
    })
}

/// Whole lengths of which as many are left over as say so.
struct Rest {
    length: f64,
    count: f64,
}

/// How many whole lengths the cuts take when the longest are cut first, each from the first rest that holds it; none
/// when one is longer than a whole length.
pub(super) fn needed(stock_m: f64, cuts: &[(f64, f64)]) -> Option<u32> {
    let mut cuts: Vec<(f64, f64)> = cuts
        .iter()
        .copied()
        .filter(|&(length, count)| length > 0.0 && count > 0.0)
        .collect();
    cuts.sort_by(|a, b| b.0.total_cmp(&a.0));
    let (mut rests, mut pieces): (Vec<Rest>, f64) = (Vec::new(), 0.0);
    for (length, count) in cuts {
        let mut open = count;
        let mut left = Vec::new();
        for rest in rests {
            open -= cut(rest, length, open, &mut left);
        }
        if open > 0.0 {
            let count = (open / from_one(stock_m, length)).ceil();
            if !count.is_finite() {
                return None;
            }
            let _ = cut(
                Rest {
                    length: stock_m,
                    count,
                },
                length,
                open,
                &mut left,
            );
            pieces += count;
        }
        rests = left;
    }
    (pieces > 0.0 && pieces < f64::from(u32::MAX)).then_some(pieces as u32)
}

/// How many cuts of a length one rest gives.
fn from_one(rest_m: f64, length: f64) -> f64 {
    ((rest_m + SAW_M) / (length + SAW_M) + 1e-9).floor()
}

/// Cuts at most `open` pieces from rests of one length; says how many, and puts by what is left.
fn cut(rest: Rest, length: f64, open: f64, left: &mut Vec<Rest>) -> f64 {
    let each = from_one(rest.length, length);
    if each < 1.0 || open <= 0.0 {
        left.push(rest);
        return 0.0;
    }
    let after = |pieces: f64| (rest.length - pieces * (length + SAW_M)).max(0.0);
    let full = (open / each).floor().min(rest.count);
    let last = if full < rest.count {
        open - full * each
    } else {
        0.0
    };
    let begun = if last > 0.0 { 1.0 } else { 0.0 };
    for (length, count) in [
        (after(each), full),
        (after(last), begun),
        (rest.length, rest.count - full - begun),
    ] {
        if count > 0.0 {
            left.push(Rest { length, count });
        }
    }
    full * each + last
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_are_cut_first_and_the_rests_are_used() {
        // Two of 1.4 m from each 3 m, and 0.15 m from what is left of them.
        assert_eq!(needed(3.0, &[(1.4, 4.0), (0.15, 2.0)]), Some(2));
        // One of 1.6 m from each 3 m, though two and a bit would go by length alone; the rests hold four of 1.3 m.
        assert_eq!(needed(3.0, &[(1.6, 4.0), (1.3, 4.0)]), Some(4));
        assert_eq!(needed(3.0, &[(1.6, 4.0), (1.3, 5.0)]), Some(5));
        assert_eq!(
            needed(1.0, &[(0.25, 4.0)]),
            Some(2),
            "three saw cuts do not leave four whole quarters"
        );
        assert_eq!(needed(1.0, &[(1.2, 1.0)]), None);
        assert_eq!(needed(1.0, &[]), None);
    }

    #[test]
    fn what_is_left_over_is_what_was_bought_less_what_was_used() {
        let offer = Offer {
            metric: &[("a", 1.0), ("b", 2.0)],
            inch: &[("c", 3.0)],
        };
        let metric = offer.of(Stock::Metric, Units::Metric, &[(0.3, 5.0)]);
        assert_eq!(
            metric
                .iter()
                .map(|stock| (stock.id, stock.pieces, stock.waste_m))
                .collect::<Vec<_>>(),
            [("a", 2, 0.5), ("b", 1, 0.5)]
        );
        let imperial = offer.of(Stock::Inch, Units::Imperial, &[(0.3, 5.0)]);
        assert_eq!((imperial[0].pieces, imperial[0].waste_m), (2, 0.329));
        assert!(
            imperial[0].says.contains("3\u{2032}"),
            "{}",
            imperial[0].says
        );
    }
}
