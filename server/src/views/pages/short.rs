//! The plan in short: what to do, how still it will be, what people may do, four figures, and what comes next.

use stillground::figure::{Count, CubicMetre, Kilogram, Metre, Units};
use stillground::notes::{Question, Verdict};
use stillground::options::Worth;
use stillground::site_plan::Commissioning;
use stillground::site_plan::block::Mix;
use stillground::site_plan::commissioning::State;
use stillground::units::{day, millimetre};
use stillground::verdict::Says;

use super::drawn::DrawingView;
use super::field;
use super::ways::WorthView;
use crate::drawing;
use crate::forms::chapter::Chapter;
use crate::forms::questions;
use crate::planned::Planned;
use crate::views::{engineer, money, verdict, words};

/// A day of digging; common practice.
const DAY_OF_DIGGING_H: f64 = 8.0;

/// The plan in short.
pub struct Short {
    /// What will stand there, in a line.
    pub name: String,
    /// Whether the pier stands already: nothing of it is dug, ordered or built.
    pub stands: bool,
    /// The three questions and their answers; of a pier that stands nobody asks whether to build it.
    pub answers: Vec<verdict::Answer>,
    /// The picture.
    pub picture: Option<DrawingView>,
    /// The step that follows.
    pub next: Next,
    /// The one answer that is worth finding out first.
    pub worth: Option<WorthView>,
    /// What is dug, ordered and set up, and when it carries its load; of a pier that stands, what it is.
    pub four: Vec<Headline>,
    /// What lies one step deeper.
    pub chapters: Vec<ChapterLine>,
}

/// The step that follows.
pub struct Next {
    /// Where it is done.
    pub href: String,
    /// What is done.
    pub title: String,
}

/// A figure that a builder asks for first.
pub struct Headline {
    /// What it is.
    pub label: &'static str,
    /// The figure.
    pub says: String,
    /// What goes with it.
    pub more: String,
    /// Where it is explained, below the plan's address.
    pub leads: &'static str,
}

/// A chapter in the list.
pub struct ChapterLine {
    /// Its name in an address.
    pub slug: &'static str,
    /// Its name.
    pub title: &'static str,
    /// Its state in a few words.
    pub state: String,
    /// Names that lead here since the plan was one page.
    pub ids: &'static [&'static str],
}

/// Who reads, and what has been done.
#[derive(Debug, Clone, Copy)]
pub struct Reader<'a> {
    /// Address below which the plan's pages stand.
    pub root: &'a str,
    /// Whether the reader may change the plan.
    pub edit: bool,
    /// Entries in the record of the work.
    pub entered: usize,
    /// The answer taken on trust that moves the verdict or the star most.
    pub worth: Option<&'a Worth>,
}

impl Short {
    /// The plan in short for whoever reads it.
    #[must_use]
    pub fn of(planned: &Planned, reader: Reader<'_>) -> Self {
        let (design, units) = (&planned.design, planned.brief.units);
        let stands = planned.sized.state == Some(State::Standing);
        let answers = verdict::answers(design, units).map(|answer| verdict::Answer {
            says: words::sentence(&answer.says),
            ..answer
        });
        Self {
            name: name(planned, units),
            stands,
            answers: answers.into_iter().skip(usize::from(stands)).collect(),
            picture: DrawingView::of("cut-away", planned),
            next: if stands {
                Next {
                    href: format!("{}/commissioning", reader.root),
                    title: "What makes it tremble, and what would help".to_owned(),
                }
            } else {
                next(planned, reader)
            },
            worth: reader
                .worth
                .filter(|_| !stands)
                .map(|worth| WorthView::of(worth, reader.root, units)),
            four: if stands {
                vec![block(planned, units), steel(planned, units)]
            } else {
                vec![
                    dig(planned, units),
                    order(planned, units),
                    steel(planned, units),
                    carries(planned),
                ]
            },
            chapters: chapters(planned, reader.entered)
                .into_iter()
                .map(|chapter| ChapterLine {
                    slug: chapter.slug(),
                    title: chapter.title(),
                    state: state(chapter, planned, reader.entered),
                    ids: chapter.once_named(),
                })
                .collect(),
        }
    }
}

/// The chapters that a plan has.
#[must_use]
pub fn chapters(planned: &Planned, entered: usize) -> Vec<Chapter> {
    let design = &planned.design;
    let has = |chapter: &Chapter| match chapter {
        Chapter::Order => !design.materials.is_empty(),
        Chapter::Days => !design.schedule.is_empty(),
        Chapter::Engineer => engineer::has_checking(&planned.brief, design),
        Chapter::Recorded => entered > 0,
        Chapter::Proof => planned.sized.commissioning.is_measured(),
        _ => true,
    };
    Chapter::ALL.into_iter().filter(has).collect()
}

fn name(planned: &Planned, units: Units) -> String {
    let block = &planned.design.block;
    let say = |length| units.say(length, Metre);
    let studs = &planned.brief.anchors.count.value;
    format!(
        "A block {} by {} and {} deep, with a tube on {} studs",
        say(block.length),
        say(block.width),
        say(block.depth),
        units.say(*studs, Count),
    )
}

