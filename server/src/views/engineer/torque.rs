//! What sets a ceiling to the torque: as built, and were the plate to stand otherwise.

use stillground::design::Design;
use stillground::figure::{NewtonMetre, Units};
use stillground::units::Moment;

use super::Listing;
use crate::views::words;

pub(super) fn listing(design: &Design, units: Units) -> Listing {
    let torque = &design.anchors.torque;
    let say = |moment: Moment| units.say(moment, NewtonMetre);
    let what = |what: &str| words::sentence(what).trim_end_matches('.').to_owned();
    let built = torque.limits.iter().map(|limit| {
        let verdict = if limit.governs {
            "decides"
        } else {
            "leaves room"
        };
        vec![
            format!("As built, {}", limit.what),
            say(limit.torque),
            verdict.to_owned(),
        ]
    });
    let other = torque.cases.iter().filter(|case| !case.built);
    let others = other.map(|case| {
        vec![
            format!("{}, not built", case.name),
            say(case.high),
            what(case.what),
        ]
    });
    Listing {
        title: "Ceilings of the torque, as built and were the plate to stand otherwise".to_owned(),
        heads: vec![
            ("Ceiling", 2.4),
            ("Torque at most", 1.0),
            ("What it does", 1.6),
        ],
        rows: built.chain(others).collect(),
    }
}
