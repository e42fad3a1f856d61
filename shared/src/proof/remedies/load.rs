//! What stands on the pier: a stiffer mount, the weights farther down.

use super::{Offered, Situation, number};
use crate::figure::Unit;
use crate::path;
use crate::units::{metre, newton_metre_per_radian};

/// How much higher than this the weights' centre need not be.
const LOWER: f64 = 0.67;
/// How much stiffer a mount comes to be.
const STIFFER: f64 = 2.0;

pub(super) fn offered(situation: &Situation) -> Vec<Offered> {
    [stiffer_mount(situation), weight_down(situation)]
        .into_iter()
        .flatten()
        .collect()
}

fn stiffer_mount(situation: &Situation) -> Option<Offered> {
    let planned = situation.planned;
    let now = newton_metre_per_radian::get(planned.brief.load.mount_stiffness.value);
    let field = match planned.plan.load.mount_frequency_hz {
        // So many times as stiff, it trembles the root of that as fast.
        Some(hertz) => number(path!(load.mount_frequency_hz), STIFFER.sqrt() * hertz),
        None => number(path!(load.mount_stiffness_n_m_per_rad), STIFFER * now),
    };
    let fields = situation.on_this_block(vec![field]);
    Some(Offered {
        id: "stiffer_mount",
        says: "Make the mount and its fixing twice as stiff: tighten its bolts and clamps, leave out half-columns and tall plates, or \
               take a stiffer one."
            .to_owned(),
        after: situation.remade(&fields)?,
        fields,
        not_in_plan: Some("How much it helped, only a knock says: make it again afterwards."),
    })
}

fn weight_down(situation: &Situation) -> Option<Offered> {
    let brief = situation.planned.brief;
    let now = metre::get(brief.load.centre_above_pier.value);
    let then = (LOWER * now * 1e3).round() / 1e3;
    let say = |value| brief.units.say(value, Unit::Metre);
    let fields = situation.on_this_block(vec![number(path!(load.centre_above_pier_m), then)]);
    Some(Offered {
        id: "weight_down",
        says: format!(
            "Bring the weights closer to the pier's top: their common centre {} above it instead of {}.",
            say(then),
            say(now)
        ),
        after: situation.remade(&fields)?,
        fields,
        not_in_plan: None,
    })
}
