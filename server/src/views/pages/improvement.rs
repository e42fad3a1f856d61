//! What would help, in words: the answers that change, and what the change does for better and worse.

use stillground::design::Design;
use stillground::figure::{One, PerCent, Unit, Units};
use stillground::site_plan::SitePlan;
use stillground::stages::motion::improvement::{Improvement, NewField, NewValue};
use stillground::text::lower;

use crate::forms::question::Kind;
use crate::forms::questions;
use crate::views::{verdict, words};

/// Share of the growth that is asked below which nobody would see what an improvement is for.
const SEEN_RATIO: f64 = 0.01;

/// Whether what it helps against could be seen on the plan; where the growth is not judged, it is taken to be.
pub fn is_seen(improvement: &Improvement, design: &Design) -> bool {
    let asked_ratio = design.motion.budget.asked_growth_ratio;
    improvement
        .star_growth
        .is_none_or(|grown| grown.before_ratio >= SEEN_RATIO * asked_ratio)
}

/// What it does: the growth of the star that it helps most, before and after, the movement, and what gets worse by it.
#[must_use]
pub fn effect(improvement: &Improvement, units: Units, design: &Design) -> String {
    let say = |value| units.say(value, improvement.unit);
    let wider = |ratio: f64| verdict::per_cent(ratio, units);
    let per_cent = |ratio: f64| units.say((100.0 * ratio).round().abs(), PerCent);
    let worse: Vec<String> = improvement
        .also
        .iter()
        .filter(|effect| effect.effect_ratio > 0.0)
        .map(|effect| {
            format!(
                "{}, {} more",
                lower(named(effect.what, design)),
                per_cent(effect.effect_ratio)
            )
        })
        .collect();
    let worse = if worse.is_empty() {
        String::new()
    } else {
        format!("; what gets worse: {}", worse.join(", "))
    };
    let (after, before) = (say(improvement.after), say(improvement.before));
    let moved = format!("{after} instead of {before}");
    let helped = match improvement.star_growth {
        // A difference below the last figure that is shown is told by the growth alone.
        Some(grown) if after == before => format!(
            "the star {} wider at worst instead of {}",
            wider(grown.after_ratio),
            wider(grown.before_ratio)
        ),
        Some(grown) => format!(
            "the star {} wider at worst instead of {} (it moves by {moved})",
            wider(grown.after_ratio),
            wider(grown.before_ratio)
        ),
        None => format!("{moved}, {} less", per_cent(improvement.effect_ratio)),
    };
    format!("{}: {helped}{worse}", named(improvement.what, design))
}

/// What else becomes less by it, in one sentence; empty where nothing does.
#[must_use]
pub fn better(improvement: &Improvement, units: Units, design: &Design) -> String {
    let less: Vec<String> = improvement
        .also
        .iter()
        .filter(|effect| effect.effect_ratio < 0.0)
        .map(|effect| {
            let per_cent = (100.0 * effect.effect_ratio).round().abs();
            let per_cent = units.say(per_cent, PerCent);
            format!("{}, {per_cent} less", lower(named(effect.what, design)))
        })
        .collect();
    if less.is_empty() {
        return String::new();
    }
    format!("It also helps: {}.", less.join("; "))
}

fn named<'a>(what: &str, design: &'a Design) -> &'a str {
    let of = design
        .motion
        .disturbances
        .iter()
        .find(|disturbance| disturbance.id == what);
    of.map_or("A bump settles in", |disturbance| disturbance.title)
}

/// The answers that make the change, each with its question.
#[must_use]
pub fn fields(improvement: &Improvement, units: Units) -> Vec<String> {
    answers(&improvement.fields, units)
}

/// Answers with new values, each with its question.
#[must_use]
pub fn answers(fields: &[NewField], units: Units) -> Vec<String> {
    fields
        .iter()
        .map(|field| format!("{} {}", label(&field.field), value(field, units)))
        .collect()
}

/// The question, ended so that an answer may follow.
fn label(path: &str) -> String {
    let label = questions::label(path);
    if label.ends_with('?') {
        label.to_owned()
    } else {
        format!("{label}:")
    }
}

fn value(field: &NewField, units: Units) -> String {
    match &field.value {
        NewValue::Number(value) => match SitePlan::number(&field.field) {
            Some(number) if number.unit == Unit::Millimetre => units.to_measure(*value).to_string(),
            Some(number) => units.say(*value, number.unit),
            None => units.say(*value, One),
        },
        NewValue::Text(key) => {
            match questions::about(&field.field).map(|(_, question)| &question.kind) {
                Some(Kind::Choice { answers, .. }) => {
                    answers.iter().find(|(known, _)| known == key).map_or_else(
                        || key.clone(),
                        |(_, words)| words::sentence(words).trim_end_matches('.').to_owned(),
                    )
                }
                _ => key.clone(),
            }
        }
        NewValue::Stands(stands) => {
            let place = |stand: &stillground::site_plan::Stand| {
                format!("{} at {}", stand.name, place([stand.x_m, stand.y_m], units))
            };
            stands.iter().map(place).collect::<Vec<_>>().join("; ")
        }
        NewValue::Path(path) => path
            .iter()
            .map(|corner| place(*corner, units))
            .collect::<Vec<_>>()
            .join(", then "),
        NewValue::Nothing => "no answer".to_owned(),
    }
}

/// A place on the floor, counted from the pier.
fn place([x, y]: [f64; 2], units: Units) -> String {
    let way = |value: f64, towards: [&str; 2]| {
        format!(
            "{} {}",
            units.say(value.abs(), Unit::Metre),
            towards[usize::from(value < 0.0)]
        )
    };
    format!(
        "{}, {}",
        way(x, ["east", "west"]),
        way(y, ["north", "south"])
    )
}
