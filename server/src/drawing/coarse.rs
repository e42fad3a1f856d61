//! What a telephone's screen cannot show is not sent to it: points that lie on the line between their neighbours, and
//! hundredths of a millimetre, where a pixel is a fifth of one.

use crate::drawing::veil::distance;
use crate::drawing::{Item, Point, at};

/// How far a line may stray from where it was, mm: a quarter of a pixel.
const STRAY: f64 = 0.05;

/// Leaves out of an item what does not show.
pub fn coarsen(item: &mut Item) {
    match item {
        Item::Path { runs, closed, .. } => {
            if !*closed {
                for run in runs.iter_mut() {
                    *run = thinned(run);
                }
            }
            runs.iter_mut().flatten().for_each(tenths);
        }
        Item::Solid { corners } => corners.iter_mut().for_each(tenths),
        Item::Circle { centre, .. } | Item::Dot { centre, .. } => tenths(centre),
        Item::Text(label) => tenths(&mut label.at),
    }
}

fn tenths(point: &mut Point) {
    let round = |value: f64| (value * 10.0).round() / 10.0;
    *point = at(round(point.x), round(point.y));
}

/// A run without the points that lie so near the line between those that are kept (Ramer 1972, Douglas and Peucker 1973:
/// from memory).
fn thinned(run: &[Point]) -> Vec<Point> {
    let mut kept = vec![false; run.len()];
    let mut open = vec![(0, run.len().saturating_sub(1))];
    while let Some((from, to)) = open.pop() {
        for end in [from, to] {
            if let Some(kept) = kept.get_mut(end) {
                *kept = true;
            }
        }
        let farthest = (from + 1..to)
            .map(|i| (i, distance(run[i], run[from], run[to])))
            .max_by(|a, b| a.1.total_cmp(&b.1));
        if let Some((middle, _)) = farthest.filter(|(_, off)| *off > STRAY) {
            open.extend([(from, middle), (middle, to)]);
        }
    }
    run.iter()
        .zip(kept)
        .filter_map(|(point, kept)| kept.then_some(*point))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_on_a_line_go_and_corners_stay() {
        let run = [
            at(0.0, 0.0),
            at(1.0, 0.01),
            at(2.0, 0.0),
            at(2.0, 3.0),
            at(2.0, 5.0),
        ];
        assert_eq!(
            thinned(&run),
            vec![at(0.0, 0.0), at(2.0, 0.0), at(2.0, 5.0)]
        );
        // A run that comes back to where it began is no point.
        let there_and_back = [at(0.0, 0.0), at(4.0, 0.0), at(0.0, 0.0)];
        assert_eq!(thinned(&there_and_back), there_and_back);
        assert!(thinned(&[]).is_empty());
    }
}
