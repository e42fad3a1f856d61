//! The search: for every block of the lattice, the column with which the star grows least of those that may be built.
//!
//! # What is skipped, and why nothing better is among it
//! Blocks are gone through by the volume of their pit, the least first, and of each only a column is of use with which the
//! star grows less than on every block before it: any other has a candidate beside it with no more to dig and a star no
//! wider, and stands on no front. So a candidate is skipped where its star cannot grow less than that:
//! - by a bound from below, [`Standing::at_least`], proved there: the columns of a block are taken by their bound, the least
//!   first, and all from the first bound that is not below the least growth so far;
//! - with its whole block, where a check of ground, pit or frost fails: those stages read neither the column nor what stands
//!   on it (`nothing_of_the_column_is_asked_by_ground_and_pit` holds that);
//! - where its base plate is wider than the block, which fails a check of the block;
//! - where it contradicts what was said, and so is no plan at all.
//!
//! The hold of the ground is the same for every column of a block, but for the remedy against frost at the sides, which is
//! left out where the block is heavy enough to stay down. Heavier columns hold more, so that the lightest and the heaviest
//! have every hold that there is; the bound is the lesser of theirs.

use crate::brief::Brief;
use crate::cast::{Cast, failing};
use crate::halfspace::Shelf;
use crate::site_plan::SitePlan;
use crate::stages::anchors;
use crate::stages::block::{Block, plate_needs};
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::{self, GroundStiffness};
use crate::stages::motion::Alone;
use crate::stages::motion::Season;
use crate::stages::motion::alone::{Standing, season};
use crate::stages::pier::Pier;
use crate::units::{Length, cubic_metre, kilogram, metre, millimetre};
use crate::verdict::{Within, judge};

use super::lattice::{Column, Lattice, Size, tried};

/// A candidate that may be built, with what was compared of it.
#[derive(Debug, Clone, Copy)]
pub struct Candidate {
    /// Its block.
    pub size: Size,
    /// Its column.
    pub column: Column,
    /// Ground to dig.
    pub dig_m3: f64,
    /// What the star comes to.
    pub alone: Alone,
    /// Whether that is within what is asked.
    pub within: bool,
}

impl Candidate {
    /// Growth of the star at worst.
    pub fn growth(&self) -> f64 {
        growth(&self.alone)
    }
}

/// What a search found.
#[derive(Debug, Default)]
pub struct Found {
    /// Those that no other betters in both digging and the star's growth, the least digging first.
    pub front: Vec<Candidate>,
    /// Candidates whose stages were run.
    pub looked_at: usize,
    /// Candidates that cannot be better.
    pub skipped: usize,
    /// Candidates that there was no time for.
    pub left: usize,
}

/// How far a search is: blocks that were gone through, of all that may stand in the pit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reached {
    /// So many.
    pub blocks: usize,
    /// Of so many.
    pub of: usize,
}

/// A column with all that does not depend on the block.
pub(super) struct Upright {
    pub(super) column: Column,
    mass_kg: f64,
    pier: Pier,
    standing: Standing,
    brief: Brief,
}

/// One search.
pub struct Search<'a> {
    pub(super) plan: &'a SitePlan,
    shelf: &'a dyn Shelf,
    pub(super) uprights: Vec<Upright>,
}

/// How the ground holds a block, by the contact that is left of it.
pub(super) struct HeldBlock {
    contact: [f64; 3],
    ground: Ground,
    block: Block,
    stiffness: GroundStiffness,
    season: Option<Season>,
}

/// Volumes that differ by less are the same, m³.
const SAME_M3: f64 = 1e-9;

impl<'a> Search<'a> {
    /// Over the columns of a lattice; those that contradict the plan are left out.
    pub fn new(plan: &'a SitePlan, lattice: &Lattice, shelf: &'a dyn Shelf) -> Self {
        let any = lattice.sizes().next();
        let mut uprights: Vec<Upright> = any
            .into_iter()
            .flat_map(|any| lattice.columns().map(move |column| (any, column)))
            .filter_map(|(any, column)| upright(plan, &any, column))
            .collect();
        uprights.sort_by(|a, b| a.mass_kg.total_cmp(&b.mass_kg));
        Self {
            plan,
            shelf,
            uprights,
        }
    }

    /// Goes through the lattice while `go_on` says so.
    pub fn run(&self, lattice: &Lattice, go_on: &dyn Fn(Reached) -> bool) -> Found {
        let columns = lattice.columns().count();
        let sizes = self.sizes(lattice);
        let mut found = Found {
            skipped: (lattice.sizes().count() - sizes.len()) * columns,
            ..Found::default()
        };
        for (at, (dig_m3, size)) in sizes.iter().enumerate() {
            let of = sizes.len();
            if !go_on(Reached { blocks: at, of }) {
                found.left = (sizes.len() - at) * columns;
                break;
            }
            let most = found.front.last().map_or(f64::INFINITY, Candidate::growth);
            let (best, looked_at) = self.least(size, *dig_m3, most);
            found.looked_at += looked_at;
            found.skipped += columns - looked_at;
            let Some(best) = best else { continue };
            // Of two that dig as much only the later stands, whose star grows less.
            if found
                .front
                .last()
                .is_some_and(|last| best.dig_m3 - last.dig_m3 < SAME_M3)
            {
                let _ = found.front.pop();
            }
            found.front.push(best);
        }
        found
    }

