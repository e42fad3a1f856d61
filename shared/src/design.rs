//! The design: thirteen stages in order, each a function of the brief and of earlier stages, and their notes put together.

mod written;

use crate::brief::{Brief, resolve};
use crate::cast::Cast;
use crate::field::Problems;
use crate::halfspace::Shelf;
use crate::improve;
use crate::notes::{Assumption, Caution, Check, Notes, Opinion, Working};
use crate::options::Obstacle;
use crate::proof::{self, Fitted, Planned};
use crate::site_plan::{SitePlan, State};
use crate::sizing::{self, Sizing};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::costs::Costs;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::loads::Loads;
use crate::stages::materials::Material;
use crate::stages::motion::Motion;
use crate::stages::motion::improvement::Improvement;
use crate::stages::north::North;
use crate::stages::pier::Pier;
use crate::stages::schedule::Task;
use crate::stages::{
    anchors, cautions, costs, ground_stiffness, materials, motion, north, schedule,
};
use crate::verdict::{self, Verdict};

/// Version of the engine, shown on every sheet.
pub const ENGINE_VERSION: &str = env!("CARGO_PKG_VERSION");

/// Everything that was found: figures, checks, assumptions, cautions, each with its source.
#[derive(Debug, Clone, PartialEq)]
pub struct Design {
    /// Version of the engine that made it.
    pub engine_version: &'static str,
    /// May it be built, does the star stay still, and what people may do.
    pub verdict: Verdict,
    /// What acts at the foot of the column.
    pub loads: Loads,
    /// What the ground is.
    pub ground: Ground,
    /// The pit.
    pub excavation: Excavation,
    /// The footing.
    pub block: Block,
    /// How stiffly the ground holds the block.
    pub ground_stiffness: GroundStiffness,
    /// The column.
    pub pier: Pier,
    /// The studs.
    pub anchors: Anchors,
    /// The floor.
    pub floor: Floor,
    /// What the star does.
    pub motion: Motion,
    /// What would help most, where it was looked for; in the JSON it stands with the motion that it helps.
    pub improvements: Vec<Improvement>,
    /// Where true north is.
    pub north: North,
    /// Demands against capacities.
    pub checks: Vec<Check>,
    /// What was taken where nothing was said.
    pub assumptions: Vec<Assumption>,
    /// Warnings.
    pub cautions: Vec<Caution>,
    /// What to order or hire.
    pub materials: Vec<Material>,
    /// What it comes to at the reader's prices.
    pub costs: Costs,
    /// What to do, and when.
    pub schedule: Vec<Task>,
    /// The lines of calculation behind the figures.
    pub workings: Vec<Working>,
    /// What others say of the same: rules of thumb, other authors' formulas.
    pub opinions: Vec<Opinion>,
    /// What the measurements of the finished pier say of it; none where nothing was measured.
    pub fitted: Option<Fitted>,
    /// Where nothing that fits may be built and is still: what stands in the way, and how much of each would do.
    pub in_the_way: Vec<Obstacle>,
}

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
    Ok(match sizing::find(plan, &brief, &first, shelf) {
        Sizing::Chosen(chosen) => {
            let (plan, brief) = *chosen;
            let design = design(&brief, shelf);
            Decided {
                brief,
                design,
                plan,
            }
        }
        Sizing::Nothing(in_the_way) => as_first(Design {
            in_the_way,
            ..first
        }),
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
#[must_use]
pub fn design_decided(plan: &SitePlan, brief: &Brief, shelf: &dyn Shelf) -> Design {
    improved(plan, brief, design(brief, shelf), shelf)
}

/// A design with what would help most.
#[must_use]
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

fn fitted(plan: &SitePlan, brief: &Brief, design: &Design, shelf: &dyn Shelf) -> Option<Fitted> {
    let planned = Planned {
        plan,
        brief,
        loads: &design.loads,
        ground: &design.ground,
        block: &design.block,
        stiffness: &design.ground_stiffness,
        pier: &design.pier,
        anchors: &design.anchors,
        floor: &design.floor,
    };
    proof::find(planned, &plan.commissioning, shelf)
}

/// Runs the stages on complete inputs.
#[must_use]
pub fn design(brief: &Brief, shelf: &dyn Shelf) -> Design {
    let mut notes = Notes {
        assumptions: brief.assumptions.clone(),
        ..Notes::default()
    };
    let cast = Cast::of(brief);
    let loads = keep(cast.loads, &mut notes);
    let ground = keep(cast.ground, &mut notes);
    let block = keep(cast.block, &mut notes);
    let excavation = keep(cast.excavation, &mut notes);
    let stiffness = keep(
        ground_stiffness::stage(brief, &ground, &block, shelf),
        &mut notes,
    );
    let pier = keep(cast.pier, &mut notes);
    let anchors = keep(anchors::stage(brief, &block, &loads), &mut notes);
    let floor = keep(cast.floor, &mut notes);
    let motion = keep(
        motion::stage(
            brief,
            &ground,
            &block,
            &stiffness,
            &pier,
            &anchors,
            &floor,
            stiffness.influence(),
        ),
        &mut notes,
    );
    let north = keep(north::stage(brief), &mut notes);
    let materials = keep(
        materials::stage(brief, &excavation, &block, &pier, &anchors, &floor),
        &mut notes,
    );
    let costs = costs::stage(brief, &materials);
    let schedule = keep(
        schedule::stage(brief, &excavation, &block, &pier, &anchors, &floor),
        &mut notes,
    );
    let cautions = cautions::stage(&cautions::Job {
        brief,
        ground: &ground,
        excavation: &excavation,
        block: &block,
        pier: &pier,
        anchors: &anchors,
        floor: &floor,
        motion: &motion,
        checks: &notes.checks,
    });
    notes.take(cautions);
    let Notes {
        checks,
        assumptions,
        cautions,
        workings,
        opinions,
    } = notes;
    let ground_stiffness = stiffness;
    Design {
        engine_version: ENGINE_VERSION,
        verdict: verdict::find(&checks, &motion),
        loads,
        ground,
        excavation,
        block,
        ground_stiffness,
        pier,
        anchors,
        floor,
        motion,
        improvements: Vec::new(),
        north,
        checks,
        assumptions,
        cautions,
        materials,
        costs,
        schedule,
        workings,
        opinions,
        fitted: None,
        in_the_way: Vec::new(),
    }
}

/// A stage's figures, its notes put with the others.
fn keep<T>(found: crate::notes::Found<T>, notes: &mut Notes) -> T {
    notes.take(found.notes);
    found.value
}
