//! The pit: section and plan, with the spoil heap, its distance and the way out.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::units::{cubic_metre, metre};

use crate::drawing::callout::{self, Callout, note};
use crate::drawing::dimension::{FIRST, STEP, across, upright};
use crate::drawing::furniture::{axes, dimension_text, north, title_strip, view};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen, SIZE, rectangle};
use crate::drawing::scale::View;
use crate::drawing::{Anchor, Drawing, Form, Line, at};
use crate::lettering::{Face, width};

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    top: (f64, f64),
    bottom: (f64, f64),
    depth: f64,
    block: (f64, f64),
    spoil_distance: f64,
    spoil_volume: f64,
    heap: Heap,
    way_out: bool,
    loads: u32,
}

/// A ridge of loose soil as long as the pit is wide.
#[derive(Debug, Clone, Copy)]
struct Heap {
    base: f64,
    height: f64,
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    let (pit, block) = (&design.excavation, &design.block);
    let (width, volume) = (metre::get(pit.width), cubic_metre::get(pit.spoil_volume));
    Layout {
        units: brief.units,
        top: (metre::get(pit.length), width),
        bottom: (metre::get(pit.bottom_length), metre::get(pit.bottom_width)),
        depth: metre::get(pit.depth),
        block: (metre::get(block.length), metre::get(block.width)),
        spoil_distance: metre::get(pit.spoil_distance),
        spoil_volume: volume,
        heap: Heap {
            base: metre::get(pit.heap_width),
            height: metre::get(pit.heap_height),
        },
        way_out: pit.way_out,
        loads: pit.barrow_loads,
    }
}

impl Layout {
    fn heap_from(&self) -> f64 {
        self.top.0 / 2.0 + self.spoil_distance
    }

    fn heap_to(&self) -> f64 {
        self.heap_from() + self.heap.base
    }

    fn is_battered(&self) -> bool {
        self.bottom.0 + 1e-6 < self.top.0 || self.bottom.1 + 1e-6 < self.top.1
    }

    fn way_out_words(&self) -> &'static str {
        if self.way_out {
            "Ladder or ramp out, kept free"
        } else {
            "Shallow enough to step out"
        }
    }

    fn description(&self) -> String {
        let say = |length: f64| self.units.say(length, Unit::Metre);
        let sides = if self.is_battered() {
            format!(
                "Its sides are battered back from a bottom of {} by {}.",
                say(self.bottom.0),
                say(self.bottom.1)
            )
        } else {
            "Its sides are cut straight.".to_owned()
        };
        format!(
            "The pit is {} long from west to east, {} wide and {} deep. {sides} The spoil, {} loose, lies east of it, no nearer than {} to the edge. {}.",
            say(self.top.0),
            say(self.top.1),
            say(self.depth),
            self.units.say(self.spoil_volume, Unit::CubicMetre),
            say(self.spoil_distance),
            self.way_out_words()
        )
    }
}

/// Paper for both views, mm.
const ROOM: (f64, f64) = (104.0, 124.0);
/// Free paper between section and plan, mm.
const BETWEEN: f64 = 26.0;

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let left = -layout.top.0 / 2.0;
    let scale = form.scale(
        layout.heap_to() - left,
        layout.depth + layout.heap.height + layout.top.1,
        room,
    );
    let upper = view(scale, left, layout.heap.height.max(0.0));
    let mut lower = upper;
    lower.origin.y += upper.mm(layout.depth) + BETWEEN + upper.mm(layout.top.1 / 2.0);
    let mut pen = Pen::new(form);
    section(&mut pen, layout, &upper);
    plan(&mut pen, layout, &lower);
    let bounds = pen.bounds();
    callout::column(
        &mut pen,
        notes(layout, &upper, &lower),
        bounds.right + 9.0,
        bounds.top,
        bounds.bottom,
        callout::room(&bounds, 42.0),
    );
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "pit",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

const TITLE: &str = "Pit and spoil heap: section looking north, and plan view";

fn section(pen: &mut Pen, layout: &Layout, view: &View) {
    let (top, bottom, depth) = (layout.top.0 / 2.0, layout.bottom.0 / 2.0, layout.depth);
    let (west, east) = (
        at(view.at(-top, 0.0).x - 10.0, view.at(0.0, 0.0).y),
        at(view.at(layout.heap_to(), 0.0).x + 6.0, view.at(0.0, 0.0).y),
    );
    let pit = [
        view.at(-top, 0.0),
        view.at(-bottom, -depth),
        view.at(bottom, -depth),
        view.at(top, 0.0),
    ];
    let band = 4.5;
    let (floor, shelf) = (pit[1].y + band, west.y + band);
    let mut ground = vec![west];
    ground.extend(pit);
    ground.extend([
        east,
        at(east.x, shelf),
        at(pit[3].x + band, shelf),
        at(pit[2].x + band, floor),
        at(pit[1].x - band, floor),
    ]);
    ground.extend([at(pit[0].x - band, shelf), at(west.x, shelf)]);
    pen.hatch(Hatch::Ground, &[ground]);
    pen.line(Line::Thick, &[west, pit[0], pit[1], pit[2], pit[3], east]);
    let heap = [
        view.at(layout.heap_from(), 0.0),
        view.at(
            (layout.heap_from() + layout.heap_to()) / 2.0,
            layout.heap.height,
        ),
        view.at(layout.heap_to(), 0.0),
    ];
    pen.hatch(Hatch::Backfill, &[heap.to_vec()]);
    pen.line(Line::Thick, &heap);
    pen.rectangle(
        Line::Phantom,
        view.at(-layout.block.0 / 2.0, 0.0),
        view.at(layout.block.0 / 2.0, -depth),
    );
    if layout.way_out {
        ladder(pen, view, layout);
    }
    let say = |length_m: f64| dimension_text(layout.units, length_m * 1000.0);
    upright(pen, pit[0], pit[1], west.x - 4.0, &say(depth));
    across(
        pen,
        pit[3],
        heap[0],
        floor + 5.0,
        &say(layout.spoil_distance),
    );
    if layout.is_battered() {
        across(
            pen,
            pit[1],
            pit[2],
            floor + 5.0 + STEP,
            &say(layout.bottom.0),
        );
    }
}

