//! The front by cost, where prices stand: what no other candidate betters in both its cost and the star's growth.
//!
//! # What is skipped, and why nothing better is among it
//! A price is the reader's own and need not rise with the size of anything, nor with the ground to dig. So what every candidate
//! costs is reckoned, whichever its block, unless ground, pit or frost refuse the block or it contradicts what was said. Only
//! the star's growth is left out, which takes longest: where a candidate that costs no more grows less than the bound from
//! below, [`bound`], of this one.

use crate::cast::{Cast, failing};
use crate::stages::anchors;
use crate::stages::costs::{self, Money};
use crate::stages::materials;
use crate::stages::parts;

use super::lattice::{Lattice, Size, tried};
use super::search::{Candidate, HeldBlock, Reached, Search, Upright, bound, growth};

/// A candidate with what its lines come to that have a price.
#[derive(Debug, Clone, Copy)]
pub struct Priced {
    /// The candidate.
    pub candidate: Candidate,
    /// What it comes to.
    pub cost: Money,
}

/// What a search by cost found.
#[derive(Debug, Default)]
pub struct Found {
    /// Those that no other betters in both, the cheapest first.
    pub front: Vec<Priced>,
    /// Candidates whose cost was reckoned.
    pub looked_at: usize,
    /// Candidates that cannot be built.
    pub skipped: usize,
    /// Candidates that there was no time for.
    pub left: usize,
}

impl Search<'_> {
    /// Goes through the lattice by cost while `go_on` says so.
    pub fn by_cost(&self, lattice: &Lattice, go_on: &dyn Fn(Reached) -> bool) -> Found {
        let columns = lattice.columns().count();
        let sizes = self.sizes(lattice);
        let mut found = Found {
            skipped: (lattice.sizes().count() - sizes.len()) * columns,
            ..Found::default()
        };
        let of = sizes.len();
        for (at, (dig_m3, size)) in sizes.iter().enumerate() {
            if !go_on(Reached { blocks: at, of }) {
                found.left = (of - at) * columns;
                break;
            }
            let fitting = self.uprights.iter().filter(|upright| upright.fits(size));
            let mut looked_at = 0;
            let mut blocks = Vec::new();
            for upright in fitting {
                if looked_at == 0 {
                    blocks = self.held_blocks(size);
                }
                looked_at += 1;
                if let Some(priced) =
                    self.priced(upright, (size, *dig_m3), &mut blocks, &found.front)
                {
                    put(&mut found.front, priced);
                }
            }
            found.looked_at += looked_at;
            found.skipped += columns - looked_at;
        }
        found
    }

    /// A candidate with its cost, if it may be built and nothing on the front betters it in both.
    fn priced(
        &self,
        upright: &Upright,
        (size, dig_m3): (&Size, f64),
        blocks: &mut Vec<HeldBlock>,
        front: &[Priced],
    ) -> Option<Priced> {
        let least = growth(&bound(upright, blocks)?);
        let (_, brief) = tried(self.plan, Some(size), &upright.column)?;
        let cast = Cast::of(&brief);
        if cast.fails().next().is_some() {
            return None;
        }
        let (block, pier) = (&cast.block.value, &cast.pier.value);
        let studs = anchors::stage(&brief, block, &cast.loads.value);
        if failing(&studs.notes.checks).next().is_some() {
            return None;
        }
        let (pit, floor) = (&cast.excavation.value, &cast.floor.value);
        let parts = parts::stage(&brief, block, pier).value;
        let lines = materials::stage(&brief, pit, block, pier, &studs.value, floor, &parts).value;
        let cost = costs::stage(&brief, &lines).total;
        if bettered(front, cost, least) {
            return None;
        }
        let candidate = self.candidate(upright, (size, dig_m3), (&brief, &cast), blocks)?;
        let is_new = !bettered(front, cost, candidate.growth());
        is_new.then_some(Priced { candidate, cost })
    }
}

/// Whether something on the front costs no more and grows no more than this.
fn bettered(front: &[Priced], cost: Money, growth: f64) -> bool {
    front
        .iter()
        .take_while(|known| known.cost <= cost)
        .last()
        .is_some_and(|known| known.candidate.growth() <= growth)
}

/// Puts one that nothing betters, and takes out what it betters.
fn put(front: &mut Vec<Priced>, new: Priced) {
    front
        .retain(|known| known.cost < new.cost || known.candidate.growth() < new.candidate.growth());
    let place = front.partition_point(|known| known.cost < new.cost);
    front.insert(place, new);
}
