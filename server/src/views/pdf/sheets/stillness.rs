//! The sheets about stillness: the floor, and what the star does.

use stillground::figure::Unit;
use stillground::notes::{Stage, When};
use stillground::stages::motion::figures as star_figures;

use super::figures;
use super::steps::steps;
use super::{cautions_of, check_lines, draw};
use crate::drawing::by_name;
use crate::views::pages::{deeper, improvement};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};
use crate::views::verdict;
use crate::views::words::sentence;

const UNKNOWN: &str = "not known";

/// Observing floor.
pub fn floor(flow: &mut Flow, sheet: &Sheet<'_>) {
    draw(flow, sheet, "floor");
    // A map that goes on no rest of this page leaves the rest to the words.
    let map = by_name("tilt-map", sheet.brief, sheet.design);
    let (now, later) = if map.as_ref().is_some_and(|map| flow.has_room_for(map)) {
        (map, None)
    } else {
        (None, map)
    };
    now.into_iter().for_each(|map| flow.drawing(map));
    stands(flow, sheet);
    steps(flow, sheet, &[When::Flooring]);
    check_lines(flow, sheet, Stage::Floor);
    cautions_of(flow, sheet, &[When::Flooring]);
    later.into_iter().for_each(|map| flow.drawing(map));
}

fn stands(flow: &mut Flow, sheet: &Sheet<'_>) {
    let units = sheet.brief.units;
    let figure = |value: Option<f64>, unit| {
        value.map_or_else(
            || UNKNOWN.into(),
            |value| Cell::Figure(units.figure(value, unit)),
        )
    };
    let rows: Vec<Vec<Cell>> = sheet
        .design
        .motion
        .stands
        .iter()
        .enumerate()
        .map(|(i, stand)| {
            vec![
                (i + 1).to_string().into(),
                stand.name.clone().into(),
                figure(stand.tilt_arcsec, Unit::Arcsecond),
                figure(stand.block_tilt_arcsec, Unit::Arcsecond),
                figure(stand.bearing_deg, Unit::Degree),
            ]
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    flow.heading("What each person does to the star");
    table(
        flow,
        &[
            ("No.", 0.3),
            ("Place", 2.0),
            ("Tilt of the top", 1.0),
            ("Of it, the block", 1.0),
            ("Leans towards", 0.9),
        ],
        &rows,
    );
    flow.small("The lean's direction is counted clockwise from north. All for typical ground; the checks use the unfavourable end.");
}

/// What the star does.
pub fn motion(flow: &mut Flow, sheet: &Sheet<'_>) {
    let motion = &sheet.design.motion;
    draw(flow, sheet, "budget");
    flow.heading("Motion");
    let mut rows = vec![figures::said(
        "The star should",
        &verdict::asked(motion, sheet.brief.units),
    )];
    rows.extend(figures::rows(
        sheet,
        &[
            star_figures::LIMIT,
            star_figures::WALK_RMS,
            star_figures::WALK_PEAK,
            star_figures::TRAIL,
            star_figures::TRAIL_ON_SENSOR,
            star_figures::WIND,
            star_figures::THERMAL,
            star_figures::THERMAL_DIFFERENCE,
            star_figures::SETTLING,
            star_figures::KEEP_STANDING,
            star_figures::KEEP_WALKING,
            star_figures::FREQUENCIES,
        ],
    ));
    figures::put(flow, rows);
    ["trail", "history", "spectrum"]
        .into_iter()
        .for_each(|name| draw(flow, sheet, name));
    star(flow, sheet);
    draw(flow, sheet, "modes");
    improvements(flow, sheet);
    check_lines(flow, sheet, Stage::Motion);
    cautions_of(flow, sheet, &[When::Observing]);
}

/// The same chapters as on the page.
fn star(flow: &mut Flow, sheet: &Sheet<'_>) {
    for chapter in deeper::star(&sheet.design.motion, sheet.brief.units) {
        flow.heading(chapter.title);
        let said = chapter.words.iter();
        if chapter.table.is_some() {
            said.for_each(|said| flow.lead(said))
        } else {
            said.for_each(|said| flow.paragraph(said))
        }
        if let Some(found) = &chapter.table {
            let rest = found.columns.iter().map(|column| (column.as_str(), 0.8));
            let columns: Vec<_> = std::iter::once((found.names, 2.0)).chain(rest).collect();
            let row = |(name, figures): &(String, Vec<String>)| {
                std::iter::once(name)
                    .chain(figures)
                    .map(|text| Cell::from(text.clone()))
                    .collect::<Vec<Cell>>()
            };
            table(
                flow,
                &columns,
                &found.rows.iter().map(row).collect::<Vec<_>>(),
            );
        }
        chapter.after.iter().for_each(|said| flow.small(said));
    }
}

/// What would help most, where it was looked for.
fn improvements(flow: &mut Flow, sheet: &Sheet<'_>) {
    let units = sheet.brief.units;
    let found = sheet.design.improvements.iter();
    let (seen, unseen): (Vec<_>, Vec<_>) =
        found.partition(|one| improvement::is_seen(one, sheet.design));
    if seen.is_empty() {
        return;
    }
    flow.heading("What would help most");
    let rows: Vec<Vec<Cell>> = seen
        .into_iter()
        .map(|one| {
            let change = sentence(&one.change).trim_end_matches('.').to_owned();
            vec![
                change.into(),
                improvement::effect(one, units, sheet.design).into(),
                improvement::fields(one, units).join("; ").into(),
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("Change", 1.2),
            ("What it does, in soft ground", 1.5),
            ("Answers to change", 1.5),
        ],
        &rows,
    );
    flow.small("Each was worked out on the changed plan; the changes do not add up.");
    if !unseen.is_empty() {
        flow.small("Left out is what would help only against movements that nobody would see on this plan: the page “Stillness” has it.");
    }
}