/// A ladder against the west side, a metre above the edge.
fn ladder(pen: &mut Pen, view: &View, layout: &Layout) {
    let (foot, head) = (
        (-layout.bottom.0 / 2.0 + 0.25 * layout.depth, -layout.depth),
        (-layout.top.0 / 2.0, 0.0),
    );
    let beyond = 0.35;
    let top = (
        head.0 + (head.0 - foot.0) * beyond,
        head.1 + (head.1 - foot.1) * beyond,
    );
    let (a, b) = (view.at(foot.0, foot.1), view.at(top.0, top.1));
    for offset in [-0.6, 0.6] {
        pen.line(Line::Thin, &[at(a.x + offset, a.y), at(b.x + offset, b.y)]);
    }
}

fn plan(pen: &mut Pen, layout: &Layout, view: &View) {
    let corners = |size: (f64, f64)| {
        (
            view.at(-size.0 / 2.0, size.1 / 2.0),
            view.at(size.0 / 2.0, -size.1 / 2.0),
        )
    };
    let (a, b) = corners(layout.top);
    pen.rectangle(Line::Heavy, a, b);
    if layout.is_battered() {
        let (c, d) = corners(layout.bottom);
        pen.rectangle(Line::Thick, c, d);
        for (outer, inner) in rectangle(a, b).into_iter().zip(rectangle(c, d)) {
            pen.line(Line::Thin, &[outer, inner]);
        }
    }
    let (c, d) = corners(layout.block);
    pen.rectangle(Line::Phantom, c, d);
    axes(
        pen,
        view.at(0.0, 0.0),
        view.mm(layout.top.0 / 2.0) + 3.0,
        view.mm(layout.top.1 / 2.0) + 3.0,
    );
    let heap = rectangle(
        view.at(layout.heap_from(), layout.top.1 / 2.0),
        view.at(layout.heap_to(), -layout.top.1 / 2.0),
    );
    pen.hatch(Hatch::Backfill, std::slice::from_ref(&heap));
    pen.outline(Line::Thin, &heap);
    if layout.way_out {
        let (x, y) = (-layout.top.0 / 2.0, 0.0);
        for rung in 0..6 {
            let px = view.at(x, y).x - 3.0 + f64::from(rung) * 2.0;
            pen.line(
                Line::Thin,
                &[at(px, view.at(x, y).y - 1.8), at(px, view.at(x, y).y + 1.8)],
            );
        }
        for side in [-1.8, 1.8] {
            pen.line(
                Line::Thin,
                &[
                    at(view.at(x, y).x - 3.0, view.at(x, y).y + side),
                    at(view.at(x, y).x + 7.0, view.at(x, y).y + side),
                ],
            );
        }
    }
    named(pen, layout, view);
    let say = |length_m: f64| dimension_text(layout.units, length_m * 1000.0);
    across(pen, at(a.x, b.y), b, b.y + FIRST, &say(layout.top.0));
    upright(pen, a, at(a.x, b.y), a.x - FIRST, &say(layout.top.1));
    let bounds = pen.bounds();
    north(pen, at(bounds.right - 3.0, b.y + 16.0));
}

/// The block's name within it, beside the axes, where it is wide enough for its name.
fn named(pen: &mut Pen, layout: &Layout, view: &View) {
    let quarter = view.at(-layout.block.0 / 4.0, -layout.block.1 / 4.0);
    if view.mm(layout.block.0 / 2.0) > width(Face::Figures, BLOCK, SIZE) + 0.4
        && view.mm(layout.block.1 / 2.0) > 2.0 * SIZE
    {
        pen.text(
            at(quarter.x, quarter.y + 0.35 * SIZE),
            Anchor::Middle,
            BLOCK.to_owned(),
        );
    }
}

const BLOCK: &str = "Block";

fn notes(layout: &Layout, upper: &View, lower: &View) -> Vec<Callout> {
    let say = |length: f64| layout.units.say(length, Unit::Metre);
    let heap_middle = (layout.heap_from() + layout.heap_to()) / 2.0;
    let mut notes = vec![
        note(
            upper.at(heap_middle, layout.heap.height * 0.5),
            format!(
                "Spoil {}, about {} barrow loads",
                layout.units.say(layout.spoil_volume, Unit::CubicMetre),
                layout.loads
            ),
        ),
        note(
            upper.at(layout.bottom.0 * 0.3, -layout.depth),
            "Bottom level and firm, loose soil taken out",
        ),
        note(
            lower.at((layout.top.0 / 2.0 + layout.heap_from()) / 2.0, 0.0),
            format!(
                "Strip of {} kept clear of spoil and tools",
                say(layout.spoil_distance)
            ),
        ),
    ];
    if layout.way_out {
        notes.push(note(
            lower.at(
                -layout.top.0 / 2.0 + 2.0 * f64::from(lower.scale) / 1000.0,
                0.0,
            ),
            layout.way_out_words(),
        ));
    }
    notes
}
