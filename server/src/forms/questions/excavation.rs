//! Excavation.

use super::super::question::{Kind, Question, Topic, choice, number};
use stillground::site_plan::excavation::{Method, Sides};

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "How big may the hole be?",
        intro: "Think of roots, pipes, the fence, the wall and your own back. A hole that cannot go deep can often go wide instead, and the plan then says how wide.",
        common: &[
            number(
                "excavation.max_depth_m",
                "How deep can you dig?",
                "Until you hit rock or water, or want to stop.",
                "About what one person digs in a day without shoring is assumed.",
            ),
            number(
                "excavation.max_length_m",
                "How long may it be, east to west?",
                "The longest hole there is room for.",
                "As much room as most gardens have is assumed.",
            ),
            number(
                "excavation.max_width_m",
                "How wide may it be, north to south?",
                "The widest hole there is room for.",
                "As much room as most gardens have is assumed.",
            ),
        ],
        rare: &[],
    },
    Topic {
        heading: "Who digs, and how?",
        intro: "Undisturbed ground grips the block best. Sloped sides are safer to work in, but grip it less.",
        common: &[
            choice!(
                "excavation.method",
                Method,
                excavation.method,
                "What do you dig with?",
                "",
                "A spade and a barrow are assumed.",
                { Hand: "Spade and barrow", Machine: "A digger", }
            ),
            choice!(
                "excavation.sides",
                Sides,
                excavation.sides,
                "How are the sides of the pit cut?",
                "Never stand in a pit whose sides you have not made safe, whatever this page says.",
                "Straight sides are assumed.",
                {
                    Vertical: "Straight down, the concrete poured against the ground",
                    Sloped: "Sloped back, the concrete poured in a form and filled round",
                }
            ),
            number(
                "work.people",
                "How many of you are there?",
                "It sets how long the digging and pouring take.",
                "Two people are assumed.",
            ),
            Question {
                path: "work.start_date",
                label: "On which day do you start digging?",
                hint: "Write year-month-day, for instance 2027-04-19. The schedule then shows dates.",
                not_known: "The schedule counts days from the first.",
                kind: Kind::Text {
                    input: "text",
                    get: |plan| plan.work.start_date.as_deref(),
                    set: |plan, text| plan.work.start_date = text,
                },
            },
        ],
        rare: &[
            number(
                "work.utc_offset_h",
                "Hours that your clocks are ahead of universal time (UTC)",
                "On the start day, summer time included; behind is negative, for instance -5. For north by the sun and the pole star.",
                "Times for finding north are given in universal time alone.",
            ),
            number(
                "excavation.working_space_m",
                "Room to work round the block",
                "Where the pit is sloped or the block shuttered.",
                "Room for a form and a person's hands is assumed.",
            ),
            number(
                "excavation.barrow_m3",
                "What your barrow holds",
                "",
                "A builder's barrow is assumed.",
            ),
            number(
                "excavation.skip_m3",
                "What a skip holds",
                "",
                "A common skip is assumed.",
            ),
        ],
    },
];
