//! Tiles of the template: each a window on the same pattern, with rulers at its edges and register marks shared with
//! its neighbours.

use stillground::figure::Units;

use super::Pattern;
use super::grid::{ARM, Grid, Tile};
use crate::drawing::area::{Area, area_of};
use crate::drawing::pen::{Pen, SIZE, SMALL};
use crate::drawing::{Anchor, Drawing, Form, Item, Label, Line, Point, at};
use stillground::units::customary::INCH_MM;

/// Width of the strips at the left and the lower edge in which the rulers stand, mm.
pub const RULERS: f64 = 11.0;
/// Length of a ruler, mm, and of one in inches, in.
pub const RULER: f64 = 100.0;
const RULER_IN: f64 = 4.0;

/// Draws a tile: the window at the upper right, rulers left of it and below it.
#[must_use]
pub fn drawing(
    tile: &Tile,
    tiles: &[Tile],
    grid: &Grid,
    pattern: &Pattern,
    units: Units,
) -> Drawing {
    let window = grid.window(tile);
    let mut pen = Pen::default();
    figure(&mut pen, grid, tiles, pattern);
    let mut items = Vec::new();
    for item in pen.into_items() {
        items.extend(clipped(item, &window));
    }
    let mut frame = Pen::default();
    frame.rectangle(
        Line::Hair,
        at(window.left, window.top),
        at(window.right, window.bottom),
    );
    rulers(&mut frame, at(window.left, window.bottom), units);
    items.extend(frame.into_items());
    let (dx, dy) = (RULERS - window.left, -window.top);
    for item in &mut items {
        crate::drawing::pen::shift(item, dx, dy);
    }
    Drawing {
        name: "template",
        title: format!("Drilling template, {}", tile.name),
        description: format!(
            "{} of {} at full size, with rulers of {}",
            tile.name,
            tiles.len(),
            units.either("100 mm", "4 in")
        ),
        form: Form::Sheet,
        width: grid.tile_size().0 + RULERS,
        height: grid.tile_size().1 + RULERS,
        scale: Some(1),
        items,
    }
}

/// The whole pattern, in its own coordinates, y downwards.
fn figure(pen: &mut Pen, grid: &Grid, tiles: &[Tile], pattern: &Pattern) {
    let half = pattern.plate / 2.0;
    pen.rectangle(Line::Thick, at(-half, -half), at(half, half));
    pen.line(Line::Dashed, &ring(at(0.0, 0.0), pattern.column / 2.0));
    let reach = half + 6.0;
    pen.line(Line::Chain, &[at(-reach, 0.0), at(reach, 0.0)]);
    pen.line(Line::Chain, &[at(0.0, -reach), at(0.0, reach)]);
    // Outside the outline, where there is no hole and no tile is left out.
    pen.solid(&[
        at(0.0, -reach),
        at(1.7, -reach + 5.0),
        at(-1.7, -reach + 5.0),
    ]);
    letter(pen, at(3.0, -2.0), Anchor::Start, SIZE, "axis of the pier");
    for (i, &(x, y)) in pattern.holes.iter().enumerate() {
        let centre = at(x, -y);
        pen.circle(Line::Thin, centre, pattern.hole / 2.0);
        let arm = pattern.hole / 2.0 + ARM;
        pen.line(
            Line::Thin,
            &[at(centre.x - arm, centre.y), at(centre.x + arm, centre.y)],
        );
        pen.line(
            Line::Thin,
            &[at(centre.x, centre.y - arm), at(centre.x, centre.y + arm)],
        );
        letter(
            pen,
            at(
                centre.x + pattern.hole / 2.0 + 1.5,
                centre.y - pattern.hole / 2.0 - 1.5,
            ),
            Anchor::Start,
            SIZE * 1.6,
            &(i + 1).to_string(),
        );
    }
    for (x, north) in grid.registers(tiles) {
        let centre = at(x, -north);
        pen.circle(Line::Thin, centre, 2.0);
        pen.line(Line::Thin, &[at(x - 4.0, centre.y), at(x + 4.0, centre.y)]);
        pen.line(Line::Thin, &[at(x, centre.y - 4.0), at(x, centre.y + 4.0)]);
    }
    north(pen, grid, tiles, half, reach);
}

/// The word beside the arrow, on the same tile and on no other mark.
fn north(pen: &mut Pen, grid: &Grid, tiles: &[Tile], half: f64, reach: f64) {
    let label = |&(x, anchor, y): &(f64, Anchor, f64)| Label {
        at: at(x, y),
        size: SIZE * 1.6,
        anchor,
        upright: false,
        bold: true,
        text: "N true north".to_owned(),
    };
    let (above, below) = (-half - 1.5, -half + SIZE * 1.6 + 1.0);
    let places = [
        (6.0, Anchor::Start, above),
        (-6.0, Anchor::End, above),
        (6.0, Anchor::Start, below),
        (-6.0, Anchor::End, below),
    ];
    let fits = |label: &Label| {
        let mut all = area_of(label);
        let free = pen.is_free(&all);
        all.hold(at(0.0, -reach), 1.0);
        let on_one = tiles.iter().map(|tile| grid.window(tile)).any(|window| {
            all.left >= window.left
                && all.right <= window.right
                && all.top >= window.top
                && all.bottom <= window.bottom
        });
        free && on_one
    };
    let chosen = places.iter().map(label).find(fits);
    pen.label(chosen.unwrap_or_else(|| label(&places[0])));
}

