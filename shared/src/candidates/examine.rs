//! One plan as far as it is compared with others: may it be built, and what the star does when nobody is there.

use crate::brief::{Brief, resolve};
use crate::cast::Cast;
use crate::halfspace::Shelf;
use crate::notes::Check;
use crate::site_plan::SitePlan;
use crate::stages::motion::Alone;
use crate::stages::motion::alone::{Standing, season};
use crate::stages::{anchors, ground_stiffness};
use crate::verdict::{self, Build, Says, Within, judge};

/// What was found of a plan.
#[derive(Debug, Clone)]
pub struct Examined {
    /// May it be built.
    pub build: Build,
    /// The star with nobody there, and whether that is within what is asked; none where the ground is not known.
    pub still: Option<(Alone, Within)>,
    /// Every check of building.
    pub checks: Vec<Check>,
}

impl Examined {
    /// The stages of a plan, without those that follow from them; none for a plan that contradicts itself.
    pub fn of(plan: &SitePlan, shelf: &dyn Shelf) -> Option<Self> {
        Some(Self::decided(&resolve(plan).ok()?, shelf))
    }

    /// The same of complete inputs.
    pub fn decided(brief: &Brief, shelf: &dyn Shelf) -> Self {
        let cast = Cast::of(brief);
        let (ground, block, pier) = (&cast.ground.value, &cast.block.value, &cast.pier.value);
        let stiffness = ground_stiffness::stage(brief, ground, block, shelf);
        let standing = Standing::of(brief, pier);
        let season = season(brief, ground, block);
        let alone = standing.found(brief, ground, block, &stiffness.value, pier, season);
        let studs = anchors::stage(brief, block, &cast.loads.value);
        let mut checks: Vec<Check> = cast.checks().cloned().collect();
        checks.extend(stiffness.notes.checks);
        checks.extend(studs.notes.checks);
        Self {
            build: verdict::build(&checks),
            still: alone.map(|alone| {
                let within = judge(standing.budget(), &alone.cost, alone.worst_arcsec);
                (alone, within)
            }),
            checks,
        }
    }

    /// Growth of the star at worst.
    pub fn growth(&self) -> Option<f64> {
        let (alone, _) = self.still?;
        Some(alone.cost.star_growth_ratio.worst)
    }

    /// Whether it may be built, as far as anybody can say, and the star stays within what is asked.
    pub fn does(&self) -> bool {
        self.build.says != Says::No
            && self
                .still
                .as_ref()
                .is_some_and(|(_, within)| *within == Within::Within)
    }
}
