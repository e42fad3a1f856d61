//! Every caution by its name: the plan that calls for it has it, and the plan in which nothing is known has it only where it
//! holds for everybody. Which answers call for which caution is judgement; each caution's own source stands beside its text.

use std::collections::BTreeSet;

use serde_json::json;
use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground_tests::workspace;

/// What is said to whoever knows nothing yet.
const ALWAYS: [&str; 40] = [
    "ground.frost",
    "block.drill_not_before",
    "block.heat",
    "block.ducts_and_drill",
    "excavation.spoil",
    "excavation.collapse",
    "excavation.inspect",
    "pier.lifting",
    "anchors.hold_lower_nut",
    "anchors.torque_unit",
    "anchors.corrosion",
    "anchors.bars",
    "anchors.product",
    "motion.season",
    "north.sun",
    "plan.codes",
    "plan.alone",
    "dig.services",
    "dig.open_pit",
    "dig.back",
    "block.frost_remedy",
    "pour.cement",
    "pour.lorry",
    "drill.silica",
    "drill.machine",
    "bond.resin",
    "bond.wait",
    "column.welding",
    "lift.column",
    "tighten.unit",
    "wire.licensed",
    "wire.lightning",
    "measure.knock",
    "measure.lean",
    "measure.pull",
    "measure.level",
    "mend.unload",
    "mend.undermine",
    "observe.climbing",
    "observe.dark",
];

/// Answers, and the cautions that they alone call for.
fn called_for() -> Vec<(serde_json::Value, Vec<&'static str>)> {
    vec![
        // Made ground beside a drain, dug by machine with sloped sides.
        (
            json!({"site": {"soil": "made_ground", "drain_distance_m": 1.0}, "excavation": {"method": "machine", "sides": "sloped"}}),
            vec![
                "ground.ask_an_engineer",
                "ground.drain",
                "excavation.bottom",
                "excavation.backfill",
                "plan.ground_first",
                "dig.machine",
            ],
        ),
        // Clay measured with a sand's friction, on a slope, in the wet, near a tree and a wall.
        (
            json!({"site": {"soil": "soft_clay", "friction_angle_deg": 35.0, "slope_deg": 12.0, "groundwater_depth_m": 0.1, "tree_distance_m": 4.0, "tree_height_m": 12.0, "topsoil_depth_m": 0.3, "building_distance_m": 1.0, "shear_wave_speed_m_s": 900.0, "freezing_index_c_days": 900.0, "frost_depth_m": 0.2}}),
            vec![
                "ground.frost_disagrees",
                "ground.strength_set_aside",
                "ground.slope",
                "ground.tree",
                "ground.water",
                "ground.topsoil",
                "ground.speed_disagrees",
                "excavation.lining",
                "excavation.water",
                "observe.wet",
            ],
        ),
        // Rock, a blow count.
        (
            json!({"site": {"soil": "rock", "rock_kind": "granite_or_basalt", "blow_count": 50.0}, "block": {"dowel_count": 4}}),
            vec!["ground.blow_count", "excavation.rock", "block.dowels"],
        ),
        // Shallow water, deep by hand.
        (
            json!({"site": {"soil": "stiff_clay", "groundwater_depth_m": 0.3}, "excavation": {"max_depth_m": 1.8}, "block": {"depth_m": 1.6}}),
            vec!["excavation.way_out", "excavation.deep_by_hand"],
        ),
        // Beside a house.
        (
            json!({"site": {"soil": "medium_sand", "building_distance_m": 0.6, "building_footing_depth_m": 0.3}, "excavation": {"max_depth_m": 1.2}, "block": {"depth_m": 1.1, "length_m": 0.5, "width_m": 0.5}, "pier": {"levelling": "grout"}}),
            vec![
                "block.does_not_work",
                "excavation.building",
                "tighten.grout",
            ],
        ),
        // Cold, mixed by hand, large.
        (
            json!({"site": {"soil": "firm_clay", "frost_depth_m": 0.8, "freezing_index_c_days": 300.0}, "excavation": {"max_depth_m": 1.6, "max_length_m": 2.0, "max_width_m": 2.0}, "block": {"mix": "site", "concrete": "C40/50", "length_m": 1.8, "width_m": 1.8, "depth_m": 1.4, "cement": "rapid", "reinforcement": "cage"}, "work": {"temperature_c": 2.0}}),
            vec![
                "block.cold_pour",
                "block.site_mix_strength",
                "block.pour_in_one_go",
                "pour.bags",
            ],
        ),
        // Hot, C20.
        (
            json!({"site": {"frost_depth_m": 0.8}, "block": {"concrete": "C20/25"}, "work": {"temperature_c": 32.0}}),
            vec!["block.hot_pour", "block.frost_and_concrete"],
        ),
        // Stainless.
        (
            json!({"anchors": {"count": 6, "strength_class": "A4-70", "lubrication": "oiled", "hole": "wet"}, "pier": {"stiffener_count": 4, "fill": "sand", "height_m": 2.5}, "load": {"mass_kg": 150.0}}),
            vec![
                "anchors.pattern",
                "anchors.ribs",
                "anchors.galling",
                "anchors.contact",
                "anchors.wet_hole",
                "lift.height",
                "lift.fill",
            ],
        ),
        // 10.9.
        (
            json!({"anchors": {"strength_class": "10.9", "coating": "galvanised", "hole": "wet"}, "block": {"reinforcement": "cage"}}),
            vec!["anchors.high_strength", "anchors.galvanised"],
        ),
        // Deck.
        (
            json!({"floor": {"kind": "deck", "stands": [{"name": "at the eyepiece", "x_m": 0.3, "y_m": 0.0, "mass_kg": 80.0}, {"name": "off", "x_m": 9.0, "y_m": 9.0, "mass_kg": 80.0}], "walk": [[-3.0, 0.35], [3.0, 0.35]]}}),
            vec![
                "floor.over_block",
                "floor.walk_over_block",
                "floor.off_floor",
                "floor.deck",
            ],
        ),
        // Slab.
        (json!({"floor": {"kind": "slab"}}), vec!["floor.slab"]),
    ]
}

