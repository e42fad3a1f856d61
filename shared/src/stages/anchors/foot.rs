//! The column's foot: the plate between wall and studs, its weld, the stand-off, the pressure.

use crate::figure::{Kilonewton, KilonewtonMetre, Megapascal, Millimetre, One, Unit};
use crate::notes::{Check, Notes, Working};
use crate::paths;
use crate::rules::aisc_360_16;
use crate::rules::en_1993_1_8_2005::{base_plate, t_stub, weld};
use crate::site_plan::Code;
use crate::source::Source;
use crate::stages::anchors::actions::Factored;
use crate::stages::anchors::forces;
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::Situation;
use crate::stages::anchors::verdict::{Trial, Verdict};
use crate::stages::steel::Grade;
use crate::units::{Force, Length, Moment, kilonewton, megapascal, millimetre, newton_per_metre};

/// Stand-off in diameters that is common without further thought, and the most that this tool judges.
const STAND_OFF: Source = Source::second_hand(
    "AASHTO and guides to monopole bases",
    "",
    "exposed stud at most one diameter",
);

/// Holds plate, weld, stand-off and concrete against what they carry.
pub fn checks(situation: &Situation, verdict: Option<&Verdict>, notes: &mut Notes) {
    if let Some(verdict) = verdict {
        plate(situation, verdict, notes);
        welded(situation, verdict, notes);
        pressure(situation, verdict, notes);
    }
    stand_off(situation, notes);
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
    let yields = Grade::of(pier.steel.value).yield_strength(pier.plate_thickness.value);
    let plastic = t_stub::plastic_moment(length, pier.plate_thickness.value, yields);
    let (capacity, formula) = plate_capacity(situation, plastic, lever, strip.outer, length);
    let stud = t_stub::two_studs(situation.thread.stress_area, situation.steel.ultimate) / 2.0;
    let of = |trial: &Trial| {
        if trial.forces.greatest() > trial.forces.push() {
            trial.forces.greatest()
        } else {
            trial.forces.push()
        }
    };
    let Some(worst) = verdict.worst_by(|trial| kilonewton::get(of(trial))) else {
        return;
    };
    let demand = of(worst);
    notes.check(
        Check::at_most(
            "anchors.plate",
            "Is the base plate strong enough in bending?", demand, capacity, Kilonewton,
            t_stub::T_STUB,
        )
        .note(format!(
            "Governing load: {}, at the worst stud. Stillness needs a thicker plate than strength: a plate as thick as the studs, and at least {}, \
                 is common. Stiffeners are not counted; they make it stiffer.",
            worst.action.title,
            situation.brief.units.either("20\u{a0}mm", "¾\u{a0}in")
        ))
        .moved_by(paths![pier.plate_thickness_mm, anchors.circle_diameter_mm, pier.outside_diameter_mm, pier.steel]),
    );
    notes.working(
        Working::new(
            "anchors.plate",
            "Plate between wall and one stud",
            formula,
            t_stub::T_STUB,
        )
        .with("m", lever, Millimetre)
        .with("l_eff", length, Millimetre)
        .with("t", pier.plate_thickness.value, Millimetre)
        .with("f_y", yields, Megapascal)
        .with("F_t", stud, Kilonewton)
        .gives("F", capacity, Kilonewton),
    );
    notes.working(
        Working::new(
            "anchors.prying",
            "Prying of the plate's edge on the grout",
            "T'/T = 1 + Q/T; over an open gap nothing pries",
            crate::rules::prying::PRYING,
        )
        .with("b'", strip.inner, Millimetre)
        .with("a'", strip.outer, Millimetre)
        .gives("T'/T", worst.forces.prying_factor, One),
    );
}

/// Resistance of the plate at one stud, half of a T-stub with two: without prying one yield line at the wall; where the edge
/// pries on the grout the lesser of the modes; and never more than the studs.
fn plate_capacity(
    situation: &Situation,
    plastic: Moment,
    lever: Length,
    edge: Length,
    length: Length,
) -> (Force, &'static str) {
    let (thread, pier) = (&situation.thread, &situation.brief.pier);
    let stretched = t_stub::stretched_length(
        thread.diameter,
        pier.gap.value,
        pier.plate_thickness.value,
        thread.washer_thickness,
        thread.nut_height,
    );
    let limit = t_stub::prying_limit(
        lever,
        thread.stress_area,
        length,
        pier.plate_thickness.value,
    );
    let two_studs = t_stub::two_studs(thread.stress_area, situation.steel.ultimate);
    if situation.seat == Seat::Bedded && stretched <= limit {
        (
            t_stub::half_prying(plastic, lever, edge, two_studs),
            "F = ½ min(4 M_pl/m; (2 M_pl + n 2F_t)/(m + n); 2F_t), M_pl = 0.25 l_eff t² f_y",
        )
    } else {
        (
            t_stub::half_without_prying(plastic, lever, two_studs),
            "F = ½ min(2 M_pl/m; 2F_t), M_pl = 0.25 l_eff t² f_y, m = e − 0.8 a √2",
        )
    }
}

