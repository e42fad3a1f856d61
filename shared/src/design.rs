//! The design: thirteen stages in order, each a function of the brief and of earlier stages, and their notes put together.

mod written;

use crate::brief::Brief;
use crate::cast::Cast;
use crate::halfspace::Shelf;
use crate::notes::{Assumption, Caution, Check, Notes, Obstacle, Opinion, Working};
use crate::proof::Fitted;
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
use crate::stages::parts::Part;
use crate::stages::pier::Pier;
use crate::stages::schedule::Task;
use crate::stages::{
    anchors, cautions, costs, ground_stiffness, materials, motion, north, parts, schedule,
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
    /// The parts that it is made of, each with its row of the catalogue.
    pub parts: Vec<Part>,
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

/// Runs the stages on complete inputs.
pub fn design(brief: &Brief, shelf: &dyn Shelf) -> Design {
    let mut notes = Notes {
        assumptions: brief.assumptions.clone(),
        ..Notes::default()
    };
    let cast = Cast::of(brief);
    let loads = cast.loads.noted(&mut notes);
    let ground = cast.ground.noted(&mut notes);
    let block = cast.block.noted(&mut notes);
    let excavation = cast.excavation.noted(&mut notes);
    let stiffness = ground_stiffness::stage(brief, &ground, &block, shelf).noted(&mut notes);
    let pier = cast.pier.noted(&mut notes);
    let anchors = anchors::stage(brief, &block, &loads).noted(&mut notes);
    let floor = cast.floor.noted(&mut notes);
    let motion = motion::stage(
        brief,
        &ground,
        &block,
        &stiffness,
        &pier,
        &floor,
        stiffness.influence(),
    )
    .noted(&mut notes);
    let north = north::stage(brief).noted(&mut notes);
    let parts = parts::stage(brief, &block, &pier).noted(&mut notes);
    let materials = materials::stage(brief, &excavation, &block, &pier, &anchors, &floor, &parts)
        .noted(&mut notes);
    let costs = costs::stage(brief, &materials);
    let schedule =
        schedule::stage(brief, &excavation, &block, &pier, &anchors, &floor).noted(&mut notes);
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
        parts,
        materials,
        costs,
        schedule,
        workings,
        opinions,
        fitted: None,
        in_the_way: Vec::new(),
    }
}
