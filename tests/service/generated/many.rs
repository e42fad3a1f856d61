//! Puts as many made-up plans as one likes through the engine and prints what is wrong with any of them:
//! `cargo run --release -p stillground-tests --example generated_plans -- [PLANS] [FIRST] [PRINT EVERY] [THREADS] [ON ONE GROUND]`.
//!
//! Nearly all of a design's time goes into solving the shape of the block in the ground. A hundred plans therefore share a
//! ground, a pit and a block, differ in all other answers, and find the shape on a shelf, as they do in the service. The first
//! of them has the block that the engine chooses, where the answers leave it open, and the others have that block too. With
//! `--no-default-features` nothing is printed on paper and only the engine is built.

mod tally;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Instant;

use stillground::brief::resolve;
use stillground::decided::design_decided;
use stillground::design::{Design, design};
use stillground::halfspace::{Shape, Shelf, SmallShelf, Solved};
use stillground::site_plan::SitePlan;
#[cfg(feature = "service")]
use stillground_tests::generated::sheet_faults;
use stillground_tests::generated::{faults, plan_on, shown_faults};

use tally::Tally;

/// Without the service there are no sheets to look at.
#[cfg(not(feature = "service"))]
fn sheet_faults(_: &stillground::brief::Brief, _: &stillground::design::Design) -> Vec<String> {
    Vec::new()
}

/// Plans on one ground where nothing else is said.
const ON_ONE_GROUND: u64 = 100;
/// Shapes that are kept: a plan may need a few, for layers of its ground.
const KEPT_SHAPES: usize = 16;
/// A line says how far it is after so many grounds.
const LINE_EVERY: u64 = 100;

/// What was asked for.
struct Asked {
    plans: u64,
    first: u64,
    /// One plan in so many is also searched for improvements, and drawn and printed.
    every: u64,
    threads: usize,
    /// Plans on one ground: the more, the less is solved.
    on_one_ground: u64,
}

fn main() -> ExitCode {
    let given: Vec<u64> = std::env::args()
        .skip(1)
        .filter_map(|word| word.parse().ok())
        .collect();
    let all = thread::available_parallelism().map_or(1, usize::from);
    let or = |place: usize, other: u64| given.get(place).copied().unwrap_or(other);
    let on_one_ground = or(4, ON_ONE_GROUND).max(1);
    let asked = Asked {
        plans: or(0, 20_000).div_ceil(on_one_ground) * on_one_ground,
        first: or(1, 0),
        every: or(2, 500).max(1),
        threads: given
            .get(3)
            .and_then(|&count| usize::try_from(count).ok())
            .unwrap_or(all)
            .max(1),
        on_one_ground,
    };
    println!(
        "{} plans from number {}: {} grounds, each with its pit and block, {on_one_ground} plans on each that differ in all else; one plan in \
         {} also with all that its design keeps to itself, what would help it{}",
        asked.plans,
        asked.first,
        asked.plans / asked.on_one_ground,
        asked.every,
        if cfg!(feature = "service") {
            " and its sheets"
        } else {
            ""
        }
    );
    let (begun, next) = (Instant::now(), AtomicU64::new(0));
    let tally = thread::scope(|scope| {
        let workers: Vec<_> = (0..asked.threads)
            .map(|_| scope.spawn(|| work(&asked, &next, begun)))
            .collect();
        workers
            .into_iter()
            .filter_map(|worker| worker.join().ok())
            .fold(Tally::default(), Tally::with)
    });
    println!("{}", tally.said(begun.elapsed()));
    if tally.is_clean(asked.plans) {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

/// Takes one ground after another, while others do the same.
fn work(asked: &Asked, next: &AtomicU64, begun: Instant) -> Tally {
    let (mut tally, shelf) = (
        Tally::default(),
        Counting {
            kept: SmallShelf::holding(KEPT_SHAPES),
            solved: AtomicU64::new(0),
        },
    );
    loop {
        let ground = next.fetch_add(1, Ordering::Relaxed);
        if ground >= asked.plans / asked.on_one_ground {
            tally.solved = shelf.solved.load(Ordering::Relaxed);
            return tally;
        }
        if ground > 0 && ground.is_multiple_of(LINE_EVERY) {
            println!(
                "{} plans after {:.0} s …",
                ground * asked.on_one_ground,
                begun.elapsed().as_secs_f64()
            );
        }
        let mut sides_m = None;
        for number in (asked.first + ground * asked.on_one_ground..)
            .take(usize::try_from(asked.on_one_ground).unwrap_or(1))
        {
            tally.number(number, || {
                one(
                    number / asked.on_one_ground,
                    number,
                    &mut sides_m,
                    number.is_multiple_of(asked.every),
                    &shelf,
                )
            });
        }
    }
}

/// What was found of a plan.
struct Tried {
    plan: SitePlan,
    refusals: Vec<stillground::field::Problem>,
    wrong: Vec<String>,
    looked_closer: bool,
}

fn one(
    ground: u64,
    number: u64,
    sides_m: &mut Option<[f64; 3]>,
    closer: bool,
    shelf: &dyn Shelf,
) -> Tried {
    let (plan, refusals) = plan_on(ground, *sides_m, number);
    let tried = catch_unwind(AssertUnwindSafe(|| match resolve(&plan) {
        Err(problems) => vec![format!("it is refused: {problems:?}")],
        Ok(brief) => {
            let found = if closer {
                design_decided(&plan, &brief, shelf)
            } else {
                design(&brief, shelf)
            };
            sides_m.get_or_insert_with(|| sides(&found));
            if closer {
                [faults(&found), sheet_faults(&brief, &found)].concat()
            } else {
                shown_faults(&found)
            }
        }
    }));
    let wrong = tried.unwrap_or_else(|_| vec!["it panicked".to_owned()]);
    Tried {
        plan,
        refusals,
        wrong,
        looked_closer: closer,
    }
}

fn sides(found: &Design) -> [f64; 3] {
    [found.block.length, found.block.width, found.block.depth].map(stillground::units::metre::get)
}

/// Keeps the last few solutions and counts those that had to be solved.
struct Counting {
    kept: SmallShelf,
    solved: AtomicU64,
}

impl Shelf for Counting {
    fn get(&self, shape: &Shape) -> Option<Arc<Solved>> {
        self.kept.get(shape)
    }

    fn put(&self, shape: &Shape, solved: Arc<Solved>) {
        self.solved.fetch_add(1, Ordering::Relaxed);
        self.kept.put(shape, solved);
    }
}
