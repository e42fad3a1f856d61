//! The few figures that a task needs at hand, chosen from those of the engine's stages.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Metre, Millimetre, NewtonMetre, Unit, Units};
use stillground::stages::figures::{Figure, Shown};
use stillground::stages::{
    anchors::figures as studs, block::figures as block, excavation::figures as pit,
    pier::figures as column,
};

use crate::planned::Planned;

/// Thickness of the blinding that the schedule asks for.
const BLINDING_MM: f64 = 50.0;

/// The figures of a task.
pub fn of(task: &str, planned: &Planned, units: Units) -> Vec<(&'static str, String)> {
    let mut lines = said(task, &planned.brief, &planned.design, units);
    // The page says it of the task as a whole, and of each pass at its boxes.
    if task == "torque" {
        lines.retain(|(label, _)| ![TO_DO, PASSES].contains(label));
    }
    lines
}

const TO_DO: &str = "What to do";
const PASSES: &str = "Torque, pass by pass";

/// The same in the plan's own units.
#[must_use]
pub fn of_design(task: &str, brief: &Brief, design: &Design) -> Vec<(&'static str, String)> {
    said(task, brief, design, brief.units)
}

fn said(task: &str, brief: &Brief, design: &Design, units: Units) -> Vec<(&'static str, String)> {
    let mut lines = words_before(task, design);
    let known = chosen(task)
        .iter()
        .map(|figure| (figure.label, (figure.of)(brief, design)))
        .filter(|(_, shown)| !matches!(shown, Shown::Missing(_)))
        .map(|(label, shown)| (label, shown.say(units)));
    lines.extend(known);
    match task {
        "blinding" => lines.push(("Blinding, thick", units.say(BLINDING_MM, Unit::Millimetre))),
        "drill" => {
            if let Some((east, south)) = crate::drawing::studs::layout(brief, design).to_the_edges()
            {
                let mm = |metres: f64| units.to_measure(1000.0 * metres);
                let says = format!("{}, {}", mm(east), mm(south));
                lines.push(("Holes to the block’s east and south edges", says));
            }
        }
        "torque" => {
            let torque = &design.anchors.torque;
            let say = |value| units.say(value, NewtonMetre);
            let passes: Vec<String> = torque.passes.iter().map(|pass| say(pass.torque)).collect();
            let order: Vec<String> = torque.order.iter().map(ToString::to_string).collect();
            lines.push((PASSES, passes.join(", ")));
            lines.push(("Order of the nuts", order.join(", ")));
        }
        "floor" => lines.extend(floor(brief, design, units)),
        _ => {}
    }
    lines
}

/// What is done with the nuts, in a sentence.
fn words_before(task: &str, design: &Design) -> Vec<(&'static str, String)> {
    match task {
        "torque" | "torque_day" | "torque_week" | "winter" => {
            vec![(TO_DO, design.anchors.torque.says.clone())]
        }
        _ => Vec::new(),
    }
}

fn chosen(task: &str) -> &'static [Figure] {
    match task {
        "services" => &[pit::AT_GROUND_LEVEL, pit::DEPTH],
        "set_out" | "dig" | "inspect" => &[
            pit::AT_GROUND_LEVEL,
            pit::AT_THE_BOTTOM,
            pit::DEPTH,
            pit::SPOIL_DISTANCE,
        ],
        "blinding" => &[pit::AT_THE_BOTTOM],
        "backfill" => &[pit::BACKFILL, block::UPSTAND],
        "form" | "steel_and_ducts" => &[block::SIDES, block::DEPTH, block::UPSTAND, block::DUCTS],
        "pour" | "cover" => &[block::VOLUME, block::ORDER_VOLUME],
        "cure" => &[block::CURING],
        "harden" => &[block::DRILL_AFTER],
        "drill" => &[
            studs::HOLES,
            studs::CIRCLE,
            studs::HOLE_DIAMETER,
            studs::HOLE_DEPTH,
        ],
        "bond" | "resin_cures" => &[
            studs::RESIN_PER_HOLE,
            studs::CLEANING_ROUNDS,
            studs::EMBEDMENT,
            studs::WORKING_TIME,
            studs::CURING_TIME,
        ],
        "stand" | "level" | "grout" => &[column::MASS, column::GAP],
        "torque" => &[studs::TORQUE_LIMIT],
        "torque_day" | "torque_week" | "winter" => &[studs::TORQUE, studs::TORQUE_LIMIT],
        "wire" => &[block::DUCTS, block::DUCT_DIAMETER],
        "load" => &[column::CARRIED, column::HEIGHT],
        _ => &[],
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
