//! The few figures that a task needs at hand.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{
    CubicMetre, Day, Hour, Kilogram, Metre, Millilitre, Millimetre, NewtonMetre, Unit, Units,
};
use stillground::units::hour;

use crate::planned::Planned;

/// Thickness of the blinding that the schedule asks for.
const BLINDING_MM: f64 = 50.0;

/// The figures of a task.
pub fn of(task: &str, planned: &Planned, units: Units) -> Vec<(&'static str, String)> {
    said(task, &planned.brief, &planned.design, units)
}

/// The same in the plan's own units.
#[must_use]
pub fn of_design(task: &str, brief: &Brief, design: &Design) -> Vec<(&'static str, String)> {
    said(task, brief, design, brief.units)
}

fn said(task: &str, brief: &Brief, design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let m = |value| units.say(value, Metre);
    let mm = |value| units.say(value, Millimetre);
    let m3 = |value| units.say(value, CubicMetre);
    let (pit, block, studs, pier) = (
        &design.excavation,
        &design.block,
        &design.anchors,
        &design.pier,
    );
    match task {
        "services" => vec![
            (
                "Pit at ground level",
                format!("{} × {}", m(pit.length), m(pit.width)),
            ),
            ("Depth of the pit", m(pit.depth)),
        ],
        "set_out" | "dig" | "inspect" => vec![
            (
                "Pit at ground level",
                format!("{} × {}", m(pit.length), m(pit.width)),
            ),
            (
                "Pit at the bottom",
                format!("{} × {}", m(pit.bottom_length), m(pit.bottom_width)),
            ),
            ("Depth of the pit", m(pit.depth)),
            ("Spoil kept back from the edge", m(pit.spoil_distance)),
        ],
        "blinding" => vec![
            (
                "Bottom of the pit",
                format!("{} × {}", m(pit.bottom_length), m(pit.bottom_width)),
            ),
            ("Blinding, thick", units.say(BLINDING_MM, Unit::Millimetre)),
        ],
        "backfill" => vec![
            ("Ground to put back", m3(pit.backfill_volume)),
            ("Top of the block above ground", m(block.upstand)),
        ],
        "form" | "steel_and_ducts" => vec![
            ("Block", format!("{} × {}", m(block.length), m(block.width))),
            ("Base below ground", m(block.depth)),
            ("Top above ground", m(block.upstand)),
            ("Ducts", block.ducts.count.to_string()),
        ],
        "pour" | "cover" => vec![
            ("Concrete in place", m3(block.volume)),
            ("Concrete to have there", m3(block.order_volume)),
        ],
        "cure" => vec![("Damp and covered for", units.say(block.curing, Day))],
        "harden" => vec![("No drilling before", units.say(block.drill_after, Day))],
        "drill" => vec![
            ("Holes", studs.studs.len().to_string()),
            (
                "Circle through the holes’ centres",
                mm(brief.anchors.circle_diameter.value),
            ),
            ("Diameter of each hole", mm(studs.hole_diameter)),
            ("Depth of each hole", mm(studs.hole_depth)),
        ],
        "bond" | "resin_cures" => resin(design, units),
        "stand" | "level" | "grout" => {
            vec![
                ("Column", units.say(pier.mass, Kilogram)),
                ("Gap under the plate", mm(pier.gap)),
            ]
        }
        "torque" => torque(design, units),
        "torque_day" | "torque_week" | "winter" => again(design, units),
        "floor" => floor(brief, design, units),
        "wire" => vec![
            ("Ducts", block.ducts.count.to_string()),
            (
                "Inside diameter of each duct",
                mm(block.ducts.inside_diameter),
            ),
        ],
        "load" => vec![
            (
                "Mount and telescope",
                units.say(brief.load.mass.value, Kilogram),
            ),
            (
                "Top of the column above the block",
                m(brief.pier.height.value),
            ),
        ],
        _ => Vec::new(),
    }
}

fn floor(brief: &Brief, design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let floor = &design.floor;
    let m = |value| units.say(value, Metre);
    let mut figures = vec![
        ("Floor", format!("{} × {}", m(floor.length), m(floor.width))),
        ("Level above ground", m(floor.level)),
    ];
    if floor.opening.is_some() {
        figures.push((
            "Kept clear all round",
            units.say(brief.floor.gap.value, Millimetre),
        ));
    }
    if !floor.supports.is_empty() {
        figures.push(("Posts", floor.supports.len().to_string()));
    }
    figures
}

fn again(design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let torque = &design.anchors.torque;
    let say = |value| units.say(value, NewtonMetre);
    vec![
        ("What to do", torque.says.clone()),
        ("Torque", say(torque.set)),
        ("Torque never above", say(torque.high)),
    ]
}

fn resin(design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let setting = &design.anchors.setting;
    let minutes = |time| units.say(hour::get(time) * 60.0, Unit::Minute);
    let mut figures = vec![
        (
            "Resin in each hole",
            units.say(setting.resin_per_hole, Millilitre),
        ),
        ("Rounds of cleaning", setting.cleaning_rounds.to_string()),
        ("Embedment", units.say(design.anchors.embedment, Millimetre)),
    ];
    figures.extend(setting.gel_time.map(|time| ("Time to work", minutes(time))));
    figures.extend(
        setting
            .cure_time
            .map(|time| ("Left alone for", units.say(time, Hour))),
    );
    figures
}

fn torque(design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let torque = &design.anchors.torque;
    let say = |value| units.say(value, NewtonMetre);
    let passes: Vec<String> = torque.passes.iter().map(|pass| say(pass.torque)).collect();
    let order: Vec<String> = torque.order.iter().map(ToString::to_string).collect();
    vec![
        ("What to do", torque.says.clone()),
        ("Torque, pass by pass", passes.join(", ")),
        ("Order of the nuts", order.join(", ")),
        ("Torque never above", say(torque.high)),
    ]
}
