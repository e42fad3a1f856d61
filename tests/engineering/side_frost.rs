//! Frost that grips the block's sides: every plan in cold fine soil contains a remedy, and none is kinder for worse.

use stillground::brief::resolve;
use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::SmallShelf;
use stillground::notes::{Check, Verdict};
use stillground::record::items;
use stillground::site_plan::SitePlan;
use stillground::site_plan::block::FrostRemedy;
use stillground::site_plan::site::Soil;
use stillground::units::metre;

fn design(soil: Soil, change: impl Fn(&mut SitePlan)) -> Design {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(soil);
    plan.site.frost_depth_m = Some(0.8);
    plan.block.length_m = Some(1.0);
    plan.block.width_m = Some(1.0);
    plan.block.depth_m = Some(1.0);
    change(&mut plan);
    design_plan(&plan, &SmallShelf::holding(16)).unwrap()
}

fn grip(design: &Design) -> &Check {
    design
        .checks
        .iter()
        .find(|check| check.id == "block.adfreeze")
        .unwrap()
}

fn ratio(design: &Design) -> f64 {
    grip(design).utilisation.unwrap()
}

// The first version said nothing of the sides: a block in cold silt "holds".
#[test]
fn cold_silt_ends_with_the_remedy_in_the_plan() {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(Soil::Silt);
    plan.site.frost_depth_m = Some(1.0);
    let design = design_plan(&plan, &SmallShelf::holding(16)).unwrap();
    assert_eq!(design.block.side_frost.remedy, FrostRemedy::Insulation);
    assert!(matches!(
        grip(&design).verdict,
        Verdict::Holds | Verdict::Close
    ));
    for line in ["frost-boards", "frost-gravel"] {
        assert!(
            design.materials.iter().any(|material| material.id == line),
            "{line}"
        );
    }
    let task = |id| design.schedule.iter().find(|task| task.id == id).unwrap();
    assert!(task("frost_guard").earliest_h >= task("pour").done_h);
    assert!(
        design
            .cautions
            .iter()
            .any(|caution| caution.id == "block.frost_remedy")
    );
    assert!(
        design
            .assumptions
            .iter()
            .any(|said| said.field == "block.frost_remedy")
    );
    let looked_at = items(&resolve(&plan).unwrap(), &design);
    assert!(looked_at.iter().any(|item| item.task == "frost_guard"));
}

#[test]
fn nothing_is_done_where_nothing_grips() {
    for (soil, frost_m) in [(Soil::Gravel, 0.8), (Soil::Silt, 0.0)] {
        let design = design(soil, |plan| plan.site.frost_depth_m = Some(frost_m));
        assert_eq!(design.block.side_frost.remedy, FrostRemedy::None);
        assert_eq!(grip(&design).verdict, Verdict::Holds, "{}", soil.key());
        assert!(design.schedule.iter().all(|task| task.id != "frost_guard"));
    }
    let rock = design(Soil::Rock, |_| ());
    assert!(rock.checks.iter().all(|check| check.id != "block.adfreeze"));
}

// Computed apart for p 4 m, a 12 kPa: T = R at 0.159 m for the high bond and 0.232 m for the middle one.
#[test]
fn the_answer_is_yes_then_ask_then_no() {
    let at = |frost_m| {
        grip(&design(Soil::Silt, |plan| {
            plan.site.frost_depth_m = Some(frost_m);
            plan.block.frost_remedy = Some(FrostRemedy::None);
        }))
        .verdict
    };
    assert!(matches!(at(0.10), Verdict::Holds | Verdict::Close));
    assert_eq!(at(0.20), Verdict::Unknown);
    assert_eq!(at(0.45), Verdict::Fails);
}

#[test]
fn a_sleeve_costs_the_contact_and_insulation_does_not() {
    let rocking = |remedy| {
        let design = design(Soil::FirmClay, |plan| {
            plan.site.frost_depth_m = Some(0.45);
            plan.block.frost_remedy = Some(remedy);
        });
        let from = metre::get(design.block.side_contact_from);
        (from, design.ground_stiffness.typical.rocking_y.unwrap())
    };
    let ((nothing_from, nothing), (boards_from, boards)) =
        (rocking(FrostRemedy::None), rocking(FrostRemedy::Insulation));
    for remedy in [FrostRemedy::Sleeve, FrostRemedy::Gravel] {
        let (from, stiffness) = rocking(remedy);
        assert!((from - 0.45).abs() < 1e-9);
        assert!(stiffness < nothing * 0.9);
    }
    assert!((boards_from - nothing_from).abs() < 1e-12 && boards >= nothing);
}

#[test]
fn more_frost_is_never_kinder_and_more_depth_never_worse() {
    for soil in [Soil::Silt, Soil::MediumSand] {
        for remedy in [
            FrostRemedy::None,
            FrostRemedy::Insulation,
            FrostRemedy::Sleeve,
        ] {
            let with = |frost_m: f64, depth_m: f64| {
                ratio(&design(soil, |plan| {
                    plan.site.frost_depth_m = Some(frost_m);
                    plan.block.depth_m = Some(depth_m);
                    plan.block.frost_remedy = Some(remedy);
                }))
            };
            let frosts = [0.0, 0.1, 0.4, 1.2].map(|frost_m| with(frost_m, 1.0));
            assert!(
                frosts.windows(2).all(|pair| pair[0] <= pair[1] + 1e-9),
                "{}: {frosts:?}",
                soil.key()
            );
            let depths = [0.6, 1.0, 1.5].map(|depth_m| with(0.5, depth_m));
            assert!(
                depths.windows(2).all(|pair| pair[1] <= pair[0] + 1e-9),
                "{}: {depths:?}",
                soil.key()
            );
        }
    }
}

#[test]
fn insulation_is_never_worse_than_nothing() {
    for frost_m in [0.0, 0.05, 0.1, 0.4, 1.2] {
        let with = |remedy| {
            ratio(&design(Soil::Silt, |plan| {
                plan.site.frost_depth_m = Some(frost_m);
                plan.block.frost_remedy = Some(remedy);
            }))
        };
        assert!(with(FrostRemedy::Insulation) <= with(FrostRemedy::None) + 1e-9);
    }
}
