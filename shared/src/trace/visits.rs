//! When somebody stood at the place: from the notes beside the figures, or as stated.

use crate::trace::{Asked, said};

/// Left out before somebody comes or goes, and after, seconds.
const BEFORE_S: f64 = 0.5;
const AFTER_S: f64 = 3.0;

/// The moments at which somebody came and went in turn, beginning with coming.
pub(super) fn find(
    notes: &[(f64, String)],
    asked: &Asked,
    remarks: &mut Vec<String>,
) -> Result<Vec<f64>, String> {
    let edges: Vec<f64> = if asked.at_s.is_empty() {
        from_notes(notes)?
    } else {
        asked.at_s.clone()
    };
    if edges.windows(2).any(|pair| pair[1] <= pair[0]) {
        return Err("the times of the steps do not follow each other".to_owned());
    }
    if edges.len() < 2 {
        return Err(
            "it is not said when somebody stepped to the place and away; write “on” and “off” beside the rows, or state \
             the times (at)"
                .to_owned(),
        );
    }
    let times: Vec<String> = edges
        .iter()
        .map(|at| said((at * 10.0).round() / 10.0))
        .collect();
    remarks.push(format!(
        "Somebody comes and goes, in turn, at {} s.",
        times.join(", ")
    ));
    Ok(edges)
}

fn from_notes(notes: &[(f64, String)]) -> Result<Vec<f64>, String> {
    const COMES: [&str; 10] = [
        "on", "in", "there", "stand", "stands", "step", "to", "at", "arrives", "1",
    ];
    const GOES: [&str; 8] = ["off", "out", "away", "back", "leaves", "gone", "from", "0"];
    let mut edges = Vec::new();
    for (at, words) in notes {
        let lower = words.to_lowercase();
        let mut each = lower
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty());
        let comes = each.clone().any(|word| COMES.contains(&word));
        let goes = each.any(|word| GOES.contains(&word));
        let there = edges.len() % 2 == 1;
        // “step away” holds a word of each; the one that goes counts.
        match (comes && !goes, goes) {
            (true, _) if !there => edges.push(*at),
            (_, true) if there => edges.push(*at),
            (true, _) | (_, true) if edges.is_empty() => {}
            (true, _) | (_, true) => {}
            _ => {
                return Err(format!(
                    "the note “{words}” does not say whether somebody comes or goes; state the times (at)"
                ));
            }
        }
    }
    Ok(edges)
}

/// Whether somebody stands there: 1 or 0; none while it changes.
pub(super) fn there(edges: &[f64], t: f64) -> Option<f64> {
    let moving = edges
        .iter()
        .any(|edge| t > edge - BEFORE_S && t < edge + AFTER_S);
    if moving {
        return None;
    }
    Some(f64::from(u8::from(
        edges.iter().filter(|edge| **edge <= t).count() % 2 == 1,
    )))
}
