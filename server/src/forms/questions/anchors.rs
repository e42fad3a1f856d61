//! Anchors: the studs bonded into the block.

use super::super::question::{Answer, Kind, Question, Topic, choice, number, words};
use stillground::site_plan::anchors::{BondRow, TimeRow};
use stillground::{path, row};

const YES_NO: &[Answer] = &[
    ("true", "It may be cracked"),
    ("false", "A report says that it is not"),
];

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "Which studs?",
        intro: "Studs set in resin hold the column down. More of them on a wider circle hold it more firmly.",
        common: &[
            number(row!(anchors.count)),
            choice(row!(anchors.size)),
            number(row!(anchors.circle_diameter_mm)),
            number(row!(anchors.length_mm)),
            number(row!(anchors.embedment_mm)),
        ],
        rare: &[
            choice(row!(anchors.strength_class)),
            choice(row!(anchors.coating)),
            choice(row!(code)),
        ],
    },
    Topic {
        heading: "How tight?",
        intro: "A torque pulls the stud, and how hard depends on grease, tool and luck. If your source says “kilos”, type that and you will be asked.",
        common: &[
            number(row!(anchors.torque_n_m)),
            number(row!(anchors.max_torque_n_m)),
            choice(row!(anchors.lower_nuts)),
            choice(row!(anchors.tool)),
            choice(row!(anchors.lubrication)),
        ],
        rare: &[
            number(row!(anchors.thread_friction)),
            number(row!(anchors.under_head_friction)),
        ],
    },
    Topic {
        heading: "Holes and resin",
        intro: "Most studs that fail were set in dusty holes. Drill, blow, brush, blow again; keep to the times on the cartridge.",
        common: &[
            number(row!(anchors.hole_diameter_mm)),
            number(row!(anchors.concrete_temperature_c)),
            choice(row!(anchors.resin)),
            choice(row!(anchors.hole)),
        ],
        rare: &[
            number(row!(anchors.bond_strength_mpa)),
            number(row!(anchors.bond_strength_uncracked_mpa)),
            Question {
                path: path!(anchors.cracked),
                words: words(row!(anchors.cracked).row.words),
                kind: Kind::Choice {
                    answers: YES_NO,
                    get: row!(anchors.cracked).row.key,
                    set: row!(anchors.cracked).row.set_key,
                },
            },
            number(row!(anchors.gel_time_min)),
            number(row!(anchors.cure_time_h)),
            number(row!(anchors.cartridge_ml)),
            number(row!(anchors.purge_ml)),
            number(row!(anchors.service_temperature_c)),
        ],
    },
    Topic {
        heading: "From the product's approval",
        intro: "If you have the resin's approval, its figures replace the cautious ones assumed here.",
        common: &[],
        rare: &[
            number(row!(anchors.installation_factor)),
            number(row!(anchors.sustained_factor)),
            number(row!(anchors.min_embedment_mm)),
            number(row!(anchors.max_embedment_mm)),
            number(row!(anchors.min_edge_mm)),
            number(row!(anchors.min_spacing_mm)),
            number(row!(anchors.min_thickness_mm)),
            number(row!(anchors.splitting_edge_mm)),
            number(row!(anchors.displacement_short_mm_per_mpa)),
            number(row!(anchors.displacement_long_mm_per_mpa)),
            number(row!(anchors.relaxation_factor)),
            Question {
                path: path!(anchors.bond_by_temperature),
                words: words(row!(anchors.bond_by_temperature).row.words),
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
                path: path!(anchors.times_by_temperature),
                words: words(row!(anchors.times_by_temperature).row.words),
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
