//! Another opinion on something that the plan calculates: a rule of thumb, another author's formula, another document.
//!
//! The tool never picks one silently: both stand on the page, on the sheet and in the JSON, and a person judges.

use serde::Serialize;

use crate::figure::{Amount, PerCent, Units};
use crate::source::Source;

/// Within so much of each other two opinions are the same, as a share.
const SAME_RATIO: f64 = 0.01;

/// What somebody else says, beside what the plan calculates.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Opinion {
    /// Name of the calculation or check on which it is an opinion.
    pub of: &'static str,
    /// Whose it is, or the rule's name.
    pub title: String,
    /// What it says.
    pub says: String,
    /// What the plan's own calculation says.
    pub calculation: String,
    /// Where the two agree or not.
    pub verdict_words: String,
    /// Where it comes from.
    pub source: Source,
}

impl Opinion {
    /// An opinion in words; what the calculation says and where they agree are to follow.
    pub fn new(
        of: &'static str,
        title: impl Into<String>,
        says: impl Into<String>,
        source: Source,
    ) -> Self {
        Self {
            of,
            title: title.into(),
            says: says.into(),
            calculation: String::new(),
            verdict_words: String::new(),
            source,
        }
    }

    /// What the plan's own calculation says.
    pub fn beside(mut self, calculation: impl Into<String>) -> Self {
        self.calculation = calculation.into();
        self
    }

    /// Where the two agree or not.
    pub fn together(mut self, verdict: impl Into<String>) -> Self {
        self.verdict_words = verdict.into();
        self
    }

    /// All three in one run.
    pub fn sentence(&self) -> String {
        format!("{} {} {}", self.says, self.calculation, self.verdict_words)
    }

    /// Another figure for what the plan found: `what` names it, `theirs` stands first, the plan's own second.
    pub fn figure(
        of: &'static str,
        title: impl Into<String>,
        what: &str,
        [theirs, ours]: [Amount; 2],
        source: Source,
        units: Units,
    ) -> Self {
        let say = |amount: Amount| units.say(amount.value, amount.unit);
        let off = theirs.value / ours.value - 1.0;
        let per_cent = units.say(100.0 * off.abs(), PerCent);
        let verdict = match off {
            off if !off.is_finite() => "The two cannot be compared.".to_owned(),
            off if off.abs() < SAME_RATIO => "The two agree.".to_owned(),
            off if off > 0.0 => format!("It gives {per_cent} more than the plan."),
            _ => format!("It gives {per_cent} less than the plan."),
        };
        Self::new(of, title, format!("{what}: {}.", say(theirs)), source)
            .beside(format!("The plan calculates {}.", say(ours)))
            .together(verdict)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::Kilopascal;
    use crate::units::kilopascal;

    #[test]
    fn two_figures_are_compared_in_words() {
        let said = |theirs: f64| {
            let amounts = [theirs, 200.0].map(|one| Amount::of(kilopascal::new(one), Kilopascal));
            let source = Source::judgement("made up for a test");
            Opinion::figure("a.b", "Someone", "Pressure", amounts, source, Units::Metric)
                .verdict_words
        };
        // Computed: 250/200, 150/200, 201/200.
        assert_eq!(said(250.0), "It gives 25% more than the plan.");
        assert_eq!(said(150.0), "It gives 25% less than the plan.");
        assert_eq!(said(201.0), "The two agree.");
        assert_eq!(said(f64::NAN), "The two cannot be compared.");
    }
}
