//! The star's trail: its length from end to end, and the points and spectrum that drawings show.

use serde::Serialize;

use crate::stages::motion::history::{History, STEP_S};

/// Directions along which the trail is measured: the longest is found within a thousandth.
const DIRECTIONS: usize = 36;
/// Points of a drawn trail or history.
const POINTS: usize = 800;
/// Longest time that is drawn, s: the loudest part of a longer walk, so that single swings still show.
const DRAWN_S: f64 = 8.0;
/// Samples averaged before the spectrum is taken.
const SMOOTH: usize = 5;
/// Lines of the spectrum.
const LINES: usize = 96;
/// Lines or directions that are found together.
const TOGETHER: usize = 4;
/// Band of the spectrum, Hz.
const BAND_HZ: (f64, f64) = (0.5, 48.0);

/// What drawings of the walk need.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
pub struct Drawn {
    /// Time of the first point after the walk began, s.
    pub from_s: f64,
    /// Time between the points, s.
    pub step_s: f64,
    /// Turn towards east and north, arcsec, one each step.
    pub turns_arcsec: Vec<[f64; 2]>,
    /// Frequency in hertz and amplitude in arcsec of both axes together.
    pub spectrum: Vec<[f64; 2]>,
}

/// Length from end to end of the trail within any exposure of so long.
pub fn length_arcsec(history: &History, exposure_s: f64) -> f64 {
    let window = ((exposure_s / STEP_S).ceil() as usize + 1).max(2);
    if window >= history.turns.len() {
        return across(&history.turns);
    }
    // Frames shorter than a sample see a share of the way between two.
    let share = (exposure_s / STEP_S).min(1.0);
    let hop = (window / 4).max(1);
    let starts = (0..history.turns.len().saturating_sub(window - 1)).step_by(hop);
    starts
        .map(|start| rough(&history.turns[start..start + window]))
        .fold(0.0, f64::max)
        * share
}

/// Largest distance between two points of a set.
fn across(points: &[[f64; 2]]) -> f64 {
    widest(points, DIRECTIONS)
}

/// The same from a few directions, for the many windows of short exposures.
fn rough(points: &[[f64; 2]]) -> f64 {
    if let [a, b] = points {
        return (a[0] - b[0]).hypot(a[1] - b[1]);
    }
    widest(points, 6)
}

/// The largest of the widths in so many directions evenly round.
fn widest(points: &[[f64; 2]], directions: usize) -> f64 {
    let angle = |i: usize| std::f64::consts::PI * i as f64 / directions as f64;
    (0..directions)
        .step_by(TOGETHER)
        .flat_map(|first| along(points, std::array::from_fn(|i| angle(first + i))))
        .fold(0.0, f64::max)
}

/// Width along each of a few directions; taken together they wait for each other no more.
fn along(points: &[[f64; 2]], angles: [f64; TOGETHER]) -> [f64; TOGETHER] {
    let ways = angles.map(f64::sin_cos);
    let ends = [(f64::INFINITY, f64::NEG_INFINITY); TOGETHER];
    let ends = points.iter().fold(ends, |mut ends, [x, y]| {
        for ((low, high), (sin, cos)) in ends.iter_mut().zip(&ways) {
            let at = x * cos + y * sin;
            (*low, *high) = (low.min(at), high.max(at));
        }
        ends
    });
    ends.map(|(low, high)| if high >= low { high - low } else { 0.0 })
}

/// Points and spectrum for the drawings; the spectrum has lines at the marked frequencies besides its own.
pub fn drawn(history: &History, marks_hz: &[f64]) -> Drawn {
    let (first, shown) = loudest(history);
    let every = shown.len().div_ceil(POINTS).max(1);
    let tidy = |value: f64| (value * 1e4).round() / 1e4;
    Drawn {
        from_s: STEP_S * first as f64,
        step_s: STEP_S * every as f64,
        turns_arcsec: shown
            .iter()
            .step_by(every)
            .map(|turn| turn.map(tidy))
            .collect(),
        spectrum: spectrum(history, marks_hz)
            .into_iter()
            .map(|[f, a]| [tidy(f), tidy(a)])
            .collect(),
    }
}

/// The part of the history that is drawn, and where it begins.
fn loudest(history: &History) -> (usize, &[[f64; 2]]) {
    let turns = history.turns.as_slice();
    let length = ((DRAWN_S / STEP_S) as usize).min(turns.len());
    let square = |turn: &[f64; 2]| turn[0] * turn[0] + turn[1] * turn[1];
    let peak = (0..turns.len())
        .max_by(|&a, &b| square(&turns[a]).total_cmp(&square(&turns[b])))
        .unwrap_or(0);
    let first = peak.saturating_sub(length / 2).min(turns.len() - length);
    (first, &turns[first..first + length])
}

