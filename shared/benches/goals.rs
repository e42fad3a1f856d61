//! What the planner promises of its speed, beside a yardstick: `cargo bench -p stillground --bench goals`.
//!
//! A figure in milliseconds means little on another machine or beside other work. Each is therefore taken in turn with a
//! dense system of equations of [`YARDSTICK`] unknowns that a public library solves, and told as a ratio to it: the least of
//! all runs over the least of the yardstick's. One core. Where the system tells how long a thread was on a processor, that is
//! taken, so that waiting for one beside other work does not count.
#![allow(
    clippy::expect_used,
    clippy::disallowed_methods,
    reason = "a bench that cannot start says so by stopping, and it alone looks at a clock"
)]

use std::hint::black_box;
use std::time::Instant;

use nalgebra::{DMatrix, DVector};
use stillground::brief::{Brief, resolve};
use stillground::decided::fitted;
use stillground::design::design;
use stillground::halfspace::{NoShelf, SmallShelf};
use stillground::proof::chance::Chance;
use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::{Commissioning, Direction, Knock, Lean, Pull, State};
use stillground::stages::{block, floor, ground, ground_stiffness, loads, motion, pier, room};
use stillground::trace::{self, Asked};

/// The planner's own: the system's gives the memory of a solved block back and is asked for it again each time.
#[global_allocator]
static MEMORY: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// Unknowns of the yardstick's equations.
const YARDSTICK: usize = 300;

/// The system tells it in steps of some milliseconds, so that a shorter run is taken by the clock.
const TOLD_MS: f64 = 40.0;

/// How long this thread was on a processor, where the system tells.
fn on_processor_ms() -> Option<f64> {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    Some(told.split_whitespace().next()?.parse::<f64>().ok()? / 1e6)
}

/// Runs both in turn and prints the least of each, the ratio, and the goal.
fn held(name: &str, goal_ms: f64, runs: usize, mut run: impl FnMut()) {
    let matrix = DMatrix::from_fn(YARDSTICK, YARDSTICK, |i, j| {
        1.0 / (1.0 + i.abs_diff(j) as f64) + if i == j { 4.0 } else { 0.0 }
    });
    let right = DVector::from_element(YARDSTICK, 1.0);
    let least = |run: &mut dyn FnMut()| {
        let (began, on) = (Instant::now(), on_processor_ms());
        run();
        let by_the_clock = 1e3 * began.elapsed().as_secs_f64();
        match on.zip(on_processor_ms()) {
            Some((before, after)) if by_the_clock > TOLD_MS => after - before,
            _ => by_the_clock,
        }
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
    let record = minute();
    held("a trace of a minute at 200 Hz", 300.0, 20, || {
        let asked = Asked::default();
        black_box(trace::read(&record, &asked).expect("it is a table"));
    });
    let (plan, brief) = measured();
    let design = design(&brief, &NoShelf);
    held(
        "a fit of ten measurements, nothing solved",
        1000.0,
        5,
        || {
            black_box(fitted(&plan, &brief, &design, &NoShelf));
        },
    );
}

/// A minute of a telephone's three axes, knocked at six times.
fn minute() -> Vec<u8> {
    let mut luck = Chance::new(1);
    let mut text = String::from("time,ax,ay,az\n");
    for i in 0..12_000 {
        let t = f64::from(i) / 200.0;
        let since = (t - 3.0) % 9.0;
        let swing = if t > 3.0 {
            (-0.9 * since).exp() * (102.5 * since).cos()
        } else {
            0.0
        };
        let mut noise = || 0.012 * luck.normal();
        let [x, y, z] = [
            0.6 * swing + noise(),
            0.05 * swing + noise(),
            9.81 + noise(),
        ];
        text.push_str(&format!("{t:.3},{x:.5},{y:.5},{z:.5}\n"));
    }
    text.into_bytes()
}

/// A pier with ten measurements.
fn measured() -> (SitePlan, Brief) {
    let knock = |direction, with_mount, frequency_hz| Knock {
        direction,
        with_mount,
        frequency_hz,
        frequency_sd_hz: Some(0.003 * frequency_hz),
        damping_ratio: None,
        mode: None,
    };
    let lean = |x_m: f64, tilt_arcsec| Lean {
        x_m,
        y_m: 0.0,
        mass_kg: 80.0,
        tilt_arcsec,
        tilt_sd_arcsec: Some(0.2 * tilt_arcsec),
        bearing_deg: None,
    };
    let pull = |direction, height_m, force_n, tilt_arcsec| Pull {
        height_m,
        force_n,
        direction,
        tilt_arcsec,
        tilt_sd_arcsec: Some(0.05 * tilt_arcsec),
    };
    let mut plan = SitePlan::unknown();
    plan.state = Some(State::Standing);
    let mut found = Commissioning::default();
    let (x, y) = (Direction::X, Direction::Y);
    found.knocks = vec![
        knock(x, true, 16.0),
        knock(y, true, 16.2),
        knock(x, false, 50.0),
        knock(y, false, 50.5),
    ];
    found.leans = vec![lean(1.0, 0.4), lean(1.4, 0.25), lean(-1.0, 0.42)];
    found.pulls = vec![
        pull(x, 1.2, 200.0, 18.0),
        pull(y, 1.2, 200.0, 18.5),
        pull(x, 1.5, 50.0, 20.0),
    ];
    plan.commissioning = found;
    let brief = resolve(&plan).expect("the plan is valid");
    (plan, brief)
}
