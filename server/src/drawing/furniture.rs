//! What every drawing has: title strip with scale, unit of its dimensions and scale bar; and north on plans.

use stillground::design::ENGINE_VERSION;
use stillground::figure::{Unit, Units, inches, significant};
use stillground::units::customary::{FOOT_M, INCH_MM};

use crate::drawing::dimension::arrowhead;
use crate::drawing::pen::{HEADING, Pen, SIZE, SMALL};
use crate::drawing::scale::View;
use crate::drawing::{Anchor, Form, Label, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, width, wrap};

/// The figure of a dimension: millimetres without their unit, which stands in the title strip; or feet and inches as a tape
/// has them.
#[must_use]
pub fn dimension_text(units: Units, length_mm: f64) -> String {
    match units {
        Units::Metric => significant(length_mm, Unit::Millimetre.digits()),
        Units::Imperial => inches::dimension(length_mm),
    }
}

/// A length in a note of a drawing, with its unit.
#[must_use]
pub fn length_text(units: Units, length_mm: f64) -> String {
    match units {
        Units::Metric => units.say(length_mm, Unit::Millimetre),
        Units::Imperial => dimension_text(units, length_mm),
    }
}

/// Least width of a title strip, mm.
const LEAST_WIDTH: f64 = 96.0;

/// Draws the strip below all that stands on the paper so far.
pub fn title_strip(pen: &mut Pen, title: &str, scale: Option<u32>, units: Units) {
    let bounds = pen.bounds();
    let (left, top) = (bounds.left, bounds.bottom + 5.0);
    if pen.form() == Form::Glance {
        // The page has the title.
        if scale.is_some() {
            small(pen, at(left, top), Anchor::Start, in_units(units));
        }
        return;
    }
    let on_a_phone = pen.form().is_phone();
    let is_smaller = matches!(pen.form(), Form::Smaller(_));
    let least = if on_a_phone { PHONE_ROOM } else { LEAST_WIDTH };
    let right = f64::max(bounds.right, left + least);
    pen.line(Line::Thick, &[at(left, top), at(right, top)]);
    if let Some(scale) = scale.filter(|_| is_smaller) {
        // It will be reduced: of the two lines neither is small, and the bar alone says how large it is.
        let lines = [title, in_units(units).as_str()].map(str::to_owned);
        pen.paragraph(at(left, top + 4.8), SIZE, &lines);
        scale_bar(pen, at(right, top + 9.4), scale, units);
        return;
    }
    let lines = wrap(Face::FiguresBold, title, HEADING, right - left);
    let mut y = top + 5.2;
    for line in lines {
        pen.label(Label {
            at: at(left, y),
            size: HEADING,
            anchor: Anchor::Start,
            upright: false,
            bold: true,
            text: line,
        });
        y += 5.2;
    }
    y += 0.4;
    if on_a_phone {
        // Nobody measures on a screen, and its page says whose work it is.
        if scale.is_some() {
            small(pen, at(left, y), Anchor::Start, in_units(units));
        }
        return;
    }
    match scale {
        Some(scale) => {
            small(
                pen,
                at(left, y),
                Anchor::Start,
                format!("Scale 1\u{2009}:\u{2009}{scale}"),
            );
            small(pen, at(left, y + 4.2), Anchor::Start, in_units(units));
            scale_bar(pen, at(right, y), scale, units);
        }
        None => small(
            pen,
            at(left, y),
            Anchor::Start,
            "Diagram, not to scale".to_owned(),
        ),
    }
    small(
        pen,
        at(right, y + 4.2 + if scale.is_some() { 4.2 } else { -4.2 }),
        Anchor::End,
        format!("Stillground {ENGINE_VERSION}"),
    );
}

fn in_units(units: Units) -> String {
    let unit = match units {
        Units::Metric => "millimetres",
        Units::Imperial => "feet and inches",
    };
    format!("Dimensions in {unit}")
}

fn small(pen: &mut Pen, at: Point, anchor: Anchor, text: String) {
    pen.label(Label {
        at,
        size: if matches!(pen.form(), Form::Smaller(_)) {
            SIZE
        } else {
            SMALL
        },
        anchor,
        upright: false,
        bold: false,
        text,
    });
}

