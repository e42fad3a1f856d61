//! Where the studs stand: the plate with its holes and their table, and the plate on the block.

pub mod areas;
mod table;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Kilonewton, PerCent, Units};
use stillground::units::{Length, metre, millimetre};

use crate::drawing::area::area_of;
use crate::drawing::dimension::{FIRST, STEP, across, upright};
use crate::drawing::furniture::{axes, dimension_text, length_text, north, title_strip, view};
use crate::drawing::pen::{Head, Pen, SIZE};
use crate::drawing::scale::View;
use crate::drawing::{Anchor, Drawing, Form, Label, Line, Point, at};

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    studs: Vec<(f64, f64)>,
    size: &'static str,
    circle: f64,
    plate: f64,
    column: f64,
    hole: f64,
    hole_depth: f64,
    embedment: f64,
    block: (f64, f64),
    borne: Vec<Borne>,
    worst: String,
}

/// What one stud bears, in the reader's units.
#[derive(Debug, Clone)]
struct Borne {
    pull: String,
    used: String,
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    let m = |length: Length| metre::get(length);
    let (anchors, pier) = (&design.anchors, &design.pier);
    Layout {
        units: brief.units,
        studs: anchors
            .studs
            .iter()
            .map(|stud| (m(stud.x), m(stud.y)))
            .collect(),
        size: brief.anchors.size.value.said(),
        circle: millimetre::get(brief.anchors.circle_diameter.value) / 1000.0,
        plate: m(pier.plate_side),
        column: m(pier.outside_diameter),
        hole: m(anchors.hole_diameter),
        hole_depth: m(anchors.hole_depth),
        embedment: m(anchors.embedment),
        block: (m(design.block.length), m(design.block.width)),
        borne: borne(brief, design),
        worst: areas::chosen(brief, design).map_or_else(String::new, |verdict| {
            format!(
                "Pull under {}, with the code’s factors; a minus sign for a push",
                verdict.action.title
            )
        }),
    }
}

/// What each stud bears by the code that gives the verdict.
fn borne(brief: &Brief, design: &Design) -> Vec<Borne> {
    let units = brief.units;
    let verdict = areas::chosen(brief, design);
    let each = verdict
        .map(|verdict| verdict.each.as_slice())
        .unwrap_or_default();
    let one = |borne: &stillground::stages::anchors::Borne| Borne {
        pull: units.figure(borne.pull, Kilonewton).digits,
        used: units.say(borne.utilisation * 100.0, PerCent),
    };
    each.iter().map(one).collect()
}

impl Layout {
    fn number(&self, length_m: f64) -> String {
        dimension_text(self.units, length_m * 1000.0)
    }

    fn say(&self, length_m: f64) -> String {
        length_text(self.units, length_m * 1000.0)
    }

    /// Half of what the view of the plate must hold.
    fn plate_reach(&self) -> f64 {
        self.studs
            .iter()
            .map(|(x, y)| x.abs().max(y.abs()) + self.hole)
            .fold(self.plate.max(self.column) / 2.0, f64::max)
    }

    /// The outermost stud to the east, and the outermost to the south.
    fn outermost(&self) -> Option<((f64, f64), (f64, f64))> {
        let east = self
            .studs
            .iter()
            .copied()
            .max_by(|a, b| a.0.total_cmp(&b.0))?;
        let south = self
            .studs
            .iter()
            .copied()
            .min_by(|a, b| a.1.total_cmp(&b.1))?;
        Some((east, south))
    }

    /// From the outermost holes to the block's east and south edges, m; none where there are no studs.
    #[must_use]
    pub fn to_the_edges(&self) -> Option<(f64, f64)> {
        let (east, south) = self.outermost()?;
        let (length, width) = self.block;
        Some((length / 2.0 - east.0, width / 2.0 + south.1))
    }

    fn description(&self) -> String {
        if self.studs.is_empty() {
            return "No studs are planned.".to_owned();
        }
        let places: Vec<String> = self
            .studs
            .iter()
            .enumerate()
            .map(|(i, (x, y))| format!("{}: {} east, {} north", i + 1, self.say(*x), self.say(*y)))
            .collect();
        format!(
            "{} studs {} on a circle of {}, holes of {} and {} deep. Measured from the pier's axis, they stand at {}.",
            self.studs.len(),
            self.size,
            self.say(self.circle),
            self.say(self.hole),
            self.say(self.hole_depth),
            places.join("; ")
        )
    }
}

