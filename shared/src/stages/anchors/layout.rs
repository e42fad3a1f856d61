//! Where the studs stand, how near to the block's edges and to each other, and the areas that they share.

use serde::Serialize;

use crate::brief::Brief;
use crate::stages::block::Block;
use crate::units::{Area, Length, millimetre, square_millimetre};

/// Studs whose coordinates differ by less than this stand in one row, mm.
const ROW_MM: f64 = 1.0;

/// Place of a stud, from the pier's axis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Stud {
    /// East.
    #[serde(rename = "x_mm", with = "millimetre")]
    pub x: Length,
    /// North.
    #[serde(rename = "y_mm", with = "millimetre")]
    pub y: Length,
}

impl Stud {
    /// Coordinates in mm.
    fn mm(self) -> [f64; 2] {
        [millimetre::get(self.x), millimetre::get(self.y)]
    }
}

/// Even on the circle, the first to the east; with four the first at 45°, so that they make a square along x and y.
pub fn ring(count: usize, diameter: Length) -> Vec<Stud> {
    let first = if count == 4 {
        std::f64::consts::FRAC_PI_4
    } else {
        0.0
    };
    let radius = diameter / 2.0;
    (0..count)
        .map(|i| {
            let (sine, cosine) =
                (first + std::f64::consts::TAU * i as f64 / count as f64).sin_cos();
            Stud {
                x: radius * cosine,
                y: radius * sine,
            }
        })
        .collect()
}

/// A block seen from above: half its sides, and its thickness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Concrete {
    /// Half along x and half along y.
    pub half: [Length; 2],
    /// From top to base.
    pub thickness: Length,
}

impl Concrete {
    /// The block's.
    pub fn of(block: &Block) -> Self {
        Self {
            half: [block.length / 2.0, block.width / 2.0],
            thickness: block.depth + block.upstand,
        }
    }

    /// Distances of a stud to the four edges: east, west, north, south; never less than a tenth of a millimetre.
    pub fn edges(&self, stud: Stud) -> [Length; 4] {
        let [x, y] = stud.mm();
        let [hx, hy] = self.half.map(millimetre::get);
        [hx - x, hx + x, hy - y, hy + y].map(|edge| millimetre::new(edge.max(0.1)))
    }
}

/// Studs that act together in a block.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// The studs.
    pub studs: Vec<Stud>,
    /// The block.
    pub concrete: Concrete,
}

impl Group {
    /// Distance to an edge of the stud nearest to it, for each edge.
    pub fn edges(&self) -> [Length; 4] {
        let mut nearest = [f64::INFINITY; 4];
        for &stud in &self.studs {
            for (near, edge) in nearest.iter_mut().zip(self.concrete.edges(stud)) {
                *near = near.min(millimetre::get(edge));
            }
        }
        nearest.map(millimetre::new)
    }

    /// The least of them.
    pub fn nearest_edge(&self) -> Length {
        millimetre::new(
            self.edges()
                .iter()
                .map(|&edge| millimetre::get(edge))
                .fold(f64::INFINITY, f64::min),
        )
    }

    /// The greatest edge distance below `reach` if three or more are, else none.
    pub fn narrow(&self, reach: Length) -> Option<Length> {
        let near: Vec<f64> = self
            .edges()
            .iter()
            .map(|&edge| millimetre::get(edge))
            .filter(|&edge| edge < millimetre::get(reach))
            .collect();
        (near.len() >= 3).then(|| millimetre::new(near.iter().copied().fold(0.0, f64::max)))
    }

    /// Greatest distance between neighbours along x or y; nothing for one stud.
    pub fn largest_spacing(&self) -> Length {
        let along = |axis: usize| {
            let mut at: Vec<f64> = self.studs.iter().map(|stud| stud.mm()[axis]).collect();
            at.sort_by(f64::total_cmp);
            at.windows(2)
                .map(|pair| pair[1] - pair[0])
                .fold(0.0, f64::max)
        };
        millimetre::new(along(0).max(along(1)))
    }

    /// Distance of each stud to its nearest neighbour, the mean and the least; none for one stud.
    pub fn spacing(&self) -> Option<(Length, Length)> {
        let nearest: Vec<f64> = self
            .studs
            .iter()
            .enumerate()
            .map(|(i, one)| {
                let others = self.studs.iter().enumerate().filter(|&(j, _)| j != i);
                let far =
                    |other: &Stud| (one.mm()[0] - other.mm()[0]).hypot(one.mm()[1] - other.mm()[1]);
                others
                    .map(|(_, other)| far(other))
                    .fold(f64::INFINITY, f64::min)
            })
            .collect();
        let least = nearest.iter().copied().fold(f64::INFINITY, f64::min);
        let mean = nearest.iter().sum::<f64>() / nearest.len() as f64;
        least
            .is_finite()
            .then(|| (millimetre::new(mean), millimetre::new(least)))
    }

