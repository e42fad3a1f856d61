//! How long all the piers that fit take on one core: `cargo bench -p stillground --bench options`.
//!
//! Goals: 5,000 candidates of the lattice in 2 s cold, 0.3 s when the shapes are kept, and a twentieth of the time that brute
//! force by the whole design takes at equal answers.
#![allow(
    clippy::expect_used,
    missing_docs,
    reason = "a bench that cannot start says so by stopping"
)]

use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::{NoShelf, SmallShelf};
use stillground::options::{lattice, lattice_of, search};
use stillground::site_plan::SitePlan;
use stillground::site_plan::pier::Fill;

fn main() {
    divan::main();
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
        .bench_local(|| search(&plan, &NoShelf, &|| true));
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn small_lattice_warm(bencher: divan::Bencher<'_, '_>) {
    let (plan, shelf) = (small(), SmallShelf::holding(64));
    let _ = search(&plan, &shelf, &|| true);
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &shelf, &|| true));
}

#[divan::bench(sample_count = 2, sample_size = 1)]
fn small_lattice_by_brute_force(bencher: divan::Bencher<'_, '_>) {
    let plan = small();
    let all = lattice_of(&plan, &resolve(&plan).expect("the plan is valid"));
    bencher
        .counter(divan::counter::ItemsCount::new(all.size()))
        .bench_local(|| {
            let shelf = SmallShelf::holding(64);
            all.sizes()
                .flat_map(|size| all.columns().map(move |column| (size, column)))
                .filter_map(|(size, column)| {
                    let (_, brief) = lattice::tried(&plan, Some(&size), &column)?;
                    design(&brief, &shelf).verdict.still.star_growth_ratio
                })
                .map(|growth| growth.worst)
                .fold(f64::INFINITY, f64::min)
        });
}

/// Everything that a plan leaves open of which nothing is known.
#[divan::bench(sample_count = 1, sample_size = 1)]
fn everything_open_cold(bencher: divan::Bencher<'_, '_>) {
    let plan = SitePlan::unknown();
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &NoShelf, &|| true));
}

#[divan::bench(sample_count = 1, sample_size = 1)]
fn everything_open_warm(bencher: divan::Bencher<'_, '_>) {
    let (plan, shelf) = (SitePlan::unknown(), SmallShelf::holding(2048));
    let _ = search(&plan, &shelf, &|| true);
    bencher
        .counter(divan::counter::ItemsCount::new(size(&plan)))
        .bench_local(|| search(&plan, &shelf, &|| true));
}
