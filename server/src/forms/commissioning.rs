//! The forms of measurements: what was typed becomes a knock, a lean or a pull.

use stillground::figure::Units;
use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::{
    Bound, Direction, Knock, Lean, Measurement, MeasurementKind, OF_KNOCK, OF_LEAN, OF_PULL,
    OF_SYMPTOMS, Pull,
};

use super::sheet::Sheet;
use super::typed::{self, Typed};

/// Something to be put right: name of the box, and a whole sentence.
pub type Wrong = (String, String);

/// What a form calls the direction of a measurement.
pub const DIRECTION: &str = "Direction";
/// What a form calls whether mount and telescope were on.
pub const ON_THE_PIER: &str = "On the pier";

/// The numbers of a measurement, in the order of its fields.
const fn numbers(kind: MeasurementKind) -> &'static [Bound] {
    match kind {
        MeasurementKind::Knock => &OF_KNOCK,
        MeasurementKind::Lean => &OF_LEAN,
        MeasurementKind::Pull => &OF_PULL,
    }
}

/// The boxes of a measurement.
pub fn boxes(kind: MeasurementKind) -> impl Iterator<Item = &'static Bound> {
    numbers(kind).iter().filter(|bound| !bound.asks.is_empty())
}

/// What may stand in a box, in the reader's units.
#[must_use]
pub fn range(bound: &Bound, units: Units) -> String {
    let say = |value| units.say(value, bound.unit);
    let left_out = if bound.needed {
        ""
    } else {
        "; may be left out"
    };
    format!("{} to {}{left_out}", say(bound.least), say(bound.most))
}

/// The plan as a form changes it.
///
/// # Errors
/// Every box that has to be put right.
pub fn read(plan: &SitePlan, sheet: &Sheet, units: Units) -> Result<SitePlan, Vec<Wrong>> {
    let mut plan = plan.clone();
    let what = sheet.text("what").unwrap_or_default();
    if let Some(kind) = MeasurementKind::from_key(what) {
        measurement(kind, sheet, units)?.put(&mut plan.commissioning);
    }
    match what {
        "symptoms" => symptoms(&mut plan, sheet, units)?,
        "remove" => remove(&mut plan, sheet),
        _ => {}
    }
    let Err(problems) = plan.validate_each() else {
        return Ok(plan);
    };
    let wrong: Vec<Wrong> = problems
        .0
        .into_iter()
        .filter_map(|problem| {
            let own = |field: &&String| field.starts_with("commissioning");
            let field = problem.fields.iter().find(own)?;
            let name = field.rsplit('.').next().unwrap_or_default().to_owned();
            Some((name, problem.said))
        })
        .collect();
    if wrong.is_empty() {
        Ok(plan)
    } else {
        Err(wrong)
    }
}

/// What a form says was measured.
///
/// # Errors
/// Every box that has to be put right.
pub fn measurement(
    kind: MeasurementKind,
    sheet: &Sheet,
    units: Units,
) -> Result<Measurement, Vec<Wrong>> {
    let mut wrong = Vec::new();
    let mut values = Vec::new();
    for bound in boxes(kind) {
        values.push(number(sheet, bound, units, &mut wrong));
    }
    let direction = sheet.text("direction").and_then(Direction::from_key);
    if kind != MeasurementKind::Lean && direction.is_none() {
        wrong.push(("direction".to_owned(), format!("{DIRECTION}: choose one.")));
    }
    let with_mount = sheet.text("with_mount").filter(|said| !said.is_empty());
    if kind == MeasurementKind::Knock && with_mount.is_none() {
        wrong.push((
            "with_mount".to_owned(),
            format!("{ON_THE_PIER}: choose one."),
        ));
    }
    // Where none was chosen, that is among what is wrong and nothing is made.
    let direction = direction.unwrap_or(Direction::X);
    let made = match (kind, values.as_slice()) {
        (MeasurementKind::Knock, &[Some(frequency_hz), frequency_sd_hz, damping_ratio]) => {
            Some(Measurement::Knock(Knock {
                direction,
                with_mount: with_mount != Some("no"),
                frequency_hz,
                frequency_sd_hz,
                damping_ratio,
                mode: (sheet.text("mode") == Some("2")).then_some(2),
            }))
        }
        (
            MeasurementKind::Lean,
            &[
                Some(x_m),
                Some(y_m),
                Some(mass_kg),
                Some(tilt),
                tilt_sd_arcsec,
                bearing_deg,
            ],
        ) => Some(Measurement::Lean(Lean {
            x_m,
            y_m,
            mass_kg,
            tilt_arcsec: tilt.abs(),
            tilt_sd_arcsec,
            bearing_deg,
        })),
        (MeasurementKind::Pull, &[Some(height_m), Some(force_n), Some(tilt), tilt_sd_arcsec]) => {
            Some(Measurement::Pull(Pull {
                height_m,
                force_n,
                direction,
                tilt_arcsec: tilt.abs(),
                tilt_sd_arcsec,
            }))
        }
        _ => None,
    };
    let Some(made) = made.filter(|_| wrong.is_empty()) else {
        return Err(wrong);
    };
    let problems = made.problems().into_iter().map(|problem| {
        let field = problem
            .fields
            .first()
            .map(String::as_str)
            .unwrap_or_default();
        let name = field.rsplit('.').next().unwrap_or_default();
        (name.to_owned(), problem.said)
    });
    let wrong: Vec<Wrong> = problems.collect();
    if wrong.is_empty() {
        Ok(made)
    } else {
        Err(wrong)
    }
}

