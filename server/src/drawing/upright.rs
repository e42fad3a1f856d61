//! What stands on the block, in metres: the column with its plates and studs, and the floor that stands off it. Every view
//! of the whole pier takes it from here.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::site_plan::floor::FloorKind;
use stillground::site_plan::pier::Levelling;
use stillground::units::{Length, metre};

/// Thickness that a deck is drawn with: boards on joists.
const DECK_M: f64 = 0.15;

/// The column with its plates and studs; heights are from ground level.
#[derive(Debug, Clone)]
pub struct Upright {
    /// Top of the block.
    pub upstand: f64,
    /// Half of the base plate's side.
    pub plate_half: f64,
    /// Thickness of the base plate.
    pub plate_thickness: f64,
    /// From the block to the base plate.
    pub gap: f64,
    /// Whether the gap is filled.
    pub grouted: bool,
    /// Half of the tube's diameter.
    pub radius: f64,
    /// From the base plate's underside to the top.
    pub height: f64,
    /// Half of the top plate's side.
    pub top_plate_half: f64,
    /// Thickness of the top plate.
    pub top_plate_thickness: f64,
    /// How deep the studs stand in the block.
    pub embedment: f64,
    /// Length of a stud.
    pub stud_length: f64,
}

/// The floor beside the pier.
#[derive(Debug, Clone)]
pub struct Floor {
    /// Its upper side, from ground level.
    pub level: f64,
    /// Its thickness.
    pub thickness: f64,
    /// From the pier's axis to its edge.
    pub opening_half: f64,
    /// Whether it is a slab.
    pub is_concrete: bool,
}

impl Upright {
    /// Takes it out of the design.
    #[must_use]
    pub fn of(brief: &Brief, design: &Design) -> Self {
        let m = |length: Length| metre::get(length);
        let pier = &design.pier;
        Self {
            upstand: m(design.block.upstand),
            plate_half: m(pier.plate_side) / 2.0,
            plate_thickness: m(pier.plate_thickness),
            gap: m(pier.gap),
            grouted: brief.pier.levelling.value == Levelling::Grout,
            radius: m(pier.outside_diameter) / 2.0,
            height: m(pier.height),
            top_plate_half: m(brief.pier.top_plate_side.value) / 2.0,
            top_plate_thickness: m(brief.pier.top_plate_thickness.value),
            embedment: m(design.anchors.embedment),
            stud_length: m(brief.anchors.length.value),
        }
    }

    /// Underside of the base plate.
    #[must_use]
    pub fn foot(&self) -> f64 {
        self.upstand + self.gap
    }

    /// Top of the column.
    #[must_use]
    pub fn top(&self) -> f64 {
        self.foot() + self.height
    }

    /// Top of the studs.
    #[must_use]
    pub fn stud_top(&self) -> f64 {
        (self.upstand + self.stud_length - self.embedment).max(self.foot() + self.plate_thickness)
    }

    /// The floor, which stands off what passes through it: the block, the plate or the column. None on bare ground.
    #[must_use]
    pub fn floor(&self, brief: &Brief, block_half: f64) -> Option<Floor> {
        let m = |length: Length| metre::get(length);
        let (thickness, is_concrete) = match brief.floor.kind.value {
            FloorKind::Ground => return None,
            FloorKind::Slab => (m(brief.floor.slab_thickness.value), true),
            FloorKind::Deck => (DECK_M, false),
        };
        let level = m(brief.floor.level.value);
        let under = level - thickness;
        let inner = if under < self.upstand {
            block_half
        } else if under < self.foot() + self.plate_thickness {
            self.plate_half
        } else {
            self.radius
        };
        Some(Floor {
            level,
            thickness,
            opening_half: inner + m(brief.floor.gap.value),
            is_concrete,
        })
    }
}
