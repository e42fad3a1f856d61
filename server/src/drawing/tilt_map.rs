//! The floor with its contours of arcseconds: how far the pier leans when a person stands there, and which way.

mod layout;

pub use layout::{Layout, layout};

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Arcsecond;

use crate::drawing::area::{Area, area_of};
use crate::drawing::callout::list_from;
use crate::drawing::contour;
use crate::drawing::dimension::arrowhead;
use crate::drawing::floor::{base, markers};
use crate::drawing::furniture::{north, title_strip, view};
use crate::drawing::pen::{Head, Pen, SIZE, SMALL};
use crate::drawing::scale::View;
use crate::drawing::{Anchor, Drawing, Form, Label, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, wrap};

const TITLE: &str = "Tilt of the pier for a person at each place, arcseconds";
const OF_PIER: &str =
    "Tilt of this pier as it was measured, for a person at each place, arcseconds";

/// Paper for the map with its legend beside it, and below it, mm.
const BESIDE: (f64, f64) = (104.0, 128.0);
const ALONE: (f64, f64) = (162.0, 152.0);
/// Places on a line at which its figure is tried.
const PLACES: usize = 28;
/// Most lines that a figure may cut, its own among them.
const MOST_CUT: usize = 3;
/// Shortest line that bears a figure, mm.
const SHORTEST: f64 = 12.0;

/// The map of the pier as its measurements have it; none where nothing was measured.
#[must_use]
pub fn of_pier(brief: &Brief, design: &Design) -> Option<Layout> {
    let motion = design.fitted.as_ref()?.motion.clone()?;
    let fitted = Design {
        motion,
        ..design.clone()
    };
    let mut layout = layout(brief, &fitted)?;
    layout.title = OF_PIER;
    Some(layout)
}

