//! The finished pier: what a knock, a lean, a pull and a walk show.
//!
//! Knock, lean and pull take several figures each. What earlier versions asked for in their place, one frequency, one move
//! a place and one time, is still judged where it was entered, and can be taken into the plan as what it stands for.

use super::Job;
use super::bands::{number, up_to};
use crate::figure::{Arcsecond, Unit};
use crate::record::entry::WALK;
use crate::record::item::{Asks, Band, Item};
use crate::record::taking::{FIRST_FREQUENCY, SETTLING, STAND};
use crate::record::verdict::Verdict;
use crate::site_plan::commissioning::MeasurementKind;
use crate::source::Source;
use crate::stages::schedule::MEASURE;
use crate::units::hertz;

/// What is read off a plate solver or a trace is read to this share.
const READ_RATIO: f64 = 0.1;
const GROUND: Source =
    Source::derived("the plan's figure in the softest and the stiffest ground thought likely");

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    items.push(knock(job));
    items.push(lean(job));
    items.push(pull());
    items.extend(walk(job));
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

fn measurement(
    kind: MeasurementKind,
    title: &str,
    expected: impl Into<String>,
    bands: Vec<Band>,
) -> Item {
    let asks = Asks::Measurement { kind, bands };
    // A finding in words says by itself what it is of.
    Item::new(kind.key(), MEASURE, title, expected, asks)
        .lead("")
        .proves()
        .from(GROUND)
}

/// First frequency in typical, soft and stiff ground, Hz; none where the ground is not known.
fn frequencies(job: &Job) -> Option<[f64; 3]> {
    let motion = &job.design.motion;
    let all = [
        &motion.frequencies,
        &motion.frequencies_low,
        &motion.frequencies_high,
    ];
    let [typical, low, high] = all.map(|list| list.first().map(|f| hertz::get(*f)));
    Some([typical?, low?, high?])
}

/// What follows from the first frequency with the load on.
fn bands_of([_, low, high]: [f64; 3]) -> Vec<Band> {
    let slower = "look for a loose nut, a plate that does not bear, a mount that is not clamped; if all is tight, measure on: a knock \
                  alone cannot tell a soft mount from a soft joint.";
    up_to(low * (1.0 - READ_RATIO), Verdict::outside(slower))
        .fine_to(high * (1.0 + READ_RATIO))
        .above(Verdict::outside(
            "stiffer than the plan considers possible: make sure that the first swing was read and not the second.",
        ))
}

fn expected_frequency(job: &Job, [typical, low, high]: [f64; 3]) -> String {
    let units = |value| job.say(value, Unit::Hertz);
    format!(
        "{}, between {} and {}",
        units(typical),
        units(low),
        units(high)
    )
}

fn knock(job: &Job) -> Item {
    let known = frequencies(job);
    let expected = known.map_or_else(String::new, |known| {
        format!(
            "with mount and telescope on {}",
            expected_frequency(job, known)
        )
    });
    measurement(
        MeasurementKind::Knock,
        "Knock",
        expected,
        known.map(bands_of).unwrap_or_default(),
    )
}

fn lean(job: &Job) -> Item {
    let worst = job
        .design
        .motion
        .stands
        .iter()
        .filter_map(|stand| Some((stand.tilt_arcsec?, &stand.name)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    let expected = worst.map_or_else(String::new, |(tilt, name)| {
        format!("{} at “{name}”", job.say(tilt, Arcsecond))
    });
    measurement(MeasurementKind::Lean, "Lean", expected, Vec::new())
}

fn pull() -> Item {
    measurement(MeasurementKind::Pull, "Pull", "", Vec::new())
}

/// A step cannot be told from the seeing where it is smaller.
const READ_WALK_ARCSEC: f64 = 0.5;

fn walk(job: &Job) -> Option<Item> {
    let trail = job.design.motion.walk.trail_arcsec?;
    let most = 2.0 * trail + READ_WALK_ARCSEC;
    let bands = up_to(most, Verdict::Within).above(Verdict::outside(
        "longer than the plan has: see that nothing bridges the gap, then measure a lean.",
    ));
    let item = Item::new(
        WALK,
        MEASURE,
        "Star’s trail while somebody walks the route, end to end",
        format!(
            "{}, at most {}",
            job.say(trail, Arcsecond),
            job.say(most, Arcsecond)
        ),
        number(Unit::Arcsecond, [0.0, 3600.0], bands),
    );
    Some(item.lead("The star’s trail was").proves().from(GROUND))
}

fn frequency(job: &Job) -> Option<Item> {
    let known = frequencies(job)?;
    let item = Item::new(
        FIRST_FREQUENCY,
        MEASURE,
        "First frequency after a knock",
        expected_frequency(job, known),
        number(Unit::Hertz, [0.1, 1000.0], bands_of(known)),
    );
    Some(
        item.lead("First frequency")
            .how("A knock with the fist at the top; the trace of an accelerometer or of a star.")
            .proves()
            .from(GROUND)
            .no_longer_asked(),
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
        format!("{STAND}{place}"),
        MEASURE,
        format!("Star's move when somebody stands: {}", stand.name),
        said,
        number(Unit::Arcsecond, [0.0, 3600.0], bands),
    );
    Some(
        item.lead("The star moved by")
            .how("One person steps there, waits ten seconds, steps away; three times, the middle one written.")
            .proves()
            .from(GROUND)
            .no_longer_asked(),
    )
}

fn settling(job: &Job) -> Option<Item> {
    let settle = job.design.motion.settle_s?;
    let bands = up_to((settle * 2.0).max(0.5), Verdict::Within)
        .above(Verdict::outside("longer than the plan has: look for a loose part, a dragging cable, or a mount that swings on its own."));
    let item = Item::new(
        SETTLING,
        MEASURE,
        "Time until the star is still after a touch",
        job.say(settle, Unit::Second),
        number(Unit::Second, [0.0, 600.0], bands),
    );
    Some(
        item.lead("Still after")
            .proves()
            .from(GROUND)
            .no_longer_asked(),
    )
}