/// What has to be looked at before anything is ordered; else the order; else the work that was begun.
fn next(planned: &Planned, reader: Reader<'_>) -> Next {
    let Reader {
        root,
        edit,
        entered,
        ..
    } = reader;
    let found = &planned.design.verdict.build;
    if found.says == Says::Yes {
        return if entered > 0 {
            Next {
                href: format!("{root}/record"),
                title: "Go on with the work".to_owned(),
            }
        } else {
            Next {
                href: format!("{root}/plan/{}", Chapter::Order.slug()),
                title: "Order, hire and confirm".to_owned(),
            }
        };
    }
    let first = found
        .because
        .iter()
        .find_map(|id| planned.design.checks.iter().find(|check| check.id == *id));
    let question = first
        .filter(|_| edit)
        .and_then(|check| check.fields.iter().find_map(|path| questions::about(path)));
    match (question, found.says) {
        (Some((step, question)), says) => Next {
            href: format!("{root}/{}#{}", step.slug(), field::id(&question.path)),
            title: format!(
                "{}: {}",
                match says {
                    Says::No => "Change",
                    _ if question.words.label.ends_with('?') => "Answer",
                    _ => "Find out",
                },
                question.words.label
            ),
        },
        (None, _) => Next {
            href: format!("{root}/plan/{}", Chapter::Checks.slug()),
            title: "Look at what stands open".to_owned(),
        },
    }
}

fn block(planned: &Planned, units: Units) -> Headline {
    let block = &planned.design.block;
    Headline {
        label: "Block",
        says: units.say(block.volume, CubicMetre),
        more: units.say(block.mass, Kilogram),
        leads: "footing",
    }
}

fn dig(planned: &Planned, units: Units) -> Headline {
    let pit = &planned.design.excavation;
    Headline {
        label: "Dig",
        says: units.say(pit.volume, CubicMetre),
        more: hours(pit.digging_h),
        leads: "excavation",
    }
}

fn order(planned: &Planned, units: Units) -> Headline {
    let (brief, order) = (&planned.brief.block, &planned.design.block.concrete);
    let class = brief.concrete.value.said();
    let bags = |count: Option<u32>| units.say(f64::from(count.unwrap_or_default()), Count);
    let more = match brief.mix.value {
        Mix::Ready => format!("{class}, by lorry"),
        Mix::Bagged => format!("{class}, {} bags", bags(order.bags)),
        Mix::Site => format!("{class}, {} bags of cement", bags(order.cement_bags)),
    };
    Headline {
        label: "Order",
        says: units.say(order.volume, CubicMetre),
        more,
        leads: "plan/order",
    }
}

fn steel(planned: &Planned, units: Units) -> Headline {
    let (pier, anchors) = (&planned.design.pier, &planned.brief.anchors);
    let mm = |length| units.to_measure(millimetre::get(length));
    Headline {
        label: "Steel and studs",
        says: format!("{} × {}", mm(pier.outside_diameter), mm(pier.wall)),
        more: format!(
            "tube {} tall, {} studs {}",
            units.say(pier.height, Metre),
            units.say(anchors.count.value, Count),
            anchors.size.value.said(),
        ),
        leads: "pier",
    }
}

/// Whole days, rounded up: a builder counts mornings.
fn days(count: f64) -> String {
    match count.ceil() {
        1.0 => "1 day".to_owned(),
        count => format!("{count} days"),
    }
}

/// Hours of digging to the next half, and by the day where they fill one.
fn hours(count: f64) -> String {
    match count {
        count if count <= 1.0 => "an hour or less".to_owned(),
        count if count <= DAY_OF_DIGGING_H => format!("about {} hours", count.ceil()),
        count => format!("about {} of digging", days(count / DAY_OF_DIGGING_H)),
    }
}

fn carries(planned: &Planned) -> Headline {
    let block = &planned.design.block;
    Headline {
        label: "Carries the telescope",
        says: format!("in {}", days(day::get(block.load_after))),
        more: format!("drilling after {}", days(day::get(block.drill_after))),
        leads: "plan/days",
    }
}

fn state(chapter: Chapter, planned: &Planned, entered: usize) -> String {
    let design = &planned.design;
    match chapter {
        Chapter::Drawings => {
            let drawn = drawing::NAMES.iter();
            let count = drawn
                .filter(|name| Chapter::with_drawing(name) != Chapter::Proof)
                .filter(|name| planned.drawing(name).is_some())
                .count();
            format!("{count} drawings, template")
        }
        Chapter::Order => {
            let lines = format!("{} lines", design.materials.len());
            if design.costs.is_empty() {
                lines
            } else {
                format!(
                    "{lines}, {}",
                    money::amount(&design.costs, design.costs.total)
                )
            }
        }
        Chapter::Days => {
            let (waits, work): (Vec<_>, Vec<_>) =
                design.schedule.iter().partition(|task| task.wait);
            format!("{} tasks, {} waits", work.len(), waits.len())
        }
        Chapter::Stillness => "what moves the star".to_owned(),
        Chapter::Studs => match planned.brief.anchors.max_torque {
            None => "torque missing".to_owned(),
            Some(_) => "setting and tightening".to_owned(),
        },
        Chapter::Checks => checks(planned),
        Chapter::Taken => match design.assumptions.len() {
            0 => "nothing".to_owned(),
            count => format!("{count} on trust"),
        },
        Chapter::Calculations => format!("{} formulas", design.workings.len()),
        Chapter::Engineer => "both codes".to_owned(),
        Chapter::Recorded => format!("{entered} entries"),
        Chapter::Proof => measured(&planned.sized.commissioning),
    }
}

fn measured(said: &Commissioning) -> String {
    match said.knocks.len() + said.leans.len() + said.pulls.len() {
        1 => "1 measurement".to_owned(),
        count => format!("{count} measurements"),
    }
}

fn checks(planned: &Planned) -> String {
    let count = |verdicts: &[Verdict]| {
        let checks = planned.design.checks.iter();
        checks
            .filter(|check| check.question == Question::Build && verdicts.contains(&check.verdict))
            .count()
    };
    let all = [
        (count(&[Verdict::Fails]), "no"),
        (count(&[Verdict::Unknown]), "ask"),
        (count(&[Verdict::Holds, Verdict::Close]), "yes"),
    ];
    all.into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| format!("{count} {word}"))
        .collect::<Vec<_>>()
        .join(", ")
}
