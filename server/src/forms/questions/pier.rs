//! Pier and load: the column, what it must clear, and what it carries.

use super::super::question::{Kind, Question, Topic, choice, number};
use super::load;
use stillground::site_plan::Use;
use stillground::site_plan::load::Enclosure;
use stillground::site_plan::pier::{Fill, Levelling, Steel};

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "What will you do with it?",
        intro: "A long exposure records movement that the eye would not notice.",
        common: &[
            choice!(
                "use",
                Use,
                purpose,
                "What is the telescope for?",
                "If you do more than one, choose the one that needs the steadiest pier.",
                "Long exposures are taken: they ask the most.",
                { Visual: "Looking with the eye", Planetary: "Short frames of the moon and planets", DeepSky: "Long exposures", }
            ),
            choice!(
                "load.enclosure",
                Enclosure,
                load.enclosure,
                "What stands round it?",
                "",
                "A shed whose roof rolls away is assumed.",
                { Open: "Nothing", RollOff: "Walls, and a roof that rolls away", Dome: "A dome", }
            ),
        ],
        rare: &[],
    },
    load::CARRIES,
    load::CAMERA,
    Topic {
        heading: "How tall?",
        intro: "Say the height, or leave it empty and say what the telescope must see over; the height follows.",
        common: &[
            number(
                "pier.height_m",
                "Height of the column with its plates",
                "From the underside of the base plate to the top of the top plate.",
                "It follows from walls and eye height where those are known, or a handy height is assumed.",
            ),
            number(
                "pier.wall_height_m",
                "How high are the walls, or the dome's edge?",
                "Above the floor that people stand on.",
                "It is left out of the height.",
            ),
            number(
                "pier.wall_distance_m",
                "How far are they from the pier?",
                "From the middle of the pier.",
                "It is left out of the height.",
            ),
            number(
                "pier.eye_height_m",
                "How high is your eye when you stand?",
                "",
                "It is left out of the height.",
            ),
        ],
        rare: &[
            number(
                "pier.swing_radius_m",
                "How far does the telescope reach as it swings?",
                "From the crossing of the mount's axes to its farthest end.",
                "It is left out of the height.",
            ),
            number(
                "pier.lowest_altitude_north_deg",
                "Lowest altitude wanted to the north",
                "Degrees above the horizon.",
                "A usual lowest altitude is assumed.",
            ),
            number(
                "pier.lowest_altitude_east_deg",
                "Lowest altitude wanted to the east",
                "",
                "A usual lowest altitude is assumed.",
            ),
            number(
                "pier.lowest_altitude_south_deg",
                "Lowest altitude wanted to the south",
                "",
                "A usual lowest altitude is assumed.",
            ),
            number(
                "pier.lowest_altitude_west_deg",
                "Lowest altitude wanted to the west",
                "",
                "A usual lowest altitude is assumed.",
            ),
        ],
    },
    Topic {
        heading: "The column",
        intro: "Diameter stiffens a tube far more than wall does. Ask what the steel yard has on the floor.",
        common: &[
            number(
                "pier.outside_diameter_mm",
                "Outside diameter",
                "",
                "A common tube for a mount of this kind is assumed.",
            ),
            number(
                "pier.wall_mm",
                "Thickness of its wall",
                "",
                "A common wall for such a tube is assumed.",
            ),
            choice!(
                "pier.fill",
                Fill,
                pier.fill,
                "What is it filled with?",
                "Dry sand adds weight and deadens a ring; it adds no stiffness.",
                "Nothing: a fill can be added later.",
                { None: "Nothing", Sand: "Dry sand", Concrete: "Concrete", }
            ),
        ],
        rare: &[
            Question {
                path: "pier.tube",
                label: "A standard tube by its name",
                hint: "For instance CHS 219.1x6.3; its sizes are taken where you state none.",
                not_known: "The sizes above are used.",
                kind: Kind::Text {
                    input: "text",
                    get: |plan| plan.pier.tube.as_deref(),
                    set: |plan, text| plan.pier.tube = text,
                },
            },
            choice!(
                "pier.steel",
                Steel,
                pier.steel,
                "Grade of the steel",
                "It changes strength, not stiffness.",
                "The least grade sold is assumed.",
                { S235: "S235", S275: "S275", S355: "S355", }
            ),
        ],
    },
    Topic {
        heading: "Foot and top",
        intro: "The foot is the joint that most often gives. A bed of grout under the plate makes it stiff; nuts alone make it easy to level.",
        common: &[
            choice!(
                "pier.levelling",
                Levelling,
                pier.levelling,
                "What does the base plate stand on?",
                "",
                "Nuts are assumed.",
                { Nuts: "Nuts under the plate, with a gap", Grout: "A bed of grout", }
            ),
            number(
                "pier.plate_side_mm",
                "Side of the square base plate",
                "",
                "Wide enough for the circle of studs.",
            ),
            number(
                "pier.plate_thickness_mm",
                "Thickness of the base plate",
                "",
                "Thick enough not to dish much.",
            ),
        ],
        rare: &[
            number(
                "pier.gap_mm",
                "Gap under the plate, or thickness of the grout",
                "",
                "Room for a nut, a washer and a spanner.",
            ),
            number(
                "pier.stiffener_count",
                "Ribs between column and base plate",
                "",
                "None is assumed.",
            ),
            number(
                "pier.weld_leg_mm",
                "Leg of the weld at the foot",
                "",
                "A common fillet for such a wall.",
            ),
            number(
                "pier.top_plate_side_mm",
                "Side of the top plate",
                "",
                "A plate that takes most mounts.",
            ),
            number(
                "pier.top_plate_thickness_mm",
                "Thickness of the top plate",
                "",
                "A plate that takes most mounts.",
            ),
            number(
                "pier.top_bolt_circle_mm",
                "Circle of the mount's bolts",
                "Measure it on the mount itself.",
                "A common circle; measure yours before anyone drills.",
            ),
        ],
    },
];
