//! Anchors: the studs bonded into the block.

use super::super::question::{Answer, Kind, Question, Topic, choice, number};
use stillground::site_plan::Code;
use stillground::site_plan::anchors::{
    BondRow, Coating, Hole, LowerNuts, Lubrication, Resin, Size, StrengthClass, TimeRow, Tool,
};

const YES_NO: &[Answer] = &[
    ("true", "It may be cracked"),
    ("false", "A report says that it is not"),
];

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "Which studs?",
        intro: "Studs set in resin hold the column down. More of them on a wider circle hold it stiller; each needs concrete round it.",
        common: &[
            number(
                "anchors.count",
                "How many studs?",
                "Four stand square and level easily.",
                "Four are assumed.",
            ),
            choice!(
                "anchors.size",
                Size,
                anchors.size,
                "Which thread?",
                "",
                "M16 is assumed.",
                { M10: "M10, 10 mm", M12: "M12, 12 mm", M16: "M16, 16 mm", M20: "M20, 20 mm", M24: "M24, 24 mm", }
            ),
            number(
                "anchors.circle_diameter_mm",
                "Diameter of their circle",
                "Outside the column, inside the plate.",
                "A circle clear of the column and inside the plate.",
            ),
            number(
                "anchors.length_mm",
                "Length of a stud",
                "",
                "A usual length.",
            ),
            number(
                "anchors.embedment_mm",
                "How deep does it sit in the concrete?",
                "",
                "A usual depth for its size.",
            ),
        ],
        rare: &[
            choice!(
                "anchors.strength_class",
                StrengthClass,
                anchors.strength_class,
                "Strength class",
                "Stamped on the end of the rod.",
                "Class 8.8 is assumed.",
                { C5_8: "5.8", C8_8: "8.8", C10_9: "10.9", A4_70: "A4-70, stainless", A4_80: "A4-80, stainless", }
            ),
            choice!(
                "anchors.coating",
                Coating,
                anchors.coating,
                "Coating",
                "",
                "Electroplated zinc is assumed.",
                { Plain: "None, or black", Zinc: "Electroplated zinc", Galvanised: "Hot-dip galvanised", }
            ),
            choice!(
                "code",
                Code,
                code,
                "Which code gives the verdict?",
                "Both are calculated and both are shown.",
                "The European one gives the verdict.",
                { Eurocode: "EN 1992-4, the European one", Aci: "ACI 318-19, the American one", }
            ),
        ],
    },
    Topic {
        heading: "How tight?",
        intro: "A torque turns into a pull on the stud, and how much depends on grease, tool and luck. “Kilos” is not a torque: if that is what your source says, type it and you will be asked.",
        common: &[
            number(
                "anchors.torque_n_m",
                "To which torque will you tighten?",
                "Type the unit too, for instance 80 N m or 60 lbf ft.",
                "A torque is recommended.",
            ),
            number(
                "anchors.max_torque_n_m",
                "What does the resin's sheet allow at most?",
                "The installation torque for this thread. It is the limit, whatever else is calculated.",
                "No limit is known. Look it up before you tighten.",
            ),
            choice!(
                "anchors.lower_nuts",
                LowerNuts,
                anchors.lower_nuts,
                "What is under the plate at each stud?",
                "It decides whether tightening pulls on the resin.",
                "Tight nuts under a plate on nuts; backed off once grout is hard.",
                {
                    Tight: "A nut, tight against the plate",
                    BackedOff: "A nut, backed off when the grout is hard",
                    None: "No nut: the plate rests on concrete, shim or grout",
                }
            ),
            choice!(
                "anchors.tool",
                Tool,
                anchors.tool,
                "What do you tighten with?",
                "",
                "A torque wrench is assumed.",
                { Feel: "A spanner, by feel", TorqueWrench: "A torque wrench", }
            ),
            choice!(
                "anchors.lubrication",
                Lubrication,
                anchors.lubrication,
                "What is on the threads?",
                "",
                "A light oil is assumed.",
                { Dry: "Nothing: dry, as delivered", Oiled: "A light oil", Paste: "Wax or assembly paste", }
            ),
        ],
        rare: &[
            number(
                "anchors.thread_friction",
                "Friction in the thread",
                "From a friction test.",
                "It follows from what is on the threads.",
            ),
            number(
                "anchors.under_head_friction",
                "Friction under the nut",
                "From a friction test.",
                "It follows from what is on the threads.",
            ),
        ],
    },
    Topic {
        heading: "Holes and resin",
        intro: "Most bonded studs that fail were set in dust. Drill, blow, brush, blow again, and keep to the times on the cartridge.",
        common: &[
            number(
                "anchors.hole_diameter_mm",
                "Diameter of the hole",
                "From the resin's sheet, for this thread.",
                "A little wider than the stud.",
            ),
            number(
                "anchors.concrete_temperature_c",
                "How warm is the concrete when the resin goes in?",
                "The concrete, not the air.",
                "The temperature of the work counts.",
            ),
            choice!(
                "anchors.resin",
                Resin,
                anchors.resin,
                "What kind of resin is it?",
                "It stands on the cartridge.",
                "The slower of both kinds counts, and no bonding in the cold.",
                { Vinylester: "Vinylester or polyester", Epoxy: "Epoxy", }
            ),
            choice!(
                "anchors.hole",
                Hole,
                anchors.hole,
                "Are the holes wet?",
                "",
                "Dry holes are assumed.",
                { Dry: "Dry", Wet: "Wet or damp", }
            ),
        ],
        rare: &[
            number(
                "anchors.bond_strength_mpa",
                "Bond strength in cracked concrete",
                "Characteristic value, from the product's approval.",
                "The least value that a code allows.",
            ),
            number(
                "anchors.bond_strength_uncracked_mpa",
                "Bond strength in uncracked concrete",
                "Characteristic value, from the product's approval.",
                "The least value that a code allows.",
            ),
            Question {
                path: "anchors.cracked",
                label: "May the concrete be cracked?",
                hint: "",
                not_known: "It is assumed that it may be cracked.",
                kind: Kind::Choice {
                    answers: YES_NO,
                    get: |plan| {
                        plan.anchors
                            .cracked
                            .map(|yes| if yes { "true" } else { "false" })
                    },
                    set: |plan, key| plan.anchors.cracked = key.and_then(|key| key.parse().ok()),
                },
            },
            number(
                "anchors.gel_time_min",
                "Working time of the resin",
                "At that temperature, from the product's sheet.",
                "A cautious time for the temperature.",
            ),
            number(
                "anchors.cure_time_h",
                "Time before full load",
                "At that temperature, from the product's sheet.",
                "A cautious time for the temperature.",
            ),
            number(
                "anchors.cartridge_ml",
                "What one cartridge holds",
                "",
                "A common cartridge.",
            ),
            number(
                "anchors.purge_ml",
                "Resin thrown away at the start of each nozzle",
                "",
                "A few strokes.",
            ),
            number(
                "anchors.service_temperature_c",
                "How warm does the concrete become in use?",
                "In the sun on the hottest day.",
                "The top of a block in the summer sun.",
            ),
        ],
    },
    Topic {
        heading: "From the product's approval",
        intro: "If you hold the resin's approval in your hand, its figures replace the cautious ones taken here.",
        common: &[],
        rare: &[
            number(
                "anchors.installation_factor",
                "Installation factor",
                "Written γ inst; 1.0 to 1.4.",
                "A cautious factor.",
            ),
            number(
                "anchors.sustained_factor",
                "Factor for sustained load",
                "Written ψ sus, with a small nought.",
                "The code's value where nothing is stated.",
            ),
            number(
                "anchors.min_embedment_mm",
                "Least embedment",
                "Written h ef,min.",
                "Where the code's model begins.",
            ),
            number(
                "anchors.max_embedment_mm",
                "Greatest embedment",
                "Written h ef,max.",
                "Twenty times the stud's diameter.",
            ),
            number(
                "anchors.min_edge_mm",
                "Least edge distance",
                "Written c min.",
                "Six times the stud's diameter.",
            ),
            number(
                "anchors.min_spacing_mm",
                "Least spacing",
                "Written s min.",
                "Six times the stud's diameter.",
            ),
            number(
                "anchors.min_thickness_mm",
                "Least thickness of the concrete",
                "",
                "It follows from the embedment.",
            ),
            number(
                "anchors.splitting_edge_mm",
                "Edge distance that rules out splitting",
                "Written c cr,sp.",
                "It follows from the embedment.",
            ),
            number(
                "anchors.displacement_short_mm_per_mpa",
                "Displacement for a short load",
                "Per stress of bond.",
                "An average resin.",
            ),
            number(
                "anchors.displacement_long_mm_per_mpa",
                "Displacement for a long load",
                "Per stress of bond.",
                "An average resin.",
            ),
            number(
                "anchors.relaxation_factor",
                "Share of the preload lost in each tenfold of hours",
                "From long tests of the product.",
                "A twentieth.",
            ),
            Question {
                path: "anchors.bond_by_temperature",
                label: "Bond strengths by temperature in use",
                hint: "Rows like 40: 7 / 10; 60: 5.5 / 8: up to so many °C, cracked and uncracked in MPa.",
                not_known: "The single values above are used.",
                kind: Kind::Table {
                    get: |plan| {
                        Some(
                            plan.anchors
                                .bond_by_temperature
                                .as_ref()?
                                .iter()
                                .map(|row| [row.up_to_c, row.cracked_mpa, row.uncracked_mpa])
                                .collect(),
                        )
                    },
                    set: |plan, rows| {
                        let row = |[up_to_c, cracked_mpa, uncracked_mpa]: [f64; 3]| BondRow {
                            up_to_c,
                            cracked_mpa,
                            uncracked_mpa,
                        };
                        plan.anchors.bond_by_temperature =
                            rows.map(|rows| rows.into_iter().map(row).collect());
                    },
                },
            },
            Question {
                path: "anchors.times_by_temperature",
                label: "Working and hardening times by temperature",
                hint: "Rows like 10: 50 / 48; 20: 25 / 24: at so many °C, minutes to work and hours before full load.",
                not_known: "The single values above are used, or cautious ones.",
                kind: Kind::Table {
                    get: |plan| {
                        Some(
                            plan.anchors
                                .times_by_temperature
                                .as_ref()?
                                .iter()
                                .map(|row| [row.concrete_c, row.working_min, row.cure_h])
                                .collect(),
                        )
                    },
                    set: |plan, rows| {
                        let row = |[concrete_c, working_min, cure_h]: [f64; 3]| TimeRow {
                            concrete_c,
                            working_min,
                            cure_h,
                        };
                        plan.anchors.times_by_temperature =
                            rows.map(|rows| rows.into_iter().map(row).collect());
                    },
                },
            },
        ],
    },
];
