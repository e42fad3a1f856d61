//! Stiffness and weight of the ground: stated speed before blow count before soil words.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::rules::fhwa_gec5_2017::shear_modulus as waves;
use crate::rules::hardin_black_1968::modulus::{self, stress_factor};
use crate::rules::wair_2012::blow_count;
use crate::source::Source;
use crate::stages::ground::STATED;
use crate::stages::ground::soil_table::{self, Group, SoilRow};
use crate::stages::ground::water::Water;
use crate::units::{
    Pressure, Spread, UnitWeight, Velocity, kilonewton_per_cubic_metre, kilopascal, megapascal,
    metre, metre_per_second,
};

/// Where the stiffness comes from, the surest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StiffnessFrom {
    /// A stated speed of shear waves.
    StatedSpeed,
    /// A stated blow count.
    BlowCount,
    /// Soil in words.
    SoilWords,
    /// Nothing that a stiffness may be presumed from.
    Nothing,
}

/// Stiffness of the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stiffness {
    /// Where it comes from.
    pub from: StiffnessFrom,
    /// Speed of shear waves.
    pub speed: Option<Spread<Velocity>>,
    /// Small-strain shear modulus.
    pub modulus: Option<Spread<Pressure>>,
}

/// A measured speed is taken to hold within so much: it is seldom measured beside the block and at its depth, and the
/// ground dries and wets with the year.
const STATED_SPEED_BAND: [f64; 2] = [0.85, 1.15];
/// Scatter of the data about the blow count's formula.
const BLOW_COUNT_BAND: [f64; 2] = [0.77, 1.3];

/// Finds the stiffness.
pub fn stiffness(
    brief: &Brief,
    row: &SoilRow,
    weight: UnitWeight,
    water: &Water,
    notes: &mut Notes,
) -> Stiffness {
    let stated = &brief.site.stated;
    let (from, speed) = match (stated.shear_wave_speed_m_s, stated.blow_count) {
        (Some(speed), _) => (
            StiffnessFrom::StatedSpeed,
            Some(banded(metre_per_second::new(speed), STATED_SPEED_BAND)),
        ),
        (None, Some(blows)) if counts(row.group) => (
            StiffnessFrom::BlowCount,
            Some(banded(
                by_blows(row.group, blows, water, notes),
                BLOW_COUNT_BAND,
            )),
        ),
        _ => match row.speed_m_s {
            Some(speeds) => (
                StiffnessFrom::SoilWords,
                Some(by_words(row, speeds, weight, water, notes)),
            ),
            None => (StiffnessFrom::Nothing, None),
        },
    };
    let modulus = speed.map(|speed| speed.map(|speed| waves::shear_modulus(weight, speed)));
    if let (Some(speed), Some(modulus)) = (speed, modulus) {
        explain(brief, from, weight, speed, modulus, notes);
    }
    Stiffness {
        from,
        speed,
        modulus,
    }
}

/// Whether a blow count says something about the stiffness of this ground: in rock the test refuses, and in fill and peat
/// it finds what happened to lie there.
#[must_use]
pub const fn counts(group: Group) -> bool {
    !matches!(group, Group::Unfit | Group::Rock)
}

fn banded(speed: Velocity, [low, high]: [f64; 2]) -> Spread<Velocity> {
    Spread {
        low: speed * low,
        typical: speed,
        high: speed * high,
    }
}

/// Speed from the blow count, at the stress at a metre's depth.
fn by_blows(group: Group, blows: f64, water: &Water, notes: &mut Notes) -> Velocity {
    let kind = match group {
        Group::Clay | Group::Silt => blow_count::Kind::ClayAndSilt,
        Group::Sand => blow_count::Kind::Sand,
        Group::Gravel => blow_count::Kind::Gravel,
        Group::Rock | Group::Unfit => blow_count::Kind::All,
    };
    // Below the stresses of the data the formula would be stretched; the least of them is used, and stands in the working.
    let stress = kilopascal::new(kilopascal::get(water.stress).max(blow_count::LEAST_STRESS_KPA));
    let speed = blow_count::shear_wave_speed(kind, blows, stress);
    let [a, b, c] = kind.coefficients();
    notes.working(
        Working::new(
            "ground.shear_wave_speed",
            "Speed of shear waves from the blow count",
            "Vs = a N60^b σ'v^c",
            blow_count::SOURCE,
        )
        .with("N60", blows, Unit::One)
        .with("σ'v", kilopascal::get(stress), Unit::Kilopascal)
        .with("a", a, Unit::One)
        .with("b", b, Unit::One)
        .with("c", c, Unit::One)
        .gives("Vs", metre_per_second::get(speed), Unit::MetrePerSecond),
    );
    speed
}

