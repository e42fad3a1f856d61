//! How the pattern is cut into tiles: which there are, which are printed, and where their register marks stand.

#[cfg(test)]
mod tests;

use super::Pattern;
use crate::drawing::area::Area;
use crate::drawing::at;

/// How much neighbouring tiles share, mm.
const OVERLAP: f64 = 12.0;
/// Paper round the pattern, mm.
const ROUND: f64 = 8.0;
/// How the pattern is cut into tiles.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    /// Tiles from west to east.
    pub columns: usize,
    /// Tiles from north to south.
    pub rows: usize,
    width: f64,
    height: f64,
    /// How far all tiles are moved east and south of the pattern's middle.
    shift: (f64, f64),
    /// What register marks keep clear of: holes with their crosses and numbers, outline and axes.
    taken: Vec<Area>,
}

/// One tile: its name and the corner of its window, in the pattern's coordinates.
#[derive(Debug, Clone, PartialEq)]
pub struct Tile {
    /// Row as a letter, column as a number.
    pub name: String,
    /// West edge.
    pub west: f64,
    /// North edge.
    pub north: f64,
}

impl Grid {
    /// Tiles of at most such a size over a pattern.
    #[must_use]
    pub fn over(pattern: &Pattern, width: f64, height: f64) -> Self {
        let reach = pattern
            .holes
            .iter()
            .map(|(x, y)| x.abs().max(y.abs()) + pattern.hole)
            .fold(pattern.plate.max(pattern.column) / 2.0, f64::max);
        let span = 2.0 * (reach + ROUND);
        let radius = pattern.hole / 2.0 + 1.0;
        let (east, south) = pattern
            .holes
            .iter()
            .map(|&(x, north)| (x, -north))
            .unzip::<_, _, Vec<f64>, Vec<f64>>();
        let ((columns, right), (rows, down)) = (
            divided(span, width, &east, radius),
            divided(span, height, &south, radius),
        );
        Self {
            columns,
            rows,
            width,
            height,
            shift: (right, down),
            taken: taken(pattern),
        }
    }

    /// How many tiles.
    #[must_use]
    pub fn count(&self) -> usize {
        self.columns * self.rows
    }

    /// A tile's window, y downwards.
    #[must_use]
    pub fn window(&self, tile: &Tile) -> Area {
        Area {
            left: tile.west,
            right: tile.west + self.width,
            top: -tile.north,
            bottom: -tile.north + self.height,
        }
    }

    /// West edges of the columns.
    fn wests(&self) -> impl Iterator<Item = f64> {
        starts(self.columns, self.width, self.shift.0)
    }

    /// Upper edges of the rows, y downwards.
    fn tops(&self) -> impl Iterator<Item = f64> {
        starts(self.rows, self.height, self.shift.1)
    }

    /// Size of a tile's window: from west to east, from north to south.
    #[must_use]
    pub const fn tile_size(&self) -> (f64, f64) {
        (self.width, self.height)
    }

    /// Size of all tiles together.
    #[must_use]
    pub fn extent(&self) -> (f64, f64) {
        (
            extent(self.columns, self.width),
            extent(self.rows, self.height),
        )
    }

    /// The tiles that have something to drill or to cut by, row by row from the north-west, and those that join them.
    #[must_use]
    pub fn tiles(&self, pattern: &Pattern) -> Vec<Tile> {
        let all = self.all();
        let mut kept: Vec<bool> = all
            .iter()
            .map(|tile| marked(&self.window(tile), pattern))
            .collect();
        self.join(&mut kept);
        all.into_iter()
            .zip(kept)
            .filter_map(|(tile, kept)| kept.then_some(tile))
            .collect()
    }

    /// Takes tiles in until every kept one is reached from the first, edge by edge: only so can it be laid to the others.
    fn join(&self, kept: &mut [bool]) {
        loop {
            let reached = self.reached(kept);
            let Some(island) = (0..kept.len()).find(|&i| kept[i] && !reached[i]) else {
                return;
            };
            // Straight west to what is reached already, or to the outline, which is reached.
            let row = island - island % self.columns;
            (row..island)
                .rev()
                .take_while(|&i| !reached[i])
                .for_each(|i| kept[i] = true);
            if !(row..island).any(|i| reached[i]) {
                kept.fill(true);
            }
        }
    }

    fn reached(&self, kept: &[bool]) -> Vec<bool> {
        let mut reached = vec![false; kept.len()];
        let mut next: Vec<usize> = kept.iter().position(|&kept| kept).into_iter().collect();
        while let Some(i) = next.pop() {
            if !kept[i] || std::mem::replace(&mut reached[i], true) {
                continue;
            }
            let (row, column) = (i / self.columns, i % self.columns);
            next.extend((column > 0).then(|| i - 1));
            next.extend((column + 1 < self.columns).then_some(i + 1));
            next.extend((row > 0).then(|| i - self.columns));
            next.extend((row + 1 < self.rows).then_some(i + self.columns));
        }
        reached
    }

    fn all(&self) -> Vec<Tile> {
        let mut tiles = Vec::new();
        for (row, south) in self.tops().enumerate() {
            for (column, west) in self.wests().enumerate() {
                let letter = char::from(b'A' + (row % 26) as u8);
                tiles.push(Tile {
                    name: format!("sheet {letter}{}", column + 1),
                    west,
                    north: -south,
                });
            }
        }
        tiles
    }

