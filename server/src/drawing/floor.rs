//! Plan of the observing floor: pier, block below, where people stand and walk, posts of a deck.

mod legend;
mod marker;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::site_plan::floor::{FloorKind, Joists, Stand, Wall};
use stillground::units::{Length, kilogram, metre};

use crate::drawing::area::Area;
use crate::drawing::dimension::{FIRST, across, arrowhead, upright};
use crate::drawing::furniture::{axes, dimension_text, length_text, north, title_strip, view};
use crate::drawing::pen::{Head, Pen, rectangle};
use crate::drawing::scale::View;
use crate::drawing::{Drawing, Form, Line, PHONE_ROOM, Point, at};

pub(super) use marker::markers;

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    kind: FloorKind,
    floor: (f64, f64),
    block: (f64, f64),
    plate: f64,
    column: f64,
    gap: f64,
    quiet: Option<f64>,
    /// Places where people stand.
    pub stands: Vec<Stand>,
    walk: Vec<[f64; 2]>,
    walker: f64,
    posts: Vec<[f64; 2]>,
    /// Joists of a deck from end to end, where their direction was said.
    joists: Vec<[[f64; 2]; 2]>,
    /// The door in its wall, from one side of it to the other, where that was said.
    door: Option<[[f64; 2]; 2]>,
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    let m = |length: Length| metre::get(length);
    Layout {
        units: brief.units,
        kind: brief.floor.kind.value,
        floor: (m(brief.floor.length.value), m(brief.floor.width.value)),
        block: (m(design.block.length), m(design.block.width)),
        plate: m(design.pier.plate_side),
        column: m(design.pier.outside_diameter),
        gap: m(brief.floor.gap.value),
        quiet: design
            .motion
            .quiet
            .filter(|quiet| !quiet.anywhere)
            .map(|quiet| quiet.distance_m),
        stands: brief.floor.stands.value.clone(),
        walk: brief.floor.walk.value.clone(),
        walker: kilogram::get(brief.floor.walker_mass.value),
        posts: if design.floor.supports.is_empty() {
            brief.floor.supports.clone()
        } else {
            design.floor.supports.clone()
        },
        joists: joists(brief),
        door: door(brief),
    }
}

/// Joists as they usually lie, in the way that was said: which of them is where is the builder's choice.
const JOIST_SPACING_M: f64 = 0.45;
/// Width of a door as it is drawn.
const DOOR_M: f64 = 0.8;

fn joists(brief: &Brief) -> Vec<[[f64; 2]; 2]> {
    let Some(way) = brief
        .floor
        .joists
        .filter(|_| brief.floor.kind.value == FloorKind::Deck)
    else {
        return Vec::new();
    };
    let [length, width] = [brief.floor.length.value, brief.floor.width.value].map(metre::get);
    let (long, wide) = match way {
        Joists::X => (length, width),
        Joists::Y => (width, length),
    };
    let spans = (wide / JOIST_SPACING_M).ceil().max(1.0);
    (0..=spans as usize)
        .map(|i| wide * (i as f64 / spans - 0.5))
        .map(|across| match way {
            Joists::X => [[-0.5 * long, across], [0.5 * long, across]],
            Joists::Y => [[across, -0.5 * long], [across, 0.5 * long]],
        })
        .collect()
}

fn door(brief: &Brief) -> Option<[[f64; 2]; 2]> {
    let [half_x, half_y] =
        [brief.floor.length.value, brief.floor.width.value].map(|side| 0.5 * metre::get(side));
    let along = metre::get(brief.floor.door_offset.value);
    let ends = [along - 0.5 * DOOR_M, along + 0.5 * DOOR_M];
    Some(match brief.floor.door_wall? {
        Wall::North => ends.map(|x| [x, half_y]),
        Wall::South => ends.map(|x| [x, -half_y]),
        Wall::East => ends.map(|y| [half_x, y]),
        Wall::West => ends.map(|y| [-half_x, y]),
    })
}

impl Layout {
    /// Leaves the path and the quiet ring out, for a map that has lines of its own.
    pub(super) fn without_walk(&mut self) {
        self.walk.clear();
        self.joists.clear();
        self.quiet = None;
    }

