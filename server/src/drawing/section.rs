//! Section through ground, footing, pier and floor, looking north.

mod dowels;
mod guard;
mod layout;
pub mod words;

pub use layout::{Layout, layout};

use crate::drawing::callout::{self, Callout, note};
use crate::drawing::dimension::{FIRST, STEP, across, upright};
use crate::drawing::furniture::{dimension_text, title_strip, view};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen, rectangle};
use crate::drawing::scale::View;
use crate::drawing::{Drawing, Form, Line, Point, at};

/// Paper for the view itself, mm.
const ROOM: (f64, f64) = (94.0, 152.0);
/// Width of the hatched band of ground, mm on paper.
const BAND: f64 = 6.0;
/// Ground drawn beyond the pit's edge, mm on paper.
const EDGE: f64 = 7.0;

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let scale = form.scale(
        2.0 * layout.reach(),
        layout.top() + layout.depth + layout.dowels.map_or(0.0, |dowels| dowels.down),
        (room.0 - 2.0 * EDGE, room.1 - BAND),
    );
    let view = view(scale, -layout.reach(), layout.top());
    let mut pen = Pen::new(form);
    ground(&mut pen, layout, &view);
    block(&mut pen, layout, &view);
    guard::draw(&mut pen, layout, &view);
    dowels::draw(&mut pen, layout, &view);
    pier(&mut pen, layout, &view);
    floor(&mut pen, layout, &view);
    levels(&mut pen, layout, &view);
    dimensions(&mut pen, layout, &view);
    let bounds = pen.bounds();
    callout::column(
        &mut pen,
        notes(layout, &view),
        bounds.right + 9.0,
        bounds.top,
        bounds.bottom,
        callout::room(&bounds, 46.0),
    );
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "section",
        title: TITLE.to_owned(),
        description: words::description(layout),
        scale: Some(scale),
    })
}

const TITLE: &str = "Section through ground, block and column, looking north";

/// Edge of the drawn ground, to the right of the axis, on paper.
fn edge(layout: &Layout, view: &View) -> f64 {
    view.at(layout.reach(), 0.0).x + EDGE
}

fn ground(pen: &mut Pen, layout: &Layout, view: &View) {
    let (top, bottom, depth) = (layout.pit_top_half, layout.pit_bottom_half, layout.depth);
    let (left_end, right_end) = (
        view.at(0.0, 0.0).x * 2.0 - edge(layout, view),
        edge(layout, view),
    );
    let level = view.at(0.0, 0.0).y;
    let profile = [
        at(left_end, level),
        view.at(-top, 0.0),
        view.at(-bottom, -depth),
        view.at(bottom, -depth),
        view.at(top, 0.0),
        at(right_end, level),
    ];
    let mut band = profile.to_vec();
    let (base, shelf) = (view.at(0.0, -depth).y + BAND, level + BAND);
    let outer = |x: f64, y: f64| at(x, y);
    let slope = |side: f64| {
        let (upper, lower) = (
            view.at(side * top, 0.0).x + side * BAND,
            view.at(side * bottom, 0.0).x + side * BAND,
        );
        let share = (BAND / (base - level)).min(1.0);
        (
            outer(upper + (lower - upper) * share, shelf),
            outer(lower, base),
        )
    };
    let ((right_upper, right_lower), (left_upper, left_lower)) = (slope(1.0), slope(-1.0));
    band.extend([
        at(right_end, shelf),
        right_upper,
        right_lower,
        left_lower,
        left_upper,
        at(left_end, shelf),
    ]);
    pen.hatch(Hatch::Ground, &[band]);
    pen.line(Line::Thick, &profile[..2]);
    pen.line(Line::Thick, &profile[4..]);
    if layout.is_battered() {
        pen.line(Line::Thin, &profile[1..5]);
        for side in [-1.0, 1.0] {
            let wedge = [
                (side * layout.half_length, 0.0),
                (side * top, 0.0),
                (side * bottom, -depth),
                (side * layout.half_length, -depth),
            ];
            pen.hatch(
                Hatch::Backfill,
                &[wedge.map(|(x, z)| view.at(x, z)).to_vec()],
            );
        }
    }
}

