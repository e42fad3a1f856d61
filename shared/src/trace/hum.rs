//! Steady lines of the mains: at its frequency or, where sampling is slower, where they fold to.

use crate::trace::ring;
use crate::trace::statistics::{mean, spread};

/// Mains and its double in both of the world's frequencies, Hz.
const MAINS_HZ: [f64; 4] = [50.0, 60.0, 100.0, 120.0];

/// Where a line appears at this rate.
pub(super) fn folded(line_hz: f64, rate_hz: f64) -> f64 {
    (line_hz - rate_hz * (line_hz / rate_hz).round()).abs()
}

/// All of them.
pub(super) fn all_folded(rate_hz: f64) -> [f64; 4] {
    MAINS_HZ.map(|line| folded(line, rate_hz))
}

/// The lines that are there in a quiet stretch, as they appear.
pub(super) fn find(t: &[f64], y: &[f64], rate_hz: f64) -> Vec<f64> {
    let span = t
        .last()
        .zip(t.first())
        .map_or(0.0, |(last, first)| last - first);
    if span < 0.5 || y.len() < 40 {
        return Vec::new();
    }
    let middle = mean(y);
    let centred: Vec<f64> = y.iter().map(|y| y - middle).collect();
    let noise = spread(y);
    let sd = noise * (2.0 / y.len() as f64).sqrt();
    let mut found: Vec<f64> = Vec::new();
    for line in all_folded(rate_hz) {
        let about = 0.3_f64.max(0.5 / span);
        if line < 1.0 || line + about > 0.5 * rate_hz {
            continue;
        }
        let lines = ring::spectrum(
            t,
            &centred,
            line - about,
            line + about,
            (0.1 / span).max(0.01),
        );
        let Some((hz, power)) = lines.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1)) else {
            continue;
        };
        let amplitude = 2.0 * power.sqrt() / y.len() as f64;
        if amplitude > 4.5 * sd && found.iter().all(|other| (other - hz).abs() > 1.0 / span) {
            found.push(hz);
        }
    }
    found.truncate(3);
    found
}
