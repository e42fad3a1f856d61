//! Block and ground: backfill compacted, a collar cast round the block.

use super::{Offered, Situation, number};
use crate::figure::Unit;
use crate::path;
use crate::proof::changed::Changed;
use crate::units::metre;

/// Thickness of a collar, in steps of 50 mm or 2 in.
const COLLAR_STEPS: f64 = 4.0;

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
    let stock = planned.brief.stock.value;
    let collar = stock.steps_m(COLLAR_STEPS);
    let [length, width] =
        [planned.block.length, planned.block.width].map(|side| metre::get(side) + 2.0 * collar);
    let say = |value| planned.brief.units.say(value, Unit::Metre);
    // An inch is no whole number of millimetres.
    let digits = stock.either(1e3, 1e7);
    let tidy = |value: f64| (value * digits).round() / digits;
    let fields = situation.on_this_block(vec![
        number(path!(block.length_m), tidy(length)),
        number(path!(block.width_m), tidy(width)),
    ]);
    Some(Offered {
        id: "collar",
        says: format!(
            "Cast a collar of concrete {} thick round the block to its full depth, tied to it with bars set in resin: worked out as a \
             block of {} by {}.",
            say(collar),
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
