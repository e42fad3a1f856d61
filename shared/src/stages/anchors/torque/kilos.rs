//! "Kilos": three readings of one number, and what each does to this stud and to the common one.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{
    Kilonewton, Megapascal, Millimetre, NewtonMetre, One, SquareMillimetre, Unit, Units,
};
use crate::notes::{Notes, Working};
use crate::rules::threads;
use crate::rules::vdi_2230_2015 as tightening;
use crate::site_plan::anchors::{Coating, Lubrication, Size, StrengthClass};
use crate::stages::anchors::torque::Screw;
use crate::units::{
    Area, Force, Moment, Pressure, STANDARD_GRAVITY_M_S2, kilonewton, megapascal, newton_metre,
    square_millimetre,
};

/// One pound-force foot in newton metres: 4.448 221 615 260 5 N × 0.3048 m.
const POUND_FOOT_N_M: f64 = 4.448_221_615_260_5 * 0.3048;
/// The number that is handed on in "kilos", between the 160 and the 200 of common practice.
const HANDED_ON: f64 = 180.0;
/// A long wrench, m.
const WRENCH_M: f64 = 0.5;

/// One reading of a number of "kilos".
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reading {
    /// The number with the unit that it is read in.
    pub reading: String,
    /// The torque.
    #[serde(rename = "n_m", with = "newton_metre")]
    pub torque: Moment,
    /// Typical preload, were the stud unbreakable.
    #[serde(rename = "preload_kn", with = "kilonewton")]
    pub preload: Force,
    /// Stress in the stud, were it unbreakable.
    #[serde(rename = "stress_mpa", with = "megapascal")]
    pub stress: Pressure,
    /// Preload over proof load.
    pub proof_ratio: f64,
    /// Preload over breaking load.
    pub breaking_ratio: f64,
    /// What it does to this stud: a sentence that begins with the reading.
    pub says: String,
}

/// The number of common practice on the stud of common practice, beside the plan's own.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Lesson {
    /// The stud in words.
    pub stud: &'static str,
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

/// Reads numbers of "kilos" for one stud.
struct Reader<'a> {
    screw: &'a Screw,
    area: Area,
    units: Units,
    /// The highest torque that may be used, where there is one.
    high: Option<Moment>,
}

impl Reader<'_> {
    fn read(&self, number: f64, unit: &str, per_unit: f64) -> Reading {
        let torque = newton_metre::new(number * per_unit);
        let preload = self.screw.typical(torque);
        Reading {
            reading: format!("{number:.0} {unit}"),
            torque,
            preload,
            stress: preload / self.area,
            proof_ratio: (preload / self.screw.proof).value,
            breaking_ratio: (preload / self.screw.breaking).value,
            says: self.says(&format!("{number:.0} {unit}"), torque, preload),
        }
    }

    fn all(&self, number: f64) -> Vec<Reading> {
        [
            ("N m", 1.0),
            ("lbf ft", POUND_FOOT_N_M),
            ("kgf m", STANDARD_GRAVITY_M_S2),
        ]
        .into_iter()
        .map(|(unit, per_unit)| self.read(number, unit, per_unit))
        .collect()
    }

    /// What a torque does to the stud, in one or two sentences.
    fn says(&self, reading: &str, torque: Moment, preload: Force) -> String {
        let said = self.units.say(torque, NewtonMetre);
        let head = if said.replace('\u{a0}', " ") == reading {
            said
        } else {
            format!("{reading} is {said} and")
        };
        let proof_ratio = (preload / self.screw.proof).value;
        let stretched = format!(
            "{head} {} this stud with {}, {:.0} % of its proof load",
            if proof_ratio > 1.0 {
                "would stretch"
            } else {
                "stretches"
            },
            self.units.say(preload, Kilonewton),
            100.0 * proof_ratio
        );
        let breaks_ratio = (preload / self.screw.breaking).value;
        let above = self
            .high
            .is_some_and(|high| newton_metre::get(torque) > newton_metre::get(high));
        match self.high {
            _ if breaks_ratio > 1.0 => {
                format!(
                    "{stretched} and {breaks_ratio:.1} times what breaks it: the stud would tear off long before. It cannot be meant."
                )
            }
            _ if proof_ratio > 1.0 => format!("{stretched}: it would stretch for good."),
            _ if above => {
                format!("{stretched}. The steel bears it, yet it is above the limit for this plan.")
            }
            Some(_) => format!("{stretched}: within the limit for this plan."),
            None if proof_ratio > tightening::PROOF_SHARE_RATIO => {
                format!(
                    "{stretched}: above the seven tenths that leave room for the scatter of friction."
                )
            }
            None => {
                format!("{stretched}: a tight nut on steel, with room for the scatter of friction.")
            }
        }
    }
}

/// The three readings of a number: newton metres, kilogram-force metres, pound-force feet.
pub(super) fn readings(brief: &Brief, screw: &Screw, number: f64, high: Moment) -> Vec<Reading> {
    // A torque that would break the stud was most likely said in kilogram-force metres.
    let number = if number > newton_metre::get(screw.torque(screw.breaking)) {
        number / STANDARD_GRAVITY_M_S2
    } else {
        number
    };
    let mut all = Reader {
        screw,
        area: brief.anchors.thread().stress_area,
        units: brief.units,
        high: Some(high),
    }
    .all(number);
    all.swap(1, 2);
    all
}

