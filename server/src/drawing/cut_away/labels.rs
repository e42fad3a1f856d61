//! A few labels, each to a place that is seen.

use super::layout::Layout;
use super::scene::{Place, Scene};
use super::words::Words;
use super::{RING, on_ring};
use crate::drawing::callout::{Callout, note};
use crate::drawing::{Point, callout};

/// Width of the labels' column, mm.
const WIDE: f64 = 44.0;

/// Puts them beside the picture, or numbers on it with a list below.
pub fn put(scene: &mut Scene, layout: &Layout, words: &Words) {
    let notes = notes(scene, layout, words);
    let bounds = scene.pen.bounds();
    callout::column(
        &mut scene.pen,
        notes,
        bounds.right + 8.0,
        bounds.top,
        bounds.bottom,
        WIDE,
    );
}

fn notes(scene: &Scene, layout: &Layout, words: &Words) -> Vec<Callout> {
    let point = |place: Place| scene.view.at(place);
    let (foot, top) = (
        layout.pier.foot() + layout.pier.plate_thickness,
        layout.pier.top(),
    );
    let (x, y) = layout.block;
    let mut notes = vec![
        note(
            point([
                0.7 * layout.pier.radius,
                0.7 * layout.pier.radius,
                foot + 0.6 * (top - foot),
            ]),
            &words.column,
        ),
        note(point([x, -0.55 * y, -0.4 * layout.depth]), &words.block),
        note(point([0.6 * x, -y, -layout.depth]), &words.depth),
    ];
    if let Some(stud) = stud(layout) {
        notes.push(note(point(stud), &words.studs));
    }
    let ring = layout
        .drawn_quiet()
        .and_then(|away| ring(scene, layout, away));
    if let Some(text) = &words.distance {
        let feet = [-layout.person, 0.0, layout.surface(-layout.person, 0.0)];
        notes.push(note(ring.unwrap_or_else(|| point(feet)), text));
    }
    if let Some((text, water)) = words.water.as_ref().zip(layout.layers.water) {
        let r = layout.reach;
        let place = if water < layout.depth {
            [0.92 * r, 0.0, -water]
        } else {
            [r, 0.5 * r, -water]
        };
        notes.push(note(point(place), text));
    }
    notes
}

/// The top of the stud farthest to the right.
fn stud(layout: &Layout) -> Option<Place> {
    let right = layout
        .studs
        .iter()
        .max_by(|a, b| (a[0] + a[1]).total_cmp(&(b[0] + b[1])))?;
    Some([right[0], right[1], layout.pier.stud_top()])
}

/// A place on the ring that is seen, to the north-east if there is one.
fn ring(scene: &Scene, layout: &Layout, away: f64) -> Option<Point> {
    let steps = (0..RING / 4).map(|step| (RING / 12 + step) % (RING / 4));
    steps
        .map(|step| on_ring(layout, away, step))
        .filter(|[x, y, _]| x.abs().max(y.abs()) <= layout.reach)
        .map(|place| scene.view.at(place))
        .find(|&point| !scene.veil.hides(point))
}
