//! The one further measurement that would decide most.

use crate::figure::Unit;
use crate::proof::fitted::Next;
use crate::proof::measure::Of;
use crate::proof::pier::Standing;
use crate::proof::sampler::Draw;
use crate::stages::motion::rig::Axis;
use crate::text::capital;
use crate::units::STANDARD_GRAVITY_M_S2;

/// The measurement whose outcome is least known beside its own error.
pub(super) fn find(standing: &Standing, draws: &[Draw], holds: bool) -> Option<Next> {
    if !holds {
        return None;
    }
    let knock = |with_mount: bool| Of::Knock {
        axis: Axis::X,
        with_mount,
        mode: 0,
    };
    let top = standing.top_m();
    let pull = |height_m: f64, newtons: f64| Of::Pull {
        axis: Axis::X,
        height_m,
        newtons,
    };
    let made = |wanted: &Of| {
        standing
            .measures
            .iter()
            .any(|measure| match (&measure.of, wanted) {
                (Of::Knock { with_mount: a, .. }, Of::Knock { with_mount: b, .. }) => a == b,
                (Of::Lean { .. }, Of::Lean { .. }) => true,
                (Of::Pull { height_m: a, .. }, Of::Pull { height_m: b, .. }) => {
                    (*a > top + 0.05) == (*b > top + 0.05)
                }
                _ => false,
            })
    };
    let newtons = |force: f64| standing.units.say(force, Unit::Newton);
    let words = str::to_owned;
    let offered = [
        (
            "bare_knock",
            knock(false),
            0.031,
            words("a knock with nothing on the pier"),
        ),
        (
            "mounted_knock",
            knock(true),
            0.016,
            words("a knock with mount and telescope on"),
        ),
        (
            "lean",
            Of::Lean {
                lean: standing.lean_beside(),
                newtons: 80.0 * STANDARD_GRAVITY_M_S2,
            },
            0.25,
            words("a lean: a person steps to a place beside the block and away, three times"),
        ),
        (
            "pull_top",
            pull(top, 200.0),
            0.06,
            format!("a pull of {} at the pier's top", newtons(200.0)),
        ),
        (
            "pull_telescope",
            pull(top + standing.centre_m(), 50.0),
            0.06,
            format!("a pull of {} at the telescope", newtons(50.0)),
        ),
    ];
    let few: Vec<&Draw> = draws.iter().step_by((draws.len() / 120).max(1)).collect();
    offered
        .into_iter()
        .filter(|(_, of, ..)| !made(of))
        .map(|(id, of, sd, says)| {
            let values: Vec<f64> = few
                .iter()
                .filter_map(|draw| {
                    Some(standing.expected(&draw.at, &[&of], 2)?.first()?.values[0].ln())
                })
                .collect();
            let mean = values.iter().sum::<f64>() / values.len().max(1) as f64;
            let variance =
                values.iter().map(|v| (v - mean).powi(2)).sum::<f64>() / values.len().max(1) as f64;
            (id, says, variance / (sd * sd))
        })
        .max_by(|a, b| a.2.total_cmp(&b.2))
        .filter(|(.., gain)| *gain > 0.3)
        .map(|(id, says, _)| Next {
            id,
            says: format!("{} would decide most.", capital(&says)),
        })
}
