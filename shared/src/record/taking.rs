//! A finding taken into the plan: the answer that it gives, in place of what was planned or assumed.

use super::entry::{Entry, Kind};
use crate::design::Design;
use crate::field::Path;
use crate::row;
use crate::site_plan::SitePlan;
use crate::units::millimetre;

/// A plan with a finding in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Taken {
    /// The answer that the finding gives.
    pub field: Path,
    /// The plan with that answer.
    pub plan: SitePlan,
}

/// The plan with what an entry found as its answer. None where the finding answers no question of the plan, where the plan
/// says the same already, or where the answer is one that no plan may have.
#[must_use]
pub fn taken(entry: &Entry, plan: &SitePlan, design: &Design) -> Option<Taken> {
    if entry.kind != Kind::Measured {
        return None;
    }
    let mut made = plan.clone();
    let field = match (entry.value, entry.text.as_deref()) {
        (Some(value), _) => number(entry.item.as_deref()?, value, &mut made, design),
        (None, Some(key)) => word(entry.item.as_deref()?, key, &mut made),
        (None, None) => None,
    }?;
    (made != *plan && made.validate().is_ok()).then_some(Taken { field, plan: made })
}

fn number(item: &str, value: f64, made: &mut SitePlan, design: &Design) -> Option<Path> {
    let (pit, anchors) = (&design.excavation, &design.anchors);
    let name = item.split(':').next().unwrap_or(item);
    // The answer, its value, and the room that is there at least.
    let (answer, value, room) = match name {
        // The pit is as deep as the block.
        "pit_depth" => {
            let room = row!(excavation.max_depth_m).row;
            (row!(block.depth_m).row, value, Some(room))
        }
        // Where it is cast in shuttering, a wider pit makes no wider block.
        "pit_length" if pit.cast_against_ground => {
            let room = row!(excavation.max_length_m).row;
            (row!(block.length_m).row, value, Some(room))
        }
        "pit_width" if pit.cast_against_ground => {
            let room = row!(excavation.max_width_m).row;
            (row!(block.width_m).row, value, Some(room))
        }
        "water_depth" => (row!(site.groundwater_depth_m).row, value, None),
        "hole_depth" => {
            let dust = millimetre::get(anchors.hole_depth) - millimetre::get(anchors.embedment);
            (row!(anchors.embedment_mm).row, value - dust, None)
        }
        "hole_diameter" => (row!(anchors.hole_diameter_mm).row, value, None),
        "bond_temperature" => (row!(anchors.concrete_temperature_c).row, value, None),
        "sheet_torque" => (row!(anchors.max_torque_n_m).row, value, None),
        _ => return None,
    };
    (answer.set)(made, Some(value));
    // What was dug there is room for.
    if let Some(room) = room
        && (room.get)(made).is_some_and(|there| there < value)
    {
        (room.set)(made, Some(value));
    }
    Some(answer.path)
}

fn word(item: &str, key: &str, made: &mut SitePlan) -> Option<Path> {
    let answer = match item {
        "soil_met" => row!(site.soil).row,
        "concrete_class" => row!(block.concrete).row,
        _ => return None,
    };
    (answer.set_key)(made, Some(key)).then_some(answer.path)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief::resolve;
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::record::judge;
    use crate::record::verdict::Verdict;
    use crate::site_plan::block::Concrete;
    use crate::site_plan::site::Soil;
    use crate::units::metre;

    fn plan() -> SitePlan {
        let mut plan = SitePlan::unknown();
        plan.block.depth_m = Some(0.9);
        plan
    }

    fn with(entry: &Entry) -> Option<Taken> {
        let plan = plan();
        taken(entry, &plan, &design_plan(&plan, &NoShelf).unwrap())
    }

    #[test]
    fn a_shallower_pit_gives_a_block_by_as_much_shallower_and_is_then_as_planned() {
        let before = design_plan(&plan(), &NoShelf).unwrap();
        let depth = metre::get(before.excavation.depth) - 0.1;
        let entry = Entry::measured("a", "inspect", "pit_depth", depth);
        let taken = with(&entry).unwrap();
        assert_eq!(taken.field, "block.depth_m");
        assert!((taken.plan.block.depth_m.unwrap() - 0.8).abs() < 1e-9);
        let brief = resolve(&taken.plan).unwrap();
        let design = design_plan(&taken.plan, &NoShelf).unwrap();
        assert_eq!(judge(&entry, &brief, &design), Some(Verdict::Within));
    }

    #[test]
    fn a_deeper_pit_makes_room_for_itself() {
        let mut plan = plan();
        plan.excavation.max_depth_m = Some(0.9);
        let design = design_plan(&plan, &NoShelf).unwrap();
        let depth = metre::get(design.excavation.depth) + 0.2;
        let entry = Entry::measured("a", "inspect", "pit_depth", depth);
        let made = taken(&entry, &plan, &design).unwrap().plan;
        assert_eq!(made.excavation.max_depth_m, made.block.depth_m);
    }

    #[test]
    fn soil_and_class_are_answers_and_what_answers_nothing_is_not_taken() {
        let soil = with(&Entry::answered("a", "inspect", "soil_met", "soft_clay")).unwrap();
        assert_eq!(soil.plan.site.soil, Some(Soil::SoftClay));
        let class = with(&Entry::answered("a", "pour", "concrete_class", "C20/25")).unwrap();
        assert_eq!(class.plan.block.concrete, Some(Concrete::C20));
        assert_eq!(
            with(&Entry::answered("a", "pour", "concrete_class", "other")),
            None
        );
        assert_eq!(with(&Entry::measured("a", "level", "plumb_x", 1.0)), None);
        assert_eq!(with(&Entry::new("a", "dig", Kind::Done)), None);
        assert_eq!(
            with(&Entry::measured("a", "inspect", "pit_depth", -4.0)),
            None
        );
    }
}
