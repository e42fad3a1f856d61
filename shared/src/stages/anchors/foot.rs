//! The column's foot: the plate between wall and studs, its weld, what tightening bends, the stand-off, the pressure.

use serde::Serialize;

use crate::figure::Unit;
use crate::notes::{Check, Notes, Working};
use crate::rules::aisc_360_16;
use crate::rules::annular_plate::{self, Dish};
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::en_1993_1_8_2005::{base_plate, t_stub, weld};
use crate::site_plan::Code;
use crate::site_plan::pier::Steel;
use crate::source::{Source, Standing};
use crate::stages::anchors::forces;
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::Situation;
use crate::stages::anchors::verdict::Verdict;
use crate::stages::joint;
use crate::units::{Force, Length, Moment, Pressure, Spread, kilonewton, megapascal, millimetre, newton_per_metre};

/// Peaks near a single stud against the mean round the wall, and what a thick plate adds beyond thin-plate theory: the
/// theory met finite elements within 20 % between 12 and 30 mm.
const PEAK_FACTOR: f64 = 1.25;
/// Share of the yield strength that deliberate bending may use.
const ELASTIC_SHARE_RATIO: f64 = 0.8;
/// Stand-off in diameters that is common without further thought, and the most that this tool judges.
const STAND_OFF: Source = Source::new("AASHTO and guides to monopole bases", "", "exposed stud at most one diameter", Standing::SecondHand);

/// What tightening bends, written with the anchors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Flexure {
    /// Movement of the plate at the studs.
    #[serde(rename = "plate_mm", serialize_with = "millimetre::serialize")]
    pub plate: Length,
    /// Slope where plate and wall meet, radians.
    pub slope_ratio: f64,
    /// Bending stress in the wall.
    #[serde(rename = "wall_stress_mpa", serialize_with = "megapascal::serialize")]
    pub wall_stress: Pressure,
    /// Bending stress in the plate.
    #[serde(rename = "plate_stress_mpa", serialize_with = "megapascal::serialize")]
    pub plate_stress: Pressure,
    /// Yield strength of both.
    #[serde(rename = "yield_mpa", serialize_with = "megapascal::serialize")]
    pub yield_strength: Pressure,
    /// Height of wall that takes part: half a wave of its decay.
    #[serde(rename = "wall_height_mm", serialize_with = "millimetre::serialize")]
    pub wall_height: Length,
    /// How far the lower nuts may be off a plane before the wall reaches half its yield strength.
    #[serde(rename = "nut_gap_mm", serialize_with = "millimetre::serialize")]
    pub nut_gap: Length,
}

/// Yield and ultimate strength of a grade, and its weld's correlation factor.
fn grade(steel: Steel) -> (Pressure, Pressure, f64) {
    let (yields, breaks, correlation) = match steel {
        Steel::S235 => (235.0, 360.0, 0.80),
        Steel::S275 => (275.0, 430.0, 0.85),
        Steel::S355 => (355.0, 490.0, 0.90),
    };
    (megapascal::new(yields), megapascal::new(breaks), correlation)
}

/// Finds what the preload bends, and holds plate, wall, weld, stand-off and concrete against what they carry.
pub fn find(situation: &Situation, preload: Spread<Force>, verdict: Option<&Verdict>, notes: &mut Notes) -> Option<Flexure> {
    if let Some(verdict) = verdict {
        plate(situation, verdict, notes);
        welded(situation, verdict, notes);
        pressure(situation, verdict, notes);
    }
    stand_off(situation, notes);
    flexure(situation, preload, notes)
}

