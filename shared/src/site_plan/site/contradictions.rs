//! Answers about the site that contradict each other.

use super::Soil;
use crate::field::Problem;
use crate::rules::yearly_wave::season;
use crate::site_plan::SitePlan;
use crate::{path, paths};

/// Rock nearer to the surface than this is the ground itself.
const ROCK_AT_SURFACE_M: f64 = 0.1;
/// No place on Earth has a larger half-range between its seasons, K.
const LARGEST_AMPLITUDE_K: f64 = 45.0;

/// Answers about the site that contradict each other.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    [
        soil_over_rock(plan),
        rock_too_deep(plan),
        topsoil_over_rock(plan),
        climate(plan),
        two_strengths(plan),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn is_rock(soil: Soil) -> bool {
    matches!(soil, Soil::Rock | Soil::WeatheredRock)
}

fn soil_over_rock(plan: &SitePlan) -> Option<Problem> {
    let (soil, rock) = (plan.site.soil?, plan.site.rock_depth_m?);
    (!is_rock(soil) && rock < ROCK_AT_SURFACE_M).then(|| {
        Problem::between(
            paths![site.soil, site.rock_depth_m],
            "Rock lies at the surface, so the ground at the depth of the block is rock: choose rock as the soil, or give the depth at which \
             the rock begins.",
        )
    })
}

fn rock_too_deep(plan: &SitePlan) -> Option<Problem> {
    let (soil, rock) = (plan.site.soil?, plan.site.rock_depth_m?);
    let (field, deepest) = match (plan.block.depth_m, plan.excavation.max_depth_m) {
        (Some(depth), _) => (path!(block.depth_m), depth),
        (None, Some(depth)) => (path!(excavation.max_depth_m), depth),
        (None, None) => return None,
    };
    (is_rock(soil) && rock > deepest).then(|| {
        Problem::between(
            &[path!(site.soil), path!(site.rock_depth_m), field],
            "The rock begins below the base of the block, so the soil at the block's depth is not rock: choose the soil above it.",
        )
    })
}

fn topsoil_over_rock(plan: &SitePlan) -> Option<Problem> {
    let (topsoil, rock) = (plan.site.topsoil_depth_m?, plan.site.rock_depth_m?);
    (topsoil > rock).then(|| {
        Problem::between(
            paths![site.topsoil_depth_m, site.rock_depth_m],
            "The topsoil would reach below the surface of the rock; one of the two depths is mistaken.",
        )
    })
}

/// A freezing index that no year with that mean can have.
fn climate(plan: &SitePlan) -> Option<Problem> {
    let (index, mean) = (
        plan.site.freezing_index_c_days?,
        plan.site.mean_annual_temperature_c?,
    );
    let too_mild = index < -365.0 * mean;
    let too_harsh = season(mean, index).amplitude_k > LARGEST_AMPLITUDE_K;
    (too_mild || too_harsh).then(|| {
        Problem::between(
            paths![site.freezing_index_c_days, site.mean_annual_temperature_c],
            if too_mild {
                "A year with this mean temperature has more frost than this freezing index."
            } else {
                "No place with this mean temperature over the year has so hard a winter."
            },
        )
    })
}

/// Silt that is loaded fast has the one strength and slowly the other; the plan judges it by one.
fn two_strengths(plan: &SitePlan) -> Option<Problem> {
    plan.site
        .undrained_strength_kpa
        .zip(plan.site.friction_angle_deg)
        .map(|_| {
            Problem::between(
                paths![site.undrained_strength_kpa, site.friction_angle_deg],
                "Both say how strong the ground is: keep the undrained strength in clay, the angle of friction in sand and gravel, and in \
                 silt the one that the report judges by.",
            )
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(change: impl FnOnce(&mut SitePlan)) -> Vec<Vec<String>> {
        let mut plan = SitePlan::unknown();
        change(&mut plan);
        contradictions(&plan)
            .into_iter()
            .map(|problem| problem.fields)
            .collect()
    }

    #[test]
    fn contradictions_name_every_field_in_them() {
        let found = fields(|plan| {
            plan.site.soil = Some(Soil::Silt);
            plan.site.rock_depth_m = Some(0.0);
            plan.site.topsoil_depth_m = Some(0.3);
            plan.site.freezing_index_c_days = Some(3000.0);
            plan.site.mean_annual_temperature_c = Some(25.0);
            plan.site.undrained_strength_kpa = Some(40.0);
            plan.site.friction_angle_deg = Some(30.0);
        });
        assert_eq!(
            found,
            [
                vec!["site.soil", "site.rock_depth_m"],
                vec!["site.topsoil_depth_m", "site.rock_depth_m"],
                vec![
                    "site.freezing_index_c_days",
                    "site.mean_annual_temperature_c"
                ],
                vec!["site.undrained_strength_kpa", "site.friction_angle_deg"],
            ]
        );
        let found = fields(|plan| {
            plan.site.soil = Some(Soil::Rock);
            plan.site.rock_depth_m = Some(1.5);
            plan.block.depth_m = Some(1.0);
        });
        assert_eq!(
            found,
            [vec!["site.soil", "site.rock_depth_m", "block.depth_m"]]
        );
    }

    #[test]
    fn sensible_answers_do_not_contradict() {
        assert!(
            fields(|plan| {
                plan.site.soil = Some(Soil::WeatheredRock);
                plan.site.rock_depth_m = Some(0.3);
                plan.block.depth_m = Some(0.5);
                plan.site.freezing_index_c_days = Some(150.0);
                plan.site.mean_annual_temperature_c = Some(9.5);
            })
            .is_empty()
        );
    }
}
