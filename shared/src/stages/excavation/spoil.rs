//! Spoil: how much there is once dug, where it may lie, and how it goes away.

use crate::brief::Brief;
use crate::figure::{Count, CubicMetre, Metre, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::osha_1926_p_1989::distances;
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::excavation::pit::Pit;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table;
use crate::stock::Stock;
use crate::units::customary::INCH_MM;
use crate::units::{Length, Mass, Volume, cubic_metre, gravity, kilogram, metre};

/// The spoil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spoil {
    /// Volume when dug.
    pub bulked: Volume,
    /// Mass.
    pub mass: Mass,
    /// Volume filled again round the block.
    pub backfill: Volume,
    /// Bulked volume that goes away.
    pub away: Volume,
    /// Width of its heap, a ridge as long as the pit is wide.
    pub heap_width: Length,
    /// Height of that ridge.
    pub heap_height: Length,
    /// Least distance of the heap from the pit's edge.
    pub distance: Length,
    /// Least distance of heavy things from the pit's edge.
    pub load_distance: Length,
    /// Barrow loads.
    pub barrow_loads: u32,
    /// Skips.
    pub skips: u32,
}

/// How many marks of a tape are in a metre: centimetres, or inches.
fn marks_in_a_metre(stock: Stock) -> f64 {
    stock.either(100.0, 1000.0 / INCH_MM)
}
/// Rise over run at which a heap of dug soil lies: 35°.
const HEAP_SLOPE_RATIO: f64 = 0.7;

/// Finds the spoil.
pub fn spoil(brief: &Brief, ground: &Ground, pit: &Pit, block: &Block, notes: &mut Notes) -> Spoil {
    let bulked = pit.volume * ground.bulking_ratio;
    let buried: Volume = block.length * block.width * block.depth;
    let backfill = (pit.volume - buried).max(cubic_metre::new(0.0));
    let away = (pit.volume - backfill) * ground.bulking_ratio;
    let heap_height = heap_height(bulked, pit.top[1]);
    notes.working(
        Working::new(
            "excavation.spoil_volume",
            "Spoil once dug",
            "V_s = b V",
            soil_table::row(brief.site.soil.value).cited(),
        )
        .with("b", ground.bulking_ratio, One)
        .with("V", pit.volume, CubicMetre)
        .gives("V_s", bulked, CubicMetre),
    );
    explain(brief, bulked, load_distance(brief, pit), notes);
    Spoil {
        bulked,
        mass: kilogram::new((pit.volume * ground.unit_weight / gravity()).value),
        backfill,
        away,
        heap_width: heap_height * (2.0 / HEAP_SLOPE_RATIO),
        heap_height,
        distance: spoil_distance(brief.stock.value),
        load_distance: load_distance(brief, pit),
        barrow_loads: loads(bulked, brief.excavation.barrow.value),
        skips: loads(away, brief.excavation.skip.value),
    }
}

/// Height of a ridge of soil along a side of the pit, h = √(s V/l), its width being 2 h/s.
///
/// # Source
/// Derived: a triangle of slope s.
///
/// # Valid for
/// Dry or damp soil; wet silt and clay lie flatter.
pub fn heap_height(volume: Volume, along: Length) -> Length {
    metre::new((HEAP_SLOPE_RATIO * cubic_metre::get(volume) / metre::get(along)).sqrt())
}

fn explain(brief: &Brief, bulked: Volume, load_distance: Length, notes: &mut Notes) {
    let (spoil, barrow) = (
        cubic_metre::get(bulked),
        cubic_metre::get(brief.excavation.barrow.value),
    );
    notes.working(
        Working::new(
            "excavation.barrow_loads",
            "Barrow loads of spoil",
            "n = V_s / v, to the next whole one",
            Source::common_practice("barrow loads of bulked soil"),
        )
        .with("V_s", spoil, Unit::CubicMetre)
        .with("v", barrow, Unit::CubicMetre)
        .gives(
            "n",
            f64::from(loads(bulked, brief.excavation.barrow.value)),
            Count,
        ),
    );
    let distance = metre::get(spoil_distance(brief.stock.value));
    notes.working(
        Working::new(
            "excavation.spoil_distance",
            "Least distance of the spoil from the edge",
            "d = 2 ft, up to the next s",
            distances::SPOIL,
        )
        .with("s", 1.0 / marks_in_a_metre(brief.stock.value), Unit::Metre)
        .gives("d", distance, Unit::Metre),
    );
    notes.working(
        Working::new(
            "excavation.load_distance",
            "Least distance of heavy things from the edge",
            "d = h − r, at least the spoil's; r the run of the side",
            Source::common_practice("loads stay outside the 45 degree line from the pit's foot"),
        )
        .gives("d", load_distance, Metre),
    );
}

/// The rule's distance, up to the next whole centimetre or inch: what a tape shows.
fn spoil_distance(stock: Stock) -> Length {
    let exact = metre::get(distances::spoil_from_edge());
    let marks = marks_in_a_metre(stock);
    metre::new((exact * marks - 1e-9).ceil() / marks)
}

/// Heavy things stay outside the line that rises at 45° from the foot of the side, and never nearer than the spoil.
fn load_distance(brief: &Brief, pit: &Pit) -> Length {
    let run = (pit.top[0] - pit.bottom[0]) * 0.5;
    (pit.depth - run).max(spoil_distance(brief.stock.value))
}

/// Whole loads of a volume.
fn loads(volume: Volume, load: Volume) -> u32 {
    (volume.value / load.value)
        .ceil()
        .clamp(0.0, f64::from(u32::MAX)) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_spoil_lies_as_far_off_as_a_tape_shows_and_no_nearer_than_the_rule() {
        assert_eq!(metre::get(spoil_distance(Stock::Metric)), 0.61);
        assert!(spoil_distance(Stock::Inch) >= distances::spoil_from_edge());
    }

    #[test]
    fn a_heap_is_a_ridge() {
        let height = metre::get(heap_height(cubic_metre::new(1.5), metre::new(1.0)));
        let width = 2.0 * height / HEAP_SLOPE_RATIO;
        assert!((0.5 * width * height - 1.5).abs() < 1e-12);
        assert_eq!(loads(cubic_metre::new(1.3), cubic_metre::new(0.065)), 20);
    }
}
