//! Patches on a quarter of the block: base, wall across x, wall across y, fine towards every edge and every end of contact.

use super::Shape;

/// A rectangle on the block's face, its sides along the axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// Its middle: x, y, depth.
    pub centre: [f64; 3],
    /// Half its extent along each axis; nought across it.
    pub half: [f64; 3],
    /// The axis that it lies across.
    pub axis: usize,
    /// Without contact: free of traction.
    pub free: bool,
}

impl Patch {
    /// The axes along its sides.
    pub fn sides(&self) -> (usize, usize) {
        ((self.axis + 1) % 3, (self.axis + 2) % 3)
    }

    /// Its area.
    pub fn area(&self) -> f64 {
        let (u, v) = self.sides();
        4.0 * self.half[u] * self.half[v]
    }
}

/// How fine a mesh is and how strongly its cells narrow towards edges: each power is one for even cells.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Cells over half the geometric mean of the sides.
    pub cells: f64,
    /// How the cells of a line are counted.
    pub lines: Lines,
    /// Power on the base.
    pub base: f64,
    /// Power along the walls.
    pub along: f64,
    /// Power down the walls.
    pub down: f64,
}

/// How the cells of a line are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lines {
    /// Any number.
    Any,
    /// An even number.
    Even,
    /// Half of the even number: the coarser mesh to [`Lines::Even`], with the same shape.
    Half,
}

impl Fineness {
    /// Cells on a line of this length over the scale.
    fn count(&self, length_ratio: f64) -> usize {
        let cells = self.cells * length_ratio.sqrt();
        let pairs = (0.5 * cells).round().max(1.0) as usize;
        match self.lines {
            Lines::Any => cells.round().max(2.0) as usize,
            Lines::Even => 2 * pairs,
            Lines::Half => pairs,
        }
    }
}

/// One cell of a line: its middle and half its length.
type Cell = (f64, f64);

/// The quarter of the block with x and y positive.
pub fn quarter(shape: &Shape, fineness: Fineness) -> Vec<Patch> {
    let (a, b, depth) = (shape.length_m / 2.0, shape.width_m / 2.0, shape.depth_m);
    let scale = (a * b).sqrt();
    let count = |length: f64| fineness.count(length / scale);
    let (xs, ys) = (
        one_sided(a, count(a), fineness.base),
        one_sided(b, count(b), fineness.base),
    );
    let walls = depths(shape, fineness, scale);
    let mut patches = Vec::new();
    for &(x, half_x) in &xs {
        for &(y, half_y) in &ys {
            patches.push(Patch {
                centre: [x, y, depth],
                half: [half_x, half_y, 0.0],
                axis: 2,
                free: false,
            });
        }
    }
    let (xs, ys) = (
        one_sided(a, count(a), fineness.along),
        one_sided(b, count(b), fineness.along),
    );
    for &((z, half_z), free) in &walls {
        patches.extend(ys.iter().map(|&(y, half_y)| Patch {
            centre: [a, y, z],
            half: [0.0, half_y, half_z],
            axis: 0,
            free,
        }));
        patches.extend(xs.iter().map(|&(x, half_x)| Patch {
            centre: [x, b, z],
            half: [half_x, 0.0, half_z],
            axis: 1,
            free,
        }));
    }
    patches
}

/// Cells down the walls, with whether they are free.
fn depths(shape: &Shape, fineness: Fineness, scale: f64) -> Vec<(Cell, bool)> {
    let (from, to, depth) = (shape.contact_from_m, shape.contact_to_m, shape.depth_m);
    let segments = if to <= from {
        vec![(0.0, depth, true)]
    } else {
        vec![(0.0, from, true), (from, to, false), (to, depth, true)]
    };
    let mut cells = Vec::new();
    for (start, end, free) in segments.into_iter().filter(|(start, end, _)| end > start) {
        let length = end - start;
        let count = fineness.count(length / scale);
        // A free wall is quiet at the surface; a bonded one is not.
        let line = if start == 0.0 && free {
            one_sided(length, count, fineness.down)
        } else {
            two_sided(length, count, fineness.down)
        };
        cells.extend(
            line.into_iter()
                .map(|(middle, half)| ((start + middle, half), free)),
        );
    }
    cells
}

/// Cells on `0..length` that narrow towards `length`.
fn one_sided(length: f64, count: usize, grading: f64) -> Vec<Cell> {
    let node = |i: usize| length * (1.0 - (1.0 - i as f64 / count as f64).powf(grading));
    between(node, count)
}

/// Cells on `0..length` that narrow towards both ends.
fn two_sided(length: f64, count: usize, grading: f64) -> Vec<Cell> {
    let node = |i: usize| {
        let s = 2.0 * i as f64 / count as f64;
        length / 2.0
            * if s <= 1.0 {
                s.powf(grading)
            } else {
                2.0 - (2.0 - s).powf(grading)
            }
    };
    between(node, count)
}

fn between(node: impl Fn(usize) -> f64, count: usize) -> Vec<Cell> {
    (0..count)
        .map(|i| ((node(i) + node(i + 1)) / 2.0, (node(i + 1) - node(i)) / 2.0))
        .collect()
}
