//! A step: one topic a page, its questions and the panel.

use askama::Template;
use stillground::figure::{Unit, Units, digits};
use stillground::site_plan::SitePlan;
use stillground::units::metre;

use super::field::{Control, Desk, FieldView};
use super::frame::Frame;
use super::side::Side;
use crate::forms::branch;
use crate::forms::question::{Question, Topic};
use crate::forms::questions;
use crate::forms::reading::Fault;
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use crate::planned::Planned;

/// A step's page.
#[derive(Template)]
#[template(path = "pages/step.html")]
pub struct StepPage {
    /// The frame.
    pub frame: Frame,
    /// The step's title.
    pub title: &'static str,
    /// Its name in an address.
    pub slug: &'static str,
    /// Whether the boxes hold what was sent and is not kept.
    pub typed: bool,
    /// What the step is about.
    pub intro: &'static str,
    /// Where the answers are sent.
    pub action: String,
    /// The step that comes next.
    pub next: Step,
    /// What has to be put right, each with links to its fields.
    pub faults: Vec<FaultView>,
    /// Another step at which the other answer of a contradiction stands.
    pub keep: Option<Step>,
    /// The revision that the answers began from.
    pub base: u32,
    /// Units in which the page is shown.
    pub shown_in: &'static str,
    /// Where the place's climate is looked up, at the step that asks for it.
    pub climate: Option<String>,
    /// What the house knew when this plan began, and still stands in it.
    pub house: Vec<String>,
    /// What was done.
    pub notice: Option<&'static str>,
    /// The question that the list of all answers sent the reader to; the list is where they go back.
    pub change: Option<&'static str>,
    /// The questions.
    pub topics: Vec<TopicView>,
    /// The panel.
    pub panel: Side,
    /// What the floor is drawn from where it can be moved, at its step.
    pub floor: Option<FloorPlan>,
}

/// Sizes from which a script draws the floor, in the reader's unit of length.
#[derive(Debug, Clone)]
pub struct FloorPlan {
    /// The block, west to east.
    pub length: String,
    /// The block, south to north.
    pub width: String,
    /// Half the column's diameter.
    pub pier: String,
    /// The unit.
    pub unit: &'static str,
}

impl FloorPlan {
    /// The floor of a plan.
    #[must_use]
    pub fn of(step: Step, planned: &Planned, units: Units) -> Option<Self> {
        let (block, pier) = (&planned.design.block, &planned.design.pier);
        let say = |metres: f64| digits(units.convert(metres, Unit::Metre).0);
        (step == Step::Floor).then(|| Self {
            length: say(metre::get(block.length)),
            width: say(metre::get(block.width)),
            pier: say(metre::get(pier.outside_diameter) / 2.0),
            unit: units.convert(0.0, Unit::Metre).1,
        })
    }
}

/// Something to put right.
#[derive(Debug, Clone)]
pub struct FaultView {
    /// What is wrong.
    pub said: String,
    /// Links to the fields: address and label.
    pub links: Vec<(String, String)>,
}

/// Questions about one thing.
#[derive(Debug, Clone)]
pub struct TopicView {
    /// Heading.
    pub heading: &'static str,
    /// What is meant.
    pub intro: &'static str,
    /// The common questions.
    pub common: Vec<FieldView>,
    /// The rarer ones.
    pub rare: Vec<FieldView>,
    /// Whether the rarer ones stand open: one of them is wrong.
    pub open: bool,
    /// How many of the rarer ones are answered, in words; empty for none.
    pub answered: String,
    /// Whether all of it is folded, and what of it is said, in words.
    pub folded: Option<String>,
    /// What opens them.
    pub more: &'static str,
}

impl TopicView {
    /// A topic, with the questions that this route needs; one that was answered is always shown.
    #[must_use]
    pub fn of(
        topic: &'static Topic,
        desk: &Desk<'_>,
        plan: &SitePlan,
        change: Option<&str>,
    ) -> Self {
        let fields = |questions: &'static [Question]| -> Vec<FieldView> {
            questions
                .iter()
                .map(|question| (question, desk.field(question)))
                .filter(|(question, field)| is_asked(question, field, desk, plan))
                .map(|(_, field)| field)
                .collect()
        };
        let (common, rare) = (fields(topic.common), fields(topic.rare));
        let open = rare
            .iter()
            .any(|field| is_wrong(field) || change == Some(&field.name));
        let more = if topic.common.is_empty() {
            "Questions that few can answer"
        } else {
            "If you know more"
        };
        Self {
            heading: topic.heading,
            intro: topic.intro,
            answered: match count(&rare) {
                0 => String::new(),
                said => format!("{said} said"),
            },
            folded: None,
            common,
            rare,
            open,
            more,
        }
    }

    /// The topics of a step: those that come first lie open, the others say in a line what of them is known.
    #[must_use]
    pub fn all(step: Step, desk: &Desk<'_>, plan: &SitePlan, change: Option<&str>) -> Vec<Self> {
        let topics = questions::topics(step)
            .iter()
            .map(|topic| Self::of(topic, desk, plan, change))
            .filter(|topic| !topic.common.is_empty() || !topic.rare.is_empty());
        topics
            .enumerate()
            .map(|(place, topic)| Self {
                folded: (place >= open_topics(step) && !topic.has_faults() && !topic.asks(change))
                    .then(|| topic.state()),
                ..topic
            })
            .collect()
    }

    fn fields(&self) -> impl Iterator<Item = &FieldView> {
        self.common.iter().chain(&self.rare)
    }

    fn asks(&self, path: Option<&str>) -> bool {
        path.is_some_and(|path| self.fields().any(|field| field.name == path))
    }

    fn has_faults(&self) -> bool {
        self.fields().any(is_wrong)
    }

    fn state(&self) -> String {
        let asked = self.common.len() + self.rare.len();
        match count(self.fields()) {
            0 => "nothing said: cautious values are assumed".to_owned(),
            said => format!("{said} of {asked} said"),
        }
    }
}

