//! The number of common practice on the stud of common practice.

use serde::Serialize;

use super::{HANDED_ON, Reader, Reading};
use crate::brief::Brief;
use crate::figure::{
    Kilonewton, Megapascal, Millimetre, Newton, NewtonMetre, One, SquareMillimetre, Unit, Units,
};
use crate::notes::{Notes, Working};
use crate::rules::threads;
use crate::rules::vdi_2230_2015 as tightening;
use crate::site_plan::anchors::{Coating, Lubrication, Size, StrengthClass};
use crate::stages::anchors::torque::Screw;
use crate::stock::Stock;
use crate::units::{
    Area, Force, Length, Moment, Pressure, STANDARD_GRAVITY_M_S2, kilonewton, megapascal,
    newton_metre, square_millimetre,
};

/// A long wrench, m.
const WRENCH_M: f64 = 0.5;

/// The number of common practice on the stud of common practice, beside the plan's own.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Lesson {
    /// The stud in words.
    pub stud: &'static str,
    /// The same with its article.
    #[serde(skip)]
    pub a_stud: &'static str,
    /// Its diameter.
    #[serde(skip)]
    pub diameter: Length,
    /// Its stress area.
    #[serde(rename = "stress_area_mm2", with = "square_millimetre")]
    pub stress_area: Area,
    /// Its proof load.
    #[serde(rename = "proof_kn", with = "kilonewton")]
    pub proof: Force,
    /// Stress at its proof load.
    #[serde(rename = "proof_mpa", with = "megapascal")]
    pub proof_stress: Pressure,
    /// Its least breaking load.
    #[serde(rename = "breaking_kn", with = "kilonewton")]
    pub breaking: Force,
    /// Nut factor, typical, of a zinc-plated thread with a light oil.
    pub nut_factor: f64,
    /// The number in newton metres, pound-force feet and kilogram-force metres.
    pub readings: Vec<Reading>,
    /// The plan's own stud at the plan's torque.
    pub own: Reading,
    /// The plan's stud in words.
    pub own_stud: String,
    /// Proof load of the plan's stud.
    #[serde(rename = "own_proof_kn", with = "kilonewton")]
    pub own_proof: Force,
    /// Why one of the readings can be and the others cannot.
    pub says: Vec<String>,
}

/// The common number on the common stud, beside the plan's own.
pub(in crate::stages::anchors::torque) fn lesson(
    brief: &Brief,
    screw: &Screw,
    used: Moment,
    high: Moment,
) -> Lesson {
    let usual = Usual::of(brief.anchors.size.value.stock());
    let (thread, steel) = (
        threads::thread(usual.size),
        threads::steel(usual.class, usual.size),
    );
    let common = Screw::with(
        &thread,
        &steel,
        tightening::scatter::nut_factor(Lubrication::Oiled, Coating::Zinc, false),
    );
    let reader = Reader {
        screw: &common,
        area: thread.stress_area,
        units: brief.units,
        high: None,
    };
    let readings = reader.all(HANDED_ON);
    let own_reader = Reader {
        screw,
        area: brief.anchors.thread().stress_area,
        units: brief.units,
        high: Some(high),
    };
    let said = brief.units.say(used, NewtonMetre).replace('\u{a0}', " ");
    let own = own_reader.read(newton_metre::get(used), "N m", 1.0);
    let own = Reading {
        says: own_reader.says(&said, used, own.preload),
        reading: said,
        ..own
    };
    let says = why(&usual, &common, &readings, steel.proof, brief.units);
    Lesson {
        stud: usual.stud,
        a_stud: usual.a_stud,
        diameter: thread.diameter,
        stress_area: thread.stress_area,
        proof: common.proof,
        proof_stress: steel.proof,
        breaking: common.breaking,
        nut_factor: common.nut_factor.typical,
        readings,
        own,
        own_stud: format!(
            "{} of {}",
            brief.anchors.size.value.said(),
            brief.anchors.strength_class.value.named()
        ),
        own_proof: screw.proof,
        says,
    }
}

/// The stud of common practice where a family of parts is sold.
struct Usual {
    size: Size,
    class: StrengthClass,
    stud: &'static str,
    a_stud: &'static str,
    one: &'static str,
}

impl Usual {
    fn of(stock: Stock) -> Self {
        stock.either(
            Self {
                size: Size::M16,
                class: StrengthClass::C8_8,
                stud: "M16 of class 8.8",
                a_stud: "an M16 of class 8.8",
                one: "an M16",
            },
            Self {
                size: Size::Unc5_8,
                class: StrengthClass::A193B7,
                stud: "5/8\u{2033}-11 rod of A193 B7",
                a_stud: "a 5/8\u{2033}-11 rod of A193 B7",
                one: "a 5/8\u{2033} rod",
            },
        )
    }
}

