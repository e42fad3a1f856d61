//! A person to scale: a plain figure that faces the eye, to the west of the pier.

use super::layout::{Layout, PERSON_M};
use super::scene::{Place, Scene};
use crate::drawing::{Point, at};

/// Where the person stands.
fn feet(layout: &Layout) -> Place {
    let x = -layout.person;
    [x, 0.0, layout.surface(x, 0.0)]
}

/// The top of the person's head.
pub fn crown(layout: &Layout) -> Place {
    let [x, y, z] = feet(layout);
    [x, y, z + PERSON_M]
}

/// Outline of the body from the neck round to the neck, as shares of the height: aside and up. Arms hang, legs stand a
/// little apart.
const BODY: [(f64, f64); 20] = [
    (0.026, 0.895),
    (0.030, 0.836),
    (0.112, 0.812),
    (0.134, 0.770),
    (0.150, 0.470),
    (0.122, 0.466),
    (0.098, 0.700),
    (0.092, 0.500),
    (0.082, 0.020),
    (0.092, 0.0),
    (0.030, 0.0),
    (0.026, 0.020),
    (0.008, 0.455),
    (-0.008, 0.455),
    (-0.026, 0.020),
    (-0.030, 0.0),
    (-0.092, 0.0),
    (-0.082, 0.020),
    (-0.092, 0.500),
    (-0.098, 0.700),
];
/// The other arm.
const ARM: [(f64, f64); 6] = [
    (-0.122, 0.466),
    (-0.150, 0.470),
    (-0.134, 0.770),
    (-0.112, 0.812),
    (-0.030, 0.836),
    (-0.026, 0.895),
];
/// Middle of the head above the ground, and half its width, as shares of the height.
const HEAD: (f64, f64) = (0.933, 0.058);

/// Draws the person in front of all that comes after.
pub fn draw(scene: &mut Scene, layout: &Layout) {
    let (foot, tall) = (scene.view.at(feet(layout)), scene.view.height(PERSON_M));
    let place = |&(aside, up): &(f64, f64)| at(foot.x + aside * tall, foot.y - up * tall);
    let body: Vec<Point> = BODY.iter().chain(&ARM).map(place).collect();
    scene.pen.solid(&body);
    scene.pen.dot(place(&(0.0, HEAD.0)), HEAD.1 * tall);
    scene.veil.cover(&body);
}
