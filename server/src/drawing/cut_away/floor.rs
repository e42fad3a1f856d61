//! The floor round the pier, cut away at the near corner, and the posts of a deck.

use super::layout::{Floor, Layout};
use super::scene::{Place, Scene, Solid};
use crate::drawing::Line;
use crate::drawing::hatch::Hatch;

/// Half of a post.
const POST_HALF_M: f64 = 0.05;
/// Width of a board as it is drawn.
const BOARD_M: f64 = 0.3;

/// The floor as it is drawn: it ends with the drawn ground where it goes on beyond it.
struct Drawn {
    half: (f64, f64),
    /// Whether it ends there, from west to east and from south to north.
    opening: f64,
    top: f64,
    under: f64,
}

fn drawn(layout: &Layout, floor: &Floor) -> Option<Drawn> {
    let half = (
        floor.half.0.min(layout.reach),
        floor.half.1.min(layout.reach),
    );
    (floor.beside.opening_half < half.0.min(half.1)).then_some(Drawn {
        half,
        opening: floor.beside.opening_half,
        top: floor.beside.level,
        under: floor.beside.level - floor.beside.thickness,
    })
}

/// Draws it.
pub fn draw(scene: &mut Scene, layout: &Layout, floor: &Floor) {
    let Some(drawn) = drawn(layout, floor) else {
        return;
    };
    let Drawn {
        half: (x, y),
        opening: o,
        top,
        under,
    } = drawn;
    let outline = |z: f64| -> [Place; 9] {
        [
            [0.0, -y, z],
            [0.0, -o, z],
            [-o, -o, z],
            [-o, o, z],
            [o, o, z],
            [o, 0.0, z],
            [x, 0.0, z],
            [x, y, z],
            [-x, y, z],
        ]
    };
    let mut upper = outline(top).to_vec();
    upper.push([-x, -y, top]);
    scene.outline(Line::Thick, &upper);
    if !floor.beside.is_concrete {
        boards(scene, &drawn);
    }
    let faces: [[[f64; 2]; 2]; 6] = [
        [[0.0, -y], [0.0, -o]],
        [[o, 0.0], [x, 0.0]],
        [[-x, -y], [0.0, -y]],
        [[x, 0.0], [x, y]],
        [[-o, -o], [-o, o]],
        [[-o, o], [o, o]],
    ];
    scene.cover(&upper);
    for (i, [[ax, ay], [bx, by]]) in faces.into_iter().enumerate() {
        let face = [
            [ax, ay, top],
            [bx, by, top],
            [bx, by, under],
            [ax, ay, under],
        ];
        if floor.beside.is_concrete && i < 2 {
            scene.hatch(Hatch::Concrete, &face);
        }
        scene.line(Line::Thick, &[face[0], face[3], face[2], face[1]]);
        scene.cover(&face);
    }
}

/// Joints between boards that run from west to east.
fn boards(scene: &mut Scene, drawn: &Drawn) {
    let ((x, y), o, z) = (drawn.half, drawn.opening, drawn.top);
    let count = (2.0 * y / BOARD_M).floor();
    let mut along = -y + BOARD_M;
    for _ in 1..count as usize {
        let east = if along < 0.0 { 0.0 } else { x };
        if along.abs() < o {
            scene.line(Line::Hair, &[[-x, along, z], [-o, along, z]]);
            if along > 0.0 {
                scene.line(Line::Hair, &[[o, along, z], [east, along, z]]);
            }
        } else {
            scene.line(Line::Hair, &[[-x, along, z], [east, along, z]]);
        }
        along += BOARD_M;
    }
}

/// The posts of a deck, less those in the corner that is taken out.
pub fn posts(scene: &mut Scene, layout: &Layout, floor: &Floor) {
    let under = floor.beside.level - floor.beside.thickness;
    if floor.beside.is_concrete || under <= 0.0 {
        return;
    }
    let r = layout.reach - POST_HALF_M;
    let mut places: Vec<[f64; 2]> = floor
        .posts
        .iter()
        .copied()
        .filter(|&[x, y]| x.abs() <= r && y.abs() <= r && !(x > -POST_HALF_M && y < POST_HALF_M))
        .collect();
    let nearness = |place: &[f64; 2]| super::scene::Axonometry::nearness(place[0], place[1]);
    places.sort_by(|a, b| nearness(b).total_cmp(&nearness(a)));
    for [x, y] in places {
        let around = |middle: f64| [middle - POST_HALF_M, middle + POST_HALF_M];
        scene.solid(
            Line::Thin,
            Solid {
                x: around(x),
                y: around(y),
                z: [0.0, under],
            },
        );
    }
}
