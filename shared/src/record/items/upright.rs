//! A pier that stands already, whoever built it: level, plumb, nuts and the gap, with what to do where one is out. Nothing stops
//! a work here; what is found is said on the sheet of proof.

use super::Job;
use super::bands::{fine_to, number, up_to};
use super::standing::clear_of_the_floor;
use crate::figure::{Millimetre, Unit};
use crate::record::item::{Answer, Asks, Item};
use crate::record::verdict::Verdict;
use crate::source::Source;
use crate::stages::schedule::MEASURE;
use crate::units::metre;

/// A plate that is out by more than this moves nothing by itself, and makes the mount's adjusters reach far, mm.
const LEVEL_MM: f64 = 2.0;
/// A column leans by no more than one part in so many.
const PLUMB_RATIO: f64 = 200.0;
const JUDGED: Source = Source::judgement(
    "a pier that trembles is looked at for what is loose or bent, not for a fine level",
);

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    // A pier that stands already has nothing to build.
    if !job.design.schedule.is_empty() {
        return;
    }
    let mut add = |item: Item| items.push(item.proves().from(JUDGED));
    let across = job.say(job.design.pier.plate_side, Millimetre);
    for (id, title) in [
        ("stands_level_x", "Plate out of level, east to west"),
        ("stands_level_y", "Plate out of level, south to north"),
    ] {
        let bands = up_to(LEVEL_MM, Verdict::Within).above(Verdict::outside(
            "the mount's adjusters may still reach it. If it was level once, something has settled, slipped or bent: look at the nuts, \
             and measure again in a month.",
        ));
        let limit = job.say(LEVEL_MM, Unit::Millimetre);
        add(
            Item::new(
                id,
                MEASURE,
                title,
                format!("{limit} or less"),
                number(Unit::Millimetre, [0.0, 200.0], bands),
            )
            .how(format!(
                "The difference of height over the {across} of the plate, by a level and feeler gauges; turn the level end for end and \
                 take the middle."
            )),
        );
    }
    let height = metre::get(job.design.pier.height);
    let allowed = 1000.0 * height / PLUMB_RATIO;
    for (id, title) in [
        ("stands_plumb_x", "Column out of plumb, east to west"),
        ("stands_plumb_y", "Column out of plumb, south to north"),
    ] {
        let bands = fine_to(allowed).above(Verdict::outside(
            "a tube on a level plate may have been welded so, and may stay. If the plate leans with it, the block has tilted or a nut \
             has moved.",
        ));
        add(Item::new(
            id,
            MEASURE,
            title,
            format!("{} or less", job.say(allowed, Unit::Millimetre)),
            number(Unit::Millimetre, [0.0, 2000.0], bands),
        )
        .how(format!(
            "Over its height of {}, by a plumb line or a straightedge and a level.",
            job.say(height, Unit::Metre)
        )));
    }
    let nuts = vec![
        Answer::fine("tight", "none moves"),
        Answer::then(
            "loose",
            "one or more move",
            Verdict::outside(
                "unload the pier first. Have them tightened crosswise to the torque of the resin's sheet, never above its maximum, and \
                 mark them; a stud that turns with its nut has lost its bond.",
            ),
        ),
    ];
    add(Item::new(
        "stands_nuts",
        MEASURE,
        "Nuts of the base plate, by a short spanner and without force",
        "none moves",
        Asks::Choice(nuts),
    )
    .lead("Nuts:"));
    add(Item::new(
        "stands_gap",
        MEASURE,
        "Gap between floor and pier, all round",
        "nothing touches",
        clear_of_the_floor(),
    )
    .lead("Gap:"));
}
