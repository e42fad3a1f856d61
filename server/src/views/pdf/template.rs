//! The drilling template at full size: what it is for, its table, and its tiles with register marks and rulers.

mod grid;
mod overview;
mod tile;

use stillground::figure::{Millimetre, Units};
use stillground::units::{Length, metre, millimetre};

use crate::drawing::at;
use crate::lettering::Face;
use crate::views::north::ways;
use crate::views::pdf::flow::{BODY, Flow, LEFT, TOP};
use crate::views::pdf::page::{Mark, Role};
use crate::views::pdf::table::{Cell, table};
use crate::views::pdf::{Paper, Sheet};
use grid::Grid;
use tile::RULERS;

/// What is drilled, in millimetres from the pier's axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern {
    /// Centres of the holes, east and north.
    pub holes: Vec<(f64, f64)>,
    /// Diameter of a hole.
    pub hole: f64,
    /// Side of the base plate.
    pub plate: f64,
    /// Diameter of the column.
    pub column: f64,
}

/// Takes the pattern out of a design.
#[must_use]
pub fn pattern(sheet: &Sheet<'_>) -> Pattern {
    let mm = |length: Length| millimetre::get(length);
    let (anchors, pier) = (&sheet.design.anchors, &sheet.design.pier);
    Pattern {
        holes: anchors
            .studs
            .iter()
            .map(|stud| (mm(stud.x), mm(stud.y)))
            .collect(),
        hole: mm(anchors.hole_diameter),
        plate: mm(pier.plate_side),
        column: mm(pier.outside_diameter),
    }
}

/// Lays the template out.
#[must_use]
pub fn tiles(sheet: &Sheet<'_>, paper: Paper) -> Flow {
    let mut flow = Flow::new(paper.for_words());
    let pattern = pattern(sheet);
    flow.sheet("Drilling template, full size");
    if pattern.holes.is_empty() {
        flow.paragraph("No studs are planned, so there is nothing to drill.");
        return flow;
    }
    let mut full = Flow::new(paper);
    let grid = Grid::over(&pattern, full.room() - RULERS, full.full() - RULERS);
    let tiles = grid.tiles(&pattern);
    directions(&mut flow, &grid, tiles.len(), sheet.brief.units);
    if grid.count() > 1 {
        flow.drawing(overview::drawing(
            &grid,
            &tiles,
            &pattern,
            sheet.brief.units,
        ));
    }
    holes(&mut flow, sheet, &pattern);
    distances(&mut flow, sheet, &pattern);
    levels(&mut flow, sheet);
    north(&mut flow, sheet);
    for tile in &tiles {
        full.blank(&format!("Drilling template, {}", tile.name), true);
        let drawing = tile::drawing(tile, &tiles, &grid, &pattern, sheet.brief.units);
        let alt = format!("{}. {}", drawing.title, drawing.description);
        full.put(
            Role::Figure(alt),
            vec![Mark::Drawing {
                corner: at(LEFT, TOP),
                factor: 1.0,
                drawing,
            }],
        );
    }
    flow.pages.append(&mut full.pages);
    flow
}

fn directions(flow: &mut Flow, grid: &Grid, printed: usize, units: Units) {
    flow.styled(Face::TextBold, BODY, "Print at 100 %, never “fit to page”. Then measure both rulers of each sheet with a steel rule.");
    flow.paragraph(&format!(
        "Each ruler is {} off, do not drill by this print: change the printer's scale, or set the holes out by the table below.",
        units.either(
            "100\u{a0}mm long. If one is more than half a millimetre",
            "4\u{a0}in long. If one is more than a thirty-second of an inch",
        )
    ));
    if grid.count() > 1 {
        let left_out = match grid.count() - printed {
            0 => String::new(),
            1 => " The one with nothing to drill, mark or cut is left out.".to_owned(),
            some => format!(" The {some} with nothing to drill, mark or cut are left out."),
        };
        flow.paragraph(&format!(
            "The template lies on {} sheets, {} from west to east and {} from north to south.{left_out} Lay them by their names as the \
             drawing shows; put the register marks, a cross in a ring, exactly over each other on a window or a light table, and tape the \
             sheets together. The errors of many sheets add up: measure the outline's sides and diagonals before you trust it. A copy \
             shop prints it on fewer and larger ones: add “?paper=a1” or “?paper=a0” to the template’s address.",
            grid.count(),
            grid.columns,
            grid.rows
        ));
    }
    flow.paragraph(
        "Turn the arrow to true north, not to compass north: steel nearby misleads a compass. Mark the centres with a punch \
         through the paper, take the paper off, and measure all distances between the marks against the table before the first hole.",
    );
    flow.paragraph(
        "Drilling throws chips and dust that harms the lungs: wear goggles, gloves and a dust mask, and keep cables out of the way. Look \
         for reinforcement, ducts and buried cables before you drill.",
    );
}

