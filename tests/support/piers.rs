//! All the piers that fit by brute force: the whole design of every candidate of a plan's lattice, one after another.

use stillground::brief::resolve;
use stillground::candidates::{Candidate, lattice, lattice_of, search};
use stillground::design::design;
use stillground::field::Problems;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::SitePlan;
use stillground::units::cubic_metre;
use stillground::verdict::Says;

/// Ground to dig, and the star's growth at worst.
pub type Place = [f64; 2];

/// Shapes that are kept meanwhile.
const SHAPES: usize = 2048;

/// The front, and how many candidates there were.
///
/// # Errors
/// What is wrong with the plan.
pub fn brute_force(plan: &SitePlan) -> Result<(Vec<Place>, usize), Problems> {
    let shelf = SmallShelf::holding(SHAPES);
    let lattice = lattice_of(plan, &resolve(plan)?);
    let (mut all, mut looked_at) = (Vec::new(), 0);
    for size in lattice.sizes() {
        for column in lattice.columns() {
            looked_at += 1;
            let Some((_, brief)) = lattice::tried(plan, Some(&size), &column) else {
                continue;
            };
            let found = design(&brief, &shelf);
            if found.verdict.build.says == Says::No {
                continue;
            }
            if let Some(growth) = found.verdict.still.star_growth_ratio {
                all.push([cubic_metre::get(found.excavation.volume), growth.worst]);
            }
        }
    }
    Ok((front_of(all), looked_at))
}

/// Those that no other betters in both, the least digging first.
fn front_of(mut all: Vec<Place>) -> Vec<Place> {
    all.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    let mut front: Vec<Place> = Vec::new();
    for place in all {
        if front.last().is_none_or(|last| place[1] < last[1]) {
            front.push(place);
        }
    }
    front
}

/// What the search found beside what brute force found.
#[derive(Debug)]
pub struct Both {
    /// The front of the search.
    pub searched: Vec<Place>,
    /// The front of brute force.
    pub expected: Vec<Place>,
    /// Candidates of the lattice.
    pub size: usize,
    /// Of which the search looked at so many.
    pub looked_at: usize,
    /// And skipped so many.
    pub skipped: usize,
}

/// Searches both ways.
///
/// # Errors
/// What is wrong with the plan.
pub fn both(plan: &SitePlan) -> Result<Both, Problems> {
    let (expected, size) = brute_force(plan)?;
    let (_, found) = search(plan, &SmallShelf::holding(SHAPES), &|_| true)?;
    let place = |one: &Candidate| [one.dig_m3, one.growth()];
    Ok(Both {
        searched: found.front.iter().map(place).collect(),
        expected,
        size,
        looked_at: found.looked_at,
        skipped: found.skipped,
    })
}