    /// Whether a deck's posts carry those who stand on it.
    pub(super) fn on_posts(&self) -> bool {
        self.kind == FloorKind::Deck && !self.posts.is_empty()
    }

    /// What must be on the paper: the floor and every place named.
    pub(super) fn extent(&self) -> Area {
        let mut area = Area::EMPTY;
        for size in [self.floor, self.block] {
            area.hold(at(-size.0 / 2.0, -size.1 / 2.0), 0.0);
            area.hold(at(size.0 / 2.0, size.1 / 2.0), 0.0);
        }
        let stands = self.stands.iter().map(|stand| [stand.x_m, stand.y_m]);
        for [x, y] in stands
            .chain(self.walk.iter().copied())
            .chain(self.posts.iter().copied())
        {
            area.hold(at(x, y), 0.1);
        }
        area
    }

    fn say(&self, length: f64) -> String {
        self.units.say(length, Unit::Metre)
    }

    fn place_words(&self, x: f64, y: f64) -> String {
        let part = |value: f64, plus: &str, minus: &str| match value {
            v if v.abs() < 0.005 => None,
            v => Some(format!(
                "{} {}",
                self.say(v.abs()),
                if v > 0.0 { plus } else { minus }
            )),
        };
        let parts: Vec<String> = [part(x, "east", "west"), part(y, "north", "south")]
            .into_iter()
            .flatten()
            .collect();
        if parts.is_empty() {
            "on the axis".to_owned()
        } else {
            parts.join(", ")
        }
    }

    fn kind_words(&self) -> String {
        match self.kind {
            FloorKind::Ground => "People stand on the ground itself".to_owned(),
            FloorKind::Slab => {
                format!(
                    "Slab on the ground, clear of the pier by {} all round",
                    length_text(self.units, self.gap * 1000.0)
                )
            }
            FloorKind::Deck => {
                format!(
                    "Deck on posts, clear of the pier by {} all round",
                    length_text(self.units, self.gap * 1000.0)
                )
            }
        }
    }

    fn stand_words(&self, stand: &Stand) -> String {
        format!(
            "{}, {}, {}",
            stand.name,
            self.units.say(stand.mass_kg, Unit::Kilogram),
            self.place_words(stand.x_m, stand.y_m)
        )
    }

    fn description(&self) -> String {
        let mut text = format!(
            "The floor is {} from west to east and {} from south to north. {}.",
            self.say(self.floor.0),
            self.say(self.floor.1),
            self.kind_words()
        );
        for (i, stand) in self.stands.iter().enumerate() {
            text.push_str(&format!(" Stand {}: {}.", i + 1, self.stand_words(stand)));
        }
        if !self.walk.is_empty() {
            let corners: Vec<String> = self
                .walk
                .iter()
                .map(|&[x, y]| self.place_words(x, y))
                .collect();
            text.push_str(&format!(
                " People walk by these points: {}.",
                corners.join("; ")
            ));
        }
        if !self.posts.is_empty() {
            text.push_str(&format!(" The deck has {} posts.", self.posts.len()));
        }
        if let Some([from, to]) = self.joists.first() {
            text.push_str(if from[1] == to[1] {
                " Its joists run from west to east."
            } else {
                " Its joists run from south to north."
            });
        }
        if let Some([from, to]) = self.door {
            let middle = [0.5 * (from[0] + to[0]), 0.5 * (from[1] + to[1])];
            text.push_str(&format!(
                " The door is {}.",
                self.place_words(middle[0], middle[1])
            ));
        }
        text
    }
}

/// Paper for the plan, mm.
const ROOM: (f64, f64) = (92.0, 110.0);
const TITLE: &str = "Floor: places and route";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let area = layout.extent();
    let scale = form.scale(area.right - area.left, area.bottom - area.top, room);
    let view = view(scale, area.left, area.bottom);
    let mut pen = Pen::new(form);
    plan(&mut pen, layout, &view);
    let bounds = pen.bounds();
    let (corner, wide) = match form {
        Form::Sheet | Form::Smaller(_) => (at(bounds.right + 10.0, bounds.top), 54.0),
        Form::Phone | Form::Glance => (at(bounds.left, bounds.bottom + 3.0), PHONE_ROOM),
    };
    legend::write(&mut pen, layout, corner, wide);
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "floor",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