fn holes(flow: &mut Flow, sheet: &Sheet<'_>, pattern: &Pattern) {
    let units = sheet.brief.units;
    flow.heading("Holes, from the pier's axis");
    let rows: Vec<Vec<Cell>> = pattern
        .holes
        .iter()
        .enumerate()
        .map(|(i, &(x, y))| {
            vec![
                (i + 1).to_string().into(),
                units.to_measure(x).into(),
                units.to_measure(y).into(),
                units.to_measure(pattern.hole).into(),
                units
                    .figure(sheet.design.anchors.hole_depth, Millimetre)
                    .into(),
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("Hole", 0.5),
            ("East", 1.0),
            ("North", 1.0),
            ("Diameter", 1.0),
            ("Depth", 1.0),
        ],
        &rows,
    );
}

fn distances(flow: &mut Flow, sheet: &Sheet<'_>, pattern: &Pattern) {
    flow.heading("Distances between all pairs of holes, centre to centre");
    let pairs = pairs(&pattern.holes);
    let cell = |&(i, j, distance): &(usize, usize, f64)| {
        [
            Cell::Text(format!("{} to {}", i + 1, j + 1)),
            sheet.brief.units.to_measure(distance).into(),
        ]
    };
    let rows: Vec<Vec<Cell>> = pairs
        .chunks(3)
        .map(|three| three.iter().flat_map(cell).collect())
        .collect();
    table(
        flow,
        &[
            ("Pair", 0.8),
            ("Distance", 1.0),
            ("Pair", 0.8),
            ("Distance", 1.0),
            ("Pair", 0.8),
            ("Distance", 1.0),
        ],
        &rows,
    );
}

fn north(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.heading("True north on the day");
    flow.paragraph(
        "The sheet “True north” of the plan has the whole of it, hour by hour; this is a summary.",
    );
    for way in ways(sheet.brief, sheet.design) {
        let first = if way.rows.is_empty() { 1 } else { 2 };
        flow.styled(Face::TextBold, BODY, way.title);
        way.says
            .iter()
            .take(first)
            .for_each(|said| flow.paragraph(said));
    }
    flow.paragraph("Never look at the sun, with bare eyes or through anything: watch the shadow on the ground.");
}

/// Every pair with its distance.
#[must_use]
pub fn pairs(holes: &[(f64, f64)]) -> Vec<(usize, usize, f64)> {
    let mut pairs = Vec::new();
    for (i, a) in holes.iter().enumerate() {
        for (j, b) in holes.iter().enumerate().skip(i + 1) {
            pairs.push((i, j, (a.0 - b.0).hypot(a.1 - b.1)));
        }
    }
    pairs
}

fn levels(flow: &mut Flow, sheet: &Sheet<'_>) {
    let (units, pier) = (sheet.brief.units, &sheet.design.pier);
    let top = metre::get(sheet.design.block.upstand);
    let under = top + metre::get(pier.gap);
    let rows: Vec<Vec<Cell>> = [
        ("Top of the block", top),
        ("Underside of the base plate", under),
        (
            "Upper face of the base plate",
            under + metre::get(pier.plate_thickness),
        ),
        ("Top of the pier", under + metre::get(pier.height)),
    ]
    .into_iter()
    .map(|(what, level)| vec![what.into(), units.to_measure(level * 1000.0).into()])
    .collect();
    flow.heading("Levels above the ground");
    table(flow, &[("What", 1.5), ("Level", 1.0)], &rows);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_pair_is_listed_once() {
        let found = pairs(&[(0.0, 0.0), (3.0, 4.0), (0.0, 8.0)]);
        assert_eq!(found, [(0, 1, 5.0), (0, 2, 8.0), (1, 2, 5.0)]);
    }
}
