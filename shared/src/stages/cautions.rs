//! Cautions: what can hurt, said where the danger is. All of them stand here and are listed last, when every figure is known.

mod building;
mod concrete;
mod floor;
mod ground;
mod ground_works;
pub mod measuring;
mod pit;
mod studs;
mod using;

use crate::brief::Brief;
use crate::notes::{Check, Notes};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::motion::Motion;
use crate::stages::pier::Pier;
use crate::units::metre;

/// What the cautions are chosen by: everything that was found.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// Complete inputs.
    pub brief: &'a Brief,
    /// The ground.
    pub ground: &'a Ground,
    /// The pit.
    pub excavation: &'a Excavation,
    /// The block.
    pub block: &'a Block,
    /// The column.
    pub pier: &'a Pier,
    /// The studs.
    pub anchors: &'a Anchors,
    /// The floor.
    pub floor: &'a Floor,
    /// The star.
    pub motion: &'a Motion,
    /// What the stages checked.
    pub checks: &'a [Check],
}

/// Lists the cautions that this plan calls for: those of its own figures in the order of the work, then what holds for every plan.
pub fn stage(job: &Job) -> Notes {
    let Job {
        brief,
        ground,
        excavation,
        block,
        pier,
        anchors,
        floor,
        motion,
        checks,
    } = *job;
    let mut notes = Notes::default();
    ground::list(brief, ground, &mut notes);
    concrete::list(
        brief,
        block,
        metre::get(ground.frost_depth),
        checks,
        &mut notes,
    );
    pit::list(brief, ground, excavation, &mut notes);
    building::heavy(brief, pier.lifted_mass, &mut notes);
    studs::list(brief, anchors.seat, &mut notes);
    floor::list(brief, floor, &mut notes);
    if let Some(season) = &motion.season {
        using::season(brief, season, &mut notes);
    }
    using::north(&mut notes);
    ground_works::judge_first(ground, &mut notes);
    ground_works::list(job, &mut notes);
    building::list(job, &mut notes);
    measuring::list(brief, &mut notes);
    using::list(job, &mut notes);
    notes
}

#[cfg(test)]
mod tests {
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::notes::When;
    use crate::site_plan::SitePlan;

    #[test]
    fn every_part_of_the_work_has_its_caution() {
        let cautions = design_plan(&SitePlan::unknown(), &NoShelf)
            .unwrap()
            .cautions;
        for when in [
            When::Planning,
            When::Digging,
            When::Pouring,
            When::Drilling,
            When::Bonding,
            When::Lifting,
            When::Tightening,
            When::Wiring,
            When::Measuring,
            When::Observing,
        ] {
            assert!(
                cautions.iter().any(|caution| caution.when == when),
                "{when:?}"
            );
        }
        // What kills most often is never left to another stage.
        for id in [
            "dig.services",
            "dig.open_pit",
            "excavation.collapse",
            "pour.cement",
            "drill.silica",
            "lift.column",
            "wire.licensed",
        ] {
            assert!(cautions.iter().any(|caution| caution.id == id), "{id}");
        }
    }
}
