//! What the picture shows, in metres: x to the east, y to the north, z upwards from ground level on the pier's axis.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::stages::ground::soil_table::Group;
use stillground::units::{Length, metre};

use crate::drawing::upright::{self, Upright};

/// What the picture shows.
#[derive(Debug, Clone)]
pub struct Layout {
    /// Half of the block from west to east and from south to north.
    pub(super) block: (f64, f64),
    pub(super) depth: f64,
    pub(super) pier: Upright,
    /// Half of the pit at the top, and at its bottom.
    pub(super) pit: [(f64, f64); 2],
    pub(super) studs: Vec<[f64; 2]>,
    pub(super) load: Load,
    pub(super) floor: Option<Floor>,
    pub(super) layers: Layers,
    /// How far off people do no harm, where that is known and is not everywhere.
    pub(super) quiet: Option<f64>,
    /// How far to the west of the axis the person stands.
    pub(super) person: f64,
    /// Half of the piece of ground that is drawn.
    pub(super) reach: f64,
}

/// What the pier carries, as a plain tube on a plain head.
#[derive(Debug, Clone, Copy)]
pub struct Load {
    /// Centre above the top plate.
    pub(super) centre: f64,
    pub(super) radius: f64,
    pub(super) half_length: f64,
    pub(super) head_radius: f64,
}

/// The floor round the pier.
#[derive(Debug, Clone)]
pub struct Floor {
    pub(super) beside: upright::Floor,
    /// Half of it from west to east and from south to north.
    pub(super) half: (f64, f64),
    pub(super) posts: Vec<[f64; 2]>,
}

/// Depths in the ground; none where not known, or not there.
#[derive(Debug, Clone, Copy)]
pub struct Layers {
    pub(super) topsoil: Option<f64>,
    /// Where rock begins; nought where all of it is rock.
    pub(super) rock: Option<f64>,
    pub(super) water: Option<f64>,
}

/// Ground drawn beyond the pit, at least and at most.
const BEYOND_PIT_M: (f64, f64) = (0.35, 1.6);
/// Room that the person takes on the drawing, half of it.
const ELBOWS_M: f64 = 0.3;
/// Height of the person.
pub use crate::drawing::figure::PERSON_M;

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
    let half = |length: Length, width: Length| (m(length) / 2.0, m(width) / 2.0);
    let sides = half(block.length, block.width);
    let wider = |(x, y): (f64, f64)| (x.max(sides.0), y.max(sides.1));
    let mut layout = Layout {
        block: sides,
        depth: m(block.depth),
        pier: Upright::of(brief, design),
        pit: [
            wider(half(pit.length, pit.width)),
            wider(half(pit.bottom_length, pit.bottom_width)),
        ],
        studs: anchors
            .studs
            .iter()
            .map(|stud| [m(stud.x), m(stud.y)])
            .collect(),
        load: load(brief, m(pier.outside_diameter) / 2.0),
        floor: None,
        layers: layers(design),
        quiet: design
            .motion
            .quiet
            .filter(|quiet| !quiet.anywhere && quiet.distance_m.is_finite())
            .map(|quiet| quiet.distance_m),
        person: 0.0,
        reach: 0.0,
    };
    layout.floor = floor(brief, design, &layout);
    layout.person = person(brief, &layout);
    layout.reach = (layout.pit_half() + BEYOND_PIT_M.0).max(layout.person + ELBOWS_M);
    layout
}

/// A tube of the telescope's aperture, somewhat longer than wide, with its middle where the load's centre is said to be.
fn load(brief: &Brief, column: f64) -> Load {
    let aperture = metre::get(brief.load.aperture.value);
    let radius = (0.58 * aperture).clamp(0.04, 1.2);
    Load {
        centre: metre::get(brief.load.centre_above_pier.value).max(radius + 0.08),
        radius,
        half_length: (3.2 * radius).max(0.16),
        head_radius: (0.7 * column).min(0.8 * radius).max(0.03),
    }
}

fn layers(design: &Design) -> Layers {
    let ground = &design.ground;
    let depth = |length: Option<Length>| length.map(metre::get).filter(|depth| *depth > 0.0);
    Layers {
        topsoil: depth(ground.topsoil_depth),
        rock: if ground.group == Group::Rock {
            Some(0.0)
        } else {
            ground.rock_depth.map(metre::get)
        },
        water: depth(ground.groundwater_depth),
    }
}

fn floor(brief: &Brief, design: &Design, layout: &Layout) -> Option<Floor> {
    let beside = layout
        .pier
        .floor(brief, layout.block.0.max(layout.block.1))?;
    let posts = if design.floor.supports.is_empty() {
        &brief.floor.supports
    } else {
        &design.floor.supports
    };
    let half = (
        metre::get(brief.floor.length.value) / 2.0,
        metre::get(brief.floor.width.value) / 2.0,
    );
    // An opening that leaves nothing of the floor leaves nothing to draw.
    (beside.opening_half < half.0.min(half.1)).then(|| Floor {
        beside,
        half,
        posts: posts.clone(),
    })
}

/// At the quiet distance where it is near enough to be drawn, else as far off as somebody stands first, never within what
/// the pier carries.
fn person(brief: &Brief, layout: &Layout) -> f64 {
    let (pit, column) = (
        layout.pit_half(),
        layout.pier.radius.max(layout.pier.top_plate_half),
    );
    let farthest = pit + BEYOND_PIT_M.1;
    let first = brief
        .floor
        .stands
        .value
        .first()
        .map(|stand| stand.x_m.hypot(stand.y_m));
    let stands = layout.quiet.filter(|away| *away <= farthest).or(first);
    let clear =
        (layout.load.half_length.max(column) + 2.0 * ELBOWS_M).max(layout.block.0 + 0.5 * ELBOWS_M);
    stands.unwrap_or(pit).min(farthest).max(clear)
}

impl Layout {
    /// Half of the pit's longer side at the top.
    pub(super) fn pit_half(&self) -> f64 {
        self.pit[0].0.max(self.pit[0].1)
    }

    /// Half of the pit at a depth.
    pub(super) fn pit_at(&self, depth: f64) -> (f64, f64) {
        let share = if self.depth > 0.0 {
            (depth / self.depth).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let [top, bottom] = self.pit;
        (
            top.0 + (bottom.0 - top.0) * share,
            top.1 + (bottom.1 - top.1) * share,
        )
    }

    /// Whether the pit is wider than the block.
    pub(super) fn is_wider(&self) -> bool {
        let [top, _] = self.pit;
        top.0 > self.block.0 + 1e-6 || top.1 > self.block.1 + 1e-6
    }

    /// Where the drawn ground ends below.
    pub(super) fn bottom(&self) -> f64 {
        self.depth + 0.14 * self.reach
    }

    /// Whether the ring of the quiet distance lies on the drawn ground.
    pub(super) fn drawn_quiet(&self) -> Option<f64> {
        self.quiet.filter(|away| *away <= self.reach)
    }

    /// Height of what one stands on at a place.
    pub(super) fn surface(&self, x: f64, y: f64) -> f64 {
        let floor = self.floor.as_ref().filter(|floor| {
            let half = (floor.half.0.min(self.reach), floor.half.1.min(self.reach));
            x.abs() <= half.0
                && y.abs() <= half.1
                && x.abs().max(y.abs()) >= floor.beside.opening_half
        });
        floor.map_or(0.0, |floor| floor.beside.level)
    }
}
