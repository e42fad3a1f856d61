//! The few figures and the drawings that a task needs at hand.

use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::units::{cubic_metre, day, hour, kilogram, metre, millilitre, millimetre, newton_metre};

/// The figures of a task.
pub fn of(task: &str, design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let m = |value| units.say(metre::get(value), Unit::Metre);
    let mm = |value| units.say(millimetre::get(value), Unit::Millimetre);
    let m3 = |value| units.say(cubic_metre::get(value), Unit::CubicMetre);
    let (pit, block, studs, pier) = (&design.excavation, &design.block, &design.anchors, &design.pier);
    match task {
        "set_out" | "dig" | "inspect" => vec![
            ("Pit at ground level", format!("{} × {}", m(pit.length), m(pit.width))),
            ("Pit at the bottom", format!("{} × {}", m(pit.bottom_length), m(pit.bottom_width))),
            ("Depth of the pit", m(pit.depth)),
            ("Spoil kept back from the edge", m(pit.spoil_distance)),
        ],
        "form" | "steel_and_ducts" => vec![
            ("Block", format!("{} × {}", m(block.length), m(block.width))),
            ("Base below ground", m(block.depth)),
            ("Top above ground", m(block.upstand)),
            ("Ducts", block.ducts.count.to_string()),
        ],
        "pour" | "cover" => vec![("Concrete in place", m3(block.volume)), ("Concrete to have there", m3(block.order_volume))],
        "cure" => vec![("Damp and covered for", units.say(day::get(block.curing), Unit::Day))],
        "harden" => vec![("No drilling before", units.say(day::get(block.drill_after), Unit::Day))],
        "drill" => vec![
            ("Holes", studs.studs.len().to_string()),
            ("Diameter of each hole", mm(studs.hole_diameter)),
            ("Depth of each hole", mm(studs.hole_depth)),
        ],
        "bond" | "resin_cures" => resin(design, units),
        "stand" | "level" | "grout" => {
            vec![("Column", units.say(kilogram::get(pier.mass), Unit::Kilogram)), ("Gap under the plate", mm(pier.gap))]
        }
        "torque" | "torque_day" | "torque_week" => torque(design, units),
        _ => Vec::new(),
    }
}

fn resin(design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let setting = &design.anchors.setting;
    let minutes = |time| units.say(hour::get(time) * 60.0, Unit::Minute);
    let mut figures = vec![
        ("Resin in each hole", units.say(millilitre::get(setting.resin_per_hole), Unit::Millilitre)),
        ("Rounds of cleaning", setting.cleaning_rounds.to_string()),
        ("Embedment", units.say(millimetre::get(design.anchors.embedment), Unit::Millimetre)),
    ];
    figures.extend(setting.gel_time.map(|time| ("Time to work", minutes(time))));
    figures.extend(setting.cure_time.map(|time| ("Left alone for", units.say(hour::get(time), Unit::Hour))));
    figures
}

fn torque(design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let torque = &design.anchors.torque;
    let say = |value| units.say(newton_metre::get(value), Unit::NewtonMetre);
    let passes: Vec<String> = torque.passes.iter().map(|pass| say(pass.torque)).collect();
    let order: Vec<String> = torque.order.iter().map(ToString::to_string).collect();
    vec![("Torque, pass by pass", passes.join(", ")), ("Order of the nuts", order.join(", ")), ("Torque never above", say(torque.high))]
}

/// The drawings that a task needs and that this plan has.
pub fn drawings(task: &str, design: &Design) -> Vec<(&'static str, &'static str)> {
    let needed: &[(&str, &str)] = match task {
        "set_out" | "dig" | "inspect" => &[("pit", "The pit")],
        "blinding" | "form" | "steel_and_ducts" | "pour" => &[("section", "Section through block and pier")],
        "drill" if !design.anchors.studs.is_empty() => &[("studs", "Studs and holes")],
        "bond" => &[("stud-detail", "One stud in its hole"), ("studs", "Studs and holes")],
        "stand" | "level" | "grout" | "fill" => &[("column", "The column")],
        "torque" | "torque_day" | "torque_week" => &[("torque", "Order of the nuts")],
        "floor" => &[("floor", "The floor")],
        "measure" => &[("tilt-map", "Where standing leans the pier")],
        _ => &[],
    };
    needed.to_vec()
}
