//! The whole thing in the opened ground, seen from the south-east and from above: block, studs, column, what it carries,
//! the floor, and a person beside it.

mod floor;
mod ground;
mod labels;
mod layout;
mod person;
mod pier;
mod scene;
mod words;

pub use layout::{Layout, layout};
pub use words::{Words, words};

use stillground::brief::Brief;
use stillground::design::Design;

use crate::drawing::area::Area;
use crate::drawing::pen::{Head, Pen};
use crate::drawing::veil::Veil;
use crate::drawing::{Drawing, Form, Line, Point};
use scene::{Axonometry, Place, Scene};

/// Paper for the picture itself, mm: the width of a telephone's drawing, so that one picture serves sheet and telephone.
const ROOM: (f64, f64) = (67.0, 75.0);

const TITLE: &str = "The pier in the opened ground, seen from the south-east";

/// Draws it.
#[must_use]
pub fn draw(brief: &Brief, design: &Design, form: Form) -> Drawing {
    let layout = layout(brief, design);
    let words = words(brief, design, &layout);
    let mut scene = Scene {
        pen: Pen::new(form),
        veil: Veil::default(),
        view: view(&layout),
    };
    picture(&mut scene, &layout);
    // Drawn small it has no lettering, which nobody could read: what it shows stands in its description.
    if form != Form::Glance {
        labels::put(&mut scene, &layout, &words);
    }
    scene.pen.finish(Head {
        name: "cut-away",
        title: TITLE.to_owned(),
        description: words.description,
        scale: None,
    })
}

/// From front to back.
fn picture(scene: &mut Scene, layout: &Layout) {
    person::draw(scene, layout);
    pier::above(scene, layout);
    let floor = layout.floor.as_ref();
    // A floor above the block's top hides it from above; one below lies round its foot.
    let plate_top = layout.pier.foot() + layout.pier.plate_thickness;
    let lies = |from: f64, to: f64| {
        floor.filter(|floor| floor.beside.level > from && floor.beside.level <= to)
    };
    let put = |scene: &mut Scene, from: f64, to: f64| {
        if let Some(floor) = lies(from, to) {
            quiet(scene, layout, floor.beside.level);
            floor::draw(scene, layout, floor);
        }
    };
    put(scene, plate_top, f64::INFINITY);
    pier::plate(scene, layout);
    put(scene, layout.pier.upstand, plate_top);
    pier::block(scene, layout);
    put(scene, f64::NEG_INFINITY, layout.pier.upstand);
    if let Some(floor) = floor {
        floor::posts(scene, layout, floor);
    }
    quiet(scene, layout, 0.0);
    ground::draw(scene, layout);
}

/// The scale at which all that matters fits on the paper.
fn view(layout: &Layout) -> Axonometry {
    let metre = Axonometry { mm_per_m: 1.0 };
    let mut area = Area::EMPTY;
    let mut hold = |place: Place| area.hold(metre.at(place), 0.0);
    let r = layout.reach;
    for (x, y) in [(-r, -r), (r, -r), (r, r), (-r, r)] {
        hold([x, y, 0.0]);
        hold([x, y, -layout.bottom()]);
        if let Some(floor) = &layout.floor {
            hold([x.min(floor.half.0), y.min(floor.half.1), floor.beside.level]);
        }
    }
    hold(person::crown(layout));
    let (near, far) = pier::tube_ends(layout, metre);
    for point in near.into_iter().chain(far) {
        area.hold(point, 0.0);
    }
    Axonometry {
        mm_per_m: (ROOM.0 / (area.right - area.left)).min(ROOM.1 / (area.bottom - area.top)),
    }
}

/// Points of the ring of the quiet distance.
const RING: u32 = 120;

/// A place on the ring, whatever lies there.
fn on_ring(layout: &Layout, radius: f64, step: u32) -> Place {
    let (sin, cos) = (f64::from(step) * std::f64::consts::TAU / f64::from(RING)).sin_cos();
    let (x, y) = (radius * cos, radius * sin);
    [x, y, layout.surface(x, y)]
}

/// As much of the ring beyond which people do no harm as lies on the surface of that height.
fn quiet(scene: &mut Scene, layout: &Layout, height: f64) {
    let Some(radius) = layout.drawn_quiet() else {
        return;
    };
    let is_here = |[x, y, z]: Place| {
        let taken_out = x > 0.0 && y < 0.0;
        let opening = layout
            .floor
            .as_ref()
            .filter(|floor| floor.beside.level > 0.0 && height == 0.0)
            .is_some_and(|floor| x.abs().max(y.abs()) <= floor.beside.opening_half);
        !taken_out && !opening && z == height
    };
    let mut run: Vec<Point> = Vec::new();
    // Begun in the corner that is taken out, so that the ring is not cut where its count begins.
    for step in (0..=RING).map(|step| step + 7 * RING / 8) {
        let place = on_ring(layout, radius, step);
        if is_here(place) {
            run.push(scene.view.at(place));
        } else if run.len() > 1 {
            scene.run(Line::Dashed, &std::mem::take(&mut run));
        } else {
            run.clear();
        }
    }
    if run.len() > 1 {
        scene.run(Line::Dashed, &run);
    }
}