fn letter(pen: &mut Pen, at: Point, anchor: Anchor, size: f64, text: &str) {
    pen.label(Label {
        at,
        size,
        anchor,
        upright: false,
        bold: true,
        text: text.to_owned(),
    });
}

fn ring(centre: Point, radius: f64) -> Vec<Point> {
    (0..=180)
        .map(|step| f64::from(step) * std::f64::consts::TAU / 180.0)
        .map(|angle| {
            at(
                centre.x + radius * angle.cos(),
                centre.y + radius * angle.sin(),
            )
        })
        .collect()
}

/// What a ruler shows: its length, its finest step, how many of these make a longer mark and a numbered one.
struct Ruler {
    length: f64,
    step: f64,
    middle: u32,
    long: u32,
    numbered: u32,
    unit: &'static str,
}

impl Ruler {
    fn of(units: Units) -> Self {
        match units {
            Units::Metric => Self {
                length: RULER,
                step: 1.0,
                middle: 5,
                long: 10,
                numbered: 20,
                unit: " mm",
            },
            Units::Imperial => Self {
                length: RULER_IN * INCH_MM,
                step: INCH_MM / 16.0,
                middle: 8,
                long: 16,
                numbered: 16,
                unit: "\u{2033}",
            },
        }
    }

    /// How many of the finest steps it has.
    fn steps(&self) -> u32 {
        (self.length / self.step).round() as u32
    }

    /// What stands at a numbered mark.
    fn number(&self, step: u32) -> String {
        let shown = match self.numbered {
            16 => step / 16,
            _ => step,
        };
        if step == self.steps() {
            format!("{shown}{}", self.unit)
        } else {
            shown.to_string()
        }
    }
}

/// Two rulers at right angles, their noughts at the window's lower left corner.
fn rulers(pen: &mut Pen, corner: Point, units: Units) {
    let ruler = Ruler::of(units);
    let (below, beside) = (corner.y + 2.0, corner.x - 2.0);
    pen.line(
        Line::Thin,
        &[at(corner.x, below), at(corner.x + ruler.length, below)],
    );
    pen.line(
        Line::Thin,
        &[at(beside, corner.y), at(beside, corner.y - ruler.length)],
    );
    for step in 0..=ruler.steps() {
        let (place, length) = (
            f64::from(step) * ruler.step,
            if step % ruler.long == 0 {
                3.0
            } else if step % ruler.middle == 0 {
                2.2
            } else {
                1.4
            },
        );
        pen.line(
            Line::Hair,
            &[
                at(corner.x + place, below),
                at(corner.x + place, below + length),
            ],
        );
        pen.line(
            Line::Hair,
            &[
                at(beside, corner.y - place),
                at(beside - length, corner.y - place),
            ],
        );
    }
    for step in (0..=ruler.steps()).step_by(ruler.numbered as usize) {
        let (place, text) = (f64::from(step) * ruler.step, ruler.number(step));
        let label = |at, upright| Label {
            at,
            size: SMALL,
            anchor: Anchor::Middle,
            upright,
            bold: false,
            text: text.clone(),
        };
        pen.label(label(at(corner.x + place, below + 6.2), false));
        pen.label(label(at(beside - 4.2, corner.y - place), true));
    }
}

/// What of an item is seen in a window. Lettering and circles are taken whole where their middle is in it.
fn clipped(item: Item, window: &Area) -> Option<Item> {
    let inside = |point: Point, margin: f64| {
        let area = window.with_margin(-margin);
        point.x >= area.left
            && point.x <= area.right
            && point.y >= area.top
            && point.y <= area.bottom
    };
    match item {
        Item::Path { runs, closed, line } => {
            let runs: Vec<Vec<Point>> = runs
                .iter()
                .flat_map(|run| segments(run, closed))
                .filter_map(|(a, b)| part(a, b, window))
                .collect();
            (!runs.is_empty()).then_some(Item::Path {
                runs,
                closed: false,
                line,
            })
        }
        Item::Circle {
            centre,
            radius,
            line,
        } if !inside(centre, radius) => clipped(
            Item::Path {
                runs: vec![ring(centre, radius)],
                closed: false,
                line,
            },
            window,
        ),
        Item::Circle { .. } => Some(item),
        Item::Dot { centre, radius } => inside(centre, radius).then_some(item),
        Item::Solid { ref corners } => corners
            .iter()
            .all(|&corner| inside(corner, 0.0))
            .then_some(item),
        Item::Text(ref label) => {
            let area = area_of(label);
            (inside(at(area.left, area.top), 0.0) && inside(at(area.right, area.bottom), 0.0))
                .then_some(item)
        }
    }
}

fn segments(run: &[Point], closed: bool) -> Vec<(Point, Point)> {
    let mut pairs: Vec<(Point, Point)> = run.windows(2).map(|pair| (pair[0], pair[1])).collect();
    if let (true, Some(&first), Some(&last)) = (closed, run.first(), run.last()) {
        pairs.push((last, first));
    }
    pairs
}

fn part(a: Point, b: Point, window: &Area) -> Option<Vec<Point>> {
    let (from, to) = window.share_of(a, b)?;
    let along = |t: f64| at(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
    Some(vec![along(from), along(to)])
}
