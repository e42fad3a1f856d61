//! Which tile of the template goes where.

use stillground::figure::Units;

use super::Pattern;
use super::grid::{Grid, Tile};
use crate::drawing::area::area_of;
use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, Pen, SIZE};
use crate::drawing::{Anchor, Drawing, Label, Line, at};

/// Largest extent of the drawing of all tiles, mm.
const ROOM: f64 = 84.0;
const TITLE: &str = "Which sheet goes where";

/// Draws all tiles, those that are printed with their names.
#[must_use]
pub fn drawing(grid: &Grid, tiles: &[Tile], pattern: &Pattern, units: Units) -> Drawing {
    let (width, height) = grid.extent();
    let ratio = ROOM / width.max(height);
    let mut pen = Pen::default();
    let place = |east: f64, north: f64| at(east * ratio, -north * ratio);
    let half = pattern.plate / 2.0;
    pen.rectangle(Line::Thick, place(-half, half), place(half, -half));
    for &(east, north) in &pattern.holes {
        pen.circle(
            Line::Thin,
            place(east, north),
            (pattern.hole / 2.0 * ratio).max(0.6),
        );
    }
    for tile in tiles {
        let (wide, tall) = grid.tile_size();
        pen.rectangle(
            Line::Hair,
            place(tile.west, tile.north),
            place(tile.west + wide, tile.north - tall),
        );
    }
    for tile in tiles {
        let (wide, tall) = grid.tile_size();
        let name = |across: f64, down: f64| {
            let point = place(tile.west + wide * across, tile.north - tall * down);
            let text = tile.name.trim_start_matches("sheet ").to_owned();
            let start = at(point.x, point.y + SIZE * 0.35);
            Label {
                at: start,
                size: SIZE,
                anchor: Anchor::Middle,
                upright: false,
                bold: true,
                text,
            }
        };
        // In the middle, or beside it where a hole stands there.
        let places = [
            (0.5, 0.5),
            (0.5, 0.3),
            (0.5, 0.7),
            (0.3, 0.5),
            (0.7, 0.5),
            (0.3, 0.3),
            (0.7, 0.7),
            (0.3, 0.7),
            (0.7, 0.3),
        ];
        let free = places
            .into_iter()
            .map(|(x, y)| name(x, y))
            .find(|label| pen.is_free(&area_of(label)));
        pen.label(free.unwrap_or_else(|| name(0.5, 0.5)));
    }
    title_strip(&mut pen, TITLE, None, units);
    let names: Vec<&str> = tiles
        .iter()
        .map(|tile| tile.name.trim_start_matches("sheet "))
        .collect();
    let description = format!(
        "Seen from above, north at the top; rows are letters, columns are numbers. Printed are {}.",
        names.join(", ")
    );
    pen.finish(Head {
        name: "tiles",
        title: TITLE.to_owned(),
        description,
        scale: None,
    })
}
