//! Cautions: what can hurt, said where the danger is. Those that belong to one stage's figures stand in that stage.

mod building;
mod ground_works;
mod using;

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::pier::Pier;

/// What the cautions are chosen by.
struct Job<'a> {
    brief: &'a Brief,
    excavation: &'a Excavation,
    block: &'a Block,
    pier: &'a Pier,
}

/// Lists the cautions that this plan calls for.
#[must_use]
pub fn stage(
    brief: &Brief,
    ground: &Ground,
    excavation: &Excavation,
    block: &Block,
    pier: &Pier,
    _anchors: &Anchors,
    _floor: &Floor,
) -> Notes {
    let job = Job {
        brief,
        excavation,
        block,
        pier,
    };
    let mut notes = Notes::default();
    ground_works::judge_first(ground, &mut notes);
    ground_works::list(&job, &mut notes);
    building::list(&job, &mut notes);
    using::list(&job, &mut notes);
    notes
}

#[cfg(test)]
mod tests {
    use crate::design::design_plan;
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