/// The plate at its most pulled stud, as an equivalent T-stub.
fn plate(situation: &Situation, verdict: &Verdict, notes: &mut Notes) {
    let pier = &situation.brief.pier;
    let strip = forces::strip(situation);
    let radius = situation.brief.anchors.circle_diameter.value / 2.0;
    let raw = t_stub::lever(radius, pier.outside_diameter.value, pier.weld_leg.value);
    let lever = millimetre::new(millimetre::get(raw).max(1.0));
    let count = situation.brief.anchors.count.value;
    let neighbour = radius * (2.0 * (std::f64::consts::PI / count).sin());
    let length = t_stub::effective_length(lever, strip.outer, neighbour);
    let yields = material::yield_strength(grade(pier.steel.value).0, pier.plate_thickness.value);
    let plastic = t_stub::plastic_moment(length, pier.plate_thickness.value, yields);
    let (capacity, formula) = plate_capacity(situation, plastic, lever, strip.outer, length);
    let demand = if verdict.forces.greatest() > verdict.forces.push() { verdict.forces.greatest() } else { verdict.forces.push() };
    notes.check(
        Check::at_most(
            "anchors.plate",
            "Base plate between wall and studs",
            kilonewton::get(demand),
            kilonewton::get(capacity),
            Unit::Kilonewton,
            t_stub::T_STUB,
        )
        .note(format!(
            "At the worst stud under {}. Stillness asks more of the plate than strength: a plate as thick as the studs, and at least {}, \
                 is common. Ribs are not counted; they make it stiffer.",
            verdict.action.title,
            situation.brief.units.either("20\u{a0}mm", "¾\u{a0}in")
        ))
        .moved_by(&["pier.plate_thickness_mm", "anchors.circle_diameter_mm", "pier.outside_diameter_mm", "pier.steel"]),
    );
    notes.working(
        Working::new("anchors.plate", "Plate between wall and one stud", formula, t_stub::T_STUB)
            .with("m", millimetre::get(lever), Unit::Millimetre)
            .with("l_eff", millimetre::get(length), Unit::Millimetre)
            .with("t", millimetre::get(pier.plate_thickness.value), Unit::Millimetre)
            .with("f_y", megapascal::get(yields), Unit::Megapascal)
            .gives("F", kilonewton::get(capacity), Unit::Kilonewton),
    );
    notes.working(
        Working::new(
            "anchors.prying",
            "Prying of the plate's edge on the grout",
            "T'/T = 1 + Q/T; over an open gap nothing pries",
            crate::rules::prying::PRYING,
        )
        .with("b'", millimetre::get(strip.inner), Unit::Millimetre)
        .with("a'", millimetre::get(strip.outer), Unit::Millimetre)
        .gives("T'/T", verdict.forces.prying_factor, Unit::One),
    );
}

/// Resistance of the plate at one stud: without prying two yield lines' moment; where the edge pries on the grout the
/// lesser of the modes.
fn plate_capacity(situation: &Situation, plastic: Moment, lever: Length, edge: Length, length: Length) -> (Force, &'static str) {
    let (thread, pier) = (&situation.thread, &situation.brief.pier);
    let stretched =
        t_stub::stretched_length(thread.diameter, pier.gap.value, pier.plate_thickness.value, thread.washer_thickness, thread.nut_height);
    let limit = t_stub::prying_limit(lever, thread.stress_area, length, pier.plate_thickness.value);
    if situation.seat == Seat::Bedded && stretched <= limit {
        let stud = thread.stress_area * situation.steel.ultimate * (0.9 / 1.25);
        let (first, second) = (t_stub::mode_1(plastic, lever), t_stub::mode_2(plastic, lever, edge, stud));
        let least = if first < second { first } else { second };
        (if least < stud { least } else { stud }, "F = min(4 M_pl/m; (2 M_pl + n F_t)/(m + n); F_t), M_pl = 0.25 l_eff t² f_y")
    } else {
        (t_stub::without_prying(plastic, lever), "F = 2 M_pl/m, M_pl = 0.25 l_eff t² f_y, m = e − 0.8 a √2")
    }
}

