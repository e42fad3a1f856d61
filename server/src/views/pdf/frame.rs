//! What stands on every sheet: title, revision, date, engine, page of pages, and the code of the view link.

use stillground::design::ENGINE_VERSION;
use stillground::figure::Units;

use crate::drawing::at;
use crate::lettering::{self, Face};
use crate::views::pdf::Sheet;
use crate::views::pdf::code::code;
use crate::views::pdf::flow::{Flow, LEFT, RIGHT, SMALL};
use crate::views::pdf::page::{Mark, Page, Piece, Role};

/// Side of the code, mm.
const CODE: f64 = 21.0;

/// Title and what else a reader of the document's properties sees.
#[derive(Debug, Clone)]
pub struct Heading {
    /// Title.
    pub title: String,
    /// Description.
    pub description: String,
}

/// Title of the document.
#[must_use]
pub fn heading(sheet: &Sheet<'_>) -> Heading {
    Heading {
        title: sheet.brief.title.clone(),
        description: format!("Plan of a permanent telescope pier, {}", issue(sheet)),
    }
}

/// Revision, date and engine in words.
#[must_use]
pub fn issue(sheet: &Sheet<'_>) -> String {
    let revision = sheet.revision.map_or_else(
        || "not saved".to_owned(),
        |number| format!("revision {number}"),
    );
    let date = sheet
        .date
        .map_or_else(String::new, |date| format!(", {date}"));
    format!("{revision}{date}, Stillground {ENGINE_VERSION}")
}

/// The pages with their frames.
#[must_use]
pub fn framed(sheet: &Sheet<'_>, flow: Flow) -> Vec<Page> {
    let mut pages = flow.pages;
    let count = pages.len();
    for (i, page) in pages.iter_mut().enumerate() {
        let (width, height) = (page.width, page.height);
        let mut marks = head(sheet, &page.sheet, width);
        marks.extend(foot(sheet, i + 1, count, width, height));
        page.pieces.push(Piece {
            role: Role::Ornament,
            marks,
        });
    }
    pages
}

fn head(sheet: &Sheet<'_>, name: &str, width: f64) -> Vec<Mark> {
    let (y, right) = (14.0, width - RIGHT);
    let house = sheet
        .letterhead
        .and_then(|head| head.name.as_deref())
        .map(|house| shortened(house, (right - LEFT) / 2.0));
    let name = &house.map_or_else(|| name.to_owned(), |house| format!("{house} · {name}"));
    let name_width = lettering::width(Face::Figures, name, SMALL);
    let title = shortened(&sheet.brief.title, right - LEFT - name_width - 6.0);
    vec![
        Mark::Text {
            at: at(LEFT, y),
            size: SMALL,
            face: Face::FiguresBold,
            text: title,
        },
        Mark::Text {
            at: at(right - name_width, y),
            size: SMALL,
            face: Face::Figures,
            text: name.to_owned(),
        },
        match sheet.letterhead.and_then(|head| head.accent) {
            Some(colour) => Mark::Band {
                from: at(LEFT, y + 2.2),
                to: at(right, y + 2.2),
                weight: 0.7,
                colour,
            },
            None => Mark::Rule {
                from: at(LEFT, y + 2.0),
                to: at(right, y + 2.0),
                weight: 0.25,
            },
        },
    ]
}

/// As much of a title as one line takes; the cover has the whole of it.
fn shortened(title: &str, room: f64) -> String {
    let lines = lettering::wrap(Face::FiguresBold, title, SMALL, room - 4.0);
    match lines.as_slice() {
        [] => String::new(),
        [only] => only.clone(),
        [first, ..] => format!("{first}\u{a0}…"),
    }
}

fn foot(sheet: &Sheet<'_>, number: usize, count: usize, width: f64, height: f64) -> Vec<Mark> {
    let (top, right) = (height - 31.0, width - RIGHT);
    let (mut codes, mut text_right) = (Vec::new(), right);
    for (link, says) in [
        (sheet.view_link, "Open the plan"),
        (sheet.check_link, "Still the latest?"),
    ] {
        if let Some(drawn) =
            link.and_then(|link| code(link, at(text_right - CODE, top + 0.5), CODE))
        {
            codes.push(drawn);
            codes.push(below(says, text_right - CODE / 2.0, top + CODE + 1.5));
            text_right -= CODE + 4.0;
        }
    }
    let pages = format!("Page {number} of {count}");
    let pages_width = lettering::width(Face::FiguresBold, &pages, SMALL);
    let mut marks = vec![
        Mark::Rule {
            from: at(LEFT, top),
            to: at(right, top),
            weight: 0.25,
        },
        Mark::Text {
            at: at(LEFT, top + 5.0),
            size: SMALL,
            face: Face::Figures,
            text: capital(&issue(sheet)),
        },
        Mark::Text {
            at: at(text_right - pages_width, top + 5.0),
            size: SMALL,
            face: Face::FiguresBold,
            text: pages,
        },
    ];
    let words = match (sheet.view_link, sheet.check_link) {
        (_, Some(_)) => CHECKED,
        (Some(_), None) => LINKED,
        (None, None) => UNLINKED,
    };
    for (i, text) in lettering::wrap(Face::Text, words, SMALL, text_right - LEFT)
        .into_iter()
        .enumerate()
    {
        marks.push(Mark::Text {
            at: at(LEFT, top + 10.0 + i as f64 * 4.0),
            size: SMALL,
            face: Face::Text,
            text,
        });
    }
    marks.extend(codes);
    marks.extend(bar(sheet.brief.units, top + 22.5));
    marks
}

/// A bar of fifty millimetres or of two inches: whoever measures it knows whether the sheet was printed at its size.
fn bar(units: Units, y: f64) -> Vec<Mark> {
    let (length, steps, long, says) = match units {
        Units::Metric => (50.0, 5, 5, "50\u{a0}mm (1.97\u{a0}in) at full size"),
        Units::Imperial => (50.8, 8, 4, "2\u{2033} (50.8\u{a0}mm) at full size"),
    };
    let mut marks = vec![Mark::Rule {
        from: at(LEFT, y),
        to: at(LEFT + length, y),
        weight: 0.35,
    }];
    for step in 0..=steps {
        let (x, tall) = (
            LEFT + f64::from(step) * length / f64::from(steps),
            if step % long == 0 { 2.0 } else { 1.2 },
        );
        marks.push(Mark::Rule {
            from: at(x, y - tall),
            to: at(x, y),
            weight: 0.25,
        });
    }
    marks.push(Mark::Text {
        at: at(LEFT + length + 3.0, y),
        size: SMALL,
        face: Face::Figures,
        text: says.to_owned(),
    });
    marks
}

/// A few words under a code, in the middle.
fn below(says: &str, middle: f64, y: f64) -> Mark {
    let size = SMALL * 0.96;
    let width = lettering::width(Face::Text, says, size);
    Mark::Text {
        at: at(middle - width / 2.0, y),
        size,
        face: Face::Text,
        text: says.to_owned(),
    }
}

const CHECKED: &str = "Superseded? The code tells anyone whether this revision is still the latest: look there before you dig, pour or \
                       drill. Local codes and licensed practice come before anything on this sheet.";

const LINKED: &str = "Superseded? The code opens the plan: look there whether this revision is still the latest before you dig, pour or \
                      drill. Local codes and licensed practice come before anything on this sheet.";
const UNLINKED: &str = "Superseded? Ask whoever made the plan whether this is still the latest before you dig, pour or drill. Local codes \
                        and licensed practice come before anything on this sheet.";

/// The text with a capital in front.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}
