//! A check: a demand compared with a capacity, and the question that it answers.

use serde::Serialize;

use crate::field::Path;
use crate::figure::{Unit, UnitOf};
use crate::source::Source;

/// What a check found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// The demand is within the capacity.
    Holds,
    /// Within it by less than a tenth.
    Close,
    /// The demand exceeds the capacity.
    Fails,
    /// It could not be found, or somebody has to look and decide; the check's note says why and whom to ask.
    Unknown,
}

/// Which of the two questions a check answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// May it be built: strength, stability, pit, frost, studs, fit.
    Build,
    /// Does the star stay still when nobody is there: wind, heat, settling, drift, frequency.
    Still,
}

/// Share by which a demand may exceed its capacity without exceeding it: what rounding in the last digits adds.
const ROUNDING_RATIO: f64 = 1e-9;

/// Whether a demand exceeds its capacity by more than rounding. Every comparison with a limit is made here, so that nothing
/// fails at equality.
pub fn exceeds(demand: f64, capacity: f64) -> bool {
    demand - capacity > ROUNDING_RATIO * demand.abs().max(capacity.abs())
}

/// Utilisation above which a check that holds is called close.
pub const CLOSE_RATIO: f64 = 0.9;

impl Verdict {
    /// The verdict on a demand over its capacity.
    pub fn of(utilisation: f64) -> Self {
        match utilisation {
            ratio if !ratio.is_finite() => Self::Unknown,
            ratio if exceeds(ratio, 1.0) => Self::Fails,
            ratio if exceeds(ratio, CLOSE_RATIO) => Self::Close,
            _ => Self::Holds,
        }
    }
}

/// A demand held against a capacity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// Stable name, `stage.what`, for instance `block.bearing`.
    pub id: &'static str,
    /// Which question it belongs to.
    pub question: Question,
    /// What is asked, as a question that yes, no and ask answer, in a customer's words.
    pub title: String,
    /// What is asked of it, in `unit`; null when unknown.
    pub demand: Option<f64>,
    /// What it can give, in `unit`; null when unknown.
    pub capacity: Option<f64>,
    /// Unit of both.
    pub unit: Unit,
    /// Demand over capacity; null when unknown. For a least value (depth below frost) it is required over given.
    pub utilisation: Option<f64>,
    /// Whether the limit is the least that is needed; else it is the most that is allowed.
    pub at_least: bool,
    /// What was found.
    pub verdict: Verdict,
    /// Where the rule comes from.
    pub source: Source,
    /// One or two sentences: what it means, and what to change when it fails.
    pub note: String,
    /// Paths of the plan's fields that move it most, for instance `block.depth_m`.
    pub fields: &'static [Path],
}

impl Check {
    /// A demand against a capacity that it must not exceed. A value that is not finite makes the verdict unknown.
    pub fn at_most<Q>(
        id: &'static str,
        title: impl Into<String>,
        demand: Q,
        capacity: Q,
        unit: impl UnitOf<Q>,
        source: Source,
    ) -> Self {
        let [demand, capacity] = [demand, capacity].map(|quantity| unit.count(quantity));
        let utilisation = (capacity > 0.0)
            .then(|| demand / capacity)
            .filter(|ratio| ratio.is_finite());
        Self::judged(
            id,
            title.into(),
            demand,
            capacity,
            unit.unit(),
            utilisation,
            source,
        )
    }

    /// A value given against the least that is needed; utilisation is needed over given.
    pub fn at_least<Q>(
        id: &'static str,
        title: impl Into<String>,
        given: Q,
        needed: Q,
        unit: impl UnitOf<Q>,
        source: Source,
    ) -> Self {
        let [given, needed] = [given, needed].map(|quantity| unit.count(quantity));
        let utilisation = (given > 0.0)
            .then(|| needed / given)
            .filter(|ratio| ratio.is_finite());
        Self {
            at_least: true,
            ..Self::judged(
                id,
                title.into(),
                needed,
                given,
                unit.unit(),
                utilisation,
                source,
            )
        }
    }

