//! Standard tubes by name: EN 10210-2 and EN 10219-2 sizes, and ASME B36.10M pipe.
//!
//! # Source
//! EN 10210-2 and EN 10219-2, tables of dimensions; ASME B36.10M. The table is `data/tubes.csv`; each row names its
//! standard and how it was met.

use crate::source::Source;
use crate::stock::Stock;
use crate::table::{Row, Table};
use crate::units::{Length, millimetre};

static TABLE: Table = Table::new("tubes.csv", include_str!("../../data/tubes.csv"));

/// Where the sizes come from.
pub const SOURCE: Source = Source::second_hand(
    "EN 10210-2, EN 10219-2, ASME B36.10M",
    "",
    "tables of dimensions",
);

/// Which family of sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// European hollow sections.
    European,
    /// American pipe.
    American,
}

/// One size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tube {
    /// Its name, for instance `CHS 219.1 x 6.3` or `NPS 8 Sch 40`.
    pub name: &'static str,
    /// Outside diameter, mm.
    pub outside_mm: f64,
    /// Wall, mm.
    pub wall_mm: f64,
    /// Family.
    pub family: Family,
    /// Outside diameter and wall as they are asked for where inches are sold, for instance `8 5/8` and `0.322`.
    pub inches: Option<(&'static str, &'static str)>,
    /// The standard that its row names.
    pub standard: &'static str,
}

impl Family {
    /// The family of tubes that a yard of this stock keeps.
    pub fn of(stock: Stock) -> Self {
        stock.either(Self::European, Self::American)
    }
}

impl Tube {
    /// A tube of no row, with sizes of its own.
    pub fn own(outside_mm: f64, wall_mm: f64) -> Self {
        Self {
            name: "",
            outside_mm,
            wall_mm,
            family: Family::European,
            inches: None,
            standard: "",
        }
    }

    /// Outside diameter.
    pub fn outside(&self) -> Length {
        millimetre::new(self.outside_mm)
    }

    /// Wall.
    pub fn wall(&self) -> Length {
        millimetre::new(self.wall_mm)
    }
}

/// Every size, by family, diameter and wall.
pub fn all() -> impl Iterator<Item = Tube> {
    TABLE.rows().iter().filter_map(tube)
}

/// Names of every size, for a list to choose from.
pub fn names() -> impl Iterator<Item = &'static str> {
    all().map(|tube| tube.name)
}

fn tube(row: &'static Row) -> Option<Tube> {
    let family = match row.text("family") {
        "en" => Family::European,
        _ => Family::American,
    };
    let inches = (row.text("outside_in"), row.text("wall_in"));
    Some(Tube {
        name: row.name(),
        outside_mm: row.maybe("outside_diameter_mm")?,
        wall_mm: row.maybe("wall_mm")?,
        family,
        inches: (!inches.0.is_empty()).then_some(inches),
        standard: row.text("source"),
    })
}

/// The size of a name, however its spaces, letters and multiplication sign are written.
///
/// # Example
/// ```
/// use stillground::rules::tubes::by_name;
/// assert_eq!(by_name("chs 219.1×6.3").map(|tube| tube.outside_mm), Some(219.1));
/// assert!(by_name("CHS 1 x 1").is_none());
/// ```
pub fn by_name(name: &str) -> Option<Tube> {
    let wanted = plain(name);
    all().find(|tube| plain(tube.name) == wanted)
}

fn plain(name: &str) -> String {
    name.chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| {
            if c == '×' {
                'x'
            } else {
                c.to_ascii_lowercase()
            }
        })
        .collect::<String>()
        .replace(".0x", "x")
}

/// Two sizes that are told apart on the same tube, mm: closer ones are one size, written in another unit.
const SAME_MM: f64 = 0.2;

/// The size of a family with this outside diameter and wall.
pub fn sold(stock: Stock, outside_mm: f64, wall_mm: f64) -> Option<Tube> {
    stocked(stock)
        .filter(|tube| {
            (tube.outside_mm - outside_mm).abs() < SAME_MM
                && (tube.wall_mm - wall_mm).abs() < SAME_MM / 4.0
        })
        .min_by(|a, b| {
            let off = |tube: &Tube| (tube.wall_mm - wall_mm).abs();
            off(a).total_cmp(&off(b))
        })
}

/// The next thicker wall of the same diameter in the family's table.
pub fn thicker(stock: Stock, outside_mm: f64, wall_mm: f64) -> Option<Tube> {
    stocked(stock)
        .filter(|tube| (tube.outside_mm - outside_mm).abs() < 1.0 && tube.wall_mm > wall_mm + 0.05)
        .min_by(|a, b| a.wall_mm.total_cmp(&b.wall_mm))
}

