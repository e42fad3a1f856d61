//! Holds made-up plans against their neighbours and prints each law that one of them breaks, and where something jumps:
//! `cargo run --release -p stillground-tests --no-default-features --example neighbours -- [PLANS] [FIRST]`.

use std::collections::BTreeMap;
use std::process::ExitCode;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Instant;

use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::SmallShelf;
use stillground_tests::generated::plan_on;
use stillground_tests::neighbours::{broken, jumps, pinned};

/// Plans on one ground, which share the shape that is solved.
const ON_ONE_GROUND: u64 = 20;
/// Shapes that are kept.
const KEPT_SHAPES: usize = 64;
/// How far an answer is moved towards the end of its range.
const STEPS: [f64; 2] = [0.02, 0.3];

fn main() -> ExitCode {
    let given: Vec<u64> = std::env::args()
        .skip(1)
        .filter_map(|word| word.parse().ok())
        .collect();
    let plans = given.first().copied().unwrap_or(2_000);
    let first = given.get(1).copied().unwrap_or(0) / ON_ONE_GROUND;
    let (next, begun) = (AtomicU64::new(0), Instant::now());
    let found: Mutex<BTreeMap<String, (u64, String)>> = Mutex::default();
    let tried = AtomicU64::new(0);
    thread::scope(|scope| {
        for _ in 0..thread::available_parallelism().map_or(1, usize::from) {
            scope.spawn(|| {
                let shelf = SmallShelf::holding(KEPT_SHAPES);
                loop {
                    let ground = next.fetch_add(1, Ordering::Relaxed);
                    if ground * ON_ONE_GROUND >= plans {
                        return;
                    }
                    for number in
                        (first + ground) * ON_ONE_GROUND..(first + ground + 1) * ON_ONE_GROUND
                    {
                        for (what, how) in one(first + ground, number, &shelf) {
                            if let Ok(mut found) = found.lock() {
                                let entry = found
                                    .entry(what)
                                    .or_insert((0, format!("plan {number}: {how}")));
                                entry.0 += 1;
                            }
                        }
                        tried.fetch_add(1, Ordering::Relaxed);
                    }
                }
            });
        }
    });
    let found = found.into_inner().unwrap_or_default();
    for (what, (times, first)) in &found {
        println!("{times} × {what}\n      first: {first}");
    }
    println!(
        "{} plans held against their neighbours in {:.0} s, {} kinds of trouble",
        tried.into_inner(),
        begun.elapsed().as_secs_f64(),
        found.len()
    );
    if found.is_empty() {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn one(ground: u64, number: u64, shelf: &SmallShelf) -> Vec<(String, String)> {
    let (plan, _) = plan_on(ground, None, number);
    let Ok(brief) = resolve(&plan) else {
        return Vec::new();
    };
    let plan = pinned(&plan, &design(&brief, shelf));
    let Ok(brief) = resolve(&plan) else {
        return Vec::new();
    };
    let base = design(&brief, shelf);
    let mut found: Vec<(String, String)> = STEPS
        .iter()
        .flat_map(|&step| broken(&plan, &base, step, shelf))
        .map(|said| {
            let (law, how) = said.split_once(": ").unwrap_or((&said, ""));
            let what = how.rsplit_once(": ").map_or("", |(_, figure)| figure);
            let figure = what.split(' ').next().unwrap_or_default();
            (format!("{law}: {figure}"), how.to_owned())
        })
        .collect();
    found.extend(jumps(&plan, &base, shelf));
    found
}
