//! The studs by both codes, way of failing by way of failing.

use stillground::figure::{Kilonewton, PerCent, Units};
use stillground::stages::anchors::{Mode, Verdict};

use super::{Chapter, Table};
use crate::planned::Planned;
use crate::views::engineer::{Judging, verdicts};
use crate::views::words;

/// The chapters about both codes.
pub fn chapters(planned: &Planned) -> Vec<Chapter> {
    let units = planned.brief.units;
    let both = verdicts(&planned.brief, &planned.design);
    if both.is_empty() {
        return Vec::new();
    }
    let row = |mode: Mode| {
        let mut cells: Vec<String> = both
            .iter()
            .map(|judging| cell(judging, mode, units))
            .collect();
        cells.push(words::sentence(mode.raised_by()));
        (
            words::sentence(mode.words())
                .trim_end_matches('.')
                .to_owned(),
            cells,
        )
    };
    let mut columns: Vec<String> = both
        .iter()
        .map(|judging| format!("By {}", judging.name))
        .collect();
    columns.push("What would raise it".to_owned());
    let mut rows: Vec<(String, Vec<String>)> = Mode::ALL.into_iter().map(row).collect();
    let together = |of: fn(&Judging<'_>) -> Option<f64>| {
        let used = |ratio: f64| format!("{} used", units.say(ratio * 100.0, PerCent));
        let cell = |judging| {
            of(judging).map_or_else(
                || "Not parted from the concrete; see the next.".to_owned(),
                used,
            )
        };
        let mut cells: Vec<String> = both.iter().map(cell).collect();
        cells.push("Whatever raises the greater of the two.".to_owned());
        cells
    };
    rows.push((
        "Steel under pull and shear together".to_owned(),
        together(|judging| judging.in_steel()),
    ));
    rows.push((
        "Concrete under pull and shear together".to_owned(),
        together(|judging| Some(judging.verdict.concrete_interaction)),
    ));
    vec![Chapter {
        title: "The studs by both codes, side by side",
        told: Vec::new(),
        words: both.iter().filter_map(|judging| first(judging.name, judging.verdict, judging.chosen, units)).collect(),
        table: Some(Table { names: "Way of failing", columns, rows }),
        after: vec![
            "“Can give” is the design value: the characteristic resistance over its partial factor by EN 1992-4, the nominal strength times its \
             φ by ACI 318-19. Every factor on the way stands in the calculations, and on the checking engineer’s page of the plan."
                .to_owned(),
        ],
    }]
}

/// One code's word on a way of failing.
fn cell(judging: &Judging<'_>, mode: Mode, units: Units) -> String {
    let Some(judged) = judging.verdict.of(mode) else {
        return words::sentence(mode.spared(judging.code));
    };
    let say = |force| units.say(force, Kilonewton);
    let first = if judged.governs { "Fails first. " } else { "" };
    format!(
        "{first}{} asked, {} can give, {} used under {}; {}",
        say(judged.demand),
        say(judged.capacity),
        units.say(judged.utilisation * 100.0, PerCent),
        judged.under,
        judged.clause(judging.code)
    )
}

/// What fails first by a code.
fn first(name: &str, verdict: &Verdict, chosen: bool, units: Units) -> Option<String> {
    let judged = verdict.governing()?;
    let gives = if chosen {
        ", which gives the verdict here"
    } else {
        ""
    };
    Some(format!(
        "By {name}{gives}: the {} fails first, {} used under {}. To make it stronger: {}.",
        judged.words,
        units.say(judged.utilisation * 100.0, PerCent),
        judged.under,
        judged.raised_by
    ))
}
