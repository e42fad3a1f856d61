//! The plan's figures as this pier's: the motion stage run on the fitted ground, joint, column and mount.

use crate::brief::{Given, Origin};
use crate::proof::Planned;
use crate::proof::pier::{Point, Standing, UNKNOWNS, Unknown};
use crate::proof::sampler::Sampled;
use crate::proof::verdict::thirds;
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
