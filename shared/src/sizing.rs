//! Sizing: block, tube, wall and seat together, where what the rules choose first may not be built or is not still.
//!
//! The rules choose a block that the trade would dig and the slimmest tube that swings fast enough, which is enough for most
//! plans and stays then. Where it is not, and the person left something open, the lightest column that is enough is looked
//! for on the same block, with the usual studs and then with larger ones. Then the block grows: at four depths from there on
//! the least side that is enough is found by halving, and of these the one with the least to dig is taken. That a wider block
//! never does worse is assumed there; the whole search of [`crate::candidates`] assumes nothing.
//!
//! Where nothing that fits keeps the star within the limit and what was chosen first may not even be built, the lightest column
//! that may be is taken, no slimmer than the first where one of those will do: whoever builds has a plan to build, and is told that it is not still.

mod assumed;

use crate::brief::Brief;
use crate::candidates::obstacles;
use crate::candidates::search::{Candidate, Search};
use crate::candidates::{Column, Lattice, Size, lattice, lattice_of};
use crate::design::Design;
use crate::field::Path;
use crate::halfspace::{Shelf, SmallShelf};
use crate::notes::Verdict::Fails;
use crate::notes::{Obstacle, Question, Stage};
use crate::path;
use crate::rules::threads;
use crate::site_plan::SitePlan;
use crate::site_plan::anchors::Size as StudSize;
use crate::site_plan::pier::Fill;
use crate::stock::goods;
use crate::units::{metre, millimetre};
use crate::verdict::{Says, Verdict, Within};
use assumed::{Because, ENOUGH, MAY_BE_BUILT, mark};

/// Shapes of block that are kept while it is looked for.
const SHAPES: usize = 16;

/// What came of it.
#[derive(Debug)]
pub struct Sizing {
    /// Another choice: the plan with it, and its inputs with what was chosen as assumed; none where the first stays.
    pub chosen: Option<Box<(SitePlan, Brief)>>,
    /// What stands in the way where nothing that fits may be built and is still; else empty.
    pub in_the_way: Vec<Obstacle>,
}

/// Answers that are looked for here: a check that none of them moves is no matter of sizes.
const SIZES: [Path; 10] = [
    path!(block.length_m),
    path!(block.width_m),
    path!(block.depth_m),
    path!(pier.tube),
    path!(pier.outside_diameter_mm),
    path!(pier.wall_mm),
    path!(pier.plate_thickness_mm),
    path!(pier.fill),
    path!(pier.levelling),
    path!(anchors.size),
];

/// Depths that are tried for a larger block: each costs some shapes that have to be solved.
const DEPTHS: usize = 4;

/// Whether other sizes can help at all: every failed check of building hangs on one of them, and none says that the pit is
/// too large already.
fn can_help(first: &Design) -> bool {
    first
        .checks
        .iter()
        .filter(|check| check.question == Question::Build && check.verdict == Fails)
        .all(|check| {
            check.stage() != Stage::Excavation
                && check.fields.iter().any(|field| SIZES.contains(field))
        })
}

/// Whether what was chosen first may be built and is still, as far as anybody can say.
pub fn is_enough(verdict: &Verdict) -> bool {
    verdict.build.says != Says::No && verdict.still.says != Some(Within::Over)
}

/// Looks for a choice that is enough.
pub fn find(plan: &SitePlan, brief: &Brief, first: &Design, shelf: &dyn Shelf) -> Sizing {
    let near = SmallShelf::holding(SHAPES).before(shelf);
    let block = &first.block;
    let now = Size {
        metres: [block.length, block.width, block.depth].map(metre::get),
    };
    let plans = if can_help(first) && can_be_dug(plan, brief, &now, &near) {
        with_studs(plan, brief)
    } else {
        Vec::new()
    };
    let tries: Vec<(Lattice, Search<'_>)> = plans
        .iter()
        .map(|plan| {
            let lattice = plain(plan, brief);
            let search = Search::new(plan, &lattice, &near);
            (lattice, search)
        })
        .collect();
    let on_the_same = tries.iter().map(|(_, search)| within(search, &now));
    let on_a_larger = tries
        .iter()
        .map(|(lattice, search)| larger(search, lattice, &now));
    let taken = |of: &SitePlan, size: &Size, column: &Column, because: &Because| {
        let (made, mut decided) = lattice::tried(of, Some(size), column)?;
        mark(plan, &mut decided, &made, because);
        Some(Box::new((made, decided)))
    };
    let enough = plans
        .iter()
        .zip(on_the_same)
        .chain(plans.iter().zip(on_a_larger))
        .find_map(|(plan, found)| {
            let found = found?;
            taken(plan, &found.size, &found.column, &ENOUGH)
        });
    if enough.is_some() {
        return Sizing {
            chosen: enough,
            in_the_way: Vec::new(),
        };
    }
    let may_be_built = |of: &SitePlan, search: &Search<'_>| {
        let slimmest = brief.pier.outside_diameter.value;
        let column = search.lightest_that_may_be_built(&now, slimmest)?;
        taken(of, &now, &column, &MAY_BE_BUILT)
    };
    let chosen = if first.verdict.build.says == Says::No && !plans.is_empty() {
        plans
            .iter()
            .zip(&tries)
            .find_map(|(of, (_, search))| may_be_built(of, search))
            .or_else(|| {
                others(plan, brief)
                    .iter()
                    .find_map(|of| may_be_built(of, &Search::new(of, &plain(of, brief), &near)))
            })
    } else {
        None
    };
    Sizing {
        chosen,
        in_the_way: in_the_way(brief, plan, &tries, &now, &near),
    }
}

