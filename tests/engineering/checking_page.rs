//! The checking engineer's page, way of failing by way of failing, against the same page worked out apart from the engine
//! (`reference/checking_page.py`): forces from equilibrium, areas by shapely, resistances from the clauses of both codes.

use serde_json::{Value, json};
use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground::notes::Notes;
use stillground::site_plan::SitePlan;
use stillground::source::Source;
use stillground::stages::anchors::situation::Situation;
use stillground::stages::anchors::verdict::{self, Verdict};
use stillground::stages::anchors::{Action, layout};
use stillground::units::{kilonewton, kilonewton_metre};
use stillground_tests::close;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

/// The plan of a case.
fn plan(case: &Value) -> SitePlan {
    let thousandth = |name: &Value| number(name) / 1000.0;
    let reinforcement = match (
        case["cage"].as_bool().unwrap(),
        case["mesh"].as_bool().unwrap(),
    ) {
        (true, _) => "cage",
        (false, true) => "top_mesh",
        (false, false) => "plain",
    };
    let plan = json!({
        "schema_version": 1,
        "block": {
            "length_m": thousandth(&case["block"][0]), "width_m": thousandth(&case["block"][1]),
            "depth_m": thousandth(&case["thickness"]) - 0.05, "upstand_m": 0.05, "reinforcement": reinforcement,
            "concrete": if number(&case["fck"]) > 27.0 { "C30/37" } else { "C25/30" },
        },
        "pier": {
            "levelling": if case["grout"].as_bool().unwrap() { "grout" } else { "nuts" },
            "gap_mm": case["gap"], "plate_thickness_mm": case["plate"], "plate_side_mm": case["side"],
        },
        "anchors": {
            "count": case["count"], "size": format!("M{}", case["d"]), "embedment_mm": case["h"], "length_mm": 300,
            "circle_diameter_mm": case["circle"], "strength_class": "8.8", "cracked": true, "installation_factor": 1.2,
            "bond_strength_mpa": case["tau"], "bond_strength_uncracked_mpa": case["tau_u"],
        },
    });
    serde_json::from_value(plan).unwrap()
}

fn action(case: &Value) -> Action {
    Action {
        id: "reference",
        title: "the reference's action",
        weight: kilonewton::new(number(&case["weight"])),
        shear: kilonewton::new(number(&case["shear"])),
        moment: kilonewton_metre::new(number(&case["moment"])),
        torsion: kilonewton_metre::new(number(&case["torsion"])),
        accidental: false,
        source: Source::judgement("a test"),
    }
}

/// Forces, demands, capacities and both rules of pull and shear together: four digits.
fn compare(name: &str, found: &Verdict, expected: &Value) {
    for (stud, pull) in found
        .studs
        .iter()
        .zip(expected["pulls_kn"].as_array().unwrap())
    {
        assert!(
            (kilonewton::get(*stud) - number(pull)).abs() < 1e-3,
            "{name}: {} kN against {pull}",
            kilonewton::get(*stud)
        );
    }
    let modes = expected["modes"].as_object().unwrap();
    let held: Vec<&str> = found
        .modes
        .iter()
        .map(|judged| judged.mode)
        .filter(|mode| modes.contains_key(*mode))
        .collect();
    assert_eq!(held.len(), modes.len(), "{name}: {held:?}");
    for judged in &found.modes {
        // ACI 318 has no rule for a gap; the engine sets EN 1992-4's beside it.
        let Some(pair) = modes.get(judged.mode) else {
            continue;
        };
        close(
            &format!("{name}: {} asked", judged.mode),
            kilonewton::get(judged.demand),
            number(&pair[0]),
            1e-4,
        );
        close(
            &format!("{name}: {} can give", judged.mode),
            kilonewton::get(judged.capacity),
            number(&pair[1]),
            1e-4,
        );
    }
    close(
        &format!("{name}: steel together"),
        found.steel_interaction,
        number(&expected["steel_interaction"]),
        3e-4,
    );
    close(
        &format!("{name}: concrete together"),
        found.concrete_interaction,
        number(&expected["concrete_interaction"]),
        3e-4,
    );
}

#[test]
fn every_way_of_failing_by_both_codes_of_four_plans() {
    let reference: Value =
        serde_json::from_str(include_str!("reference/checking_page.json")).unwrap();
    for case in reference.as_array().unwrap() {
        let brief = resolve(&plan(case)).unwrap();
        let block = design(&brief, &NoShelf).block;
        let situation = Situation::of(&brief, &block);
        let both = verdict::find(
            &situation,
            &layout::group(&brief, &block),
            &[action(case)],
            &mut Notes::default(),
        );
        for (code, found) in [("eurocode", &both.eurocode), ("aci", &both.aci)] {
            let name = format!("{}, {code}", case["name"].as_str().unwrap());
            compare(&name, found.as_ref().unwrap(), &case[code]);
        }
    }
}
