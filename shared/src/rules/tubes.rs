//! Standard tubes by name: EN 10210-2 and EN 10219-2 sizes, and ASME B36.10M pipe.
//!
//! # Source
//! EN 10210-2 and EN 10219-2, tables of dimensions; ASME B36.10M. The table is `data/tubes.csv`; each row names its
//! standard and how it was met.

use crate::source::{Source, Standing};
use crate::units::{Length, millimetre};

const TABLE: &str = include_str!("../../data/tubes.csv");

/// Where the sizes come from.
pub const SOURCE: Source = Source::new(
    "EN 10210-2, EN 10219-2, ASME B36.10M",
    "",
    "tables of dimensions",
    Standing::SecondHand,
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
}

impl Tube {
    /// Outside diameter.
    #[must_use]
    pub fn outside(&self) -> Length {
        millimetre::new(self.outside_mm)
    }

    /// Wall.
    #[must_use]
    pub fn wall(&self) -> Length {
        millimetre::new(self.wall_mm)
    }
}

/// Every size, by family, diameter and wall.
pub fn all() -> impl Iterator<Item = Tube> {
    TABLE.lines().skip(1).filter_map(row)
}

/// Names of every size, for a list to choose from.
pub fn names() -> impl Iterator<Item = &'static str> {
    all().map(|tube| tube.name)
}

fn row(line: &'static str) -> Option<Tube> {
    let mut cells = line.split(',');
    let name = cells.next()?;
    let outside_mm = cells.next()?.parse().ok()?;
    let wall_mm = cells.next()?.parse().ok()?;
    let family = match cells.next()? {
        "en" => Family::European,
        _ => Family::American,
    };
    Some(Tube {
        name,
        outside_mm,
        wall_mm,
        family,
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
#[must_use]
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

/// The next thicker wall of the same diameter in the European table.
#[must_use]
pub fn thicker(outside_mm: f64, wall_mm: f64) -> Option<Tube> {
    european()
        .filter(|tube| (tube.outside_mm - outside_mm).abs() < 1.0 && tube.wall_mm > wall_mm + 0.05)
        .min_by(|a, b| a.wall_mm.total_cmp(&b.wall_mm))
}

/// The next larger diameter with at least the same wall in the European table.
#[must_use]
pub fn larger(outside_mm: f64, wall_mm: f64) -> Option<Tube> {
    european()
        .filter(|tube| tube.outside_mm > outside_mm + 1.0 && tube.wall_mm > wall_mm - 0.05)
        .min_by(|a, b| {
            a.outside_mm
                .total_cmp(&b.outside_mm)
                .then(a.wall_mm.total_cmp(&b.wall_mm))
        })
}

/// The European sizes with the wall that is usual for their diameter, thinnest tube first.
pub fn usual() -> impl Iterator<Item = Tube> {
    european().filter(|tube| (tube.wall_mm - usual_wall_mm(tube.outside_mm)).abs() < 0.05)
}

/// The wall that is usual for a diameter, mm.
#[must_use]
pub fn usual_wall_mm(outside_mm: f64) -> f64 {
    match outside_mm {
        d if d < 150.0 => 5.0,
        d if d < 300.0 => 6.3,
        d if d < 450.0 => 8.0,
        d if d < 700.0 => 10.0,
        _ => 12.5,
    }
}

/// The sizes that are looked at where a column may be any: the European table.
pub fn stock() -> impl Iterator<Item = Tube> {
    european()
}

fn european() -> impl Iterator<Item = Tube> {
    all().filter(|tube| tube.family == Family::European)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_read_and_every_name_found_again() {
        assert_eq!(all().count(), TABLE.lines().count() - 1);
        assert!(all().all(|tube| by_name(tube.name) == Some(tube)));
        assert!(all().all(|tube| tube.wall_mm < tube.outside_mm / 4.0));
        assert_eq!(by_name("nps 8 sch 40").map(|tube| tube.wall_mm), Some(8.18));
        assert_eq!(by_name("CHS 273 x 8"), by_name("CHS 273.0 x 8"));
    }

    #[test]
    fn walls_and_diameters_go_up_in_steps() {
        assert_eq!(thicker(219.1, 6.3).map(|tube| tube.wall_mm), Some(8.0));
        assert_eq!(larger(219.1, 6.3).map(|tube| tube.outside_mm), Some(244.5));
        assert!(thicker(219.1, 12.5).is_none());
        assert!(
            usual().any(|tube| tube.outside_mm == 219.1) && usual().all(|tube| tube.wall_mm >= 5.0)
        );
    }
}
