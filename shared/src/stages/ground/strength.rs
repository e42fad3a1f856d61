//! Strength of the ground at the block's base: measured, or that of the soil in words.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption, Notes};
use crate::path;
use crate::site_plan;
use crate::stages::ground::Ground;
use crate::stages::ground::bearing_table::{self, Strength};
use crate::stages::ground::soil_table::{self, Group};

/// The measured strength that counts in this kind of ground; none where none was measured, and where what was measured says
/// nothing of it.
pub fn measured(stated: &site_plan::Site, group: Group) -> Option<Strength> {
    let undrained = stated
        .undrained_strength_kpa
        .map(|kpa| Strength::Undrained {
            low_kpa: kpa,
            high_kpa: kpa,
        });
    let drained = stated.friction_angle_deg.map(|deg| Strength::Drained {
        low_deg: deg,
        high_deg: deg,
    });
    match group {
        Group::Clay => undrained,
        Group::Silt => undrained.or(drained),
        Group::Sand | Group::Gravel => drained,
        Group::Rock | Group::Unfit => None,
    }
}

/// The strength by which the block is judged; none in rock and where a ground engineer has to say.
pub fn find(brief: &Brief, group: Group) -> Option<Strength> {
    measured(&brief.site.stated, group)
        .or_else(|| bearing_table::row(brief.site.soil.value).and_then(|row| row.strength))
}

/// The assumption where nothing was measured, and a word where what was measured is set aside.
pub fn notes(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    if !ground.strength_is_measured {
        notes.assumptions.extend(assumed(brief, ground));
    }
}

/// Whether a strength was measured that says nothing of this ground.
pub fn is_set_aside(brief: &Brief, ground: &Ground) -> bool {
    let stated = &brief.site.stated;
    let said = stated.undrained_strength_kpa.is_some() || stated.friction_angle_deg.is_some();
    said && !ground.strength_is_measured
}

fn assumed(brief: &Brief, ground: &Ground) -> Option<Assumption> {
    let source = bearing_table::row(ground.soil)?.strength_source;
    let (field, low, high, unit) = match ground.strength? {
        Strength::Undrained { low_kpa, high_kpa } => (
            path!(site.undrained_strength_kpa),
            low_kpa,
            high_kpa,
            Unit::Kilopascal,
        ),
        Strength::Drained { low_deg, high_deg } => (
            path!(site.friction_angle_deg),
            low_deg,
            high_deg,
            Unit::Degree,
        ),
    };
    Some(Assumption {
        field,
        value: AssumedValue::Number(low),
        unit,
        why: format!(
            "the least that is usual for {}; the most is {}",
            soil_table::words(ground.soil),
            brief.units.say(high, unit)
        ),
        effect:
            "bearing resistance of the block's base; in clay how high a vertical face may be left"
                .into(),
        source,
    })
}

#[cfg(test)]
mod tests {
    use crate::decided::design_plan;
    use crate::design::Design;
    use crate::halfspace::NoShelf;
    use crate::notes::Verdict;
    use crate::site_plan::SitePlan;
    use crate::site_plan::site::Soil;

    fn design(soil: Soil, change: impl FnOnce(&mut SitePlan)) -> Design {
        let mut plan = SitePlan::unknown();
        plan.site.soil = Some(soil);
        plan.block.depth_m = Some(1.0);
        plan.block.length_m = Some(1.0);
        plan.block.width_m = Some(1.0);
        change(&mut plan);
        design_plan(&plan, &NoShelf).unwrap()
    }

    fn capacity(design: &Design) -> f64 {
        let mut checks = design.checks.iter();
        let check = checks.find(|check| check.id == "block.effective_bearing");
        check.and_then(|check| check.capacity).unwrap()
    }

    /// Soft clay by its word has 20 kPa (BS 5930, from memory): a vane that found 20 changes nothing, one that found 35 does.
    #[test]
    fn the_measured_strength_takes_the_place_of_the_words() {
        let word = design(Soil::SoftClay, |_| ());
        let found = |kpa| {
            design(Soil::SoftClay, |plan| {
                plan.site.undrained_strength_kpa = Some(kpa)
            })
        };
        assert!((capacity(&found(20.0)) / capacity(&word) - 1.0).abs() < 1e-9);
        assert!(capacity(&found(35.0)) > 1.3 * capacity(&word));
        assert!(found(35.0).ground.strength_is_measured && !word.ground.strength_is_measured);
        let assumed = |design: &Design| {
            let mut all = design.assumptions.iter();
            all.any(|one| one.field == "site.undrained_strength_kpa")
        };
        assert!(assumed(&word) && !assumed(&found(20.0)));
    }

    /// Basis: yes where strength was measured and every approach holds at it, though tables presume less than the base presses.
    #[test]
    fn what_holds_at_a_measured_strength_is_not_asked_for_a_tables_least() {
        let heavy = |plan: &mut SitePlan| {
            plan.load.mass_kg = Some(2000.0);
            plan.block.upstand_m = Some(0.6);
        };
        let bearing = |design: &Design| {
            let mut checks = design.checks.iter();
            checks
                .find(|check| check.id == "block.bearing")
                .unwrap()
                .verdict
        };
        assert_eq!(bearing(&design(Soil::SoftClay, heavy)), Verdict::Unknown);
        let measured = design(Soil::SoftClay, |plan| {
            heavy(plan);
            plan.site.undrained_strength_kpa = Some(60.0);
        });
        assert_ne!(bearing(&measured), Verdict::Unknown);
        assert_ne!(bearing(&measured), Verdict::Fails);
    }

    #[test]
    fn a_strength_of_other_ground_is_set_aside_and_said_to_be() {
        let sand = design(Soil::MediumSand, |plan| {
            plan.site.undrained_strength_kpa = Some(50.0)
        });
        let mut cautions = sand.cautions.iter();
        assert!(cautions.any(|caution| caution.id == "ground.strength_set_aside"));
        assert!(!sand.ground.strength_is_measured);
    }
}
