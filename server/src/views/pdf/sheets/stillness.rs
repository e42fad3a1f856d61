//! The sheets about stillness: the floor, and what the star does.

use stillground::figure::{Arcsecond, Hertz, Kelvin, Pixel, Unit};
use stillground::notes::When;
use stillground::stages::motion::Quiet;

use super::figures::Figures;
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
    check_lines(flow, sheet, "floor.");
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
    let frequencies: Vec<String> = motion
        .frequencies
        .iter()
        .map(|f| sheet.brief.units.say(*f, Hertz))
        .collect();
    let listed = frequencies.join(", ");
    Figures::new(sheet.brief.units)
        .words(
            "The star should",
            &verdict::asked(motion, sheet.brief.units),
        )
        .with(
            "A swing all through an exposure that does as much",
            motion.budget_arcsec,
            Arcsecond,
        )
        .maybe(
            "Walk, root mean square",
            motion.walk.rms_arcsec,
            Arcsecond,
            UNKNOWN,
        )
        .maybe("Walk, largest", motion.walk.peak_arcsec, Arcsecond, UNKNOWN)
        .maybe(
            "Star's trail from end to end",
            motion.walk.trail_arcsec,
            Arcsecond,
            UNKNOWN,
        )
        .maybe(
            "The same on the sensor",
            motion.walk.trail_pixels,
            Pixel,
            UNKNOWN,
        )
        .maybe(
            "Wind while observing",
            motion.wind_arcsec,
            Arcsecond,
            UNKNOWN,
        )
        .maybe(
            "Column warmer on one side",
            motion.thermal_arcsec,
            Arcsecond,
            UNKNOWN,
        )
        .with(
            "The same: difference of temperature",
            motion.thermal_difference_k,
            Kelvin,
        )
        .maybe(
            "Time for a tap to die away",
            motion.settle_s,
            Unit::Second,
            UNKNOWN,
        )
        .words("A person may stand", &quiet(sheet, motion.quiet))
        .words("A person may walk", &quiet(sheet, motion.quiet_walking))
        .words(
            "First frequencies",
            if frequencies.is_empty() {
                UNKNOWN
            } else {
                &listed
            },
        )
        .put(flow);
    ["trail", "history", "spectrum"]
        .into_iter()
        .for_each(|name| draw(flow, sheet, name));
    star(flow, sheet);
    draw(flow, sheet, "modes");
    improvements(flow, sheet);
    check_lines(flow, sheet, "motion.");
    cautions_of(flow, sheet, &[When::Observing]);
}

/// From where on a person may stand or walk.
fn quiet(sheet: &Sheet<'_>, quiet: Option<Quiet>) -> String {
    match quiet {
        Some(quiet) if quiet.anywhere => "anywhere off the block".to_owned(),
        Some(quiet) => format!(
            "from {} on, counted from the pier's axis",
            sheet.brief.units.say(quiet.distance_m, Unit::Metre)
        ),
        None => "nowhere within reach, or not known".to_owned(),
    }
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
    let (units, found) = (sheet.brief.units, &sheet.design.motion.improvements);
    if found.is_empty() {
        return;
    }
    flow.heading("What would help most");
    let rows: Vec<Vec<Cell>> = found
        .iter()
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
}