/// A bar of five parts that ends at the right, its length a round figure.
fn scale_bar(pen: &mut Pen, right: Point, scale: u32, units: Units) {
    let (length_m, text) = bar_length(scale, units);
    let length = length_m * 1000.0 / f64::from(scale);
    let margin = width(Face::Figures, &text, SMALL) / 2.0;
    let left = right.x - margin - length;
    let (top, bottom) = (right.y - 2.2, right.y - 0.8);
    for part in 0..5 {
        let (a, b) = (
            left + length * f64::from(part) / 5.0,
            left + length * f64::from(part + 1) / 5.0,
        );
        if part % 2 == 0 {
            pen.solid(&[at(a, top), at(b, top), at(b, bottom), at(a, bottom)]);
        }
    }
    pen.rectangle(Line::Thin, at(left, top), at(left + length, bottom));
    let below = right.y
        + if matches!(pen.form(), Form::Smaller(_)) {
            3.2
        } else {
            2.6
        };
    small(pen, at(left, below), Anchor::Middle, "0".to_owned());
    small(pen, at(left + length, below), Anchor::Middle, text);
}

/// Length of the bar in metres and its name: the longest round one that stays below 45 mm on paper.
fn bar_length(scale: u32, units: Units) -> (f64, String) {
    let (unit_m, symbol, below, below_symbol, parts) = match units {
        Units::Metric => (1.0, "m", 0.001, "mm", 1000.0),
        Units::Imperial => (FOOT_M, "ft", INCH_MM / 1000.0, "in", 12.0),
    };
    let most = 0.045 * f64::from(scale);
    let mut best = (below, format!("1\u{a0}{below_symbol}"));
    for power in 0..6 {
        for digit in [1.0, 2.0, 5.0] {
            let count = digit * 10f64.powi(power);
            if count < parts && count * below <= most {
                best = (count * below, format!("{count}\u{a0}{below_symbol}"));
            }
        }
    }
    for power in 0..6 {
        for digit in [1.0, 2.0, 5.0] {
            let count = digit * 10f64.powi(power);
            if count * unit_m <= most {
                best = (count * unit_m, format!("{count}\u{a0}{symbol}"));
            }
        }
    }
    best
}

/// An arrow to the north with its letter, its foot at a point.
pub fn north(pen: &mut Pen, foot: Point) {
    let tip = at(foot.x, foot.y - 12.0);
    pen.line(Line::Thin, &[foot, tip]);
    arrowhead(pen, tip, 0.0, 1.0);
    pen.line(
        Line::Thin,
        &[
            at(foot.x - 2.0, foot.y - 4.0),
            at(foot.x + 2.0, foot.y - 4.0),
        ],
    );
    pen.text(at(foot.x, tip.y - 1.2), Anchor::Middle, "N");
}

/// Axes through a point, so far each way.
pub fn axes(pen: &mut Pen, centre: Point, half_width: f64, half_height: f64) {
    pen.line(
        Line::Chain,
        &[
            at(centre.x - half_width, centre.y),
            at(centre.x + half_width, centre.y),
        ],
    );
    pen.line(
        Line::Chain,
        &[
            at(centre.x, centre.y - half_height),
            at(centre.x, centre.y + half_height),
        ],
    );
}

/// The view's origin so that what reaches from `left` and `top` begins at the paper's corner.
#[must_use]
pub fn view(scale: u32, left_m: f64, top_m: f64) -> View {
    let mut view = View {
        scale,
        origin: at(0.0, 0.0),
    };
    view.origin = at(-view.mm(left_m), view.mm(top_m));
    view
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_a_round_length_and_fits() {
        for scale in crate::drawing::scale::REDUCTIONS {
            for units in [Units::Metric, Units::Imperial] {
                let (length, _) = bar_length(scale, units);
                let paper = length * 1000.0 / f64::from(scale);
                assert!(
                    (15.0..=45.0).contains(&paper) || scale < 5,
                    "1 : {scale} {units:?}: {paper} mm"
                );
            }
        }
        assert_eq!(
            bar_length(20, Units::Metric),
            (0.5, "500\u{a0}mm".to_owned())
        );
    }
}
