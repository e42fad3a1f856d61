//! Marks and drawings turned into strokes, fills and glyphs.

use krilla::color::{luma, rgb};
use krilla::geom::{Path, PathBuilder, Point as PdfPoint, Rect, Transform};
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Paint, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, TextDirection};

use super::points;
use crate::drawing::{Item, Label, Line, Point, area, at};
use crate::lettering::{self, Face};
use crate::views::pdf::Fault;
use crate::views::pdf::page::Mark;

/// The fonts.
pub struct Ink {
    fonts: [Font; 5],
}

/// A drawing's place on the page: where its corner is, and its enlargement.
#[derive(Clone, Copy)]
struct Place {
    corner: Point,
    factor: f64,
}

impl Place {
    fn at(&self, point: Point) -> (f32, f32) {
        (
            points(self.corner.x + point.x * self.factor),
            points(self.corner.y + point.y * self.factor),
        )
    }

    fn length(&self, mm: f64) -> f32 {
        points(mm * self.factor)
    }
}

const PAGE: Place = Place {
    corner: at(0.0, 0.0),
    factor: 1.0,
};

impl Ink {
    /// Reads the fonts.
    ///
    /// # Errors
    /// When one is broken.
    pub fn new() -> Result<Self, Fault> {
        let font = |face: Face| Font::new(face.bytes().into(), 0).ok_or(Fault::Face(face));
        let [a, b, c, d, e] = Face::ALL;
        Ok(Self {
            fonts: [font(a)?, font(b)?, font(c)?, font(d)?, font(e)?],
        })
    }

    /// Puts a mark on the surface.
    pub fn mark(&self, surface: &mut Surface<'_>, mark: &Mark) {
        match mark {
            Mark::Text {
                at,
                size,
                face,
                text,
            } => self.text(surface, &PAGE, *at, *face, *size, text),
            Mark::Rule { from, to, weight } => stroke(
                surface,
                polyline(&PAGE, &[vec![*from, *to]], false),
                points(*weight),
                &[],
            ),
            Mark::Band {
                from,
                to,
                weight,
                colour: [r, g, b],
            } => {
                let colour = rgb::Color::new(*r, *g, *b);
                stroke_in(
                    surface,
                    polyline(&PAGE, &[vec![*from, *to]], false),
                    points(*weight),
                    &[],
                    colour.into(),
                );
            }
            Mark::Squares { corners, side } => {
                let mut builder = PathBuilder::new();
                for corner in corners {
                    // A hair wider than their raster, so that no gap shows between neighbours.
                    let side = points(side * 1.01);
                    Rect::from_xywh(points(corner.x), points(corner.y), side, side)
                        .into_iter()
                        .for_each(|rect| builder.push_rect(rect));
                }
                fill(surface, builder.finish());
            }
            Mark::Drawing {
                corner,
                factor,
                drawing,
            } => {
                let place = Place {
                    corner: *corner,
                    factor: *factor,
                };
                drawing
                    .items
                    .iter()
                    .for_each(|item| self.item(surface, &place, item));
            }
        }
    }

    fn item(&self, surface: &mut Surface<'_>, place: &Place, item: &Item) {
        match item {
            Item::Path { runs, closed, line } => {
                line_of(surface, place, polyline(place, runs, *closed), *line)
            }
            Item::Solid { corners } => fill(
                surface,
                polyline(place, std::slice::from_ref(corners), true),
            ),
            Item::Circle {
                centre,
                radius,
                line,
            } => line_of(surface, place, round(place, *centre, *radius), *line),
            Item::Dot { centre, radius } => fill(surface, round(place, *centre, *radius)),
            Item::Text(label) => self.label(surface, place, label),
        }
    }

    fn label(&self, surface: &mut Surface<'_>, place: &Place, label: &Label) {
        let (face, _, before) = area::set_at(label);
        let (size, start) = (
            label.size * place.factor,
            at(label.at.x - before, label.at.y),
        );
        if label.upright {
            let (x, y) = place.at(label.at);
            surface.push_transform(&Transform::from_rotate_at(-90.0, x, y));
        }
        self.text(surface, place, start, face, size, &label.text);
        if label.upright {
            surface.pop();
        }
    }

    fn text(
        &self,
        surface: &mut Surface<'_>,
        place: &Place,
        start: Point,
        face: Face,
        size: f64,
        text: &str,
    ) {
        surface.set_stroke(None);
        surface.set_fill(Some(black()));
        let (mut x, y) = place.at(start);
        for run in lettering::set(face, text).runs {
            let font = self.fonts[run.face as usize].clone();
            surface.draw_text(
                PdfPoint::from_xy(x, y),
                font,
                points(size),
                &run.text,
                false,
                TextDirection::LeftToRight,
            );
            x += points(lettering::run_width(&run, size));
        }
    }
}

fn black() -> Fill {
    Fill {
        paint: luma::Color::black().into(),
        opacity: NormalizedF32::ONE,
        rule: FillRule::EvenOdd,
    }
}

fn line_of(surface: &mut Surface<'_>, place: &Place, path: Option<Path>, line: Line) {
    let dashes: Vec<f32> = line
        .dashes_mm()
        .iter()
        .map(|&length| place.length(length))
        .collect();
    stroke(surface, path, place.length(line.weight_mm()), &dashes);
}

fn stroke(surface: &mut Surface<'_>, path: Option<Path>, width: f32, dashes: &[f32]) {
    stroke_in(surface, path, width, dashes, luma::Color::black().into());
}

fn stroke_in(
    surface: &mut Surface<'_>,
    path: Option<Path>,
    width: f32,
    dashes: &[f32],
    paint: Paint,
) {
    let Some(path) = path else { return };
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke {
        paint,
        width,
        line_cap: LineCap::Butt,
        line_join: LineJoin::Round,
        dash: (!dashes.is_empty()).then(|| StrokeDash {
            array: dashes.to_vec(),
            offset: 0.0,
        }),
        ..Stroke::default()
    }));
    surface.draw_path(&path);
}

fn fill(surface: &mut Surface<'_>, path: Option<Path>) {
    let Some(path) = path else { return };
    surface.set_stroke(None);
    surface.set_fill(Some(black()));
    surface.draw_path(&path);
}

fn polyline(place: &Place, runs: &[Vec<Point>], closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for run in runs {
        for (i, &point) in run.iter().enumerate() {
            let (x, y) = place.at(point);
            if i == 0 {
                builder.move_to(x, y)
            } else {
                builder.line_to(x, y)
            }
        }
        if closed {
            builder.close();
        }
    }
    builder.finish()
}

/// A circle of four curves; off by less than 3 parts in 10 000 of its radius.
fn round(place: &Place, centre: Point, radius: f64) -> Option<Path> {
    let ((x, y), r) = (place.at(centre), place.length(radius));
    let k = r * 0.552_284_8;
    let mut builder = PathBuilder::new();
    builder.move_to(x + r, y);
    builder.cubic_to(x + r, y + k, x + k, y + r, x, y + r);
    builder.cubic_to(x - k, y + r, x - r, y + k, x - r, y);
    builder.cubic_to(x - r, y - k, x - k, y - r, x, y - r);
    builder.cubic_to(x + k, y - r, x + r, y - k, x + r, y);
    builder.close();
    builder.finish()
}
