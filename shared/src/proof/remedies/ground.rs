//! Block and ground: backfill compacted, a collar cast round the block.

use super::{Offered, Situation, number};
use crate::figure::Unit;
use crate::path;
use crate::proof::changed::Changed;
use crate::units::metre;

/// Thickness of a collar, m.
const COLLAR_M: f64 = 0.2;

pub(super) fn offered(situation: &Situation) -> Vec<Offered> {
    std::iter::once(backfill(situation))
        .chain(collar(situation))
        .collect()
}

fn backfill(situation: &Situation) -> Offered {
    let depth = metre::get(situation.planned.block.depth);
    let fields = vec![
        number(path!(block.side_contact_from_m), 0.0),
        number(path!(block.side_contact_to_m), depth),
    ];
    Offered {
        id: "backfill",
        says: "Dig out the loose ground beside the block, one side after another and never below its base, and compact it again in thin \
               layers: worked out with the sides held all the way."
            .to_owned(),
        fields: situation.on_this_block(fields),
        not_in_plan: None,
        after: situation.same(Changed {
            held: true,
            ..Changed::NOTHING
        }),
    }
}

/// A wider block, its hold on the ground as it was found.
fn collar(situation: &Situation) -> Option<Offered> {
    let planned = situation.planned;
    let [length, width] =
        [planned.block.length, planned.block.width].map(|side| metre::get(side) + 2.0 * COLLAR_M);
    let say = |value| planned.brief.units.say(value, Unit::Metre);
    let tidy = |value: f64| (value * 1e3).round() / 1e3;
    let fields = situation.on_this_block(vec![
        number(path!(block.length_m), tidy(length)),
        number(path!(block.width_m), tidy(width)),
    ]);
    Some(Offered {
        id: "collar",
        says: format!(
            "Cast a collar of concrete {} thick round the block to its full depth, tied to it with bars set in resin: worked out as a \
             block of {} by {}.",
            say(COLLAR_M),
            say(length),
            say(width)
        ),
        after: situation.remade(&fields)?,
        fields,
        not_in_plan: Some(
            "The plan has one block of that size; the bars between the two are for a licensed engineer.",
        ),
    })
}
