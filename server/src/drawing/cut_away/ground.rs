//! The ground with its near corner taken out down to the base of the block, and the pit in it.

use super::Layout;
use super::scene::{Place, Scene};
use crate::drawing::hatch::Hatch;
use crate::drawing::{Line, Point, at};

/// A wall of the opening, seen from the front: how a distance from the axis and a height become a place.
type Wall = fn(f64, f64) -> Place;

/// The wall to the west of the opening, and that to the north.
const WALLS: [Wall; 2] = [|out, z| [0.0, -out, z], |out, z| [out, 0.0, z]];

/// Draws it, behind everything else.
pub fn draw(scene: &mut Scene, layout: &Layout) {
    surface(scene, layout);
    for (which, wall) in WALLS.into_iter().enumerate() {
        section(scene, layout, wall, which == 0);
    }
    shelf(scene, layout);
    outside(scene, layout);
}

/// The top with the pit's edge.
fn surface(scene: &mut Scene, layout: &Layout) {
    let r = layout.reach;
    scene.line(Line::Thick, &[[0.0, -r, 0.0], [0.0; 3], [r, 0.0, 0.0]]);
    scene.line(
        Line::Thin,
        &[
            [0.0, -r, 0.0],
            [-r, -r, 0.0],
            [-r, r, 0.0],
            [r, r, 0.0],
            [r, 0.0, 0.0],
        ],
    );
    if layout.is_wider() {
        let (x, y) = layout.pit[0];
        scene.line(
            Line::Thin,
            &[
                [0.0, -y, 0.0],
                [-x, -y, 0.0],
                [-x, y, 0.0],
                [x, y, 0.0],
                [x, 0.0, 0.0],
            ],
        );
    }
}

/// One wall: ground as found, what is filled back, layers, water.
fn section(scene: &mut Scene, layout: &Layout, wall: Wall, is_west: bool) {
    let (reach, depth) = (layout.reach, layout.depth);
    let of = |(x, y): (f64, f64)| if is_west { y } else { x };
    let side = |depth: f64| of(layout.pit_at(depth)).min(reach);
    let block = of(layout.block);
    scene.line(Line::Thick, &[wall(reach, 0.0), wall(reach, -depth)]);
    if layout.is_wider() {
        scene.line(
            Line::Thin,
            &[wall(side(0.0), 0.0), wall(side(depth), -depth)],
        );
        scene.hatch(
            Hatch::Backfill,
            &[
                wall(block, 0.0),
                wall(side(0.0), 0.0),
                wall(side(depth), -depth),
                wall(block, -depth),
            ],
        );
    }
    let band = |from: f64, to: f64| {
        [
            wall(side(from), -from),
            wall(reach, -from),
            wall(reach, -to),
            wall(side(to), -to),
        ]
    };
    let within = |level: Option<f64>| level.filter(|level| *level < depth);
    let topsoil = within(layout.layers.topsoil).unwrap_or(0.0);
    let rock = within(layout.layers.rock).unwrap_or(depth);
    if topsoil < rock {
        scene.hatch(Hatch::Ground, &band(topsoil, rock));
    }
    if rock < depth {
        scene.hatch(Hatch::Rock, &band(rock.max(topsoil), depth));
    }
    for level in [topsoil, rock] {
        if level > 0.0 && level < depth {
            scene.line(
                Line::Thin,
                &[wall(side(level), -level), wall(reach, -level)],
            );
        }
    }
    if let Some(water) = within(layout.layers.water) {
        let (from, to) = (wall(side(water), -water), wall(reach, -water));
        scene.line(Line::Dashed, &[from, to]);
        let (a, b) = (scene.view.at(from), scene.view.at(to));
        water_mark(scene, at(0.5 * (a.x + b.x), 0.5 * (a.y + b.y)));
    }
}

fn water_mark(scene: &mut Scene, foot: Point) {
    let corners = [
        foot,
        at(foot.x - 1.3, foot.y - 2.3),
        at(foot.x + 1.3, foot.y - 2.3),
        foot,
    ];
    scene.run(Line::Thin, &corners);
}

/// The ground that the block stands on, bared where the corner is taken out.
fn shelf(scene: &mut Scene, layout: &Layout) {
    let (r, z) = (layout.reach, -layout.depth);
    scene.line(
        Line::Thick,
        &[
            [0.0, 0.0, z],
            [0.0, -r, z],
            [r, -r, z],
            [r, 0.0, z],
            [0.0, 0.0, z],
        ],
    );
    if layout.is_wider() {
        let (x, y) = layout.pit_at(layout.depth);
        scene.line(Line::Thin, &[[0.0, -y, z], [x, -y, z], [x, 0.0, z]]);
    }
}

/// The outer sides, with the layers that run on in them.
fn outside(scene: &mut Scene, layout: &Layout) {
    let (r, depth, bottom) = (layout.reach, layout.depth, layout.bottom());
    scene.line(
        Line::Thin,
        &[
            [-r, -r, 0.0],
            [-r, -r, -bottom],
            [r, -r, -bottom],
            [r, r, -bottom],
            [r, r, 0.0],
        ],
    );
    scene.line(Line::Thin, &[[r, -r, -depth], [r, -r, -bottom]]);
    let layers = &layout.layers;
    let lines = [
        (layers.topsoil, Line::Thin),
        (layers.rock, Line::Thin),
        (layers.water, Line::Dashed),
    ];
    for (level, line) in lines {
        let Some(level) = level.filter(|level| *level > 0.0 && *level < bottom) else {
            continue;
        };
        let z = -level;
        if level < depth {
            scene.line(line, &[[-r, -r, z], [0.0, -r, z]]);
            scene.line(line, &[[r, 0.0, z], [r, r, z]]);
        } else {
            scene.line(line, &[[-r, -r, z], [r, -r, z], [r, r, z]]);
        }
    }
}
