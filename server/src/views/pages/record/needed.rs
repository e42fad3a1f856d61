//! The drawings that a task needs at hand.

use stillground::design::Design;

/// The drawings of a task that this plan has, each with what it is looked at for.
pub fn drawings(task: &str, design: &Design) -> Vec<(&'static str, &'static str)> {
    let needed: &[(&str, &str)] = match task {
        "services" | "set_out" | "dig" | "inspect" => &[("pit", "The pit")],
        "blinding" | "backfill" => &[("pit", "The pit"), SECTION],
        "form" | "steel_and_ducts" | "pour" | "cover" | "strike" | "wire" => &[SECTION],
        "drill" => &[STUDS],
        "bond" => &[("stud-detail", "One stud in its hole"), STUDS],
        "level" | "grout" => &[("column", "The column"), ("stud-detail", "One stud and the gap under the plate")],
        "stand" | "fill" | "load" => &[("column", "The column")],
        "torque" | "torque_day" | "torque_week" | "winter" => &[STUDS_BY_NUMBER, ("torque", "Torque of a nut, and its limits")],
        "floor" => &[("floor", "The floor"), SECTION],
        "measure" => &[("modes", "How the pier swings"), ("tilt-map", "Where standing leans the pier")],
        _ => &[],
    };
    needed.iter().copied().filter(|(name, _)| !design.anchors.studs.is_empty() || !OF_STUDS.contains(name)).collect()
}

const SECTION: (&str, &str) = ("section", "Section through block and pier");
const STUDS: (&str, &str) = ("studs", "Studs and holes");
const STUDS_BY_NUMBER: (&str, &str) = ("studs", "Numbers of the studs");
/// Drawings with nothing on them where there are no studs.
const OF_STUDS: [&str; 3] = ["studs", "stud-detail", "torque"];
