//! Steel, coating and setting in words: what to do at each step, and what can go wrong.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Celsius, Millilitre, Millimetre, NewtonMetre, Unit};
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::setting::{self, Setting};
use crate::stages::anchors::torque::Torque;
use crate::units::{Length, Time, hour, millimetre};

/// One step of setting and tightening.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Stable name.
    pub id: &'static str,
    /// What to do.
    pub says: String,
}

/// The steps from hole to last check.
pub fn steps(
    brief: &Brief,
    setting: &Setting,
    torque: &Torque,
    seat: Seat,
    nut_gap: Option<Length>,
) -> Vec<Step> {
    let units = brief.units;
    let mm = |length| units.say(length, Millimetre);
    let time = |time: Option<Time>, unit: Unit, per_hour: f64| {
        time.map_or(
            "the time that the product's sheet gives".to_owned(),
            |time| units.say(hour::get(time) * per_hour, unit),
        )
    };
    let anchors = &brief.anchors;
    let temperature = units.say(anchors.concrete_temperature_c.value, Celsius);
    let step = |id, says: String| Step { id, says };
    let first = torque.passes.first().map_or(torque.set, |pass| pass.torque);
    let mut steps = vec![
        step("drill", format!("Drill each hole {} wide and {} deep, upright, through a template; a diamond core leaves walls too smooth unless the product allows it.", mm(anchors.hole_diameter.value), mm(setting::hole_depth(brief)))),
        step("clean", format!("Clean from the bottom up: blow {n} times, brush {n} times with a round brush of {brush}, blow {n} times, until no dust comes. No water may stand in the hole. Dust left behind can halve the bond.", n = setting.cleaning_rounds, brush = mm(setting.brush))),
        step("discard", "Throw away the first strokes of each nozzle until the colour is even; take a new nozzle after a pause longer than the working time.".to_owned()),
        step("fill", format!("Fill from the bottom to about two thirds, {} in each hole, drawing the nozzle back slowly so that no air is shut in.", units.say( setting.resin_per_hole, Millilitre))),
        step("insert", format!("Turn the stud in slowly to its mark at {}; resin must show at the mouth. At {temperature} there are {} before it sets.", mm(anchors.embedment.value), time(setting.gel_time, Unit::Minute, 60.0))),
        step("leave", format!("Leave the stud alone. A nut may be run down by hand after {}, never with a spanner.", time(setting.snug_after, Unit::Hour, 1.0))),
        step("snug", format!("Full torque not before {} at {temperature}: first pass at {}.", time(setting.cure_time, Unit::Hour, 1.0), units.say( first, NewtonMetre))),
        step("seat", seat.words().to_owned()),
        step("torque", torque.says.clone()),
        step("again", "Check the torque after a day, after a week, then every year: turn to the same torque, never above it.".to_owned()),
    ];
    if let (Seat::Nuts, Some(gap)) = (seat, nut_gap) {
        let says = format!(
            "Bring the lower nuts into one plane before the upper ones are turned: a nut that is {} off bends the column's wall to half its \
             yield strength. Feeler gauges under the plate show it; three studs always seat, four or more need care.",
            units.to_feel(millimetre::get(gap))
        );
        steps.insert(steps.len() - 4, step("level", says));
    }
    steps
}