/// Paper for the view of the plate, mm.
const ROOM: (f64, f64) = (84.0, 84.0);
/// Length within which the figure of an upright dimension stands, and the paper above it that it needs where it does not, mm.
const FIGURE: (f64, f64) = (18.0, 20.0);
const TITLE: &str = "Base plate and stud holes on the block";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let reach = layout.plate_reach();
    let scale = form.scale(2.0 * reach, 2.0 * reach, room);
    let plate_view = view(scale, -reach, reach);
    let mut pen = Pen::new(form);
    plate(&mut pen, layout, &plate_view);
    let bounds = pen.bounds();
    let side = match form {
        // Feet and inches take more room beside the plate.
        Form::Sheet | Form::Smaller(_) if layout.units == Units::Imperial => {
            at(bounds.right + 6.0, bounds.top)
        }
        Form::Sheet | Form::Smaller(_) => at(bounds.right + 8.0, bounds.top),
        Form::Phone | Form::Glance => at(bounds.left, bounds.bottom + 6.0),
    };
    // Below the plate the figure beside the block must not stand out to the left.
    let aside = match form {
        Form::Sheet | Form::Smaller(_) => FIRST,
        Form::Phone | Form::Glance => FIRST + SIZE,
    };
    match form {
        // Beside the table, as wide as the side is, which leaves its height to the words.
        Form::Smaller(_) => {
            let (right, _) = table::table(&mut pen, layout, side);
            on_block(&mut pen, layout, at(right + 8.0 + FIRST, side.y), room.0);
        }
        Form::Sheet | Form::Phone => {
            let (_, bottom) = table::table(&mut pen, layout, side);
            on_block(&mut pen, layout, at(side.x + aside, bottom + 8.0), room.0);
        }
        // At the work the distances to the block's edges stand among the figures.
        Form::Glance => {}
    }
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "studs",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

fn plate(pen: &mut Pen, layout: &Layout, view: &View) {
    let half = layout.plate / 2.0;
    let reach = layout.plate_reach();
    pen.rectangle(Line::Thick, view.at(-half, half), view.at(half, -half));
    pen.circle(
        Line::Dashed,
        view.at(0.0, 0.0),
        view.mm(layout.column / 2.0),
    );
    axes(
        pen,
        view.at(0.0, 0.0),
        view.mm(reach) + 3.0,
        view.mm(reach) + 3.0,
    );
    if !layout.studs.is_empty() {
        pen.circle(Line::Chain, view.at(0.0, 0.0), view.mm(layout.circle / 2.0));
    }
    for (i, &(x, y)) in layout.studs.iter().enumerate() {
        hole(pen, view, layout, (x, y), &(i + 1).to_string());
    }
    let (low, left) = (view.at(0.0, -reach).y, view.at(-reach, 0.0).x);
    let mut line = low + FIRST;
    if let Some((from, to)) = spacings(&layout.studs, |stud| stud.0) {
        across(
            pen,
            view.at(from.0, from.1),
            view.at(to.0, to.1),
            line,
            &layout.number(to.0 - from.0),
        );
        line += STEP;
    }
    across(
        pen,
        view.at(-half, -half),
        view.at(half, -half),
        line,
        &layout.number(layout.plate),
    );
    if let Some((from, to)) = spacings(&layout.studs, |stud| stud.1) {
        upright(
            pen,
            view.at(from.0, from.1),
            view.at(to.0, to.1),
            left - FIRST,
            &layout.number(to.1 - from.1),
        );
    }
    north(
        pen,
        at(view.at(reach, 0.0).x + 6.5, view.at(0.0, reach).y + 8.0),
    );
}

/// The outermost pair of studs in one direction, nearest to the lower left; none when they stand in one line.
fn spacings(
    studs: &[(f64, f64)],
    along: fn(&(f64, f64)) -> f64,
) -> Option<((f64, f64), (f64, f64))> {
    let pick = |sign: f64| {
        studs.iter().copied().min_by(|a, b| {
            (sign * along(a))
                .total_cmp(&(sign * along(b)))
                .then((a.0 + a.1).total_cmp(&(b.0 + b.1)))
        })
    };
    let (first, last) = (pick(1.0)?, pick(-1.0)?);
    (along(&last) - along(&first) > 1e-6).then_some((first, last))
}

