//! Vertical cuts in clay: printed answers of textbook and examination problems, H = 4 c/γ; strengths of BS 5930's words.

use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::SmallShelf;
use stillground::rules::terzaghi_1943::vertical_cut::{cracked, whole};
use stillground::site_plan::SitePlan;
use stillground::site_plan::excavation::Sides;
use stillground::site_plan::site::Soil;
use stillground::stages::ground::bearing_table::{self, Strength};
use stillground::stages::ground::soil_table::row;
use stillground::units::{kilonewton_per_cubic_metre, kilopascal, metre};
use stillground_tests::close;

#[test]
fn printed_answers() {
    // Three problems with their printed answers: c 15, γ 20: 3 m; c 14, γ 21: 2.67 m; c 30, γ 15: 8 m.
    for (strength, weight, height) in [(15.0, 20.0, 3.0), (14.0, 21.0, 2.67), (30.0, 15.0, 8.0)] {
        let found = whole(
            kilopascal::new(strength),
            kilonewton_per_cubic_metre::new(weight),
        );
        close("critical height", metre::get(found), height, 2e-3);
    }
}

#[test]
fn a_cracked_face_falls_at_two_thirds() {
    // Terzaghi's 2.67 c/γ.
    let (strength, weight) = (kilopascal::new(40.0), kilonewton_per_cubic_metre::new(18.5));
    close(
        "cracked",
        metre::get(cracked(strength, weight)),
        2.67 * 40.0 / 18.5,
        2e-3,
    );
}

fn lowest_kpa(soil: Soil) -> f64 {
    match bearing_table::row(soil).unwrap().strength.unwrap() {
        Strength::Undrained { low_kpa, .. } => low_kpa,
        Strength::Drained { .. } => panic!("no clay"),
    }
}

#[test]
fn words_of_bs_5930() {
    // Soft 20 to 40 kPa, firm 40 to 75, stiff 75 to 150, very stiff 150 to 300: the table has each word's low end.
    let strengths = [
        Soil::SoftClay,
        Soil::FirmClay,
        Soil::StiffClay,
        Soil::HardClay,
    ]
    .map(lowest_kpa);
    assert_eq!(strengths, [20.0, 40.0, 75.0, 150.0]);
}

#[test]
fn slope_types_follow_from_the_words_strengths() {
    // 29 CFR 1926 Subpart P, Appendix A: unconfined strength 2 c of at most 48 kPa is C, 48 to 144 kPa B; above that A only
    // where no fissure, vibration or earlier digging weakens it, which no word can say.
    use stillground::rules::osha_1926_p_1989::slopes::SlopeType;
    let soft = row(Soil::SoftClay);
    assert!(2.0 * lowest_kpa(Soil::SoftClay) <= 48.0 && soft.slope_type == SlopeType::C);
    let firm = row(Soil::FirmClay);
    assert!(
        (48.0..144.0).contains(&(2.0 * lowest_kpa(Soil::FirmClay)))
            && firm.slope_type == SlopeType::B
    );
    assert_eq!(
        [Soil::StiffClay, Soil::HardClay].map(|soil| row(soil).slope_type),
        [SlopeType::B; 2]
    );
}

/// A face that will not stand is lined: boards and struts in the order, a task between digging and trimming, and a caution.
#[test]
fn a_face_that_will_not_stand_is_lined_in_the_plan() {
    let design = |soil, depth| {
        let mut plan = SitePlan::unknown();
        plan.site.soil = Some(soil);
        plan.excavation.sides = Some(Sides::Vertical);
        plan.block.depth_m = Some(depth);
        design_plan(&plan, &SmallShelf::holding(4)).unwrap()
    };
    let lined = |design: &Design| {
        let boards = ["trench-sheets", "pit-struts"]
            .iter()
            .filter(|id| design.materials.iter().any(|line| line.id == **id))
            .count();
        let task = design.schedule.iter().any(|task| task.id == "line_faces");
        let caution = design
            .cautions
            .iter()
            .any(|caution| caution.id == "excavation.lining");
        (design.excavation.shuttered, boards, task, caution)
    };
    for (soil, depth, wanted) in [
        (Soil::LooseSand, 1.0, (true, 2, true, true)),
        (Soil::Gravel, 0.5, (true, 2, true, true)),
        // Firm clay may stand to 1.2 m for hours, and not above.
        (Soil::FirmClay, 1.2, (false, 0, false, false)),
        (Soil::FirmClay, 1.3, (true, 2, true, true)),
        // From 5 ft on the pit has shoring that somebody designed.
        (Soil::LooseSand, 1.6, (true, 0, true, true)),
        (Soil::Rock, 1.0, (false, 0, false, false)),
    ] {
        assert_eq!(lined(&design(soil, depth)), wanted, "{soil:?} {depth}");
    }
    let sand = design(Soil::LooseSand, 1.0);
    let task = |id| sand.schedule.iter().find(|task| task.id == id).unwrap();
    assert!(task("inspect").earliest_h >= task("line_faces").done_h);
    // Around a metre's pit 4 m of face at 0.33 m each: 13 sheets; frames at the top and 0.6 m down.
    let pieces = |id| {
        let mut lines = sand.materials.iter();
        lines.find(|line| line.id == id).unwrap().quantity
    };
    let around = 2.0 * metre::get(sand.excavation.length + sand.excavation.width);
    assert_eq!(pieces("trench-sheets"), (around / 0.33).ceil());
    assert_eq!(pieces("pit-struts"), 2.0);
}
