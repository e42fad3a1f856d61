//! What came of made-up plans, counted.

use std::collections::{BTreeMap, HashSet};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::time::{Duration, Instant};

use super::Tried;

/// Counts over plans.
#[derive(Default)]
pub struct Tally {
    designed: u64,
    contradicted: u64,
    wrong: u64,
    looked_closer: u64,
    /// Shapes that had to be solved.
    pub solved: u64,
    plans: HashSet<u64>,
    /// Each sentence with which answers were refused, its figures left out, and how often.
    refusals: BTreeMap<String, u64>,
    longest: (u64, Duration),
}

impl Tally {
    /// Tries a plan and counts it.
    pub fn number(&mut self, number: u64, trial: impl FnOnce() -> Tried) {
        let begun = Instant::now();
        let tried = trial();
        let took = begun.elapsed();
        if took > self.longest.1 {
            self.longest = (number, took);
        }
        self.designed += 1;
        self.contradicted += u64::from(!tried.refusals.is_empty());
        self.looked_closer += u64::from(tried.looked_closer);
        self.wrong += u64::from(!tried.wrong.is_empty());
        let mut digest = DefaultHasher::new();
        format!("{:?}", tried.plan).hash(&mut digest);
        self.plans.insert(digest.finish());
        for problem in tried.refusals {
            *self
                .refusals
                .entry(without_figures(&problem.said))
                .or_default() += 1;
        }
        for fault in tried.wrong {
            println!("plan {number}: {fault}");
        }
    }

    /// Both counts together.
    pub fn with(mut self, other: Self) -> Self {
        self.plans.extend(other.plans);
        for (said, count) in other.refusals {
            *self.refusals.entry(said).or_default() += count;
        }
        Self {
            designed: self.designed + other.designed,
            contradicted: self.contradicted + other.contradicted,
            wrong: self.wrong + other.wrong,
            looked_closer: self.looked_closer + other.looked_closer,
            solved: self.solved + other.solved,
            plans: self.plans,
            refusals: self.refusals,
            longest: if other.longest.1 > self.longest.1 {
                other.longest
            } else {
                self.longest
            },
        }
    }

    /// Nothing wrong with any of so many plans.
    pub const fn is_clean(&self, plans: u64) -> bool {
        self.wrong == 0 && self.designed == plans
    }

    /// The whole count in words.
    pub fn said(&self, took: Duration) -> String {
        format!(
            "{} plans, {} of them different, in {:.0} s: {} wrong (a panic, a figure that is none, a size below nothing, an empty list)\n\
             {} shapes of block solved; {} plans looked at closer; the longest took {:.0} ms (plan {})\n\
             {} plans held contradictory answers, which were refused in words and taken back; {} sentences refused them",
            self.designed,
            self.plans.len(),
            took.as_secs_f64(),
            self.wrong,
            self.solved,
            self.looked_closer,
            self.longest.1.as_secs_f64() * 1000.0,
            self.longest.0,
            self.contradicted,
            self.refusals.len()
        )
    }
}

/// A sentence without its figures, so that two of one kind are one.
fn without_figures(said: &str) -> String {
    said.chars()
        .filter(|letter| !letter.is_ascii_digit())
        .collect()
}
