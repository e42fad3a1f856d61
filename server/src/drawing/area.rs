//! Rectangles on paper: what a label or an item covers, and what runs through it.

use crate::drawing::{Anchor, Item, Label, Point};
use crate::lettering::{self, Face};

/// A rectangle on paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Lower edge.
    pub bottom: f64,
}

impl Area {
    /// Nothing yet.
    pub const EMPTY: Self = Self {
        left: f64::INFINITY,
        top: f64::INFINITY,
        right: f64::NEG_INFINITY,
        bottom: f64::NEG_INFINITY,
    };

    /// Grown so that it holds a point with so much round it.
    pub fn hold(&mut self, point: Point, round: f64) {
        self.left = self.left.min(point.x - round);
        self.right = self.right.max(point.x + round);
        self.top = self.top.min(point.y - round);
        self.bottom = self.bottom.max(point.y + round);
    }

    /// Whether two rectangles share more than an edge.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// The rectangle with a margin.
    #[must_use]
    pub fn with_margin(&self, margin: f64) -> Self {
        Self {
            left: self.left - margin,
            top: self.top - margin,
            right: self.right + margin,
            bottom: self.bottom + margin,
        }
    }

    /// The share of a stroke that lies in the rectangle: where it enters and leaves, from 0 at its start to 1 at its end.
    #[must_use]
    pub fn share_of(&self, a: Point, b: Point) -> Option<(f64, f64)> {
        // Most strokes lie wholly to one side, and need no division to say so.
        if a.x.max(b.x) < self.left
            || a.x.min(b.x) > self.right
            || a.y.max(b.y) < self.top
            || a.y.min(b.y) > self.bottom
        {
            return None;
        }
        let (mut enter, mut leave) = (0.0f64, 1.0f64);
        for (start, step, low, high) in [
            (a.x, b.x - a.x, self.left, self.right),
            (a.y, b.y - a.y, self.top, self.bottom),
        ] {
            if step.abs() < 1e-12 {
                if start < low || start > high {
                    return None;
                }
                continue;
            }
            let (t0, t1) = ((low - start) / step, (high - start) / step);
            enter = enter.max(t0.min(t1));
            leave = leave.min(t0.max(t1));
        }
        (enter < leave).then_some((enter, leave))
    }

    /// Whether a circle's line runs through the rectangle.
    #[must_use]
    pub fn meets_ring(&self, centre: Point, radius: f64) -> bool {
        let (dx, dy) = (
            (self.left - centre.x).max(centre.x - self.right).max(0.0),
            (self.top - centre.y).max(centre.y - self.bottom).max(0.0),
        );
        let far = (self.left - centre.x)
            .abs()
            .max((self.right - centre.x).abs())
            .hypot(
                (self.top - centre.y)
                    .abs()
                    .max((self.bottom - centre.y).abs()),
            );
        dx.hypot(dy) < radius && far > radius
    }
}

/// A label's face, its length, and how much of that stands before its anchor.
pub fn set_at(label: &Label) -> (Face, f64, f64) {
    let face = if label.bold {
        Face::FiguresBold
    } else {
        Face::Figures
    };
    let length = lettering::width(face, &label.text, label.size);
    let before = match label.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => length / 2.0,
        Anchor::End => length,
    };
    (face, length, before)
}

/// The ground that a label covers.
#[must_use]
pub fn area_of(label: &Label) -> Area {
    let (_, length, before) = set_at(label);
    let (up, down) = (0.74 * label.size, 0.22 * label.size);
    let Point { x, y } = label.at;
    if label.upright {
        Area {
            left: x - up,
            right: x + down,
            top: y - (length - before),
            bottom: y + before,
        }
    } else {
        Area {
            left: x - before,
            right: x + length - before,
            top: y - up,
            bottom: y + down,
        }
    }
}

/// The ground that an item covers.
#[must_use]
pub fn bounds(item: &Item) -> Area {
    let mut area = Area::EMPTY;
    match item {
        Item::Path { runs, line, .. } => runs
            .iter()
            .flatten()
            .for_each(|&point| area.hold(point, line.weight_mm() / 2.0)),
        Item::Solid { corners } => corners.iter().for_each(|&point| area.hold(point, 0.0)),
        Item::Circle {
            centre,
            radius,
            line,
        } => area.hold(*centre, radius + line.weight_mm() / 2.0),
        Item::Dot { centre, radius } => area.hold(*centre, *radius),
        Item::Text(label) => area = area_of(label),
    }
    area
}
