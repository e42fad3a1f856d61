//! The three questions about a plan, each with its answer and one reason, the same on the page and on the cover.

use stillground::design::Design;
use stillground::figure::{Arcsecond, PerCent, Units};
use stillground::notes::Check;
use stillground::stages::motion::{Measure, Motion};
use stillground::text::lower;
use stillground::units::Outcome;
use stillground::verdict::{Says, Within};

use super::words;

/// A question, its answer, and why.
#[derive(Debug, Clone)]
pub struct Answer {
    /// The question.
    pub question: &'static str,
    /// The answer.
    pub says: String,
    /// The reason.
    pub because: String,
    /// Name of the mark that stands before it; none for what is no verdict.
    pub mark: Option<&'static str>,
}

/// Whether to build it, whether it stays still, and what people may do.
#[must_use]
pub fn answers(design: &Design, units: Units) -> [Answer; 3] {
    [build(design), still(design, units), conduct(design, units)]
}

/// What is asked of the star, to follow “should”.
#[must_use]
pub fn asked(motion: &Motion, units: Units) -> String {
    let budget = &motion.budget;
    let wider = || units.say(100.0 * budget.asked_growth_ratio, PerCent);
    match budget.measure {
        Measure::StarWidth => format!("get no more than {} wider over one exposure", wider()),
        Measure::FrameBlur => format!("get no more than {} wider within one frame", wider()),
        Measure::EyeMovement => {
            format!("move no more than {}", units.say(budget.arcsec, Arcsecond))
        }
    }
}

/// The place from which somebody who comes there moves the star most: its name, how far, and how much wider the star gets.
#[must_use]
pub fn worst_stand(motion: &Motion, units: Units) -> Option<(&str, String)> {
    let known = motion
        .stands
        .iter()
        .filter_map(|stand| stand.tilt_arcsec.map(|tilt| (tilt, stand)));
    let (tilt, stand) = known.max_by(|a, b| a.0.total_cmp(&b.0))?;
    let moved = units.say(tilt, Arcsecond);
    let costs = match stand.star_growth_ratio {
        Some(growth) if motion.budget.measure != Measure::EyeMovement => format!(
            "{moved}, which makes the star {} wider",
            units.say(100.0 * growth, PerCent)
        ),
        _ => moved,
    };
    Some((&stand.name, costs))
}

fn build(design: &Design) -> Answer {
    let found = &design.verdict.build;
    let first = found
        .because
        .iter()
        .find_map(|id| design.checks.iter().find(|check| check.id == *id));
    let reason = first.map(named).unwrap_or_default();
    let more = match (found.says, found.because.len()) {
        (_, 0 | 1) => String::new(),
        (Says::Ask, 2) => " One more check asks too.".to_owned(),
        (Says::Ask, many) => format!(" {} more checks ask too.", many - 1),
        (_, 2) => " One more check says so too.".to_owned(),
        (_, many) => format!(" {} more checks say so too.", many - 1),
    };
    let (says, mark, because) = match found.says {
        Says::Yes => (
            "yes",
            "holds",
            format!("Every check holds. Nearest its limit: {reason}"),
        ),
        Says::No => ("no", "fails", format!("{reason}{more}")),
        Says::Ask => (
            "ask",
            "unknown",
            format!(
                "No check fails, but somebody has to look first: {}{more}",
                first.map_or_else(String::new, |check| lower(&check.title))
            ),
        ),
    };
    Answer {
        question: "Build it?",
        says: says.to_owned(),
        because,
        mark: Some(mark),
    }
}

/// A check as its question and its answer.
#[must_use]
pub fn named(check: &Check) -> String {
    format!(
        "{} {}",
        check.title,
        words::sentence(&words::verdict(check))
    )
}

fn still(design: &Design, units: Units) -> Answer {
    let found = &design.verdict.still;
    let (says, mark) = match found.says {
        Some(Within::Within) => ("yes", "holds"),
        Some(Within::Over) => ("no", "fails"),
        None => ("ask", "unknown"),
    };
    let most = found
        .because
        .first()
        .map(|id| match *id {
            "motion.tree" => {
                " Near a tree in clay the ground itself moves with the seasons: no figure is sure."
            }
            "motion.wind" => " Wind moves it most.",
            _ => " Uneven warming moves it most.",
        })
        .unwrap_or_default();
    let limit = units.say(100.0 * found.asked_ratio, PerCent);
    let in_the_way = design
        .in_the_way
        .iter()
        .find(|obstacle| obstacle.would_do.is_some())
        .map(|obstacle| format!(" No pier that fits does better. {}", obstacle.says))
        .filter(|_| found.says == Some(Within::Over))
        .unwrap_or_default();
    let because = found.star_growth_ratio.map_or_else(
        || "How much wider a star becomes is not calculated for this ground.".to_owned(),
        |growth| {
            format!(
                "With nobody near, a star becomes {}; the limit is {limit}.{most}{in_the_way}",
                wider(growth, units)
            )
        },
    );
    Answer {
        question: "Still when left alone?",
        says: says.to_owned(),
        because,
        mark: Some(mark),
    }
}

/// Growth of a star in words: what is expected, and at worst.
fn wider(growth: Outcome<f64>, units: Units) -> String {
    let [expected, worst] = [growth.expected, growth.worst].map(|ratio| per_cent(ratio, units));
    if expected == worst {
        format!("{expected} wider")
    } else {
        format!("{expected} wider, {worst} at worst")
    }
}

/// Growth below which its figure says nothing, as a share.
const LEAST_GROWTH: f64 = 1e-4;

/// A growth of the star's width as a percentage; what does not show is said to be less than the least that does.
#[must_use]
pub fn per_cent(ratio: f64, units: Units) -> String {
    if ratio < LEAST_GROWTH {
        format!("less than {}", units.say(100.0 * LEAST_GROWTH, PerCent))
    } else {
        units.say(100.0 * ratio, PerCent)
    }
}

fn conduct(design: &Design, units: Units) -> Answer {
    let dearest = design
        .motion
        .conduct
        .iter()
        .find_map(|one| Some((one.event, one.star_growth_ratio?)));
    Answer {
        question: "What may people do?",
        says: design.verdict.conduct_rule.clone(),
        because: dearest
            .map(|(event, growth)| {
                format!(
                    "Costs most during an exposure: “{event}” makes the star {}.",
                    wider(growth, units)
                )
            })
            .unwrap_or_default(),
        mark: None,
    }
}
