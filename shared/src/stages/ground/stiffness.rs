//! Stiffness and weight of the ground: stated speed before blow count before soil words.

use crate::field::Path;
use crate::path;
use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{
    KilonewtonPerCubicMetre, Kilopascal, Megapascal, Metre, MetrePerSecond, One, Unit, UnitOf,
};
use crate::notes::{AssumedValue, Assumption, Line, Notes, Working};
use crate::rules::blow_count_regression::Row;
use crate::rules::brandenberg_2010::speed as brandenberg;
use crate::rules::fhwa_gec5_2017::shear_modulus as waves;
use crate::rules::kwak_2015::speed as kwak;
use crate::rules::scatter;
use crate::rules::wair_2012::blow_count;
use crate::site_plan::Site;
use crate::site_plan::site::{Season, WaveSpeedMethod};
use crate::source::Source;
use crate::stages::ground::STATED;
use crate::stages::ground::soil_table::{self, Group, SoilRow};
use crate::stages::ground::water::Water;
use crate::units::{Pressure, Spread, UnitWeight, Velocity, kilopascal, metre_per_second};

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

/// Scatter of a stated speed's logarithm, by how it was measured: between methods and between those who use them the speed
/// near the surface differs by 20 to 35 % (Garofalo and others 2016, quoted second-hand); surface waves with a report do
/// better, and a hole beside the block best.
const fn stated_sd_ln(method: Option<WaveSpeedMethod>) -> f64 {
    match method {
        None => 0.25,
        Some(WaveSpeedMethod::SurfaceWaves) => 0.18,
        Some(WaveSpeedMethod::Downhole | WaveSpeedMethod::Crosshole) => 0.12,
    }
}

/// What a wet winter may leave of a speed that was measured in a dry summer, when suction stiffens the ground: judgement.
const DRY_SUMMER_RATIO: f64 = 0.85;
/// Source of a stated speed's range.
const STATED_RANGE: Source = Source::second_hand(
    "Garofalo and others, InterPACIFIC project",
    "2016",
    "spread between methods and analysts near the surface; values by judgement",
);
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
            Some(banded(
                metre_per_second::new(speed),
                stated_band(stated, row),
            )),
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
                Some(by_words(row, speeds, water, notes)),
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
        Group::Clay | Group::Silt => blow_count::SoilKind::ClayAndSilt,
        Group::Sand => blow_count::SoilKind::Sand,
        Group::Gravel => blow_count::SoilKind::Gravel,
        Group::Rock | Group::Unfit => blow_count::SoilKind::All,
    };
    // Below the stresses of the data the formula would be stretched; the least of them is used, and stands in the working.
    let stress = kilopascal::new(kilopascal::get(water.stress).max(blow_count::LEAST_STRESS_KPA));
    let [a, b, c] = kind.coefficients();
    Line::new(
        "ground.shear_wave_speed",
        "Shear-wave speed from the blow count",
        "Vs = a N60^b σ'v^c",
        blow_count::SOURCE,
    )
    .with("N60", blows, One)
    .with("σ'v", stress, Kilopascal)
    .with("a", a, One)
    .with("b", b, One)
    .with("c", c, One)
    .gives("Vs", MetrePerSecond, |(blows, stress, ..)| {
        blow_count::shear_wave_speed(kind, blows, stress)
    })
    .noted(notes)
}

/// Low and high over a stated speed.
fn stated_band(stated: &Site, row: &SoilRow) -> [f64; 2] {
    let factor = scatter::worst_ratio(stated_sd_ln(stated.shear_wave_speed_method));
    // Clean gravel and rock have no suction to lose.
    let dries = !matches!(row.group, Group::Gravel | Group::Rock);
    let season = match stated.shear_wave_speed_season {
        Some(Season::DrySummer) if dries => DRY_SUMMER_RATIO,
        _ => 1.0,
    };
    [season / factor, factor]
}

/// Speeds of the table, less what water and a lesser depth take.
fn by_words(
    row: &SoilRow,
    [low, typical, high]: [f64; 3],
    water: &Water,
    notes: &mut Notes,
) -> Spread<Velocity> {
    let left = Line::new(
        "ground.stress_factor",
        "Share of the shear-wave speed left by water and by a shallow base",
        "Vs/Vs₀ = (σ'/σ'₀)^c₂, c₂ 0.164 in clay, 0.231 in silt, 0.236 in sand, 0.285 in gravel",
        if row.group == Group::Gravel {
            kwak::SOURCE
        } else {
            brandenberg::SOURCE
        },
    )
    .with("σ'", water.stress, Kilopascal)
    .with("z", water.depth, Metre)
    .with("σ'₀", water.table_stress, Kilopascal)
    .gives("Vs/Vs₀", One, |(stress, _, of_table)| {
        stress_ratio(row.group, stress, of_table)
    });
    let factor = left.value;
    if factor < 1.0 {
        notes.working(left.working);
    }
    Spread { low, typical, high }.map(|speed| metre_per_second::new(speed * factor))
}