fn cautions(answers: &serde_json::Value) -> BTreeSet<&'static str> {
    let mut answers = answers.clone();
    answers["schema_version"] = json!(1);
    let plan = serde_json::from_value(answers).unwrap();
    let found = design(&resolve(&plan).unwrap(), &NoShelf);
    found.cautions.iter().map(|caution| caution.id).collect()
}

#[test]
fn each_caution_comes_with_the_answers_that_call_for_it() {
    let unknown = cautions(&json!({}));
    assert_eq!(unknown, BTreeSet::from(ALWAYS));
    for (answers, names) in called_for() {
        let found = cautions(&answers);
        for name in names {
            assert!(found.contains(name), "{name} is missing from {answers}");
            assert!(!unknown.contains(name), "{name} comes by itself");
        }
    }
}

/// The names as they stand in the engine's own text, so that a new caution without a line above is seen.
#[test]
fn no_caution_is_without_a_line_here() {
    let folder = workspace().join("shared/src/stages/cautions");
    let mut written = BTreeSet::new();
    for file in std::fs::read_dir(folder).unwrap() {
        let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
        for call in ["notes.caution(", " add("]
            .iter()
            .flat_map(|call| text.split(call).skip(1))
        {
            let call = call.trim_start();
            let name = call.strip_prefix('"').and_then(|it| it.split('"').next());
            match name {
                Some(name) => written.insert(name.to_owned()),
                // One that adds what is named where it is called.
                None => {
                    assert!(
                        call.starts_with("id,"),
                        "a caution begins with its name: {call}"
                    );
                    continue;
                }
            };
        }
    }
    let here: BTreeSet<String> = called_for()
        .iter()
        .flat_map(|(_, names)| names)
        .chain(&ALWAYS)
        .map(|name| (*name).to_owned())
        .collect();
    assert_eq!(written, here);
}
