//! What a sensor cut off at the end of its range.

/// Samples at an extreme that stand in runs of at least this many are cut off.
const RUN: usize = 3;
/// A peak in a record with fine steps repeats its neighbours' value hardly ever: so many samples at both extremes are cut off.
const MANY: usize = 6;
/// A record with fewer levels than this has coarse steps, whose tops look like cuts.
const FEW_LEVELS: usize = 40;

/// Which samples are cut off, one more on either side of each run among them; empty where none are.
pub(super) fn clipped(y: &[f64], least_run: usize) -> Vec<bool> {
    let (low, high) = extremes(y);
    if y.is_empty() || low == high || levels(y, low, high) < FEW_LEVELS {
        return Vec::new();
    }
    let mut cut = vec![false; y.len()];
    let many = [low, high]
        .iter()
        .all(|extreme| y.iter().filter(|y| *y == extreme).count() >= MANY);
    for extreme in [low, high] {
        let at = |i: usize| y[i] == extreme;
        if !many && longest_run(y.len(), at) < RUN.max(least_run) {
            continue;
        }
        for i in (0..y.len()).filter(|i| at(*i)) {
            cut[i.saturating_sub(1)..(i + 2).min(y.len())].fill(true);
        }
    }
    if cut.contains(&true) { cut } else { Vec::new() }
}

fn longest_run(len: usize, at: impl Fn(usize) -> bool) -> usize {
    let (mut longest, mut run) = (0, 0);
    for i in 0..len {
        run = if at(i) { run + 1 } else { 0 };
        longest = longest.max(run);
    }
    longest
}

/// Levels between the extremes.
fn levels(y: &[f64], low: f64, high: f64) -> usize {
    ((high - low) / step(y, low, high)).min(1e9) as usize
}

/// The smallest step from a sample to the next.
fn step(y: &[f64], low: f64, high: f64) -> f64 {
    y.windows(2)
        .map(|pair| (pair[1] - pair[0]).abs())
        .filter(|step| *step > 1e-7 * (high - low))
        .fold(f64::INFINITY, f64::min)
}

/// What rounding to the sensor's steps adds to the noise: evenly spread within one step.
pub(super) fn rounding(y: &[f64]) -> f64 {
    let (low, high) = extremes(y);
    let step = step(y, low, high);
    if step.is_finite() {
        step / 12.0_f64.sqrt()
    } else {
        0.0
    }
}

fn extremes(y: &[f64]) -> (f64, f64) {
    y.iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| {
            (low.min(*y), high.max(*y))
        })
}
