//! What the measurements say, in words.

use crate::figure::significant;
use crate::proof::fitted::{Fitted, Together};
use crate::proof::moments::{Moments, correlation};
use crate::proof::pier::Unknown;
use crate::proof::sampler::Draw;
use crate::text::capital;

/// Two unknowns that go together by more than this are said to: judgement. Suspects ask for more.
const TOGETHER: f64 = 0.5;
/// Both are known where no more than this share of the plan's range is left of either: judgement.
const KNOWN: f64 = 0.35;

/// The sentences.
pub(super) fn of(fitted: &Fitted) -> Vec<String> {
    if !fitted.holds {
        return vec!["The figures contradict each other, so there is no range: look at each measurement's unit, mass, distance and direction.".to_owned()];
    }
    let mut says = Vec::new();
    if fitted.agreement.is_empty() {
        says.push(
            "Nothing has been measured yet: all that follows is what the plan says of such a pier."
                .to_owned(),
        );
    }
    if let Some(chance) = fitted.chance_ratio {
        says.push(match chance {
            p if p > 0.1 => "All measurements together are as this plan foresees.".to_owned(),
            p if p > 0.02 => {
                "All measurements together are somewhat off what this plan foresees, yet possible."
                    .to_owned()
            }
            p if p > 0.002 => "All measurements together are unlikely under this plan.".to_owned(),
            _ => {
                "All measurements together say that something else is going on than the plan says."
                    .to_owned()
            }
        });
    }
    says.extend(where_it_gives(fitted));
    if !fitted.not_told.is_empty() && !fitted.agreement.is_empty() {
        says.push(format!(
            "Not told by these measurements: {}.",
            fitted.not_told.join("; ")
        ));
    }
    says.extend(fitted.together.iter().map(|two| two.says.clone()));
    says
}

/// The diagnosis: each part's share of the slowest swing, the largest first.
fn where_it_gives(fitted: &Fitted) -> Option<String> {
    let shares = &fitted.shares;
    let mut parts: Vec<(&str, f64, f64, f64)> = [
        ("the column", shares.column),
        ("the base joint", shares.joint),
        ("the ground", shares.ground),
        ("the mount", shares.mount),
    ]
    .into_iter()
    .filter_map(|(name, range)| Some((name, range.typical?, range.low?, range.high?)))
    .collect();
    parts.sort_by(|a, b| b.1.total_cmp(&a.1));
    let per_cent = |share: f64| significant(100.0 * share, 2);
    let listed: Vec<String> = parts
        .iter()
        .map(|(name, share, low, high)| {
            format!(
                "{name} {}% ({} to {})",
                per_cent(*share),
                per_cent(*low),
                per_cent(*high)
            )
        })
        .collect();
    let (first, ..) = parts.first()?;
    Some(format!(
        "It gives first in {first}: of its slowest swing {}.",
        listed.join(", ")
    ))
}

/// Pairs of unknowns that go together among the draws, and what would tell them apart.
pub(super) fn together(moments: &Moments, draws: &[Draw]) -> Vec<Together> {
    let mut found = Vec::new();
    for (n, first) in Unknown::TOLD.into_iter().enumerate() {
        for second in Unknown::TOLD.into_iter().skip(n + 1) {
            let correlation = correlation(draws, first, second);
            let left = |unknown: Unknown| moments.sd[unknown as usize];
            if correlation.abs() > TOGETHER && left(first).max(left(second)) > KNOWN {
                found.push(Together {
                    first: first.words(),
                    second: second.words(),
                    correlation,
                    says: apart(first, second, correlation),
                });
            }
        }
    }
    found.sort_by(|a, b| b.correlation.abs().total_cmp(&a.correlation.abs()));
    found
}

/// That the two cannot be told apart, and which measurement can: the basis' table of what decides what, computed apart.
fn apart(first: Unknown, second: Unknown, correlation: f64) -> String {
    match (first, second) {
        (Unknown::Joint, Unknown::Mount) if correlation < 0.0 => {
            "These measurements cannot tell a soft mount from a soft base joint. A knock with nothing on the pier can, on firm \
             ground; a pull at its top does so on any."
                .to_owned()
        }
        (Unknown::Ground, Unknown::Contact) if correlation < 0.0 => {
            "These measurements cannot tell soft ground from sides that the ground does not hold. A tilt under a person and a \
             pull at the top, read at the block as well, can."
                .to_owned()
        }
        _ => {
            let how = if correlation < 0.0 {
                "the one softer and the other stiffer would show the same"
            } else {
                "both softer or both stiffer would show the same"
            };
            let with = match (first, second) {
                (_, Unknown::Mount) => "A knock with nothing on the pier tells them apart.",
                (Unknown::Ground, _) => "A tilt under a person tells of the ground alone.",
                _ => "A pull at the pier's top tells most of the base joint.",
            };
            format!(
                "{} and {} cannot be told apart: {how}. {with}",
                capital(first.words()),
                second.words()
            )
        }
    }
}
