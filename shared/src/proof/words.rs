//! What the measurements say, in words.

use crate::figure::significant;
use crate::proof::fitted::Fitted;
use crate::proof::pier::Unknown;
use crate::proof::sampler::Draw;
use crate::proof::suspects::{TOGETHER, correlation};

/// The sentences.
pub(super) fn of(fitted: &Fitted, draws: &[Draw]) -> Vec<String> {
    if !fitted.holds {
        return vec!["The figures contradict each other, so there is no range: look at each measurement's unit, mass, distance and direction.".to_owned()];
    }
    let mut says = Vec::new();
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
    let parts = [
        ("the column", fitted.shares.column),
        ("the joint under it", fitted.shares.joint),
        ("the ground", fitted.shares.ground),
        ("the mount", fitted.shares.mount),
    ];
    let mut parts: Vec<(&str, f64, f64, f64)> = parts
        .into_iter()
        .filter_map(|(name, range)| Some((name, range.typical?, range.low?, range.high?)))
        .collect();
    parts.sort_by(|a, b| b.1.total_cmp(&a.1));
    let per_cent = |share: f64| significant(100.0 * share, 2);
    let listed: Vec<String> = parts
        .iter()
        .map(|(name, share, low, high)| {
            format!(
                "{name} {} % ({} to {})",
                per_cent(*share),
                per_cent(*low),
                per_cent(*high)
            )
        })
        .collect();
    if let Some((first, ..)) = parts.first() {
        says.push(format!(
            "It gives first in {first}: of its slowest swing {}.",
            listed.join(", ")
        ));
    }
    if !fitted.not_told.is_empty() {
        says.push(format!(
            "Not told by these measurements: {}.",
            fitted.not_told.join("; ")
        ));
    }
    if correlation(draws, Unknown::Joint, Unknown::Mount) < -TOGETHER {
        says.push(
            "A knock with the telescope on cannot tell a soft mount from a soft joint. A knock with nothing on the pier can, \
             on firm ground; a pull at its top does so on any."
                .to_owned(),
        );
    }
    says
}
