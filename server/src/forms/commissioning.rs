//! The forms of measurements: what was typed becomes a knock, a lean or a pull of the plan.

use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::{
    Direction, Knock, Lean, OF_KNOCK, OF_LEAN, OF_PULL, Pull,
};

use super::sheet::Sheet;

/// Something to be put right: name of the box, and a whole sentence.
pub type Wrong = (String, String);

/// The boxes of each form: name in the plan, label, and whether it has to be there.
pub const KNOCK: [(&str, &str, bool); 3] = [
    ("frequency_hz", "Frequency, Hz", true),
    (
        "frequency_sd_hz",
        "Its uncertainty, ± Hz (one standard deviation)",
        false,
    ),
    (
        "damping_ratio",
        "Damping over critical, for instance 0.02",
        false,
    ),
];
/// Of a lean.
pub const LEAN: [(&str, &str, bool); 6] = [
    (
        "x_m",
        "Place east of the pier’s axis, m (west is negative)",
        true,
    ),
    (
        "y_m",
        "Place north of the pier’s axis, m (south is negative)",
        true,
    ),
    ("mass_kg", "Mass of who stood there, kg", true),
    ("tilt_arcsec", "How far the star moved, arcsec", true),
    ("tilt_sd_arcsec", "Its uncertainty, ± arcsec", false),
    (
        "bearing_deg",
        "Direction in which the top leaned, ° clockwise from north",
        false,
    ),
];
/// Of a pull.
pub const PULL: [(&str, &str, bool); 4] = [
    ("height_m", "Height of the pull above ground level, m", true),
    ("force_n", "Force, N (a scale’s kilograms times 9.8)", true),
    ("tilt_arcsec", "How far the star moved, arcsec", true),
    ("tilt_sd_arcsec", "Its uncertainty, ± arcsec", false),
];

/// The plan as a form changes it.
///
/// # Errors
/// Every box that has to be put right.
pub fn read(plan: &SitePlan, sheet: &Sheet) -> Result<SitePlan, Vec<Wrong>> {
    let mut plan = plan.clone();
    let mut wrong = Vec::new();
    match sheet.text("what").unwrap_or_default() {
        "knock" => knock(&mut plan, sheet, &mut wrong),
        "lean" => lean(&mut plan, sheet, &mut wrong),
        "pull" => pull(&mut plan, sheet, &mut wrong),
        "symptoms" => symptoms(&mut plan, sheet, &mut wrong),
        "remove" => remove(&mut plan, sheet),
        _ => {}
    }
    if wrong.is_empty()
        && let Err(problems) = plan.validate_each()
    {
        for problem in problems.0 {
            let own = problem
                .fields
                .iter()
                .find(|field| field.starts_with("commissioning"));
            if let Some(field) = own {
                let name = field.rsplit('.').next().unwrap_or_default().to_owned();
                wrong.push((name, problem.said));
            }
        }
    }
    if wrong.is_empty() {
        Ok(plan)
    } else {
        Err(wrong)
    }
}

/// A number, with a point or a comma; none where the box is empty.
fn number(
    sheet: &Sheet,
    name: &str,
    label: &str,
    needed: bool,
    wrong: &mut Vec<Wrong>,
) -> Option<f64> {
    let typed = sheet
        .text(name)
        .unwrap_or_default()
        .trim()
        .replace(',', ".")
        .replace('−', "-");
    if typed.is_empty() {
        if needed {
            wrong.push((name.to_owned(), format!("{label}: this has to be there.")));
        }
        return None;
    }
    let read = typed.parse().ok().filter(|value: &f64| value.is_finite());
    if read.is_none() {
        wrong.push((name.to_owned(), format!("{label}: this is no number.")));
    }
    read
}

fn numbers<const N: usize>(
    sheet: &Sheet,
    boxes: [(&str, &str, bool); N],
    wrong: &mut Vec<Wrong>,
) -> [Option<f64>; N] {
    boxes.map(|(name, label, needed)| number(sheet, name, label, needed, wrong))
}

fn direction(sheet: &Sheet) -> Direction {
    sheet
        .text("direction")
        .and_then(Direction::from_key)
        .unwrap_or(Direction::X)
}

fn knock(plan: &mut SitePlan, sheet: &Sheet, wrong: &mut Vec<Wrong>) {
    let [frequency, sd, damping] = numbers(sheet, KNOCK, wrong);
    if let Some(frequency_hz) = frequency {
        plan.commissioning.knocks.push(Knock {
            direction: direction(sheet),
            with_mount: sheet.text("with_mount") != Some("no"),
            frequency_hz,
            frequency_sd_hz: sd,
            damping_ratio: damping,
            mode: None,
        });
    }
}

fn lean(plan: &mut SitePlan, sheet: &Sheet, wrong: &mut Vec<Wrong>) {
    let [x, y, mass, tilt, sd, bearing] = numbers(sheet, LEAN, wrong);
    if let (Some(x_m), Some(y_m), Some(mass_kg), Some(tilt)) = (x, y, mass, tilt) {
        plan.commissioning.leans.push(Lean {
            x_m,
            y_m,
            mass_kg,
            tilt_arcsec: tilt.abs(),
            tilt_sd_arcsec: sd,
            bearing_deg: bearing,
        });
    }
}

fn pull(plan: &mut SitePlan, sheet: &Sheet, wrong: &mut Vec<Wrong>) {
    let [height, force, tilt, sd] = numbers(sheet, PULL, wrong);
    if let (Some(height_m), Some(force_n), Some(tilt)) = (height, force, tilt) {
        plan.commissioning.pulls.push(Pull {
            height_m,
            force_n,
            direction: direction(sheet),
            tilt_arcsec: tilt.abs(),
            tilt_sd_arcsec: sd,
        });
    }
}

fn symptoms(plan: &mut SitePlan, sheet: &Sheet, wrong: &mut Vec<Wrong>) {
    let said = &mut plan.commissioning.symptoms;
    for (name, place) in [
        ("in_wind", &mut said.in_wind),
        ("at_steps", &mut said.at_steps),
        ("at_touch", &mut said.at_touch),
        ("at_slew", &mut said.at_slew),
    ] {
        *place = sheet.ticked(name).then_some(true);
    }
    said.lasts_s = number(sheet, "lasts_s", "How long it lasts, s", false, wrong);
    said.moves_arcsec = number(
        sheet,
        "moves_arcsec",
        "How far the star moves, arcsec",
        false,
        wrong,
    );
}

fn remove(plan: &mut SitePlan, sheet: &Sheet) {
    let row = sheet.text("row").and_then(|row| row.parse::<usize>().ok());
    let said = &mut plan.commissioning;
    match (sheet.text("list"), row) {
        (Some("knocks"), Some(row)) if row < said.knocks.len() => drop(said.knocks.remove(row)),
        (Some("leans"), Some(row)) if row < said.leans.len() => drop(said.leans.remove(row)),
        (Some("pulls"), Some(row)) if row < said.pulls.len() => drop(said.pulls.remove(row)),
        _ => {}
    }
}

/// The range of a box in words.
#[must_use]
pub fn range(what: &str, name: &str) -> Option<String> {
    let bounds: &[_] = match what {
        "knock" => &OF_KNOCK,
        "lean" => &OF_LEAN,
        _ => &OF_PULL,
    };
    let bound = bounds.iter().find(|bound| bound.name == name)?;
    Some(format!("{} to {}", bound.least, bound.most))
}
