//! A plain figure of a person that faces the eye.

use crate::drawing::pen::Pen;
use crate::drawing::{Line, Point, at};

/// Height of a person, m.
pub const PERSON_M: f64 = 1.75;

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

/// Outline of the body, its feet at a place and so many millimetres tall.
fn body(foot: Point, tall: f64) -> Vec<Point> {
    let place = |&(aside, up): &(f64, f64)| at(foot.x + aside * tall, foot.y - up * tall);
    BODY.iter().chain(&ARM).map(place).collect()
}

/// Draws it in ink; its outline.
pub fn draw(pen: &mut Pen, foot: Point, tall: f64) -> Vec<Point> {
    let body = body(foot, tall);
    pen.solid(&body);
    pen.dot(at(foot.x, foot.y - HEAD.0 * tall), HEAD.1 * tall);
    body
}

/// Draws only its outline: where somebody was, or goes to.
pub fn outlined(pen: &mut Pen, foot: Point, tall: f64) {
    pen.outline(Line::Thin, &body(foot, tall));
    let head = at(foot.x, foot.y - HEAD.0 * tall);
    pen.circle(Line::Thin, head, HEAD.1 * tall);
}

/// Draws it with an arm stretched towards a hand.
pub fn reaching(pen: &mut Pen, foot: Point, tall: f64, hand: Point) {
    draw(pen, foot, tall);
    let shoulder = at(foot.x, foot.y - 0.79 * tall);
    let (dx, dy) = (hand.x - shoulder.x, hand.y - shoulder.y);
    let length = dx.hypot(dy).max(1e-9);
    let half = 0.022 * tall;
    let (ox, oy) = (-dy / length * half, dx / length * half);
    pen.solid(&[
        at(shoulder.x + ox, shoulder.y + oy),
        at(hand.x + ox, hand.y + oy),
        at(hand.x - ox, hand.y - oy),
        at(shoulder.x - ox, shoulder.y - oy),
    ]);
}
