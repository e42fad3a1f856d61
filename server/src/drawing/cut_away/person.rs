//! A person to scale: a plain figure that faces the eye, to the west of the pier.

use super::layout::{Layout, PERSON_M};
use super::scene::{Place, Scene};
use crate::drawing::figure;

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

/// Draws the person in front of all that comes after.
pub fn draw(scene: &mut Scene, layout: &Layout) {
    let (foot, tall) = (scene.view.at(feet(layout)), scene.view.height(PERSON_M));
    let body = figure::draw(&mut scene.pen, foot, tall);
    scene.veil.cover(&body);
}
