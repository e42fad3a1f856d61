//! Excavation.

use crate::field::{Problem, choice, section};
use crate::path;
use crate::site_plan::{HOUSE, SitePlan};
use crate::source::Source;

choice! {
    /// Who digs.
    pub enum Method {
        /// Spade and barrow.
        Hand = "hand", "Spade and barrow";
        /// A digger.
        Machine = "machine", "A digger";
    }
}

choice! {
    /// Sides of the pit.
    pub enum Sides {
        /// Cut straight, concrete poured against the ground.
        Vertical = "vertical", "Straight down, the concrete poured against the ground";
        /// Battered back to a stable slope, concrete poured in a form and backfilled.
        Sloped = "sloped", "Sloped back, the concrete poured in shuttering and filled round";
    }
}

section! {
    /// Excavation.
    pub struct Excavation in excavation {
        numbers {
            /// Deepest that can be dug.
            max_depth_m: Metre, 0.1..=6.0, "less than 0.1 is no pit, and deeper than 6 needs an engineer's shoring",
                asks "How deep can you dig?",
                hint "Until you hit rock or water, or want to stop.",
                because "what one or two people dig in a day, and about as deep as local rules let a pit stand open without support",
                changes "how deep the block may go: deeper is stiffer", from Source::common_practice("depth of an unsupported pit");
            /// Longest pit there is room for, along x (east).
            max_length_m: Metre, 0.2..=20.0, "a block shorter than 0.2 takes no studs, one longer than 20 is a floor",
                asks "How long can the pit be, east to west?",
                hint "The longest pit there is room for.",
                unknown "As much room as most gardens have is assumed.";
            /// Widest pit there is room for, along y (north).
            max_width_m: Metre, 0.2..=20.0, "a block narrower than 0.2 takes no studs, one wider than 20 is a floor",
                asks "How wide can the pit be, north to south?",
                hint "The widest pit there is room for.",
                unknown "As much room as most gardens have is assumed.";
            /// Room to work around the block where the pit is battered or the block shuttered.
            working_space_m: Metre, 0.0..=2.0, "more than two metres is no working space but another pit",
                asks "Room to work round the block",
                hint "Where the pit is sloped or the block has shuttering.",
                takes 0.3, because "room for shuttering and a person's hands",
                changes "size of a sloped pit and its spoil; nothing where the concrete is poured against the ground", from Source::judgement("room round shuttering");
            /// Volume of a barrow load.
            barrow_m3: BarrowCubicMetre, 0.02..=0.3, "a bucket is 0.02 and nobody pushes 0.3",
                asks "What your barrow holds",
                because "a builder's barrow heaped to what one person pushes",
                changes "number of loads", from Source::common_practice("builder's barrow");
            /// Volume of a skip.
            skip_m3: CubicMetre, 1.0..=40.0, "skips are hired from about one to forty cubic metres",
                asks "What a skip holds",
                because "a common size of builder's skip",
                changes "number of skips", from Source::common_practice("builder's skip");
        }
        counts {}
        others {
            /// Who digs.
            method: Method,
                asks "What do you dig with?",
                takes Method::Hand, because "a digger reaches few gardens",
                changes "time to dig, and who may be near the pit", from HOUSE;
            /// Sides of the pit.
            sides: Sides,
                asks "How are the sides of the pit cut?",
                hint "Never stand in a pit whose sides you have not made safe, whatever this page says.",
                takes Sides::Vertical, because "concrete hard against undisturbed ground is stiffest, and nobody needs to enter the pit",
                changes "contact of the ground with the block's sides, and the size of the pit; loose sand may not stand so", from Source::common_practice("poured against undisturbed ground");
        }
    }
}

/// Least side of a block.
const LEAST_SIDE_M: f64 = 0.2;

/// Answers about the pit that contradict each other or the block.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    let (block, pit) = (&plan.block, &plan.excavation);
    let mut problems = Vec::new();
    for (block_field, size, pit_field, most, said) in [
        (
            path!(block.length_m),
            block.length_m,
            path!(excavation.max_length_m),
            pit.max_length_m,
            "The block is longer than the longest pit there is room for.",
        ),
        (
            path!(block.width_m),
            block.width_m,
            path!(excavation.max_width_m),
            pit.max_width_m,
            "The block is wider than the widest pit there is room for.",
        ),
        (
            path!(block.depth_m),
            block.depth_m,
            path!(excavation.max_depth_m),
            pit.max_depth_m,
            "The block goes deeper than can be dug.",
        ),
    ] {
        if let (Some(size), Some(most)) = (size, most)
            && size > most
        {
            problems.push(Problem::between(
                &[block_field, pit_field],
                format!("{said} Make the block smaller or the room larger."),
            ));
        }
    }
    for (field, most) in [
        (path!(excavation.max_length_m), pit.max_length_m),
        (path!(excavation.max_width_m), pit.max_width_m),
    ] {
        if let (Some(Sides::Sloped), Some(space), Some(most)) =
            (pit.sides, pit.working_space_m, most)
            && most < 2.0 * space + LEAST_SIDE_M
        {
            problems.push(Problem::between(
                &[field, path!(excavation.working_space_m)],
                "The working space round the shuttering leaves no room for a block.",
            ));
        }
    }
    problems
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_block_larger_than_its_pit_is_named_at_both_fields() {
        let mut plan = SitePlan::unknown();
        plan.block.length_m = Some(1.5);
        plan.block.depth_m = Some(1.0);
        plan.excavation.max_length_m = Some(1.2);
        plan.excavation.max_depth_m = Some(0.8);
        let fields: Vec<_> = contradictions(&plan)
            .into_iter()
            .map(|problem| problem.fields)
            .collect();
        assert_eq!(
            fields,
            [
                ["block.length_m", "excavation.max_length_m"],
                ["block.depth_m", "excavation.max_depth_m"]
            ]
        );
    }
}
