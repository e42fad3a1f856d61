//! Lines in a spectrum, by sums over the given times, so that uneven ones need no filling in.

use std::f64::consts::TAU;

/// Power at evenly spaced frequencies: `(frequency, power)`.
pub(super) fn spectrum(
    t: &[f64],
    y: &[f64],
    from_hz: f64,
    to_hz: f64,
    step_hz: f64,
) -> Vec<(f64, f64)> {
    let lines = (((to_hz - from_hz) / step_hz).max(0.0) as usize).min(6000) + 1;
    let (mut re, mut im) = (vec![0.0; lines], vec![0.0; lines]);
    for (t, y) in t.iter().zip(y) {
        let (mut sin, mut cos) = (TAU * from_hz * t).sin_cos();
        let (turn_sin, turn_cos) = (TAU * step_hz * t).sin_cos();
        for (re, im) in re.iter_mut().zip(&mut im) {
            *re += y * cos;
            *im += y * sin;
            (cos, sin) = (
                cos * turn_cos - sin * turn_sin,
                sin * turn_cos + cos * turn_sin,
            );
        }
    }
    re.iter()
        .zip(&im)
        .enumerate()
        .map(|(i, (re, im))| (from_hz + step_hz * i as f64, re * re + im * im))
        .collect()
}

/// The strongest line.
pub(super) fn loudest(spectrum: &[(f64, f64)]) -> Option<f64> {
    spectrum
        .iter()
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(frequency, _)| *frequency)
}
