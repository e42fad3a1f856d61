//! What of the block comes out with the studs: the cones' area in its top, and what breaks off its side.

mod layout;

use layout::Edge;
pub(super) use layout::chosen;
pub use layout::{Layout, layout};

use crate::drawing::dimension::{FIRST, STEP, across, upright};
use crate::drawing::furniture::{axes, title_strip, view};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE, rectangle};
use crate::drawing::scale::{View, fitting};
use crate::drawing::{Anchor, Drawing, Form, Label, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, wrap};

/// Room for a view of the block, mm.
const ROOM: f64 = 56.0;
/// Width of a column of the two views, mm.
const COLUMN: f64 = 80.0;

const TITLE: &str = "Concrete areas that resist the studs";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted((ROOM, ROOM), |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let mut pen = Pen::new(form);
    let scale = match form {
        Form::Sheet | Form::Smaller(_) => both(&mut pen, layout),
        Form::Phone | Form::Glance => stacked(&mut pen, layout, room),
    };
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "breakout",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

/// Both views beside each other; gives their scale.
fn both(pen: &mut Pen, layout: &Layout) -> u32 {
    let (left, top) = (0.0, 0.0);
    let scale = fitting(
        layout.block.0,
        layout.block.1.max(layout.thickness),
        ROOM,
        ROOM,
    );
    let mut view = view(scale, -layout.block.0 / 2.0, layout.block.1 / 2.0);
    let words_top = top + 2.0 * LINE_HEIGHT;
    let wide = COLUMN - 4.0;
    let cone_end = paragraph(pen, at(left, words_top), &layout.cone_words, wide);
    let edge_end = paragraph(
        pen,
        at(left + COLUMN + 8.0, words_top),
        &layout.edge_words,
        wide,
    );
    let views_top = cone_end.max(edge_end) + 3.0 + above(layout, &view);
    for (x, text) in [
        (left, "Out of the top: cones"),
        (left + COLUMN + 8.0, "Off the side: edge"),
    ] {
        let text = format!("{text}, 1\u{2009}:\u{2009}{scale}");
        pen.label(Label {
            at: at(x, top + LINE_HEIGHT - 1.0),
            size: SIZE,
            anchor: Anchor::Start,
            upright: false,
            bold: true,
            text,
        });
    }
    view.origin = at(
        view.origin.x + left + FIRST + 2.0,
        view.origin.y + views_top,
    );
    cones(pen, layout, &view);
    view.origin.x += COLUMN + 8.0;
    if let Some(edge) = &layout.edge {
        broken(pen, layout, edge, &view);
    }
    scale
}

/// Both views below each other, each with its words above it; gives their scale.
fn stacked(pen: &mut Pen, layout: &Layout, room: (f64, f64)) -> u32 {
    let tall = layout.block.1.max(layout.thickness);
    // The side is as long as the block whichever way it looks.
    let wide = layout.block.0.max(layout.block.1);
    let scale = pen.form().scale(wide, tall, room);
    let mut view = view(scale, -layout.block.0 / 2.0, layout.block.1 / 2.0);
    let first = view.origin;
    let mut over = |pen: &mut Pen, top: f64, name: &str, words: &str| {
        pen.label(Label {
            at: at(0.0, top),
            size: SIZE,
            anchor: Anchor::Start,
            upright: false,
            bold: true,
            text: name.to_owned(),
        });
        let end = paragraph(pen, at(0.0, top + LINE_HEIGHT), words, PHONE_ROOM - 2.0);
        view.origin = at(
            view.mm(wide / 2.0) + FIRST + 4.0,
            first.y + end + 1.0 + above(layout, &view),
        );
        view
    };
    let upper = over(pen, 0.0, "Out of the top: cones", &layout.cone_words);
    cones(pen, layout, &upper);
    let top = pen.bounds().bottom + 9.0;
    let lower = over(pen, top, "Off the side: edge", &layout.edge_words);
    if let Some(edge) = &layout.edge {
        broken(pen, layout, edge, &lower);
    }
    scale
}

/// Length on paper within which the figure of an upright dimension stands, and the paper that it needs above where it does not.
const FIGURE: f64 = 14.0;
const FIGURE_ABOVE: f64 = 20.0;

/// Paper left free above the views for figures that stand beyond their dimension.
fn above(layout: &Layout, view: &View) -> f64 {
    let half = layout.block.1 / 2.0;
    let cone = layout.pulled.first().map_or(0.0, |&first| {
        let (y, south) = (layout.studs[first - 1].1, layout.square(first)[2]);
        if view.mm(y - south) < FIGURE {
            FIGURE_ABOVE - view.mm(half - y)
        } else {
            0.0
        }
    });
    let edge = layout
        .edge
        .as_ref()
        .filter(|edge| matches!(edge.side, "north" | "south"))
        .map_or(0.0, |edge| {
            let top = if edge.side == "north" {
                0.0
            } else {
                view.mm(layout.block.1 - edge.distance)
            };
            if view.mm(edge.distance) < FIGURE {
                FIGURE_ABOVE - top
            } else {
                0.0
            }
        });
    cone.max(edge).max(0.0)
}

fn paragraph(pen: &mut Pen, start: Point, text: &str, width: f64) -> f64 {
    pen.paragraph(start, SIZE, &wrap(Face::Figures, text, SIZE, width))
}

fn outline(pen: &mut Pen, layout: &Layout, view: &View) {
    let (hx, hy) = (layout.block.0 / 2.0, layout.block.1 / 2.0);
    pen.rectangle(Line::Heavy, view.at(-hx, hy), view.at(hx, -hy));
    axes(pen, view.at(0.0, 0.0), view.mm(hx) + 2.0, view.mm(hy) + 2.0);
    for &(x, y) in &layout.studs {
        pen.dot(view.at(x, y), 0.7);
    }
}

/// Numbers of the studs that take part, outwards of each, or inwards where that is turned round, where there is room for them.
fn numbered(pen: &mut Pen, layout: &Layout, view: &View, some: &[usize], turned: [f64; 2]) {
    for &number in some {
        let (x, y) = layout.studs[number - 1];
        let centre = view.at(x, y);
        let (dx, dy) = (
            if x * turned[0] >= 0.0 { 1.0 } else { -1.0 },
            if y * turned[1] >= 0.0 { -1.0 } else { 1.0 },
        );
        let place = at(centre.x + dx * 2.4, centre.y + dy * 2.2 + 0.35 * SIZE);
        let label = Label {
            at: place,
            size: SIZE,
            anchor: Anchor::Middle,
            upright: false,
            bold: true,
            text: number.to_string(),
        };
        let near = layout
            .studs
            .iter()
            .filter(|stud| view.mm((stud.0 - x).hypot(stud.1 - y)) < 2.5 * SIZE)
            .count();
        if near == 1 {
            pen.label(label);
        }
    }
}

fn cones(pen: &mut Pen, layout: &Layout, view: &View) {
    outline(pen, layout, view);
    for [west, east, south, north] in layout.strips() {
        pen.hatch(
            Hatch::Area,
            &[rectangle(view.at(west, north), view.at(east, south))],
        );
    }
    for &number in &layout.pulled {
        let [west, east, south, north] = layout.square(number);
        pen.rectangle(Line::Dashed, view.at(west, north), view.at(east, south));
    }
    numbered(pen, layout, view, &layout.pulled, [1.0, 1.0]);
    let Some(&first) = layout.pulled.first() else {
        return;
    };
    let ((x, y), [_, east, south, _]) = (layout.studs[first - 1], layout.square(first));
    let low = view.at(0.0, -layout.block.1 / 2.0).y + FIRST;
    if east - x > 1e-6 {
        across(
            pen,
            view.at(x, y),
            view.at(east, south),
            low,
            &layout.number(east - x),
        );
    }
    if y - south > 1e-6 {
        let side = view.at(-layout.block.0 / 2.0, 0.0).x - FIRST;
        upright(
            pen,
            view.at(x, y),
            view.at(x, south),
            side,
            &layout.number(y - south),
        );
    }
}

/// From above, and the side itself below it.
fn broken(pen: &mut Pen, layout: &Layout, edge: &Edge, view: &View) {
    outline(pen, layout, view);
    let (along_x, sign) = match edge.side {
        "east" => (false, 1.0),
        "west" => (false, -1.0),
        "north" => (true, 1.0),
        _ => (true, -1.0),
    };
    // Along the side and across it, whichever side it is.
    let place = |along: f64, across: f64| {
        if along_x {
            view.at(along, across)
        } else {
            view.at(across, along)
        }
    };
    let half = if along_x {
        layout.block.1
    } else {
        layout.block.0
    } / 2.0
        * sign;
    let row: Vec<f64> = edge
        .row
        .iter()
        .map(|&number| layout.studs[number - 1])
        .map(|(x, y)| if along_x { x } else { y })
        .collect();
    let (from, to) = (
        row.iter().copied().fold(f64::INFINITY, f64::min),
        row.iter().copied().fold(f64::NEG_INFINITY, f64::max),
    );
    let behind = half - sign * edge.distance;
    let body = [
        place(from, behind),
        place(to, behind),
        place(to + edge.spread[0], half),
        place(from - edge.spread[1], half),
    ];
    pen.hatch(Hatch::Area, &[body.to_vec()]);
    pen.outline(Line::Dashed, &body);
    // Away from the body and from the dimension's lines, which run to the side.
    numbered(
        pen,
        layout,
        view,
        &edge.row,
        if along_x { [1.0, -1.0] } else { [-1.0, 1.0] },
    );
    let low = view.at(0.0, -layout.block.1 / 2.0).y + FIRST;
    let number = layout.number(edge.distance);
    let (stud, side) = (place(to, behind), place(to, half));
    if along_x {
        upright(
            pen,
            stud,
            side,
            view.at(-layout.block.0 / 2.0, 0.0).x - FIRST,
            &number,
        );
    } else {
        across(pen, stud, side, low, &number);
    }
    let length = if along_x {
        layout.block.0
    } else {
        layout.block.1
    };
    face(
        pen,
        layout,
        edge,
        view,
        [from - edge.spread[1], to + edge.spread[0], length],
        low + 6.0,
    );
}

/// The side of the block seen straight on, with the area that breaks off; `ends` are the area's two ends and the side's length.
fn face(
    pen: &mut Pen,
    layout: &Layout,
    edge: &Edge,
    view: &View,
    [from, to, length]: [f64; 3],
    top: f64,
) {
    let middle = view.origin.x;
    // Seen from outside, the east and the south side have their positive end to the right, the others to the left.
    let way = if matches!(edge.side, "east" | "south") {
        1.0
    } else {
        -1.0
    };
    let place = |along: f64, depth: f64| at(middle + way * view.mm(along), top + view.mm(depth));
    pen.rectangle(
        Line::Heavy,
        place(-length / 2.0, 0.0),
        place(length / 2.0, layout.thickness),
    );
    let area = rectangle(place(from, 0.0), place(to, edge.depth));
    pen.hatch(Hatch::Area, std::slice::from_ref(&area));
    pen.outline(Line::Dashed, &area);
    let low = place(0.0, layout.thickness).y + FIRST;
    across(
        pen,
        place(from, edge.depth),
        place(to, edge.depth),
        low,
        &layout.number(to - from),
    );
    let left = middle - view.mm(length / 2.0) - FIRST;
    upright(
        pen,
        at(middle - view.mm(length / 2.0), top),
        place(if way > 0.0 { from } else { to }, edge.depth),
        left,
        &layout.number(edge.depth),
    );
    pen.text(
        at(middle - view.mm(length / 2.0), low + STEP),
        Anchor::Start,
        format!("The {} side", edge.side),
    );
}
