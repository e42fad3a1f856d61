//! Pier and load: the column, what it must clear, and what it carries.

use super::super::question::{Topic, choice, number, text};
use super::load;
use stillground::row;

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "What will you do with it?",
        intro: "A long exposure records movement that the eye would not notice.",
        common: &[choice(row!(use)), choice(row!(load.enclosure))],
        rare: &[],
    },
    load::CARRIES,
    load::CAMERA,
    Topic {
        heading: "How tall?",
        intro: "Say the height, or leave it empty and say what the telescope must see over; the height follows.",
        common: &[
            number(row!(pier.height_m)),
            number(row!(pier.wall_height_m)),
            number(row!(pier.wall_distance_m)),
            number(row!(pier.eye_height_m)),
        ],
        rare: &[
            number(row!(pier.swing_radius_m)),
            number(row!(pier.lowest_altitude_north_deg)),
            number(row!(pier.lowest_altitude_east_deg)),
            number(row!(pier.lowest_altitude_south_deg)),
            number(row!(pier.lowest_altitude_west_deg)),
        ],
    },
    Topic {
        heading: "The column",
        intro: "Diameter stiffens a tube far more than wall does. Ask what the steel yard has on the floor.",
        common: &[
            number(row!(pier.outside_diameter_mm)),
            number(row!(pier.wall_mm)),
            choice(row!(pier.fill)),
        ],
        rare: &[text(row!(pier.tube)), choice(row!(pier.steel))],
    },
    Topic {
        heading: "Base plate and top plate",
        intro: "The base joint is the part that most often gives. A bed of grout under the plate makes it stiff; nuts alone make it easy to level.",
        common: &[
            choice(row!(pier.levelling)),
            number(row!(pier.plate_side_mm)),
            number(row!(pier.plate_thickness_mm)),
        ],
        rare: &[
            number(row!(pier.gap_mm)),
            number(row!(pier.stiffener_count)),
            number(row!(pier.weld_leg_mm)),
            number(row!(pier.top_plate_side_mm)),
            number(row!(pier.top_plate_thickness_mm)),
            number(row!(pier.top_bolt_circle_mm)),
        ],
    },
];
