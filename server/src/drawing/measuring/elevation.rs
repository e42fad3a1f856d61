//! Pier, block and ground from the south, and a telescope on top.

use super::{Layout, box_of};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::Pen;
use crate::drawing::scale::View;
use crate::drawing::{Line, Point, at};

/// Width of the hatched band of ground, mm on paper.
const BAND: f64 = 4.0;

/// Draws ground to `right` metres beyond the axis, block and column.
pub fn draw(pen: &mut Pen, layout: &Layout, view: &View, right: f64) {
    let (pier, half) = (&layout.pier, layout.half);
    let level = view.at(0.0, 0.0).y;
    for (from, to) in [(-half - 0.1, -half), (half, right)] {
        let (a, b) = (view.at(from, 0.0).x, view.at(to, 0.0).x);
        pen.line(Line::Thick, &[at(a, level), at(b, level)]);
        let band = [
            at(a, level),
            at(b, level),
            at(b, level + BAND),
            at(a, level + BAND),
        ];
        pen.hatch(Hatch::Ground, &[band.to_vec()]);
    }
    let depth = layout.shown_depth();
    let block = box_of(view, (-half, pier.upstand), (half, -depth));
    pen.hatch(Hatch::Concrete, std::slice::from_ref(&block));
    if depth < layout.depth {
        // It goes on below.
        let open = [
            (-half, -depth),
            (-half, pier.upstand),
            (half, pier.upstand),
            (half, -depth),
        ];
        pen.line(Line::Heavy, &open.map(|(x, z)| view.at(x, z)));
        pen.line(
            Line::Phantom,
            &[view.at(-half, -depth), view.at(half, -depth)],
        );
    } else {
        pen.outline(Line::Heavy, &block);
    }
    let (foot, top) = (pier.foot(), pier.top());
    let plates = [
        (pier.plate_half, foot, foot + pier.plate_thickness),
        (pier.top_plate_half, top - pier.top_plate_thickness, top),
    ];
    for (half, low, high) in plates {
        let plate = box_of(view, (-half, high), (half, low));
        pen.hatch(Hatch::Steel, std::slice::from_ref(&plate));
        pen.outline(Line::Thick, &plate);
    }
    let tube = box_of(
        view,
        (-pier.radius, top - pier.top_plate_thickness),
        (pier.radius, foot + pier.plate_thickness),
    );
    pen.outline(Line::Thick, &tube);
    pen.line(Line::Chain, &[view.at(0.0, top + 0.05), view.at(0.0, -0.1)]);
}

/// Height of the mount, and half of the tube's length and width, m.
const MOUNT_M: f64 = 0.3;
const TUBE_M: (f64, f64) = (0.38, 0.07);
/// The tube's rise: the sine and cosine of sixty degrees.
const RISE: (f64, f64) = (0.866, 0.5);

/// Draws mount and telescope; the open end of the tube.
pub fn telescope(pen: &mut Pen, layout: &Layout, view: &View) -> Point {
    let top = layout.pier.top();
    let mount = [
        view.at(-0.09, top),
        view.at(0.09, top),
        view.at(0.06, top + MOUNT_M),
        view.at(-0.06, top + MOUNT_M),
    ];
    pen.outline(Line::Thin, &mount);
    let (sin, cos) = RISE;
    let middle = (0.0, top + MOUNT_M + 0.06);
    let corner = |along: f64, aside: f64| {
        view.at(
            middle.0 + along * cos - aside * sin,
            middle.1 + along * sin + aside * cos,
        )
    };
    let (long, wide) = TUBE_M;
    let tube = [
        corner(-long, -wide),
        corner(long, -wide),
        corner(long, wide),
        corner(-long, wide),
    ];
    pen.outline(Line::Thin, &tube);
    corner(long, 0.0)
}
