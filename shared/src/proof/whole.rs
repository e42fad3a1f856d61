//! The plan's figures as this pier's: the motion stage run on the fitted ground, joint, column and mount.

use crate::brief::{Given, Origin};
use crate::proof::Planned;
use crate::proof::moments::thirds;
use crate::proof::pier::{Point, Standing, UNKNOWNS, Unknown};
use crate::proof::sampler::Sampled;
use crate::stages::ground_stiffness::{GroundStiffness, Stiffness};
use crate::stages::motion::rig::Axis;
use crate::stages::motion::{self, Motion};
use crate::units::{
    Spread, megapascal, newton_metre_per_radian, newton_per_metre, newton_per_radian,
};

/// What the star does on the fitted pier, with the ground's own range.
pub(super) fn motion(planned: &Planned, standing: &Standing, sampled: &Sampled) -> Option<Motion> {
    let mut middle: Point = [0.0; UNKNOWNS];
    for (k, place) in middle.iter_mut().enumerate() {
        *place = thirds(sampled.posterior.iter().map(|draw| draw.at[k]))?[1];
    }
    let modulus = thirds(
        sampled
            .posterior
            .iter()
            .map(|draw| standing.value(&draw.at, Unknown::Ground)),
    )?;
    let of = |unknown| standing.value(&middle, unknown);
    let mut brief = planned.brief.clone();
    brief.load.mount_stiffness = Given {
        value: newton_metre_per_radian::new(of(Unknown::Mount)),
        origin: Origin::Measured,
    };
    // The load as it was fitted; its answers keep where they came from.
    let (mass, gyration) = (of(Unknown::Mass), of(Unknown::Gyration));
    brief.load.mass.value *= mass;
    brief.load.centre_above_pier.value *= of(Unknown::Centre);
    brief.load.inertia.value *= mass * gyration * gyration;
    let mut pier = planned.pier.clone();
    pier.base_joint_stiffness = newton_metre_per_radian::new(of(Unknown::Joint));
    pier.bending_stiffness *= of(Unknown::Column);
    pier.shear_stiffness *= of(Unknown::Column);
    let mut ground = planned.ground.clone();
    let [low, typical, high] = modulus.map(|g| megapascal::new(1e-6 * g));
    ground.shear_modulus = Some(Spread { low, typical, high });
    // The speed goes with the root of the modulus, and the stiffness with the modulus and with the contact.
    let ratio = |g: f64| g / standing.prior.middle[0].exp();
    ground.shear_wave_speed = ground.shear_wave_speed.map(|speed| Spread {
        low: speed.typical * ratio(modulus[0]).sqrt(),
        typical: speed.typical * ratio(modulus[1]).sqrt(),
        high: speed.typical * ratio(modulus[2]).sqrt(),
    });
    let held = |g: f64| -> Stiffness {
        let (x, y) = (
            standing.springs(Axis::X, g, of(Unknown::Contact)),
            standing.springs(Axis::Y, g, of(Unknown::Contact)),
        );
        let rigid = planned.stiffness.typical;
        Stiffness {
            vertical: rigid.vertical.map(|k| k * ratio(g)),
            torsion: rigid.torsion.map(|k| k * ratio(g)),
            horizontal_x: Some(newton_per_metre::new(x.sway)),
            horizontal_y: Some(newton_per_metre::new(y.sway)),
            rocking_y: Some(newton_metre_per_radian::new(x.rocking)),
            rocking_x: Some(newton_metre_per_radian::new(y.rocking)),
            coupling_x_ry: Some(newton_per_radian::new(x.coupling)),
            coupling_y_rx: Some(newton_per_radian::new(-y.coupling)),
        }
    };
    let stiffness = GroundStiffness {
        low: held(modulus[0]),
        typical: held(modulus[1]),
        high: held(modulus[2]),
        shear_modulus: ground.shear_modulus,
        ..planned.stiffness.clone()
    };
    let found = motion::stage(
        &brief,
        &ground,
        planned.block,
        &stiffness,
        &pier,
        planned.floor,
        stiffness.influence(),
    );
    Some(found.value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief::resolve;
    use crate::cast::Cast;
    use crate::decided::design_plan;
    use crate::halfspace::SmallShelf;
    use crate::proof::sampler::Draw;
    use crate::site_plan::SitePlan;
    use crate::stages::ground_stiffness;
    use crate::units::hertz;

    const BENCH: &str = r#"{ "schema_version": 1,
        "site": { "soil": "firm_clay", "shear_wave_speed_m_s": 135, "unit_weight_kn_m3": 18, "poisson_ratio": 0.33 },
        "block": { "length_m": 1, "width_m": 1, "depth_m": 0.9, "upstand_m": 0.05 },
        "pier": { "height_m": 1.2, "outside_diameter_mm": 219.1, "wall_mm": 6.3, "fill": "none", "levelling": "nuts" },
        "load": { "mass_kg": 60, "centre_above_pier_m": 0.3, "inertia_kg_m2": 3.75, "mount_stiffness_n_m_per_rad": 200000 },
        "commissioning": { "knocks": [{ "direction": "x", "with_mount": true, "frequency_hz": 16 }] },
        "floor": { "kind": "ground" } }"#;

    fn first_hz(motion: &Motion) -> f64 {
        hertz::get(motion.frequencies[0])
    }

    /// The bench pier with its unknowns at this point.
    fn fitted(at: Point) -> (Motion, Standing) {
        let plan: SitePlan = serde_json::from_str(BENCH).unwrap();
        let brief = resolve(&plan).unwrap();
        let cast = Cast::of(&brief);
        let shelf = SmallShelf::holding(16);
        let (ground, block, pier) = (&cast.ground.value, &cast.block.value, &cast.pier.value);
        let stiffness = ground_stiffness::stage(&brief, ground, block, &shelf).value;
        let floor = &cast.floor.value;
        let standing = Standing::of(
            &brief,
            &plan.commissioning,
            ground,
            block,
            &stiffness,
            pier,
            floor,
            &shelf,
        )
        .unwrap();
        let planned = Planned {
            plan: &plan,
            brief: &brief,
            ground,
            block,
            stiffness: &stiffness,
            pier,
            floor,
        };
        let sampled = Sampled {
            prior: Vec::new(),
            posterior: vec![Draw::at(at)],
            holds: true,
        };
        let found = motion(&planned, &standing, &sampled).unwrap();
        (found, standing)
    }

    /// Expected by another way: the plan that states the fitted mass, height and inertia, worked out by `design`. The standard
    /// deviations are the prior's own: mass e^(2 · 0.05), height e^(1.5 · 0.12), radius e^(0.15).
    #[test]
    fn the_fitted_pier_moves_with_the_load_that_was_found() {
        let mut at: Point = [0.0; UNKNOWNS];
        let plain = first_hz(&fitted(at).0);
        at[Unknown::Mass as usize] = 2.0;
        at[Unknown::Centre as usize] = 1.5;
        at[Unknown::Gyration as usize] = 1.0;
        let (found, standing) = fitted(at);
        let (mass, centre, gyration) = (0.1_f64.exp(), 0.18_f64.exp(), 0.15_f64.exp());
        assert!((standing.value(&at, Unknown::Mass) - mass).abs() < 1e-9);
        let mut said: SitePlan = serde_json::from_str(BENCH).unwrap();
        said.load.mass_kg = Some(60.0 * mass);
        said.load.centre_above_pier_m = Some(0.3 * centre);
        said.load.inertia_kg_m2 = Some(3.75 * mass * gyration * gyration);
        let stated = design_plan(&said, &SmallShelf::holding(16)).unwrap();
        let (found, stated) = (first_hz(&found), first_hz(&stated.motion));
        println!("{plain} Hz as planned, {found} as fitted, {stated} as stated");
        assert!((found / stated - 1.0).abs() < 0.005, "{found} {stated}");
        // The load as it was planned would swing faster by a seventh.
        assert!(plain > 1.1 * found, "{plain} {found}");
    }
}
