//! What sets a ceiling to the torque, by the way in which the plate stands.

use crate::brief::Brief;
use crate::rules::annular_plate;
use crate::rules::threads;
use crate::rules::vdi_2230_2015 as tightening;
use crate::source::Source;
use crate::stages::anchors::situation::resistance_to_lasting;
use crate::units::{Length, Moment, newton_metre};

use super::{Bears, Limit, Screw, Way};

/// What a product's sheet says.
const PRODUCT: Source =
    Source::second_hand("The product's sheet", "", "largest installation torque");
/// Share of the proof load between two nuts.
const BETWEEN_NUTS_RATIO: f64 = 0.5;
const BETWEEN_NUTS: Source = Source::judgement("half of the proof load between two nuts");
/// Share of a limit that rounding may hide.
const DUST_RATIO: f64 = 1e-9;

/// Every ceiling, the lowest marked.
pub(super) fn of(brief: &Brief, way: Way, screw: &Screw, edge: Length, bears: Bears) -> Vec<Limit> {
    let anchors = &brief.anchors;
    let mut limits = vec![steel(way, screw), product(brief, edge)];
    if way.pulls_on_bond() && anchors.product.known() {
        // The strongest of the scattered preloads must not pull the resin loose.
        limits.push(limit(
            "the lasting pull on the resin",
            screw.torque(bears.lasting / screw.share.high),
            resistance_to_lasting(brief.code.value),
        ));
    }
    if let (Way::Straight, Some(bending)) = (way, bears.bending) {
        limits.push(limit(
            "bending of plate and wall, unless the plate lies flat to a sheet of paper,",
            screw.torque(bending / screw.share.high),
            annular_plate::PLATE,
        ));
    }
    let least = lowest(&limits);
    for limit in &mut limits {
        limit.governs = newton_metre::get(limit.torque) <= least * (1.0 + DUST_RATIO);
    }
    limits
}

/// The lowest of them, N m.
pub(super) fn lowest(limits: &[Limit]) -> f64 {
    limits
        .iter()
        .map(|limit| newton_metre::get(limit.torque))
        .fold(f64::INFINITY, f64::min)
}

fn limit(what: &'static str, torque: Moment, source: Source) -> Limit {
    Limit {
        what,
        torque,
        governs: false,
        source,
    }
}

fn steel(way: Way, screw: &Screw) -> Limit {
    let (what, share, source) = match way {
        Way::Nuts => (
            "half of the stud's proof load",
            BETWEEN_NUTS_RATIO,
            BETWEEN_NUTS,
        ),
        Way::Grouted | Way::Straight | Way::Ungrouted => (
            "seven tenths of the stud's proof load",
            tightening::PROOF_SHARE_RATIO,
            tightening::PROOF_SHARE,
        ),
    };
    limit(what, screw.torque(screw.proof * share), source)
}

/// The product's own largest torque, or what holds its place.
fn product(brief: &Brief, edge: Length) -> Limit {
    match brief.anchors.max_torque {
        Some(most) => limit("the product's own maximum", most, PRODUCT),
        None => limit(
            "the least that published sheets of bonded studs allow this thread",
            threads::torque_ceiling(brief.anchors.size.value, edge),
            threads::CEILING,
        ),
    }
}
