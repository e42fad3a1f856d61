//! The catalogue by kind of part: which rows of it belong to a family, and which of them is nearest.
//!
//! # Source
//! The tables of `shared/data`; each row names its standard and how that was met.

use crate::figure::Unit;
use crate::stock::Stock;
use crate::table::{Row, Table};
use crate::units::{Length, millimetre};

macro_rules! tables {
    ($($(#[$doc:meta])* $name:ident = $file:literal;)*) => {
        $($(#[$doc])* pub static $name: Table =
            Table::new($file, include_str!(concat!("../../data/", $file)));)*
        /// Every table that names a family in a column `stock`.
        pub static TABLES: &[&Table] = &[$(&$name,)*];
    };
}

tables! {
    /// Classes of concrete.
    CONCRETES = "concretes.csv";
    /// Steels of column and plates.
    COLUMN_STEELS = "column_steels.csv";
    /// Thicknesses of plate.
    PLATES = "plates.csv";
    /// Reinforcing bars and mesh.
    BARS = "bars.csv";
    /// Cements.
    CEMENTS = "cements.csv";
    /// Bags, lengths, sheets, boards, cartridges, mixers.
    GOODS = "goods.csv";
}

/// The rows of a family in a table.
pub fn rows(table: &'static Table, stock: Stock) -> impl Iterator<Item = &'static Row> {
    table
        .rows()
        .iter()
        .filter(move |row| row.text("stock") == stock.key())
}

/// Something that is sold in one size, by its name and family, in the row's unit; not a number where there is no such row.
pub fn size(name: &str, stock: Stock) -> f64 {
    good(name, stock).map_or(f64::NAN, |row| row.value("value"))
}

/// The same as it is asked for at a counter.
pub fn says(name: &str, stock: Stock) -> &'static str {
    good(name, stock).map_or("", |row| row.text("says"))
}

/// The unit of its row.
pub fn unit(name: &str, stock: Stock) -> Option<Unit> {
    Some(match good(name, stock)?.text("unit") {
        "kg" => Unit::Kilogram,
        "ml" => Unit::Millilitre,
        "l" => Unit::Litre,
        "m3" => Unit::CubicMetre,
        "m" => Unit::Metre,
        "mm" => Unit::Millimetre,
        _ => return None,
    })
}

/// What something of this size is asked for by, where a row has it.
pub fn near_size(stock: Stock, unit: Unit, value: f64) -> Option<&'static str> {
    near_row(stock, unit, value).map(|row| row.text("says"))
}

/// The row of this size.
pub fn near_row(stock: Stock, unit: Unit, value: f64) -> Option<&'static Row> {
    rows(&GOODS, stock)
        .filter(|row| self::unit(row.name(), stock) == Some(unit))
        .find(|row| (row.value("value") - value).abs() < 1e-3 * value.abs())
}

fn good(name: &str, stock: Stock) -> Option<&'static Row> {
    rows(&GOODS, stock).find(|row| row.name() == name)
}

/// The row whose size in a column is this, within a tolerance.
pub fn near(
    table: &'static Table,
    stock: Stock,
    column: &'static str,
    value: f64,
    by: f64,
) -> Option<&'static Row> {
    rows(table, stock).find(|row| (row.value(column) - value).abs() <= by)
}

/// The mesh of a family that makes up so much steel in the fewest layers, the lightest of them, and how many layers that is.
pub fn mesh_at_least(stock: Stock, area_mm2_m: f64) -> Option<(&'static Row, f64)> {
    rows(&BARS, stock)
        .filter(|row| row.text("form") == "mesh")
        .filter_map(|row| {
            let each = row.value("area_mm2") * 1000.0 / row.value("spacing_mm");
            let layers = (area_mm2_m / each - 1e-6).ceil();
            layers.is_finite().then(|| (row, layers.max(1.0), each))
        })
        .min_by(|a, b| a.1.total_cmp(&b.1).then(a.2.total_cmp(&b.2)))
        .map(|(row, layers, _)| (row, layers))
}

