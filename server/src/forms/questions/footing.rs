//! Footing.

use super::super::question::{Topic, choice, number};
use stillground::site_plan::block::{
    Cement, Concrete, FrostRemedy, Mix, Reinforcement, RockSurface,
};

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "How big is the block?",
        intro: "Leave all three empty and the block is sized for you, within the hole you can dig. If it is poured already, or you have your own idea, say its size and it is checked.",
        common: &[
            number(
                "block.length_m",
                "Length, east to west",
                "",
                "It is sized for you.",
            ),
            number(
                "block.width_m",
                "Width, north to south",
                "",
                "It is sized for you.",
            ),
            number(
                "block.depth_m",
                "Depth of its base below the ground",
                "",
                "It is sized for you.",
            ),
            number(
                "block.upstand_m",
                "How far does it stand out of the ground?",
                "A little keeps rain and leaves off the studs.",
                "A little is assumed, to keep the studs dry.",
            ),
        ],
        rare: &[
            number(
                "block.side_contact_from_m",
                "The ground is hard against its sides from this depth",
                "0 is from the surface. Foam, a form left in, or loose fill is no contact.",
                "From the surface, or from below the loose fill where the pit is sloped.",
            ),
            number(
                "block.side_contact_to_m",
                "… down to this depth",
                "If the sides are loose, enter the same depth twice.",
                "Down to the base.",
            ),
            choice!(
                "block.rock_surface",
                RockSurface,
                block.rock_surface,
                "If the base stands on rock, how clean is the rock?",
                "Brush it, wash it and mop it dry on the day of the pour: dirt left in the hollows makes the block softer.",
                "Assumed: a thin film of dirt stays on it.",
                { Washed: "Brushed and washed clean", AsDug: "As the spade leaves it", }
            ),
            number(
                "block.dowel_count",
                "Dowels into the rock",
                "Ribbed bars grouted into holes in the rock, near the corners. 0: none.",
                "None, or four where a push would lift the block off the rock.",
            ),
            number(
                "block.dowel_diameter_mm",
                "Diameter of a dowel",
                "",
                "A usual bar is assumed.",
            ),
            number(
                "block.dowel_length_mm",
                "Length of a dowel in the rock",
                "",
                "Fifteen times its diameter is assumed in sound rock, twenty-five in weathered rock.",
            ),
            number(
                "block.dowel_proof_kn",
                "Pull that every dowel held in a test",
                "Enter it when the test is done: until then their tension does not count.",
                "They count as not tested.",
            ),
            choice!(
                "block.frost_remedy",
                FrostRemedy,
                block.frost_remedy,
                "What do you do against frost that grips its sides?",
                "Frozen clay, silt or fine sand freezes to the block and lifts it. Flat insulation costs no stiffness; a sleeve or gravel costs the side contact.",
                "Insulation is planned where frost would lift the block.",
                {
                    None: "Nothing",
                    Insulation: "Insulation boards laid flat round the block",
                    Sleeve: "A smooth, greased sleeve of two layers",
                    Gravel: "A trench of clean gravel",
                }
            ),
        ],
    },
    Topic {
        heading: "What concrete?",
        intro: "A cubic metre is two hard days with a small mixer, or ten minutes from a lorry that can reach you. It must be poured in one go.",
        common: &[
            choice!(
                "block.mix",
                Mix,
                block.mix,
                "Where does it come from?",
                "",
                "Ready-mixed concrete is assumed.",
                { Ready: "Ready-mixed, delivered", Site: "Mixed on site from cement, sand and gravel", Bagged: "Bags of dry concrete", }
            ),
            choice!(
                "block.concrete",
                Concrete,
                block.concrete,
                "Of which class?",
                "The first figure is the strength of a cylinder in MPa, the second of a cube.",
                "The usual class for a footing is assumed.",
                {
                    C20: "C20/25, about 3000 psi",
                    C25: "C25/30, about 3500 psi",
                    C28: "C28/35, about 4000 psi",
                    C30: "C30/37, about 4500 psi",
                    C35: "C35/45, about 5000 psi",
                    C40: "C40/50, about 6000 psi",
                }
            ),
            number(
                "work.temperature_c",
                "How warm is it while the concrete hardens?",
                "The mean of days and nights. In the cold, everything waits longer.",
                "A cool spring is assumed.",
            ),
        ],
        rare: &[
            choice!(
                "block.cement",
                Cement,
                block.cement,
                "How fast does the cement harden?",
                "The letter stands on the bag: S, N or R.",
                "The usual cement, class N, is assumed.",
                { Slow: "Slowly, class S", Normal: "Normally, class N", Rapid: "Rapidly, class R", }
            ),
            number(
                "block.bag_mass_kg",
                "What does one bag weigh?",
                "",
                "A usual bag is assumed.",
            ),
        ],
    },
    Topic {
        heading: "Steel and ducts",
        intro: "Cables go through the block and up inside the column, and a duct cannot be added later. Steel holds the block together while it cools and dries.",
        common: &[
            choice!(
                "block.reinforcement",
                Reinforcement,
                block.reinforcement,
                "What steel goes into it?",
                "",
                "A mesh under the top is assumed.",
                { Plain: "None", TopMesh: "A mesh under the top", Cage: "A cage on all faces", }
            ),
            number(
                "block.duct_count",
                "How many ducts are cast through it?",
                "One for power and one for data at least; they do not share one.",
                "Two are assumed.",
            ),
        ],
        rare: &[number(
            "block.duct_diameter_mm",
            "Inside diameter of a duct",
            "A plug has to pass.",
            "Wide enough for a plug and a data cable.",
        )],
    },
];
