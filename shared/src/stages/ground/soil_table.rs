//! The table of soils: what is taken for each soil word, read from `data/soils.csv`, each row with its source.

use serde::Serialize;

use crate::rules::osha_1926_p_1989::slopes::SlopeType;
use crate::site_plan::site::Soil;
use crate::source::{Source, Standing};
use crate::table::{Row, Table};

/// The table, one soil a line; the last column says where the row's figures come from.
pub static TABLE: Table = Table::new("soils.csv", include_str!("../../../data/soils.csv"));

/// Source of a figure that is taken from the table.
pub const SOURCE: Source = Source::new(
    "Table of soils",
    "1",
    "data/soils.csv, column source",
    Standing::Judgement,
);

/// Kind of ground: which formulas hold for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Group {
    /// Clay.
    Clay,
    /// Silt.
    Silt,
    /// Sand.
    Sand,
    /// Gravel.
    Gravel,
    /// Rock.
    Rock,
    /// Not to be built on by presumption.
    Unfit,
}

impl Group {}

/// One row of the table, in the units of its columns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoilRow {
    /// Kind of ground.
    pub group: Group,
    /// Speed of shear waves at 1 m depth above the groundwater, m/s: the 5th, 50th and 95th of a hundred such soils.
    pub speed_m_s: Option<[f64; 3]>,
    /// Unit weight above the groundwater, kN/m³.
    pub unit_weight_kn_m3: f64,
    /// Unit weight below the groundwater, kN/m³.
    pub wet_unit_weight_kn_m3: f64,
    /// Poisson's ratio above the groundwater, low, typical, high.
    pub poisson_ratio: [f64; 3],
    /// Poisson's ratio below the groundwater, low, typical, high.
    pub wet_poisson_ratio: [f64; 3],
    /// Type for the slope of a pit's side.
    pub slope_type: SlopeType,
    /// Volume dug over volume in the ground.
    pub bulking_ratio: f64,
    /// Dry density, kg/m³.
    pub dry_density_kg_m3: f64,
    /// Mass of water over mass of dry soil.
    pub water_content_ratio: f64,
    /// Thermal conductivity when frozen, W/(m K).
    pub frozen_conductivity_w_mk: f64,
    /// Where the row's figures come from.
    pub source: &'static str,
}

/// The row of a soil. A row that is missing or cannot be read is taken as ground not to be built on, which a test of
/// the whole table shows never to happen.
pub fn row(soil: Soil) -> SoilRow {
    TABLE.row(soil.key()).and_then(read).unwrap_or(UNREADABLE)
}

impl SoilRow {
    /// The row as a source: the last column says where each of its figures comes from.
    pub const fn cited(&self) -> Source {
        Source::new("Table of soils", "1", self.source, Standing::Judgement)
    }
}

/// The soil's name as it stands in a sentence.
pub fn words(soil: Soil) -> String {
    soil.key().replace('_', " ")
}

const UNREADABLE: SoilRow = SoilRow {
    group: Group::Unfit,
    speed_m_s: None,
    unit_weight_kn_m3: 18.0,
    wet_unit_weight_kn_m3: 18.0,
    poisson_ratio: [0.35; 3],
    wet_poisson_ratio: [0.35; 3],
    slope_type: SlopeType::C,
    bulking_ratio: 1.3,
    dry_density_kg_m3: 1500.0,
    water_content_ratio: 0.1,
    frozen_conductivity_w_mk: 2.0,
    source: "",
};

/// Reads one row; none when a column is missing or is no number.
fn read(row: &'static Row) -> Option<SoilRow> {
    let three = |columns: [&'static str; 3]| {
        let [low, typical, high] = columns.map(|column| row.maybe(column));
        Some([low?, typical?, high?])
    };
    Some(SoilRow {
        group: group(row.text("group"))?,
        speed_m_s: three(["vs_low_m_s", "vs_typical_m_s", "vs_high_m_s"]),
        unit_weight_kn_m3: row.maybe("unit_weight_kn_m3")?,
        wet_unit_weight_kn_m3: row.maybe("wet_unit_weight_kn_m3")?,
        poisson_ratio: three(["poisson_low", "poisson_ratio", "poisson_high"])?,
        wet_poisson_ratio: three(["wet_poisson_low", "wet_poisson_ratio", "wet_poisson_high"])?,
        slope_type: slope_type(row.text("slope_type"))?,
        bulking_ratio: row.maybe("bulking_ratio")?,
        dry_density_kg_m3: row.maybe("dry_density_kg_m3")?,
        water_content_ratio: row.maybe("water_content_ratio")?,
        frozen_conductivity_w_mk: row.maybe("frozen_conductivity_w_mk")?,
        source: row.text("source"),
    })
}

fn group(word: &str) -> Option<Group> {
    Some(match word {
        "clay" => Group::Clay,
        "silt" => Group::Silt,
        "sand" => Group::Sand,
        "gravel" => Group::Gravel,
        "rock" => Group::Rock,
        "unfit" => Group::Unfit,
        _ => return None,
    })
}

fn slope_type(word: &str) -> Option<SlopeType> {
    Some(match word {
        "rock" => SlopeType::StableRock,
        "A" => SlopeType::A,
        "B" => SlopeType::B,
        "C" => SlopeType::C,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_soil_has_a_row_that_reads() {
        assert_eq!(TABLE.rows().len(), Soil::ALL.len(), "one line a soil");
        for &soil in Soil::ALL {
            let row = row(soil);
            assert!(
                !row.source.is_empty(),
                "{}: no row, or a column of it does not read",
                soil.key()
            );
            assert_eq!(
                row.speed_m_s.is_none(),
                row.group == Group::Unfit,
                "{}",
                soil.key()
            );
        }
    }

    #[test]
    fn low_typical_and_high_are_in_order() {
        for &soil in Soil::ALL {
            let row = row(soil);
            if let Some([low, typical, high]) = row.speed_m_s {
                assert!(
                    low > 0.0 && low <= typical && typical <= high,
                    "{}",
                    soil.key()
                );
            }
            assert!(
                row.wet_unit_weight_kn_m3 >= row.unit_weight_kn_m3
                    && row.wet_poisson_ratio >= row.poisson_ratio
            );
            for poisson in [row.poisson_ratio, row.wet_poisson_ratio] {
                assert!(poisson.is_sorted() && poisson[0] > 0.0 && poisson[2] < 0.5);
            }
            assert!((1.0..=1.8).contains(&row.bulking_ratio) && row.wet_poisson_ratio[1] <= 0.49);
        }
    }
}
