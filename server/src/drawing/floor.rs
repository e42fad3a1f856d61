//! Plan of the observing floor: pier, block below, where people stand and walk, posts of a deck.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::site_plan::floor::{FloorKind, Stand};
use stillground::units::{Length, kilogram, metre};

use crate::drawing::area::Area;
use crate::drawing::dimension::{FIRST, across, arrowhead, upright};
use crate::drawing::furniture::{axes, dimension_text, north, title_strip, view};
use crate::drawing::pen::{Head, Pen, SIZE, rectangle};
use crate::drawing::scale::{View, fitting};
use crate::drawing::{Anchor, Drawing, Label, Line, Point, at};
use crate::lettering::{Face, wrap};

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
    }
}

impl Layout {
    /// Leaves the path and the quiet ring out, for a map that has lines of its own.
    pub(super) fn without_walk(&mut self) {
        self.walk.clear();
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
                    self.units.say(self.gap * 1000.0, Unit::Millimetre)
                )
            }
            FloorKind::Deck => {
                format!(
                    "Deck on posts, clear of the pier by {} all round",
                    self.units.say(self.gap * 1000.0, Unit::Millimetre)
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
        text
    }
}

const TITLE: &str = "Observing floor: where people stand and walk";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout) -> Drawing {
    let area = layout.extent();
    let scale = fitting(area.right - area.left, area.bottom - area.top, 92.0, 110.0);
    let view = view(scale, area.left, area.bottom);
    let mut pen = Pen::default();
    plan(&mut pen, layout, &view);
    let bounds = pen.bounds();
    legend(&mut pen, layout, at(bounds.right + 10.0, bounds.top));
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

/// Radius of a stand's number, mm.
const BALLOON: f64 = 2.6;

/// Numbered balloons beside the places, where no other balloon or lettering stands.
pub(super) fn markers(pen: &mut Pen, places: &[Point]) {
    for (i, &place) in places.iter().enumerate() {
        pen.dot(place, 0.7);
        let free = |centre: Point| Area {
            left: centre.x - BALLOON,
            right: centre.x + BALLOON,
            top: centre.y - BALLOON,
            bottom: centre.y + BALLOON,
        };
        let tries = (0..48).map(|step| {
            let (ring, angle) = (
                f64::from(step / 8),
                f64::from(step % 8) * std::f64::consts::FRAC_PI_4 - std::f64::consts::FRAC_PI_4,
            );
            let reach = 5.0 + ring * 6.0;
            at(place.x + reach * angle.cos(), place.y + reach * angle.sin())
        });
        let mut clear = tries.clone().filter(|&centre| {
            let area = free(centre).with_margin(0.4);
            pen.is_free(&area)
                && !places.iter().any(|other| {
                    area.left < other.x
                        && other.x < area.right
                        && area.top < other.y
                        && other.y < area.bottom
                })
        });
        let centre = clear.next().unwrap_or(at(place.x + 5.0, place.y - 5.0));
        drop(clear);
        let length = (centre.x - place.x).hypot(centre.y - place.y).max(1e-9);
        let share = (length - BALLOON) / length;
        pen.line(
            Line::Thin,
            &[
                place,
                at(
                    place.x + (centre.x - place.x) * share,
                    place.y + (centre.y - place.y) * share,
                ),
            ],
        );
        pen.circle(Line::Thin, centre, BALLOON);
        pen.label(Label {
            at: at(centre.x, centre.y + 0.35 * SIZE),
            size: SIZE,
            anchor: Anchor::Middle,
            upright: false,
            bold: true,
            text: (i + 1).to_string(),
        });
    }
}

/// Who stands where, and what the lines mean.
fn legend(pen: &mut Pen, layout: &Layout, corner: Point) {
    let wide = 54.0;
    let mut y = corner.y + SIZE;
    for (i, stand) in layout.stands.iter().enumerate() {
        pen.label(Label {
            at: at(corner.x, y),
            size: SIZE,
            anchor: Anchor::Start,
            upright: false,
            bold: true,
            text: (i + 1).to_string(),
        });
        y = pen.paragraph(
            at(corner.x + 6.0, y),
            SIZE,
            &wrap(Face::Figures, &layout.stand_words(stand), SIZE, wide - 6.0),
        ) + 1.0;
    }
    y += 2.0;
    let mut key = |pen: &mut Pen, line: Line, text: String| {
        pen.line(line, &[at(corner.x, y - 1.2), at(corner.x + 12.0, y - 1.2)]);
        y = pen.paragraph(
            at(corner.x + 15.0, y),
            SIZE,
            &wrap(Face::Figures, &text, SIZE, wide - 15.0),
        ) + 1.0;
    };
    key(
        pen,
        Line::Dashed,
        format!(
            "Block below, {}\u{a0}×\u{a0}{}",
            layout.say(layout.block.0),
            layout.say(layout.block.1)
        ),
    );
    if layout.walk.len() > 1 {
        key(
            pen,
            Line::Chain,
            format!(
                "Path, a person of {}",
                layout.units.say(layout.walker, Unit::Kilogram)
            ),
        );
    }
    if let Some(quiet) = layout.quiet {
        key(
            pen,
            Line::Phantom,
            format!(
                "Beyond {} a person's weight stays within the budget",
                layout.say(quiet)
            ),
        );
    }
    if !layout.posts.is_empty() {
        pen.solid(&[
            at(corner.x + 5.0, y - 2.2),
            at(corner.x + 7.0, y - 2.2),
            at(corner.x + 7.0, y - 0.2),
            at(corner.x + 5.0, y - 0.2),
        ]);
        y = pen.paragraph(
            at(corner.x + 15.0, y),
            SIZE,
            &[format!("{} posts", layout.posts.len())],
        ) + 1.0;
    }
    pen.paragraph(
        at(corner.x, y + 1.0),
        SIZE,
        &wrap(
            Face::Figures,
            &format!("{}.", layout.kind_words()),
            SIZE,
            wide,
        ),
    );
}
