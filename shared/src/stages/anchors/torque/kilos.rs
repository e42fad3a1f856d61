//! "Kilos": three readings of one number, and what each does to this stud and to the common one.

mod lesson;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Kilonewton, NewtonMetre, Units};
use crate::rules::vdi_2230_2015 as tightening;
use crate::stages::anchors::torque::Screw;
use crate::units::customary::POUND_FORCE_FOOT_N_M;
use crate::units::{
    Area, Force, Moment, Pressure, STANDARD_GRAVITY_M_S2, kilonewton, megapascal, newton_metre,
};

pub use lesson::Lesson;
pub(super) use lesson::{lesson, workings};

/// The number that is handed on in "kilos", between the 160 and the 200 of common practice.
const HANDED_ON: f64 = 180.0;

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
            ("lbf ft", POUND_FORCE_FOOT_N_M),
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
pub(super) fn readings(brief: &Brief, screw: &Screw, used: Moment, high: Moment) -> Vec<Reading> {
    // A torque that would break the stud was most likely said in kilogram-force metres.
    let number = if used > screw.torque(screw.breaking) {
        newton_metre::get(used) / STANDARD_GRAVITY_M_S2
    } else {
        brief.units.convert(used, NewtonMetre).0
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
            for reading in readings(
                &brief,
                &Screw::of(&brief),
                newton_metre::new(20.0),
                newton_metre::new(200.0),
            ) {
                let says = reading.says.replace('\u{a0}', " ");
                assert!(says.starts_with(&reading.reading), "{says}");
                assert_eq!(says.matches(&reading.reading).count(), 1, "{says}");
            }
        }
    }
}
