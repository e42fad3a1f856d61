//! Numbers beside the places where people stand.

use crate::drawing::area::Area;
use crate::drawing::pen::{Pen, SIZE};
use crate::drawing::{Anchor, Label, Line, Point, at};

/// Radius of a stand's number, mm.
const BALLOON: f64 = 2.6;

/// Numbered balloons beside the places, where no other balloon or lettering stands.
pub fn markers(pen: &mut Pen, places: &[Point]) {
    for (i, &place) in places.iter().enumerate() {
        pen.dot(place, 0.7);
        let free = |centre: Point| Area {
            left: centre.x - BALLOON,
            right: centre.x + BALLOON,
            top: centre.y - BALLOON,
            bottom: centre.y + BALLOON,
        };
        let tries = (0..48).map(|step| {
            let (ring, angle) = (
                f64::from(step / 8),
                f64::from(step % 8) * std::f64::consts::FRAC_PI_4 - std::f64::consts::FRAC_PI_4,
            );
            let reach = 5.0 + ring * 6.0;
            at(place.x + reach * angle.cos(), place.y + reach * angle.sin())
        });
        let mut clear = tries.clone().filter(|&centre| {
            let area = free(centre).with_margin(0.4);
            pen.is_free(&area)
                && !places.iter().any(|other| {
                    area.left < other.x
                        && other.x < area.right
                        && area.top < other.y
                        && other.y < area.bottom
                })
        });
        let centre = clear.next().unwrap_or(at(place.x + 5.0, place.y - 5.0));
        drop(clear);
        let length = (centre.x - place.x).hypot(centre.y - place.y).max(1e-9);
        let share = (length - BALLOON) / length;
        pen.line(
            Line::Thin,
            &[
                place,
                at(
                    place.x + (centre.x - place.x) * share,
                    place.y + (centre.y - place.y) * share,
                ),
            ],
        );
        pen.circle(Line::Thin, centre, BALLOON);
        pen.label(Label {
            at: at(centre.x, centre.y + 0.35 * SIZE),
            size: SIZE,
            anchor: Anchor::Middle,
            upright: false,
            bold: true,
            text: (i + 1).to_string(),
        });
    }
}
