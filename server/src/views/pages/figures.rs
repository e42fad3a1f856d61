//! The figures that a step decides, each with its name and the quantity behind it.

mod below;

use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::stages::motion::{frequency_id, stand_id};
use stillground::units::{
    Spread, hertz, kilogram, kilonewton, metre, millilitre, millimetre, newton_metre_per_radian,
    newton_per_metre, newton_square_metre,
};

use super::number::Number;
use super::working;
use crate::forms::step::Step;

/// A named figure.
#[derive(Debug, Clone)]
pub struct FigureLine {
    /// What it is.
    pub label: String,
    /// The figure.
    pub number: Number,
    /// Anchor of its working; none where the figure was stated or is a count.
    pub how: Option<String>,
}

/// Label, value, unit, name of the working.
type Row = (String, Option<f64>, Unit, &'static str);

/// The figures of a step.
#[must_use]
pub fn of(step: Step, design: &Design, units: Units) -> Vec<FigureLine> {
    let rows = match step {
        Step::Site => below::ground(design),
        Step::Excavation => below::excavation(design),
        Step::Footing => below::footing(design),
        Step::Pier => pier(design),
        Step::Anchors => anchors(design),
        Step::Floor => floor(design),
        Step::Plan => Vec::new(),
    };
    let line = |(label, value, unit, how): Row| FigureLine {
        label,
        number: Number::of(value, unit, units),
        how: working::find(&design.workings, how),
    };
    rows.into_iter().map(line).collect()
}

fn row(label: &str, value: f64, unit: Unit, how: &'static str) -> Row {
    (label.to_owned(), Some(value), unit, how)
}

fn spread<T: Copy>(
    label: &str,
    spread: Option<Spread<T>>,
    get: fn(T) -> f64,
    unit: Unit,
    how: &'static str,
) -> [Row; 3] {
    let one = |which: &str, pick: fn(Spread<T>) -> T| {
        (
            format!("{label}, {which}"),
            spread.map(|spread| get(pick(spread))),
            unit,
            how,
        )
    };
    [
        one("low", |s| s.low),
        one("typical", |s| s.typical),
        one("high", |s| s.high),
    ]
}

fn pier(design: &Design) -> Vec<Row> {
    let pier = &design.pier;
    let mut rows = vec![
        row(
            "Height of the column",
            metre::get(pier.height),
            Unit::Metre,
            "pier.height",
        ),
        row(
            "Outside diameter",
            millimetre::get(pier.outside_diameter),
            Unit::Millimetre,
            "pier.outside_diameter",
        ),
        row(
            "Wall",
            millimetre::get(pier.wall),
            Unit::Millimetre,
            "pier.wall",
        ),
        row(
            "Mass of column and plates",
            kilogram::get(pier.mass),
            Unit::Kilogram,
            "pier.mass",
        ),
        row(
            "Bending stiffness",
            newton_square_metre::get(pier.bending_stiffness),
            Unit::NewtonSquareMetre,
            "pier.bending_stiffness",
        ),
        row(
            "Foot joint against turning",
            newton_metre_per_radian::get(pier.base_joint_stiffness) / 1e6,
            Unit::MeganewtonMetrePerRadian,
            "pier.base_joint_stiffness",
        ),
        row(
            "Stiffness at the top",
            newton_per_metre::get(pier.top_stiffness) / 1e6,
            Unit::MeganewtonPerMetre,
            "pier.top_stiffness",
        ),
    ];
    for (i, frequency) in design.motion.frequencies.iter().take(2).enumerate() {
        let label = if i == 0 {
            "First frequency"
        } else {
            "Second frequency"
        };
        rows.push(row(
            label,
            hertz::get(*frequency),
            Unit::Hertz,
            frequency_id(i),
        ));
    }
    rows
}

fn anchors(design: &Design) -> Vec<Row> {
    let anchors = &design.anchors;
    let mut rows = vec![
        row(
            "Diameter of a hole",
            millimetre::get(anchors.hole_diameter),
            Unit::Millimetre,
            "anchors.hole_diameter",
        ),
        row(
            "Depth of a hole",
            millimetre::get(anchors.hole_depth),
            Unit::Millimetre,
            "anchors.hole_depth",
        ),
        row(
            "Embedment",
            millimetre::get(anchors.embedment),
            Unit::Millimetre,
            "anchors.embedment",
        ),
        row(
            "Resin for all holes",
            millilitre::get(anchors.resin_volume),
            Unit::Millilitre,
            "anchors.resin",
        ),
    ];
    rows.extend(spread(
        "Pull on a stud",
        anchors.preload,
        kilonewton::get,
        Unit::Kilonewton,
        "anchors.preload",
    ));
    rows
}

fn floor(design: &Design) -> Vec<Row> {
    let motion = &design.motion;
    let mut rows = vec![row(
        "The star may move",
        motion.budget_arcsec,
        Unit::Arcsecond,
        "motion.budget",
    )];
    for (i, stand) in motion.stands.iter().enumerate() {
        rows.push((
            format!("Lean from “{}”", stand.name),
            stand.tilt_arcsec,
            Unit::Arcsecond,
            stand_id(i),
        ));
    }
    let mut known = |label: &str, value: Option<f64>, unit, how| {
        rows.push((label.to_owned(), value, unit, how))
    };
    known(
        "A walk, root mean square",
        motion.walk.rms_arcsec,
        Unit::Arcsecond,
        "motion.walk",
    );
    known(
        "A walk, largest",
        motion.walk.peak_arcsec,
        Unit::Arcsecond,
        "motion.walk",
    );
    known(
        "Star’s trail during a walk",
        motion.walk.trail_arcsec,
        Unit::Arcsecond,
        "motion.walk",
    );
    known(
        "The same on the sensor",
        motion.walk.trail_pixels,
        Unit::Pixel,
        "motion.walk",
    );
    known("Wind", motion.wind_arcsec, Unit::Arcsecond, "motion.wind");
    known(
        "Column warmed on one side",
        motion.thermal_arcsec,
        Unit::Arcsecond,
        "motion.thermal",
    );
    known(
        "A tap dies away in",
        motion.settle_s,
        Unit::Second,
        "motion.settle",
    );
    // Where nobody is felt anywhere on the floor, a distance would only say how wide the hole is.
    if !motion.quiet.is_some_and(|quiet| quiet.anywhere) {
        let label = "A person may stand from here on, counted from the pier’s axis";
        known(
            label,
            motion.quiet_distance_m,
            Unit::Metre,
            "motion.quiet_distance",
        );
    }
    rows
}
