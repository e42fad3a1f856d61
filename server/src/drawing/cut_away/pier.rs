//! Block, studs, plates, column, and what it carries.

use super::layout::Layout;
use super::scene::{Axonometry, Place, Scene, Solid};
use crate::drawing::hatch::Hatch;
use crate::drawing::{Line, Point};

/// How far the tube points above the level, to the north.
const ALTITUDE_DEG: f64 = 40.0;

/// Upper and lower end of the tube's axis.
fn tube(layout: &Layout) -> [Place; 2] {
    let (sin, cos) = ALTITUDE_DEG.to_radians().sin_cos();
    let middle = layout.pier.top() + layout.load.centre;
    let half = layout.load.half_length;
    [
        [0.0, -half * cos, middle - half * sin],
        [0.0, half * cos, middle + half * sin],
    ]
}

/// The tube's ends on paper.
pub fn tube_ends(layout: &Layout, view: Axonometry) -> (Vec<Point>, Vec<Point>) {
    let [low, high] = tube(layout);
    view.ends(low, high, layout.load.radius)
}

/// What the pier carries, its top plate, the studs' ends and the column.
pub fn above(scene: &mut Scene, layout: &Layout) {
    let (foot, top) = (
        layout.pier.foot() + layout.pier.plate_thickness,
        layout.pier.top(),
    );
    let [low, high] = tube(layout);
    scene.cylinder(Line::Thin, low, high, layout.load.radius);
    scene.cylinder(
        Line::Thin,
        [0.0, 0.0, top],
        [0.0, 0.0, top + layout.load.centre],
        layout.load.head_radius,
    );
    let under = top - layout.pier.top_plate_thickness;
    let half = layout.pier.top_plate_half;
    scene.solid(
        Line::Thick,
        Solid {
            x: [-half, half],
            y: [-half, half],
            z: [under, top],
        },
    );
    studs(scene, layout, true);
    scene.cylinder(
        Line::Thick,
        [0.0, 0.0, foot],
        [0.0, 0.0, under.max(foot)],
        layout.pier.radius,
    );
    studs(scene, layout, false);
}

/// The studs above the base plate, those before the column or those behind it.
fn studs(scene: &mut Scene, layout: &Layout, before: bool) {
    let foot = layout.pier.foot() + layout.pier.plate_thickness;
    for &[x, y] in &layout.studs {
        if (Axonometry::nearness(x, y) >= 0.0) == before {
            scene.line(Line::Thick, &[[x, y, foot], [x, y, layout.pier.stud_top()]]);
        }
    }
}

/// The base plate, what it stands on, and the studs in the block.
pub fn plate(scene: &mut Scene, layout: &Layout) {
    let (foot, half) = (layout.pier.foot(), layout.pier.plate_half);
    let square = [-half, half];
    scene.solid(
        Line::Thick,
        Solid {
            x: square,
            y: square,
            z: [foot, foot + layout.pier.plate_thickness],
        },
    );
    let top = layout.pier.upstand;
    if layout.pier.grouted && layout.pier.gap > 0.0 {
        scene.solid(
            Line::Thin,
            Solid {
                x: square,
                y: square,
                z: [top, foot],
            },
        );
    }
    for &[x, y] in &layout.studs {
        scene.line(Line::Thick, &[[x, y, foot], [x, y, top]]);
        scene.line(
            Line::Dashed,
            &[[x, y, top], [x, y, top - layout.pier.embedment]],
        );
    }
}

/// The block: its top, what stands out of the ground, and its near corner down to the base.
pub fn block(scene: &mut Scene, layout: &Layout) {
    let ((x, y), top, base) = (layout.block, layout.pier.upstand, -layout.depth);
    let upper = [[-x, -y, top], [x, -y, top], [x, y, top], [-x, y, top]];
    scene.outline(Line::Heavy, &upper);
    scene.line(Line::Heavy, &[[x, -y, top], [x, -y, base]]);
    let south = [[0.0, -y, top], [x, -y, top], [x, -y, base], [0.0, -y, base]];
    let east = [[x, -y, top], [x, 0.0, top], [x, 0.0, base], [x, -y, base]];
    scene.line(
        Line::Heavy,
        &[[0.0, -y, 0.0], south[3], south[2], east[2], [x, 0.0, 0.0]],
    );
    scene.hatch(Hatch::SmallConcrete, &south);
    scene.hatch(Hatch::SmallConcrete, &east);
    if top > 0.0 {
        scene.line(Line::Heavy, &[upper[0], [-x, -y, 0.0], [0.0, -y, 0.0]]);
        scene.line(Line::Heavy, &[upper[2], [x, y, 0.0], [x, 0.0, 0.0]]);
        scene.cover(&[upper[0], upper[1], [x, -y, 0.0], [-x, -y, 0.0]]);
        scene.cover(&[upper[1], upper[2], [x, y, 0.0], [x, -y, 0.0]]);
    }
    scene.cover(&upper);
    scene.cover(&south);
    scene.cover(&east);
}
