//! What a fit says in words of piers whose one part is otherwise than said: the part that is wrong is named, and none where
//! nothing tells. Expected figures of a standing pier: the basis' 3.4, computed apart.

use serde_json::{Value, json};
use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::SmallShelf;
use stillground::proof::Fitted;
use stillground::site_plan::SitePlan;

use crate::proof_model::{bench, foreseen};

pub fn design(plan: &Value) -> Design {
    let plan: SitePlan = serde_json::from_value(plan.clone()).unwrap();
    design_plan(&plan, &SmallShelf::holding(8)).unwrap()
}

pub fn fitted(mut plan: Value, measured: Value) -> Fitted {
    plan["commissioning"] = measured;
    design(&plan).fitted.unwrap()
}

pub fn knock(with_mount: bool, hertz: f64) -> Value {
    json!({ "direction": "x", "with_mount": with_mount, "frequency_hz": hertz, "frequency_sd_hz": 0.003 * hertz })
}

fn names(fitted: &Fitted) -> Vec<&str> {
    fitted
        .suspects
        .iter()
        .map(|suspect| suspect.field.as_str())
        .collect()
}

/// The basis' 4: a mount a quarter of what was said lowers the knock to 0.69 of what was foreseen and the bare one not at all;
/// with both, the mount is the suspect, and nothing is said of the ground.
#[test]
fn a_soft_mount_is_named_by_two_knocks_and_not_by_one() {
    let plan = bench(135.0, 0.75);
    let [mounted, bare, _] = foreseen(&plan);
    let one = fitted(
        plan.clone(),
        json!({ "knocks": [knock(true, 0.69 * mounted)] }),
    );
    let both = fitted(
        plan,
        json!({ "knocks": [knock(true, 0.69 * mounted), knock(false, bare)] }),
    );
    println!("{:?}\n{:?}", one.suspects, both.suspects);
    println!("{:#?}", both.agreement);
    assert!(
        one.not_told.iter().any(|what| what.contains("ground")),
        "{:?}",
        one.not_told
    );
    assert!(
        !names(&one).contains(&"site.shear_wave_speed_m_s"),
        "{:?}",
        one.suspects
    );
    // One knock cannot tell the mount from the base joint, and names neither.
    assert!(
        !names(&one).contains(&"load.mount_stiffness_n_m_per_rad")
            && !names(&one).contains(&"pier.levelling"),
        "{:?}",
        one.suspects
    );
    assert!(
        one.suspects
            .iter()
            .any(|suspect| suspect.says.contains("do not tell which")),
        "{:?}",
        one.suspects
    );
    assert_eq!(
        names(&both).first(),
        Some(&"load.mount_stiffness_n_m_per_rad"),
        "{:?}",
        both.suspects
    );
    assert!(both.agreement[0].surprise < -1.0, "{:?}", both.agreement);
}

/// The basis' 4: ground of 0.35 of what was said leans the pier 2.9 times as far and hardly slows it.
#[test]
fn soft_ground_is_named_by_a_lean() {
    let plan = bench(135.0, 0.75);
    let [mounted, bare, lean] = foreseen(&plan);
    let found = fitted(
        plan,
        json!({
            "knocks": [knock(true, 0.96 * mounted), knock(false, bare)],
            "leans": [{ "x_m": 0.8, "y_m": 0, "mass_kg": 80, "tilt_arcsec": 4.0 * lean, "tilt_sd_arcsec": 0.2 * lean }]
        }),
    );
    println!("{:?}", found.suspects);
    assert_eq!(
        names(&found).first(),
        Some(&"site.shear_wave_speed_m_s"),
        "{:?}",
        found.suspects
    );
}

/// The basis' 3.3: one knock knows neither mount nor joint by itself, and what would tell them apart is offered.
#[test]
fn one_knock_as_foreseen_suspects_nobody_and_asks_for_another_measurement() {
    let plan = bench(135.0, 0.75);
    let [mounted, ..] = foreseen(&plan);
    let found = fitted(plan, json!({ "knocks": [knock(true, mounted)] }));
    assert!(found.suspects.is_empty(), "{:?}", found.suspects);
    assert!(
        found.chance_ratio.unwrap() > 0.1,
        "{:?}",
        found.chance_ratio
    );
    assert!(found.next.is_some());
    let again = fitted(
        bench(135.0, 0.75),
        json!({ "knocks": [knock(true, mounted)] }),
    );
    assert_eq!(found, again, "the same plan says the same");
}

/// A wrong unit in one of three: it is the measurement that is suspected.
#[test]
fn a_measurement_that_does_not_fit_the_others_is_said() {
    let plan = bench(135.0, 0.75);
    let [mounted, bare, lean] = foreseen(&plan);
    let found = fitted(
        plan,
        json!({
            "knocks": [knock(true, mounted), knock(false, bare)],
            "leans": [{ "x_m": 0.8, "y_m": 0, "mass_kg": 80, "tilt_arcsec": lean / 60.0, "tilt_sd_arcsec": 0.1 * lean / 60.0 }]
        }),
    );
    println!("{:?} {:?}", found.suspects, found.agreement);
    assert!(
        !found.holds || found.chance_ratio.unwrap() < 0.02,
        "{:?}",
        found.chance_ratio
    );
    assert!(!found.holds || !found.suspects.is_empty());
}

pub fn standing() -> Value {
    json!({
        "schema_version": 1, "state": "standing",
        "site": { "soil": "loose_sand", "shear_wave_speed_m_s": 110 },
        "block": { "length_m": 0.5, "width_m": 0.5, "depth_m": 0.4 },
        "pier": { "height_m": 1.5, "outside_diameter_mm": 114.3, "wall_mm": 3.6, "fill": "none", "levelling": "nuts" },
        "anchors": { "size": "M12" },
        "load": { "mass_kg": 35 },
        "commissioning": { "knocks": [{ "direction": "x", "with_mount": true, "frequency_hz": 8.3, "frequency_sd_hz": 0.02 }],
                           "symptoms": { "in_wind": true, "at_touch": true } }
    })
}

/// The basis' 3.4: column 53 %, joint 37, ground 5.5, mount 4.6; its plates and studs are not said there.
#[test]
fn a_thin_tall_tube_is_diagnosed_as_its_column() {
    let design = design(&standing());
    let fitted = design.fitted.unwrap();
    println!("{:#?}\n{:#?}", fitted.says, fitted.remedies);
    println!("{:?}", fitted.shares);
    let typical = |share: stillground::proof::Range| share.typical.unwrap();
    let shares = fitted.shares;
    assert!(
        typical(shares.column) > typical(shares.joint) && typical(shares.column) > 0.4,
        "{shares:?}"
    );
    assert!(
        typical(shares.ground) < 0.2 && typical(shares.mount) < 0.2,
        "{shares:?}"
    );
    assert!(
        fitted
            .says
            .iter()
            .any(|line| line.contains("It gives first in the column")),
        "{:?}",
        fitted.says
    );
    assert!(
        (typical(fitted.frequency_hz) / 8.3 - 1.0).abs() < 0.03,
        "{:?}",
        fitted.frequency_hz
    );
}
