//! Hidden lines: what stands in front is drawn first, and whatever comes after it is drawn only where it is not covered.
//! The lines are cut, and nothing is painted over, so that paper of any colour lies under a drawing.

use crate::drawing::area::Area;
use crate::drawing::{Item, Point, at};

/// What stands in front so far.
#[derive(Debug, Clone, Default)]
pub struct Veil {
    shapes: Vec<(Area, Vec<Point>)>,
}

/// A line so near a shape's edge, mm, is that edge and is seen.
const EDGE: f64 = 0.02;

impl Veil {
    /// Puts a shape in front of all that comes after it.
    pub fn cover(&mut self, corners: &[Point]) {
        let mut area = Area::EMPTY;
        corners.iter().for_each(|&corner| area.hold(corner, 0.0));
        self.shapes.push((area, corners.to_vec()));
    }

    /// Whether a place is covered.
    #[must_use]
    pub fn hides(&self, place: Point) -> bool {
        self.shapes.iter().any(|(area, shape)| {
            let near = area.left <= place.x
                && place.x <= area.right
                && area.top <= place.y
                && place.y <= area.bottom;
            near && is_inside(place, shape)
        })
    }

    /// The pieces of a run of points that are seen, each as long as may be.
    #[must_use]
    pub fn seen(&self, run: &[Point]) -> Vec<Vec<Point>> {
        let mut pieces: Vec<Vec<Point>> = Vec::new();
        let mut open = false;
        for pair in run.windows(2) {
            let along = |t: f64| {
                at(
                    pair[0].x + (pair[1].x - pair[0].x) * t,
                    pair[0].y + (pair[1].y - pair[0].y) * t,
                )
            };
            let cuts = self.cuts(pair[0], pair[1]);
            for ends in cuts.windows(2) {
                if self.hides(along(0.5 * (ends[0] + ends[1]))) {
                    open = false;
                    continue;
                }
                match pieces.last_mut().filter(|_| open) {
                    Some(piece) if ends[0] > 0.0 => {
                        piece.pop();
                        piece.push(along(ends[1]));
                    }
                    Some(piece) => piece.push(along(ends[1])),
                    None => pieces.push(vec![along(ends[0]), along(ends[1])]),
                }
                open = true;
            }
        }
        pieces
    }

    /// The items of a hatch that are seen.
    #[must_use]
    pub fn thin_out(&self, items: Vec<Item>) -> Vec<Item> {
        if self.shapes.is_empty() {
            return items;
        }
        let seen = |item| match item {
            Item::Path {
                runs,
                closed: false,
                line,
            } => {
                let runs: Vec<_> = runs.iter().flat_map(|run| self.seen(run)).collect();
                (!runs.is_empty()).then_some(Item::Path {
                    runs,
                    closed: false,
                    line,
                })
            }
            Item::Dot { centre, .. } if self.hides(centre) => None,
            other => Some(other),
        };
        items.into_iter().filter_map(seen).collect()
    }

    /// Where a stroke meets the shapes' edges, from 0 at its start to 1 at its end, both among them.
    fn cuts(&self, a: Point, b: Point) -> Vec<f64> {
        let mut cuts = vec![0.0, 1.0];
        for (area, shape) in &self.shapes {
            if area.with_margin(EDGE).share_of(a, b).is_none() {
                continue;
            }
            let ends = shape.iter().zip(shape.iter().cycle().skip(1));
            cuts.extend(ends.filter_map(|(&c, &d)| meeting(a, b, c, d)));
        }
        cuts.sort_by(f64::total_cmp);
        cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        cuts
    }
}

/// Where the stroke from `a` to `b` crosses that from `c` to `d`, as a share of the first.
fn meeting(a: Point, b: Point, c: Point, d: Point) -> Option<f64> {
    let (ab, cd) = ((b.x - a.x, b.y - a.y), (d.x - c.x, d.y - c.y));
    let turn = ab.0 * cd.1 - ab.1 * cd.0;
    if turn.abs() < 1e-12 {
        return None;
    }
    let (x, y) = (c.x - a.x, c.y - a.y);
    let (t, u) = ((x * cd.1 - y * cd.0) / turn, (x * ab.1 - y * ab.0) / turn);
    ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&u)).then_some(t)
}

/// Whether a place lies within a shape and not on its edge.
fn is_inside(place: Point, shape: &[Point]) -> bool {
    let mut inside = false;
    for (&a, &b) in shape.iter().zip(shape.iter().cycle().skip(1)) {
        if distance(place, a, b) < EDGE {
            return false;
        }
        if (a.y <= place.y) != (b.y <= place.y)
            && place.x < a.x + (place.y - a.y) / (b.y - a.y) * (b.x - a.x)
        {
            inside = !inside;
        }
    }
    inside
}

/// How far a place is from a stroke.
#[must_use]
pub fn distance(place: Point, a: Point, b: Point) -> f64 {
    let (x, y) = (b.x - a.x, b.y - a.y);
    let long = x * x + y * y;
    let share = if long > 0.0 {
        (((place.x - a.x) * x + (place.y - a.y) * y) / long).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (place.x - a.x - share * x).hypot(place.y - a.y - share * y)
}

/// The outline round some places that has no dent, counted one way round.
#[must_use]
pub fn hull(places: &[Point]) -> Vec<Point> {
    let mut sorted = places.to_vec();
    sorted.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let mut outline: Vec<Point> = Vec::with_capacity(sorted.len());
    let half = |outline: &mut Vec<Point>, places: &mut dyn Iterator<Item = &Point>| {
        let begun = outline.len();
        for &place in places {
            while outline.len() >= begun + 2
                && turn(
                    outline[outline.len() - 2],
                    outline[outline.len() - 1],
                    place,
                ) <= 1e-9
            {
                outline.pop();
            }
            outline.push(place);
        }
        outline.pop();
    };
    half(&mut outline, &mut sorted.iter());
    half(&mut outline, &mut sorted.iter().rev());
    outline
}

fn turn(a: Point, b: Point, c: Point) -> f64 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::pen::rectangle;

    fn veil() -> Veil {
        let mut veil = Veil::default();
        veil.cover(&rectangle(at(10.0, 0.0), at(20.0, 10.0)));
        veil
    }

    #[test]
    fn a_line_behind_a_shape_is_cut_at_its_edges() {
        let seen = veil().seen(&[at(0.0, 5.0), at(30.0, 5.0)]);
        assert_eq!(
            seen,
            vec![
                vec![at(0.0, 5.0), at(10.0, 5.0)],
                vec![at(20.0, 5.0), at(30.0, 5.0)]
            ]
        );
        assert!(veil().seen(&[at(12.0, 5.0), at(18.0, 5.0)]).is_empty());
    }

    #[test]
    fn an_edge_is_seen_and_a_run_stays_in_one_piece() {
        let edge = [at(10.0, 0.0), at(20.0, 0.0), at(20.0, 10.0)];
        assert_eq!(veil().seen(&edge), vec![edge.to_vec()]);
        let beside = [at(0.0, 20.0), at(15.0, 20.0), at(30.0, 20.0)];
        assert_eq!(veil().seen(&beside), vec![beside.to_vec()]);
    }

    #[test]
    fn the_hull_of_a_square_and_what_lies_in_it_is_the_square() {
        let mut places = rectangle(at(0.0, 0.0), at(4.0, 4.0));
        places.extend([at(1.0, 1.0), at(2.0, 3.0), at(2.0, 0.0)]);
        assert_eq!(hull(&places).len(), 4);
    }
}
