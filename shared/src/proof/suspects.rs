//! What is unlikely to be right of what was said or assumed, most suspicious first.

use crate::figure::significant;
use crate::proof::fitted::{Agreement, Suspect};
use crate::proof::moments::{Moments, TOLD, correlation};
use crate::proof::pier::Unknown;
use crate::proof::sampler::Draw;
use crate::text::capital;

/// An unknown this far out of the plan's range is a suspect.
const SUSPECT: f64 = 1.5;
/// Two unknowns whose draws go together by more than this cannot be told apart.
const TOGETHER: f64 = 0.6;

/// Base joint and mount are not named alone where more than this share of the plan's range is left and they go together by more
/// than [`EITHER_TOGETHER`]: judgement, set so that one knock names neither. Ground and side contact are looked at in one place,
/// so that either name leads there.
const EITHER: f64 = 0.5;
const EITHER_TOGETHER: f64 = 0.5;

/// Finds them.
pub(super) fn find(
    moments: &Moments,
    agreement: &[Agreement],
    draws: &[Draw],
    chance: Option<f64>,
    holds: bool,
) -> Vec<Suspect> {
    let mut found: Vec<(Unknown, f64)> = Unknown::TOLD
        .into_iter()
        .filter(|unknown| holds && moments.sd[*unknown as usize] < TOLD)
        .map(|unknown| (unknown, moments.median[unknown as usize]))
        .filter(|(_, shift)| shift.abs() >= SUSPECT)
        .collect();
    found.sort_by(|a, b| b.1.abs().total_cmp(&a.1.abs()));
    let mut suspects: Vec<Suspect> = found
        .iter()
        .map(|(unknown, shift)| {
            if let Some(other) = either(moments, draws, *unknown) {
                return undecided(*unknown, other, *shift);
            }
            let way = if *shift < 0.0 { "less" } else { "more" };
            let mut says = format!(
                "{}: {way} than said, by {} standard deviations of the plan's range",
                capital(unknown.words()),
                significant(shift.abs(), 2)
            );
            let with = Unknown::TOLD.into_iter().find(|other| {
                other != unknown && correlation(draws, *unknown, *other).abs() > TOGETHER
            });
            if let Some(other) = with {
                says.push_str(&format!(
                    "; or it is {}: the two cannot be told apart by these measurements",
                    other.words()
                ));
            }
            Suspect {
                field: unknown.field().to_owned(),
                shift: *shift,
                says: format!("{says}."),
            }
        })
        .collect();
    for one in agreement
        .iter()
        .filter(|one| one.left_out.is_some_and(|z| z.abs() >= 2.5))
    {
        suspects.insert(
            0,
            Suspect {
                field: "commissioning".to_owned(),
                shift: one.left_out.unwrap_or_default(),
                says: format!(
                    "{}: it does not fit the other measurements; look at it before the pier.",
                    one.measurement
                ),
            },
        );
    }
    // Far off as a whole, and nothing of it stands out: the farthest measurement is named, and not what is behind it.
    if suspects.is_empty()
        && chance.is_some_and(|p| p < 0.02)
        && let Some(most) = agreement
            .iter()
            .max_by(|a, b| a.surprise.abs().total_cmp(&b.surprise.abs()))
    {
        suspects.push(Suspect {
            field: "commissioning".to_owned(),
            shift: most.surprise,
            says: format!(
                "{} is far from what this plan would show, and the measurements do not tell which answer is wrong.",
                most.measurement
            ),
        });
    }
    suspects
}

/// The unknown that could as well be wrong.
fn either(moments: &Moments, draws: &[Draw], unknown: Unknown) -> Option<Unknown> {
    let other = match unknown {
        Unknown::Joint => Unknown::Mount,
        Unknown::Mount => Unknown::Joint,
        _ => return None,
    };
    let is_open = moments.sd[unknown as usize] > EITHER
        && correlation(draws, unknown, other).abs() > EITHER_TOGETHER;
    is_open.then_some(other)
}

/// One of two is wrong, and these measurements do not tell which.
fn undecided(unknown: Unknown, other: Unknown, shift: f64) -> Suspect {
    Suspect {
        field: "commissioning".to_owned(),
        shift,
        says: format!(
            "Either {} or {} is not as said: these measurements do not tell which.",
            unknown.words(),
            other.words()
        ),
    }
}
