//! Hours to dig a cubic metre, read from `data/digging.csv`: a labourer's who is used to it, as estimators publish them.

use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::table::Table;

/// The table, one soil a line, each with its source.
pub static TABLE: Table = Table::new("digging.csv", include_str!("../../../data/digging.csv"));

/// Source of the hours.
pub const SOURCE: Source = Source::read(
    "Labour factors of an estimating school and a compendium of outputs",
    "",
    "digging, loading and wheeling by hand, hours to the cubic metre; data/digging.csv",
);

/// Hours for a cubic metre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// One labourer's by hand: dig, load, and wheel to within 50 m.
    pub hand_h_m3: f64,
    /// A small digger's.
    pub machine_h_m3: f64,
}

/// The row of a soil; heavy soil where none reads, which a test shows never to happen.
pub fn rate(soil: Soil) -> Rate {
    read(soil).unwrap_or(Rate {
        hand_h_m3: 6.45,
        machine_h_m3: 0.4,
    })
}

fn read(soil: Soil) -> Option<Rate> {
    let row = TABLE.row(soil.key())?;
    Some(Rate {
        hand_h_m3: row.maybe("hand_h_m3")?,
        machine_h_m3: row.maybe("machine_h_m3")?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_soil_has_hours_that_read() {
        for &soil in Soil::ALL {
            let rate = read(soil);
            assert!(
                rate.is_some_and(|rate| rate.hand_h_m3 > rate.machine_h_m3),
                "{}",
                soil.key()
            );
        }
        // 1.2 m³ of firm clay by hand for two took 1.7 h; by the published factors it is 1.2 × 5.6 / 2.
        assert!(1.2 * rate(Soil::FirmClay).hand_h_m3 / 2.0 > 3.0);
    }
}
