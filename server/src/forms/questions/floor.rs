//! Observing floor.

use super::super::question::{Kind, Question, Topic, choice, number, points, words};
use stillground::{path, row};

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "What do people stand on?",
        intro: "Whatever they stand on must not touch the pier or its block. Their weight still reaches the block through the ground.",
        common: &[
            choice(row!(floor.kind)),
            number(row!(floor.gap_mm)),
            number(row!(floor.level_m)),
        ],
        rare: &[
            number(row!(floor.length_m)),
            number(row!(floor.width_m)),
            number(row!(floor.slab_thickness_mm)),
        ],
    },
    Topic {
        heading: "Where do people stand?",
        intro: "The observer, the guest, the desk, a heavy cupboard: east and north of the middle of the pier; west and south are negative.",
        common: &[Question {
            path: path!(floor.stands),
            words: words(row!(floor.stands).row.words),
            kind: Kind::Stands,
        }],
        rare: &[],
    },
    Topic {
        heading: "How do they walk?",
        intro: "Somebody will walk past in the middle of an exposure. Give the corners of their route, in order.",
        common: &[points(row!(floor.walk), "Corner")],
        rare: &[
            number(row!(floor.walk_speed_m_s)),
            number(row!(floor.pace_hz)),
            number(row!(floor.walker_mass_kg)),
            choice(row!(floor.soles)),
        ],
    },
    Topic {
        heading: "Where is the door?",
        intro: "A door that slams shakes the building, and the building shakes the ground. Close to the pier, the star jumps.",
        common: &[],
        rare: &[
            choice(row!(floor.door_wall)),
            number(row!(floor.door_offset_m)),
        ],
    },
    Topic {
        heading: "Where are the posts?",
        intro: "A deck carries a person's weight along its joists to its posts, and there it enters the ground. Posts far from the block keep it still.",
        common: &[],
        rare: &[
            choice(row!(floor.joists)),
            points(row!(floor.supports), "Post"),
        ],
    },
];