/// Topics of a step that lie open: on the first page the names and units come before the soil.
const fn open_topics(step: Step) -> usize {
    match step {
        Step::Site => 2,
        _ => 1,
    }
}

fn count<'a>(fields: impl IntoIterator<Item = &'a FieldView>) -> usize {
    let said = |field: &&FieldView| !field.text.is_empty() || has_rows(field);
    fields.into_iter().filter(said).count()
}

fn is_wrong(field: &FieldView) -> bool {
    let rows = |rows: &super::field::RowsView| {
        rows.rows
            .iter()
            .any(|row| row.boxes.iter().any(|part| part.error.is_some()))
    };
    field.error.is_some() || matches!(&field.control, Control::Rows(list) if rows(list))
}

/// Whether a question is asked: by what is typed, else by what the plan says.
pub(super) fn is_asked(
    question: &'static Question,
    field: &FieldView,
    desk: &Desk<'_>,
    plan: &SitePlan,
) -> bool {
    let answered = !field.text.is_empty() || field.error.is_some() || has_rows(field);
    let answer = |path: &str| {
        let typed = desk.sheet.text(path).map(str::to_owned);
        let said = || {
            let (step, _) = questions::about(path)?;
            Sheet::of(step, plan).text(path).map(str::to_owned)
        };
        typed.or_else(said).unwrap_or_default()
    };
    answered || branch::asked(&question.path, answer)
}

fn has_rows(field: &FieldView) -> bool {
    matches!(&field.control, Control::Rows(rows) if rows.none || rows.rows.iter().any(|row| row.boxes.iter().any(|part| !part.text.is_empty() || part.error.is_some())))
}

impl FaultView {
    /// A fault, its links going to this page's fields or to those of another step.
    #[must_use]
    pub fn of(fault: &Fault, here: Step, root: &str) -> Self {
        let link = |path: &String| {
            let (step, label) = match questions::about(path) {
                Some((step, question)) => (step, row_label(path, question.words.label)),
                None => (here, path.clone()),
            };
            let page = if step == here {
                String::new()
            } else {
                format!("{root}/{}", step.slug())
            };
            let label = if step == here {
                label
            } else {
                format!("{label} ({})", step.title())
            };
            (format!("{page}#{}", super::field::id(path)), label)
        };
        Self {
            said: fault.said.clone(),
            links: fault.fields.iter().map(link).collect(),
        }
    }
}

/// The label of a row's box: which row, and which of its boxes.
fn row_label(path: &str, label: &str) -> String {
    let Some((_, rest)) = path.split_once('[') else {
        return label.to_owned();
    };
    let Some((row, part)) = rest.split_once(']') else {
        return label.to_owned();
    };
    let row = row.parse::<usize>().map_or(0, |row| row + 1);
    let part = match part {
        ".name" => "name",
        ".x_m" | "[0]" => "east",
        ".y_m" | "[1]" => "north",
        ".mass_kg" => "mass",
        _ => "row",
    };
    format!("{label}, {row}, {part}")
}

/// What each step is about, as one would say it on the site.
#[must_use]
pub const fn intro(step: Step) -> &'static str {
    match step {
        Step::Site => {
            "Describe the site. Leave a question blank if you do not know; it shows the value that will be assumed."
        }
        Step::Excavation => "How big a pit can you dig? The block has to fit inside it.",
        Step::Footing => {
            "The block keeps the pier still. It has to be heavy, wide and held firmly by the soil."
        }
        Step::Pier => "What goes on the block, and what looks through it.",
        Step::Anchors => {
            "The studs join steel to concrete. They are the smallest parts, and the ones that most often go wrong."
        }
        Step::Floor => {
            "The best pier is spoilt by a floor that touches it. Say what people stand on, where they stand and how they walk."
        }
        Step::Plan => "",
    }
}