fn block(pen: &mut Pen, layout: &Layout, view: &View) {
    let outline = rectangle(
        view.at(-layout.half_length, layout.pier.upstand),
        view.at(layout.half_length, -layout.depth),
    );
    let mut hatched = vec![outline.clone()];
    hatched.extend(
        layout
            .holes()
            .map(|(a, b)| rectangle(view.at(a.0, a.1), view.at(b.0, b.1))),
    );
    pen.hatch(Hatch::Concrete, &hatched);
    pen.outline(Line::Heavy, &outline);
    for side in [-1.0, 1.0] {
        let x = side * layout.half_length;
        contact(pen, view, x, side, layout.contact);
    }
    if let Some(path) = layout.duct() {
        pen.line(
            Line::Dashed,
            &path.iter().map(|&(x, z)| view.at(x, z)).collect::<Vec<_>>(),
        );
    }
}

/// Short slanting strokes along the side where the soil is hard against it.
fn contact(pen: &mut Pen, view: &View, x: f64, side: f64, (from, to): (f64, f64)) {
    let (a, b) = (view.at(x, -from), view.at(x, -to));
    let count = ((b.y - a.y) / 2.4).floor().max(0.0) as usize;
    for step in 0..count {
        let y = a.y + 2.4 * (step as f64 + 0.5);
        pen.line(Line::Thin, &[at(a.x, y), at(a.x + side * 1.7, y + 1.7)]);
    }
}

fn pier(pen: &mut Pen, layout: &Layout, view: &View) {
    let (foot, top) = (layout.pier.foot(), layout.pier.top());
    let box_of =
        |half: f64, low: f64, high: f64| rectangle(view.at(-half, high), view.at(half, low));
    let base = box_of(
        layout.pier.plate_half,
        foot,
        foot + layout.pier.plate_thickness,
    );
    let head = box_of(
        layout.pier.top_plate_half,
        top - layout.pier.top_plate_thickness,
        top,
    );
    for plate in [&base, &head] {
        pen.hatch(Hatch::Steel, std::slice::from_ref(plate));
        pen.outline(Line::Thick, plate);
    }
    let (low, high) = (
        foot + layout.pier.plate_thickness,
        top - layout.pier.top_plate_thickness,
    );
    let inner = (layout.pier.radius - layout.wall).max(0.0);
    for side in [-1.0, 1.0] {
        let wall = rectangle(
            view.at(side * layout.pier.radius, high),
            view.at(side * inner, low),
        );
        pen.hatch(Hatch::Steel, std::slice::from_ref(&wall));
        pen.outline(Line::Thick, &wall);
    }
    if let Some(fill) = layout.fill {
        pen.hatch(fill, &[box_of(inner, low, high)]);
    }
    if layout.pier.grouted && layout.pier.gap > 0.0 {
        let bed = box_of(layout.pier.plate_half, layout.pier.upstand, foot);
        pen.hatch(Hatch::Grout, std::slice::from_ref(&bed));
        pen.outline(Line::Thin, &bed);
    }
    for &x in &layout.stud_xs {
        pen.line(
            Line::Thick,
            &[
                view.at(x, layout.pier.stud_top()),
                view.at(x, layout.pier.upstand - layout.pier.embedment),
            ],
        );
    }
    pen.line(
        Line::Chain,
        &[
            view.at(0.0, top + 0.02 * f64::from(view.scale) / 5.0),
            view.at(0.0, -layout.depth),
        ],
    );
}

fn floor(pen: &mut Pen, layout: &Layout, view: &View) {
    let Some(floor) = &layout.floor else { return };
    for side in [-1.0, 1.0] {
        let inner = view.at(side * floor.opening_half, floor.level);
        let end = if side > 0.0 {
            edge(layout, view)
        } else {
            2.0 * view.at(0.0, 0.0).x - edge(layout, view)
        };
        let under = view.at(0.0, floor.level - floor.thickness).y;
        let boards = rectangle(inner, at(end, under));
        if floor.is_concrete {
            pen.hatch(Hatch::Concrete, std::slice::from_ref(&boards));
        }
        pen.line(
            Line::Thick,
            &[at(end, inner.y), inner, at(inner.x, under), at(end, under)],
        );
    }
}

/// Frost and water: lines beside the pit, with water's own mark.
fn levels(pen: &mut Pen, layout: &Layout, view: &View) {
    let far = |side: f64| {
        if side > 0.0 {
            edge(layout, view)
        } else {
            2.0 * view.at(0.0, 0.0).x - edge(layout, view)
        }
    };
    for side in [-1.0, 1.0] {
        let start = |depth: f64| view.at(side * layout.side_at(depth), -depth);
        if let Some(frost) = layout.drawn_level(Some(layout.frost)) {
            pen.line(Line::Dashed, &[start(frost), at(far(side), start(frost).y)]);
        }
        if let Some(water) = layout.drawn_level(layout.water) {
            let line = [start(water), at(far(side), start(water).y)];
            pen.line(Line::Thin, &line);
            water_mark(pen, at((line[0].x + line[1].x) / 2.0, line[0].y));
        }
    }
}