    /// The blocks that ground and pit have nothing against, with the ground to dig, the least first.
    pub(super) fn sizes(&self, lattice: &Lattice) -> Vec<(f64, Size)> {
        let mut sizes: Vec<(f64, Size)> = lattice
            .sizes()
            .filter_map(|size| Some((self.dig_m3(&size)?, size)))
            .collect();
        sizes.sort_by(|(a, _), (b, _)| a.total_cmp(b));
        sizes
    }

    /// Ground to dig for a block that ground and pit have nothing against; none where a check of theirs fails, or where no
    /// column stands on it without a contradiction.
    pub fn dig_m3(&self, size: &Size) -> Option<f64> {
        let (_, brief) = self
            .uprights
            .iter()
            .find_map(|upright| tried(self.plan, Some(size), &upright.column))?;
        let cast = Cast::of(&brief);
        let refused = [&cast.ground.notes, &cast.excavation.notes]
            .into_iter()
            .flat_map(|notes| failing(&notes.checks))
            .next()
            .is_some()
            || cast.fails().any(|id| id == "block.frost");
        (!refused).then(|| cubic_metre::get(cast.excavation.value.volume))
    }

    /// The column with which the star grows least on a block, and less than `most`; and how many were looked at.
    fn least(&self, size: &Size, dig_m3: f64, most: f64) -> (Option<Candidate>, usize) {
        if !self.uprights.iter().any(|upright| upright.fits(size)) {
            return (None, 0);
        }
        let mut blocks = self.held_blocks(size);
        let mut bounds: Vec<(f64, &Upright)> = self
            .uprights
            .iter()
            .filter(|upright| upright.fits(size))
            .filter_map(|upright| Some((growth(&bound(upright, &blocks)?), upright)))
            .collect();
        bounds.sort_by(|(a, _), (b, _)| a.total_cmp(b));
        let (mut best, mut looked_at) = (None, 0);
        let mut least = most;
        for (bound, upright) in bounds {
            if bound >= least {
                break;
            }
            looked_at += 1;
            if let Some(candidate) = self.look(upright, size, dig_m3, &mut blocks, least) {
                least = candidate.growth();
                best = Some(candidate);
            }
        }
        (best, looked_at)
    }

    /// The column with which the star grows least on a block, of those that may be built.
    pub fn stillest(&self, size: &Size, dig_m3: f64) -> Option<Candidate> {
        self.least(size, dig_m3, f64::INFINITY).0
    }

    /// The plan of a candidate, and its inputs.
    pub fn made(&self, candidate: &Candidate) -> Option<(SitePlan, Brief)> {
        tried(self.plan, Some(&candidate.size), &candidate.column)
    }

    /// The lightest column on a block that may be built, is within what is asked, and with which the star grows by no more
    /// than `most`.
    pub fn lightest(&self, size: &Size, dig_m3: f64, most: f64) -> Option<Candidate> {
        let mut blocks = self.held_blocks(size);
        let mut fitting = self.uprights.iter().filter(|upright| upright.fits(size));
        fitting.find_map(|upright| {
            // What is over by its bound, or grows more, is so by its modes.
            let bound = bound(upright, &blocks)?;
            let may = upright.is_within(&bound) && growth(&bound) <= most;
            may.then(|| self.look(upright, size, dig_m3, &mut blocks, f64::INFINITY))
                .flatten()
                .filter(|found| found.within && found.growth() <= most)
        })
    }

    /// The lightest column that may be built on a block, whatever its star comes to, and whether or not anybody can say: one no
    /// slimmer than this, else one that is.
    pub fn lightest_that_may_be_built(&self, size: &Size, slimmest: Length) -> Option<Column> {
        let _ = self.dig_m3(size)?;
        let fitting = self.uprights.iter().filter(|upright| upright.fits(size));
        let (wide, slim): (Vec<_>, Vec<_>) =
            fitting.partition(|upright| upright.brief.pier.outside_diameter.value >= slimmest);
        wide.into_iter().chain(slim).find_map(|upright| {
            let (brief, cast) = self.cast(upright, size)?;
            studs_hold(&brief, &cast).then_some(upright.column)
        })
    }

    /// The inputs and the cast part of a candidate, none where it may not be built.
    fn cast(&self, upright: &Upright, size: &Size) -> Option<(Brief, Cast)> {
        let (_, brief) = tried(self.plan, Some(size), &upright.column)?;
        let cast = Cast::of(&brief);
        let may_be_built = cast.fails().next().is_none();
        may_be_built.then_some((brief, cast))
    }