/// The next larger diameter with at least the same wall in the family's table.
pub fn larger(stock: Stock, outside_mm: f64, wall_mm: f64) -> Option<Tube> {
    stocked(stock)
        .filter(|tube| tube.outside_mm > outside_mm + 1.0 && tube.wall_mm > wall_mm - 0.05)
        .min_by(|a, b| {
            a.outside_mm
                .total_cmp(&b.outside_mm)
                .then(a.wall_mm.total_cmp(&b.wall_mm))
        })
}

/// The family's sizes with the wall that is usual for their diameter, thinnest tube first.
pub fn usual(stock: Stock) -> impl Iterator<Item = Tube> {
    stocked(stock)
        .filter(move |tube| (tube.wall_mm - usual_wall_mm(stock, tube.outside_mm)).abs() < 0.05)
}

/// The wall that is usual for a diameter, mm; of pipe the standard weight, which is schedule 40 up to 10 in.
pub fn usual_wall_mm(stock: Stock, outside_mm: f64) -> f64 {
    if stock == Stock::Inch {
        return match outside_mm {
            d if d < 100.0 => 5.49,
            d if d < 130.0 => 6.02,
            d if d < 155.0 => 6.55,
            d if d < 200.0 => 7.11,
            d if d < 250.0 => 8.18,
            d if d < 300.0 => 9.27,
            _ => 9.53,
        };
    }
    match outside_mm {
        d if d < 150.0 => 5.0,
        d if d < 300.0 => 6.3,
        d if d < 450.0 => 8.0,
        d if d < 700.0 => 10.0,
        _ => 12.5,
    }
}

/// The sizes that a family sells.
pub fn stocked(stock: Stock) -> impl Iterator<Item = Tube> {
    let family = Family::of(stock);
    all().filter(move |tube| tube.family == family)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_read_and_every_name_found_again() {
        assert_eq!(all().count(), TABLE.rows().len());
        assert!(all().all(|tube| by_name(tube.name) == Some(tube)));
        assert!(all().all(|tube| tube.wall_mm < tube.outside_mm / 4.0));
        assert_eq!(by_name("nps 8 sch 40").map(|tube| tube.wall_mm), Some(8.18));
        assert_eq!(by_name("CHS 273 x 8"), by_name("CHS 273.0 x 8"));
    }

    #[test]
    fn walls_and_diameters_go_up_in_steps() {
        assert_eq!(
            thicker(Stock::Metric, 219.1, 6.3).map(|tube| tube.wall_mm),
            Some(8.0)
        );
        assert_eq!(
            larger(Stock::Metric, 219.1, 6.3).map(|tube| tube.outside_mm),
            Some(244.5)
        );
        assert!(thicker(Stock::Metric, 219.1, 12.5).is_none());
        assert!(
            usual(Stock::Metric).any(|tube| tube.outside_mm == 219.1)
                && usual(Stock::Metric).all(|tube| tube.wall_mm >= 5.0)
        );
        let names: Vec<&str> = usual(Stock::Inch).map(|tube| tube.name).collect();
        assert_eq!(names.len(), 14, "{names:?}");
        assert!(names.contains(&"NPS 8 Sch 40") && names.contains(&"NPS 12 STD"));
        let next = larger(Stock::Inch, 219.1, 8.18).and_then(|tube| tube.inches);
        assert_eq!(next, Some(("10 3/4", "0.365")));
    }

    /// ASME B36.10M: to NPS 12 the name is less than the outside diameter, from NPS 14 it is the outside diameter in inches.
    #[test]
    fn pipe_is_named_by_its_bore_to_twelve_inches_and_by_its_outside_from_fourteen() {
        let mut wide = 0;
        for tube in stocked(Stock::Inch) {
            let name: f64 = tube.name.split(' ').nth(1).unwrap().parse().unwrap();
            let outside = tube.outside_mm / 25.4;
            if name >= 14.0 {
                assert!((outside - name).abs() < 0.02, "{}: {outside}", tube.name);
                assert_eq!(tube.inches.unwrap().0, name.to_string());
                wide += 1;
            } else {
                assert!(outside > name + 0.4, "{}: {outside}", tube.name);
            }
        }
        assert_eq!(wide, 14);
    }

    #[test]
    fn a_size_typed_in_inches_is_the_row_that_the_standard_prints_in_millimetres() {
        let found = sold(Stock::Inch, 8.625 * 25.4, 0.322 * 25.4).map(|tube| tube.name);
        assert_eq!(found, Some("NPS 8 Sch 40"));
        assert!(sold(Stock::Inch, 219.1, 8.0).is_none());
        assert!(sold(Stock::Metric, 219.1, 8.0).is_some());
    }
}