/// Draws the map of [`of_pier`].
#[must_use]
pub fn draw_of_pier(layout: &Layout, form: Form) -> Drawing {
    Drawing {
        name: "tilt-map-pier",
        ..draw(layout, form)
    }
}

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ALONE, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let area = layout.floor.extent();
    let (wide, high) = (area.right - area.left, area.bottom - area.top);
    // A floor that fills the sheet at a larger scale has its legend below it.
    let (beside, alone) = (form.scale(wide, high, BESIDE), form.scale(wide, high, room));
    let scale = match form {
        Form::Sheet | Form::Smaller(_) => beside.min(alone),
        Form::Phone | Form::Glance => alone,
    };
    let view = view(scale, area.left, area.bottom);
    let mut pen = Pen::new(form);
    base(&mut pen, &layout.floor, &view);
    let bounds = pen.bounds();
    north(&mut pen, at(bounds.right + 5.0, bounds.bottom));
    stands(&mut pen, layout, &view);
    contours(&mut pen, layout, &view);
    let bounds = pen.bounds();
    if form.is_phone() || alone < beside {
        legend(
            &mut pen,
            layout,
            at(bounds.left, bounds.bottom + 8.0),
            match form {
                Form::Sheet | Form::Smaller(_) => bounds.right - bounds.left,
                // The list begins at the balloons, a hair within the frame.
                Form::Phone | Form::Glance => PHONE_ROOM - 1.0,
            },
        );
    } else {
        legend(
            &mut pen,
            layout,
            at(bounds.right + 11.0, bounds.top + 3.0),
            46.0,
        );
    }
    title_strip(&mut pen, layout.title, Some(scale), layout.units);
    pen.finish(Head {
        name: "tilt-map",
        title: layout.title.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

/// The places, each with an arrow the way the pier leans, longer for more.
fn stands(pen: &mut Pen, layout: &Layout, view: &View) {
    let most = layout
        .leans
        .iter()
        .flatten()
        .map(|lean| lean.0)
        .fold(1e-9, f64::max);
    let places: Vec<Point> = layout
        .floor
        .stands
        .iter()
        .map(|stand| view.at(stand.x_m, stand.y_m))
        .collect();
    for (place, lean) in places.iter().zip(&layout.leans) {
        let Some((tilt, bearing_deg)) = lean else {
            continue;
        };
        let length = 5.0 + 6.0 * tilt / most;
        let (sin, cos) = bearing_deg.to_radians().sin_cos();
        let tip = at(place.x + length * sin, place.y - length * cos);
        pen.line(Line::Thick, &[*place, tip]);
        arrowhead(pen, tip, -sin, cos);
    }
    markers(pen, &places);
}

/// A line of one level.
struct Contour {
    run: Vec<Point>,
    text: String,
    is_budget: bool,
    covers: Area,
}

/// The lines, each with its figure where there is room, and broken where a figure stands: its own or a neighbour's.
fn contours(pen: &mut Pen, layout: &Layout, view: &View) {
    let level = |&(level, is_budget): &(f64, bool)| {
        let runs = contour::lines(&layout.xs, &layout.ys, &layout.tilts, level).into_iter();
        let text = layout.units.figure(level, Arcsecond).digits;
        let line = move |run: Vec<[f64; 2]>| {
            let run: Vec<Point> = run.iter().map(|&[x, y]| view.at(x, y)).collect();
            let mut covers = Area::EMPTY;
            run.iter().for_each(|&point| covers.hold(point, 0.1));
            Contour {
                run,
                text: text.clone(),
                is_budget,
                covers,
            }
        };
        runs.map(line).collect::<Vec<_>>()
    };
    let lines: Vec<Contour> = layout.levels.iter().flat_map(level).collect();
    let mut gaps = Vec::new();
    for line in &lines {
        if let Some(label) = figure_on(pen, line, &lines) {
            gaps.push(area_of(&label).with_margin(0.5));
            pen.label(label);
        }
    }
    for Contour {
        run,
        is_budget,
        covers,
        ..
    } in &lines
    {
        let style = if *is_budget { Line::Heavy } else { Line::Thin };
        let whole = vec![run.clone()];
        let pieces = gaps
            .iter()
            .filter(|gap| covers.meets(gap))
            .fold(whole, |pieces, gap| {
                pieces.iter().flat_map(|piece| broken(piece, gap)).collect()
            });
        pieces.iter().for_each(|piece| pen.line(style, piece));
    }
}

/// Lines that an area would cut.
fn cut(lines: &[Contour], area: &Area) -> usize {
    lines
        .iter()
        .filter(|line| {
            line.covers.meets(area)
                && line
                    .run
                    .windows(2)
                    .any(|pair| area.share_of(pair[0], pair[1]).is_some())
        })
        .count()
}

/// A figure on a line, where nothing stands but lines, and few of them; a line shorter than its figure bears none.
fn figure_on(pen: &Pen, line: &Contour, lines: &[Contour]) -> Option<Label> {
    let run = &line.run;
    let length: f64 = run
        .windows(2)
        .map(|pair| (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y))
        .sum();
    if length < SHORTEST {
        return None;
    }
    // Begun at a third of the line, so that figures of neighbouring lines do not stand in a row.
    let places =
        (0..PLACES).map(|step| run[(run.len() / 3 + step * run.len() / PLACES) % run.len()]);
    let label = |place: Point| Label {
        at: at(place.x, place.y + 0.35 * SMALL),
        size: SMALL,
        anchor: Anchor::Middle,
        upright: false,
        bold: line.is_budget,
        text: line.text.clone(),
    };
    let mut best = (MOST_CUT + 1, None);
    for label in places
        .map(label)
        .filter(|label| pen.is_free(&area_of(label).with_margin(0.6)))
    {
        let cut = cut(lines, &area_of(&label));
        if cut < best.0 {
            best = (cut, Some(label));
        }
        // It cuts its own line in any case.
        if cut <= 1 {
            break;
        }
    }
    best.1
}

/// A run without what lies in an area.
fn broken(run: &[Point], gap: &Area) -> Vec<Vec<Point>> {
    let mut pieces = vec![Vec::new()];
    for pair in run.windows(2) {
        let along = |t: f64| {
            at(
                pair[0].x + (pair[1].x - pair[0].x) * t,
                pair[0].y + (pair[1].y - pair[0].y) * t,
            )
        };
        match gap.share_of(pair[0], pair[1]) {
            None => push(&mut pieces, &[pair[0], pair[1]]),
            Some((enter, leave)) => {
                if enter > 0.0 {
                    push(&mut pieces, &[pair[0], along(enter)]);
                }
                pieces.push(Vec::new());
                if leave < 1.0 {
                    push(&mut pieces, &[along(leave), pair[1]]);
                }
            }
        }
    }
    pieces.retain(|piece| piece.len() > 1);
    pieces
}

fn push(pieces: &mut [Vec<Point>], points: &[Point]) {
    if let Some(piece) = pieces.last_mut() {
        points.iter().for_each(|&point| {
            if piece.last() != Some(&point) {
                piece.push(point);
            }
        });
    }
}

/// What the lines mean, and what each stand does.
fn legend(pen: &mut Pen, layout: &Layout, corner: Point, wide: f64) {
    let mut y = corner.y;
    for text in layout.words() {
        y = pen.paragraph(
            at(corner.x, y),
            SIZE,
            &wrap(Face::Figures, &text, SIZE, wide),
        ) + 1.6;
    }
    if layout.levels.iter().any(|(_, is_budget)| *is_budget) {
        pen.line(
            Line::Heavy,
            &[at(corner.x, y - 1.2), at(corner.x + 10.0, y - 1.2)],
        );
        y = pen.paragraph(
            at(corner.x + 13.0, y),
            SIZE,
            &wrap(
                Face::Figures,
                &format!("limit {}", layout.say(layout.budget)),
                SIZE,
                wide - 13.0,
            ),
        ) + 1.6;
    }
    list_from(pen, at(corner.x, y), wide, 1.0, &layout.stand_words());
}
