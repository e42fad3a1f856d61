//! How loud a record is, piece by piece.

use crate::trace::clean::rounding;
use crate::trace::statistics::{less_running_mean, mean, quantile};

/// A record cut into short pieces.
#[derive(Debug)]
pub(super) struct Pieces {
    /// Samples in a piece.
    pub(super) samples: usize,
    /// Root mean square of each, offset and drift left out.
    pub(super) loud: Vec<f64>,
    /// That of quiet pieces, of which some are always among the lowest.
    pub(super) floor: f64,
    /// What the sensor's steps add.
    rounding: f64,
    /// The record without offset and drift.
    pub(super) swing: Vec<f64>,
}

impl Pieces {
    /// Pieces of so many seconds.
    pub(super) fn of(y: &[f64], rate_hz: f64, lasts_s: f64) -> Self {
        let swing = less_running_mean(y, ((0.5 * rate_hz) as usize).max(4));
        let samples = ((rate_hz * lasts_s).round() as usize).clamp(4, 4096);
        let loud: Vec<f64> = swing
            .chunks_exact(samples)
            .map(|piece| (piece.iter().map(|y| y * y).sum::<f64>() / samples as f64).sqrt())
            .collect();
        let rounding = rounding(y);
        let floor = quantile(&loud, 0.15).hypot(rounding);
        Self {
            rounding,
            samples,
            loud,
            floor,
            swing,
        }
    }

    /// Noise of one sample, from the pieces that are no louder than usual quiet ones.
    pub(super) fn noise(&self) -> f64 {
        let quiet: Vec<f64> = self
            .loud
            .iter()
            .filter(|loud| **loud <= 1.8 * self.floor)
            .map(|loud| loud * loud)
            .collect();
        mean(&quiet).sqrt().hypot(self.rounding)
    }
}