/// The fillet weld round the column's foot.
fn welded(situation: &Situation, verdict: &Verdict, notes: &mut Notes) {
    let pier = &situation.brief.pier;
    let (_, ultimate, correlation) = grade(pier.steel.value);
    let (capacity, source) = match situation.brief.code.value {
        Code::Eurocode => (weld::resistance(weld::strength(ultimate, correlation), pier.weld_leg.value), weld::STRENGTH),
        Code::Aci => (
            aisc_360_16::weld::resistance(megapascal::new(aisc_360_16::weld::ELECTRODE_MPA), pier.weld_leg.value),
            aisc_360_16::weld::STRENGTH,
        ),
    };
    let action = &verdict.factored;
    let demand = weld::line_force(action.moment, action.weight, action.shear, pier.outside_diameter.value / 2.0);
    let per_mm = |line| newton_per_metre::get(line) / 1000.0;
    notes.check(
        Check::at_most(
            "anchors.weld",
            "Weld between column and base plate",
            per_mm(demand),
            per_mm(capacity),
            Unit::NewtonPerMillimetre,
            source,
        )
        .note("A fillet all round, made by a qualified welder; faced flat afterwards, since welding draws the plate.")
        .moved_by(&["pier.weld_leg_mm", "pier.outside_diameter_mm", "pier.steel"]),
    );
    notes.working(
        Working::new(
            "anchors.weld",
            "Line force in the weld",
            "√[(M/(πr²) + N/(2πr))² + (V/(πr))²] against a f_u/(√3 β_w γ_M2), or 0.75 · 0.6 F_EXX a",
            weld::LINE,
        )
        .with("r", millimetre::get(pier.outside_diameter.value) / 2.0, Unit::Millimetre)
        .with("β_w", correlation, Unit::One)
        .with("F_w,Rd", per_mm(capacity), Unit::NewtonPerMillimetre)
        .gives("F_w,Ed", per_mm(demand), Unit::NewtonPerMillimetre),
    );
}

/// What the plate presses on.
fn pressure(situation: &Situation, verdict: &Verdict, notes: &mut Notes) {
    let Some(pressure) = verdict.forces.pressure else { return };
    let capacity = base_plate::bearing(situation.strength, 1.5);
    notes.check(
        Check::at_most(
            "anchors.bearing",
            "Pressure of the base plate on grout and concrete",
            megapascal::get(pressure),
            megapascal::get(capacity),
            Unit::Megapascal,
            base_plate::PRESSURE,
        )
        .note("The grout must be at least as strong as the concrete, and fill the whole plate without a void.")
        .moved_by(&["pier.plate_side_mm", "pier.plate_thickness_mm", "block.concrete"]),
    );
    if let Some(pressed) = verdict.forces.pressed {
        notes.working(
            Working::new(
                "anchors.neutral_axis",
                "Length of plate that presses under the worst action",
                "Σ N = N_Ed, Σ M = M_Ed with a plane plate and no pull in the concrete",
                crate::rules::stud_group::NEUTRAL_AXIS,
            )
            .with("σ", megapascal::get(pressure), Unit::Megapascal)
            .gives("x", millimetre::get(pressed), Unit::Millimetre),
        );
    }
}

/// Free length of stud between concrete and lower nut.
fn stand_off(situation: &Situation, notes: &mut Notes) {
    let Some(gap) = situation.open_gap() else { return };
    let thread = &situation.thread;
    let nut = if situation.seat == Seat::Nuts { thread.nut_height + thread.washer_thickness } else { millimetre::new(0.0) };
    let exposed = millimetre::get(gap - nut).max(0.0);
    notes.check(
        Check::at_most(
            "anchors.stand_off",
            "Bare stud between concrete and plate",
            exposed,
            millimetre::get(thread.diameter),
            Unit::Millimetre,
            STAND_OFF,
        )
        .note("Beyond one diameter the studs bend like stilts: lower the plate, or grout it. Bending is checked in any case.")
        .moved_by(&["pier.gap_mm", "anchors.size", "pier.levelling"]),
    );
}

