//! What the symptoms of a pier point to, held against what the fit says. They are words and no figures: nobody has counted how
//! often a pier with a soft part trembles in the wind, so that they do not weigh in the fit.

use std::f64::consts::TAU;

use crate::figure::significant;
use crate::proof::fitted::{Fitted, SymptomSays};
use crate::site_plan::commissioning::{Commissioning, Symptoms};

/// Whatever has at least this share of the slowest swing counts as where it gives: judgement.
const MUCH: f64 = 0.6;
/// A tremble is thought to last until a twentieth of it is left: judgement.
const LEFT: f64 = 20.0;
/// Damping below which it rings as steel does, and above which something takes it up: judgement.
const RINGS: f64 = 0.015;
const TAKEN_UP: f64 = 0.05;
/// Two figures of what people see agree within this factor: judgement.
const ALIKE: f64 = 3.0;

/// All that were said, in the order of the questions.
pub(super) fn find(said: &Commissioning, fitted: &Fitted) -> Vec<SymptomSays> {
    let symptoms = &said.symptoms;
    [
        (symptoms.in_wind == Some(true)).then(|| in_wind(fitted)),
        at_steps(symptoms, said, fitted),
        (symptoms.at_touch == Some(true)).then(|| at_touch(fitted)),
        (symptoms.at_slew == Some(true)).then(|| at_slew(fitted)),
        symptoms
            .lasts_s
            .and_then(|lasts| lasting(lasts, said, fitted)),
        symptoms
            .moves_arcsec
            .and_then(|moves| moving(moves, symptoms, fitted)),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Shares of the slowest swing in the middle, of what stands above the block.
struct Middle {
    column: f64,
    joint: f64,
    mount: f64,
}

fn middle(fitted: &Fitted) -> Option<Middle> {
    let shares = &fitted.shares;
    Some(Middle {
        column: shares.column.typical?,
        joint: shares.joint.typical?,
        mount: shares.mount.typical?,
    })
}

fn per_cent(share: f64) -> String {
    format!("{}%", significant(100.0 * share, 2))
}

/// Whether parts give as much as a symptom that points to them asks.
fn held_against(fitted: &Fitted, of: impl Fn(&Middle) -> f64) -> (Option<bool>, String) {
    match middle(fitted).map(|middle| of(&middle)) {
        Some(share) if fitted.agreement.is_empty() => (
            None,
            format!(
                "By what is known of this pier so far they are {} of the slowest swing; a knock tells more.",
                per_cent(share)
            ),
        ),
        Some(share) if share >= MUCH => (
            Some(true),
            format!(
                "The fit agrees: they are {} of the slowest swing.",
                per_cent(share)
            ),
        ),
        Some(share) => (
            Some(false),
            format!(
                "The fit does not say so: they are {} of the slowest swing.",
                per_cent(share)
            ),
        ),
        None => (None, "The fit cannot tell.".to_owned()),
    }
}

fn in_wind(fitted: &Fitted) -> SymptomSays {
    let (agrees, held) = held_against(fitted, |m| m.column + m.joint + m.mount);
    SymptomSays {
        symptom: "in_wind",
        points_to: vec!["column", "joint", "mount"],
        agrees,
        says: format!(
            "It trembles in the wind: wind pushes what stands high, which points to the column, the base joint and the mount. {held}"
        ),
    }
}

fn at_touch(fitted: &Fitted) -> SymptomSays {
    let (agrees, held) = held_against(fitted, |m| m.column + m.joint + m.mount);
    SymptomSays {
        symptom: "at_touch",
        points_to: vec!["mount", "column", "joint"],
        agrees,
        says: format!(
            "It trembles when it is touched: a hand pushes at the telescope, which points to the mount, the column and the base \
             joint. {held}"
        ),
    }
}

fn at_slew(fitted: &Fitted) -> SymptomSays {
    let (agrees, held) = held_against(fitted, |m| m.mount + m.joint);
    SymptomSays {
        symptom: "at_slew",
        points_to: vec!["mount", "joint"],
        agrees,
        says: format!(
            "It trembles when the mount slews: a slew turns the load against the mount's own fixing, which points to the mount, its \
             balance and the base joint. {held}"
        ),
    }
}

/// Steps reach the telescope through the ground or through a floor that touches.
fn at_steps(symptoms: &Symptoms, said: &Commissioning, fitted: &Fitted) -> Option<SymptomSays> {
    if symptoms.at_steps? {
        let (agrees, held) = if said.leans.is_empty() {
            (
                None,
                "These measurements do not tell which: look whether anything bridges the floor gap, then let a person step to a \
                 marked place and away.",
            )
        } else if is_soft_ground(fitted) {
            (
                Some(true),
                "The fit agrees: the ground is softer than said.",
            )
        } else {
            (
                Some(false),
                "The fit finds the ground no softer than said, so that a floor that touches is the first thing to look for.",
            )
        };
        return Some(SymptomSays {
            symptom: "at_steps",
            points_to: vec!["ground", "floor"],
            agrees,
            says: format!(
                "It trembles when somebody steps near it: that points to the ground and its hold on the block's sides, or to a floor \
                 that touches the column or the block. {held}"
            ),
        });
    }
    Some(SymptomSays {
        symptom: "at_steps",
        points_to: Vec::new(),
        agrees: (!said.leans.is_empty()).then(|| !is_soft_ground(fitted)),
        says: "It does not tremble when somebody steps near it: that speaks against soft ground and against a floor that touches."
            .to_owned(),
    })
}

fn is_soft_ground(fitted: &Fitted) -> bool {
    fitted.agreement.iter().any(|one| {
        one.unit == "arcsec" && one.measurement.starts_with("Lean") && one.surprise > 1.0
    })
}

/// How long it lasts, as damping at the slowest swing.
fn lasting(lasts_s: f64, said: &Commissioning, fitted: &Fitted) -> Option<SymptomSays> {
    let hertz = fitted.frequency_hz.typical?;
    let ratio = LEFT.ln() / (TAU * hertz * lasts_s);
    let measured = said
        .knocks
        .iter()
        .filter(|knock| knock.with_mount)
        .find_map(|knock| knock.damping_ratio);
    let (points_to, what): (Vec<&'static str>, &str) = if ratio < RINGS {
        (
            vec!["column", "joint"],
            "it rings as steel does, and neither ground nor fill takes it up; dry sand in the column would",
        )
    } else if ratio > TAKEN_UP {
        (
            vec!["ground", "mount"],
            "it dies fast, as where the ground takes it up or where something slips",
        )
    } else {
        (Vec::new(), "it dies as a pier does")
    };
    let beside = measured.map_or_else(String::new, |found| {
        format!(" The knock has {}%.", significant(100.0 * found, 2))
    });
    Some(SymptomSays {
        symptom: "lasts_s",
        points_to,
        agrees: measured.map(|found| alike(found, ratio)),
        says: format!(
            "It lasts {} s, which at {} Hz is some {} swings and about {}% of critical damping: {what}.{beside}",
            significant(lasts_s, 2),
            significant(hertz, 3),
            significant(hertz * lasts_s, 2),
            significant(100.0 * ratio, 2)
        ),
    })
}

/// How far the star moves, beside what the fitted pier does in wind.
fn moving(moves: f64, symptoms: &Symptoms, fitted: &Fitted) -> Option<SymptomSays> {
    let wind = fitted.motion.as_ref()?.wind_arcsec?;
    let moves_in_words = significant(moves, 2);
    if symptoms.in_wind != Some(true) {
        return Some(SymptomSays {
            symptom: "moves_arcsec",
            points_to: Vec::new(),
            agrees: None,
            says: format!(
                "The star moves {moves_in_words}″: without the push that did it, that says nothing of the pier. A pull of known force \
                 does."
            ),
        });
    }
    let (agrees, held) = if alike(moves, wind) {
        (true, "which is alike")
    } else if moves > wind {
        (
            false,
            "which is less: the wind was stronger, the telescope larger, or something is softer than the fit has it",
        )
    } else {
        (
            false,
            "which is more: the wind was weaker than the plan says",
        )
    };
    Some(SymptomSays {
        symptom: "moves_arcsec",
        points_to: if moves > ALIKE * wind {
            vec!["column", "joint", "mount"]
        } else {
            Vec::new()
        },
        agrees: Some(agrees),
        says: format!(
            "The star moves {moves_in_words}″; in the plan's wind the fitted pier moves it {}″, {held}.",
            significant(wind, 2)
        ),
    })
}

fn alike(a: f64, b: f64) -> bool {
    a.max(b) < ALIKE * a.min(b)
}
