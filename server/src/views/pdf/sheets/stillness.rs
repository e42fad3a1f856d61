//! The sheets about stillness: the floor, and what the star does.

use stillground::figure::Unit;
use stillground::notes::When;
use stillground::units::hertz;

use super::figures::Figures;
use super::{cautions_of, check_lines, draw};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

const UNKNOWN: &str = "not known";

/// Observing floor.
pub fn floor(flow: &mut Flow, sheet: &Sheet<'_>) {
    draw(flow, sheet, "floor");
    stands(flow, sheet);
    draw(flow, sheet, "tilt-map");
    check_lines(flow, sheet, "floor.");
    cautions_of(flow, sheet, &[When::Flooring]);
}

fn stands(flow: &mut Flow, sheet: &Sheet<'_>) {
    let units = sheet.brief.units;
    let figure = |value: Option<f64>, unit| value.map_or_else(|| UNKNOWN.into(), |value| Cell::Figure(units.figure(value, unit)));
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
    table(flow, &[("No.", 0.3), ("Stand", 2.0), ("Turn of the top", 1.0), ("of it the block", 1.0), ("leans towards", 0.9)], &rows);
    flow.small("The lean's direction is counted clockwise from north. All for typical ground; the checks use the unfavourable end.");
}

/// What the star does.
pub fn motion(flow: &mut Flow, sheet: &Sheet<'_>) {
    let motion = &sheet.design.motion;
    draw(flow, sheet, "budget");
    draw(flow, sheet, "trail");
    draw(flow, sheet, "history");
    draw(flow, sheet, "spectrum");
    flow.heading("Motion");
    let frequencies: Vec<String> = motion.frequencies.iter().map(|f| sheet.brief.units.say(hertz::get(*f), Unit::Hertz)).collect();
    let listed = frequencies.join(", ");
    Figures::new(sheet.brief.units)
        .with("Budget: the most that is acceptable", motion.budget_arcsec, Unit::Arcsecond)
        .maybe("Walk, root mean square", motion.walk.rms_arcsec, Unit::Arcsecond, UNKNOWN)
        .maybe("Walk, largest", motion.walk.peak_arcsec, Unit::Arcsecond, UNKNOWN)
        .maybe("Star's trail from end to end", motion.walk.trail_arcsec, Unit::Arcsecond, UNKNOWN)
        .maybe("The same on the chip", motion.walk.trail_pixels, Unit::Pixel, UNKNOWN)
        .maybe("Wind while observing", motion.wind_arcsec, Unit::Arcsecond, UNKNOWN)
        .maybe("Column warmer on one side", motion.thermal_arcsec, Unit::Arcsecond, UNKNOWN)
        .with("by this difference", motion.thermal_difference_k, Unit::Kelvin)
        .maybe("Time for a tap to die to the budget", motion.settle_s, Unit::Second, UNKNOWN)
        .maybe("A person may stand beyond", motion.quiet_distance_m, Unit::Metre, UNKNOWN)
        .words("First frequencies", if frequencies.is_empty() { UNKNOWN } else { &listed })
        .put(flow);
    draw(flow, sheet, "modes");
    check_lines(flow, sheet, "motion.");
    cautions_of(flow, sheet, &[When::Observing]);
}