/// The fillet weld round the column's foot.
fn welded(situation: &Situation, verdict: &Verdict, notes: &mut Notes) {
    let pier = &situation.brief.pier;
    let Grade {
        ultimate,
        correlation,
        ..
    } = Grade::of(pier.steel.value);
    let (capacity, source) = match situation.brief.code.value {
        Code::Eurocode => (
            weld::resistance(weld::strength(ultimate, correlation), pier.weld_leg.value),
            weld::STRENGTH,
        ),
        Code::Aci => (
            aisc_360_16::weld::resistance(
                megapascal::new(aisc_360_16::weld::ELECTRODE_MPA),
                pier.weld_leg.value,
            ),
            aisc_360_16::weld::STRENGTH,
        ),
    };
    let per_mm = |line| newton_per_metre::get(line) / 1000.0;
    let radius = pier.outside_diameter.value / 2.0;
    let of = |acts: &Factored| {
        per_mm(weld::line_force(
            acts.moment,
            acts.weight,
            acts.shear,
            radius,
        ))
    };
    let Some(worst) = verdict.worst_by(|trial| of(&trial.factored)) else {
        return;
    };
    let demand = of(&worst.factored);
    notes.check(
        Check::at_most("anchors.weld", "Is the weld at the base plate strong enough?", demand, per_mm(capacity), Unit::NewtonPerMillimetre, source)
            .note(format!(
                "Governing load: {}. A fillet all round, made by a qualified welder; faced flat afterwards, since welding draws the plate.",
                worst.action.title
            ))
            .moved_by(paths![pier.weld_leg_mm, pier.outside_diameter_mm, pier.steel]),
    );
    notes.working(
        Working::new(
            "anchors.weld",
            "Line force in the weld",
            "√[(M/(πr²) + N/(2πr))² + (V/(πr))²] against a f_u/(√3 β_w γ_M2), or 0.75 · 0.6 F_EXX a",
            weld::LINE,
        )
        .with("r", pier.outside_diameter.value / 2.0, Millimetre)
        .with("β_w", correlation, One)
        .with("F_w,Rd", per_mm(capacity), Unit::NewtonPerMillimetre)
        .with("M", worst.factored.moment, KilonewtonMetre)
        .with("N", worst.factored.weight, Kilonewton)
        .with("V", worst.factored.shear, Kilonewton)
        .gives("F_w,Ed", demand, Unit::NewtonPerMillimetre),
    );
}

/// What the plate presses on.
fn pressure(situation: &Situation, verdict: &Verdict, notes: &mut Notes) {
    let of = |trial: &Trial| trial.forces.pressure.map_or(0.0, megapascal::get);
    let Some(worst) = verdict.worst_by(of) else {
        return;
    };
    let Some(pressure) = worst.forces.pressure else {
        return;
    };
    let capacity = base_plate::bearing(situation.strength, 1.5);
    notes.check(
        Check::at_most(
            "anchors.bearing",
            "Can grout and concrete bear the plate's pressure?", pressure, capacity, Megapascal,
            base_plate::PRESSURE,
        )
        .note(format!(
            "Governing load: {}. The grout must be at least as strong as the concrete, and fill the whole plate without a void.",
            worst.action.title
        ))
        .moved_by(paths![pier.plate_side_mm, pier.plate_thickness_mm, block.concrete]),
    );
    if let Some(pressed) = worst.forces.pressed {
        notes.working(
            Working::new(
                "anchors.neutral_axis",
                format!("Length of plate that presses under {}", worst.action.title),
                "Σ N = N_Ed, Σ M = M_Ed with a plane plate and no pull in the concrete",
                crate::rules::stud_group::NEUTRAL_AXIS,
            )
            .with("σ", pressure, Megapascal)
            .gives("x", pressed, Millimetre),
        );
    }
}

/// Free length of stud between concrete and lower nut.
fn stand_off(situation: &Situation, notes: &mut Notes) {
    let Some(gap) = situation.open_gap() else {
        return;
    };
    let thread = &situation.thread;
    let nut = if situation.seat == Seat::Nuts {
        thread.nut_height + thread.washer_thickness
    } else {
        millimetre::new(0.0)
    };
    let exposed = (gap - nut).max(millimetre::new(0.0));
    notes.check(
        Check::at_most(
            "anchors.stand_off",
            "Is the gap under the plate at most one stud diameter?",
            exposed,
            thread.diameter,
            Millimetre,
            STAND_OFF,
        )
        .note("Beyond one diameter the studs bend like stilts: lower the plate, or grout it. Bending is checked in any case.")
        .moved_by(paths![pier.gap_mm, anchors.size, pier.levelling]),
    );
}