    /// Every hold that the ground has on a block, whatever stands on it.
    pub(super) fn held_blocks(&self, size: &Size) -> Vec<HeldBlock> {
        let tried = |upright: &Upright| tried(self.plan, Some(size), &upright.column);
        let ends = [
            self.uprights.iter().find_map(tried),
            self.uprights.iter().rev().find_map(tried),
        ];
        let mut blocks = Vec::new();
        for (_, brief) in ends.into_iter().flatten() {
            let _ = self.held_block(&brief, &Cast::of(&brief), &mut blocks);
        }
        blocks
    }

    /// The place of the hold on a cast block, found once for each contact.
    fn held_block(&self, brief: &Brief, cast: &Cast, blocks: &mut Vec<HeldBlock>) -> usize {
        let (ground, block) = (&cast.ground.value, &cast.block.value);
        let contact = [
            block.side_contact_from,
            block.side_contact_to,
            block.side_frost.frozen_depth,
        ]
        .map(metre::get);
        let known = blocks.iter().position(|held| held.contact == contact);
        known.unwrap_or_else(|| {
            blocks.push(HeldBlock {
                contact,
                ground: ground.clone(),
                block: block.clone(),
                stiffness: ground_stiffness::stage(brief, ground, block, self.shelf).value,
                season: season(brief, ground, block),
            });
            blocks.len() - 1
        })
    }

    /// A candidate with what its star comes to; none where the ground is not known.
    pub(super) fn candidate(
        &self,
        upright: &Upright,
        (size, dig_m3): (&Size, f64),
        (brief, cast): (&Brief, &Cast),
        blocks: &mut Vec<HeldBlock>,
    ) -> Option<Candidate> {
        let (ground, block, pier) = (&cast.ground.value, &cast.block.value, &cast.pier.value);
        let place = self.held_block(brief, cast, blocks);
        let held = blocks.get(place)?;
        let standing = &upright.standing;
        let alone = standing.found(brief, ground, block, &held.stiffness, pier, held.season)?;
        Some(Candidate {
            size: *size,
            column: upright.column,
            dig_m3,
            alone,
            within: upright.is_within(&alone),
        })
    }

    /// A candidate, if it may be built and its star grows by less than `most`.
    fn look(
        &self,
        upright: &Upright,
        size: &Size,
        dig_m3: f64,
        blocks: &mut Vec<HeldBlock>,
        most: f64,
    ) -> Option<Candidate> {
        let (brief, cast) = self.cast(upright, size)?;
        let candidate = self.candidate(upright, (size, dig_m3), (&brief, &cast), blocks)?;
        if candidate.growth() >= most {
            return None;
        }
        studs_hold(&brief, &cast).then_some(candidate)
    }
}

/// Whether no check of the studs fails.
fn studs_hold(brief: &Brief, cast: &Cast) -> bool {
    let studs = anchors::stage(brief, &cast.block.value, &cast.loads.value);
    failing(&studs.notes.checks).next().is_none()
}

/// A column with all that does not depend on the block. Its joint asks only of what concrete the block is.
fn upright(plan: &SitePlan, any: &Size, column: Column) -> Option<Upright> {
    let (_, mut brief) = tried(plan, None, &column)?;
    let [length, width, depth] = any.metres.map(metre::new);
    (brief.block.length, brief.block.width, brief.block.depth) =
        (Some(length), Some(width), Some(depth));
    let pier = Cast::of(&brief).pier.value;
    Some(Upright {
        column,
        mass_kg: kilogram::get(pier.mass),
        standing: Standing::of(&brief, &pier),
        pier,
        brief,
    })
}

/// The least that the star can come to with a column on a block; none where the ground is not known.
pub(super) fn bound(upright: &Upright, blocks: &[HeldBlock]) -> Option<Alone> {
    let least = |held: &HeldBlock| {
        upright.standing.at_least(
            &upright.brief,
            &held.ground,
            &held.block,
            &held.stiffness,
            &upright.pier,
            held.season,
        )
    };
    blocks
        .iter()
        .filter_map(least)
        .reduce(|a, b| if growth(&b) < growth(&a) { b } else { a })
}

pub(super) fn growth(alone: &Alone) -> f64 {
    alone.cost.star_growth_ratio.worst
}

impl Upright {
    /// Whether its base plate fits on a block. Half a millimetre is no rounding: what is so near is left to its check.
    pub(super) fn fits(&self, size: &Size) -> bool {
        let [length, width, _] = size.metres;
        let side = millimetre::new(1e3 * length.min(width) + 0.5);
        plate_needs(&self.brief) <= side
    }

    /// Whether what the star comes to on it is within what is asked.
    fn is_within(&self, alone: &Alone) -> bool {
        judge(self.standing.budget(), &alone.cost, alone.worst_arcsec) == Within::Within
    }
}
