//! Options: every pier that fits the pit, and what digging less costs the star.
//!
//! [`crate::candidates`] goes through them; here the best become points of a picture, three of them get a name, and where
//! none is enough it is said what is in the way.

pub mod measuring;
pub mod point;
pub mod taking;

use serde::Serialize;

use crate::brief::{Brief, resolve};
use crate::candidates::search::Search;
use crate::candidates::{Candidate, Column, Lattice, Reached, Size};
use crate::candidates::{lattice, lattice_of, obstacles};
use crate::decided::decide;
use crate::field::Problems;
use crate::halfspace::Shelf;
use crate::notes::Obstacle;
use crate::rules::en_1991_1_1_2002::concrete::density;
use crate::site_plan::SitePlan;
use crate::stages::block::TONNE_KG;
use crate::units::{kilogram_per_cubic_metre, metre};

pub use measuring::Worth;
pub use point::Point;

/// All the piers that fit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Options {
    /// What was gone through.
    pub lattice: Lattice,
    /// Candidates whose stages were run.
    pub looked_at: usize,
    /// Candidates that cannot be better, as their bound or what they contradict shows; with `looked_at` and `not_reached` the
    /// whole lattice.
    pub skipped: usize,
    /// Candidates that there was no time for; where there are any, the front is that of what was looked at.
    pub not_reached: usize,
    /// Growth of the star that is asked.
    pub asked_ratio: f64,
    /// What no other candidate betters in both digging and the star's growth, the least digging first.
    pub front: Vec<Point>,
    /// The same by cost; null where no line has a price.
    pub by_cost: Option<ByCost>,
    /// Three of them, each with the lightest column that does.
    pub named: Named,
    /// The trade's rules of thumb as points of the same picture, with the plan's own column.
    pub rules_of_thumb: Vec<Thumb>,
    /// Where nothing is within what is asked: what comes nearest.
    pub nearest: Option<Point>,
    /// What stands in its way, and how much of each would do.
    pub in_the_way: Vec<Obstacle>,
    /// Answers that are assumed and worth finding out.
    pub worth_measuring: Vec<Worth>,
}

/// What no other candidate betters in both its cost and the star's growth.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ByCost {
    /// The cheapest first; each point has its cost.
    pub front: Vec<Point>,
    /// The cheapest that is within what is asked; null where none is.
    pub cheapest: Option<Point>,
    /// Candidates whose cost was reckoned.
    pub looked_at: usize,
    /// Candidates that cannot be built.
    pub skipped: usize,
    /// Candidates that there was no time for.
    pub not_reached: usize,
}

/// A rule of thumb.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Thumb {
    /// What the trade says.
    pub title: &'static str,
    /// The pier by that rule; it may fail checks and need not fit the pit.
    pub point: Point,
}

/// Three ways to build it; each null where nothing that fits is within what is asked.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Named {
    /// The least to dig that is within what is asked.
    pub least_digging: Option<Point>,
    /// Where another tenth of stillness begins to cost more than a tenth of digging.
    pub middle: Option<Point>,
    /// The stillest that fits.
    pub stillest: Option<Point>,
}

/// Growth over what is asked that nobody sees: a heavier column is not named for less (judgement).
const UNSEEN_RATIO: f64 = 0.05;

/// Looks at all the piers that fit while `go_on` says so; without time it answers with what was looked at, and says so.
///
/// # Errors
/// Every field out of range and every contradiction between answers.
pub fn find(
    plan: &SitePlan,
    shelf: &dyn Shelf,
    go_on: &dyn Fn(Reached) -> bool,
) -> Result<Options, Problems> {
    let plan = &plan.left_open();
    let decided = decide(plan, shelf)?;
    // The studs follow by their own rule: the usual ones, or the least with which the plan may be built.
    let mut open = plan.clone();
    open.anchors.size = decided.plan.anchors.size;
    let brief = resolve(&open)?;
    let lattice = lattice_of(&open, &brief);
    let search = Search::new(&open, &lattice, shelf);
    let found = search.run(&lattice, go_on);
    let asked_ratio = brief.load.asked_growth_ratio.value;
    let named = named(&found.front, &search, asked_ratio);
    let plans = Plans {
        said: plan,
        open: &open,
        shelf,
    };
    let point = |candidate: &Candidate| {
        plans
            .point(&candidate.size, &candidate.column)
            .map(|(point, _)| point)
    };
    let by_cost = brief
        .prices
        .lines
        .as_ref()
        .is_some_and(|lines| !lines.is_empty())
        .then(|| {
            let found = search.by_cost(&lattice, go_on);
            let candidates = || found.front.iter().map(|priced| &priced.candidate);
            ByCost {
                front: candidates().filter_map(point).collect(),
                cheapest: candidates().find(|one| one.within).and_then(point),
                looked_at: found.looked_at,
                skipped: found.skipped,
                not_reached: found.left,
            }
        });
    let own = Column::of(&decided.brief);
    let (nearest, in_the_way) = if named[0].is_some() || found.left > 0 {
        (None, Vec::new())
    } else {
        plans.in_the_way(own, &found.front, &lattice)
    };
    let [least_digging, middle, stillest] =
        named.map(|candidate| candidate.as_ref().and_then(point));
    Ok(Options {
        looked_at: found.looked_at,
        skipped: found.skipped,
        not_reached: found.left,
        asked_ratio,
        front: found.front.iter().filter_map(point).collect(),
        by_cost,
        named: Named {
            least_digging,
            middle,
            stillest,
        },
        rules_of_thumb: plans.rules_of_thumb(own, &brief),
        nearest,
        in_the_way,
        worth_measuring: measuring::worth(&decided.plan, &decided.brief, shelf),
        lattice,
    })
}

