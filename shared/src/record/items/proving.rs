//! The finished pier: what a knock, a push and a person standing show.

use super::Job;
use super::bands::{number, up_to};
use crate::figure::{Arcsecond, Unit};
use crate::record::item::Item;
use crate::record::verdict::Verdict;
use crate::source::Source;
use crate::units::hertz;

/// What is read off a plate solver or a trace is read to this share.
const READ_RATIO: f64 = 0.1;
const GROUND: Source =
    Source::derived("the plan's figure in the softest and the stiffest ground thought likely");

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    items.extend(frequency(job));
    items.extend(
        job.design
            .motion
            .stands
            .iter()
            .enumerate()
            .filter_map(|(place, stand)| standing(job, place + 1, stand)),
    );
    items.extend(settling(job));
}

fn frequency(job: &Job) -> Option<Item> {
    let motion = &job.design.motion;
    let [typical, low, high] = [
        &motion.frequencies,
        &motion.frequencies_low,
        &motion.frequencies_high,
    ]
    .map(|list| list.first().map(|f| hertz::get(*f)));
    let (typical, low, high) = (typical?, low?, high?);
    let slower = "look for a loose nut, a plate that does not bear, a mount that is not clamped; if all is tight, the ground is softer than was \
                  thought, and the plan should be told.";
    let bands = up_to(low * (1.0 - READ_RATIO), Verdict::outside(slower)).fine_to(high * (1.0 + READ_RATIO)).above(Verdict::outside(
        "stiffer than was thought possible: make sure that the first swing was read and not the second, then tell the plan.",
    ));
    let units = |value| job.say(value, Unit::Hertz);
    let said = format!(
        "{}, between {} and {}",
        units(typical),
        units(low),
        units(high)
    );
    let item = Item::new(
        "first_frequency",
        "measure",
        "First frequency after a knock",
        said,
        number(Unit::Hertz, [0.1, 1000.0], bands),
    );
    Some(
        item.lead("First frequency")
            .how("A knock with the fist at the top; the trace of an accelerometer or of a star.")
            .proves()
            .from(GROUND),
    )
}

fn standing(job: &Job, place: usize, stand: &crate::stages::motion::StandTilt) -> Option<Item> {
    let tilt = stand.tilt_arcsec?;
    let softer = stand.block_tilt_by_ground_arcsec.map_or(tilt, |ground| {
        tilt - stand.block_tilt_arcsec.unwrap_or(ground.typical) + ground.low.max(ground.high)
    });
    let most = softer.max(tilt) * (1.0 + READ_RATIO) + 0.05;
    let units = |value| job.say(value, Arcsecond);
    let bands = up_to(most, Verdict::Within).above(Verdict::outside(
        "more than the plan has: see that nothing bridges the gap and no nut is loose; then the ground is softer than was thought.",
    ));
    let said = format!("{}, at most {}", units(tilt), units(most));
    let item = Item::new(
        format!("stand:{place}"),
        "measure",
        format!("Star's move when somebody stands: {}", stand.name),
        said,
        number(Unit::Arcsecond, [0.0, 3600.0], bands),
    );
    Some(
        item.lead("The star moved by")
            .how("One person steps there, waits ten seconds, steps away; three times, the middle one written.")
            .proves()
            .from(GROUND),
    )
}

fn settling(job: &Job) -> Option<Item> {
    let settle = job.design.motion.settle_s?;
    let bands = up_to((settle * 2.0).max(0.5), Verdict::Within)
        .above(Verdict::outside("longer than the plan has: look for a loose part, a dragging cable, or a mount that swings on its own."));
    let item = Item::new(
        "settling",
        "measure",
        "Time until the star is still after a touch",
        job.say(settle, Unit::Second),
        number(Unit::Second, [0.0, 600.0], bands),
    );
    Some(item.lead("Still after").proves().from(GROUND))
}
