//! Which questions a plan's route needs: one that follows from another answer is asked once that answer was given.

/// When a question is asked.
#[derive(Debug, Clone, Copy)]
enum Only {
    /// Once the other was answered.
    Given,
    /// Where the other has one of these answers.
    Is(&'static [&'static str]),
    /// Unless the other has this answer.
    Not(&'static str),
}

const ROCK: Only = Only::Is(&["rock", "weathered_rock"]);
const DECK: Only = Only::Is(&["deck"]);
const RAISED: Only = Only::Is(&["slab", "deck"]);
const NOT_BY_EYE: Only = Only::Not("visual");

/// A question, another on which it hangs, and how; one of its lines is enough.
const BRANCHES: [(&str, &str, Only); 30] = [
    ("site.rock_kind", "site.soil", ROCK),
    (
        "site.shear_wave_speed_method",
        "site.shear_wave_speed_m_s",
        Only::Given,
    ),
    (
        "site.shear_wave_speed_season",
        "site.shear_wave_speed_m_s",
        Only::Given,
    ),
    ("site.tree_height_m", "site.tree_distance_m", Only::Given),
    (
        "site.tree_water_demand",
        "site.tree_distance_m",
        Only::Given,
    ),
    (
        "site.building_footing_depth_m",
        "site.building_distance_m",
        Only::Given,
    ),
    ("site.bank_height_m", "site.bank_distance_m", Only::Given),
    ("block.rock_surface", "site.soil", ROCK),
    ("block.dowel_count", "site.soil", ROCK),
    ("block.dowel_diameter_mm", "site.soil", ROCK),
    ("block.dowel_length_mm", "site.soil", ROCK),
    ("block.dowel_proof_kn", "site.soil", ROCK),
    ("block.bag_mass_kg", "block.mix", Only::Is(&["bagged"])),
    ("pier.wall_distance_m", "pier.wall_height_m", Only::Given),
    ("load.pixel_um", "use", NOT_BY_EYE),
    ("load.exposure_s", "use", NOT_BY_EYE),
    ("load.guiding_interval_s", "use", NOT_BY_EYE),
    ("floor.level_m", "floor.kind", RAISED),
    ("floor.length_m", "floor.kind", RAISED),
    ("floor.width_m", "floor.kind", RAISED),
    ("floor.slab_thickness_mm", "floor.kind", Only::Is(&["slab"])),
    ("floor.joists", "floor.kind", DECK),
    ("floor.supports", "floor.kind", DECK),
    ("floor.door_offset_m", "floor.door_wall", Only::Given),
    ("site.rock_kind", "site.rock_depth_m", Only::Given),
    ("block.rock_surface", "site.rock_depth_m", Only::Given),
    ("block.dowel_count", "site.rock_depth_m", Only::Given),
    ("block.dowel_diameter_mm", "site.rock_depth_m", Only::Given),
    ("block.dowel_length_mm", "site.rock_depth_m", Only::Given),
    ("block.dowel_proof_kn", "site.rock_depth_m", Only::Given),
];

/// Whether a question is asked; `answer` gives the text of another's answer, empty where it was left open.
pub fn asked(path: &str, answer: impl Fn(&str) -> String) -> bool {
    let mut of = BRANCHES
        .iter()
        .filter(|(question, ..)| *question == path)
        .peekable();
    of.peek().is_none()
        || of.any(|(_, other, only)| {
            let said = answer(other);
            match only {
                Only::Given => !said.trim().is_empty(),
                Only::Is(these) => these.contains(&said.as_str()),
                Only::Not(this) => said != *this,
            }
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::forms::questions;

    #[test]
    fn every_branch_is_of_questions_that_there_are() {
        for (path, other, _) in BRANCHES {
            for path in [path, other] {
                assert!(questions::about(path).is_some(), "{path}");
            }
        }
    }

    #[test]
    fn posts_are_asked_for_on_a_deck_alone() {
        let with = |kind: &'static str| asked("floor.supports", |_| kind.to_owned());
        assert!(with("deck"));
        assert!(!with("ground") && !with(""));
        assert!(asked("floor.kind", |_| String::new()));
        assert!(asked("load.pixel_um", |_| String::new()));
        assert!(!asked("load.pixel_um", |_| "visual".to_owned()));
    }
}