/// A number in the reader's units, or with a unit of its own; none where the box is empty.
fn number(sheet: &Sheet, bound: &Bound, units: Units, wrong: &mut Vec<Wrong>) -> Option<f64> {
    let typed = sheet.text(bound.name).unwrap_or_default().trim();
    let mut fault = |said: String| {
        wrong.push((bound.name.to_owned(), format!("{}: {said}", bound.asks)));
        None
    };
    match typed::read(typed, bound.unit, units) {
        Typed::Value(value) => Some(value),
        Typed::NotKnown if bound.needed => fault("this has to be there.".to_owned()),
        Typed::NotKnown => None,
        Typed::Bad(said) => fault(said),
        Typed::Ask(question) => {
            let readings: Vec<String> = question
                .readings
                .into_iter()
                .map(|reading| format!("“{}”", reading.entry))
                .collect();
            fault(format!("{} Write {}.", question.why, readings.join(" or ")))
        }
    }
}

fn symptoms(plan: &mut SitePlan, sheet: &Sheet, units: Units) -> Result<(), Vec<Wrong>> {
    let said = &mut plan.commissioning.symptoms;
    for (name, place) in [
        ("in_wind", &mut said.in_wind),
        ("at_steps", &mut said.at_steps),
        ("at_touch", &mut said.at_touch),
        ("at_slew", &mut said.at_slew),
    ] {
        *place = sheet.ticked(name).then_some(true);
    }
    let mut wrong = Vec::new();
    let [lasts, moves] = &OF_SYMPTOMS;
    said.lasts_s = number(sheet, lasts, units, &mut wrong);
    said.moves_arcsec = number(sheet, moves, units, &mut wrong);
    if wrong.is_empty() { Ok(()) } else { Err(wrong) }
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

#[cfg(test)]
mod tests {
    use super::*;

    fn pull(force: &str, units: Units) -> Result<Measurement, Vec<Wrong>> {
        let pairs = [
            ("direction", "x"),
            ("height_m", "1.4"),
            ("force_n", force),
            ("tilt_arcsec", "18"),
        ];
        let pairs = pairs.map(|(name, text)| (name.to_owned(), text.to_owned()));
        measurement(MeasurementKind::Pull, &Sheet::sent(pairs.to_vec()), units)
    }

    fn newtons(force: &str, units: Units) -> f64 {
        match pull(force, units) {
            Ok(Measurement::Pull(pull)) => pull.force_n,
            other => panic!("{force}: {other:?}"),
        }
    }

    #[test]
    fn a_scale_may_be_read_in_newtons_and_in_kilograms_and_pounds() {
        assert!((newtons("200", Units::Metric) - 200.0).abs() < 1e-9);
        // Computed: 20 kg times standard gravity, and 45 lbf.
        assert!((newtons("20 kg", Units::Metric) - 196.133).abs() < 1e-3);
        assert!((newtons("45", Units::Imperial) - 200.17).abs() < 0.01);
        assert!((newtons("45 lb", Units::Metric) - 200.17).abs() < 0.01);
    }

    #[test]
    fn no_direction_is_assumed_and_neither_is_what_stands_on_the_pier() {
        let sheet = Sheet::sent(vec![("frequency_hz".to_owned(), "14.2".to_owned())]);
        let faults = measurement(MeasurementKind::Knock, &sheet, Units::Metric).unwrap_err();
        let names: Vec<&str> = faults.iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(names, ["direction", "with_mount"]);
    }

    #[test]
    fn each_box_that_is_wrong_is_named() {
        let faults = pull("much", Units::Metric).unwrap_err();
        assert_eq!(faults[0].0, "force_n");
        let faults = pull("9000", Units::Metric).unwrap_err();
        assert!(faults[0].1.contains("topple"), "{faults:?}");
    }
}
