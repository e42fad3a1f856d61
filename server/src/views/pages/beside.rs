//! What the plan shows beside its figures: what others say, strength by day, what would help most.

use stillground::figure::{Megapascal, Unit, Units};
use stillground::notes::Opinion;
use stillground::stages::motion::improvement::Improvement;

use super::number::Number;
use crate::planned::Planned;
use crate::views::words;

/// What stands beside the figures.
pub struct Beside {
    /// What others say, with the calculation.
    pub opinions: Vec<Opinion>,
    /// What would make it stiller or quicker to settle; last what helps against movements that nobody would see.
    pub improvements: Vec<ImprovementView>,
    /// Whether some help only against such movements.
    pub some_unseen: bool,
    /// Where to stand.
    pub where_to_stand: Vec<String>,
    /// Strength by day.
    pub ages: Vec<AgeView>,
    /// From hole to last check.
    pub setting: Vec<String>,
}

/// A change and what it does.
pub struct ImprovementView {
    /// Whether it is the first of those that help only against what nobody would see.
    pub first_unseen: bool,
    /// The change.
    pub change: String,
    /// The same as the engine says it, by which a button names it.
    pub name: String,
    /// What it does.
    pub effect: String,
    /// What else becomes less by it; empty where nothing does.
    pub better: String,
    /// The answers that make it: question and answer.
    pub fields: Vec<String>,
}

/// The concrete on a day.
pub struct AgeView {
    /// The day.
    pub day: Number,
    /// Mean strength.
    pub mean: Number,
    /// Strength that may be counted on.
    pub characteristic: Number,
}

impl Beside {
    /// What stands beside a plan's figures.
    #[must_use]
    pub fn of(planned: &Planned) -> Self {
        let (design, units) = (&planned.design, planned.brief.units);
        let anchors = &design.anchors;
        let (seen, unseen): (Vec<_>, Vec<_>) = design
            .improvements
            .iter()
            .partition(|one| super::improvement::is_seen(one, design));
        let first = seen.len();
        Self {
            some_unseen: !unseen.is_empty(),
            opinions: design.opinions.clone(),
            improvements: seen
                .into_iter()
                .chain(unseen)
                .enumerate()
                .map(|(i, improvement)| self::improvement(improvement, i == first, planned))
                .collect(),
            where_to_stand: design.motion.where_to_stand.clone(),
            ages: design
                .block
                .strength_by_day
                .iter()
                .map(|age| self::age(age, units))
                .collect(),
            setting: anchors.steps.iter().map(|step| step.says.clone()).collect(),
        }
    }
}

fn improvement(
    improvement: &Improvement,
    first_unseen: bool,
    planned: &Planned,
) -> ImprovementView {
    ImprovementView {
        first_unseen,
        change: words::sentence(&improvement.change),
        name: improvement.change.clone(),
        better: super::improvement::better(improvement, planned.brief.units, &planned.design),
        effect: super::improvement::effect(improvement, planned.brief.units, &planned.design),
        fields: super::improvement::fields(improvement, planned.brief.units),
    }
}

fn age(age: &stillground::stages::block::Age, units: Units) -> AgeView {
    AgeView {
        day: Number::of(Some(age.day), Unit::Day, units),
        mean: Number::of(Some(age.mean), Megapascal, units),
        characteristic: Number::of(age.characteristic, Megapascal, units),
    }
}
