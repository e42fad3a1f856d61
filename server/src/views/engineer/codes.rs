//! The tables of the two codes: way by way beside each other, and for each its forces, ways of failing and factors.

use stillground::design::Design;
use stillground::figure::{Kilonewton, Millimetre, One, PerCent, Units};
use stillground::stages::anchors::Mode;

use super::workings::calculations;
use super::{Judging, Listing};

/// Way by way, both codes in one row.
pub(super) fn summary(both: &[Judging<'_>], units: Units) -> Listing {
    let kn = |force| units.say(force, Kilonewton);
    let cells = |judging: &Judging<'_>, mode: Mode| match judging.verdict.of(mode) {
        Some(judged) => {
            let used = units.say(judged.utilisation * 100.0, PerCent);
            let used = if judged.governs {
                format!("{used}, first")
            } else {
                used
            };
            [
                format!("{} of {}", kn(judged.demand), kn(judged.capacity)),
                used,
                judged.clause(judging.code),
            ]
        }
        None => ["–".to_owned(), "–".to_owned(), "–".to_owned()],
    };
    let row = |mode: Mode| {
        std::iter::once(mode.words().to_owned())
            .chain(both.iter().flat_map(|judging| cells(judging, mode)))
            .collect()
    };
    let together =
        |what: &str, of: fn(&Judging<'_>) -> Option<f64>, clause: [&str; 2]| -> Vec<String> {
            let cells = both
                .iter()
                .zip(clause)
                .flat_map(|(judging, clause)| match of(judging) {
                    Some(ratio) => [
                        "together".to_owned(),
                        units.say(ratio * 100.0, PerCent),
                        clause.to_owned(),
                    ],
                    None => ["in the next".to_owned(), "–".to_owned(), clause.to_owned()],
                });
            std::iter::once(what.to_owned()).chain(cells).collect()
        };
    let mut rows: Vec<Vec<String>> = Mode::ALL.into_iter().map(row).collect();
    rows.push(together(
        "pull and shear, steel",
        |judging| judging.in_steel(),
        ["Table 7.3", "17.8"],
    ));
    rows.push(together(
        "pull and shear, concrete; by ACI the worst of both",
        |judging| Some(judging.verdict.concrete_interaction),
        ["Table 7.3", "17.8"],
    ));
    let mut heads = vec![("Way of failing", 1.5)];
    for judging in both {
        heads.extend([(judging.name, 1.1), ("Used", 0.6), ("Clause", 0.8)]);
    }
    Listing {
        title: "Both codes: asked, of what can be given".to_owned(),
        heads,
        rows,
    }
}

pub(super) fn studs(judging: &Judging<'_>, design: &Design, units: Units) -> Listing {
    let mm = |length| units.say(length, Millimetre);
    let kn = |force| units.say(force, Kilonewton);
    let row = |(i, (stud, borne)): (
        usize,
        (
            &stillground::stages::anchors::Stud,
            &stillground::stages::anchors::Borne,
        ),
    )| {
        vec![
            (i + 1).to_string(),
            mm(stud.x),
            mm(stud.y),
            kn(borne.pull),
            kn(borne.shear),
            units.say(borne.utilisation * 100.0, PerCent),
        ]
    };
    Listing {
        title: format!(
            "Force in each stud by {}, under {} with its factors",
            judging.name, judging.verdict.action.title
        ),
        heads: vec![
            ("Stud", 0.5),
            ("East", 1.0),
            ("North", 1.0),
            ("Pull (− push)", 1.0),
            ("Shear", 1.0),
            ("Used, stud alone", 1.0),
        ],
        rows: design
            .anchors
            .studs
            .iter()
            .zip(&judging.verdict.each)
            .enumerate()
            .map(row)
            .collect(),
    }
}

pub(super) fn modes(judging: &Judging<'_>, units: Units) -> Listing {
    let kn = |force| units.say(force, Kilonewton);
    let row = |mode: Mode| match judging.verdict.of(mode) {
        Some(judged) => vec![
            format!(
                "{}{}",
                judged.words,
                if judged.governs { ", fails first" } else { "" }
            ),
            kn(judged.demand),
            kn(judged.characteristic),
            units.say(judged.reduction_factor, One),
            kn(judged.capacity),
            units.say(judged.utilisation * 100.0, PerCent),
            judged.under.to_owned(),
            judged.source.to_string(),
        ],
        None => {
            vec![
                mode.words().to_owned(),
                "–".into(),
                "–".into(),
                "–".into(),
                "–".into(),
                "–".into(),
                "–".into(),
                mode.spared(judging.code).to_owned(),
            ]
        }
    };
    let mut rows: Vec<Vec<String>> = Mode::ALL.into_iter().map(row).collect();
    let mut together = |what: &str, ratio: f64| {
        let blank = || "–".to_owned();
        let used = units.say(ratio * 100.0, PerCent);
        rows.push(vec![
            what.to_owned(),
            blank(),
            blank(),
            blank(),
            blank(),
            used,
            blank(),
            "the two ratios by the code’s rule".to_owned(),
        ]);
    };
    if let Some(ratio) = judging.in_steel() {
        together("steel, pull and shear together", ratio);
    }
    let what = if judging.european() {
        "concrete, pull and shear together"
    } else {
        "pull and shear together, the worst of each"
    };
    together(what, judging.verdict.concrete_interaction);
    Listing {
        title: format!("Every way of failing by {}", judging.name),
        heads: vec![
            ("Way of failing", 1.5),
            ("Asked", 0.7),
            (
                if judging.european() {
                    "Characteristic"
                } else {
                    "Nominal"
                },
                1.05,
            ),
            (if judging.european() { "1/γ" } else { "φ" }, 0.5),
            ("Design", 0.7),
            ("Used", 0.5),
            ("Worst under", 1.1),
            ("Clause and standing", 1.4),
        ],
        rows,
    }
}

pub(super) fn factors(judging: &Judging<'_>, design: &Design, units: Units) -> Listing {
    calculations(
        format!("Every factor by {}", judging.name),
        design
            .workings
            .iter()
            .filter(|working| working.id.starts_with(judging.prefix)),
        units,
    )
}
