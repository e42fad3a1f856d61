//! Footing.

use super::super::question::{Topic, choice, number};
use stillground::row;

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "How big is the block?",
        intro: "Leave all three empty and the block is sized for you, within the pit you can dig. If it is poured already, or you have your own idea, say its size and it is checked.",
        common: &[
            number(row!(block.length_m)),
            number(row!(block.width_m)),
            number(row!(block.depth_m)),
            number(row!(block.upstand_m)),
        ],
        rare: &[
            number(row!(block.side_contact_from_m)),
            number(row!(block.side_contact_to_m)),
            choice(row!(block.rock_surface)),
            number(row!(block.dowel_count)),
            number(row!(block.dowel_diameter_mm)),
            number(row!(block.dowel_length_mm)),
            number(row!(block.dowel_proof_kn)),
            choice(row!(block.frost_remedy)),
        ],
    },
    Topic {
        heading: "What concrete?",
        intro: "A cubic metre is two hard days with a small mixer, or ten minutes from a lorry that can reach you. It must be poured in one go.",
        common: &[
            choice(row!(block.mix)),
            choice(row!(block.concrete)),
            number(row!(work.temperature_c)),
        ],
        rare: &[choice(row!(block.cement)), number(row!(block.bag_mass_kg))],
    },
    Topic {
        heading: "Steel and ducts",
        intro: "Cables go through the block and up inside the column, and a duct cannot be added later. Steel holds the block together while it cools and dries.",
        common: &[
            choice(row!(block.reinforcement)),
            number(row!(block.duct_count)),
        ],
        rare: &[number(row!(block.duct_diameter_mm))],
    },
];