/// The speed at the stress beside the block over that of the table.
fn stress_ratio(group: Group, stress: Pressure, of_table: Pressure) -> f64 {
    let by = |row: Row| row.stress_ratio(stress, of_table);
    let ratio = match group {
        Group::Clay => by(brandenberg::SoilKind::Clay.row()),
        Group::Silt => by(brandenberg::SoilKind::Silt.row()),
        Group::Sand => by(brandenberg::SoilKind::Sand.row()),
        Group::Gravel => by(kwak::SoilKind::Gravel.row()),
        Group::Rock | Group::Unfit => 1.0,
    };
    ratio.min(1.0)
}

/// The speed's own line, where no formula has written one.
fn speed_line(brief: &Brief, from: StiffnessFrom, speed: Velocity, notes: &mut Notes) {
    let row = soil_table::row(brief.site.soil.value);
    let (title, formula, source) = match from {
        StiffnessFrom::StatedSpeed => (
            "Shear-wave speed, as stated; low and high are shares of it",
            "Vs stated",
            STATED,
        ),
        StiffnessFrom::SoilWords => (
            "Shear-wave speed, typical for this soil",
            "Vs from the table of soils, × Vs/Vs₀",
            row.cited(),
        ),
        StiffnessFrom::BlowCount | StiffnessFrom::Nothing => return,
    };
    let mut line = Working::new("ground.shear_wave_speed", title, formula, source);
    if let (StiffnessFrom::SoilWords, Some([low, typical, high])) = (from, row.speed_m_s) {
        line = line
            .with("Vs 5 % in the table", low, Unit::MetrePerSecond)
            .with("Vs typical in the table", typical, Unit::MetrePerSecond)
            .with("Vs 95 % in the table", high, Unit::MetrePerSecond);
    }
    if from == StiffnessFrom::StatedSpeed {
        let [low, high] = stated_band(&brief.site.stated, &row);
        line = line.with("low / Vs", low, One).with("high / Vs", high, One);
    }
    notes.working(line.gives("Vs", speed, MetrePerSecond));
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
    if from == StiffnessFrom::StatedSpeed {
        stated_range(brief, speed, notes);
    }
    Line::new(
        "ground.shear_modulus",
        "Shear modulus of the ground at small strain, typical",
        "G = (γ/g) Vs²",
        waves::SOURCE,
    )
    .with("γ", weight, KilonewtonPerCubicMetre)
    .with("Vs", speed.typical, MetrePerSecond)
    .gives("G", Megapascal, |(weight, speed)| {
        waves::shear_modulus(weight, speed)
    })
    .note(notes);
    let say = |modulus| brief.units.say(modulus, Megapascal);
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
                "from the kind of soil ({}); from that alone the ground may be nearly three times softer or stiffer, and the \
                 lean test settles it: {band}",
                soil_table::words(brief.site.soil.value)
            ),
            soil_table::SOURCE,
        ),
    };
    assume(
        notes,
        path!(site.shear_wave_speed_m_s),
        speed.typical,
        MetrePerSecond,
        why,
        source,
    );
}

/// The range of a stated speed, and what was taken where nobody said how it was measured.
fn stated_range(brief: &Brief, speed: Spread<Velocity>, notes: &mut Notes) {
    let method = brief.site.stated.shear_wave_speed_method;
    let sd = stated_sd_ln(method);
    notes.working(
        Working::new(
            "ground.shear_wave_speed_range",
            "Shear-wave speed that one measurement in twenty would not reach",
            "Vs,low = Vs exp(−1.645 s), in a dry summer × 0.85",
            STATED_RANGE,
        )
        .with("s", sd, One)
        .with("Vs", speed.typical, MetrePerSecond)
        .gives("Vs,low", speed.low, MetrePerSecond),
    );
    if method.is_none() {
        notes.assumptions.push(Assumption {
            field: path!(site.shear_wave_speed_method),
            value: AssumedValue::Text("good to a quarter either way".into()),
            unit: Unit::One,
            why: "it is not known how the speed was measured; methods and those who use them differ by 20 to 35 % in the top metre".into(),
            effect: "the worst of every tilt; surface waves with a report narrow it, a hole at the pier more so".into(),
            source: STATED_RANGE,
        });
    }
}

fn assume<Q>(
    notes: &mut Notes,
    field: Path,
    quantity: Q,
    unit: impl UnitOf<Q>,
    why: String,
    source: Source,
) {
    notes.assumptions.push(Assumption {
        field,
        value: AssumedValue::Number(unit.count(quantity)),
        unit: unit.unit(),
        why,
        effect: "every tilt and frequency: the ground's stiffness goes with its square; a measured speed narrows the band".into(),
        source,
    });
}
