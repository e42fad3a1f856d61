//! How long all the piers that fit take on one core: `cargo bench -p stillground --bench options`.
//!
//! Goals: 5,000 candidates of the lattice in 2 s cold, 0.3 s when the shapes are kept, and a twentieth of the time that brute
//! force by the whole design takes at equal answers.
#![allow(
    clippy::expect_used,
    clippy::disallowed_methods,
    missing_docs,
    reason = "a bench that cannot start says so by stopping, and it alone looks at a clock"
)]

use std::time::Instant;

use stillground::brief::resolve;
use stillground::candidates::{Candidate, Lattice, lattice, lattice_of, search};
use stillground::design::design;
use stillground::halfspace::{NoShelf, SmallShelf};
use stillground::site_plan::SitePlan;
use stillground::site_plan::pier::Fill;
use stillground::verdict::Says;

fn main() {
    ratio();
    divan::main();
}

/// Some 5,000 candidates: one square block at fourteen depths with every column that a plan leaves open.
fn five_thousand() -> SitePlan {
    let mut plan = SitePlan::unknown();
    (plan.block.length_m, plan.block.width_m) = (Some(1.0), Some(1.0));
    plan.excavation.max_depth_m = Some(0.95);
    plan
}

/// The search beside brute force in the same run, whose ratio lasts longer than either figure.
fn ratio() {
    let plan = five_thousand();
    let began = Instant::now();
    let shelf = SmallShelf::holding(256);
    let (all, found) = search(&plan, &shelf, &|_| true).expect("the plan is valid");
    let cold = began.elapsed();
    let began = Instant::now();
    let _ = search(&plan, &shelf, &|_| true);
    let warm = began.elapsed();
    let began = Instant::now();
    let best = brute_force(&plan, &all);
    let brute = began.elapsed();
    let least = found.front.last().map(Candidate::growth);
    assert_eq!(least, Some(best), "the stillest is the same by both");
    println!(
        "{} candidates: {cold:.2?} cold (goal 2 s), {warm:.2?} with the shapes kept (goal 0.3 s), {brute:.2?} by brute force: {:.0} \
         times as long (goal 20)",
        all.size(),
        brute.as_secs_f64() / cold.as_secs_f64()
    );
}

/// Least growth of those that may be built, by the whole design of every candidate.
fn brute_force(plan: &SitePlan, all: &Lattice) -> f64 {
    let shelf = SmallShelf::holding(256);
    all.sizes()
        .flat_map(|size| all.columns().map(move |column| (size, column)))
        .filter_map(|(size, column)| {
            let (_, brief) = lattice::tried(plan, Some(&size), &column)?;
            let verdict = design(&brief, &shelf).verdict;
            (verdict.build.says != Says::No).then_some(verdict.still.star_growth_ratio?)
        })
        .map(|growth| growth.worst)
        .fold(f64::INFINITY, f64::min)
}

/// A lattice of 160 candidates: ten depths of one square block, eight tubes, nuts and grout.
fn small() -> SitePlan {
    let mut plan = SitePlan::unknown();
    plan.site.frost_depth_m = Some(0.5);
    (plan.block.length_m, plan.block.width_m) = (Some(1.0), Some(1.0));
    plan.excavation.max_depth_m = Some(0.75);
    plan.pier.fill = Some(Fill::None);
    plan.pier.wall_mm = Some(8.0);
    plan
}

fn size(plan: &SitePlan) -> usize {
    lattice_of(plan, &resolve(plan).expect("the plan is valid")).size()
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn small_lattice_cold(bencher: divan::Bencher<'_, '_>) {
    let plan = small();
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &NoShelf, &|_| true));
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn small_lattice_warm(bencher: divan::Bencher<'_, '_>) {
    let (plan, shelf) = (small(), SmallShelf::holding(64));
    let _ = search(&plan, &shelf, &|_| true);
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &shelf, &|_| true));
}

/// Everything that a plan leaves open of which nothing is known.
#[divan::bench(sample_count = 1, sample_size = 1)]
fn everything_open_cold(bencher: divan::Bencher<'_, '_>) {
    let plan = SitePlan::unknown();
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &NoShelf, &|_| true));
}

#[divan::bench(sample_count = 1, sample_size = 1)]
fn everything_open_warm(bencher: divan::Bencher<'_, '_>) {
    let (plan, shelf) = (SitePlan::unknown(), SmallShelf::holding(2048));
    let _ = search(&plan, &shelf, &|_| true);
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &shelf, &|_| true));
}
