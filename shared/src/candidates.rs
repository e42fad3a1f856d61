//! Candidates: every pier that fits, each judged by the design's own stages.
//!
//! A candidate is a plan with its answers put in. It is held against the same checks of building as a design, and against
//! the star's growth at the ground's unfavourable twentieth, without what follows from them. [`search`] says what is skipped
//! and why nothing better is among it. Sizing picks one of them, [`crate::options`] shows all that are worth a look.

pub mod by_cost;
pub mod examine;
pub mod lattice;
pub mod obstacles;
pub mod search;

use crate::brief::{Brief, resolve};
use crate::cast::Cast;
use crate::field::Problems;
use crate::halfspace::Shelf;
use crate::site_plan::SitePlan;
use crate::stages::room;

pub use lattice::{Column, Lattice, Size};
use search::Search;
pub use search::{Candidate, Found, Reached};

/// The front alone, without designing its points.
///
/// # Errors
/// Every field out of range and every contradiction between answers.
pub fn search(
    plan: &SitePlan,
    shelf: &dyn Shelf,
    go_on: &dyn Fn(Reached) -> bool,
) -> Result<(Lattice, Found), Problems> {
    let lattice = lattice_of(plan, &resolve(plan)?);
    let found = Search::new(plan, &lattice, shelf).run(&lattice, go_on);
    Ok((lattice, found))
}

/// The lattice of a plan.
pub fn lattice_of(plan: &SitePlan, brief: &Brief) -> Lattice {
    let cast = Cast::of(brief);
    Lattice::of(plan, brief, &room::room(brief, &cast.ground.value))
}
