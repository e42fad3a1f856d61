//! The ground's range as a whole plan shows it: the middle, the unfavourable twentieth, and that nothing softer is ever better.

use stillground::design::design;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::SitePlan;
use stillground::site_plan::floor::Stand;
use stillground::site_plan::site::{Soil, WaveSpeedMethod};
use stillground::units::newton_metre_per_radian;
use stillground_tests::close;

fn cube() -> SitePlan {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(Soil::FirmClay);
    plan.site.poisson_ratio = Some(0.35);
    plan.site.unit_weight_kn_m3 = Some(18.0);
    plan.block.length_m = Some(1.0);
    plan.block.width_m = Some(1.0);
    plan.block.depth_m = Some(1.0);
    plan.block.upstand_m = Some(0.0);
    plan
}

fn rocking(plan: &SitePlan, shelf: &SmallShelf) -> [f64; 3] {
    let found = design(&stillground::brief::resolve(plan).unwrap(), shelf).ground_stiffness;
    [found.low, found.typical, found.high]
        .map(|of| newton_metre_per_radian::get(of.rocking_y.unwrap()))
}

/// Verdicts of the product, section on the ground: a metre cube at 150 m/s has 280, 138 and 50 MN m/rad with all, half and none of
/// its sides held (computed apart by boundary elements, at 20 kN/m³); the middle contact is 0.73 of the first.
#[test]
fn the_metre_cube_at_150_metres_a_second() {
    let shelf = SmallShelf::holding(8);
    let mut plan = cube();
    plan.site.shear_wave_speed_m_s = Some(150.0);
    plan.site.unit_weight_kn_m3 = Some(19.9);
    close(
        "middle contact",
        rocking(&plan, &shelf)[1] / 1e6,
        0.73 * 280.0,
        0.02,
    );
    for (from, expected) in [(0.0, 280.0), (0.5, 138.0), (1.0, 48.0)] {
        plan.block.side_contact_from_m = Some(from);
        plan.block.side_contact_to_m = Some(1.0);
        close(
            "stated contact",
            rocking(&plan, &shelf)[1] / 1e6,
            expected,
            0.03,
        );
    }
}

/// Engineering basis, section 2, computed apart: s 0.652, 0.561 and 0.350 with a scatter of the speed of 0.30, 0.25 and 0.12, contact
/// 0.22, Poisson's ratio 0.08, method 0.10: worst tilt 2.92, 2.52 and 1.78 times the middle. Here Poisson's ratio is not stated; the
/// word's own low speed is rounded to 79 of 130 m/s.
#[test]
fn the_worst_is_the_unfavourable_twentieth_of_all_together() {
    let shelf = SmallShelf::holding(8);
    let mut plan = cube();
    plan.site.poisson_ratio = None;
    let worst = |plan: &SitePlan| {
        let [low, typical, _] = rocking(plan, &shelf);
        typical / low
    };
    close("in words", worst(&plan), 2.92, 0.01);
    plan.site.shear_wave_speed_m_s = Some(130.0);
    close("stated", worst(&plan), 2.52, 0.01);
    plan.site.shear_wave_speed_method = Some(WaveSpeedMethod::Downhole);
    close("down a hole", worst(&plan), 1.78, 0.01);
}

/// Every soil with a stiffness, and speeds from mud to rock: a stiffer ground never has a lower frequency, never leans further
/// under a weight, and a step of a fiftieth in the speed moves nothing by a tenth.
#[test]
fn stiffer_ground_is_never_worse_and_nothing_jumps() {
    let shelf = SmallShelf::holding(8);
    let figures = |speed: f64| {
        let mut plan = cube();
        plan.site.shear_wave_speed_m_s = Some(speed);
        plan.floor.stands = Some(vec![Stand {
            name: "beside".to_owned(),
            x_m: 1.2,
            y_m: 0.0,
            mass_kg: 80.0,
        }]);
        let found = design(&stillground::brief::resolve(&plan).unwrap(), &shelf);
        let stand = &found.motion.stands[0];
        let hertz =
            |list: &[stillground::units::Frequency]| stillground::units::hertz::get(list[0]);
        [
            1.0 / stand.block_tilt_by_ground_arcsec.unwrap().low,
            1.0 / stand.block_tilt_by_ground_arcsec.unwrap().typical,
            hertz(&found.motion.frequencies),
            hertz(&found.motion.frequencies_low),
            newton_metre_per_radian::get(found.ground_stiffness.low.rocking_x.unwrap()),
        ]
    };
    let all: Vec<[f64; 5]> = (0..60).map(|i| figures(60.0 * 1.02_f64.powi(i))).collect();
    for (i, pair) in all.windows(2).enumerate() {
        for (j, (soft, stiff)) in pair[0].iter().zip(pair[1]).enumerate() {
            assert!(stiff >= soft * (1.0 - 1e-9), "{i} {j}");
            assert!(stiff < 1.1 * soft, "{i} {j}");
        }
    }
}
