//! Proof: what the measurements of a pier that stands say of it. Ground, contact, joint, column and mount are unknown within
//! the plan's ranges; the measurements narrow them, and what is unlikely to be right of the plan is named.

pub mod chance;
mod changed;
pub mod fitted;
pub mod ground;
pub mod measure;
mod moments;
mod next;
pub mod pier;
pub mod reduced;
pub mod remedies;
pub mod sampler;
mod suspects;
mod symptoms;
mod verdict;
mod whole;
mod words;

use crate::brief::Brief;
use crate::halfspace::Shelf;
use crate::site_plan::{Commissioning, SitePlan};
use crate::stages::block::Block;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::pier::Pier;

pub use fitted::{Agreement, Fitted, Next, Range, Remedy, Suspect, SymptomSays, Together};

/// The same plan prints the same digits.
const SEED: u64 = 23;

/// What the design found before.
#[derive(Clone, Copy)]
pub struct Planned<'a> {
    /// What the person said, with the sizes that were chosen for it.
    pub plan: &'a SitePlan,
    /// Complete inputs.
    pub brief: &'a Brief,
    /// The ground.
    pub ground: &'a Ground,
    /// The footing.
    pub block: &'a Block,
    /// How the ground holds it.
    pub stiffness: &'a GroundStiffness,
    /// The column.
    pub pier: &'a Pier,
    /// The floor.
    pub floor: &'a Floor,
}

/// The ranges and what is said of them, without remedies and without what the star does. None as for [`find`].
pub fn ranges(planned: Planned, said: &Commissioning, shelf: &dyn Shelf) -> Option<Fitted> {
    let standing = standing(&planned, said, shelf)?;
    verdict::judge(&standing, &sampler::sample(&standing, SEED))
}

/// What the measurements say, and of symptoms alone what the plan does. None where nothing was said or the ground is not known.
pub fn find(planned: Planned, said: &Commissioning, shelf: &dyn Shelf) -> Option<Fitted> {
    let standing = standing(&planned, said, shelf)?;
    let sampled = sampler::sample(&standing, SEED);
    let mut fitted = verdict::judge(&standing, &sampled)?;
    if fitted.holds {
        fitted.remedies = remedies::find(&planned, said, &standing, &sampled, shelf);
        fitted.motion = whole::motion(&planned, &standing, &sampled);
        fitted.symptoms = symptoms::find(said, &fitted);
    }
    Some(fitted)
}

fn standing(planned: &Planned, said: &Commissioning, shelf: &dyn Shelf) -> Option<pier::Standing> {
    // Symptoms alone bring what the plan says of such a pier.
    if said.is_empty() {
        return None;
    }
    pier::Standing::of(
        planned.brief,
        said,
        planned.ground,
        planned.block,
        planned.stiffness,
        planned.pier,
        planned.floor,
        shelf,
    )
}