fn plan(pen: &mut Pen, layout: &Layout, view: &View) {
    base(pen, layout, view);
    path(
        pen,
        &layout
            .walk
            .iter()
            .map(|&[x, y]| view.at(x, y))
            .collect::<Vec<_>>(),
    );
    let (length, width) = layout.floor;
    let bounds = pen.bounds();
    let number = |length_m: f64| dimension_text(layout.units, length_m * 1000.0);
    across(
        pen,
        view.at(-length / 2.0, -width / 2.0),
        view.at(length / 2.0, -width / 2.0),
        bounds.bottom + FIRST,
        &number(length),
    );
    upright(
        pen,
        view.at(-length / 2.0, width / 2.0),
        view.at(-length / 2.0, -width / 2.0),
        bounds.left - FIRST,
        &number(width),
    );
    north(pen, at(bounds.right + 5.0, bounds.bottom));
    markers(
        pen,
        &layout
            .stands
            .iter()
            .map(|stand| view.at(stand.x_m, stand.y_m))
            .collect::<Vec<_>>(),
    );
}

/// Floor, block below, plate, column and the gap round what passes through.
pub(super) fn base(pen: &mut Pen, layout: &Layout, view: &View) {
    let square = |pen: &mut Pen, line: Line, (a, b): (f64, f64)| {
        pen.rectangle(line, view.at(-a / 2.0, b / 2.0), view.at(a / 2.0, -b / 2.0))
    };
    let line = if layout.kind == FloorKind::Ground {
        Line::Phantom
    } else {
        Line::Thick
    };
    square(pen, line, layout.floor);
    for joist in &layout.joists {
        pen.line(Line::Thin, &joist.map(|[x, y]| view.at(x, y)));
    }
    if let Some(door) = layout.door {
        pen.line(Line::Heavy, &door.map(|[x, y]| view.at(x, y)));
    }
    square(pen, Line::Dashed, layout.block);
    square(pen, Line::Thin, (layout.plate, layout.plate));
    pen.circle(Line::Heavy, view.at(0.0, 0.0), view.mm(layout.column / 2.0));
    if let Some(quiet) = layout.quiet {
        quiet_ring(pen, layout, view, quiet);
    }
    axes(
        pen,
        view.at(0.0, 0.0),
        view.mm(layout.block.0 / 2.0) + 4.0,
        view.mm(layout.block.1 / 2.0) + 4.0,
    );
    for &[x, y] in &layout.posts {
        let (centre, half) = (view.at(x, y), view.mm(0.05).max(0.7));
        pen.solid(&rectangle(
            at(centre.x - half, centre.y - half),
            at(centre.x + half, centre.y + half),
        ));
    }
}

/// As much of the ring beyond which people may stand as lies on the drawn floor.
fn quiet_ring(pen: &mut Pen, layout: &Layout, view: &View, radius: f64) {
    let extent = layout.extent();
    let (a, b) = (
        view.at(extent.left, extent.bottom),
        view.at(extent.right, extent.top),
    );
    let window = Area {
        left: a.x,
        top: a.y,
        right: b.x,
        bottom: b.y,
    };
    let place = |step: u32| {
        let (sin, cos) = (f64::from(step) * std::f64::consts::TAU / 240.0).sin_cos();
        view.at(radius * cos, radius * sin)
    };
    let mut run = Vec::new();
    for step in 0..=240 {
        let point = place(step);
        let inside = point.x >= window.left
            && point.x <= window.right
            && point.y >= window.top
            && point.y <= window.bottom;
        if inside {
            run.push(point);
        }
        if (!inside || step == 240) && run.len() > 1 {
            pen.line(Line::Phantom, &std::mem::take(&mut run));
        } else if !inside {
            run.clear();
        }
    }
}

/// The path with an arrow at its end.
fn path(pen: &mut Pen, points: &[Point]) {
    if points.len() < 2 {
        return;
    }
    pen.line(Line::Chain, points);
    let last = points.len() - 1;
    let (tip, before) = (points[last], points[last - 1]);
    let length = (before.x - tip.x).hypot(before.y - tip.y);
    if length > 0.1 {
        arrowhead(
            pen,
            tip,
            (before.x - tip.x) / length,
            (before.y - tip.y) / length,
        );
    }
}
