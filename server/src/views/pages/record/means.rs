//! What each finding would mean, said before it is made: it can be read where there is no connection to ask.

use stillground::figure::Units;
use stillground::record::{Asks, Item, Verdict};

/// A finding, and what follows from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Meaning {
    /// The figures or the answer.
    pub found: String,
    /// What follows, a whole sentence or a word.
    pub then: String,
    /// Whether it stops the work.
    pub stops: bool,
}

/// What follows from each finding; empty where nothing follows from any.
pub(super) fn of(item: &Item, units: Units) -> Vec<Meaning> {
    let pairs: Vec<(String, &Verdict)> = match &item.asks {
        Asks::Number { unit, bands, .. } => {
            let say = |value: f64| units.say(value, *unit);
            let before = std::iter::once(None).chain(bands.iter().map(|band| band.up_to));
            let words = |from: Option<f64>, to: Option<f64>| match (from, to) {
                (None, Some(to)) => format!("up to {}", say(to)),
                (Some(from), Some(to)) => format!("above {}, up to {}", say(from), say(to)),
                (Some(from), None) => format!("above {}", say(from)),
                (None, None) => "any figure".to_owned(),
            };
            before
                .zip(bands)
                .map(|(from, band)| (words(from, band.up_to), &band.verdict))
                .collect()
        }
        Asks::Choice(answers) => answers
            .iter()
            .map(|answer| (answer.words.clone(), &answer.verdict))
            .collect(),
        Asks::Text | Asks::Day { .. } | Asks::Moment(_) | Asks::Measurement { .. } => Vec::new(),
    };
    if pairs
        .iter()
        .all(|(_, verdict)| **verdict == Verdict::Within)
    {
        return Vec::new();
    }
    pairs
        .into_iter()
        .map(|(found, verdict)| meaning(found, verdict))
        .collect()
}

fn meaning(found: String, verdict: &Verdict) -> Meaning {
    let then = match verdict {
        Verdict::Within => "as planned.".to_owned(),
        Verdict::Outside { what_to_do } => what_to_do.clone(),
        Verdict::Stop { why, ask, .. } => format!("{why} Ask: {ask}."),
    };
    Meaning {
        found,
        then,
        stops: verdict.is_stop(),
    }
}
