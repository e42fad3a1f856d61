//! Which questions a plan's route needs: one that follows from another answer is asked once that answer was given.

use stillground::field::Path;
use stillground::path;

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
const BRANCHES: [(Path, Path, Only); 30] = [
    (path!(site.rock_kind), path!(site.soil), ROCK),
    (
        path!(site.shear_wave_speed_method),
        path!(site.shear_wave_speed_m_s),
        Only::Given,
    ),
    (
        path!(site.shear_wave_speed_season),
        path!(site.shear_wave_speed_m_s),
        Only::Given,
    ),
    (
        path!(site.tree_height_m),
        path!(site.tree_distance_m),
        Only::Given,
    ),
    (
        path!(site.tree_water_demand),
        path!(site.tree_distance_m),
        Only::Given,
    ),
    (
        path!(site.building_footing_depth_m),
        path!(site.building_distance_m),
        Only::Given,
    ),
    (
        path!(site.bank_height_m),
        path!(site.bank_distance_m),
        Only::Given,
    ),
    (path!(block.rock_surface), path!(site.soil), ROCK),
    (path!(block.dowel_count), path!(site.soil), ROCK),
    (path!(block.dowel_diameter_mm), path!(site.soil), ROCK),
    (path!(block.dowel_length_mm), path!(site.soil), ROCK),
    (path!(block.dowel_proof_kn), path!(site.soil), ROCK),
    (
        path!(block.bag_mass_kg),
        path!(block.mix),
        Only::Is(&["bagged"]),
    ),
    (
        path!(pier.wall_distance_m),
        path!(pier.wall_height_m),
        Only::Given,
    ),
    (path!(load.pixel_um), path!(use), NOT_BY_EYE),
    (path!(load.exposure_s), path!(use), NOT_BY_EYE),
    (path!(load.guiding_interval_s), path!(use), NOT_BY_EYE),
    (path!(floor.level_m), path!(floor.kind), RAISED),
    (path!(floor.length_m), path!(floor.kind), RAISED),
    (path!(floor.width_m), path!(floor.kind), RAISED),
    (
        path!(floor.slab_thickness_mm),
        path!(floor.kind),
        Only::Is(&["slab"]),
    ),
    (path!(floor.joists), path!(floor.kind), DECK),
    (path!(floor.supports), path!(floor.kind), DECK),
    (
        path!(floor.door_offset_m),
        path!(floor.door_wall),
        Only::Given,
    ),
    (path!(site.rock_kind), path!(site.rock_depth_m), Only::Given),
    (
        path!(block.rock_surface),
        path!(site.rock_depth_m),
        Only::Given,
    ),
    (
        path!(block.dowel_count),
        path!(site.rock_depth_m),
        Only::Given,
    ),
    (
        path!(block.dowel_diameter_mm),
        path!(site.rock_depth_m),
        Only::Given,
    ),
    (
        path!(block.dowel_length_mm),
        path!(site.rock_depth_m),
        Only::Given,
    ),
    (
        path!(block.dowel_proof_kn),
        path!(site.rock_depth_m),
        Only::Given,
    ),
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
                assert!(questions::about(&path).is_some(), "{path}");
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
