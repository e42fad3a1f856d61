//! Dowels into the rock below the block.

use crate::figure::Unit;
use crate::units::{kilonewton, metre, millimetre};

use super::{Job, List, pieces};

/// A bag of grout fills so much, m³: 25 kg.
const BAG_M3: f64 = 0.0125;

pub(super) fn list(job: &Job, list: &mut List) {
    let Some(dowels) = &job.block.dowels else {
        return;
    };
    let count = f64::from(dowels.count);
    let (rock, block) = (metre::get(dowels.length), metre::get(dowels.in_block));
    list.buy(
        "dowel-bar",
        format!(
            "Ribbed bar {}, cut to {}",
            job.mm(millimetre::get(dowels.diameter)),
            job.m(rock + block)
        ),
        pieces(count),
        "dowels between rock and block",
        format!("{} in the rock, {} in the block", job.m(rock), job.m(block)),
    );
    let hole = metre::get(dowels.hole).powi(2) * std::f64::consts::FRAC_PI_4 * rock;
    list.buy(
        "dowel-grout",
        format!(
            "Non-shrink grout, bags of {}",
            job.say(25.0, Unit::Kilogram)
        ),
        pieces(count * hole * 1.5 / BAG_M3),
        "bars into the rock",
        "half as much again for joints and waste",
    );
    list.hire(
        "rock-drill",
        format!(
            "Rock drill with a bit of {}, {} long",
            job.mm(millimetre::get(dowels.hole)),
            job.m(rock + 0.1)
        ),
        (1.0, Unit::Day),
        "holes for the dowels",
        "with dust extraction or water",
    );
    list.hire(
        "pull-tester",
        format!(
            "Hollow jack with a gauge to {}",
            job.say(
                2.0 * kilonewton::get(dowels.pull_test).max(10.0),
                Unit::Kilonewton
            )
        ),
        (1.0, Unit::Day),
        "the pull test of the dowels",
        "with a frame that stands clear of the hole",
    );
}
