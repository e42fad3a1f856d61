//! "Kilos": three readings of one number, and what each does to this stud.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::stages::anchors::torque::Screw;
use crate::units::{Force, Moment, STANDARD_GRAVITY_M_S2, kilonewton, newton_metre};

/// One pound-force foot in newton metres: 4.448 221 615 260 5 N × 0.3048 m.
const POUND_FOOT_N_M: f64 = 4.448_221_615_260_5 * 0.3048;

/// One reading of a number of "kilos".
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reading {
    /// The number with the unit that it is read in.
    pub reading: String,
    /// The torque.
    #[serde(rename = "n_m", serialize_with = "newton_metre::serialize")]
    pub torque: Moment,
    /// Typical preload, were the stud unbreakable.
    #[serde(rename = "preload_kn", serialize_with = "kilonewton::serialize")]
    pub preload: Force,
    /// What it does to this stud.
    pub says: String,
}

/// The three readings of a number.
pub(super) fn readings(brief: &Brief, screw: &Screw, number: f64, high: Moment) -> Vec<Reading> {
    // A torque that would break the stud was most likely said in kilogram-force metres.
    let number = if number > newton_metre::get(screw.torque(screw.breaking)) { number / STANDARD_GRAVITY_M_S2 } else { number };
    let read = |unit: &str, per_unit: f64| {
        let torque = newton_metre::new(number * per_unit);
        let preload = screw.typical(torque);
        Reading { reading: format!("{number:.0} {unit}"), torque, preload, says: says(brief, screw, torque, high) }
    };
    vec![read("N m", 1.0), read("kgf m", STANDARD_GRAVITY_M_S2), read("lbf ft", POUND_FOOT_N_M)]
}

/// What a torque does to the stud, in one or two sentences.
fn says(brief: &Brief, screw: &Screw, torque: Moment, high: Moment) -> String {
    let preload = screw.typical(torque);
    let proof_ratio = (preload / screw.proof).value;
    let stretched = format!(
        "{} {} this stud with {}, {:.0} % of its proof load",
        brief.units.say(newton_metre::get(torque), Unit::NewtonMetre),
        if proof_ratio > 1.0 { "would stretch" } else { "stretches" },
        brief.units.say(kilonewton::get(preload), Unit::Kilonewton),
        100.0 * proof_ratio
    );
    let breaks_ratio = (preload / screw.breaking).value;
    if breaks_ratio > 1.0 {
        format!("{stretched} and {breaks_ratio:.1} times what breaks it: the stud would tear off long before. It cannot be meant.")
    } else if proof_ratio > 1.0 {
        format!("{stretched}: it would stretch for good.")
    } else if newton_metre::get(torque) > newton_metre::get(high) {
        format!("{stretched}. The steel bears it, yet it is above the limit for this plan.")
    } else {
        format!("{stretched}: within the limit for this plan.")
    }
}