/// Why one of the readings can be, and the others cannot.
fn why(
    usual: &Usual,
    screw: &Screw,
    readings: &[Reading],
    proof_stress: Pressure,
    units: Units,
) -> Vec<String> {
    let [newtons, pounds, kilograms] = readings else {
        return Vec::new();
    };
    let kn = |force| units.say(force, Kilonewton);
    let mpa = |stress| units.say(stress, Megapascal);
    let mm = |length| units.say(length, Millimetre);
    let push = kilograms.torque / crate::units::metre::new(WRENCH_M);
    let pushed = match units {
        Units::Metric => kn(push),
        Units::Imperial => units.say(push, Newton),
    };
    let weight = units.say(
        newton_metre::get(kilograms.torque) / WRENCH_M / STANDARD_GRAVITY_M_S2,
        Unit::Kilogram,
    );
    vec![
        format!(
            "180 N m is a sound torque for the steel of {}. The pull is the torque over nut factor and diameter: with a \
             factor of {:.2} and {} it is {}, a stress of {} against {} of proof stress, {:.0} % of the proof load of {}.",
            usual.a_stud,
            screw.nut_factor.typical,
            mm(screw.diameter),
            kn(newtons.preload),
            mpa(newtons.stress),
            mpa(proof_stress),
            100.0 * newtons.proof_ratio,
            kn(screw.proof)
        ),
        format!(
            "180 lbf ft would be a third more, {} of pull and {:.0} % of the proof load: no stud breaks of it, yet with a well greased \
             thread the same torque pulls {} and goes past proof.",
            kn(pounds.preload),
            100.0 * pounds.proof_ratio,
            kn(screw.typical(pounds.torque) * (screw.nut_factor.typical / GREASED_FACTOR))
        ),
        format!(
            "180 kgf m cannot be. It would pull {}, a stress of {}, where the stud begins to stretch for good at {} and breaks at {}: {:.1} \
             times its breaking load. On a wrench of {} it would take a push of {} at the end, the weight of {weight}.",
            kn(kilograms.preload),
            mpa(kilograms.stress),
            kn(screw.proof),
            kn(screw.breaking),
            kilograms.breaking_ratio,
            units.about(WRENCH_M, Unit::Metre),
            pushed
        ),
        format!(
            "Practice tightens {} to 160 to 200 “kilos”, a torque for steel. What the steel bears is not yet what the resin may feel: between \
         two nuts, with the lower one held, the pull stays inside the plate; on grout or concrete it hangs in the bond for good. Sheets of \
         bonded studs that were read allow it {} to {}. The product’s own largest torque comes before any of these.",
            usual.one,
            units.say(READ_SHEETS_N_M.0, Unit::NewtonMetre),
            units.say(READ_SHEETS_N_M.1, Unit::NewtonMetre)
        ),
    ]
}

/// Torque of an M16 and of a rod of 5/8 in on the sheets of bonded studs that were read: the least and the most, N m, at least five diameters from
/// an edge.
const READ_SHEETS_N_M: (f64, f64) = (67.0, 81.0);
/// Nut factor of a thread with assembly paste, the low end of published tables.
const GREASED_FACTOR: f64 = 0.12;

/// The lines of calculation of the common number on the common stud.
pub(in crate::stages::anchors::torque) fn workings(lesson: &Lesson, notes: &mut Notes) {
    let names = [
        "anchors.kilos.newton_metres",
        "anchors.kilos.pound_feet",
        "anchors.kilos.kilogram_metres",
    ];
    for (id, reading) in names.into_iter().zip(&lesson.readings) {
        notes.working(
            Working::new(
                id,
                format!("Pull of {} on {}", reading.reading, lesson.a_stud),
                "F = T/(K d), σ = F/A_s against S_p",
                tightening::SHORT_FORM,
            )
            .with("T", reading.torque, NewtonMetre)
            .with("K", lesson.nut_factor, One)
            .with("d", lesson.diameter, Millimetre)
            .with("A_s", lesson.stress_area, SquareMillimetre)
            .with("σ", reading.stress, Megapascal)
            .with("S_p", lesson.proof_stress, Megapascal)
            .with("F/F_p", reading.proof_ratio, One)
            .gives("F", reading.preload, Kilonewton),
        );
    }
}
