//! Block, pit and column of twelve plans unlike the examples, check by check, against a script that reads the plans alone and types
//! formulas and tables from the standards again (`reference/block_again.py`).

use serde_json::Value;
use stillground::brief::resolve;
use stillground::notes::{Check, Question, Verdict};
use stillground::site_plan::SitePlan;
use stillground::stages::{block, excavation, floor, ground, loads, pier, room};

/// Demands and capacities agree to a thousandth: both sides calculate with the same figures of the same tables.
const NEAR: f64 = 1e-3;

/// The twelve plans.
const PLANS: [(&str, &str); 12] = [
    (
        "big-load-tall",
        include_str!("reference/plans/big-load-tall.json"),
    ),
    (
        "building-near",
        include_str!("reference/plans/building-near.json"),
    ),
    ("cold-silt", include_str!("reference/plans/cold-silt.json")),
    (
        "groundwater",
        include_str!("reference/plans/groundwater.json"),
    ),
    (
        "inch-and-pound",
        include_str!("reference/plans/inch-and-pound.json"),
    ),
    (
        "loose-sand-machine",
        include_str!("reference/plans/loose-sand-machine.json"),
    ),
    ("peat", include_str!("reference/plans/peat.json")),
    (
        "rock-with-dowels",
        include_str!("reference/plans/rock-with-dowels.json"),
    ),
    ("slope", include_str!("reference/plans/slope.json")),
    (
        "soft-clay-deep",
        include_str!("reference/plans/soft-clay-deep.json"),
    ),
    (
        "tiny-visual",
        include_str!("reference/plans/tiny-visual.json"),
    ),
    (
        "tree-in-clay",
        include_str!("reference/plans/tree-in-clay.json"),
    ),
];

const fn says(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds | Verdict::Close => "yes",
        Verdict::Unknown => "ask",
        Verdict::Fails => "no",
    }
}

/// What differs between a check and the script's: nothing, or a sentence.
fn differs(check: &Check, kept: &Value) -> Option<String> {
    let near = |found: Option<f64>, name: &str| match (found, kept[name].as_f64()) {
        (None, None) => true,
        (Some(found), Some(wanted)) => (found - wanted).abs() <= NEAR * wanted.abs().max(1e-9),
        _ => false,
    };
    let alike = near(check.demand, "demand")
        && near(check.capacity, "capacity")
        && kept["says"] == says(check.verdict);
    (!alike).then(|| {
        format!(
            "{}: {:?} of {:?}, {}, against {kept}",
            check.id,
            check.demand,
            check.capacity,
            says(check.verdict)
        )
    })
}

/// The checks of the stages up to the floor, which need no half-space.
fn checks(plan: &SitePlan) -> Vec<Check> {
    let brief = resolve(plan).unwrap();
    let ground = ground::stage(&brief);
    let loads = loads::stage(&brief);
    let room = room::room(&brief, &ground.value);
    let block = block::stage(&brief, &ground.value, &room, &loads.value);
    let pit = excavation::stage(&brief, &ground.value, &room, &block.value);
    let pier = pier::stage(&brief, &block.value, &loads.value);
    let floor = floor::stage(&brief, &ground.value, &block.value, &pier.value);
    [
        ground.notes,
        loads.notes,
        block.notes,
        pit.notes,
        pier.notes,
        floor.notes,
    ]
    .into_iter()
    .flat_map(|notes| notes.checks)
    .filter(|check| check.question == Question::Build)
    .collect()
}

/// Every check of building but those of the studs, which `checking_page` has; none on one side only.
#[test]
fn every_build_check_of_block_pit_and_column_of_twelve_plans() {
    let kept: Value = serde_json::from_str(include_str!("reference/block_again.json")).unwrap();
    assert_eq!(kept.as_object().unwrap().len(), PLANS.len());
    let (mut compared, mut apart) = (0, Vec::new());
    for (name, text) in PLANS {
        let plan: SitePlan = serde_json::from_str(text).unwrap();
        let mut kept = kept[name].as_object().unwrap().clone();
        for check in checks(&plan) {
            let differs = match kept.remove(check.id) {
                Some(kept) => differs(&check, &kept),
                None => Some(format!("{} is the engine's alone", check.id)),
            };
            apart.extend(differs.map(|differs| format!("{name}, {differs}")));
            compared += 1;
        }
        apart.extend(
            kept.keys()
                .map(|id| format!("{name}, {id} is the script's alone")),
        );
    }
    assert!(apart.is_empty(), "{}", apart.join("\n"));
    assert!(compared > 250, "{compared}");
}
