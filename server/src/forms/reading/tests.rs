use super::{Outcome, read};
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use stillground::figure::Units;
use stillground::site_plan::{SitePlan, Stand};

fn sheet(pairs: &[(&str, &str)]) -> Sheet {
    Sheet::sent(
        pairs
            .iter()
            .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
            .collect(),
    )
}

fn answered(step: Step, pairs: &[(&str, &str)]) -> Outcome {
    read(step, &SitePlan::unknown(), &sheet(pairs))
}

#[test]
fn a_saved_plan_comes_back_to_the_last_digit_in_either_unit() {
    let mut plan = SitePlan::unknown();
    plan.excavation.max_depth_m = Some(1.234_567_890_12);
    plan.floor.stands = Some(vec![Stand {
        name: "Desk".into(),
        x_m: -1.000_000_01,
        y_m: 2.0,
        mass_kg: 81.234_567,
    }]);
    plan.floor.walk = Some(vec![[0.1, 0.2], [3.333_333_333_3, -4.0]]);
    for units in [Units::Metric, Units::Imperial] {
        plan.units = Some(units);
        for step in Step::ALL {
            let Outcome {
                plan: again,
                faults,
            } = read(step, &plan, &Sheet::of(step, &plan));
            assert!(faults.is_empty(), "{faults:?}");
            assert_eq!(again, plan, "{step:?}");
        }
    }
}

#[test]
fn a_bare_figure_is_read_in_the_units_that_the_page_was_shown_in() {
    let outcome = answered(
        Step::Site,
        &[
            ("shown_in", "metric"),
            ("units", "imperial"),
            ("site.frost_depth_m", "0.6"),
        ],
    );
    assert_eq!(outcome.plan.site.frost_depth_m, Some(0.6));
}

#[test]
fn an_empty_box_means_not_known_and_a_missing_one_means_nothing() {
    let mut plan = SitePlan::unknown();
    plan.excavation.max_depth_m = Some(1.0);
    plan.excavation.max_width_m = Some(1.5);
    let outcome = read(
        Step::Excavation,
        &plan,
        &sheet(&[("excavation.max_depth_m", "")]),
    );
    assert_eq!(outcome.plan.excavation.max_depth_m, None);
    assert_eq!(outcome.plan.excavation.max_width_m, Some(1.5));
}

#[test]
fn good_answers_are_taken_beside_bad_ones() {
    let outcome = answered(
        Step::Excavation,
        &[
            ("excavation.max_depth_m", "90 cm"),
            ("excavation.max_width_m", "wide"),
            ("work.people", "1.5"),
        ],
    );
    assert_eq!(outcome.plan.excavation.max_depth_m, Some(0.9));
    let fields: Vec<_> = outcome
        .faults
        .iter()
        .flat_map(|fault| fault.fields.iter().map(String::as_str))
        .collect();
    assert_eq!(fields, ["excavation.max_width_m", "work.people"]);
}

#[test]
fn a_chosen_reading_counts_only_for_the_text_it_was_offered_for() {
    let asked = ("excavation.max_depth_m~asked", "1,250");
    let chosen = ("excavation.max_depth_m~reading", "1.25 m");
    let kept = answered(
        Step::Excavation,
        &[("excavation.max_depth_m", "1,250"), asked, chosen],
    );
    assert_eq!(kept.plan.excavation.max_depth_m, Some(1.25));
    let changed = answered(
        Step::Excavation,
        &[("excavation.max_depth_m", "2 m"), asked, chosen],
    );
    assert_eq!(changed.plan.excavation.max_depth_m, Some(2.0));
    let again = answered(Step::Excavation, &[("excavation.max_depth_m", "1,250")]);
    assert_eq!(again.faults[0].readings.len(), 2);
}

#[test]
fn no_stands_and_stands_not_known_are_different_answers() {
    assert_eq!(
        answered(Step::Floor, &[("floor.stands~list", "")])
            .plan
            .floor
            .stands,
        None
    );
    assert_eq!(
        answered(
            Step::Floor,
            &[("floor.stands~list", ""), ("floor.stands~none", "yes")]
        )
        .plan
        .floor
        .stands,
        Some(Vec::new())
    );
    let half = answered(
        Step::Floor,
        &[
            ("floor.stands[0].name", "Desk"),
            ("floor.stands[0].x_m", "1"),
            ("floor.stands[0].y_m", ""),
        ],
    );
    let fields: Vec<_> = half
        .faults
        .iter()
        .flat_map(|fault| fault.fields.iter().map(String::as_str))
        .collect();
    assert_eq!(fields, ["floor.stands[0].y_m", "floor.stands[0].mass_kg"]);
}

#[test]
fn a_latitude_may_name_its_side() {
    assert_eq!(
        answered(
            Step::Site,
            &[
                ("site.latitude_deg", "33.9 S"),
                ("site.longitude_deg", "2.5w")
            ]
        )
        .plan
        .site
        .latitude_deg,
        Some(-33.9)
    );
}
