//! Tries as many made-up plans as one likes, on every processor, prints what is wrong with any of them and which took long:
//! `cargo run --release -p stillground-tests --example generated_plans -- 1000000 [FIRST] [PRINT EVERY]`.
//! With `--no-default-features` nothing is printed and only the engine is built.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::{Duration, Instant};

use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
#[cfg(feature = "service")]
use stillground_tests::generated::sheet_faults;
use stillground_tests::generated::{faults, plan};

/// Without the service there are no sheets to look at.
#[cfg(not(feature = "service"))]
fn sheet_faults(_: &stillground::brief::Brief, _: &stillground::design::Design) -> Vec<String> {
    Vec::new()
}

/// After so many plans a line says how far it is.
const LINE_EVERY: u64 = 50_000;

fn main() -> ExitCode {
    let mut given = std::env::args().skip(1).filter_map(|word| word.parse::<u64>().ok());
    let (count, first, every) = (given.next().unwrap_or(20_000), given.next().unwrap_or(0), given.next().unwrap_or(100));
    let begun = Instant::now();
    let next = AtomicU64::new(first);
    let tally = thread::scope(|scope| {
        let work = || try_until(&next, first + count, every);
        let workers: Vec<_> = (0..thread::available_parallelism().map_or(1, usize::from)).map(|_| scope.spawn(work)).collect();
        workers.into_iter().filter_map(|worker| worker.join().ok()).fold(Tally::default(), Tally::with)
    });
    println!(
        "{count} plans in {:.0} s: {} planned, {} refused in words, {} wrong; {} printed; the longest took {:.0} ms (plan {})",
        begun.elapsed().as_secs_f64(),
        tally.planned,
        tally.refused,
        tally.wrong,
        tally.printed,
        tally.longest.1.as_secs_f64() * 1000.0,
        tally.longest.0
    );
    if tally.wrong == 0 && tally.planned + tally.refused == count { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// Takes one plan after another, while others do the same.
fn try_until(next: &AtomicU64, end: u64, every: u64) -> Tally {
    let mut tally = Tally::default();
    loop {
        let seed = next.fetch_add(1, Ordering::Relaxed);
        if seed >= end {
            return tally;
        }
        if seed.is_multiple_of(LINE_EVERY) {
            println!("plan {seed} …");
        }
        let printed = cfg!(feature = "service") && seed.is_multiple_of(every);
        match catch_unwind(AssertUnwindSafe(|| one(seed, printed))) {
            Ok(Some((wrong, took))) => tally.add(seed, wrong, took, printed),
            Ok(None) => tally.refused += 1,
            Err(_) => tally.add(seed, vec!["it panicked".to_owned()], Duration::ZERO, false),
        }
    }
}

#[derive(Default)]
struct Tally {
    planned: u64,
    refused: u64,
    wrong: u64,
    printed: u64,
    longest: (u64, Duration),
}

impl Tally {
    fn add(&mut self, seed: u64, wrong: Vec<String>, took: Duration, printed: bool) {
        self.planned += 1;
        self.printed += u64::from(printed);
        self.wrong += u64::from(!wrong.is_empty());
        if took > self.longest.1 {
            self.longest = (seed, took);
        }
        for fault in wrong {
            println!("plan {seed}: {fault}");
        }
    }

    fn with(self, other: Self) -> Self {
        Self {
            planned: self.planned + other.planned,
            refused: self.refused + other.refused,
            wrong: self.wrong + other.wrong,
            printed: self.printed + other.printed,
            longest: if other.longest.1 > self.longest.1 { other.longest } else { self.longest },
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
