//! A walk: the route from above, and the trail that the star draws meanwhile.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Units;
use stillground::units::metre;

use crate::drawing::area::Area;
use crate::drawing::callout::{self, note};
use crate::drawing::dimension::arrowhead;
use crate::drawing::furniture::{north, title_strip, view};
use crate::drawing::pen::{Head, Pen, rectangle};
use crate::drawing::{Drawing, Form, Line, at};

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    block: (f64, f64),
    radius: f64,
    route: Vec<[f64; 2]>,
}

/// Takes it out of the design; none without a route.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let route = brief.floor.walk.value.clone();
    (route.len() > 1).then(|| Layout {
        units: brief.units,
        block: (
            metre::get(design.block.length),
            metre::get(design.block.width),
        ),
        radius: 0.5 * metre::get(design.pier.outside_diameter),
        route,
    })
}

const TITLE: &str = "A walk along the route while one exposure runs, from above";
/// Radius of the seeing disc as it is drawn, mm.
const DISC: f64 = 8.0;

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted((90.0, 80.0), |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let mut extent = Area::EMPTY;
    let (half_x, half_y) = (layout.block.0 / 2.0, layout.block.1 / 2.0);
    extent.hold(at(-half_x, -half_y), 0.2);
    extent.hold(at(half_x, half_y), 0.2);
    for [x, y] in &layout.route {
        extent.hold(at(*x, *y), 0.2);
    }
    let scale = Form::Phone.scale(extent.right - extent.left, extent.bottom - extent.top, room);
    let view = view(scale, extent.left, extent.bottom);
    let mut pen = Pen::new(form);
    pen.outline(
        Line::Dashed,
        &rectangle(view.at(-half_x, half_y), view.at(half_x, -half_y)),
    );
    let centre = view.at(0.0, 0.0);
    pen.circle(Line::Thick, centre, view.mm(layout.radius));
    let points: Vec<_> = layout.route.iter().map(|[x, y]| view.at(*x, *y)).collect();
    pen.line(Line::Heavy, &points);
    for pair in points.windows(2) {
        let (dx, dy) = (pair[1].x - pair[0].x, pair[1].y - pair[0].y);
        let length = dx.hypot(dy);
        if length > 6.0 {
            let tip = at(pair[0].x + 0.55 * dx, pair[0].y + 0.55 * dy);
            arrowhead(&mut pen, tip, -dx / length, -dy / length);
        }
    }
    let bounds = pen.bounds();
    north(&mut pen, at(bounds.right + 7.0, bounds.top + 13.0));
    let bounds = pen.bounds();
    let disc = match form {
        Form::Sheet | Form::Smaller(_) => at(bounds.right + 4.0 + DISC, bounds.bottom - DISC),
        Form::Phone | Form::Glance => at(
            (bounds.left + bounds.right) / 2.0,
            bounds.bottom + 5.0 + DISC,
        ),
    };
    pen.circle(Line::Thin, disc, DISC);
    let trail = [
        at(disc.x - 4.5, disc.y + 1.5),
        at(disc.x + 4.5, disc.y - 1.5),
    ];
    pen.line(Line::Heavy, &trail);
    let bounds = pen.bounds();
    let first = points.first().copied().unwrap_or(centre);
    let notes = vec![
        note(first, "The route begins here: walk it at an easy pace"),
        note(
            centre,
            "The pier, with the telescope on a star high in the sky; guiding off",
        ),
        note(
            trail[1],
            "On the picture: the star’s trail, measured from end to end",
        ),
    ];
    let said: Vec<String> = notes.iter().map(|note| note.text.clone()).collect();
    callout::column(
        &mut pen,
        notes,
        bounds.right + 9.0,
        bounds.top,
        bounds.bottom,
        callout::room(&bounds, 46.0),
    );
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "measure-walk",
        title: TITLE.to_owned(),
        description: format!("{TITLE}. {}.", said.join(". ")),
        scale: None,
    })
}
