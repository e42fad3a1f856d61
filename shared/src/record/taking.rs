//! A finding taken into the plan: the answer that it gives, in place of what was planned or assumed.

use super::entry::{Entry, Kind};
use crate::design::Design;
use crate::field::Path;
use crate::row;
use crate::site_plan::SitePlan;
use crate::site_plan::commissioning::{Direction, Knock, Lean, Measurement};
use crate::units::millimetre;

/// Items that earlier versions asked for, and that can still be taken into the plan.
pub(super) const FIRST_FREQUENCY: &str = "first_frequency";
/// With the number of the place behind it.
pub(super) const STAND: &str = "stand:";
/// The time until the star was still.
pub(super) const SETTLING: &str = "settling";
/// What was measured of the finished pier, as one answer of the plan.
const MEASURED: Path = Path::new("commissioning");

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
pub fn taken(entry: &Entry, plan: &SitePlan, design: &Design) -> Option<Taken> {
    if entry.kind != Kind::Measured {
        return None;
    }
    let mut made = plan.clone();
    let of_pier = measurement(entry, design);
    if let Some(measurement) = &of_pier {
        // What the plan has already stays as it is; then nothing is taken.
        let _ = measurement.put(&mut made.commissioning);
    }
    let field = match (entry.value, entry.text.as_deref()) {
        _ if of_pier.is_some() => Some(MEASURED),
        (Some(value), _) => number(entry.item.as_deref()?, value, &mut made, design),
        (None, Some(key)) => word(entry.item.as_deref()?, key, &mut made),
        (None, None) => None,
    }?;
    (made != *plan && made.validate().is_ok()).then_some(Taken { field, plan: made })
}

/// What an entry says of the finished pier: a knock, a lean or a pull, also where it was entered as one figure.
pub fn measurement(entry: &Entry, design: &Design) -> Option<Measurement> {
    if entry.measurement.is_some() {
        return entry.measurement.clone();
    }
    let (item, value) = (entry.item.as_deref()?, entry.value?);
    if item == FIRST_FREQUENCY {
        return Some(Measurement::Knock(Knock {
            direction: Direction::X,
            with_mount: true,
            frequency_hz: value,
            frequency_sd_hz: None,
            damping_ratio: None,
            mode: None,
        }));
    }
    let place: usize = item.strip_prefix(STAND)?.parse().ok()?;
    let stand = design.floor.stands.get(place.checked_sub(1)?)?;
    Some(Measurement::Lean(Lean {
        x_m: stand.x_m,
        y_m: stand.y_m,
        mass_kg: stand.mass_kg,
        tilt_arcsec: value,
        tilt_sd_arcsec: None,
        bearing_deg: None,
    }))
}

fn number(item: &str, value: f64, made: &mut SitePlan, design: &Design) -> Option<Path> {
    let (pit, anchors) = (&design.excavation, &design.anchors);
    if item == SETTLING {
        made.commissioning.symptoms.lasts_s = Some(value);
        return Some(MEASURED);
    }
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
    fn what_was_measured_of_the_pier_is_taken_once_and_also_as_one_figure_from_before() {
        let knock = Entry::measured("a", "measure", FIRST_FREQUENCY, 14.2);
        let taken = with(&knock).unwrap();
        assert_eq!(taken.field, "commissioning");
        let found = &taken.plan.commissioning.knocks[0];
        assert!(found.with_mount && found.frequency_hz == 14.2);
        let design = design_plan(&plan(), &NoShelf).unwrap();
        let again = Entry::of_pier("b", Measurement::Knock(found.clone()));
        assert_eq!(super::taken(&again, &taken.plan, &design), None);
        let lean = with(&Entry::measured("c", "measure", "stand:1", 0.4)).unwrap();
        let stand = &design.floor.stands[0];
        let leans = &lean.plan.commissioning.leans;
        assert_eq!((leans[0].x_m, leans[0].mass_kg), (stand.x_m, stand.mass_kg));
        let still = with(&Entry::measured("d", "measure", SETTLING, 3.0)).unwrap();
        assert_eq!(still.plan.commissioning.symptoms.lasts_s, Some(3.0));
        assert_eq!(
            with(&Entry::measured("e", "measure", "stand:99", 0.4)),
            None
        );
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
