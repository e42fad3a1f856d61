//! Excavation.

use super::super::question::{Topic, choice, number, text};
use stillground::row;

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "How big can the pit be?",
        intro: "Think of roots, pipes, the fence, the wall and your own back. A pit that cannot go deep can often go wide instead; the plan then says how wide.",
        common: &[
            number(row!(excavation.max_depth_m)),
            number(row!(excavation.max_length_m)),
            number(row!(excavation.max_width_m)),
        ],
        rare: &[],
    },
    Topic {
        heading: "Who digs, and how?",
        intro: "Undisturbed ground grips the block best. Sloped sides are safer to work in, but grip it less.",
        common: &[
            choice(row!(excavation.method)),
            choice(row!(excavation.sides)),
            number(row!(work.people)),
            text(row!(work.start_date)),
        ],
        rare: &[
            number(row!(work.utc_offset_h)),
            number(row!(excavation.working_space_m)),
            number(row!(excavation.barrow_m3)),
            number(row!(excavation.skip_m3)),
        ],
    },
];
