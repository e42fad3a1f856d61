//! How long the half-space takes on one core: a new shape, a kept one, a map of the floor, a whole design.
//!
//! Goals: full contact 20 ms, free walls 60 ms, kept 0.2 ms, map of 61 by 61 20 ms, design without a kept shape 30 ms.
#![allow(
    clippy::unwrap_used,
    missing_docs,
    reason = "a benchmark fails by panicking and explains itself by its names"
)]

use divan::{Bencher, black_box};
use stillground::decided::design_plan;
use stillground::halfspace::{NoShelf, Shape, SmallShelf, Solved, solve, solve::quick, solved};
use stillground::site_plan::SitePlan;

fn main() {
    divan::main();
}

fn cube(from: f64, to: f64) -> Shape {
    Shape {
        length_m: 1.0,
        width_m: 1.0,
        depth_m: 1.0,
        contact_from_m: from,
        contact_to_m: to,
        poisson_ratio: 0.35,
    }
}

fn oblong(from: f64, to: f64) -> Shape {
    Shape {
        length_m: 1.5,
        width_m: 1.0,
        depth_m: 0.9,
        contact_from_m: from,
        contact_to_m: to,
        poisson_ratio: 0.3,
    }
}

#[divan::bench]
fn full_contact_cube() {
    solve(black_box(&cube(0.0, 1.0))).unwrap();
}

#[divan::bench]
fn full_contact_oblong() {
    solve(black_box(&oblong(0.0, 0.9))).unwrap();
}

#[divan::bench]
fn half_contact_cube() {
    solve(black_box(&cube(0.5, 1.0))).unwrap();
}

#[divan::bench]
fn half_contact_oblong() {
    solve(black_box(&oblong(0.4, 0.9))).unwrap();
}

#[divan::bench]
fn no_contact_cube() {
    solve(black_box(&cube(1.0, 1.0))).unwrap();
}

#[divan::bench]
fn no_contact_quick() {
    quick(black_box(&cube(1.0, 1.0))).unwrap();
}

#[divan::bench]
fn kept(bencher: Bencher) {
    let shelf = SmallShelf::holding(8);
    solved(&cube(0.0, 1.0), &shelf).unwrap();
    bencher.bench_local(|| solved(black_box(&cube(0.0, 1.0)), &shelf).unwrap());
}

/// 61 by 61 places about the axis. The same one again is looked up; afresh none has been worked out.
fn map(solved: &Solved) -> f64 {
    let places = || (-30..=30).map(|i| f64::from(i) * 0.05);
    places()
        .flat_map(|x| places().map(move |y| (x, y)))
        .map(|(x, y)| solved.under_weight(x, y)[4])
        .sum()
}

#[divan::bench(args = [true, false])]
fn map_of_61_by_61_afresh(bencher: Bencher, bonded: bool) {
    let shape = cube(if bonded { 0.0 } else { 1.0 }, 1.0);
    bencher
        .with_inputs(|| solve(&shape).unwrap())
        .bench_local_refs(|solved| map(solved));
}

#[divan::bench(args = [true, false])]
fn map_of_61_by_61_again(bencher: Bencher, bonded: bool) {
    let solved = solve(&cube(if bonded { 0.0 } else { 1.0 }, 1.0)).unwrap();
    bencher.bench_local(|| map(&solved));
}

#[divan::bench]
fn whole_design_cold() {
    design_plan(black_box(&SitePlan::unknown()), &NoShelf).unwrap();
}

#[divan::bench]
fn whole_design_kept(bencher: Bencher) {
    let shelf = SmallShelf::holding(8);
    design_plan(&SitePlan::unknown(), &shelf).unwrap();
    bencher.bench_local(|| design_plan(black_box(&SitePlan::unknown()), &shelf).unwrap());
}
