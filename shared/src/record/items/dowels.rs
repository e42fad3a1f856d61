//! Dowels into rock: how deep their holes are, and what they held.

use super::Job;
use super::bands::{number, up_to};
use crate::figure::Unit;
use crate::record::item::Item;
use crate::record::verdict::Verdict;
use crate::units::{kilonewton, millimetre};

/// Shallower by this the hole is as planned, mm.
const SHORT_MM: f64 = 20.0;

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    let Some(dowels) = &job.design.block.dowels else {
        return;
    };
    let depth = millimetre::get(dowels.length);
    let shallow = Verdict::outside(format!(
        "drill on to {}: a shorter dowel holds less.",
        job.say(depth, Unit::Millimetre)
    ));
    items.push(
        Item::new(
            "dowel_hole_depth",
            "dowels",
            "Least depth of the dowels' holes in the rock",
            job.say(depth, Unit::Millimetre),
            number(
                Unit::Millimetre,
                [0.0, 5000.0],
                up_to(depth - SHORT_MM, shallow).above(Verdict::Within),
            ),
        )
        .how("Measured with a rule in each hole after it was blown out; soft or broken rock at the top does not count."),
    );
    let pull = kilonewton::get(dowels.pull_test);
    let weak = Verdict::stop(
        "do not pour. A dowel that moves or gives way does not count; more, deeper or other dowels are for whoever made the plan.",
        "whoever made the plan",
    );
    items.push(
        Item::new(
            "dowel_pull_held",
            "dowel_pull",
            "Least pull that a dowel held for five minutes",
            job.say(pull, Unit::Kilonewton),
            number(
                Unit::Kilonewton,
                [0.0, 300.0],
                if pull > 0.0 {
                    up_to(pull * (1.0 - 1e-6), weak).above(Verdict::Within)
                } else {
                    up_to(300.0, Verdict::Within).above(Verdict::Within)
                },
            ),
        )
        .how("Nobody stands in line with the bar. Read the gauge at the start and at the end; it must not fall by more than a twentieth."),
    );
}
