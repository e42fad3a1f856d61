//! Site and soil.

use super::super::question::{Topic, choice, number, text};
use stillground::row;

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "This plan",
        intro: "Give it a name, and say which units are on your tape. Type any unit in any box; answers come back in these units.",
        common: &[text(row!(title)), choice(row!(units))],
        rare: &[choice(row!(stock))],
    },
    Topic {
        heading: "What does the soil feel like?",
        intro: "Dig a trial pit about knee-deep, take a lump from the bottom and press it. What you feel there matters more to this pier than anything else.",
        common: &[choice(row!(site.soil))],
        rare: &[
            number(row!(site.shear_wave_speed_m_s)),
            choice(row!(site.shear_wave_speed_method)),
            choice(row!(site.shear_wave_speed_season)),
            number(row!(site.blow_count)),
            number(row!(site.poisson_ratio)),
            number(row!(site.unit_weight_kn_m3)),
            number(row!(site.undrained_strength_kpa)),
            number(row!(site.friction_angle_deg)),
            number(row!(site.presumed_bearing_kpa)),
            number(row!(site.topsoil_depth_m)),
            number(row!(site.rock_depth_m)),
            choice(row!(site.rock_kind)),
        ],
    },
    Topic {
        heading: "Water, frost and weather",
        intro: "Water lifts a block and frost heaves it. Ask a neighbour how high the ditch stands in a wet winter and how deep the pipes are laid.",
        common: &[
            number(row!(site.groundwater_depth_m)),
            number(row!(site.frost_depth_m)),
            choice(row!(site.exposure)),
        ],
        rare: &[
            number(row!(site.freezing_index_c_days)),
            number(row!(site.design_gust_m_s)),
            number(row!(site.mean_annual_temperature_c)),
            text(row!(site.climate_source)),
        ],
    },
    Topic {
        heading: "What stands near?",
        intro: "Roots dry out clay, a leaking drain washes soil away, and a pit beside a house can undermine its footing. Ask what is buried before a spade goes in.",
        common: &[
            number(row!(site.tree_distance_m)),
            number(row!(site.building_distance_m)),
            number(row!(site.drain_distance_m)),
        ],
        rare: &[
            number(row!(site.tree_height_m)),
            choice(row!(site.tree_water_demand)),
            number(row!(site.building_footing_depth_m)),
            number(row!(site.bank_distance_m)),
            number(row!(site.bank_height_m)),
            number(row!(site.slope_deg)),
            number(row!(site.latitude_deg)),
            number(row!(site.longitude_deg)),
            number(row!(site.altitude_m)),
        ],
    },
];
