//! The concrete: what came, how it flowed, how warm it was, how it was kept.

use super::Job;
use super::bands::{number, up_to};
use crate::figure::{Celsius, Unit};
use crate::record::item::{Answer, Asks, Item, Moment};
use crate::record::verdict::Verdict;
use crate::rules::en_206_1_2000::fresh;
use crate::rules::en_13670_2009::curing;
use crate::site_plan::block::{Concrete, Mix};
use crate::source::Source;
use crate::stages::block::characteristic;
use crate::units::{cubic_metre, day, millimetre};

/// Warmer than this the concrete stiffens while it is placed, °C.
const WARM_C: f64 = 30.0;
/// Warmer than this it is not poured, °C.
const HOT_C: f64 = 35.0;
/// Green concrete that freezes is lost, °C.
const FROST_C: f64 = 0.0;
/// Stiffer or wetter by up to this the concrete may still be placed, mm and in.
const NEAR_SLUMP: (f64, f64) = (30.0, 1.0);
/// Just less than the least slump.
const JUST: (f64, f64) = (1.0, 0.25);
/// Much more than was ordered, as a ratio.
const TOO_MUCH_RATIO: f64 = 1.25;
/// The same class of slump as it is ordered in inches.
const SLUMP_IN: (f64, f64) = (4.0, 6.0);
const PLANT: &str = "the concrete plant, and whoever made the plan";

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    items.push(class(job));
    items.push(delivered(job));
    items.push(slump(job));
    items.push(air(job));
    items.push(fresh_temperature(job));
    keeping(job, items);
}

fn class(job: &Job) -> Item {
    let planned = job.brief.block.concrete.value;
    let weaker = "do not pour. It is weaker than planned, and the studs would hold less.";
    let answer = |&class: &Concrete| {
        let verdict = if characteristic(class) < characteristic(planned) {
            Verdict::stop(weaker, PLANT)
        } else {
            Verdict::Within
        };
        Answer::then(class.key(), class.said(), verdict)
    };
    let mut answers: Vec<Answer> = Concrete::ALL
        .iter()
        .filter(|class| class.stock() == planned.stock())
        .map(answer)
        .collect();
    answers.push(Answer::then(
        "other",
        "another, or not said",
        Verdict::stop("do not pour before the class is known.", PLANT),
    ));
    Item::new(
        "concrete_class",
        "pour",
        "Class on the delivery note or the bags",
        planned.said(),
        Asks::Choice(answers),
    )
    .lead("Concrete of class")
    .how("Read it before the first barrow; a lower class stops the pour.")
}

fn delivered(job: &Job) -> Item {
    let units = |value| job.say(value, Unit::CubicMetre);
    let (needed, ordered) = (
        cubic_metre::get(job.design.block.volume),
        cubic_metre::get(job.design.block.order_volume),
    );
    let short = format!(
        "do not begin. The block takes {} in one go, and a joint in it would be a crack. Have the rest on its way first.",
        units(needed)
    );
    let bands = up_to(needed * 0.999, Verdict::stop(short, PLANT))
        .fine_to(ordered * TOO_MUCH_RATIO)
        .above(Verdict::outside("more came than was ordered: look at the note again, and decide beforehand where the rest goes."));
    Item::new(
        "concrete_delivered",
        "pour",
        "Concrete there for the pour",
        units(ordered),
        number(Unit::CubicMetre, [0.0, 50.0], bands),
    )
    .lead("Concrete:")
    .how(format!(
        "On the lorry or in bags, all of it before you begin. Less than {} stops the pour.",
        units(needed)
    ))
    .from(Source::derived("volume of the block"))
}

fn slump(job: &Job) -> Item {
    let (from, to) = fresh::slump_s3();
    let (from, to) = (
        job.limit_mm(millimetre::get(from), SLUMP_IN.0),
        job.limit_mm(millimetre::get(to), SLUMP_IN.1),
    );
    let [near, just] = [NEAR_SLUMP, JUST].map(|(mm, inches)| job.limit_mm(mm, inches));
    let units = |value| job.say(value, Unit::Millimetre);
    let advice = if job.brief.block.mix.value == Mix::Ready {
        "have the plant's man add plasticiser, never water."
    } else {
        "mix the next batch a little wetter within what the bag allows."
    };
    let bands = up_to(
        from - near,
        Verdict::stop(
            "do not pour. It would not flow round steel and ducts and would leave holes.",
            PLANT,
        ),
    )
    .up_to(
        from - just,
        Verdict::outside(format!("it is stiff: {advice} Drive it in thin layers.")),
    )
    .fine_to(to)
    .up_to(
        to + near,
        Verdict::outside(
            "it is wet: ask whether water was added on the way; tell whoever made the plan.",
        ),
    )
    .above(Verdict::stop(
        "do not pour. So much water costs strength.",
        PLANT,
    ));
    Item::new(
        "slump",
        "pour",
        "Slump",
        format!("{} to {}", units(from), units(to)),
        number(Unit::Millimetre, [0.0, 300.0], bands),
    )
    .how(format!(
        "After {} has come out. Under {} or over {} stops the pour.",
        job.brief
            .units
            .either("a third of a cubic metre", "half a cubic yard"),
        units(from - near),
        units(to + near)
    ))
    .from(fresh::SLUMP)
}

