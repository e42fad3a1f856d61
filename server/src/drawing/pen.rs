//! The pen: puts lines, shapes and letters on paper and keeps account of where letters stand.

use crate::drawing::area::{Area, area_of, bounds};
use crate::drawing::coarse::coarsen;
use crate::drawing::hatch::{self, Hatch};
use crate::drawing::veil::Veil;
use crate::drawing::{Anchor, Drawing, Form, Item, Label, Line, Point, at};

/// Size of lettering, mm: capitals 2.5 mm high, ISO 3098.
pub const SIZE: f64 = 3.6;
/// Size of the small lettering, mm.
pub const SMALL: f64 = 3.0;
/// Size of a heading within a drawing, mm.
pub const HEADING: f64 = 4.2;
/// Height of a line of lettering, mm.
pub const LINE_HEIGHT: f64 = 4.6;

/// The pen.
#[derive(Debug, Default)]
pub struct Pen {
    form: Form,
    items: Vec<Item>,
    hatched: Vec<Hatched>,
}

/// A hatch, and what stands in front of it.
#[derive(Debug)]
struct Hatched {
    hatch: Hatch,
    outlines: Vec<Vec<Point>>,
    veil: Veil,
}

impl Pen {
    /// A pen for a drawing of that form.
    #[must_use]
    pub fn new(form: Form) -> Self {
        Self {
            form,
            ..Self::default()
        }
    }

    /// What the drawing is laid out for.
    #[must_use]
    pub const fn form(&self) -> Form {
        self.form
    }

    /// A line through points.
    pub fn line(&mut self, line: Line, points: &[Point]) {
        self.items.push(Item::Path {
            runs: vec![points.to_vec()],
            closed: false,
            line,
        });
    }

    /// A closed outline.
    pub fn outline(&mut self, line: Line, corners: &[Point]) {
        self.items.push(Item::Path {
            runs: vec![corners.to_vec()],
            closed: true,
            line,
        });
    }

    /// A rectangle between two opposite corners.
    pub fn rectangle(&mut self, line: Line, a: Point, b: Point) {
        self.outline(line, &rectangle(a, b));
    }

    /// A circle.
    pub fn circle(&mut self, line: Line, centre: Point, radius: f64) {
        self.items.push(Item::Circle {
            centre,
            radius,
            line,
        });
    }

    /// A dot of ink.
    pub fn dot(&mut self, centre: Point, radius: f64) {
        self.items.push(Item::Dot { centre, radius });
    }

    /// A shape of ink.
    pub fn solid(&mut self, corners: &[Point]) {
        self.items.push(Item::Solid {
            corners: corners.to_vec(),
        });
    }

    /// A hatch over closed outlines; an outline within another is a hole.
    pub fn hatch(&mut self, hatch: Hatch, outlines: &[Vec<Point>]) {
        self.hatch_behind(hatch, outlines, &Veil::default());
    }

    /// A hatch over closed outlines behind what stands in front of it.
    pub fn hatch_behind(&mut self, hatch: Hatch, outlines: &[Vec<Point>], veil: &Veil) {
        self.hatched.push(Hatched {
            hatch,
            outlines: outlines.to_vec(),
            veil: veil.clone(),
        });
    }

    /// Lettering of the usual size.
    pub fn text(&mut self, at: Point, anchor: Anchor, text: impl Into<String>) {
        self.label(Label {
            at,
            size: SIZE,
            anchor,
            upright: false,
            bold: false,
            text: text.into(),
        });
    }

    /// Lettering.
    pub fn label(&mut self, label: Label) {
        if !label.text.is_empty() {
            self.items.push(Item::Text(label));
        }
    }

    /// Lines of text below each other, from the first base line down; gives the base line after the last.
    pub fn paragraph(&mut self, start: Point, size: f64, lines: &[String]) -> f64 {
        let step = size * LINE_HEIGHT / SIZE;
        for (i, text) in lines.iter().enumerate() {
            let at = at(start.x, start.y + step * i as f64);
            self.label(Label {
                at,
                size,
                anchor: Anchor::Start,
                upright: false,
                bold: false,
                text: text.clone(),
            });
        }
        start.y + step * lines.len() as f64
    }

