//! Observing floor.

use super::super::question::{Kind, Question, Topic, choice, number};
use stillground::site_plan::floor::{FloorKind, Joists, Soles, Wall};

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "What do people stand on?",
        intro: "Whatever they stand on must not touch the pier or lie on its block. Their weight still reaches the ground, and the ground carries it to the block.",
        common: &[
            choice!(
                "floor.kind",
                FloorKind,
                floor.kind,
                "What is the floor?",
                "",
                "The ground itself is assumed.",
                { Ground: "The ground itself", Slab: "A slab on the ground, apart from the block", Deck: "A deck on joists and posts", }
            ),
            number(
                "floor.gap_mm",
                "Gap between the floor and the pier",
                "All round. A mouse gets through 6 mm, a dropped screw through less.",
                "A gap that a finger fits in is assumed.",
            ),
            number(
                "floor.level_m",
                "Level of the floor above the ground",
                "Below ground level is negative.",
                "The floor is assumed to lie at ground level.",
            ),
        ],
        rare: &[
            number(
                "floor.length_m",
                "Length of the floor, east to west",
                "",
                "A floor of a usual size.",
            ),
            number(
                "floor.width_m",
                "Width of the floor, north to south",
                "",
                "A floor of a usual size.",
            ),
            number(
                "floor.slab_thickness_mm",
                "Thickness of the slab",
                "",
                "A usual slab.",
            ),
        ],
    },
    Topic {
        heading: "Where do people stand?",
        intro: "Measure from the middle of the pier: so far east (west is negative) and so far north (south is negative).",
        common: &[Question {
            path: "floor.stands",
            label: "Places where somebody stands or sits",
            hint: "The observer, the guest, the desk. A heavy cupboard stands too.",
            not_known: "One person just south of the pier is assumed.",
            kind: Kind::Stands,
        }],
        rare: &[],
    },
    Topic {
        heading: "How do they walk?",
        intro: "Somebody will walk past in the middle of an exposure. Give the corners of the way they take, in order.",
        common: &[Question {
            path: "floor.walk",
            label: "Corners of the way people walk",
            hint: "From the door to the desk, for instance.",
            not_known: "A walk past the pier is assumed.",
            kind: Kind::Points {
                one: "Corner",
                get: |plan| plan.floor.walk.as_ref(),
                set: |plan, points| plan.floor.walk = points,
            },
        }],
        rare: &[
            number(
                "floor.walk_speed_m_s",
                "How fast do they walk?",
                "",
                "An easy walk.",
            ),
            number("floor.pace_hz", "Steps in a second", "", "An easy walk."),
            number(
                "floor.walker_mass_kg",
                "What does the walker weigh?",
                "With coat and bag.",
                "A grown person.",
            ),
            choice!(
                "floor.soles",
                Soles,
                floor.soles,
                "What soles?",
                "",
                "Soft soles are assumed.",
                { Soft: "Soft", Hard: "Hard heels", }
            ),
        ],
    },
    Topic {
        heading: "Where is the door?",
        intro: "A door that falls shut shakes the house, and the house shakes the ground. Close to the pier, a star jumps.",
        common: &[],
        rare: &[
            choice!(
                "floor.door_wall",
                Wall,
                floor.door_wall,
                "In which wall is the door?",
                "",
                "All four walls are tried and the worst one counts.",
                { North: "North", East: "East", South: "South", West: "West", }
            ),
            number(
                "floor.door_offset_m",
                "How far is it from the middle of that wall?",
                "In a north or south wall, east is positive; in an east or west wall, north is.",
                "The middle of the wall.",
            ),
        ],
    },
    Topic {
        heading: "Where are the posts?",
        intro: "A deck carries a person's weight along its joists to its posts, and there it enters the ground. Posts far from the block keep it still.",
        common: &[],
        rare: &[
            choice!(
                "floor.joists",
                Joists,
                floor.joists,
                "Which way do the joists run?",
                "Joists are the beams right under the boards; they lie across the boards. Only for a deck.",
                "The posts round a person share the weight.",
                { X: "East to west", Y: "North to south", }
            ),
            Question {
                path: "floor.supports",
                label: "Posts of a deck",
                hint: "Only for a deck. From the middle of the pier.",
                not_known: "Posts at the corners of the floor are taken for a deck.",
                kind: Kind::Points {
                    one: "Post",
                    get: |plan| plan.floor.supports.as_ref(),
                    set: |plan, points| plan.floor.supports = points,
                },
            },
        ],
    },
];
