//! Tries as many made-up plans as one likes, prints what is wrong with any of them and which took long:
//! `cargo run -p stillground-tests --example generated_plans -- COUNT [FIRST] [PRINT EVERY]`.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;
use std::time::{Duration, Instant};

use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground_tests::generated::{faults, plan, sheet_faults};

fn main() -> ExitCode {
    let mut given = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (count, first, every) = (given.next().unwrap_or(20_000), given.next().unwrap_or(0), given.next().unwrap_or(100));
    let mut tally = Tally::default();
    for seed in first..first + count {
        let printed = tally.planned.is_multiple_of(every);
        match catch_unwind(AssertUnwindSafe(|| one(seed, printed))) {
            Ok(Some((wrong, took))) => tally.add(seed, wrong, took),
            Ok(None) => {}
            Err(_) => tally.add(seed, vec!["it panicked".to_owned()], Duration::ZERO),
        }
    }
    println!(
        "{count} plans, {} of them planned, {} wrong; the longest took {:.0} ms (plan {})",
        tally.planned,
        tally.wrong,
        tally.longest.1.as_secs_f64() * 1000.0,
        tally.longest.0
    );
    if tally.wrong == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

#[derive(Default)]
struct Tally {
    planned: u64,
    wrong: u64,
    longest: (u64, Duration),
}

impl Tally {
    fn add(&mut self, seed: u64, wrong: Vec<String>, took: Duration) {
        self.planned += 1;
        self.wrong += u64::from(!wrong.is_empty());
        if took > self.longest.1 {
            self.longest = (seed, took);
        }
        for fault in wrong {
            println!("plan {seed}: {fault}");
        }
    }
}

fn one(seed: u64, printed: bool) -> Option<(Vec<String>, Duration)> {
    let brief = resolve(&plan(seed)).ok()?;
    let begun = Instant::now();
    let found = design(&brief, &NoShelf);
    let took = begun.elapsed();
    let mut wrong = faults(&found);
    if printed {
        wrong.extend(sheet_faults(&brief, &found));
    }
    Some((wrong, took))
}