/// Amplitude at frequencies evenly apart on a logarithmic scale, by Fourier sums over the smoothed history.
fn spectrum(history: &History, marks_hz: &[f64]) -> Vec<[f64; 2]> {
    let smooth: Vec<[f64; 2]> = history
        .turns
        .chunks_exact(SMOOTH)
        .map(|chunk| {
            chunk.iter().fold([0.0; 2], |[a, b], [x, y]| {
                [a + x / SMOOTH as f64, b + y / SMOOTH as f64]
            })
        })
        .collect();
    if smooth.is_empty() {
        return Vec::new();
    }
    let count = smooth.len() as f64;
    let [mx, my] = smooth
        .iter()
        .fold([0.0; 2], |[a, b], [x, y]| [a + x / count, b + y / count]);
    let about: Vec<[f64; 2]> = smooth.iter().map(|[x, y]| [x - mx, y - my]).collect();
    let frequencies = frequencies(marks_hz);
    let lines = frequencies.chunks(TOGETHER).flat_map(|some| {
        let amplitudes = amplitudes(&about, some);
        some.iter().copied().zip(amplitudes).map(|(f, a)| [f, a])
    });
    lines.collect()
}

/// Amplitudes at a few frequencies in hertz of places [`SMOOTH`] samples apart, of both axes together. Taken together they wait
/// for each other's sums no more.
fn amplitudes(about: &[[f64; 2]], frequencies: &[f64]) -> [f64; TOGETHER] {
    let step_s = STEP_S * SMOOTH as f64;
    let hertz = |line: usize| frequencies.get(line).copied().unwrap_or_default();
    let turn: [(f64, f64); TOGETHER] =
        std::array::from_fn(|line| (2.0 * std::f64::consts::PI * hertz(line) * step_s).sin_cos());
    let (mut cos, mut sin) = ([1.0; TOGETHER], [0.0; TOGETHER]);
    let mut sums = [[0.0; TOGETHER]; 4];
    for [x, y] in about {
        for line in 0..TOGETHER {
            let (c, s) = (cos[line], sin[line]);
            sums[0][line] += x * c;
            sums[1][line] += x * s;
            sums[2][line] += y * c;
            sums[3][line] += y * s;
            let (turn_s, turn_c) = turn[line];
            (cos[line], sin[line]) = (c * turn_c - s * turn_s, s * turn_c + c * turn_s);
        }
    }
    let count = about.len().max(1) as f64;
    std::array::from_fn(|line| {
        2.0 / count * sums.iter().map(|sum| sum[line].powi(2)).sum::<f64>().sqrt()
    })
}

/// Frequencies of the spectrum's lines: evenly apart on a logarithmic scale, and the marked ones within the band.
fn frequencies(marks_hz: &[f64]) -> Vec<f64> {
    let ratio = (BAND_HZ.1 / BAND_HZ.0).powf(1.0 / (LINES - 1) as f64);
    let mut all: Vec<f64> = (0..LINES)
        .map(|line| BAND_HZ.0 * ratio.powi(line as i32))
        .collect();
    all.extend(
        marks_hz
            .iter()
            .filter(|hertz| (BAND_HZ.0..=BAND_HZ.1).contains(*hertz)),
    );
    all.sort_by(f64::total_cmp);
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circle(radius: f64, hertz: f64, lasts_s: f64) -> History {
        let n = (lasts_s / STEP_S) as usize;
        let turns = (0..n)
            .map(|i| (2.0 * std::f64::consts::PI * hertz * STEP_S * i as f64).sin_cos())
            .map(|(s, c)| [radius * c, radius * s])
            .collect();
        History::of(turns)
    }

    #[test]
    fn a_circle_is_as_long_as_its_diameter() {
        assert!((length_arcsec(&circle(0.5, 2.0, 5.0), 300.0) - 1.0).abs() < 0.003);
    }

    #[test]
    fn a_short_frame_sees_a_piece_of_the_circle() {
        let piece = length_arcsec(&circle(0.5, 2.0, 5.0), 0.02);
        assert!(
            (piece - 2.0 * 0.5 * (std::f64::consts::PI * 2.0 * 0.02).sin()).abs() < 0.02,
            "{piece}"
        );
        let moment = length_arcsec(&circle(0.5, 2.0, 5.0), 0.0002);
        assert!((moment - 0.5 * 2.0 * std::f64::consts::PI * 2.0 * 0.0002).abs() < 1e-4);
    }

    #[test]
    fn of_a_long_walk_the_loudest_part_is_drawn() {
        let mut history = circle(0.1, 8.0, 30.0);
        history.turns[12_000] = [3.0, 0.0];
        let drawn = drawn(&history, &[]);
        assert!((drawn.from_s - 20.0).abs() < 0.01 && drawn.turns_arcsec.len() <= 800);
        assert!(drawn.step_s <= 0.01);
    }

    #[test]
    fn the_spectrum_peaks_at_the_circle_s_rate() {
        let lines = drawn(&circle(0.5, 8.0, 10.0), &[8.0]).spectrum;
        let peak = lines
            .iter()
            .copied()
            .fold([0.0; 2], |a, b| if b[1] > a[1] { b } else { a });
        assert!(
            (peak[0] - 8.0).abs() < 1e-3 && (peak[1] - 0.5 * 2f64.sqrt()).abs() < 0.01,
            "{peak:?}"
        );
    }
}
