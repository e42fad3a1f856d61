//! The cover: what the plan is, in a customer's words, what it rests on, and where each sheet is.

use stillground::figure::{CubicMetre, Kilogram, Metre, Millimetre};
use stillground::notes::{Question, Verdict};
use stillground::verdict::Says;

use crate::drawing::by_name;
use crate::lettering::{self, Face};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::{BODY, Flow, HEADING, TITLE};
use crate::views::pdf::frame::{capital, issue};
use crate::views::pdf::table::{Cell, table};
use crate::views::verdict;
use crate::views::words::sentence;

/// Which sheets there are, and on which page each begins.
#[derive(Debug)]
pub struct Index {
    sheets: Vec<(String, usize)>,
    /// How many stand at the left.
    left: usize,
    /// What stands at the left, and what at the right.
    heads: [&'static str; 2],
}

impl Index {
    /// One list, in two columns.
    #[must_use]
    pub fn one(sheets: Vec<(String, usize)>) -> Self {
        Self {
            left: sheets.len().div_ceil(2),
            sheets,
            heads: ["Sheet", "Sheet"],
        }
    }

    /// So many sheets to carry to the site, and the rest to read at a table.
    #[must_use]
    pub fn two(sheets: Vec<(String, usize)>, left: usize) -> Self {
        Self {
            sheets,
            left,
            heads: ["To carry to the site", "To read at a table"],
        }
    }
}

/// The cover; the index counts so many pages of the cover beyond its first, and the picture has so much height at most.
pub fn cover(flow: &mut Flow, sheet: &Sheet<'_>, index: &Index, more: usize, picture_mm: f64) {
    flow.blank("Cover", true);
    let title = &sheet.brief.title;
    let size = if title.chars().count() > 60 {
        TITLE
    } else {
        TITLE * 1.8
    };
    flow.y += 6.0;
    flow.styled(Face::TextBold, size, title);
    flow.styled(
        Face::TextItalic,
        HEADING,
        if super::stands(sheet) {
            "A telescope pier that stands, as it was measured"
        } else {
            "Plan of a permanent telescope pier"
        },
    );
    flow.paragraph(&format!("{}.", capital(&issue(sheet))));
    replaced(flow, sheet);
    if let Some(picture) =
        by_name("cut-away", sheet.brief, sheet.design).filter(|_| picture_mm > 0.0)
    {
        flow.drawing_within(picture, picture_mm, "");
    }
    flow.heading("Verdict");
    verdicts(flow, sheet);
    flow.heading("Summary");
    summary(sheet).iter().for_each(|text| flow.paragraph(text));
    contents(flow, index, more);
    flow.small(
        "This plan is worked out from what was said and assumed about the site. It is no substitute for a ground engineer, for local \
         codes, or for the licensed trades where those are asked for.",
    );
}

/// The index, in two columns.
fn contents(flow: &mut Flow, index: &Index, more: usize) {
    flow.heading("Sheets");
    let (site, table_top) = index.sheets.split_at(index.left.min(index.sheets.len()));
    let cells = |sheet: Option<&(String, usize)>| {
        sheet.map_or_else(
            || [Cell::from(""), "".into()],
            |(name, page)| [name.clone().into(), (page + more).to_string().into()],
        )
    };
    let rows: Vec<Vec<Cell>> = (0..site.len().max(table_top.len()))
        .map(|i| {
            cells(site.get(i))
                .into_iter()
                .chain(cells(table_top.get(i)))
                .collect()
        })
        .collect();
    table(
        flow,
        &[
            (index.heads[0], 2.4),
            ("Page", 0.5),
            (index.heads[1], 2.9),
            ("Page", 0.5),
        ],
        &rows,
    );
}

/// Says when characters could not be printed.
fn replaced(flow: &mut Flow, sheet: &Sheet<'_>) {
    let lacking = |text: &str| lettering::set(Face::Text, text).replaced;
    let title = lacking(&sheet.brief.title);
    let stands = sheet
        .brief
        .floor
        .stands
        .value
        .iter()
        .enumerate()
        .map(|(i, stand)| ((i + 1).to_string(), lacking(&stand.name)));
    let (numbers, counts): (Vec<String>, Vec<usize>) =
        stands.filter(|(_, count)| *count > 0).unzip();
    let count = title + counts.iter().sum::<usize>();
    let places = match (title > 0, numbers.as_slice()) {
        (_, []) => "in the title".to_owned(),
        (true, some) => format!(
            "in the title and in the names of places (no. {})",
            some.join(", ")
        ),
        (false, some) => format!("in the names of places (no. {})", some.join(", ")),
    };
    if count > 0 {
        flow.paragraph(&format!(
            "{count} {} not in the typefaces of these sheets, which have Latin, Greek and Cyrillic letters, and {} as {} \
             {}. Read the whole of it on the plan's page{}.",
            if count == 1 { "character is" } else { "characters are" },
            if count == 1 { "stands" } else { "stand" },
            lettering::REPLACEMENT,
            places,
            if sheet.view_link.is_some() { ", which the code “Open the plan” below opens" } else { ", or ask whoever made the plan" }
        ));
    }
}

fn summary(sheet: &Sheet<'_>) -> Vec<String> {
    let (units, design) = (sheet.brief.units, sheet.design);
    let (block, pier, pit) = (&design.block, &design.pier, &design.excavation);
    let m = |length| units.say(length, Metre);
    let ground = if super::stands(sheet) {
        format!("In the ground, {} deep, stands", m(block.depth))
    } else {
        format!(
            "A pit of {} by {} is dug {} deep. In it stands",
            m(pit.length),
            m(pit.width),
            m(pit.depth)
        )
    };
    let mut lines = vec![format!(
        "{ground} a block of concrete {} long and {} wide, of {}; it weighs {}.",
        m(block.length),
        m(block.width),
        units.say(block.volume, CubicMetre),
        units.say(block.mass, Kilogram)
    )];
    let studs = match design.anchors.studs.len() {
        0 => "it needs no studs of this plan".to_owned(),
        count => format!(
            "{count} studs {} hold it",
            sheet.brief.anchors.size.value.said()
        ),
    };
    lines.push(format!(
        "On the block stands a steel column of {} outside diameter, {} high with its plates; {studs}.",
        units.say( pier.outside_diameter, Millimetre),
        m(pier.height)
    ));
    lines.push(stillness(sheet));
    lines
}

fn stillness(sheet: &Sheet<'_>) -> String {
    let (units, motion) = (sheet.brief.units, &sheet.design.motion);
    let asked = verdict::asked(motion, units);
    match verdict::worst_stand(motion, units) {
        Some((name, costs)) => {
            format!("The star should {asked}. A person at “{name}” moves it by {costs}.")
        }
        None => format!(
            "The star should {asked}. How far a person beside the pier moves it is not known for this ground."
        ),
    }
}

/// The three questions, each with its answer and one reason, and what has to be changed before anyone digs.
fn verdicts(flow: &mut Flow, sheet: &Sheet<'_>) {
    // Of a pier that stands nobody asks whether to build it.
    let stands = super::stands(sheet);
    let answers = verdict::answers(sheet.design, sheet.brief.units);
    for answer in answers.into_iter().skip(usize::from(stands)) {
        let says = sentence(&answer.says);
        flow.styled(Face::TextBold, BODY, &format!("{} {says}", answer.question));
        if !answer.because.is_empty() {
            flow.paragraph(&answer.because);
        }
    }
    if sheet.design.verdict.build.says == Says::No {
        let checks = sheet.design.checks.iter();
        let fails = checks
            .filter(|check| check.question == Question::Build && check.verdict == Verdict::Fails);
        flow.heading(if stands {
            "What a new pier of these sizes would not pass"
        } else {
            "Change before anyone digs"
        });
        for (title, note) in super::by_note(fails) {
            flow.styled(Face::TextBold, BODY, &format!("{title} {note}"));
        }
    }
}
