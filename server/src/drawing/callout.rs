//! Callouts: notes in a column beside the drawing, each with a leader to what it names, in the order of height, never
//! one over another.

use crate::drawing::pen::{LINE_HEIGHT, Pen, SIZE};
use crate::drawing::{Line, Point, at};
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
    Callout { target, text: text.into() }
}

/// Free paper between two notes, mm.
const BETWEEN: f64 = 1.6;
/// Level end of a leader, mm.
const SHOULDER: f64 = 3.0;

/// Puts a column of notes with its left edge at `x`, its lines `width` long, from `top` down if need be.
pub fn column(pen: &mut Pen, mut notes: Vec<Callout>, x: f64, top: f64, bottom: f64, width: f64) {
    notes.sort_by(|a, b| a.target.y.total_cmp(&b.target.y).then(b.target.x.total_cmp(&a.target.x)));
    let lines: Vec<Vec<String>> = notes.iter().map(|note| wrap(Face::Figures, &note.text, SIZE, width)).collect();
    let heights: Vec<f64> = lines.iter().map(|lines| lines.len() as f64 * LINE_HEIGHT).collect();
    let wanted: Vec<f64> = notes.iter().map(|note| note.target.y - LINE_HEIGHT / 2.0).collect();
    for ((note, lines), y) in notes.iter().zip(&lines).zip(places(&wanted, &heights, top, bottom)) {
        let middle = y + LINE_HEIGHT / 2.0;
        pen.dot(note.target, 0.55);
        pen.line(Line::Thin, &[note.target, at(x - SHOULDER, middle), at(x - 0.8, middle)]);
        pen.paragraph(at(x, middle + 0.35 * SIZE), SIZE, lines);
    }
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
    fn notes_never_overlap_and_stay_near_their_place() {
        let (wanted, heights) = ([5.0, 6.0, 7.0, 80.0], [4.6, 9.2, 4.6, 4.6]);
        let found = places(&wanted, &heights, 0.0, 100.0);
        assert!(found.windows(2).zip(heights).all(|(pair, height)| pair[1] >= pair[0] + height + BETWEEN - 1e-9));
        assert_eq!(found[3], 80.0);
        assert!(places(&wanted, &heights, 0.0, 10.0).windows(2).all(|pair| pair[1] > pair[0]));
    }
}
