//! Hatches for what is cut: ground, concrete, steel, grout, water and the like, after ISO 128-3's advice that each material
//! keeps one pattern. They are worked out as lines, so that paper, screen and PDF show the same ones.

use crate::drawing::area::Area;
use crate::drawing::{Item, Line, Point, at};

/// What is hatched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hatch {
    /// Ground that was there before.
    Ground,
    /// Ground put back.
    Backfill,
    /// Rock.
    Rock,
    /// Concrete.
    Concrete,
    /// Concrete on faces so small that the usual strokes would hardly show.
    SmallConcrete,
    /// Steel.
    Steel,
    /// Grout.
    Grout,
    /// Resin.
    Resin,
    /// Water.
    Water,
    /// Sand.
    Sand,
    /// An area that a calculation takes, of whatever material.
    Area,
}

/// The lines and dots of a hatch within closed outlines, left out where letters stand.
#[must_use]
pub fn items(hatch: Hatch, outlines: &[Vec<Point>], letters: &[Area]) -> Vec<Item> {
    let strokes =
        |angle: f64, spacing: f64, line| strokes(outlines, letters, angle, spacing, &[], line);
    match hatch {
        Hatch::Ground => ground(outlines, letters),
        Hatch::Backfill => self::strokes(outlines, letters, 45.0, 3.2, &[2.2, 1.6], Line::Hair),
        Hatch::Rock => [50.0, -25.0]
            .into_iter()
            .flat_map(|angle| self::strokes(outlines, letters, angle, 4.5, &[3.2, 3.2], Line::Hair))
            .collect(),
        Hatch::Steel => strokes(45.0, 1.1, Line::Hair),
        Hatch::Resin => strokes(-45.0, 0.7, Line::Hair),
        Hatch::Water => self::strokes(outlines, letters, 0.0, 2.6, &[5.0, 2.0], Line::Hair),
        Hatch::Concrete => {
            let mut all = self::strokes(outlines, letters, 45.0, 6.0, &[], Line::Hair);
            all.extend(scatter(outlines, letters, 4.3, 0.17));
            all
        }
        Hatch::SmallConcrete => {
            let mut all = strokes(45.0, 3.0, Line::Hair);
            all.extend(scatter(outlines, letters, 2.6, 0.15));
            all
        }
        Hatch::Grout => scatter(outlines, letters, 0.9, 0.14),
        Hatch::Area => strokes(-45.0, 2.0, Line::Hair),
        Hatch::Sand => scatter(outlines, letters, 1.8, 0.13),
    }
}

/// Groups of three strokes.
fn ground(outlines: &[Vec<Point>], letters: &[Area]) -> Vec<Item> {
    [0.0, 0.9, 1.8]
        .into_iter()
        .flat_map(|offset| shifted(outlines, letters, offset))
        .collect()
}

fn shifted(outlines: &[Vec<Point>], letters: &[Area], offset: f64) -> Vec<Item> {
    dashed(
        outlines,
        letters,
        -45.0,
        6.0,
        offset,
        &[4.4, 3.2],
        Line::Hair,
    )
}

fn strokes(
    outlines: &[Vec<Point>],
    letters: &[Area],
    angle_deg: f64,
    spacing: f64,
    dashes: &[f64],
    line: Line,
) -> Vec<Item> {
    dashed(outlines, letters, angle_deg, spacing, 0.0, dashes, line)
}

/// Parallel strokes, cut into dashes where there are any.
fn dashed(
    outlines: &[Vec<Point>],
    letters: &[Area],
    angle_deg: f64,
    spacing: f64,
    offset: f64,
    dashes: &[f64],
    line: Line,
) -> Vec<Item> {
    let (sin, cos) = angle_deg.to_radians().sin_cos();
    // In turned coordinates the strokes are level: u along them, v across.
    let turned: Vec<Vec<(f64, f64)>> = outlines
        .iter()
        .map(|outline| {
            outline
                .iter()
                .map(|p| (p.x * cos + p.y * sin, p.y * cos - p.x * sin))
                .collect()
        })
        .collect();
    let (low, high) = extent(turned.iter().flatten().map(|&(_, v)| v));
    let mut runs = Vec::new();
    let mut row = ((low - offset) / spacing).ceil();
    while row * spacing + offset < high {
        let v = row * spacing + offset;
        for (from, to) in crossings(&turned, v) {
            let stagger = if (row as i64).rem_euclid(2) == 0 {
                0.0
            } else {
                0.5
            };
            for (a, b) in cut(from, to, dashes, stagger) {
                let back = |u: f64| at(u * cos - v * sin, u * sin + v * cos);
                clear(back(a), back(b), letters, &mut runs);
            }
        }
        row += 1.0;
    }
    if runs.is_empty() {
        Vec::new()
    } else {
        vec![Item::Path {
            runs,
            closed: false,
            line,
        }]
    }
}

fn extent(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
        (low.min(v), high.max(v))
    })
}