/// Whether ground and pit let anything be built: the block as it is, or the largest that fits.
fn can_be_dug(plan: &SitePlan, brief: &Brief, now: &Size, shelf: &dyn Shelf) -> bool {
    let lattice = Lattice {
        tubes_mm: vec![Column::of(brief).tube_mm],
        ..plain(plan, brief)
    };
    let search = Search::new(plan, &lattice, shelf);
    let largest = lattice.sizes().last();
    std::iter::once(*now)
        .chain(largest)
        .any(|size| search.dig_m3(&size).is_some())
}

/// The plan, and where nobody stated the thread the same with each larger one.
fn with_studs(plan: &SitePlan, brief: &Brief) -> Vec<SitePlan> {
    // A length, a depth or a hole that was stated stays what it is: where a larger thread does not suit it a check says so.
    let open = plan.anchors.size.is_none();
    let own = brief.anchors.thread().diameter;
    let larger = StudSize::of(brief.anchors.size.value.stock())
        .filter(|&size| open && plan.yard.keeps_size(size) && threads::thread(size).diameter > own);
    let with = |size: StudSize| {
        let mut plan = plan.clone();
        plan.anchors.size = Some(size);
        plan
    };
    std::iter::once(plan.clone())
        .chain(larger.map(with))
        .collect()
}

/// The plan with what is no better in itself and may suit what was stated: a smaller thread, or a thicker plate.
fn others(plan: &SitePlan, brief: &Brief) -> Vec<SitePlan> {
    let stock = brief.stock.value;
    let with = |change: &dyn Fn(&mut SitePlan)| {
        let mut plan = plan.clone();
        change(&mut plan);
        plan
    };
    let own = brief.anchors.thread().diameter;
    let mut smaller: Vec<_> = StudSize::of(brief.anchors.size.value.stock())
        .filter(|&size| plan.anchors.size.is_none() && plan.yard.keeps_size(size))
        .filter(|&size| threads::thread(size).diameter < own)
        .collect();
    smaller.reverse();
    let now = millimetre::get(brief.pier.plate_thickness.value);
    let thicker = goods::rows(&goods::PLATES, stock)
        .filter(|row| plan.yard.keeps_plate(row.name()))
        .map(|row| row.value("thickness_mm"))
        .filter(|&thickness| plan.pier.plate_thickness_mm.is_none() && thickness > now);
    let threads = smaller
        .into_iter()
        .map(|size| with(&|plan| plan.anchors.size = Some(size)));
    threads
        .chain(
            thicker.map(|thickness| with(&|plan| plan.pier.plate_thickness_mm = Some(thickness))),
        )
        .collect()
}

/// The lattice with a bare column, unless the person said what fills it, and with the seat that the rules choose: neither is
/// a size.
fn plain(plan: &SitePlan, brief: &Brief) -> Lattice {
    Lattice {
        fills: vec![plan.pier.fill.unwrap_or(Fill::None)],
        levellings: vec![brief.pier.levelling.value],
        ..lattice_of(plan, brief)
    }
}

/// The lightest column on a block that is enough.
fn within(search: &Search<'_>, size: &Size) -> Option<Candidate> {
    let dig_m3 = search.dig_m3(size)?;
    search.lightest(size, dig_m3, f64::INFINITY)
}

/// The least digging that is enough, from a block on.
fn larger(search: &Search<'_>, lattice: &Lattice, now: &Size) -> Option<Candidate> {
    let [length, width, depth] = now.metres;
    let sides: Vec<[f64; 2]> = lattice
        .sides_m
        .iter()
        .copied()
        .filter(|side| side[0] >= length - 1e-9 && side[1] >= width - 1e-9)
        .collect();
    let deeper: Vec<f64> = lattice
        .depths_m
        .iter()
        .copied()
        .filter(|deep| *deep >= depth - 1e-9)
        .collect();
    // The shallowest and the deepest are among them.
    let step = deeper.len().saturating_sub(1).div_ceil(DEPTHS - 1).max(1);
    let depths = deeper
        .iter()
        .enumerate()
        .filter(|(at, _)| at % step == 0 || at + 1 == deeper.len())
        .map(|(_, depth)| depth);
    let at = |side: usize, depth: f64| {
        let [length, width] = *sides.get(side)?;
        within(
            search,
            &Size {
                metres: [length, width, depth],
            },
        )
    };
    // Where the largest block is not enough no smaller one is asked.
    let last = sides.len().checked_sub(1)?;
    let _ = at(last, *lattice.depths_m.last()?)?;
    depths
        .filter_map(|&depth| {
            let mut enough = at(last, depth)?;
            // From `first` on it is not known; `least` is enough.
            let (mut first, mut least) = (0, last);
            while first < least {
                let middle = (first + least) / 2;
                match at(middle, depth) {
                    Some(found) => (least, enough) = (middle, found),
                    None => first = middle + 1,
                }
            }
            Some(enough)
        })
        .min_by(|a, b| a.dig_m3.total_cmp(&b.dig_m3))
}

/// What stands in the way of the stillest on the largest block that may be built, else of what was chosen first.
fn in_the_way(
    brief: &Brief,
    plan: &SitePlan,
    tries: &[(Lattice, Search<'_>)],
    now: &Size,
    shelf: &dyn Shelf,
) -> Vec<Obstacle> {
    let stillest = tries.iter().find_map(|(lattice, search)| {
        let size = lattice.sizes().last()?;
        let found = search.stillest(&size, search.dig_m3(&size)?)?;
        search.made(&found)
    });
    stillest
        .or_else(|| lattice::tried(plan, Some(now), &Column::of(brief)))
        .map(|(made, decided)| obstacles::of(&made, &decided, shelf))
        .unwrap_or_default()
}
