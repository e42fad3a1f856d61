//! Every question there is, by step. A field of the plan is asked about exactly once.

mod anchors;
mod excavation;
mod floor;
mod footing;
mod load;
mod pier;
mod site;

use std::sync::LazyLock;

use stillground::field::Path;
use stillground::figure::{Unit, Units};
use stillground::notes::{AssumedValue, Assumption};
use stillground::site_plan::SitePlan;
use stillground::stock::Stock;
use stillground::stock::words::cartridge;

use super::question::{self, Kind, Question, Topic};
use super::step::Step;

/// The topics of a step, and last what no topic names: a new row is asked for before anybody has found its place.
#[must_use]
pub fn topics(step: Step) -> &'static [Topic] {
    static TOPICS: LazyLock<Vec<(Step, Vec<Topic>)>> = LazyLock::new(|| {
        let all = |step| placed(step).iter().copied().chain(unplaced(step));
        Step::ALL.map(|step| (step, all(step).collect())).into()
    });
    TOPICS
        .iter()
        .find(|(of, _)| *of == step)
        .map_or(&[], |(_, topics)| topics.as_slice())
}

/// Questions that stand in no topic, as one of their own.
fn unplaced(step: Step) -> Option<Topic> {
    static UNPLACED: LazyLock<Vec<(Step, Vec<Question>)>> = LazyLock::new(|| {
        let is_placed = |path: Path| {
            Step::ALL
                .into_iter()
                .flat_map(placed)
                .flat_map(Topic::questions)
                .any(|question| question.path == path)
        };
        let of = |step| {
            rows()
                .filter(|question| asked_at(question.path) == step && !is_placed(question.path))
                .collect()
        };
        Step::ALL.map(|step| (step, of(step))).into()
    });
    let (_, questions) = UNPLACED.iter().find(|(of, _)| *of == step)?;
    (!questions.is_empty()).then_some(Topic {
        heading: "Anything else?",
        intro: "",
        common: &[],
        rare: questions,
    })
}

/// The question of each number and each choice that has its words.
fn rows() -> impl Iterator<Item = Question> {
    let numbers = SitePlan::numbers().filter_map(question::of_number);
    numbers.chain(SitePlan::others().filter_map(question::of_choice))
}

/// The step at which a section of the plan is asked about.
fn asked_at(path: Path) -> Step {
    match path.split('.').next() {
        Some("site") => Step::Site,
        Some("block") => Step::Footing,
        Some("pier" | "load") => Step::Pier,
        Some("anchors") => Step::Anchors,
        Some("floor") => Step::Floor,
        _ => Step::Excavation,
    }
}

/// The topics of a step, as its file has them.
fn placed(step: Step) -> &'static [Topic] {
    match step {
        Step::Site => site::TOPICS,
        Step::Excavation => excavation::TOPICS,
        Step::Footing => footing::TOPICS,
        Step::Pier => pier::TOPICS,
        Step::Anchors => anchors::TOPICS,
        Step::Floor => floor::TOPICS,
        Step::Plan => &[],
    }
}

/// The questions of a step.
pub fn of(step: Step) -> impl Iterator<Item = &'static Question> {
    topics(step).iter().flat_map(Topic::questions)
}

/// The question about a field, or about the list that the field is part of, and its step.
#[must_use]
pub fn about(path: &str) -> Option<(Step, &'static Question)> {
    let whole = path.split('[').next().unwrap_or(path);
    Step::ALL.into_iter().find_map(|step| {
        of(step)
            .find(|question| question.path == whole)
            .map(|question| (step, question))
    })
}

/// What a field's question asks; the field's own name where nothing asks about it.
#[must_use]
pub fn label(path: &str) -> &str {
    about(path).map_or(path, |(_, question)| question.words.label)
}

/// The words of an assumed value: those of the answer where it is one of a few.
#[must_use]
pub fn answer_words(taken: &Assumption, units: Units) -> String {
    match &taken.value {
        // A cartridge is asked for by its size; other volumes are none that is sold.
        AssumedValue::Number(value) if taken.unit == Unit::Millilitre => {
            cartridge(Stock::of(units), units, *value)
        }
        AssumedValue::Number(value) => units.say(*value, taken.unit),
        AssumedValue::Text(text) => {
            let answers = about(&taken.field).and_then(|(_, question)| match &question.kind {
                Kind::Choice { answers, .. } => answers.iter().find(|(key, _)| key == text),
                _ => None,
            });
            answers.map_or_else(|| text.clone(), |(_, words)| (*words).to_owned())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Step, about, answer_words, of};
    use crate::forms::question::Kind;
    use stillground::decided::design_plan;
    use stillground::figure::Units;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    /// Paths of all the plan's fields but its version.
    fn fields() -> Vec<String> {
        let plan = serde_json::to_value(SitePlan::unknown()).unwrap();
        let mut paths = Vec::new();
        for (name, value) in plan.as_object().unwrap() {
            match value.as_object() {
                Some(section) => {
                    paths.extend(section.keys().map(|field| format!("{name}.{field}")))
                }
                None if name != "schema_version" => paths.push(name.clone()),
                None => {}
            }
        }
        paths.sort();
        paths
    }

    #[test]
    fn every_field_is_asked_about_exactly_once() {
        let mut asked: Vec<String> = Step::ALL
            .into_iter()
            .flat_map(of)
            .map(|question| question.path.into())
            .collect();
        // Prices are asked about on a page of their own, each at its line.
        asked.extend(["prices.currency", "prices.lines"].map(str::to_owned));
        asked.sort();
        assert_eq!(asked, fields());
    }

    #[test]
    fn every_question_says_what_happens_when_it_is_not_known() {
        let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
        let mut left_open = 0;
        for question in Step::ALL.into_iter().flat_map(of) {
            assert!(!question.words.label.trim().is_empty(), "{}", question.path);
            let mut taken = design.assumptions.iter();
            if let Some(taken) = taken.find(|taken| taken.field == question.path) {
                assert!(!taken.why.is_empty() && !taken.effect.is_empty());
            } else {
                assert!(question.words.not_known.ends_with('.'), "{}", question.path);
                left_open += 1;
            }
        }
        assert!(left_open > 40, "{left_open}");
    }

    #[test]
    fn what_is_taken_is_said_in_the_words_of_its_question() {
        let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
        assert!(
            design.assumptions.len() > 60,
            "{}",
            design.assumptions.len()
        );
        for taken in &design.assumptions {
            let (_, question) =
                about(&taken.field).unwrap_or_else(|| panic!("nothing asks about {}", taken.field));
            let words = answer_words(taken, Units::Metric);
            assert!(
                !words.contains('_') && words != "true" && words != "false",
                "{}: {words}",
                taken.field
            );
            if let Kind::Choice { answers, .. } = &question.kind {
                assert!(
                    answers.iter().any(|(_, answer)| *answer == words)
                        || question.words.not_known.trim_end_matches('.') == words,
                    "{}: {words}",
                    taken.field
                );
            }
        }
    }

    #[test]
    fn an_answer_survives_the_way_in_and_out() {
        for question in Step::ALL.into_iter().flat_map(of) {
            if let Kind::Choice { answers, get, set } = &question.kind {
                for (key, _) in *answers {
                    let mut plan = SitePlan::unknown();
                    set(&mut plan, Some(key));
                    assert_eq!(get(&plan), Some(*key), "{}", question.path);
                }
            }
        }
    }
}