    /// A check that cannot be made; `why` says so.
    pub fn unknown(
        id: &'static str,
        title: impl Into<String>,
        unit: Unit,
        source: Source,
        why: impl Into<String>,
    ) -> Self {
        Self {
            id,
            question: Question::Build,
            title: title.into(),
            demand: None,
            capacity: None,
            unit,
            utilisation: None,
            at_least: false,
            verdict: Verdict::Unknown,
            source,
            note: why.into(),
            fields: &[],
        }
    }

    fn judged(
        id: &'static str,
        title: String,
        demand: f64,
        capacity: f64,
        unit: Unit,
        utilisation: Option<f64>,
        source: Source,
    ) -> Self {
        let verdict = match utilisation {
            _ if !demand.is_finite() || !capacity.is_finite() => Verdict::Unknown,
            Some(ratio) => Verdict::of(ratio),
            None if !exceeds(demand, capacity) => Verdict::Holds,
            _ => Verdict::Fails,
        };
        let finite = |value: f64| value.is_finite().then_some(value);
        Self {
            id,
            question: Question::Build,
            title,
            demand: finite(demand),
            capacity: finite(capacity),
            unit,
            utilisation,
            at_least: false,
            verdict,
            source,
            note: String::new(),
            fields: &[],
        }
    }

    /// The same check, counted among those of stillness.
    pub fn of_stillness(mut self) -> Self {
        self.question = Question::Still;
        self
    }

    /// The same check with a note.
    pub fn note(mut self, note: impl Into<String>) -> Self {
        self.note = note.into();
        self
    }

    /// The same check with the fields that move it.
    pub fn moved_by(mut self, fields: &'static [Path]) -> Self {
        self.fields = fields;
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SOURCE: Source = Source::judgement("made up for a test");

    fn at_most(demand: f64, capacity: f64) -> Verdict {
        Check::at_most("a.b", "?", demand, capacity, Unit::Metre, SOURCE).verdict
    }

    fn at_least(given: f64, needed: f64) -> Verdict {
        Check::at_least("a.b", "?", given, needed, Unit::Metre, SOURCE).verdict
    }

    /// Computed: 0.15 − 0.13 is 0.01999…98 in binary, 0.1 + 0.2 is 0.30000000000000004.
    #[test]
    fn nothing_fails_at_equality_whatever_the_last_digit() {
        assert_eq!(at_least(0.15 - 0.13, 0.02), Verdict::Close);
        assert_eq!(at_most(0.1 + 0.2, 0.3), Verdict::Close);
        assert_eq!(at_most(0.0, 0.0), Verdict::Holds);
        assert_eq!(at_least(0.0, 0.0), Verdict::Holds);
    }

    #[test]
    fn what_is_more_than_rounding_fails() {
        assert_eq!(at_least(0.02 * (1.0 - 1e-6), 0.02), Verdict::Fails);
        assert_eq!(at_most(0.3 * (1.0 + 1e-6), 0.3), Verdict::Fails);
        assert_eq!(at_most(1e-30, 0.0), Verdict::Fails);
    }

    /// A pit that reaches past its neighbour's wall keeps less than no distance, though none is needed where it is shallow.
    #[test]
    fn less_than_nothing_is_not_enough_where_nothing_is_needed() {
        assert_eq!(at_least(-1.0, 0.0), Verdict::Fails);
        assert_eq!(at_least(-1.0, -2.0), Verdict::Holds);
        assert_eq!(at_most(0.0, -1.0), Verdict::Fails);
    }

    #[test]
    fn a_tenth_to_spare_is_the_border_of_close() {
        assert_eq!(at_most(0.9, 1.0), Verdict::Holds);
        assert_eq!(at_most(0.9 + 1e-6, 1.0), Verdict::Close);
    }
}