/// The plan as it was said and with its studs, of which points are made.
struct Plans<'a> {
    said: &'a SitePlan,
    open: &'a SitePlan,
    shelf: &'a dyn Shelf,
}

impl Plans<'_> {
    /// The design of a candidate as a point, and its inputs.
    fn point(&self, size: &Size, column: &Column) -> Option<(Point, (SitePlan, Brief))> {
        let made = lattice::tried(self.open, Some(size), column)?;
        let fields = lattice::answers(self.said, &made.0);
        Some((Point::of(&made.1, fields, self.shelf), made))
    }

    /// What comes nearest: the stillest that may be built, else the largest block with the plan's own column; and what stands
    /// in its way.
    fn in_the_way(
        &self,
        own: Column,
        front: &[Candidate],
        lattice: &Lattice,
    ) -> (Option<Point>, Vec<Obstacle>) {
        let nearest = match front.last() {
            Some(last) => Some((last.size, last.column)),
            None => lattice.sizes().last().map(|size| (size, own)),
        };
        let found = nearest.and_then(|(size, column)| self.point(&size, &column));
        found.map_or((None, Vec::new()), |(point, (made, brief))| {
            let in_the_way = obstacles::of(&made, &brief, self.shelf);
            (Some(point), in_the_way)
        })
    }

    /// A metre cube, and a tonne of concrete as high as it is wide.
    fn rules_of_thumb(&self, own: Column, brief: &Brief) -> Vec<Thumb> {
        let upstand = metre::get(brief.block.upstand.value);
        let tonne = (TONNE_KG / kilogram_per_cubic_metre::get(density())).cbrt();
        let cubes = [
            ("A metre cube", [1.0, 1.0]),
            ("A tonne of concrete", [tonne, tonne - upstand]),
        ];
        cubes
            .into_iter()
            .filter_map(|(title, [side, depth])| {
                let size = Size {
                    metres: [side, side, depth],
                };
                let roomy = roomy(self.open, side, depth);
                let plans = Plans {
                    said: self.said,
                    open: &roomy,
                    shelf: self.shelf,
                };
                let (point, _) = plans.point(&size, &own)?;
                Some(Thumb { title, point })
            })
            .collect()
    }
}

/// The plan with a pit that takes a block whether or not it fits the one that was stated.
fn roomy(plan: &SitePlan, side: f64, depth: f64) -> SitePlan {
    let mut plan = plan.clone();
    let pit = &mut plan.excavation;
    for (most, needed) in [
        (&mut pit.max_depth_m, depth),
        (&mut pit.max_length_m, side),
        (&mut pit.max_width_m, side),
    ] {
        *most = most.map(|most| most.max(needed));
    }
    plan
}

/// The least digging that is within what is asked, the middle and the stillest. Growth over digging falls along a front as
/// long as another tenth of stillness costs less than a tenth of digging: the middle is where their product is least.
fn named(front: &[Candidate], search: &Search<'_>, asked_ratio: f64) -> [Option<Candidate>; 3] {
    let within = || front.iter().filter(|candidate| candidate.within);
    let unseen = UNSEEN_RATIO * asked_ratio;
    let product = |candidate: &Candidate| candidate.growth() * candidate.dig_m3;
    let lightest = |found: &Candidate, more: f64| {
        search
            .lightest(&found.size, found.dig_m3, found.growth() + more)
            .unwrap_or(*found)
    };
    [
        within().next().map(|found| lightest(found, f64::INFINITY)),
        within()
            .min_by(|a, b| product(a).total_cmp(&product(b)))
            .map(|found| lightest(found, unseen)),
        within().next_back().map(|found| lightest(found, unseen)),
    ]
}