/// The cement of a family that hardens so fast, the usual one first.
pub fn cement(stock: Stock, hardens: &str) -> Option<&'static Row> {
    rows(&CEMENTS, stock).find(|row| row.text("hardens") == hardens)
}

/// The thinnest plate that is sold and at least so thick; the thickest where none is.
pub fn plate_at_least(stock: Stock, thickness: Length) -> Option<&'static Row> {
    let wanted = millimetre::get(thickness) - 1e-6;
    let mut last = None;
    for row in rows(&PLATES, stock) {
        let enough = row.value("thickness_mm") >= wanted;
        last = Some(row);
        if enough {
            break;
        }
    }
    last
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn every_row_has_a_family_a_source_and_how_it_was_met() {
        let mut looked_at = 0;
        for table in TABLES {
            for row in table.rows() {
                assert!(
                    Stock::from_key(row.text("stock")).is_some(),
                    "{}: {}",
                    table.file,
                    row.name()
                );
                assert!(
                    !row.text("source").is_empty() && !row.text("standing").is_empty(),
                    "{}: {}",
                    table.file,
                    row.name()
                );
                looked_at += 1;
            }
        }
        assert!(looked_at > 100, "only {looked_at} rows");
    }

    #[test]
    fn what_one_family_sells_in_a_size_the_other_sells_too() {
        let names = |stock| -> Vec<&str> {
            rows(&GOODS, stock)
                .map(Row::name)
                .filter(|name| !name.chars().any(|c| c.is_ascii_digit()))
                .collect::<Vec<_>>()
        };
        assert!(names(Stock::Metric).len() > 15);
        for name in names(Stock::Metric) {
            assert!(size(name, Stock::Inch).is_finite(), "{name}");
            assert!(!says(name, Stock::Inch).is_empty(), "{name}");
        }
        assert!(size("a hogshead", Stock::Inch).is_nan());
    }

    #[test]
    fn a_plate_is_the_next_thicker_one_that_is_sold() {
        let name = |mm: f64| plate_at_least(Stock::Inch, millimetre::new(mm)).map(Row::name);
        assert_eq!(name(19.0), Some("3/4 in"));
        assert_eq!(name(20.0), Some("7/8 in"));
        assert_eq!(name(500.0), Some("3 in"));
    }

    /// 565 mm² on a metre is 12 mm at 200: two layers of 10 mm at 200 (393 each). 635 is #4 at 8 in: three of 4×4 W4 (254 each).
    #[test]
    fn mesh_makes_up_the_steel_of_the_bars_in_whole_layers() {
        let mesh =
            |stock, area| mesh_at_least(stock, area).map(|(row, layers)| (row.name(), layers));
        assert_eq!(mesh(Stock::Metric, 565.0), Some(("B500A 200 x 10", 2.0)));
        assert_eq!(mesh(Stock::Metric, 200.0), Some(("B500A 200 x 8", 1.0)));
        assert_eq!(mesh(Stock::Inch, 635.0), Some(("4x4 W4", 3.0)));
        assert_eq!(mesh(Stock::Inch, 100.0), Some(("6x6 W2.9", 1.0)));
        assert_eq!(mesh(Stock::Inch, f64::NAN), None);
    }

    #[test]
    fn each_hardening_has_a_cement_in_both_families() {
        for stock in [Stock::Metric, Stock::Inch] {
            for hardens in ["slow", "normal", "rapid"] {
                assert!(cement(stock, hardens).is_some(), "{stock:?} {hardens}");
            }
        }
    }

    /// ASTM A615 Table 1: 0.11, 0.20, 0.31, 0.44, 0.60 and 0.79 sq in; a circle of the nominal diameter has as much within
    /// 2 % of it (the standard rounds).
    #[test]
    fn bars_have_the_area_of_their_diameter() {
        for row in BARS.rows() {
            let d = row.value("diameter_mm");
            let circle = std::f64::consts::FRAC_PI_4 * d * d;
            assert!(
                (circle - row.value("area_mm2")).abs() < 0.02 * circle,
                "{}: {circle}",
                row.name()
            );
        }
    }
}
