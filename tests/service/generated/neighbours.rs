//! Holds made-up plans against their neighbours and prints each law that one of them breaks, and where something jumps:
//! `cargo run --release -p stillground-tests --no-default-features --example neighbours -- [PLANS] [FIRST] [THREADS] [WALK]`.
//!
//! A plan's sizes are first said as the engine chose them, so that its neighbour differs in one answer alone. Every law is tried
//! with an answer that the dice move, and a few answers of each plan are searched for a jump. Where the neighbour has another
//! block, the ground has to be solved again, so those answers have their turn seldom. One plan in eight is also tried as it is,
//! with the sizes that the engine chooses. One plan in WALK has its walk, none where that is left out: a walk's steps take most of
//! a design's time.

use std::collections::BTreeMap;
use std::process::ExitCode;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Instant;

use stillground::brief::resolve;
use stillground::design::design;
use stillground::field::NumberField;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::SitePlan;
use stillground_tests::generated::{Dice, plan_on};
use stillground_tests::neighbours::{
    Jump, LAWS, Search, broken, figures, is_shaped, movable, pinned,
};

/// Plans on one ground, which share the shape that is solved.
const ON_ONE_GROUND: u64 = 20;
/// Shapes that are kept.
const KEPT_SHAPES: usize = 64;
/// Answers of a plan that are searched for a jump.
const SEARCHED: usize = 8;
/// One plan in so many has an answer searched, and a law tried, by which the block in the ground is another.
const SHAPED_EVERY: u64 = 10;
/// One plan in so many is also tried with the sizes that the engine chooses.
const FREE_EVERY: u64 = 8;
/// A line says how far it is after so many plans.
const LINE_EVERY: u64 = 500;

/// Each trouble, how often it was met, and its first case.
type Found = BTreeMap<String, (u64, String)>;

fn main() -> ExitCode {
    let given: Vec<u64> = std::env::args()
        .skip(1)
        .filter_map(|word| word.parse().ok())
        .collect();
    let plans = given.first().copied().unwrap_or(300);
    let first = given.get(1).copied().unwrap_or(0) / ON_ONE_GROUND;
    let threads = given.get(2).map_or_else(
        || thread::available_parallelism().map_or(1, usize::from),
        |&count| usize::try_from(count).unwrap_or(1).max(1),
    );
    let walk_every = given.get(3).copied().unwrap_or(0);
    let [next, tried, skipped] = [0; 3].map(AtomicU64::new);
    let begun = Instant::now();
    let found: Mutex<Found> = Mutex::default();
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                let shelf = SmallShelf::holding(KEPT_SHAPES);
                loop {
                    let ground = first + next.fetch_add(1, Ordering::Relaxed);
                    if (ground - first) * ON_ONE_GROUND >= plans {
                        return;
                    }
                    for number in ground * ON_ONE_GROUND..(ground + 1) * ON_ONE_GROUND {
                        match one(ground, number, walk_every, &shelf) {
                            Some(troubles) => {
                                if let Ok(mut found) = found.lock() {
                                    note(&mut found, number, troubles);
                                }
                            }
                            None => {
                                skipped.fetch_add(1, Ordering::Relaxed);
                            }
                        }
                        let count = tried.fetch_add(1, Ordering::Relaxed) + 1;
                        if count.is_multiple_of(LINE_EVERY) {
                            println!(
                                "{count} plans after {:.0} s …",
                                begun.elapsed().as_secs_f64()
                            );
                        }
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
        "{} plans, {} of them with sizes that contradict their other answers once all are said; the others held against their \
         neighbours in {:.0} s: {} kinds of trouble",
        tried.into_inner(),
        skipped.into_inner(),
        begun.elapsed().as_secs_f64(),
        found.len()
    );
    if found.is_empty() {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn note(found: &mut Found, number: u64, troubles: Vec<(String, String)>) {
    for (what, how) in troubles {
        let entry = found.entry(what.clone()).or_insert_with(|| {
            println!("plan {number}: {what}: {how}");
            (0, format!("plan {number}: {how}"))
        });
        entry.0 += 1;
    }
}

/// What a plan says against the laws, and where it jumps; none where the sizes that were chosen for it contradict what it says.
fn one(
    ground: u64,
    number: u64,
    walk_every: u64,
    shelf: &SmallShelf,
) -> Option<Vec<(String, String)>> {
    let (mut plan, _) = plan_on(ground, None, number);
    if walk_every == 0 || !number.is_multiple_of(walk_every) {
        plan.floor.walk = Some(Vec::new());
    }
    let brief = resolve(&plan).ok()?;
    let (open, mut dice) = (design(&brief, shelf), Dice::new(!number));
    let said = pinned(&plan, &brief, &open)?;
    let brief = resolve(&said).ok()?;
    let base = design(&brief, shelf);
    let shaped = number.is_multiple_of(SHAPED_EVERY);
    let mut found: Vec<(String, String)> = LAWS
        .iter()
        .filter(|law| shaped || !is_shaped(law.field))
        .flat_map(|law| broken(law, &said, &base, &mut dice, shelf))
        .collect();
    let search = Search {
        plan: &said,
        base: &base,
        watched: figures::figures,
        shelf,
    };
    let easy = chosen(&said, &mut dice, SEARCHED, |field| !is_shaped(&field.path));
    let hard = chosen(&said, &mut dice, usize::from(shaped), |field| {
        is_shaped(&field.path)
    });
    found.extend(
        easy.into_iter()
            .chain(hard)
            .filter_map(|field| search.jump(field, &mut dice))
            .filter(|jump| jump.rule.is_none())
            .map(|jump| told(&jump, "")),
    );
    if number.is_multiple_of(FREE_EVERY) {
        let search = Search {
            plan: &plan,
            base: &open,
            watched: figures::sizes,
            shelf,
        };
        found.extend(
            chosen(&plan, &mut dice, SEARCHED / 2, |_| true)
                .into_iter()
                .filter_map(|field| search.jump(field, &mut dice))
                .filter(|jump| jump.rule.is_none())
                .map(|jump| told(&jump, "as chosen, ")),
        );
    }
    Some(found)
}

/// Some of the answers that the plan gives, as the dice choose.
fn chosen(
    plan: &SitePlan,
    dice: &mut Dice,
    count: usize,
    wanted: impl Fn(&NumberField) -> bool,
) -> Vec<&'static NumberField> {
    let mut said: Vec<&'static NumberField> = movable()
        .filter(|field| wanted(field) && (field.get)(plan).is_some())
        .collect();
    let mut some = Vec::new();
    while some.len() < count && !said.is_empty() {
        some.push(said.swap_remove(dice.below(said.len())));
    }
    some
}

fn told(jump: &Jump, how: &str) -> (String, String) {
    let kind = if jump.sharp { "jumps" } else { "is steep" };
    let ([from, to], [was, is]) = (jump.answers, jump.values);
    (
        format!("{how}{}: {} {kind}", jump.field, jump.figure),
        format!("{from} → {to}: {was} → {is}"),
    )
}
