//! The front of four plans by brute force, point for point; stops with a message where the search finds another.
//!
//! cargo run --release -p stillground-tests --no-default-features --example options_by_brute_force

use std::process::ExitCode;

use stillground::site_plan::SitePlan;
use stillground::site_plan::pier::Fill;
use stillground::site_plan::site::Soil;
use stillground_tests::example;
use stillground_tests::piers::{both, price};

/// A plan whose lattice a core goes through in a minute or two.
fn narrowed(mut plan: SitePlan, change: impl FnOnce(&mut SitePlan)) -> SitePlan {
    plan.block.length_m = None;
    plan.block.width_m = None;
    plan.block.depth_m = None;
    plan.pier.tube = None;
    plan.pier.outside_diameter_mm = None;
    plan.pier.plate_side_mm = None;
    plan.anchors.circle_diameter_mm = None;
    plan.pier.fill = Some(Fill::None);
    plan.pier.levelling = None;
    plan.pier.wall_mm = Some(8.0);
    price(&mut plan);
    // Nothing that is compared reads the walk, which takes most of a design's time.
    plan.floor.walk = Some(Vec::new());
    change(&mut plan);
    plan
}

fn plans() -> [(&'static str, SitePlan); 4] {
    [
        (
            "firm clay garden",
            narrowed(example("firm-clay-garden"), |plan| {
                plan.excavation.max_length_m = Some(1.3);
                plan.excavation.max_width_m = Some(1.1);
            }),
        ),
        (
            "shallow rock",
            narrowed(example("club-on-shallow-rock"), |plan| {
                plan.excavation.max_length_m = Some(1.8);
                plan.excavation.max_width_m = Some(1.8);
            }),
        ),
        (
            "wet sand",
            narrowed(example("sandy-water"), |plan| {
                plan.excavation.max_length_m = Some(1.5);
                plan.excavation.max_width_m = Some(1.5);
            }),
        ),
        (
            "heavy load on a tall column",
            narrowed(example("everything-unknown"), |plan| {
                plan.site.soil = Some(Soil::StiffClay);
                plan.load.mass_kg = Some(250.0);
                plan.pier.height_m = Some(2.2);
                plan.excavation.max_length_m = Some(1.4);
                plan.excavation.max_width_m = Some(1.4);
                plan.excavation.max_depth_m = Some(1.0);
            }),
        ),
    ]
}

fn main() -> ExitCode {
    let mut agree = true;
    for (name, plan) in plans() {
        match both(&plan) {
            Ok(found) => {
                let same = found.searched == found.expected
                    && found.searched_by_cost == found.expected_by_cost
                    && found.looked_at + found.skipped == found.size
                    && !found.expected.is_empty();
                println!(
                    "{name}: {} candidates, {} looked at, a front of {}, by cost of {}: {}",
                    found.size,
                    found.looked_at,
                    found.expected.len(),
                    found.expected_by_cost.len(),
                    if same { "the same" } else { "ANOTHER" }
                );
                agree &= same;
            }
            Err(problems) => {
                println!("{name}: {problems}");
                agree = false;
            }
        }
    }
    if agree {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