/// Speeds of the table, less what water and a lesser depth take: all of it where grains press on grains, the low end alone
/// in clay, whose stiffness near the surface is partly suction.
fn by_words(
    row: &SoilRow,
    speeds: [f64; 3],
    weight: UnitWeight,
    water: &Water,
    notes: &mut Notes,
) -> Spread<Velocity> {
    let dry = kilonewton_per_cubic_metre::new(row.unit_weight_kn_m3);
    let factor = stress_factor(water.stress, water.table_stress);
    let wet = |speed: f64, factor: f64| {
        waves::shear_wave_speed(
            weight,
            waves::shear_modulus(dry, metre_per_second::new(speed)) * factor,
        )
    };
    let [low, typical, high] = speeds;
    let (low_factor, factor) = match row.group {
        Group::Silt | Group::Sand | Group::Gravel => (factor, factor),
        Group::Clay => (factor, 1.0),
        Group::Rock | Group::Unfit => (1.0, 1.0),
    };
    if low_factor < 1.0 {
        notes.working(
            Working::new(
                "ground.stress_factor",
                "What water, and a base less than a metre deep, leave of the ground's stiffness",
                "G/G₀ = √(σ'/σ'₀)",
                modulus::SOURCE,
            )
            .with("σ'", kilopascal::get(water.stress), Unit::Kilopascal)
            .with("z", metre::get(water.depth), Unit::Metre)
            .with("σ'₀", kilopascal::get(water.table_stress), Unit::Kilopascal)
            .gives("G/G₀", low_factor, Unit::One),
        );
    }
    if low_factor >= 1.0 && weight == dry {
        // The table's own figures, without a detour over the modulus that would change their last digit.
        return Spread { low, typical, high }.map(metre_per_second::new);
    }
    Spread {
        low: wet(low, low_factor),
        typical: wet(typical, factor),
        high: wet(high, factor),
    }
}

/// The speed's own line, where no formula has written one.
fn speed_line(brief: &Brief, from: StiffnessFrom, speed: Velocity, notes: &mut Notes) {
    let row = soil_table::row(brief.site.soil.value);
    let (title, formula, source) = match from {
        StiffnessFrom::StatedSpeed => (
            "Speed of shear waves, as stated; low and high are shares of it",
            "Vs stated",
            STATED,
        ),
        StiffnessFrom::SoilWords => (
            "Speed of shear waves, typical for the soil in words",
            "Vs from the table of soils, × √(G/G₀)",
            row.cited(),
        ),
        StiffnessFrom::BlowCount | StiffnessFrom::Nothing => return,
    };
    let mut line = Working::new("ground.shear_wave_speed", title, formula, source);
    if let (StiffnessFrom::SoilWords, Some([low, typical, high])) = (from, row.speed_m_s) {
        line = line
            .with("Vs low in the table", low, Unit::MetrePerSecond)
            .with("Vs typical in the table", typical, Unit::MetrePerSecond)
            .with("Vs high in the table", high, Unit::MetrePerSecond);
    }
    if from == StiffnessFrom::StatedSpeed {
        let [low, high] = STATED_SPEED_BAND;
        line = line
            .with("low / Vs", low, Unit::One)
            .with("high / Vs", high, Unit::One);
    }
    notes.working(line.gives("Vs", metre_per_second::get(speed), Unit::MetrePerSecond));
}

fn explain(
    brief: &Brief,
    from: StiffnessFrom,
    weight: UnitWeight,
    speed: Spread<Velocity>,
    modulus: Spread<Pressure>,
    notes: &mut Notes,
) {
    speed_line(brief, from, speed.typical, notes);
    notes.working(
        Working::new(
            "ground.shear_modulus",
            "Shear modulus of the ground at small strain, typical",
            "G = (γ/g) Vs²",
            waves::SOURCE,
        )
        .with(
            "γ",
            kilonewton_per_cubic_metre::get(weight),
            Unit::KilonewtonPerCubicMetre,
        )
        .with(
            "Vs",
            metre_per_second::get(speed.typical),
            Unit::MetrePerSecond,
        )
        .gives("G", megapascal::get(modulus.typical), Unit::Megapascal),
    );
    let say = |modulus| brief.units.say(megapascal::get(modulus), Unit::Megapascal);
    let band = format!(
        "shear modulus of {} to {}, expected {}",
        say(modulus.low),
        say(modulus.high),
        say(modulus.typical)
    );
    let (why, source) = match from {
        StiffnessFrom::StatedSpeed | StiffnessFrom::Nothing => return,
        StiffnessFrom::BlowCount => (
            format!(
                "from the blow count, at no less stress than its data have, speed within 30 % either way: {band}"
            ),
            blow_count::SOURCE,
        ),
        StiffnessFrom::SoilWords => (
            format!(
                "from the soil in words ({}), which fixes it to a factor of about two: {band}",
                soil_table::words(brief.site.soil.value)
            ),
            soil_table::SOURCE,
        ),
    };
    assume(
        notes,
        "site.shear_wave_speed_m_s",
        metre_per_second::get(speed.typical),
        Unit::MetrePerSecond,
        why,
        source,
    );
}

fn assume(
    notes: &mut Notes,
    field: &'static str,
    value: f64,
    unit: Unit,
    why: String,
    source: Source,
) {
    notes.assumptions.push(Assumption {
        field,
        value: AssumedValue::Number(value),
        unit,
        why,
        effect: "every tilt and frequency: the ground's stiffness goes with its square; a measured speed narrows the band".into(),
        source,
    });
}
