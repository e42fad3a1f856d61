//! Every question there is, by step. A field of the plan is asked about exactly once.

mod anchors;
mod excavation;
mod floor;
mod footing;
mod load;
mod pier;
mod site;

use super::question::{Question, Topic};
use super::step::Step;

/// The topics of a step.
#[must_use]
pub fn topics(step: Step) -> &'static [Topic] {
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
    Step::ALL.into_iter().find_map(|step| of(step).find(|question| question.path == whole).map(|question| (step, question)))
}

#[cfg(test)]
mod tests {
    use super::{Step, of};
    use crate::forms::question::Kind;
    use stillground::site_plan::SitePlan;

    /// Paths of all the plan's fields but its version.
    fn fields() -> Vec<String> {
        let plan = serde_json::to_value(SitePlan::unknown()).unwrap();
        let mut paths = Vec::new();
        for (name, value) in plan.as_object().unwrap() {
            match value.as_object() {
                Some(section) => paths.extend(section.keys().map(|field| format!("{name}.{field}"))),
                None if name != "schema_version" => paths.push(name.clone()),
                None => {}
            }
        }
        paths.sort();
        paths
    }

    #[test]
    fn every_field_is_asked_about_exactly_once() {
        let mut asked: Vec<String> = Step::ALL.into_iter().flat_map(of).map(|question| question.path.to_owned()).collect();
        asked.sort();
        assert_eq!(asked, fields());
    }

    #[test]
    fn a_question_about_a_figure_has_a_number_behind_it() {
        for question in Step::ALL.into_iter().flat_map(of) {
            assert_eq!(matches!(question.kind, Kind::Number), question.number().is_some(), "{}", question.path);
        }
    }

    #[test]
    fn every_question_says_what_happens_when_it_is_not_known() {
        for question in Step::ALL.into_iter().flat_map(of) {
            for text in [question.label, question.not_known] {
                assert!(!text.trim().is_empty(), "{}", question.path);
            }
            assert!(question.not_known.ends_with('.'), "{}", question.path);
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
