//! Callouts: notes in a column beside the drawing, each with a leader to what it names, in the order of height, never
//! one over another.

use crate::drawing::area::Area;
use crate::drawing::balloon;
use crate::drawing::pen::{LINE_HEIGHT, Pen, SIZE};
use crate::drawing::{Anchor, Label, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, wrap};

/// A note to a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Callout {
    /// The place.
    pub target: Point,
    /// The note.
    pub text: String,
}

/// A note to a place.
#[must_use]
pub fn note(target: Point, text: impl Into<String>) -> Callout {
    Callout {
        target,
        text: text.into(),
    }
}

/// Paper that a drawing may take across, mm: a sheet of A4 within its frame.
pub const SHEET_WIDTH: f64 = 178.0;
/// From the drawing to its column of notes, and what stands beyond it, mm.
const ASIDE: f64 = 13.0;

/// Width of a column of notes beside what is drawn: what was asked for, or what the sheet leaves of it.
#[must_use]
pub fn room(drawn: &Area, asked: f64) -> f64 {
    (SHEET_WIDTH - (drawn.right - drawn.left) - ASIDE).clamp(0.75 * asked, asked)
}

/// Free paper between two notes, mm.
const BETWEEN: f64 = 1.6;
/// Level end of a leader, mm.
const SHOULDER: f64 = 3.0;

/// Puts a column of notes with its left edge at `x`, its lines `width` long, from `top` down if need be. A telephone has
/// no room for it, and gets numbers and a list instead.
pub fn column(pen: &mut Pen, mut notes: Vec<Callout>, x: f64, top: f64, bottom: f64, width: f64) {
    notes.sort_by(|a, b| {
        a.target
            .y
            .total_cmp(&b.target.y)
            .then(b.target.x.total_cmp(&a.target.x))
    });
    if pen.form().is_phone() {
        return numbered(pen, notes);
    }
    let mut notes: Vec<Noted> = notes
        .into_iter()
        .map(|note| (wrap(Face::Figures, &note.text, SIZE, width), note))
        .collect();
    uncross(&mut notes, |notes| edges(notes, top, bottom), x - SHOULDER);
    let found = edges(&notes, top, bottom);
    for ((lines, note), y) in notes.iter().zip(found) {
        let middle = y + LINE_HEIGHT / 2.0;
        pen.dot(note.target, 0.55);
        pen.line(
            Line::Thin,
            &[note.target, at(x - SHOULDER, middle), at(x - 0.8, middle)],
        );
        pen.paragraph(at(x, middle + 0.35 * SIZE), SIZE, lines);
    }
}

/// Puts numbers beside what is named, from the top down, and the list of them below the drawing.
fn numbered(pen: &mut Pen, notes: Vec<Callout>) {
    let targets: Vec<Point> = notes.iter().map(|note| note.target).collect();
    balloon::put(pen, &targets);
    let texts: Vec<String> = notes.into_iter().map(|note| note.text).collect();
    list(pen, &texts);
}

/// A numbered list below all that stands on the paper so far.
pub fn list(pen: &mut Pen, texts: &[String]) {
    let bounds = pen.bounds();
    let from = at(bounds.left, bounds.bottom + 3.0 + SIZE);
    list_from(pen, from, PHONE_ROOM, 0.8, texts);
}

/// A numbered list from its first base line down, so wide and with so much between two of its lines; gives the base line after
/// the last.
pub fn list_from(pen: &mut Pen, from: Point, wide: f64, between: f64, texts: &[String]) -> f64 {
    let mut y = from.y;
    for (i, text) in texts.iter().enumerate() {
        pen.label(Label {
            at: at(from.x, y),
            size: SIZE,
            anchor: Anchor::Start,
            upright: false,
            bold: true,
            text: (i + 1).to_string(),
        });
        let lines = wrap(Face::Figures, text, SIZE, wide - INDENT);
        y = pen.paragraph(at(from.x + INDENT, y), SIZE, &lines) + between;
    }
    y
}

/// From a number of the list to its words, mm.
const INDENT: f64 = 6.0;

/// A note, broken into its lines.
type Noted = (Vec<String>, Callout);

/// Upper edges of the notes.
fn edges(notes: &[Noted], top: f64, bottom: f64) -> Vec<f64> {
    let heights: Vec<f64> = notes
        .iter()
        .map(|(lines, _)| lines.len() as f64 * LINE_HEIGHT)
        .collect();
    let wanted: Vec<f64> = notes
        .iter()
        .map(|(_, note)| note.target.y - LINE_HEIGHT / 2.0)
        .collect();
    places(&wanted, &heights, top, bottom)
}

/// Rounds of changing places, at most.
const ROUNDS: usize = 12;

/// Changes the places of notes whose leaders cross, until none do or it has been tried often enough.
fn uncross(notes: &mut [Noted], edges: impl Fn(&[Noted]) -> Vec<f64>, x: f64) {
    for _ in 0..ROUNDS {
        let ends: Vec<Point> = edges(notes)
            .into_iter()
            .map(|y| at(x, y + LINE_HEIGHT / 2.0))
            .collect();
        let pairs = (0..notes.len()).flat_map(|i| (i + 1..ends.len()).map(move |j| (i, j)));
        let crossing = pairs
            .into_iter()
            .find(|&(i, j)| cross(notes[i].1.target, ends[i], notes[j].1.target, ends[j]));
        let Some((i, j)) = crossing else { return };
        notes.swap(i, j);
    }
}

/// Whether two lines cross.
fn cross(a: Point, b: Point, c: Point, d: Point) -> bool {
    let side = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// Upper edges of blocks of text as near as may be to where they are wanted: pushed down one after another, then back up
/// from the bottom where there is room.
fn places(wanted: &[f64], heights: &[f64], top: f64, bottom: f64) -> Vec<f64> {
    let mut places = Vec::with_capacity(wanted.len());
    let mut free = top;
    for (&wish, &height) in wanted.iter().zip(heights) {
        let y = f64::max(wish, free);
        places.push(y);
        free = y + height + BETWEEN;
    }
    let total: f64 = heights.iter().map(|height| height + BETWEEN).sum();
    let mut limit = f64::max(bottom, top + total);
    for (place, &height) in places.iter_mut().zip(heights).rev() {
        *place = place.min(limit - height);
        limit = *place - BETWEEN;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn leaders_that_cross_change_places() {
        let noted = |x: f64, y: f64| (vec![String::new()], note(at(x, y), ""));
        // The lower target lies farther right, and both notes stand far below: taken by height, their leaders cross.
        let mut notes = [noted(0.0, 10.0), noted(40.0, 11.0)];
        uncross(&mut notes, |_| vec![40.0, 50.0], 50.0);
        assert_eq!(notes[0].1.target, at(40.0, 11.0));
    }

    #[test]
    fn notes_never_overlap_and_stay_near_their_place() {
        let (wanted, heights) = ([5.0, 6.0, 7.0, 80.0], [4.6, 9.2, 4.6, 4.6]);
        let found = places(&wanted, &heights, 0.0, 100.0);
        assert!(
            found
                .windows(2)
                .zip(heights)
                .all(|(pair, height)| pair[1] >= pair[0] + height + BETWEEN - 1e-9)
        );
        assert_eq!(found[3], 80.0);
        assert!(
            places(&wanted, &heights, 0.0, 10.0)
                .windows(2)
                .all(|pair| pair[1] > pair[0])
        );
    }
}
