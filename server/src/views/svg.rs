//! A drawing as SVG: ink in the reader's colour, sizes in millimetres, the same bytes for the same drawing.
//!
//! Nothing in it is styled inline, so that it stands within a page under a strict content policy: line types are
//! presentation attributes, and each has a class for a page that wants to change them.

use std::fmt::Write;

use crate::drawing::{Anchor, Drawing, Form, Item, Label, Line, Point};

/// Writes a drawing.
#[must_use]
pub fn write(drawing: &Drawing) -> String {
    let mut out = String::with_capacity(64 * drawing.items.len() + 1024);
    let (width, height) = (figure(drawing.width), figure(drawing.height));
    let form = match drawing.form {
        Form::Sheet | Form::Smaller(_) => "",
        Form::Phone | Form::Glance => "-phone",
    };
    let id = format!("drawing-{}{form}", drawing.name);
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" viewBox=\"0 0 {width} {height}\" width=\"{width}mm\" height=\"{height}mm\" \
         role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" fill=\"none\" stroke=\"currentColor\" stroke-linejoin=\"round\" \
         font-family=\"Stillground Figures, sans-serif\"><title id=\"{id}-title\">{}</title><desc id=\"{id}-desc\">{}</desc>",
        escape(&drawing.title),
        escape(&drawing.description)
    );
    let mut items = drawing.items.iter().peekable();
    while let Some(item) = items.next() {
        match item {
            Item::Path { runs, closed, line } => {
                let _ = write!(out, "<path {} d=\"", pen(*line));
                let mut put = |runs: &[Vec<Point>]| {
                    for run in runs {
                        out.push_str(&run_data(run, *closed, drawing.form));
                    }
                };
                put(runs);
                // On a telephone neighbours of the same pen are one path: fewer bytes, and the same lines.
                while let Some(Item::Path { runs, .. }) = items.next_if(|next| {
                    drawing.form.is_phone()
                        && matches!(next, Item::Path { closed: c, line: l, .. } if c == closed && l == line)
                }) {
                    put(runs);
                }
                out.push_str("\"/>");
            }
            Item::Solid { corners } => {
                let _ = write!(
                    out,
                    "<path class=\"ink\" fill=\"currentColor\" stroke=\"none\" d=\"{}\"/>",
                    run_data(corners, true, drawing.form)
                );
            }
            Item::Circle {
                centre,
                radius,
                line,
            } => {
                let _ = write!(
                    out,
                    "<circle {} cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
                    pen(*line),
                    figure(centre.x),
                    figure(centre.y),
                    figure(*radius)
                );
            }
            Item::Dot { centre, radius } => {
                let _ = write!(
                    out,
                    "<path class=\"dots\" stroke-linecap=\"round\" stroke-width=\"{}\" d=\"",
                    figure(2.0 * radius)
                );
                dot(&mut out, *centre);
                while let Some(Item::Dot { centre, .. }) = items.next_if(
                    |next| matches!(next, Item::Dot { radius: other, .. } if other == radius),
                ) {
                    dot(&mut out, *centre);
                }
                out.push_str("\"/>");
            }
            Item::Text(label) => text(&mut out, label),
        }
    }
    out.push_str("</svg>");
    out
}

/// A run of points. Those of a telephone lie on tenths of a millimetre, and each is written as its way from the one before:
/// the lines of a hatch are then the same letters over and over, which pack to little.
fn run_data(run: &[Point], closed: bool, form: Form) -> String {
    let mut data = String::with_capacity(12 * run.len());
    let mut before: Option<&Point> = None;
    for point in run {
        let _ = match before {
            None => write!(data, "M{} {}", figure(point.x), figure(point.y)),
            Some(from) if form.is_phone() => {
                let (x, y) = (figure(point.x - from.x), figure(point.y - from.y));
                match (x.as_str(), y.as_str()) {
                    ("0", _) => write!(data, "v{y}"),
                    (_, "0") => write!(data, "h{x}"),
                    _ => write!(data, "l{x} {y}"),
                }
            }
            Some(_) => write!(data, "L{} {}", figure(point.x), figure(point.y)),
        };
        before = Some(point);
    }
    if closed {
        data.push('Z');
    }
    data
}

fn dot(out: &mut String, centre: Point) {
    let _ = write!(out, "M{} {}h0", figure(centre.x), figure(centre.y));
}

fn pen(line: Line) -> String {
    let mut attributes = format!(
        "class=\"{}\" stroke-width=\"{}\"",
        line.name(),
        figure(line.weight_mm())
    );
    if !line.dashes_mm().is_empty() {
        let dashes: Vec<String> = line
            .dashes_mm()
            .iter()
            .map(|&length| figure(length))
            .collect();
        let _ = write!(attributes, " stroke-dasharray=\"{}\"", dashes.join(" "));
    }
    attributes
}

fn text(out: &mut String, label: &Label) {
    let (x, y) = (figure(label.at.x), figure(label.at.y));
    let _ = write!(
        out,
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\" fill=\"currentColor\" stroke=\"none\"",
        figure(label.size)
    );
    out.push_str(match label.anchor {
        Anchor::Start => "",
        Anchor::Middle => " text-anchor=\"middle\"",
        Anchor::End => " text-anchor=\"end\"",
    });
    if label.bold {
        out.push_str(" font-weight=\"600\"");
    }
    if label.upright {
        let _ = write!(out, " transform=\"rotate(-90 {x} {y})\"");
    }
    let _ = write!(out, ">{}</text>", escape(&label.text));
}

/// A number with at most two decimals, which is a hundredth of a millimetre.
fn figure(value: f64) -> String {
    let rounded = (value * 100.0).round() / 100.0;
    if rounded == 0.0 {
        "0".to_owned()
    } else {
        format!("{rounded}")
    }
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_person_typed_is_escaped() {
        assert_eq!(
            escape("<b onload='x'>&\u{1}"),
            "&lt;b onload=&#39;x&#39;&gt;&amp; "
        );
    }

    #[test]
    fn numbers_are_short() {
        assert_eq!(
            (figure(-0.001), figure(12.3456), figure(3.0)),
            ("0".to_owned(), "12.35".to_owned(), "3".to_owned())
        );
    }
}
