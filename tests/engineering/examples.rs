//! The example plans: each gives a complete design, the designs differ where the sites differ, and the reasons read true.
//!
//! The expectations are an installer's common sense and the arithmetic of each case by hand.

use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::NoShelf;
use stillground::notes::Verdict;
use stillground::units::{day, kilogram, metre};
use stillground_tests::{close, example};

const ALL: [&str; 6] = [
    "quarry-lane",
    "firm-clay-garden",
    "club-on-shallow-rock",
    "sandy-water",
    "everything-unknown",
    "inch-garden",
];

fn design(name: &str) -> Design {
    design_plan(&example(name), &NoShelf).unwrap()
}

fn why<'a>(design: &'a Design, field: &str) -> &'a str {
    design
        .assumptions
        .iter()
        .find(|assumption| assumption.field == field)
        .map_or("", |assumption| assumption.why.as_str())
}

fn has(design: &Design, item: &str) -> bool {
    design.materials.iter().any(|line| line.item.contains(item))
}

fn verdict(design: &Design, id: &str) -> Verdict {
    design
        .checks
        .iter()
        .find(|check| check.id == id)
        .map(|check| check.verdict)
        .unwrap()
}

#[test]
fn every_example_gives_a_whole_plan() {
    for name in ALL {
        let design = design(name);
        assert!(
            design.materials.len() > 50 && design.schedule.len() > 20 && design.cautions.len() > 15,
            "{name}"
        );
        assert!(
            design
                .checks
                .iter()
                .any(|check| check.id == "block.overturning" && check.verdict == Verdict::Holds),
            "{name}"
        );
        for check in &design.checks {
            assert!(
                check.verdict != Verdict::Fails || !check.note.is_empty(),
                "{name}: {} fails without a word",
                check.id
            );
        }
        assert!(
            design.block.rules_of_thumb[1]
                .verdict_words
                .contains("disagree"),
            "{name}"
        );
        assert_eq!(design.block.strength_by_day.len(), 8, "{name}");
    }
}

/// Words are for people: no run of spaces, no missing sentence, no exclamation.
#[test]
fn every_text_reads_cleanly() {
    for name in ALL {
        let text = serde_json::to_string(&design(name)).unwrap();
        for bad in ["  ", " .", " ,", "!", "..", "NaN"] {
            let at = text.find(bad).map(|at| {
                text[at.saturating_sub(80)..]
                    .chars()
                    .take(120)
                    .collect::<String>()
            });
            assert!(at.is_none(), "{name}: {bad:?} in {at:?}");
        }
        assert!(
            design(name)
                .schedule
                .iter()
                .all(|task| !task.why.is_empty()),
            "{name}"
        );
    }
}

#[test]
fn the_lane_pier_works() {
    let design = design("quarry-lane");
    let failing: Vec<_> = design
        .checks
        .iter()
        .filter(|check| check.verdict == Verdict::Fails)
        .map(|check| check.id)
        .collect();
    assert!(failing.is_empty(), "{failing:?}");
    assert!(
        has(&design, "grout")
            && has(&design, "Kiln-dried sand")
            && has(&design, "Ready-mixed concrete C30/37")
    );
    assert!(
        design
            .schedule
            .iter()
            .all(|task| task.earliest.starts_with("2027-")),
        "dates from the stated day"
    );
    assert_eq!(design.schedule[0].earliest, "2027-04-19");
}

/// A metre can be dug: the metre cube of the trade, 1.05 m³ with its upstand, 2.52 t; bags of 20 kg at 2215 kg to the m³.
#[test]
fn firm_clay_gets_the_metre_cube() {
    let design = design("firm-clay-garden");
    let block = &design.block;
    for side in [block.length, block.width, block.depth] {
        close("side", metre::get(side), 1.0, 1e-9);
    }
    close("mass", kilogram::get(block.mass), 2520.0, 1e-9);
    assert_eq!(
        block.concrete.bags,
        Some((1.05_f64 * 1.1 * 2215.0 / 20.0).ceil() as u32)
    );
    assert!(
        has(&design, "Dry concrete in bags of 20\u{a0}kg")
            && has(&design, "Concrete mixer")
            && !has(&design, "Sump pump")
    );
}

/// Half a metre: as stiff in rocking as a metre cube at 1.53 m (B³ + B²/2 + 0.2963 B = 0.9676 by hand), in steps of 50 mm 1.55 m.
#[test]
fn shallow_rock_gets_a_wide_block() {
    let design = design("club-on-shallow-rock");
    let block = &design.block;
    close("depth", metre::get(block.depth), 0.5, 1e-9);
    close("width", metre::get(block.width), 1.55, 1e-9);
    assert!(
        why(&design, "block.width_m").contains("0.55\u{a0}m wider"),
        "{}",
        why(&design, "block.width_m")
    );
    assert!(
        block.rules_of_thumb[0]
            .verdict_words
            .contains("makes up for it in width")
    );
    assert!(
        has(&design, "Mini digger") && has(&design, "Breaker") && has(&design, "Flowing concrete")
    );
    assert!(design.schedule.iter().any(|task| task.id == "grout_sets"));
}

#[test]
fn sand_over_water_stays_above_it_and_grows_wider() {
    let design = design("sandy-water");
    let block = &design.block;
    assert!(metre::get(block.depth) <= 0.7 + 1e-9 && metre::get(block.depth) >= 0.5);
    assert!(metre::get(block.width) > 1.0);
    assert!(why(&design, "block.depth_m").contains("groundwater"));
    assert_eq!(verdict(&design, "block.buoyancy"), Verdict::Holds);
    assert!(
        !design.excavation.dewatering,
        "a base above the water needs no pump"
    );
}

/// The resin waits longer in wet, cold holes; the concrete longer at 8 °C than at 15 °C.
#[test]
fn cold_and_wet_take_longer() {
    let (wet, dry) = (design("sandy-water"), design("club-on-shallow-rock"));
    let lasts = |design: &Design, id: &str| {
        design
            .schedule
            .iter()
            .find(|task| task.id == id)
            .map(|task| task.lasts_h)
            .unwrap()
    };
    assert!(lasts(&wet, "resin_cures") > lasts(&dry, "resin_cures"));
    assert!(day::get(wet.block.load_after) > day::get(dry.block.load_after));
}

#[test]
fn nothing_known_still_says_everything_it_took() {
    let design = design("everything-unknown");
    for field in [
        "site.soil",
        "block.length_m",
        "block.width_m",
        "block.depth_m",
        "block.concrete",
        "work.temperature_c",
        "block.side_contact_from_m",
    ] {
        assert!(!why(&design, field).is_empty(), "{field}");
    }
    close("mass", kilogram::get(design.block.mass), 2520.0, 1e-9);
}
