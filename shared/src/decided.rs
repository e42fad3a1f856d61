//! A plan decided: its unknowns resolved, the stages run, and block and column sized together where that is needed.
//!
//! [`design`] knows nothing of this module: what is chosen here goes through the same stages as what a person said.

use crate::brief::{Brief, resolve};
use crate::design::{Design, design};
use crate::field::Problems;
use crate::halfspace::Shelf;
use crate::improve;
use crate::proof::{self, Fitted, Planned};
use crate::site_plan::{SitePlan, State};
use crate::sizing::{self, Sizing};
use crate::stages::costs;

/// A plan decided: complete inputs, what was found from them, and the plan with what was sized for it.
#[derive(Debug)]
pub struct Decided {
    /// Complete inputs.
    pub brief: Brief,
    /// What was found.
    pub design: Design,
    /// The plan, with the sizes of block and column where these had to be chosen together.
    pub plan: SitePlan,
}

/// Decides a plan's unknowns and runs the stages; block and column are sized together where what the rules choose first may
/// not be built or is not still.
///
/// # Errors
/// Every field out of range and every contradiction between answers. A plan that cannot work is no error but a design
/// with failed checks.
pub fn decide(plan: &SitePlan, shelf: &dyn Shelf) -> Result<Decided, Problems> {
    let brief = resolve(plan)?;
    let first = design(&brief, shelf);
    let is_standing = plan.state == Some(State::Standing);
    let first = if is_standing {
        nothing_to_do(&brief, first)
    } else {
        first
    };
    let as_first = |design| Decided {
        brief: brief.clone(),
        design,
        plan: plan.clone(),
    };
    // A pier that stands is as large as it is.
    if sizing::is_enough(&first.verdict) || is_standing {
        return Ok(as_first(first));
    }
    let Sizing { chosen, in_the_way } = sizing::find(plan, &brief, &first, shelf);
    let Some(chosen) = chosen else {
        return Ok(as_first(Design {
            in_the_way,
            ..first
        }));
    };
    let (plan, brief) = *chosen;
    let design = Design {
        in_the_way,
        ..design(&brief, shelf)
    };
    Ok(Decided {
        brief,
        design,
        plan,
    })
}

/// Designs a plan, and looks for what would help.
///
/// # Errors
/// As [`decide`].
pub fn design_plan(plan: &SitePlan, shelf: &dyn Shelf) -> Result<Design, Problems> {
    let Decided {
        brief,
        design,
        plan,
    } = decide(plan, shelf)?;
    Ok(improved(&plan, &brief, design, shelf))
}

/// Designs a plan whose unknowns are decided, and looks for what would help.
pub fn design_decided(plan: &SitePlan, brief: &Brief, shelf: &dyn Shelf) -> Design {
    improved(plan, brief, design(brief, shelf), shelf)
}

/// A design with what would help most.
pub fn improved(plan: &SitePlan, brief: &Brief, mut design: Design, shelf: &dyn Shelf) -> Design {
    let before = improve::Before {
        block: &design.block,
        stiffness: &design.ground_stiffness,
        motion: &design.motion,
    };
    design.improvements = improve::find(plan, brief, before, shelf);
    design.fitted = fitted(plan, brief, &design, shelf);
    design
}

/// For a pier that stands nothing is ordered, dug or waited for.
fn nothing_to_do(brief: &Brief, design: Design) -> Design {
    Design {
        materials: Vec::new(),
        costs: costs::stage(brief, &[]),
        schedule: Vec::new(),
        ..design
    }
}

/// What the measurements say of the pier of a design; none where nothing was measured.
pub fn fitted(
    plan: &SitePlan,
    brief: &Brief,
    design: &Design,
    shelf: &dyn Shelf,
) -> Option<Fitted> {
    let planned = Planned {
        plan,
        brief,
        ground: &design.ground,
        block: &design.block,
        stiffness: &design.ground_stiffness,
        pier: &design.pier,
        floor: &design.floor,
    };
    proof::find(planned, &plan.commissioning, shelf)
}