    /// The ground covered so far.
    #[must_use]
    pub fn bounds(&self) -> Area {
        let mut all = Area::EMPTY;
        for area in self.items.iter().map(bounds) {
            all.hold(at(area.left, area.top), 0.0);
            all.hold(at(area.right, area.bottom), 0.0);
        }
        all
    }

    /// What has been drawn, as it stands; hatches are left out.
    #[must_use]
    pub fn into_items(self) -> Vec<Item> {
        self.items
    }

    /// Whether an area is free of lettering and of lines.
    #[must_use]
    pub fn is_free(&self, area: &Area) -> bool {
        let crossed = |run: &[Point], closed: bool| {
            let ends = if closed {
                run.last().zip(run.first())
            } else {
                None
            };
            run.windows(2)
                .map(|pair| (&pair[0], &pair[1]))
                .chain(ends)
                .any(|(a, b)| area.share_of(*a, *b).is_some())
        };
        !self.items.iter().any(|item| match item {
            Item::Path { runs, closed, .. } => runs.iter().any(|run| crossed(run, *closed)),
            Item::Circle { centre, radius, .. } => area.meets_ring(*centre, *radius),
            Item::Text(_) | Item::Dot { .. } | Item::Solid { .. } => bounds(item).meets(area),
        })
    }

    /// Lays the hatches under everything, with the lettering left free, and moves all to a margin from the corner.
    #[must_use]
    pub fn finish(mut self, head: Head) -> Drawing {
        let letters: Vec<Area> = self
            .items
            .iter()
            .filter_map(|item| {
                if let Item::Text(label) = item {
                    Some(area_of(label).with_margin(0.7))
                } else {
                    None
                }
            })
            .collect();
        let mut items: Vec<Item> = self
            .hatched
            .iter()
            .flat_map(|one| {
                one.veil
                    .thin_out(hatch::items(one.hatch, &one.outlines, &letters))
            })
            .collect();
        items.append(&mut self.items);
        let mut all = Area::EMPTY;
        for area in items.iter().map(bounds) {
            all.hold(at(area.left, area.top), MARGIN);
            all.hold(at(area.right, area.bottom), MARGIN);
        }
        for item in &mut items {
            shift(item, -all.left, -all.top);
            if self.form.is_phone() {
                coarsen(item);
            }
        }
        let Head {
            name,
            title,
            description,
            scale,
        } = head;
        Drawing {
            name,
            title,
            description,
            form: self.form,
            width: all.right - all.left,
            height: all.bottom - all.top,
            scale: scale.filter(|_| !self.form.is_phone()),
            items,
        }
    }
}

/// Paper left free round a drawing, mm.
pub const MARGIN: f64 = 1.5;

/// What stands over a drawing.
#[derive(Debug, Clone)]
pub struct Head {
    /// Name in links.
    pub name: &'static str,
    /// Title.
    pub title: String,
    /// What it shows, in words.
    pub description: String,
    /// Denominator of the scale.
    pub scale: Option<u32>,
}

/// The corners of a rectangle.
#[must_use]
pub fn rectangle(a: Point, b: Point) -> Vec<Point> {
    vec![a, at(b.x, a.y), b, at(a.x, b.y)]
}

/// Moves an item.
pub fn shift(item: &mut Item, x: f64, y: f64) {
    let moved = |point: &mut Point| *point = at(point.x + x, point.y + y);
    match item {
        Item::Path { runs, .. } => runs.iter_mut().flatten().for_each(moved),
        Item::Solid { corners } => corners.iter_mut().for_each(moved),
        Item::Circle { centre, .. } | Item::Dot { centre, .. } => moved(centre),
        Item::Text(label) => moved(&mut label.at),
    }
}
