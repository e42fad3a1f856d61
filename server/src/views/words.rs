//! States and shares in words.

use stillground::figure::Units;
use stillground::notes::{Check, Verdict, When};
use stillground::notes::{Input, Working};

/// What stands over a list of materials for ground that nobody may presume anything of.
pub const JUDGE_FIRST: &str = "Order nothing of this before a ground engineer has judged the ground: the sizes may all change.";

/// Shares of a whole, largest first; the largest that is not more than the share is said.
const SHARES: &[(f64, &str)] = &[
    (0.9, "nine tenths"),
    (0.8, "four fifths"),
    (0.75, "three quarters"),
    (2.0 / 3.0, "two thirds"),
    (0.6, "three fifths"),
    (0.5, "half"),
    (0.4, "two fifths"),
    (1.0 / 3.0, "a third"),
    (0.25, "a quarter"),
    (0.2, "a fifth"),
    (0.125, "an eighth"),
    (0.1, "a tenth"),
];

/// What goes into a calculation, in words.
pub fn inputs(working: &Working, units: Units) -> Vec<String> {
    let said = |input: &Input| units.say(input.value, input.unit);
    working
        .inputs
        .iter()
        .map(|input| format!("{}\u{a0}=\u{a0}{}", input.symbol, said(input)))
        .collect()
}

/// A check's answer in words, its margin said with it and never rounded up.
#[must_use]
pub fn verdict(check: &Check) -> String {
    let short = answer(check.verdict);
    match (check.verdict, check.utilisation) {
        (Verdict::Holds, Some(used)) if used <= 0.0 => format!("{short}: nothing is asked of it"),
        (Verdict::Holds, Some(used)) => match share(1.0 - used) {
            Some(share) => format!("{short}, with {share} to spare"),
            None => short.to_owned(),
        },
        (Verdict::Close, Some(used)) if used > 0.995 => format!("{short}: nothing to spare"),
        (Verdict::Close, _) => format!("{short}: less than a tenth to spare"),
        (Verdict::Fails, Some(used)) if check.at_least => format!("{short}: {}", lack(used)),
        (Verdict::Fails, Some(used)) => format!("{short}: {}", excess(used)),
        (Verdict::Holds | Verdict::Fails | Verdict::Unknown, _) => short.to_owned(),
    }
}

/// A check's answer in a word or two.
#[must_use]
pub const fn answer(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "yes",
        Verdict::Close => "yes, just",
        Verdict::Fails => "no",
        Verdict::Unknown => "ask",
    }
}

/// The mark that stands before a verdict.
#[must_use]
pub const fn mark(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "holds",
        Verdict::Close => "close",
        Verdict::Fails => "fails",
        Verdict::Unknown => "unknown",
    }
}

fn share(part: f64) -> Option<&'static str> {
    SHARES
        .iter()
        .find(|(least, _)| part >= *least - 1e-9)
        .map(|(_, words)| *words)
}

/// By how much a limit is exceeded, never rounded down.
fn excess(used: f64) -> String {
    match used {
        used if used >= 10.0 => "more than ten times the limit".to_owned(),
        used if used >= 2.0 => format!(
            "{} times the limit",
            stillground::figure::significant(used, 2)
        ),
        used => format!(
            "{}\u{a0}% over the limit",
            stillground::figure::significant(((used - 1.0) * 100.0).ceil(), 2)
        ),
    }
}

/// By how much the least is missed, as a share of what is needed, never rounded down.
fn lack(used: f64) -> String {
    format!(
        "{}\u{a0}% short",
        stillground::figure::significant(((1.0 - 1.0 / used) * 100.0).ceil().max(1.0), 2)
    )
}

/// The heading under which a part of the work's cautions stand.
#[must_use]
pub const fn when(when: When) -> &'static str {
    match when {
        When::Planning => "While planning and ordering",
        When::Digging => "Before and while digging",
        When::Pouring => "Shuttering, steel and pouring",
        When::Drilling => "Drilling the holes",
        When::Bonding => "Resin and studs",
        When::Lifting => "Lifting and setting the column",
        When::Tightening => "Tightening the nuts",
        When::Flooring => "Building the floor",
        When::Wiring => "Wiring and earthing",
        When::Measuring => "Measuring and mending the finished pier",
        When::Observing => "Using the finished pier",
    }
}

