//! The figures that a step decides, each with its name and the quantity behind it.

use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::stages::motion::{frequency_id, stand_id};
use stillground::units::{
    Spread, cubic_metre, day, hertz, kilogram, kilonewton, kilonewton_per_cubic_metre, kilopascal,
    megapascal, metre, metre_per_second, millilitre, millimetre, newton_metre_per_radian,
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
        Step::Site => ground(design),
        Step::Excavation => excavation(design),
        Step::Footing => footing(design),
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

fn ground(design: &Design) -> Vec<Row> {
    let ground = &design.ground;
    let mut rows = Vec::new();
    rows.extend(spread(
        "Shear modulus of the ground",
        ground.shear_modulus,
        megapascal::get,
        Unit::Megapascal,
        "ground.shear_modulus",
    ));
    rows.extend(spread(
        "Speed of shear waves",
        ground.shear_wave_speed,
        metre_per_second::get,
        Unit::MetrePerSecond,
        "ground.shear_wave_speed",
    ));
    rows.push(row(
        "Unit weight",
        kilonewton_per_cubic_metre::get(ground.unit_weight),
        Unit::KilonewtonPerCubicMetre,
        "ground.unit_weight",
    ));
    rows.push(row(
        "Poisson’s ratio",
        ground.poisson_ratio,
        Unit::One,
        "ground.poisson_ratio",
    ));
    let bearing = ground.presumed_bearing.map(kilopascal::get);
    rows.push((
        "Bearing pressure that may be presumed".into(),
        bearing,
        Unit::Kilopascal,
        "ground.presumed_bearing",
    ));
    rows.push(row(
        "Depth of frost",
        metre::get(ground.frost_depth),
        Unit::Metre,
        "ground.frost_depth",
    ));
    rows
}

fn excavation(design: &Design) -> Vec<Row> {
    let pit = &design.excavation;
    vec![
        row(
            "Pit, east to west",
            metre::get(pit.length),
            Unit::Metre,
            "excavation.length",
        ),
        row(
            "Pit, north to south",
            metre::get(pit.width),
            Unit::Metre,
            "excavation.width",
        ),
        row(
            "Pit, depth",
            metre::get(pit.depth),
            Unit::Metre,
            "excavation.depth",
        ),
        row(
            "Ground to dig",
            cubic_metre::get(pit.volume),
            Unit::CubicMetre,
            "excavation.volume",
        ),
        row(
            "Heap of spoil, loosened",
            cubic_metre::get(pit.spoil_volume),
            Unit::CubicMetre,
            "excavation.spoil_volume",
        ),
        row(
            "Spoil at least this far from the edge",
            metre::get(pit.spoil_distance),
            Unit::Metre,
            "excavation.spoil_distance",
        ),
        row(
            "Barrow loads",
            f64::from(pit.barrow_loads),
            Unit::Count,
            "excavation.barrow_loads",
        ),
        row(
            "Hours of digging",
            pit.digging_h,
            Unit::Hour,
            "excavation.digging",
        ),
    ]
}

fn footing(design: &Design) -> Vec<Row> {
    let block = &design.block;
    let stiffness = &design.ground_stiffness;
    vec![
        row(
            "Block, east to west",
            metre::get(block.length),
            Unit::Metre,
            "block.length",
        ),
        row(
            "Block, north to south",
            metre::get(block.width),
            Unit::Metre,
            "block.width",
        ),
        row(
            "Block, depth of its base",
            metre::get(block.depth),
            Unit::Metre,
            "block.depth",
        ),
        row(
            "Concrete in place",
            cubic_metre::get(block.volume),
            Unit::CubicMetre,
            "block.volume",
        ),
        row(
            "Concrete to order",
            cubic_metre::get(block.order_volume),
            Unit::CubicMetre,
            "block.order_volume",
        ),
        row(
            "Mass of the block",
            kilogram::get(block.mass),
            Unit::Kilogram,
            "block.mass",
        ),
        row(
            "Largest pressure under it",
            kilopascal::get(block.bearing_pressure),
            Unit::Kilopascal,
            "block.bearing_pressure",
        ),
        row(
            "Days before drilling",
            day::get(block.drill_after),
            Unit::Day,
            "block.drill_after",
        ),
        row(
            "Days before full load",
            day::get(block.load_after),
            Unit::Day,
            "block.load_after",
        ),
        (
            "Ground against rocking, east–west".into(),
            stiffness
                .typical
                .rocking_y
                .map(|k| newton_metre_per_radian::get(k) / 1e6),
            Unit::MeganewtonMetrePerRadian,
            "ground_stiffness.rocking_y",
        ),
        (
            "Ground against rocking, north–south".into(),
            stiffness
                .typical
                .rocking_x
                .map(|k| newton_metre_per_radian::get(k) / 1e6),
            Unit::MeganewtonMetrePerRadian,
            "ground_stiffness.rocking_x",
        ),
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
        "The same on the chip",
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