fn air(job: &Job) -> Item {
    let units = |value| job.say(value, Celsius);
    let cold = "pour only if the block can be wrapped at once and kept above freezing for three days; days under 5 °C do not count as curing.";
    let cold = cold.replace("5 °C", &units(fresh::least_temperature_c()));
    let bands = up_to(FROST_C, Verdict::stop("do not pour. Concrete that freezes green is lost.", "whoever made the plan"))
        .up_to(fresh::least_temperature_c(), Verdict::outside(cold))
        .fine_to(WARM_C)
        .above(Verdict::outside("shade it, damp the ground and the form first, pour in the cool of the day, and cover each part at once."));
    let expected = units(job.brief.work.temperature_c.value);
    Item::new(
        "air_temperature",
        "pour",
        "Air temperature at the pour",
        expected,
        number(Unit::Celsius, [-60.0, 60.0], bands),
    )
    .lead("Air at")
    .how(format!(
        "In the shade. At {} and below the pour stops.",
        units(FROST_C)
    ))
    .needed()
    .from(curing::SOURCE)
}

fn fresh_temperature(job: &Job) -> Item {
    let units = |value| job.say(value, Celsius);
    let least = fresh::least_temperature_c();
    let bands = up_to(
        least - 0.1,
        Verdict::stop("do not pour. It is too cold to begin to harden.", PLANT),
    )
    .fine_to(WARM_C)
    .up_to(
        HOT_C,
        Verdict::outside("place it quickly, without a pause, and cover each part at once."),
    )
    .above(Verdict::stop(
        "do not pour. It stiffens in the barrow and cracks when it cools.",
        PLANT,
    ));
    let said = format!("{} to {}", units(least), units(WARM_C));
    Item::new(
        "concrete_temperature",
        "pour",
        "Temperature of the fresh concrete",
        said,
        number(Unit::Celsius, [-10.0, 100.0], bands),
    )
    .lead("Fresh concrete at")
    .how(format!(
        "With a probe in the first barrow. Under {} or over {} stops the pour.",
        units(least),
        units(HOT_C)
    ))
    .needed()
    .from(fresh::TEMPERATURE)
}

fn keeping(job: &Job, items: &mut Vec<Item>) {
    let curing_d = day::get(job.design.block.curing);
    let days = job.say(curing_d, Unit::Day);
    items.push(
        Item::new(
            "damp_from",
            "cover",
            "Covered and damp from",
            "the hour of the pour",
            Asks::Moment(None),
        )
        .lead("Damp from")
        .from(curing::SOURCE),
    );
    let frost = "ask before anything is drilled or loaded. Concrete that froze while green never gets its strength.";
    let bands = up_to(
        FROST_C,
        Verdict::lasting_stop(
            frost,
            "a concrete technologist or an engineer, and whoever made the plan",
        ),
    )
    .up_to(
        fresh::least_temperature_c(),
        Verdict::outside(
            "on a night this cold concrete hardens very little: keep it covered and damp for longer.",
        ),
    )
    .above(Verdict::Within);
    items.push(
        Item::new(
            "coldest",
            "cure",
            "Lowest temperature of the block's top",
            "above freezing",
            number(Unit::Celsius, [-60.0, 80.0], bands),
        )
        .lead("Coldest")
        .how("A thermometer left under the cover, read each morning of the first three days.")
        .from(curing::SOURCE),
    );
    let sooner = Verdict::outside(format!(
        "too soon. Cover it again and keep it damp until {days} are full."
    ));
    let moment = Moment {
        after: "damp_from".to_owned(),
        hours: curing_d * 24.0,
        sooner,
    };
    items.push(
        Item::new(
            "damp_until",
            "cure",
            "Covered and damp until",
            format!("{days} after the pour"),
            Asks::Moment(Some(moment)),
        )
        .lead("Damp until")
        .from(curing::SOURCE),
    );
}