/// A part of the work in one word.
#[must_use]
pub const fn part(when: When) -> &'static str {
    match when {
        When::Planning => "planning",
        When::Digging => "digging",
        When::Pouring => "pouring",
        When::Drilling => "drilling",
        When::Bonding => "resin",
        When::Lifting => "lifting",
        When::Tightening => "tightening",
        When::Flooring => "floor",
        When::Wiring => "wiring",
        When::Measuring => "measuring",
        When::Observing => "using",
    }
}

/// Parts of the work, in their order.
pub const WHENS: [When; 11] = [
    When::Planning,
    When::Digging,
    When::Pouring,
    When::Drilling,
    When::Bonding,
    When::Lifting,
    When::Tightening,
    When::Flooring,
    When::Wiring,
    When::Measuring,
    When::Observing,
];

/// A phrase as a sentence: a capital in front, a full stop behind.
#[must_use]
pub fn sentence(phrase: &str) -> String {
    let phrase = phrase.trim();
    let mut letters = phrase.chars();
    let Some(first) = letters.next() else {
        return String::new();
    };
    let stop = if phrase.ends_with(['.', '?', '!', '”', ':']) {
        ""
    } else {
        "."
    };
    format!("{}{}{stop}", first.to_uppercase(), letters.as_str())
}

/// A moment as a day and a time of day, in universal time.
#[must_use]
pub fn moment(at: jiff::Timestamp) -> String {
    let text = at.to_string();
    match text.split_once('T') {
        Some((day, time)) => format!("{day}, {}\u{a0}UTC", time.get(..5).unwrap_or(time)),
        None => text,
    }
}

/// The day of a moment, in universal time.
#[must_use]
pub fn day(at: jiff::Timestamp) -> String {
    let text = at.to_string();
    text.split_once('T')
        .map_or(text.clone(), |(day, _)| day.to_owned())
}

/// A size on the disk, rounded up.
#[must_use]
pub fn bytes(size: u64) -> String {
    match size.div_ceil(1024) {
        kib if kib < 10_000 => format!("{kib}\u{a0}KiB"),
        kib => format!("{}\u{a0}MiB", kib.div_ceil(1024)),
    }
}

/// A length of time in the unit that one would say it in.
#[must_use]
pub fn lasting(hours: f64, units: Units) -> String {
    use stillground::figure::Unit::{Day, Hour, Minute};
    match hours {
        hours if hours < 1.0 => units.say(hours * 60.0, Minute),
        hours if hours < 48.0 => units.say(hours, Hour),
        hours => units.say(hours / 24.0, Day),
    }
}

#[cfg(test)]
mod tests {
    use super::{sentence, verdict};
    use stillground::figure::One;
    use stillground::notes::Check;
    use stillground::source::Source;

    fn words(demand: f64, capacity: f64) -> String {
        verdict(&Check::at_most(
            "a.b",
            "",
            demand,
            capacity,
            One,
            Source::judgement(""),
        ))
    }

    #[test]
    fn a_verdict_never_says_more_than_there_is() {
        assert_eq!(words(2.0, 3.0), "yes, with a third to spare");
        assert_eq!(words(2.02, 3.0), "yes, with a quarter to spare");
        assert_eq!(words(0.0, 3.0), "yes: nothing is asked of it");
        assert_eq!(words(1.0, 1.0), "yes, just: nothing to spare");
        assert_eq!(words(0.95, 1.0), "yes, just: less than a tenth to spare");
        assert_eq!(words(1.101, 1.0), "no: 11\u{a0}% over the limit");
        assert_eq!(words(4.0, 1.0), "no: 4 times the limit");
        assert_eq!(words(f64::NAN, 1.0), "ask");
    }

    #[test]
    fn where_a_least_is_needed_it_is_said_how_much_is_short() {
        let given = |given| {
            let source = Source::judgement("");
            verdict(&Check::at_least("a.b", "", given, 1.0, One, source))
        };
        assert_eq!(given(0.5), "no: 50\u{a0}% short");
        assert_eq!(given(0.999), "no: 1\u{a0}% short");
        assert_eq!(given(2.0), "yes, with half to spare");
        assert_eq!(given(0.0), "no");
    }

    #[test]
    fn a_phrase_becomes_a_sentence() {
        assert_eq!(sentence("a usual bag"), "A usual bag.");
        assert_eq!(sentence("Done."), "Done.");
        assert_eq!(sentence(""), "");
    }
}