    /// Where register marks stand: on the middle of every overlap of two printed tiles, twice along each edge, and clear of
    /// holes and lines wherever there is room. East and north.
    #[must_use]
    pub fn registers(&self, tiles: &[Tile]) -> Vec<(f64, f64)> {
        let windows: Vec<Area> = tiles
            .iter()
            .map(|tile| self.window(tile).with_margin(-4.0))
            .collect();
        let whole = |area: &Area, (x, north): (f64, f64)| {
            x >= area.left && x <= area.right && -north >= area.top && -north <= area.bottom
        };
        self.overlaps()
            .into_iter()
            .filter(|&mark| windows.iter().filter(|area| whole(area, mark)).count() > 1)
            .collect()
    }

    fn overlaps(&self) -> Vec<(f64, f64)> {
        let mut marks = Vec::new();
        for x in self.wests().skip(1).map(|start| start + OVERLAP / 2.0) {
            marks.extend(
                self.tops()
                    .flat_map(|top| self.along(top, self.height, |y| (x, y))),
            );
        }
        for y in self.tops().skip(1).map(|start| start + OVERLAP / 2.0) {
            marks.extend(
                self.wests()
                    .flat_map(|west| self.along(west, self.width, |x| (x, y))),
            );
        }
        marks
    }

    /// Two places along an edge, each moved aside until it is clear of what is taken; where none is, as it was.
    fn along(&self, start: f64, window: f64, place: impl Fn(f64) -> (f64, f64)) -> Vec<(f64, f64)> {
        let clear = |&(x, y): &(f64, f64)| {
            !self
                .taken
                .iter()
                .any(|area| x > area.left && x < area.right && y > area.top && y < area.bottom)
        };
        [0.27, 0.73]
            .map(|share| {
                let moved = |aside: f64| place(start + window * share + aside);
                let mut tried = (0..=MOST_ASIDE)
                    .flat_map(|step| [f64::from(step), -f64::from(step)])
                    .map(moved);
                let (x, y) = tried.find(clear).unwrap_or_else(|| moved(0.0));
                (x, -y)
            })
            .into()
    }
}

/// How far a register mark is moved along its edge, at most, mm.
const MOST_ASIDE: u32 = 30;
/// How far a register mark reaches, mm.
const REGISTER: f64 = 5.0;

/// What register marks keep clear of, y downwards.
fn taken(pattern: &Pattern) -> Vec<Area> {
    let (radius, half) = (pattern.hole / 2.0, pattern.plate / 2.0);
    let (arm, reach) = (radius + ARM, half + ROUND);
    let hole = |&(x, north): &(f64, f64)| Area {
        left: x - arm,
        right: x + arm.max(radius + NUMBER),
        top: -north - arm.max(radius + NUMBER),
        bottom: -north + arm,
    };
    let lines = [-half, 0.0, half].into_iter().flat_map(|place| {
        [
            Area {
                left: place,
                right: place,
                top: -reach,
                bottom: reach,
            },
            Area {
                left: -reach,
                right: reach,
                top: place,
                bottom: place,
            },
        ]
    });
    pattern
        .holes
        .iter()
        .map(hole)
        .chain(lines)
        .map(|area| area.with_margin(REGISTER))
        .collect()
}

/// Room for a hole's number, mm.
const NUMBER: f64 = 14.0;

fn extent(count: usize, window: f64) -> f64 {
    (window - OVERLAP) * (count - 1) as f64 + window
}

fn starts(count: usize, window: f64, shift: f64) -> impl Iterator<Item = f64> {
    let first = shift - extent(count, window) / 2.0;
    (0..count).map(move |i| first + (window - OVERLAP) * i as f64)
}

/// How many windows go over a span in one direction, and how far they are moved so that each hole is whole in one of them.
fn divided(span: f64, window: f64, holes: &[f64], radius: f64) -> (usize, f64) {
    let least = ((span - OVERLAP) / (window - OVERLAP)).ceil().max(1.0) as usize;
    let whole = |count: usize, shift: f64| {
        let in_one = |hole: f64| {
            starts(count, window, shift)
                .any(|start| hole - radius >= start && hole + radius <= start + window)
        };
        holes.iter().all(|&hole| in_one(hole))
    };
    for count in [least, least + 1] {
        let room = ((extent(count, window) - span) / 2.0).floor().max(0.0) as u32;
        let shifts = (0..=room).flat_map(|step| [f64::from(step), -f64::from(step)]);
        if let Some(shift) = shifts.into_iter().find(|&shift| whole(count, shift)) {
            return (count, shift);
        }
    }
    (least, 0.0)
}

/// Whether a window has a hole, with its cross, or a part of the plate's outline in it.
fn marked(window: &Area, pattern: &Pattern) -> bool {
    let half = pattern.plate / 2.0;
    let corners = [
        at(-half, -half),
        at(half, -half),
        at(half, half),
        at(-half, half),
    ];
    let arm = pattern.hole / 2.0 + ARM;
    (0..4).any(|i| window.share_of(corners[i], corners[(i + 1) % 4]).is_some())
        || pattern.holes.iter().any(|&(x, north)| {
            let hole = Area {
                left: x - arm,
                right: x + arm,
                top: -north - arm,
                bottom: -north + arm,
            };
            hole.meets(window)
        })
}

/// How far the cross of a hole reaches beyond it, mm.
pub const ARM: f64 = 6.0;
