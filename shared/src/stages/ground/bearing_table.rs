//! What each soil word is presumed to carry and how strong it is, read from `data/bearing.csv`: each value with the table it
//! stands in.

use serde::Serialize;

use crate::rules::ibc_2012::presumptive;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::table::{Row, Table};

/// The table, one soil a line; a column of keys behind each value says where it is from.
pub static TABLE: Table = Table::new("bearing.csv", include_str!("../../../data/bearing.csv"));

/// Row of one soil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BearingRow {
    /// Presumed net bearing pressure, low, typical and high, kPa.
    pub pressure_kpa: [f64; 3],
    /// Where each of the three stands.
    pub sources: [Source; 3],
    /// Strength of the word; none for rock.
    pub strength: Option<Strength>,
    /// Where that is from.
    pub strength_source: Source,
}

/// Strength of a soil word, from its lowest to its highest.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Strength {
    /// Undrained strength of clay, kPa.
    Undrained {
        /// Lowest.
        low_kpa: f64,
        /// Highest.
        high_kpa: f64,
    },
    /// Angle of friction of silt, sand and gravel, degrees.
    Drained {
        /// Lowest.
        low_deg: f64,
        /// Highest.
        high_deg: f64,
    },
}

/// The row of a soil; none for ground that is not to be built on by presumption.
pub fn row(soil: Soil) -> Option<BearingRow> {
    read(TABLE.row(soil.key())?)
}

fn read(row: &Row) -> Option<BearingRow> {
    let from = |column| source(row.text(column));
    let both = |low, high| row.maybe(low).zip(row.maybe(high));
    let undrained = both("undrained_low_kpa", "undrained_high_kpa")
        .map(|(low_kpa, high_kpa)| Strength::Undrained { low_kpa, high_kpa });
    let drained = || {
        both("friction_low_deg", "friction_high_deg")
            .map(|(low_deg, high_deg)| Strength::Drained { low_deg, high_deg })
    };
    Some(BearingRow {
        pressure_kpa: [
            row.maybe("low_kpa")?,
            row.maybe("typical_kpa")?,
            row.maybe("high_kpa")?,
        ],
        sources: [
            from("low_source")?,
            from("typical_source")?,
            from("high_source")?,
        ],
        strength: undrained.or_else(drained),
        strength_source: from("strength_source").unwrap_or(JUDGEMENT),
    })
}

const JUDGEMENT: Source = Source::judgement("between the tables, which have no row for it");
const NBC: &str = "National Building Code of Canada";
const NBC_EDITION: &str = "2010";

/// The source of a key.
fn source(key: &str) -> Option<Source> {
    let ibc = |row| Source::new("IBC", "2012", row, presumptive::SOURCE.standing);
    let canada = |row| Source::second_hand(NBC, NBC_EDITION, row);
    Some(match key {
        "ibc1" => ibc("Table 1806.2, row 1: crystalline bedrock"),
        "ibc2" => ibc("Table 1806.2, row 2: sedimentary and foliated rock"),
        "ibc3" => ibc("Table 1806.2, row 3: sandy gravel and gravel"),
        "ibc4" => ibc("Table 1806.2, row 4: sand, silty and clayey sand and gravel"),
        "ibc5" => ibc("Table 1806.2, row 5: clay and silt"),
        "nbc" => canada("9.4.4.1, row of this soil"),
        "nbc_till" => canada("9.4.4.1, row of till"),
        "nbc_shale" => canada("9.4.4.1, row of clay shale"),
        "nbc_rock" => canada("9.4.4.1, row of sound rock"),
        "bs8004" => Source::from_memory("BS 8004", "1986", "Table 1"),
        "cfr3285" => {
            Source::from_memory("24 CFR 3285", "", "3285.202, row of loose sand: 1,000 psf")
        }
        "bs5930" => Source::from_memory("BS 5930", "", "strength of clay by its words"),
        "judgement" => JUDGEMENT,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stages::ground::soil_table::{self, Group};

    #[test]
    fn every_soil_that_may_be_presumed_has_a_row_that_reads() {
        for &soil in Soil::ALL {
            let group = soil_table::row(soil).group;
            let row = row(soil);
            assert_eq!(row.is_none(), group == Group::Unfit, "{}", soil.key());
            let Some(row) = row else { continue };
            let [low, typical, high] = row.pressure_kpa;
            assert!(
                low > 0.0 && low <= typical && typical <= high,
                "{}",
                soil.key()
            );
            assert_eq!(
                row.strength.is_none(),
                group == Group::Rock,
                "{}",
                soil.key()
            );
        }
    }

    /// A value that stands in the building code's table is the code's value, and nothing else cites it.
    #[test]
    fn only_what_the_building_code_prints_is_cited_as_the_building_code() {
        for row in Soil::ALL.iter().filter_map(|soil| row(*soil)) {
            for (value, from) in row.pressure_kpa.into_iter().zip(row.sources) {
                // IBC 2012, Table 1806.2, psf of rows 1 to 5.
                let psf = match from
                    .clause
                    .split("row ")
                    .nth(1)
                    .and_then(|rest| rest.chars().next())
                {
                    _ if from.document != "IBC" => continue,
                    Some('1') => 12_000.0,
                    Some('2') => 4_000.0,
                    Some('3') => 3_000.0,
                    Some('4') => 2_000.0,
                    _ => 1_500.0,
                };
                // A pound-force per square foot is 0.047 88 kPa.
                let code_kpa: f64 = psf * 0.047_88;
                assert!((code_kpa - value).abs() < 0.06, "{from}");
            }
        }
        let hard = row(Soil::HardClay).unwrap();
        assert!(hard.sources[1].document.contains("Canada") && hard.pressure_kpa[1] == 200.0);
        let loose = row(Soil::LooseSand).unwrap();
        assert_eq!(
            (loose.pressure_kpa[0], loose.sources[0].document),
            (48.0, "24 CFR 3285")
        );
    }
}
