//! The drawings that a task needs at hand.

use stillground::design::Design;

/// The drawings of a task that this plan has, each with what it is looked at for.
pub fn drawings(task: &str, design: &Design) -> Vec<(&'static str, &'static str)> {
    let needed: &[(&str, &str)] = match task {
        "services" | "set_out" | "dig" | "line_faces" | "inspect" => &[("pit", "The pit")],
        "blinding" | "backfill" => &[("pit", "The pit"), SECTION],
        "form" | "steel_and_ducts" | "pour" | "cover" | "strike" | "wire" | "frost_guard"
        | "dowels" => &[SECTION],
        "drill" => &[STUDS],
        "bond" => &[("stud-detail", "One stud in its hole"), STUDS],
        "level" | "grout" => &[
            ("column", "The column"),
            ("stud-detail", "One stud and the gap under the plate"),
        ],
        "stand" | "fill" | "load" => &[("column", "The column")],
        "torque" | "torque_day" | "torque_week" | "winter" => &[
            STUDS_BY_NUMBER,
            ("torque", "Torque of a nut, and its limits"),
        ],
        "floor" => &[("floor", "The floor"), SECTION],
        "measure" => &[
            ("modes", "How the pier swings"),
            ("tilt-map", "Where standing tilts the pier"),
        ],
        _ => &[],
    };
    needed
        .iter()
        .copied()
        .filter(|(name, _)| !design.anchors.studs.is_empty() || !OF_STUDS.contains(name))
        .collect()
}

const SECTION: (&str, &str) = ("section", "Section through block and pier");
const STUDS: (&str, &str) = ("studs", "Studs and holes");
const STUDS_BY_NUMBER: (&str, &str) = ("studs", "Numbers of the studs");
/// Drawings with nothing on them where there are no studs.
const OF_STUDS: [&str; 3] = ["studs", "stud-detail", "torque"];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::planned::Planned;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    /// Tasks at which nothing is built: they order, or look at the sky.
    const WITHOUT: [&str; 2] = ["order", "align"];

    #[test]
    fn every_task_of_every_example_has_the_drawings_that_it_needs() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/examples");
        let mut plans = 0;
        for file in std::fs::read_dir(folder).unwrap() {
            let path = file.unwrap().path();
            let plan: SitePlan =
                serde_json::from_str(&std::fs::read_to_string(&path).unwrap()).unwrap();
            let planned = Planned::of(&plan, &NoShelf)
                .map_err(|problems| problems.to_string())
                .unwrap();
            plans += 1;
            for task in &planned.design.schedule {
                let needed = drawings(task.id, &planned.design);
                assert_eq!(
                    needed.is_empty(),
                    task.wait || WITHOUT.contains(&task.id),
                    "{}: {}",
                    path.display(),
                    task.id
                );
                for (name, _) in needed {
                    assert!(
                        planned.drawing(name).is_some(),
                        "{}: {} has no {name}",
                        path.display(),
                        task.id
                    );
                }
            }
        }
        assert_eq!(plans, 6);
    }
}