/// Where a level line is inside the outlines, by the even–odd rule.
fn crossings(outlines: &[Vec<(f64, f64)>], v: f64) -> Vec<(f64, f64)> {
    let mut cuts = Vec::new();
    for outline in outlines {
        for (i, &(u0, v0)) in outline.iter().enumerate() {
            let (u1, v1) = outline[(i + 1) % outline.len()];
            if (v0 <= v) != (v1 <= v) {
                cuts.push(u0 + (v - v0) / (v1 - v0) * (u1 - u0));
            }
        }
    }
    cuts.sort_by(f64::total_cmp);
    cuts.chunks_exact(2)
        .map(|pair| (pair[0], pair[1]))
        .collect()
}

/// A stretch cut into dashes whose phase belongs to the paper, not to the stretch.
fn cut(from: f64, to: f64, dashes: &[f64], stagger: f64) -> Vec<(f64, f64)> {
    let [dash, gap] = dashes else {
        return vec![(from, to)];
    };
    let period = dash + gap;
    let mut pieces = Vec::new();
    let mut start = ((from / period).floor() - 1.0 + stagger) * period;
    while start < to {
        let (a, b) = (start.max(from), (start + dash).min(to));
        if b - a > 0.3 {
            pieces.push((a, b));
        }
        start += period;
    }
    pieces
}

/// Adds a stroke, less what would run through lettering.
fn clear(a: Point, b: Point, letters: &[Area], runs: &mut Vec<Vec<Point>>) {
    let mut pieces = vec![(0.0, 1.0)];
    for area in letters {
        if let Some((enter, leave)) = area.share_of(a, b) {
            pieces = pieces
                .into_iter()
                .flat_map(|(from, to): (f64, f64)| [(from, to.min(enter)), (from.max(leave), to)])
                .filter(|(from, to)| to - from > 1e-6)
                .collect();
        }
    }
    let along = |t: f64| at(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
    runs.extend(
        pieces
            .into_iter()
            .map(|(from, to)| vec![along(from), along(to)]),
    );
}

/// Dots spread as if by chance, always the same ones.
fn scatter(outlines: &[Vec<Point>], letters: &[Area], spacing: f64, radius: f64) -> Vec<Item> {
    let points: Vec<Vec<(f64, f64)>> = outlines
        .iter()
        .map(|outline| outline.iter().map(|p| (p.x, p.y)).collect())
        .collect();
    let (low, high) = extent(points.iter().flatten().map(|&(_, y)| y));
    let mut dots = Vec::new();
    let mut row = (low / spacing).floor();
    while row * spacing < high {
        let mut column = 0.0;
        for (from, to) in crossings(&points, (row + 0.5) * spacing) {
            column = f64::max(column, (from / spacing).floor());
            while column * spacing < to {
                let (dx, dy) = chance(column as i64, row as i64);
                let (x, y) = (
                    (column + dx) * spacing,
                    (row + 0.5 + 0.4 * (dy - 0.5)) * spacing,
                );
                let dot = Area {
                    left: x - radius,
                    right: x + radius,
                    top: y - radius,
                    bottom: y + radius,
                };
                if x - radius > from
                    && x + radius < to
                    && !letters.iter().any(|area| area.meets(&dot))
                {
                    dots.push(Item::Dot {
                        centre: at(x, y),
                        radius,
                    });
                }
                column += 1.0;
            }
        }
        row += 1.0;
    }
    dots
}

/// Two numbers between 0 and 1 for a cell, by a fixed mixing of its place.
fn chance(column: i64, row: i64) -> (f64, f64) {
    let mut x = (column as u64).wrapping_mul(0x9E37_79B9_7F4A_7C15)
        ^ (row as u64).wrapping_mul(0xC2B2_AE3D_27D4_EB4F);
    x ^= x >> 29;
    x = x.wrapping_mul(0xBF58_476D_1CE4_E5B9);
    x ^= x >> 32;
    (
        (x & 0xFFFF) as f64 / 65_536.0,
        ((x >> 16) & 0xFFFF) as f64 / 65_536.0,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::pen::rectangle;

    #[test]
    fn strokes_stay_within_the_outline_and_out_of_letters() {
        let square = vec![rectangle(at(0.0, 0.0), at(40.0, 30.0))];
        let letters = [Area {
            left: 10.0,
            right: 20.0,
            top: 10.0,
            bottom: 15.0,
        }];
        let Some(Item::Path { runs, .. }) = items(Hatch::Steel, &square, &letters).pop() else {
            panic!("a hatch is a path")
        };
        for run in &runs {
            let middle = at((run[0].x + run[1].x) / 2.0, (run[0].y + run[1].y) / 2.0);
            assert!((0.0..=40.0).contains(&middle.x) && (0.0..=30.0).contains(&middle.y));
            assert!(
                !(10.1..19.9).contains(&middle.x) || !(10.1..14.9).contains(&middle.y),
                "{middle:?}"
            );
        }
    }

    #[test]
    fn a_hole_is_not_hatched() {
        let frame = vec![
            rectangle(at(0.0, 0.0), at(30.0, 30.0)),
            rectangle(at(5.0, 5.0), at(25.0, 25.0)),
        ];
        let dots = items(Hatch::Sand, &frame, &[]);
        assert!(dots.len() > 100, "{}", dots.len());
        for item in dots {
            let Item::Dot { centre, .. } = item else {
                panic!("sand is dots")
            };
            assert!(
                !(5.0..25.0).contains(&centre.x) || !(5.0..25.0).contains(&centre.y),
                "{centre:?}"
            );
        }
    }
}