    /// Area of the squares of half-side `reach` about the studs, overlaps counted once, within the block.
    pub fn area(&self, reach: Length) -> Area {
        let reach = millimetre::get(reach);
        let [hx, hy] = self.concrete.half.map(millimetre::get);
        let squares: Vec<[f64; 4]> = self
            .studs
            .iter()
            .map(|stud| stud.mm())
            .map(|[x, y]| {
                [
                    (x - reach).max(-hx),
                    (x + reach).min(hx),
                    (y - reach).max(-hy),
                    (y + reach).min(hy),
                ]
            })
            .collect();
        let mut xs: Vec<f64> = squares
            .iter()
            .flat_map(|square| [square[0], square[1]])
            .collect();
        xs.sort_by(f64::total_cmp);
        let strips = xs.windows(2).map(|pair| {
            let (middle, width) = ((pair[0] + pair[1]) / 2.0, pair[1] - pair[0]);
            width
                * covered(
                    squares
                        .iter()
                        .filter(|square| square[0] < middle && middle < square[1])
                        .map(|square| (square[2], square[3])),
                )
        });
        square_millimetre::new(strips.sum())
    }

    /// The row of studs nearest to an edge (0 east, 1 west, 2 north, 3 south).
    pub fn row(&self, edge: usize) -> Self {
        let least = millimetre::get(self.edges()[edge % 4]);
        let near =
            |stud: &&Stud| millimetre::get(self.concrete.edges(**stud)[edge % 4]) < least + ROW_MM;
        Self {
            studs: self.studs.iter().filter(near).copied().collect(),
            concrete: self.concrete,
        }
    }

    /// Length of a row along its edge.
    pub fn row_length(&self, edge: usize) -> Length {
        let axis = usize::from(edge < 2);
        let at = || self.studs.iter().map(|stud| stud.mm()[axis]);
        millimetre::new(
            (at().fold(f64::NEG_INFINITY, f64::max) - at().fold(f64::INFINITY, f64::min)).max(0.0),
        )
    }
}

/// Length covered by intervals, overlaps counted once.
fn covered(intervals: impl Iterator<Item = (f64, f64)>) -> f64 {
    let mut intervals: Vec<(f64, f64)> = intervals.filter(|&(from, to)| to > from).collect();
    intervals.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut sum, mut end) = (0.0, f64::NEG_INFINITY);
    for (from, to) in intervals {
        if to > end {
            sum += to - from.max(end);
            end = to;
        }
    }
    sum
}

/// All studs of a plan in its block.
pub fn group(brief: &Brief, block: &Block) -> Group {
    Group {
        studs: ring(brief.anchors.number(), brief.anchors.circle_diameter.value),
        concrete: Concrete::of(block),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::metre;

    fn square(side: f64, spacing: f64) -> Group {
        let concrete = Concrete {
            half: [millimetre::new(side / 2.0); 2],
            thickness: metre::new(1.0),
        };
        Group {
            studs: ring(4, millimetre::new(spacing * std::f64::consts::SQRT_2)),
            concrete,
        }
    }

    /// Computed: four at 200 mm, 300 mm from the edges, 160 mm deep: 2.0069 of one stud's (480 mm)².
    #[test]
    fn four_studs_share_their_cones() {
        let group = square(800.0, 200.0);
        let ratio = square_millimetre::get(group.area(millimetre::new(240.0))) / (480.0 * 480.0);
        assert!((ratio - 2.0069).abs() < 1e-4, "{ratio}");
        assert!((millimetre::get(group.nearest_edge()) - 300.0).abs() < 1e-9);
        assert!((millimetre::get(group.largest_spacing()) - 200.0).abs() < 1e-9);
    }

    #[test]
    fn far_studs_share_nothing_and_edges_cut() {
        let far = square(5000.0, 1000.0);
        assert!(
            (square_millimetre::get(far.area(millimetre::new(100.0))) - 160_000.0).abs() < 1e-6
        );
        let cut = square(300.0, 200.0);
        assert!((square_millimetre::get(cut.area(millimetre::new(240.0))) - 90_000.0).abs() < 1e-6);
        assert!(
            cut.narrow(millimetre::new(240.0)).is_some()
                && far.narrow(millimetre::new(240.0)).is_none()
        );
    }

    #[test]
    fn a_row_is_what_stands_nearest_to_an_edge() {
        let group = square(800.0, 200.0);
        let row = group.row(0);
        assert_eq!(row.studs.len(), 2);
        assert!((millimetre::get(row.row_length(0)) - 200.0).abs() < 1e-9);
    }
}
