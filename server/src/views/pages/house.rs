//! What a house knows already, said where it is used.

use stillground::figure::{Unit, Units};
use stillground::site_plan::SitePlan;
use stillground::stock::{Stock, words};
use stillground::units::millimetre;

use super::stale::answer;
use crate::config::Defaults;
use crate::forms::question::{Kind, Question};
use crate::forms::questions;
use crate::forms::step::Step;

/// The house's answers that still stand in a plan at a step, and at the pier's step the tubes in stock.
#[must_use]
pub fn lines(defaults: &Defaults, step: Step, plan: &SitePlan) -> Vec<String> {
    let asked = questions::topics(step)
        .iter()
        .flat_map(|topic| topic.questions());
    let stands = |question: &&Question| {
        is_answered(question, &defaults.plan) && same(question, &defaults.plan, plan)
    };
    let mut lines: Vec<String> = asked
        .filter(stands)
        .map(|question| format!("{} {}", question.words.label, answer(question, plan)))
        .collect();
    if step == Step::Pier && !defaults.tubes_mm.is_empty() {
        let units = plan.units.unwrap_or_default();
        let tubes: Vec<_> = defaults
            .tubes_mm
            .iter()
            .map(|&tube| size(defaults.plan.family(), units, tube))
            .collect();
        lines.push(format!(
            "Tubes in stock, outside diameter and wall: {}",
            tubes.join("; ")
        ));
    }
    lines
}

fn size(stock: Stock, units: Units, (diameter, wall): (f64, f64)) -> String {
    words::tube(
        stock,
        units,
        millimetre::new(diameter),
        millimetre::new(wall),
    )
    .unwrap_or_else(|| {
        format!(
            "{} × {}",
            units.say(diameter, Unit::Millimetre),
            units.say(wall, Unit::Millimetre)
        )
    })
}

fn is_answered(question: &Question, plan: &SitePlan) -> bool {
    match &question.kind {
        Kind::Number => question
            .number()
            .is_some_and(|field| (field.get)(plan).is_some()),
        Kind::Choice { get, .. } => get(plan).is_some(),
        _ => false,
    }
}

fn same(question: &Question, one: &SitePlan, other: &SitePlan) -> bool {
    match &question.kind {
        Kind::Number => question
            .number()
            .is_some_and(|field| (field.get)(one) == (field.get)(other)),
        Kind::Choice { get, .. } => get(one) == get(other),
        _ => false,
    }
}
