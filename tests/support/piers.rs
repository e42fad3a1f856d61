//! All the piers that fit by brute force: the whole design of every candidate of a plan's lattice, one after another.

use stillground::brief::resolve;
use stillground::candidates::search::Search;
use stillground::candidates::{Candidate, lattice, lattice_of, search};
use stillground::design::design;
use stillground::field::Problems;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::SitePlan;
use stillground::site_plan::prices::Price;
use stillground::stages::costs::Money;
use stillground::units::cubic_metre;
use stillground::verdict::Says;

/// Ground to dig or what it costs, and the star's growth at worst.
pub type Place = [f64; 2];

/// Shapes that are kept meanwhile.
const SHAPES: usize = 2048;

/// Prices with which neither the smaller block nor the thinner column is always the cheaper pier (made up).
pub fn price(plan: &mut SitePlan) {
    let lines = plan.prices.lines.get_or_insert_default();
    for (id, price, per) in [
        ("concrete-ready", 145.5, "m³"),
        ("concrete-bagged", 6.8, "pcs"),
        ("skip", 260.0, "pcs"),
        ("tube", 62.0, "m"),
        ("grout", 19.0, "pcs"),
        ("fill-concrete", 410.0, "m³"),
        ("resin-cartridge", 31.0, "pcs"),
    ] {
        let quoted = Price {
            price,
            per: per.to_owned(),
            item: None,
        };
        lines.insert(id.to_owned(), quoted);
    }
}

/// What brute force finds.
#[derive(Debug)]
pub struct Brute {
    /// The front by digging.
    pub by_digging: Vec<Place>,
    /// The front by cost.
    pub by_cost: Vec<Place>,
    /// Candidates of the lattice.
    pub size: usize,
}

/// The fronts, and how many candidates there were.
///
/// # Errors
/// What is wrong with the plan.
pub fn brute_force(plan: &SitePlan) -> Result<Brute, Problems> {
    let shelf = SmallShelf::holding(SHAPES);
    let lattice = lattice_of(plan, &resolve(plan)?);
    let (mut by_digging, mut by_cost, mut looked_at) = (Vec::new(), Vec::new(), 0);
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
                by_digging.push([cubic_metre::get(found.excavation.volume), growth.worst]);
                by_cost.push([amount(found.costs.total), growth.worst]);
            }
        }
    }
    Ok(Brute {
        by_digging: front_of(by_digging),
        by_cost: front_of(by_cost),
        size: looked_at,
    })
}

fn amount(cost: Money) -> f64 {
    cost.0.try_into().unwrap_or(f64::NAN)
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
    /// The front by cost of the search.
    pub searched_by_cost: Vec<Place>,
    /// The front by cost of brute force.
    pub expected_by_cost: Vec<Place>,
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
    let brute = brute_force(plan)?;
    let shelf = SmallShelf::holding(SHAPES);
    let (lattice, found) = search(plan, &shelf, &|_| true)?;
    let priced = Search::new(plan, &lattice, &shelf).by_cost(&lattice, &|_| true);
    let place = |one: &Candidate| [one.dig_m3, one.growth()];
    Ok(Both {
        searched: found.front.iter().map(place).collect(),
        expected: brute.by_digging,
        searched_by_cost: priced
            .front
            .iter()
            .map(|one| [amount(one.cost), one.candidate.growth()])
            .collect(),
        expected_by_cost: brute.by_cost,
        size: brute.size,
        looked_at: found.looked_at,
        skipped: found.skipped,
    })
}
