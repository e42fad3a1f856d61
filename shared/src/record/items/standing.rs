//! Plate and column: level and plumb.

use super::Job;
use super::bands::{fine_to, number, up_to};
use crate::figure::{Millimetre, Unit};
use crate::record::item::{Answer, Asks, Item};
use crate::record::verdict::Verdict;
use crate::source::Source;
use crate::units::metre;

/// A lower nut is set to a tenth of a millimetre; a plate that is out by more than five of them is levelled again, mm and in.
const LEVEL: (f64, f64) = (0.5, 0.02);
/// Out by more than this something else is wrong.
const TILTED: (f64, f64) = (5.0, 0.1875);
/// A column leans by no more than one part in so many.
const PLUMB_RATIO: f64 = 500.0;
const LEVEL_SOURCE: Source = Source::judgement(
    "half a millimetre across the plate; the mount's own adjusters take the rest",
);
const PLUMB: Source = Source::judgement("a five-hundredth of the height");

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    let across = job.say(job.design.pier.plate_side, Millimetre);
    for (id, title) in [
        ("level_x", "Plate out of level, east to west"),
        ("level_y", "Plate out of level, south to north"),
    ] {
        let again =
            "level it again before the nuts are tightened; turn the level end for end each time.";
        let tilted = Verdict::stop(
            "do not tighten. Something is under the plate, a nut stands on a burr, or a stud leans.",
            "whoever made the plan, if nothing is found",
        );
        let [level, tilted_from] = [LEVEL, TILTED].map(|(mm, inches)| job.limit_mm(mm, inches));
        let bands = up_to(level, Verdict::Within)
            .up_to(tilted_from, Verdict::outside(again))
            .above(tilted);
        let limit = job.say(level, Unit::Millimetre);
        items.push(
            Item::new(id, "level", title, format!("{limit} or less"), number(Unit::Millimetre, [0.0, 200.0], bands))
                .how(format!("The difference of height over the {across} of the plate, by a level and feeler gauges."))
                .proves()
                .from(LEVEL_SOURCE),
        );
    }
    let height = 1000.0 * metre::get(job.design.pier.height);
    // Down to a mark of the tape; what is less than one stays.
    let mark = job.limit_mm(height / PLUMB_RATIO, 0.0625);
    let allowed = (height / PLUMB_RATIO / mark).floor().max(1.0) * mark;
    for (id, title) in [
        ("plumb_x", "Column out of plumb, east to west"),
        ("plumb_y", "Column out of plumb, south to north"),
    ] {
        let bands = fine_to(allowed).above(Verdict::outside(
            "turn the nuts under the plate until it stands; a leaning tube on a level plate was welded so, and may stay.",
        ));
        items.push(
            Item::new(
                id,
                "level",
                title,
                format!("{} or less", job.say(allowed, Unit::Millimetre)),
                number(Unit::Millimetre, [0.0, 2000.0], bands),
            )
            .how(format!(
                "Over its height of {}, by a plumb line.",
                job.say(height / 1000.0, Unit::Metre)
            ))
            .proves()
            .from(PLUMB),
        );
    }
    items.push(
        Item::new(
            "gap",
            "floor",
            "Gap between floor and pier, all round",
            "nothing touches",
            clear_of_the_floor(),
        )
        .lead("Gap:")
        .proves(),
    );
}

/// What is looked for in the gap round the pier.
pub(super) fn clear_of_the_floor() -> Asks {
    Asks::Choice(vec![
        Answer::fine("clear", "nothing touches"),
        Answer::then(
            "touches",
            "something touches the pier",
            Verdict::outside(
                "free it: whatever bridges the gap brings every step on the floor to the star.",
            ),
        ),
    ])
}
