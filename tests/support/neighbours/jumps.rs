//! Where a figure jumps: two values of an answer, the way between them halved towards the larger change until they are
//! neighbours. A change that is spread over the way comes to nothing; a step stays.

use stillground::brief::resolve;
use stillground::design::{Design, design};
use stillground::field::NumberField;
use stillground::figure::Unit;
use stillground::halfspace::Shelf;
use stillground::site_plan::SitePlan;

use super::figures::{Figure, Kinds, kinds};
use super::steps::{rule_between, rule_of};
use crate::generated::Dice;

/// Most that a figure may move between neighbours.
const JUMP_RATIO: f64 = 0.1;
/// Neighbours differ by this share of the answer.
const NEAR_RATIO: f64 = 1e-3;
/// Answers this near are told apart by rounding alone.
const SAME_RATIO: f64 = 1e-9;
/// Answers whose every value is another shape to solve, which takes a hundred times as long.
const SHAPED: [&str; 7] = [
    "block.length_m",
    "block.width_m",
    "block.depth_m",
    "block.side_contact_from_m",
    "block.side_contact_to_m",
    "site.poisson_ratio",
    "site.topsoil_depth_m",
];

/// A step of a figure between two neighbours.
#[derive(Debug, Clone, PartialEq)]
pub struct Jump {
    /// Path of the answer.
    pub field: &'static str,
    /// The figure.
    pub figure: String,
    /// The answer on either side.
    pub answers: [f64; 2],
    /// The figure on either side.
    pub values: [f64; 2],
    /// Whether it is there however near the answers; else the figure is only steep.
    pub sharp: bool,
    /// The rule that makes it.
    pub rule: Option<&'static str>,
}

/// Whether every value of an answer is another shape to solve.
#[must_use]
pub fn is_shaped(field: &str) -> bool {
    SHAPED.contains(&field)
}

/// The answers that can be moved by very little.
pub fn movable() -> impl Iterator<Item = &'static NumberField> {
    SitePlan::numbers().filter(|field| field.unit != Unit::Count)
}

/// A search for a jump of what is watched.
pub struct Search<'a> {
    /// The plan.
    pub plan: &'a SitePlan,
    /// Its design.
    pub base: &'a Design,
    /// What is watched.
    pub watched: fn(&Design) -> Vec<Figure>,
    /// Shapes that are solved.
    pub shelf: &'a dyn Shelf,
}

/// A value of the answer with the figures there.
struct Place {
    answer: f64,
    figures: Vec<Figure>,
    kinds: Kinds,
}

impl Search<'_> {
    /// Looks for a jump between the plan's own answer and another that the dice choose.
    #[must_use]
    pub fn jump(&self, field: &'static NumberField, dice: &mut Dice) -> Option<Jump> {
        let now = (field.get)(self.plan)?;
        let other = if dice.happens(0.5) {
            dice.number(field.least, field.most)
        } else {
            (now * (0.7 + 0.6 * dice.share())).clamp(field.least, field.most)
        };
        let mut ends = [
            Place {
                answer: now,
                figures: (self.watched)(self.base),
                kinds: kinds(self.base),
            },
            self.place(field, other)?,
        ];
        let moved: Vec<String> = ends[0]
            .figures
            .iter()
            .filter(|figure| rule_of(&field.path, &figure.name).is_none())
            .filter(|figure| {
                ends[1]
                    .of(&figure.name)
                    .is_some_and(|is| differ(figure, is))
            })
            .map(|figure| figure.name.clone())
            .collect();
        let name = moved.get(dice.below(moved.len().max(1)))?.clone();
        while !near(&ends, NEAR_RATIO) {
            ends = self.half(field, &name, ends)?;
        }
        let answers = [ends[0].answer, ends[1].answer];
        let values = [ends[0].of(&name)?.value, ends[1].of(&name)?.value];
        while !near(&ends, SAME_RATIO) {
            // One that cannot be halved is steep, and its ends are no longer asked for.
            let Some(halved) = self.half(field, &name, ends) else {
                return Some(Jump {
                    field: field.path.as_str(),
                    rule: rule_between(&field.path, &name, answers),
                    figure: name,
                    answers,
                    values,
                    sharp: false,
                });
            };
            ends = halved;
        }
        let rule = rule_between(&field.path, &name, answers).or_else(|| changed(&ends));
        Some(Jump {
            field: field.path.as_str(),
            rule,
            figure: name,
            answers,
            values,
            sharp: true,
        })
    }

    /// The half in which the figure moves more; none where it moves by no more than a tenth in either, or cannot be found.
    fn half(&self, field: &NumberField, name: &str, ends: [Place; 2]) -> Option<[Place; 2]> {
        let [a, b] = ends;
        let between = if a.answer > 0.0 && b.answer > 0.0 {
            (a.answer * b.answer).sqrt()
        } else {
            f64::midpoint(a.answer, b.answer)
        };
        let middle = self.place(field, between)?;
        let change = |one: &Place, two: &Place| {
            let (one, two) = (one.of(name)?, two.of(name)?);
            differ(one, two).then(|| (one.value - two.value).abs())
        };
        match (change(&a, &middle), change(&middle, &b)) {
            (None, None) => None,
            (Some(_), None) => Some([a, middle]),
            (None, Some(_)) => Some([middle, b]),
            (Some(first), Some(second)) if first > second => Some([a, middle]),
            _ => Some([middle, b]),
        }
    }

    fn place(&self, field: &NumberField, answer: f64) -> Option<Place> {
        let mut other = self.plan.clone();
        (field.set)(&mut other, Some(answer));
        let found = design(&resolve(&other).ok()?, self.shelf);
        Some(Place {
            answer,
            figures: (self.watched)(&found),
            kinds: kinds(&found),
        })
    }
}

impl Place {
    fn of(&self, name: &str) -> Option<&Figure> {
        self.figures.iter().find(|figure| figure.name == name)
    }
}

/// The rule of the first kind that is another on either side.
fn changed(ends: &[Place; 2]) -> Option<&'static str> {
    let both = ends[0].kinds.iter().zip(&ends[1].kinds);
    both.filter(|((_, was), (_, is))| was != is)
        .map(|((rule, _), _)| *rule)
        .next()
}

fn near(ends: &[Place; 2], ratio: f64) -> bool {
    let [a, b] = [ends[0].answer, ends[1].answer];
    (a - b).abs() <= ratio * a.abs().max(b.abs()).max(1e-3)
}

fn differ(a: &Figure, b: &Figure) -> bool {
    let larger = a.value.abs().max(b.value.abs());
    larger > a.idle && (a.value - b.value).abs() > JUMP_RATIO * larger
}
