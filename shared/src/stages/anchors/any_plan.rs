//! Whatever valid plan comes: every figure of the studs is finite, and the same plan gives the same figures.

use crate::path;
use proptest::prelude::*;
use proptest::strategy::ValueTree;

use crate::brief::resolve;
use crate::notes::Found;
use crate::site_plan::SitePlan;
use crate::site_plan::anchors::{Coating, Hole, LowerNuts, Lubrication, Size, StrengthClass, Tool};
use crate::site_plan::block::Reinforcement;
use crate::site_plan::pier::Levelling;
use crate::stages::anchors::{Anchors, Mode};
use crate::stages::{anchors, block, ground, loads, pier, room};
use crate::units::newton;

/// The studs of a plan and the foot's turning stiffness; none for a plan that contradicts itself.
fn studs(plan: &SitePlan) -> Option<(Found<Anchors>, f64)> {
    let brief = resolve(plan).ok()?;
    let ground = ground::stage(&brief).value;
    let room = room::room(&brief, &ground);
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room, &loads).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    Some((
        anchors::stage(&brief, &block, &loads),
        pier.base_joint_stiffness.value,
    ))
}

/// One of the answers, or not known.
fn any_of<T: Copy + std::fmt::Debug + 'static>(
    all: &'static [T],
) -> impl Strategy<Value = Option<T>> {
    prop::option::of(prop::sample::select(all))
}

fn choices() -> impl Strategy<Value = SitePlan> {
    (
        any_of(Size::ALL),
        any_of(StrengthClass::ALL),
        any_of(Lubrication::ALL),
        any_of(Tool::ALL),
        any_of(Coating::ALL),
        any_of(Hole::ALL),
        any_of(LowerNuts::ALL),
        any_of(Levelling::ALL),
        any_of(Reinforcement::ALL),
        prop::option::of(any::<bool>()),
    )
        .prop_map(
            |(
                size,
                class,
                lubrication,
                tool,
                coating,
                hole,
                lower_nuts,
                levelling,
                reinforcement,
                cracked,
            )| {
                let mut plan = SitePlan::unknown();
                plan.anchors.size = size;
                plan.anchors.strength_class = class;
                plan.anchors.lubrication = lubrication;
                plan.anchors.tool = tool;
                plan.anchors.coating = coating;
                plan.anchors.hole = hole;
                plan.anchors.lower_nuts = lower_nuts;
                plan.anchors.cracked = cracked;
                plan.pier.levelling = levelling;
                plan.block.reinforcement = reinforcement;
                plan
            },
        )
}

/// The numbers that this stage reads, each anywhere in its range or not known.
fn plans() -> impl Strategy<Value = SitePlan> {
    let fields: Vec<_> = SitePlan::numbers()
        .filter(|field| {
            ["anchors.", "pier.", "block.", "load."]
                .iter()
                .any(|section| field.path.starts_with(section))
        })
        .collect();
    let values = prop::collection::vec(prop::option::weighted(0.15, 0.0..=1.0f64), fields.len());
    (choices(), values).prop_map(move |(mut plan, values)| {
        for (field, share) in fields.iter().zip(values) {
            // Most torques of the whole range break any stud: those that a stud may bear are drawn here.
            let most = if field.path == path!(anchors.torque_n_m) {
                300.0
            } else {
                field.most
            };
            (field.set)(
                &mut plan,
                share.map(|share| field.least + share * (most - field.least)),
            );
        }
        plan
    })
}

/// Every number of a document is finite: the writer puts null for one that is not, and these places never are null.
fn no_hidden_infinity(value: &serde_json::Value, path: &str) {
    match value {
        serde_json::Value::Object(map) => map.iter().for_each(|(key, value)| {
            let may_be_null = [
                "gel_time_h",
                "snug_after_h",
                "cure_time_h",
                "opening_moment_n_m",
                "opened",
                "flexure",
                "eurocode",
                "aci",
            ];
            let may_be_null =
                may_be_null.contains(&key.as_str()) || (key == "edge" && !path.contains("resist"));
            assert!(!value.is_null() || may_be_null, "{path}.{key} is null");
            no_hidden_infinity(value, &format!("{path}.{key}"));
        }),
        serde_json::Value::Array(list) => list
            .iter()
            .for_each(|value| no_hidden_infinity(value, path)),
        _ => {}
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_figure_is_finite(plan in plans()) {
        let Some((found, stiffness)) = studs(&plan) else { return Ok(()) };
        no_hidden_infinity(&serde_json::to_value(&found.value).unwrap(), "anchors");
        for check in &found.notes.checks {
            prop_assert!(check.utilisation.is_none_or(f64::is_finite), "{}", check.id);
        }
        prop_assert!(stiffness.is_finite() && stiffness > 0.0);
    }

    /// What does not depend on which studs are pulled is asked most by the action with the greatest force, whichever is worst of all.
    #[test]
    fn each_way_of_failing_stands_under_its_worst_action(plan in plans()) {
        let Some((found, _)) = studs(&plan) else { return Ok(()) };
        let radius = resolve(&plan).unwrap().anchors.circle_diameter.value / 2.0;
        for verdict in [&found.value.eurocode, &found.value.aci].into_iter().flatten() {
            let asked = |mode| verdict.of(mode).map(|judged| newton::get(judged.demand) * (1.0 + 1e-6) + 1e-6);
            for trial in &verdict.trials {
                prop_assert!(asked(Mode::Steel).is_none_or(|asked| asked >= newton::get(trial.forces.greatest())));
                prop_assert!(asked(Mode::ShearSteel).is_none_or(|asked| asked >= newton::get(trial.factored.twisted_shear(radius))));
            }
        }
    }

    #[test]
    fn more_torque_pulls_more(first in 5.0..140.0f64, more in 1.01..2.0f64) {
        let preload = |torque| {
            let mut plan = SitePlan::unknown();
            plan.anchors.torque_n_m = Some(torque);
            studs(&plan).unwrap().0.value.preload.unwrap().typical
        };
        prop_assert!(preload(first * more) > preload(first));
    }
}

/// Enough of the plans above are valid for the test to mean something.
#[test]
fn most_of_the_plans_are_valid() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let valid = (0..200)
        .filter(|_| {
            plans()
                .new_tree(&mut runner)
                .is_ok_and(|tree| studs(&tree.current()).is_some())
        })
        .count();
    assert!(valid > 60, "{valid} of 200");
}
