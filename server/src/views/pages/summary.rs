//! The plan in a customer's words.

use stillground::figure::{Count, CubicMetre, Day, Kilogram, Metre, Millimetre, Units};
use stillground::site_plan::Use;
use stillground::site_plan::pier::Fill;

use crate::planned::Planned;
use crate::views::verdict;

/// Sentences that say what will stand there and how still it will be.
#[must_use]
pub fn of(planned: &Planned) -> Vec<String> {
    let units = planned.brief.units;
    let mut said = Vec::new();
    if let Some(whom) = &planned.design.ground.ask_an_engineer {
        said.push(whom.clone());
    }
    said.push(block(planned, units));
    said.push(pier(planned, units));
    said.push(stillness(planned, units));
    said.push(waits(planned, units));
    said
}

fn block(planned: &Planned, units: Units) -> String {
    let block = &planned.design.block;
    let say = |length| units.say(length, Metre);
    format!(
        "A block of concrete, {} by {} and reaching {} into the ground, carries the pier. It takes {} of concrete and weighs {}.",
        say(block.length),
        say(block.width),
        say(block.depth),
        units.say(block.volume, CubicMetre),
        units.say(block.mass, Kilogram),
    )
}

fn pier(planned: &Planned, units: Units) -> String {
    let pier = &planned.design.pier;
    let mm = |length| units.say(length, Millimetre);
    let fill = match planned.brief.pier.fill.value {
        Fill::None => "",
        Fill::Sand => ", filled with dry sand",
        Fill::Concrete => ", filled with concrete",
    };
    let anchors = &planned.brief.anchors;
    format!(
        "On it stands a steel tube {} across with a wall of {}{fill} and {} tall, held by {} {} studs set in resin.",
        mm(pier.outside_diameter),
        mm(pier.wall),
        units.say(pier.height, Metre),
        units.say(anchors.count.value, Count),
        anchors.size.value.key(),
    )
}

fn stillness(planned: &Planned, units: Units) -> String {
    let motion = &planned.design.motion;
    let use_words = match planned.brief.purpose.value {
        Use::Visual => "looking with the eye",
        Use::Planetary => "short frames of the planets",
        Use::DeepSky => "long exposures",
    };
    let asked = verdict::asked(motion, units);
    match verdict::worst_stand(motion, units) {
        Some((name, costs)) => format!(
            "For {use_words} the star should {asked}. In typical ground, somebody who steps onto “{name}” leans the telescope by {costs}."
        ),
        None => format!(
            "For {use_words} the star should {asked}. How far a standing person leans it is not known for this plan."
        ),
    }
}

fn waits(planned: &Planned, units: Units) -> String {
    let block = &planned.design.block;
    format!(
        "After pouring, wait {} before drilling and {} before the full load.",
        units.say(block.drill_after, Day),
        units.say(block.load_after, Day)
    )
}
