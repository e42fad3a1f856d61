//! What would help a pier that stands, in the reader's units.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units, significant};
use stillground::proof::Remedy;

use crate::views::pages::improvement;

/// Something that would help.
pub struct RemedyView {
    /// Its name.
    pub id: &'static str,
    /// What is done.
    pub says: String,
    /// What comes of it.
    pub gain: String,
    /// The answers that a button writes into the plan; empty where none says it.
    pub answers: Vec<String>,
    /// How it is done where no answer of the plan says it.
    pub how: &'static str,
}

/// All that would help, with what comes of it; empty where nothing was measured or said.
#[must_use]
pub fn lines(brief: &Brief, design: &Design) -> Vec<RemedyView> {
    let fitted = design.fitted.iter();
    fitted
        .flat_map(|fitted| &fitted.remedies)
        .map(|remedy| line(remedy, brief.units))
        .collect()
}

fn line(remedy: &Remedy, units: Units) -> RemedyView {
    let hertz = |value: f64| units.say(value, Unit::Hertz);
    let arcsec = |value: f64| units.say(value, Unit::Arcsecond);
    let gain = match remedy.tilt_from_arcsec.zip(remedy.tilt_to_arcsec) {
        Some((from, to)) => format!(
            "A person moves the star by {} instead of {}",
            arcsec(to),
            arcsec(from)
        ),
        None => format!(
            "First frequency {} instead of {}, {}",
            hertz(remedy.frequency_to_hz),
            hertz(remedy.frequency_from_hz),
            stiffer(remedy.stiffer_ratio)
        ),
    };
    RemedyView {
        id: remedy.id,
        says: remedy.says.clone(),
        gain,
        answers: improvement::answers(&remedy.fields, units),
        how: remedy.not_in_plan.unwrap_or_default(),
    }
}

/// How much stiffer: a small gain as a share, a large one as a multiple.
fn stiffer(ratio: f64) -> String {
    if ratio < 1.5 {
        format!(
            "{}% stiffer",
            significant((100.0 * (ratio - 1.0)).round(), 2)
        )
    } else {
        format!("{} times as stiff", significant(ratio, 2))
    }
}