/// What tightening bends: on nuts nothing but what the nuts are off a plane; without lower nuts the whole preload.
fn flexure(situation: &Situation, preload: Spread<Force>, notes: &mut Notes) -> Option<Flexure> {
    let brief = situation.brief;
    let plate = joint::plate(brief);
    let pull = if situation.seat == Seat::Dished { preload.high } else { crate::units::newton::new(1000.0) };
    let dish = annular_plate::dish(&plate, brief.anchors.number(), pull)?;
    let yield_strength = material::yield_strength(grade(brief.pier.steel.value).0, brief.pier.plate_thickness.value);
    let peak = |stress: Pressure| stress * PEAK_FACTOR;
    // A nut that is off by δ bends the wall as if the whole ring were: the stress grows with δ.
    let per_mm = megapascal::get(peak(dish.wall_stress)) / millimetre::get(dish.at_studs);
    if !(per_mm > 0.0 && per_mm.is_finite()) {
        return None;
    }
    let found = Flexure {
        plate: if situation.seat == Seat::Dished { dish.at_studs } else { millimetre::new(0.0) },
        slope_ratio: if situation.seat == Seat::Dished { dish.slope_ratio } else { 0.0 },
        wall_stress: if situation.seat == Seat::Dished { peak(dish.wall_stress) } else { megapascal::new(0.0) },
        plate_stress: if situation.seat == Seat::Dished { peak(dish.plate_stress) } else { megapascal::new(0.0) },
        yield_strength,
        wall_height: crate::units::metre::new(std::f64::consts::PI / annular_plate::wall_decay(plate.wall_radius, plate.wall)),
        nut_gap: millimetre::new(0.5 * megapascal::get(yield_strength) / per_mm),
    };
    flexure_notes(situation, &found, &dish, notes);
    Some(found)
}

/// Preload at which plate or wall is bent as far as deliberate bending may go; where the plate rests under the column alone.
#[must_use]
pub fn most_preload(situation: &Situation) -> Option<Force> {
    let one = crate::units::newton::new(1000.0);
    let dish = annular_plate::dish(&joint::plate(situation.brief), situation.brief.anchors.number(), one)?;
    let pier = &situation.brief.pier;
    let capacity = material::yield_strength(grade(pier.steel.value).0, pier.plate_thickness.value) * ELASTIC_SHARE_RATIO;
    let worst = megapascal::get(dish.wall_stress).max(megapascal::get(dish.plate_stress)) * PEAK_FACTOR;
    (worst > 0.0).then(|| one * (megapascal::get(capacity) / worst))
}

fn flexure_notes(situation: &Situation, found: &Flexure, dish: &Dish, notes: &mut Notes) {
    let brief = situation.brief;
    notes.working(
        Working::new(
            "anchors.nut_gap",
            "How far a lower nut may be off the plane of the others",
            "gap at which the wall's bending reaches half its yield strength",
            annular_plate::PLATE,
        )
        .with("f_y", megapascal::get(found.yield_strength), Unit::Megapascal)
        .gives("δ", millimetre::get(found.nut_gap), Unit::Millimetre),
    );
    if situation.seat != Seat::Dished {
        return;
    }
    let capacity = megapascal::get(found.yield_strength) * ELASTIC_SHARE_RATIO;
    let fields: &[&str] =
        &["anchors.torque_n_m", "pier.plate_thickness_mm", "pier.wall_mm", "anchors.circle_diameter_mm", "anchors.lower_nuts"];
    for (id, title, stress) in [
        ("anchors.flexure_wall", "Bending of the foot of the column's wall by tightening", found.wall_stress),
        ("anchors.flexure_plate", "Bending of the base plate by tightening", found.plate_stress),
    ] {
        notes.check(
            Check::at_most(id, title, megapascal::get(stress), capacity, Unit::Megapascal, annular_plate::PLATE)
                .note(format!(
                    "It stays elastic with a fifth of the yield strength in hand. The studs draw the plate down by {}; the bending dies out \
                     within about {} of wall. A quarter is added for peaks near single studs.",
                    brief.units.say(millimetre::get(found.plate), Unit::Millimetre),
                    brief.units.say(millimetre::get(found.wall_height), Unit::Millimetre)
                ))
                .moved_by(fields),
        );
    }
    notes.working(
        Working::new(
            "anchors.flexure",
            "Slope of plate and wall under the highest preload",
            "harmonic 0 of the plate on the edge of a long cylinder",
            annular_plate::WALL,
        )
        .with("w", millimetre::get(dish.at_studs), Unit::Millimetre)
        .with("σ_wall", megapascal::get(found.wall_stress), Unit::Megapascal)
        .with("σ_plate", megapascal::get(found.plate_stress), Unit::Megapascal)
        .gives("θ", dish.slope_ratio, Unit::One),
    );
}