fn water_mark(pen: &mut Pen, foot: Point) {
    pen.outline(
        Line::Thin,
        &[
            foot,
            at(foot.x - 1.6, foot.y - 2.8),
            at(foot.x + 1.6, foot.y - 2.8),
        ],
    );
    for (i, half) in [1.4, 0.8].into_iter().enumerate() {
        let y = foot.y + 0.9 * (i as f64 + 1.0);
        pen.line(Line::Thin, &[at(foot.x - half, y), at(foot.x + half, y)]);
    }
}

fn dimensions(pen: &mut Pen, layout: &Layout, view: &View) {
    let say = |length_m: f64| dimension_text(layout.units, length_m * 1000.0);
    let bounds = pen.bounds();
    let level = at(bounds.left, view.at(0.0, 0.0).y);
    let corner = view.at(-layout.half_length, -layout.depth);
    let mut line = bounds.left - FIRST;
    if layout.pier.upstand > 0.0 {
        upright(
            pen,
            level,
            view.at(-layout.half_length, layout.pier.upstand),
            line,
            &say(layout.pier.upstand),
        );
        line -= STEP;
    }
    upright(pen, level, corner, line, &say(layout.depth));
    line -= STEP;
    let foot = view.at(-layout.pier.plate_half, layout.pier.foot());
    if pen.form().is_phone() {
        // Above the ground there is room beside the column.
        line = foot.x.min(view.at(-layout.pier.top_plate_half, 0.0).x) - FIRST;
    }
    upright(
        pen,
        foot,
        view.at(-layout.pier.top_plate_half, layout.pier.top()),
        line,
        &say(layout.pier.height),
    );
    let mut below = bounds.bottom + FIRST;
    across(
        pen,
        corner,
        view.at(layout.half_length, -layout.depth),
        below,
        &say(2.0 * layout.half_length),
    );
    if layout.is_battered() {
        below += STEP;
        across(
            pen,
            view.at(-layout.pit_top_half, 0.0),
            view.at(layout.pit_top_half, 0.0),
            below,
            &say(2.0 * layout.pit_top_half),
        );
    }
}

fn notes(layout: &Layout, view: &View) -> Vec<Callout> {
    let words = &layout.words;
    let foot = layout.pier.foot();
    let mut notes = vec![
        note(
            view.at(layout.pier.top_plate_half * 0.8, layout.pier.top()),
            &words.top_plate,
        ),
        note(
            view.at(layout.pier.radius, (layout.pier.top() + foot) * 0.5),
            &words.column,
        ),
        note(
            view.at(
                layout.pier.plate_half * 0.9,
                foot + layout.pier.plate_thickness * 0.5,
            ),
            &words.plate,
        ),
        note(
            view.at(layout.half_length * 0.6, -layout.depth * 0.75),
            &words.block,
        ),
        note(
            at(edge(layout, view) - 3.0, view.at(0.0, 0.0).y + 3.0),
            "Ground as found",
        ),
    ];
    if let Some(x) = layout.stud_xs.last() {
        notes.push(note(
            view.at(*x, layout.pier.upstand - layout.pier.embedment),
            &words.studs,
        ));
    }
    if let (Some(floor), Some(text)) = (&layout.floor, &words.floor) {
        notes.push(note(view.at(floor.opening_half, floor.level), text));
    }
    let extras = [guard::note(layout, view), dowels::note(layout, view)];
    for (point, words) in extras.into_iter().flatten() {
        notes.push(note(point, words));
    }
    if let Some(frost) = layout.drawn_level(Some(layout.frost)) {
        notes.push(note(
            at(edge(layout, view), view.at(0.0, -frost).y),
            &words.frost,
        ));
    }
    if let Some(water) = layout.drawn_level(layout.water) {
        notes.push(note(
            at(edge(layout, view), view.at(0.0, -water).y),
            &words.water,
        ));
    }
    if layout.contact.1 > layout.contact.0 {
        let middle = 0.5 * (layout.contact.0 + layout.contact.1);
        notes.push(note(
            at(
                view.at(layout.half_length, 0.0).x + 1.2,
                view.at(0.0, -middle).y,
            ),
            &words.contact,
        ));
    }
    if let Some(path) = layout.duct() {
        let (x, z) = path[0];
        notes.push(note(view.at(x, z), words.ducts.clone()));
    }
    notes
}
