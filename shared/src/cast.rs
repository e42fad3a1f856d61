//! Cast: the stages that need nothing of how the ground moves, for a design and for whoever compares many.

use crate::brief::Brief;
use crate::notes::{Check, Found, Question, Verdict};
use crate::stages::block::{self, Block};
use crate::stages::excavation::{self, Excavation};
use crate::stages::floor::{self, Floor};
use crate::stages::ground::{self, Ground};
use crate::stages::loads::{self, Loads};
use crate::stages::pier::{self, Pier};
use crate::stages::room;

/// What stands in the pit, before anybody asks how it moves; the studs, which take longest, are left to the caller.
#[derive(Debug)]
pub struct Cast {
    /// What acts at the foot of the column.
    pub loads: Found<Loads>,
    /// What the ground is.
    pub ground: Found<Ground>,
    /// The block.
    pub block: Found<Block>,
    /// The pit.
    pub excavation: Found<Excavation>,
    /// The column.
    pub pier: Found<Pier>,
    /// The floor.
    pub floor: Found<Floor>,
}

impl Cast {
    /// Runs the stages on complete inputs.
    pub fn of(brief: &Brief) -> Self {
        let loads = loads::stage(brief);
        let ground = ground::stage(brief);
        let room = room::room(brief, &ground.value);
        let block = block::stage(brief, &ground.value, &room, &loads.value);
        let excavation = excavation::stage(brief, &ground.value, &room, &block.value);
        let pier = pier::stage(brief, &block.value, &loads.value);
        let floor = floor::stage(brief, &ground.value, &block.value, &pier.value);
        Self {
            loads,
            ground,
            block,
            excavation,
            pier,
            floor,
        }
    }

    /// Every check.
    pub fn checks(&self) -> impl Iterator<Item = &Check> {
        [
            &self.loads.notes,
            &self.ground.notes,
            &self.block.notes,
            &self.excavation.notes,
            &self.pier.notes,
            &self.floor.notes,
        ]
        .into_iter()
        .flat_map(|notes| &notes.checks)
    }

    /// Checks of building that fail.
    pub fn fails(&self) -> impl Iterator<Item = &'static str> + '_ {
        self.checks()
            .filter(|check| fails(check))
            .map(|check| check.id)
    }
}

/// Whether a check of building fails.
fn fails(check: &Check) -> bool {
    check.question == Question::Build && check.verdict == Verdict::Fails
}

/// Checks of building among these that fail.
pub fn failing(checks: &[Check]) -> impl Iterator<Item = &'static str> + '_ {
    checks
        .iter()
        .filter(|check| fails(check))
        .map(|check| check.id)
}
