//! What the planner promises of its speed, beside a yardstick: `cargo bench -p stillground --bench goals`.
//!
//! A figure in milliseconds means little on another machine or beside other work. Each is therefore taken in turn with a
//! dense system of equations of [`YARDSTICK`] unknowns that a public library solves, and told as a ratio to it: the least of
//! all runs over the least of the yardstick's. One core.
#![allow(
    clippy::expect_used,
    clippy::disallowed_methods,
    reason = "a bench that cannot start says so by stopping, and it alone looks at a clock"
)]

use std::hint::black_box;
use std::time::Instant;

use nalgebra::{DMatrix, DVector};
use stillground::brief::{Brief, resolve};
use stillground::design::design;
use stillground::halfspace::{NoShelf, SmallShelf};
use stillground::site_plan::SitePlan;
use stillground::stages::{block, floor, ground, ground_stiffness, loads, motion, pier, room};

/// The planner's own: the system's gives the memory of a solved block back and is asked for it again each time.
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Unknowns of the yardstick's equations.
const YARDSTICK: usize = 300;

/// Runs both in turn and prints the least of each, the ratio, and the goal.
fn held(name: &str, goal_ms: f64, runs: usize, mut run: impl FnMut()) {
    let matrix = DMatrix::from_fn(YARDSTICK, YARDSTICK, |i, j| {
        1.0 / (1.0 + i.abs_diff(j) as f64) + if i == j { 4.0 } else { 0.0 }
    });
    let right = DVector::from_element(YARDSTICK, 1.0);
    let least = |run: &mut dyn FnMut()| {
        let began = Instant::now();
        run();
        1e3 * began.elapsed().as_secs_f64()
    };
    let (mut ours, mut theirs) = (f64::INFINITY, f64::INFINITY);
    for _ in 0..runs {
        theirs = theirs.min(least(&mut || {
            black_box(matrix.clone().lu().solve(&right));
        }));
        ours = ours.min(least(&mut run));
    }
    println!(
        "{name:44} {ours:7.2} ms, goal {goal_ms:4.0} ms; {:6.2} times the yardstick of {theirs:.2} ms",
        ours / theirs
    );
}

/// A plan whose walk takes twenty seconds.
fn long_walk() -> Brief {
    let mut plan = SitePlan::unknown();
    plan.floor.walk = Some(vec![
        [-5.0, -1.2],
        [1.2, -1.2],
        [1.2, 5.0],
        [1.2, -1.2],
        [0.0, -1.2],
    ]);
    resolve(&plan).expect("the plan is valid")
}

fn main() {
    let (brief, shelf) = (long_walk(), SmallShelf::holding(8));
    let ground = ground::stage(&brief).value;
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room::room(&brief, &ground), &loads).value;
    let stiffness = ground_stiffness::stage(&brief, &ground, &block, &shelf).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    let floor = floor::stage(&brief, &ground, &block, &pier).value;
    let rigid = motion::system::Mounted::Rigidly;
    let system = motion::system::find(&brief, &ground, &block, &stiffness, &pier, rigid)
        .expect("the ground is known");
    let influence = stiffness.influence().expect("the ground is solved");
    held(
        "the star through a walk of twenty seconds",
        2.0,
        200,
        || {
            black_box(motion::walk_in_short(&brief, &floor, &system, influence));
        },
    );
    held("growth of everything through that walk", 3.0, 200, || {
        black_box(motion::disturbances(
            &brief, &ground, &block, &stiffness, &pier, &floor,
        ));
    });
    let short = resolve(&SitePlan::unknown()).expect("the plan is valid");
    black_box(design(&short, &shelf));
    held("a whole design, its block solved before", 3.0, 200, || {
        black_box(design(&short, &shelf));
    });
    held("a whole design, nothing solved before", 30.0, 40, || {
        black_box(design(&short, &NoShelf));
    });
}
