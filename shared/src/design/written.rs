//! A design as JSON. What would help stands with the motion that it helps, as it always has.

use serde::{Serialize, Serializer};

use super::Design;
use crate::notes::{Assumption, Caution, Check, Obstacle, Opinion, Working};
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
use crate::verdict::Verdict;

#[derive(Serialize)]
struct MotionWritten<'a> {
    #[serde(flatten)]
    motion: &'a Motion,
    improvements: &'a [Improvement],
}

#[derive(Serialize)]
struct Written<'a> {
    engine_version: &'static str,
    verdict: &'a Verdict,
    loads: &'a Loads,
    ground: &'a Ground,
    excavation: &'a Excavation,
    block: &'a Block,
    ground_stiffness: &'a GroundStiffness,
    pier: &'a Pier,
    anchors: &'a Anchors,
    floor: &'a Floor,
    motion: MotionWritten<'a>,
    north: &'a North,
    checks: &'a [Check],
    assumptions: &'a [Assumption],
    cautions: &'a [Caution],
    parts: &'a [Part],
    materials: &'a [Material],
    costs: &'a Costs,
    schedule: &'a [Task],
    workings: &'a [Working],
    opinions: &'a [Opinion],
    fitted: &'a Option<Fitted>,
    in_the_way: &'a [Obstacle],
}

impl Serialize for Design {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        // Every field is named, so that none is forgotten.
        let Self {
            engine_version,
            verdict,
            loads,
            ground,
            excavation,
            block,
            ground_stiffness,
            pier,
            anchors,
            floor,
            motion,
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
            fitted,
            in_the_way,
            improvements,
        } = self;
        Written {
            engine_version,
            verdict,
            loads,
            ground,
            excavation,
            block,
            ground_stiffness,
            pier,
            anchors,
            floor,
            motion: MotionWritten {
                motion,
                improvements,
            },
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
            fitted,
            in_the_way,
        }
        .serialize(serializer)
    }
}
