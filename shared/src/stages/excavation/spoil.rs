//! Spoil: how much there is once dug, where it may lie, and how it goes away.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::osha_1926_p_1989::distances;
use crate::stages::block::Block;
use crate::stages::excavation::pit::Pit;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table;
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
    /// Diameter of its heap.
    pub heap_diameter: Length,
    /// Least distance of the heap from the pit's edge.
    pub distance: Length,
    /// Least distance of heavy things from the pit's edge.
    pub load_distance: Length,
    /// Barrow loads.
    pub barrow_loads: u32,
    /// Skips.
    pub skips: u32,
}

/// Angle at which a heap of dug soil lies, degrees.
const HEAP_SLOPE_DEG: f64 = 35.0;

/// Finds the spoil.
pub fn spoil(brief: &Brief, ground: &Ground, pit: &Pit, block: &Block, notes: &mut Notes) -> Spoil {
    let bulked = pit.volume * ground.bulking_ratio;
    let buried: Volume = block.length * block.width * block.depth;
    let backfill = (pit.volume - buried).max(cubic_metre::new(0.0));
    let away = (pit.volume - backfill) * ground.bulking_ratio;
    notes.working(
        Working::new("excavation.spoil_volume", "Spoil once dug", "V_s = b V", soil_table::SOURCE)
            .with("b", ground.bulking_ratio, Unit::One)
            .with("V", cubic_metre::get(pit.volume), Unit::CubicMetre)
            .gives("V_s", cubic_metre::get(bulked), Unit::CubicMetre),
    );
    Spoil {
        bulked,
        mass: kilogram::new((pit.volume * ground.unit_weight / gravity()).value),
        backfill,
        away,
        heap_diameter: heap_diameter(bulked),
        distance: distances::spoil_from_edge(),
        load_distance: load_distance(pit),
        barrow_loads: loads(bulked, brief.excavation.barrow.value),
        skips: loads(away, brief.excavation.skip.value),
    }
}

/// Diameter of a cone of soil, from V = π r³ tan φ/3.
#[must_use]
pub fn heap_diameter(volume: Volume) -> Length {
    let cube = 3.0 * cubic_metre::get(volume) / (std::f64::consts::PI * HEAP_SLOPE_DEG.to_radians().tan());
    metre::new(2.0 * cube.cbrt())
}

/// Heavy things stay outside the line that rises at 45° from the foot of the side, and never nearer than the spoil.
fn load_distance(pit: &Pit) -> Length {
    let run = (pit.top[0] - pit.bottom[0]) * 0.5;
    (pit.depth - run).max(distances::spoil_from_edge())
}

/// Whole loads of a volume.
fn loads(volume: Volume, load: Volume) -> u32 {
    (volume.value / load.value).ceil().clamp(0.0, f64::from(u32::MAX)) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heap_is_a_cone() {
        let diameter = metre::get(heap_diameter(cubic_metre::new(1.5)));
        let radius = diameter / 2.0;
        let volume = std::f64::consts::PI * radius.powi(3) * 35f64.to_radians().tan() / 3.0;
        assert!((volume - 1.5).abs() < 1e-12);
        assert_eq!(loads(cubic_metre::new(1.3), cubic_metre::new(0.065)), 20);
    }
}
