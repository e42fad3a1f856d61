//! Numbers in rings beside what they name, for a drawing that has no room for words.

use crate::drawing::area::Area;
use crate::drawing::pen::{Pen, SIZE};
use crate::drawing::{Anchor, Label, Line, PHONE_ROOM, Point, at};

/// Radius of a ring, mm.
const RADIUS: f64 = 2.6;
/// Directions that are tried, and how far, mm: the nearest first.
const DIRECTIONS: u32 = 16;
const REACHES: [f64; 9] = [5.0, 6.5, 8.0, 10.0, 12.5, 16.0, 20.0, 26.0, 34.0];

/// Numbers places in their order. Each ring stands where nothing else does, and no leader runs through another ring.
pub fn put(pen: &mut Pen, places: &[Point]) {
    let bounds = pen.bounds();
    let middle = 0.5 * (bounds.left + bounds.right);
    let half = (0.5 * (bounds.right - bounds.left)).max(0.5 * PHONE_ROOM);
    let (left, right) = (middle - half, middle + half);
    places.iter().for_each(|&place| pen.dot(place, 0.55));
    let mut rings: Vec<Area> = Vec::new();
    for (i, &place) in places.iter().enumerate() {
        let tries = REACHES.iter().flat_map(|reach| {
            (0..DIRECTIONS).map(move |step| {
                // Begun to the upper right, where a leader is looked for first.
                let turn = f64::from(step) * std::f64::consts::TAU / f64::from(DIRECTIONS);
                let (sin, cos) = (turn - std::f64::consts::FRAC_PI_4).sin_cos();
                at(place.x + reach * cos, place.y + reach * sin)
            })
        });
        let on_paper = |centre: &Point| {
            let ring = around(*centre);
            ring.left >= left && ring.right <= right
        };
        let is_free =
            |centre: &Point| on_paper(centre) && pen.is_free(&around(*centre).with_margin(0.4));
        let clear = |centre: &Point| {
            is_free(centre)
                && !rings
                    .iter()
                    .any(|other| other.share_of(place, *centre).is_some())
        };
        let beside = |centre: &Point| {
            on_paper(centre) && !rings.iter().any(|other| around(*centre).meets(other))
        };
        let centre = tries
            .clone()
            .find(clear)
            .or_else(|| tries.clone().find(is_free))
            .or_else(|| tries.clone().find(beside))
            .unwrap_or(at(place.x + REACHES[0], place.y - REACHES[0]));
        ring(pen, place, centre, i + 1);
        rings.push(around(centre));
    }
}

fn around(centre: Point) -> Area {
    Area {
        left: centre.x - RADIUS,
        right: centre.x + RADIUS,
        top: centre.y - RADIUS,
        bottom: centre.y + RADIUS,
    }
}

fn ring(pen: &mut Pen, place: Point, centre: Point, number: usize) {
    let length = (centre.x - place.x).hypot(centre.y - place.y).max(1e-9);
    let share = (length - RADIUS) / length;
    let edge = at(
        place.x + (centre.x - place.x) * share,
        place.y + (centre.y - place.y) * share,
    );
    pen.line(Line::Thin, &[place, edge]);
    pen.circle(Line::Thin, centre, RADIUS);
    pen.label(Label {
        at: at(centre.x, centre.y + 0.35 * SIZE),
        size: SIZE,
        anchor: Anchor::Middle,
        upright: false,
        bold: true,
        text: number.to_string(),
    });
}
