//! The fixed names of the JSON interface: they may gain companions, never change.

use std::collections::BTreeSet;

use stillground::decided::design_plan;
use stillground::halfspace::NoShelf;
use stillground::notes::Question;
use stillground::site_plan::SitePlan;

const PLAN: &str = "schema_version title use units code \
    site.soil site.shear_wave_speed_m_s site.poisson_ratio site.unit_weight_kn_m3 site.presumed_bearing_kpa \
    site.groundwater_depth_m site.frost_depth_m site.freezing_index_c_days site.exposure site.design_gust_m_s \
    excavation.max_depth_m excavation.max_length_m excavation.max_width_m excavation.method excavation.sides \
    block.length_m block.width_m block.depth_m block.upstand_m block.concrete block.side_contact_from_m block.side_contact_to_m \
    pier.height_m pier.outside_diameter_mm pier.wall_mm pier.fill pier.plate_side_mm pier.plate_thickness_mm pier.levelling \
    load.mass_kg load.centre_above_pier_m load.inertia_kg_m2 load.mount_stiffness_n_m_per_rad load.focal_length_mm load.pixel_um \
    load.exposure_s load.wind_area_m2 \
    anchors.count anchors.size anchors.length_mm anchors.embedment_mm anchors.circle_diameter_mm anchors.strength_class \
    anchors.hole_diameter_mm anchors.bond_strength_mpa anchors.max_torque_n_m anchors.torque_n_m anchors.concrete_temperature_c \
    floor.kind floor.gap_mm floor.stands floor.walk floor.walk_speed_m_s";

const DESIGN: &str = "ground.shear_modulus_mpa ground.shear_wave_speed_m_s ground.unit_weight_kn_m3 ground.poisson_ratio \
    excavation.length_m excavation.width_m excavation.depth_m excavation.volume_m3 excavation.spoil_volume_m3 \
    block.length_m block.width_m block.depth_m block.volume_m3 block.mass_kg block.bearing_pressure_kpa \
    ground_stiffness.about ground_stiffness.vertical_n_per_m ground_stiffness.horizontal_x_n_per_m \
    ground_stiffness.horizontal_y_n_per_m ground_stiffness.rocking_x_n_m_per_rad ground_stiffness.rocking_y_n_m_per_rad \
    ground_stiffness.torsion_n_m_per_rad ground_stiffness.coupling_x_ry_n_per_rad ground_stiffness.coupling_y_rx_n_per_rad \
    pier.mass_kg pier.bending_stiffness_n_m2 pier.base_joint_stiffness_n_m_per_rad pier.top_stiffness_n_per_m \
    anchors.preload_kn anchors.resin_volume_ml anchors.governing anchors.resistances \
    motion.frequencies_hz motion.stands motion.walk motion.wind_arcsec motion.thermal_arcsec motion.thermal_difference_k \
    motion.settle_s motion.budget_arcsec motion.quiet_distance_m motion.conduct \
    verdict.build.says verdict.build.because verdict.still.star_growth_ratio.expected verdict.still.star_growth_ratio.worst \
    verdict.still.peak_left_ratio.expected verdict.still.peak_left_ratio.worst verdict.still.asked_ratio verdict.still.says \
    verdict.still.because verdict.conduct_rule \
    loads checks assumptions cautions materials schedule";

#[test]
fn a_plan_keeps_its_fixed_names() {
    has_all(&serde_json::to_value(SitePlan::unknown()).unwrap(), PLAN);
}

#[test]
fn a_design_keeps_its_fixed_names() {
    let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
    let value = serde_json::to_value(&design).unwrap();
    has_all(&value, DESIGN);
    for (list, keys) in [
        ("loads", "id shear_n moment_n_m axial_n roof"),
        (
            "checks",
            "id question title demand capacity unit utilisation verdict source",
        ),
        ("assumptions", "field value why effect"),
        ("cautions", "id text when source"),
        ("materials", "item quantity unit for note"),
        ("schedule", "id title after earliest lasts_h why"),
    ] {
        let first = &value[list][0];
        for key in keys.split_whitespace() {
            assert!(first.get(key).is_some(), "{list}[0] has no {key}: {first}");
        }
    }
    for key in ["name", "tilt_arcsec", "block_tilt_arcsec", "bearing_deg"] {
        assert!(
            value["motion"]["stands"][0].get(key).is_some(),
            "motion.stands[0] has no {key}"
        );
    }
    for key in [
        "id",
        "event",
        "star_growth_ratio",
        "peak_left_ratio",
        "tilt_arcsec",
        "rule",
    ] {
        assert!(
            value["motion"]["conduct"][0].get(key).is_some(),
            "motion.conduct[0] has no {key}"
        );
    }
    for key in ["rms_arcsec", "peak_arcsec", "trail_arcsec", "trail_pixels"] {
        assert!(
            value["motion"]["walk"].get(key).is_some(),
            "motion.walk has no {key}"
        );
    }
}

/// A title is a question that yes, no and ask answer; conduct is no question of a check.
#[test]
fn every_check_is_a_question() {
    let mut seen = BTreeSet::new();
    for name in [
        "quarry-lane",
        "firm-clay-garden",
        "club-on-shallow-rock",
        "sandy-water",
        "everything-unknown",
        "inch-garden",
    ] {
        let design = design_plan(&stillground_tests::example(name), &NoShelf).unwrap();
        for check in &design.checks {
            assert!(check.title.ends_with('?'), "{}: {}", check.id, check.title);
            let still = check.id.starts_with("motion.");
            assert_eq!(check.question == Question::Still, still, "{}", check.id);
            seen.insert(check.id);
        }
    }
    assert!(seen.len() > 50, "{}", seen.len());
}

#[test]
fn every_number_of_a_plan_is_catalogued_once() {
    let mut seen = BTreeSet::new();
    for field in SitePlan::numbers() {
        assert!(
            seen.insert(field.path),
            "{} stands twice in the catalogue",
            field.path
        );
        assert!(
            field.least < field.most && !field.why.is_empty() && !field.what.is_empty(),
            "{}",
            field.path
        );
    }
    assert!(seen.len() > 100, "{} numbers", seen.len());
}

fn has_all(value: &serde_json::Value, paths: &str) {
    for path in paths.split_whitespace() {
        assert!(
            lookup(value, path).is_some(),
            "{path} is missing from the interface"
        );
    }
}

fn lookup<'a>(value: &'a serde_json::Value, path: &str) -> Option<&'a serde_json::Value> {
    path.split('.').try_fold(value, |value, key| value.get(key))
}
