//! How long the engine takes on one core: `cargo bench -p stillground`.
//!
//! What is promised of it, beside a yardstick: `--bench goals`.
#![allow(
    clippy::expect_used,
    missing_docs,
    reason = "a bench that cannot start says so by stopping"
)]

use stillground::brief::{Brief, resolve};
use stillground::decided::design_plan;
use stillground::design::design;
use stillground::halfspace::{NoShelf, SmallShelf};
use stillground::site_plan::SitePlan;

fn main() {
    divan::main();
}

/// A plan whose walk takes twenty seconds.
fn long_walk() -> SitePlan {
    let mut plan = SitePlan::unknown();
    plan.floor.walk = Some(vec![
        [-5.0, -1.2],
        [1.2, -1.2],
        [1.2, 5.0],
        [1.2, -1.2],
        [0.0, -1.2],
    ]);
    plan
}

fn brief(plan: &SitePlan) -> Brief {
    resolve(plan).expect("the plan is valid")
}

#[divan::bench]
fn stages_warm(bencher: divan::Bencher<'_, '_>) {
    let (brief, shelf) = (brief(&SitePlan::unknown()), SmallShelf::holding(8));
    let _ = design(&brief, &shelf);
    bencher.bench_local(|| design(&brief, &shelf));
}

#[divan::bench]
fn stages_warm_walk_of_twenty_seconds(bencher: divan::Bencher<'_, '_>) {
    let (brief, shelf) = (brief(&long_walk()), SmallShelf::holding(8));
    let _ = design(&brief, &shelf);
    bencher.bench_local(|| design(&brief, &shelf));
}

/// Growth of everything: modes in three grounds with the mount and without, a walk of twenty seconds in two of them, wind,
/// people, a door, and what each costs the star's width and peak. Goal: 3 ms.
#[divan::bench]
fn growth_of_everything_through_a_walk_of_twenty_seconds(bencher: divan::Bencher<'_, '_>) {
    use stillground::stages::{block, floor, ground, ground_stiffness, loads, motion, pier, room};
    let (brief, shelf) = (brief(&long_walk()), SmallShelf::holding(8));
    let ground = ground::stage(&brief).value;
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room::room(&brief, &ground), &loads).value;
    let stiffness = ground_stiffness::stage(&brief, &ground, &block, &shelf).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    let floor = floor::stage(&brief, &ground, &block, &pier).value;
    bencher
        .bench_local(|| motion::disturbances(&brief, &ground, &block, &stiffness, &pier, &floor));
}

/// The rule alone: places and star of twenty seconds of a walk. Goal: well within the 2 ms of the star through a walk.
#[divan::bench]
fn width_of_a_star_through_twenty_seconds(bencher: divan::Bencher<'_, '_>) {
    use stillground::rules::image_motion::{fit, places::Places};
    let place = |i: u32| {
        let t = 0.002 * f64::from(i);
        [
            0.4 * (2.0 * t).sin() * (0.15 * t).cos(),
            0.3 * (0.15 * t).sin(),
        ]
    };
    let timed = (0..10_000).map(|i| (0.002, place(i)));
    bencher.bench_local(|| fit::star(2.0, [0.1, 0.0], &Places::gather(2.0, timed.clone())));
}

#[divan::bench]
fn plan_with_improvements_warm(bencher: divan::Bencher<'_, '_>) {
    let (plan, shelf) = (SitePlan::unknown(), SmallShelf::holding(8));
    let _ = design_plan(&plan, &shelf);
    bencher.bench_local(|| design_plan(&plan, &shelf));
}

#[divan::bench]
fn plan_with_improvements_cold(bencher: divan::Bencher<'_, '_>) {
    let plan = SitePlan::unknown();
    bencher.bench_local(|| design_plan(&plan, &NoShelf));
}