/// The common number on the common stud, beside the plan's own.
pub(super) fn lesson(brief: &Brief, screw: &Screw, used: Moment, high: Moment) -> Lesson {
    let (thread, steel) = (
        threads::thread(Size::M16),
        threads::steel(StrengthClass::C8_8, Size::M16),
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
    let says = why(&common, &readings, steel.proof, brief.units);
    Lesson {
        stud: "M16 of class 8.8",
        stress_area: thread.stress_area,
        proof: common.proof,
        proof_stress: steel.proof,
        breaking: common.breaking,
        nut_factor: common.nut_factor.typical,
        readings,
        own,
        own_stud: format!(
            "{} of class {}",
            brief.anchors.size.value.said(),
            brief.anchors.strength_class.value.said()
        ),
        own_proof: screw.proof,
        says,
    }
}

/// Why one of the readings can be, and the others cannot.
fn why(screw: &Screw, readings: &[Reading], proof_stress: Pressure, units: Units) -> Vec<String> {
    let [newtons, pounds, kilograms] = readings else {
        return Vec::new();
    };
    let kn = |force| units.say(force, Kilonewton);
    let mpa = |stress| units.say(stress, Megapascal);
    let mm = |length| units.say(length, Millimetre);
    let push = kilograms.torque / crate::units::metre::new(WRENCH_M);
    let weight = units.say(
        newton_metre::get(kilograms.torque) / WRENCH_M / STANDARD_GRAVITY_M_S2,
        Unit::Kilogram,
    );
    vec![
        format!(
            "180 N m is a sound torque for the steel of an M16 of class 8.8. The pull is the torque over nut factor and diameter: with a \
             factor of {:.2} and {} it is {}, a stress of {} against {} of proof stress, {:.0} % of the proof load of {}.",
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
            kn(push)
        ),
        format!(
            "Practice tightens an M16 to 160 to 200 “kilos”, a torque for steel. What the steel bears is not yet what the resin may feel: between \
         two nuts, with the lower one held, the pull stays inside the plate; on grout or concrete it hangs in the bond for good. Sheets of \
         bonded studs that were read allow an M16 {} to {}. The product’s own largest torque comes before any of these.",
            units.say(READ_SHEETS_N_M.0, Unit::NewtonMetre),
            units.say(READ_SHEETS_N_M.1, Unit::NewtonMetre)
        ),
    ]
}

/// Torque of an M16 on the sheets of bonded studs that were read: the least and the most, N m, at least five diameters from
/// an edge.
const READ_SHEETS_N_M: (f64, f64) = (67.0, 81.0);
/// Nut factor of a thread with assembly paste, the low end of published tables.
const GREASED_FACTOR: f64 = 0.12;

/// The lines of calculation of the common number on the common stud.
pub(super) fn workings(lesson: &Lesson, notes: &mut Notes) {
    let names = [
        "anchors.kilos.newton_metres",
        "anchors.kilos.pound_feet",
        "anchors.kilos.kilogram_metres",
    ];
    let diameter = threads::thread(Size::M16).diameter;
    for (id, reading) in names.into_iter().zip(&lesson.readings) {
        notes.working(
            Working::new(
                id,
                format!("Pull of {} on an {}", reading.reading, lesson.stud),
                "F = T/(K d), σ = F/A_s against S_p",
                tightening::SHORT_FORM,
            )
            .with("T", reading.torque, NewtonMetre)
            .with("K", lesson.nut_factor, One)
            .with("d", diameter, Millimetre)
            .with("A_s", lesson.stress_area, SquareMillimetre)
            .with("σ", reading.stress, Megapascal)
            .with("S_p", lesson.proof_stress, Megapascal)
            .with("F/F_p", reading.proof_ratio, One)
            .gives("F", reading.preload, Kilonewton),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief::resolve;
    use crate::site_plan::SitePlan;

    /// Computed: 180 at K 0.2 on M16: 56.25, 76.3 and 551.6 kN; 358, 486 and 3514 MPa; proof 91.1, breaking 125.6 kN.
    #[test]
    fn the_common_number_on_the_common_stud() {
        let brief = resolve(&SitePlan::unknown()).unwrap();
        let screw = Screw::of(&brief);
        let found = lesson(
            &brief,
            &screw,
            newton_metre::new(100.0),
            newton_metre::new(200.0),
        );
        for (reading, preload, stress) in found
            .readings
            .iter()
            .zip([56.25, 76.26, 551.6])
            .zip([358.3, 485.8, 3513.6])
            .map(|((a, b), c)| (a, b, c))
        {
            assert!(
                (kilonewton::get(reading.preload) - preload).abs() < 0.05,
                "{}",
                reading.says
            );
            assert!(
                (megapascal::get(reading.stress) - stress).abs() < 0.5,
                "{}",
                reading.says
            );
        }
        assert!((found.readings[0].proof_ratio - 0.62).abs() < 0.005);
        assert!((found.readings[2].breaking_ratio - 4.39).abs() < 0.01);
        assert!(found.says[2].contains("cannot be"));
    }

    /// A reading is said once: neither “20 N m: 20 N m” nor “180 lbf ft: 180 lbf ft”.
    #[test]
    fn a_reading_is_said_once() {
        for units in [Units::Metric, Units::Imperial] {
            let mut plan = SitePlan::unknown();
            plan.units = Some(units);
            let brief = resolve(&plan).unwrap();
            for reading in readings(&brief, &Screw::of(&brief), 20.0, newton_metre::new(200.0)) {
                let says = reading.says.replace('\u{a0}', " ");
                assert!(says.starts_with(&reading.reading), "{says}");
                assert_eq!(says.matches(&reading.reading).count(), 1, "{says}");
            }
        }
    }
}
