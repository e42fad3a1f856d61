//! Tables of a resin's approval and sheet: their rows, and what is wrong with them.

use serde::{Deserialize, Serialize};

use crate::field::{Answer, Cell, Kind, Problem};
use crate::path;
use crate::site_plan::SitePlan;

/// Most rows of a product's table.
pub const MOST_ROWS: usize = 24;

/// Bond strengths of a product up to a temperature of the concrete in use, a row of its approval.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BondRow {
    /// Warmest that the concrete may become, °C.
    pub up_to_c: f64,
    /// Characteristic bond strength in cracked concrete, MPa.
    pub cracked_mpa: f64,
    /// Characteristic bond strength in uncracked concrete, MPa.
    pub uncracked_mpa: f64,
}

/// Times of a product at a temperature of the concrete, a row of its sheet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TimeRow {
    /// Temperature of the concrete, °C.
    pub concrete_c: f64,
    /// Working time, minutes.
    pub working_min: f64,
    /// Time before full load, hours.
    pub cure_h: f64,
}

impl Answer for Vec<BondRow> {
    const KIND: Kind = Kind::Rows(
        &[
            Cell::number("up_to_c", "Warmest that the concrete may become, °C."),
            Cell::number(
                "cracked_mpa",
                "Characteristic bond strength in cracked concrete, MPa.",
            ),
            Cell::number(
                "uncracked_mpa",
                "Characteristic bond strength in uncracked concrete, MPa.",
            ),
        ],
        MOST_ROWS,
    );
}

impl Answer for Vec<TimeRow> {
    const KIND: Kind = Kind::Rows(
        &[
            Cell::number("concrete_c", "Temperature of the concrete, °C."),
            Cell::number("working_min", "Working time, minutes."),
            Cell::number("cure_h", "Time before full load, hours."),
        ],
        MOST_ROWS,
    );
}

/// Rows of a product's tables that are out of range or out of order.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let anchors = &plan.anchors;
    let bonds = anchors.bond_by_temperature.as_deref().unwrap_or_default();
    let times = anchors.times_by_temperature.as_deref().unwrap_or_default();
    let mut problems = rows(
        &path!(anchors.bond_by_temperature),
        &bonds
            .iter()
            .map(|row| [row.up_to_c, row.cracked_mpa, row.uncracked_mpa])
            .collect::<Vec<_>>(),
        [0.0..=120.0, 0.5..=40.0, 0.5..=40.0],
        ["up_to_c", "cracked_mpa", "uncracked_mpa"],
    );
    problems.extend(rows(
        &path!(anchors.times_by_temperature),
        &times
            .iter()
            .map(|row| [row.concrete_c, row.working_min, row.cure_h])
            .collect::<Vec<_>>(),
        [-30.0..=60.0, 0.2..=1000.0, 0.05..=500.0],
        ["concrete_c", "working_min", "cure_h"],
    ));
    problems
}

/// Problems of one table: too long, a cell out of range, temperatures that do not rise.
fn rows(
    field: &str,
    table: &[[f64; 3]],
    ranges: [std::ops::RangeInclusive<f64>; 3],
    names: [&str; 3],
) -> Vec<Problem> {
    let mut problems = Vec::new();
    let whole = |said: String| Problem {
        fields: vec![field.to_owned()],
        value: None,
        said,
    };
    if table.len() > MOST_ROWS {
        problems.push(whole(format!(
            "There are {} rows; {MOST_ROWS} is more than any sheet has.",
            table.len()
        )));
    }
    for (i, row) in table.iter().enumerate() {
        for ((&value, range), name) in row.iter().zip(&ranges).zip(names) {
            if !(value.is_finite() && range.contains(&value)) {
                problems.push(Problem {
                    fields: vec![format!("{field}[{i}].{name}")],
                    value: value.is_finite().then_some(value),
                    said: format!(
                        "{value} is outside the range of {} to {}.",
                        range.start(),
                        range.end()
                    ),
                });
            }
        }
    }
    if table.windows(2).any(|pair| pair[0][0] >= pair[1][0]) {
        problems.push(whole(
            "The temperatures of the rows must rise from row to row.".to_owned(),
        ));
    }
    problems
}
