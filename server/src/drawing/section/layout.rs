//! What the section shows, in metres from ground level on the pier's axis.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Units;
use stillground::site_plan::block::FrostRemedy;
use stillground::site_plan::pier::Fill;
use stillground::stages::block::DOWELS_FROM_FACE_M;
use stillground::units::{Length, metre};

use super::words::{self, Words};
use crate::drawing::hatch::Hatch;
use crate::drawing::upright::{Floor, Upright};

/// What the section shows.
#[derive(Debug, Clone)]
pub struct Layout {
    pub(super) units: Units,
    pub(super) half_length: f64,
    pub(super) depth: f64,
    pub(super) pier: Upright,
    pub(super) pit_top_half: f64,
    pub(super) pit_bottom_half: f64,
    pub(super) contact: (f64, f64),
    pub(super) wall: f64,
    pub(super) fill: Option<Hatch>,
    pub(super) stud_xs: Vec<f64>,
    pub(super) hole_depth: f64,
    pub(super) hole_radius: f64,
    pub(super) floor: Option<Floor>,
    pub(super) frost: f64,
    pub(super) guard: Option<Guard>,
    pub(super) dowels: Option<DowelLines>,
    pub(super) water: Option<f64>,
    pub(super) duct_diameter: Option<f64>,
    pub(super) words: Words,
}

/// What keeps frost off the block's sides, in metres.
#[derive(Debug, Clone, Copy)]
pub struct Guard {
    pub(super) remedy: FrostRemedy,
    pub(super) width: f64,
    pub(super) depth: f64,
    pub(super) thickness: f64,
}

/// Dowels as lines: beside the axis, up into the block and down into the rock, in metres.
#[derive(Debug, Clone, Copy)]
pub struct DowelLines {
    pub(super) count: u32,
    pub(super) diameter: f64,
    pub(super) beside: f64,
    pub(super) up: f64,
    pub(super) down: f64,
}

fn dowels(design: &Design) -> Option<DowelLines> {
    let (block, dowels) = (&design.block, design.block.dowels?);
    Some(DowelLines {
        count: dowels.count,
        diameter: metre::get(dowels.diameter),
        beside: (metre::get(block.length) / 2.0 - DOWELS_FROM_FACE_M).max(0.05),
        up: metre::get(dowels.in_block),
        down: metre::get(dowels.length),
    })
}

fn guard(design: &Design) -> Option<Guard> {
    let frost = &design.block.side_frost;
    (frost.remedy != FrostRemedy::None && frost.depth > metre::new(0.0)).then(|| Guard {
        remedy: frost.remedy,
        width: metre::get(frost.width),
        depth: metre::get(frost.depth),
        thickness: metre::get(frost.thickness),
    })
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    let m = |length: Length| metre::get(length);
    let (block, pier, pit, anchors) = (
        &design.block,
        &design.pier,
        &design.excavation,
        &design.anchors,
    );
    let half_length = m(block.length) / 2.0;
    let mut layout = Layout {
        units: brief.units,
        half_length,
        depth: m(block.depth),
        pier: Upright::of(brief, design),
        pit_top_half: (m(pit.length) / 2.0).max(half_length),
        pit_bottom_half: (m(pit.bottom_length) / 2.0).max(half_length),
        contact: (m(block.side_contact_from), m(block.side_contact_to)),
        wall: m(pier.wall),
        fill: fill(brief.pier.fill.value),
        stud_xs: stud_xs(design),
        hole_depth: m(anchors.hole_depth),
        hole_radius: m(anchors.hole_diameter) / 2.0,
        floor: None,
        frost: m(design.ground.frost_depth),
        guard: guard(design),
        dowels: dowels(design),
        water: design.ground.groundwater_depth.map(m),
        duct_diameter: (brief.block.duct_count.value >= 1.0)
            .then(|| m(brief.block.duct_diameter.value)),
        words: Words::default(),
    };
    layout.floor = layout.pier.floor(brief, layout.half_length);
    layout.words = words::words(brief, design, &layout);
    layout
}

fn fill(fill: Fill) -> Option<Hatch> {
    match fill {
        Fill::None => None,
        Fill::Sand => Some(Hatch::Sand),
        Fill::Concrete => Some(Hatch::Concrete),
    }
}

/// Where studs are seen from the south, each place once.
fn stud_xs(design: &Design) -> Vec<f64> {
    let mut xs: Vec<f64> = design
        .anchors
        .studs
        .iter()
        .map(|stud| metre::get(stud.x))
        .collect();
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|a, b| (*a - *b).abs() < 1e-4);
    xs
}

impl Layout {
    /// Highest thing drawn.
    pub(super) fn top(&self) -> f64 {
        self.floor
            .as_ref()
            .map_or(0.0, |floor| floor.level)
            .max(self.pier.top())
            .max(self.pier.stud_top())
    }

    /// Half the width that must be on the drawing.
    pub(super) fn reach(&self) -> f64 {
        self.pit_top_half
            .max(self.pier.plate_half)
            .max(self.pier.top_plate_half)
            .max(self.floor.as_ref().map_or(0.0, |floor| floor.opening_half))
            .max(
                self.guard
                    .map_or(0.0, |guard| self.half_length + guard.width),
            )
    }

    pub(super) fn is_battered(&self) -> bool {
        self.pit_top_half > self.half_length + 1e-6
    }

    /// Half the pit's width at a depth, where undisturbed ground begins.
    pub(super) fn side_at(&self, depth: f64) -> f64 {
        let share = if self.depth > 0.0 {
            (depth / self.depth).clamp(0.0, 1.0)
        } else {
            0.0
        };
        self.pit_top_half + (self.pit_bottom_half - self.pit_top_half) * share
    }

    /// A level, when it lies within the drawing.
    pub(super) fn drawn_level(&self, depth: Option<f64>) -> Option<f64> {
        depth.filter(|&depth| depth > 0.0 && depth <= self.depth)
    }

    /// The holes, as pairs of opposite corners.
    pub(super) fn holes(&self) -> impl Iterator<Item = ((f64, f64), (f64, f64))> {
        self.stud_xs.iter().map(|&x| {
            (
                (x - self.hole_radius, self.pier.upstand),
                (x + self.hole_radius, self.pier.upstand - self.hole_depth),
            )
        })
    }

    /// Axis of a duct from the block's side up into the column, bent where it turns.
    pub(super) fn duct(&self) -> Option<Vec<(f64, f64)>> {
        let diameter = self.duct_diameter?;
        let bend = (6.0 * diameter).min(self.half_length).min(self.depth * 0.5);
        let below = bend.max(0.45f64.min(self.depth * 0.6));
        let mut path = vec![(self.half_length, -below)];
        for step in 0..=8 {
            let (sin, cos) = (f64::from(step) * std::f64::consts::FRAC_PI_2 / 8.0).sin_cos();
            path.push((bend * (1.0 - sin), -below + bend * (1.0 - cos)));
        }
        path.push((0.0, self.pier.foot() + self.pier.plate_thickness));
        Some(path)
    }
}
