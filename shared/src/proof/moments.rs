//! Draws of piers in a few figures: middles, ranges, and how much two unknowns go together.

use crate::proof::pier::{Point, UNKNOWNS, Unknown};
use crate::proof::sampler::{Draw, covariance};

/// Measurements spoke of an unknown when its standard deviation fell to this share.
pub(super) const TOLD: f64 = 0.8;

/// Five, fifty and ninety-five of a hundred.
pub(super) fn thirds(values: impl Iterator<Item = f64>) -> Option<[f64; 3]> {
    let mut sorted: Vec<f64> = values.filter(|value| value.is_finite()).collect();
    sorted.sort_by(f64::total_cmp);
    let at = |share: f64| {
        sorted
            .get(((sorted.len().checked_sub(1)?) as f64 * share).round() as usize)
            .copied()
    };
    Some([at(0.05)?, at(0.5)?, at(0.95)?])
}

/// Middle and standard deviation of each unknown, in standard deviations of the plan's range.
pub(super) struct Moments {
    /// Middle.
    pub(super) median: Point,
    /// Standard deviation.
    pub(super) sd: Point,
}

/// Those of some draws.
pub(super) fn moments(draws: &[Draw]) -> Option<Moments> {
    let covariance = covariance(draws)?;
    let mut median = [0.0; UNKNOWNS];
    for (k, place) in median.iter_mut().enumerate() {
        *place = thirds(draws.iter().map(|draw| draw.at[k]))?[1];
    }
    Some(Moments {
        median,
        sd: std::array::from_fn(|k| covariance[(k, k)].max(0.0).sqrt()),
    })
}

/// How much two unknowns go together among the draws.
pub(super) fn correlation(draws: &[Draw], a: Unknown, b: Unknown) -> f64 {
    covariance(draws).map_or(0.0, |c| {
        let (a, b) = (a as usize, b as usize);
        c[(a, b)] / (c[(a, a)] * c[(b, b)]).sqrt().max(1e-12)
    })
}