/// A hole with its cross and its number, the number outwards of it.
fn hole(pen: &mut Pen, view: &View, layout: &Layout, (x, y): (f64, f64), number: &str) {
    let centre = view.at(x, y);
    let radius = view.mm(layout.hole / 2.0);
    pen.circle(Line::Thick, centre, radius);
    pen.line(
        Line::Thin,
        &[
            at(centre.x - radius - 1.5, centre.y),
            at(centre.x + radius + 1.5, centre.y),
        ],
    );
    pen.line(
        Line::Thin,
        &[
            at(centre.x, centre.y - radius - 1.5),
            at(centre.x, centre.y + radius + 1.5),
        ],
    );
    let (dx, dy) = (
        if x >= 0.0 { 1.0 } else { -1.0 },
        if y >= 0.0 { -1.0 } else { 1.0 },
    );
    let label = |(dx, dy): (f64, f64)| {
        let place = at(
            centre.x + dx * (radius * 0.7 + 2.4),
            centre.y + dy * (radius * 0.7 + 2.4) + 0.35 * SIZE,
        );
        Label {
            at: place,
            size: SIZE,
            anchor: Anchor::Middle,
            upright: false,
            bold: true,
            text: number.to_owned(),
        }
    };
    // Outwards, or where no line runs through it.
    let free = [(dx, dy), (-dx, dy), (dx, -dy), (-dx, -dy)]
        .into_iter()
        .map(label)
        .find(|label| pen.is_free(&area_of(label)));
    pen.label(free.unwrap_or_else(|| label((dx, dy))));
}

/// The plate on the block, small, with the distances to its edges.
fn on_block(pen: &mut Pen, layout: &Layout, corner: Point, room: f64) {
    let (length, width) = layout.block;
    let form = pen.form();
    let scale = form.scale(
        length.max(layout.plate),
        width.max(layout.plate),
        match form {
            Form::Sheet | Form::Smaller(_) => (46.0, 46.0),
            Form::Phone | Form::Glance => ((0.55 * room).min(40.0), 46.0),
        },
    );
    let mut view = view(
        scale,
        -length.max(layout.plate) / 2.0,
        width.max(layout.plate) / 2.0,
    );
    // A short distance has its figure above it, where a telephone has the table's words.
    let short = form.is_phone()
        && layout
            .outermost()
            .is_some_and(|(_, south)| view.mm((width / 2.0 + south.1).abs()) < FIGURE.0);
    let lower = if short { FIGURE.1 } else { 0.0 };
    view.origin = at(view.origin.x + corner.x, view.origin.y + corner.y + lower);
    pen.rectangle(
        Line::Heavy,
        view.at(-length / 2.0, width / 2.0),
        view.at(length / 2.0, -width / 2.0),
    );
    pen.rectangle(
        Line::Thin,
        view.at(-layout.plate / 2.0, layout.plate / 2.0),
        view.at(layout.plate / 2.0, -layout.plate / 2.0),
    );
    for &(x, y) in &layout.studs {
        pen.dot(view.at(x, y), view.mm(layout.hole / 2.0).max(0.45));
    }
    axes(
        pen,
        view.at(0.0, 0.0),
        view.mm(length / 2.0) + 2.0,
        view.mm(width / 2.0) + 2.0,
    );
    let low = view.at(0.0, -width.max(layout.plate) / 2.0).y;
    let mut line = low + FIRST;
    if let Some((east, south)) = layout.outermost() {
        across(
            pen,
            view.at(east.0, east.1),
            view.at(length / 2.0, -width / 2.0),
            line,
            &layout.number(length / 2.0 - east.0),
        );
        line += STEP;
        let left = view.at(-length.max(layout.plate) / 2.0, 0.0).x - FIRST;
        upright(
            pen,
            view.at(south.0, south.1),
            view.at(-length / 2.0, -width / 2.0),
            left,
            &layout.number(width / 2.0 + south.1),
        );
    }
    across(
        pen,
        view.at(-length / 2.0, -width / 2.0),
        view.at(length / 2.0, -width / 2.0),
        line,
        &layout.number(length),
    );
    pen.text(
        at(view.at(-length / 2.0, 0.0).x, line + 6.5),
        Anchor::Start,
        match form {
            Form::Sheet => format!("On the block, 1\u{2009}:\u{2009}{scale}"),
            Form::Smaller(_) | Form::Phone | Form::Glance => "On the block".to_owned(),
        },
    );
}
