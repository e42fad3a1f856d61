//! Where in a record the blows are.

use crate::trace::noise::Pieces;
use crate::trace::ring;
use crate::trace::statistics::mean;

/// A blow, and how long what it left can be looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Blow {
    /// Place of the loudest sample.
    pub(super) at: usize,
    /// First place that no longer belongs to it.
    pub(super) end: usize,
}

/// A blow stands out by so much of the quiet parts.
const STANDS_OUT: f64 = 6.0;
/// It has risen from this share within a short time; what swells slowly is no blow.
const RISES_FROM: f64 = 1.0 / 3.0;
const RISES_IN_S: f64 = 0.12;
/// Longest stretch after a blow that is looked at, seconds.
const LONGEST_S: f64 = 12.0;
/// Most blows that are looked at.
const MOST: usize = 8;

/// The blows, and the pieces that they were found in. Why there are none, where there are none.
pub(super) fn find(
    t: &[f64],
    y: &[f64],
    rate_hz: f64,
) -> Result<(Vec<Blow>, Pieces), &'static str> {
    let slowest = slowest(t, y, rate_hz).ok_or("the record is too short")?;
    // Pieces shorter than half a swing would rise and fall with it.
    let lasts = 0.04_f64.max(0.5 / slowest);
    let pieces = Pieces::of(y, rate_hz, lasts);
    let loud = &pieces.loud;
    let beside = ((RISES_IN_S * rate_hz / pieces.samples as f64).round() as usize).max(2);
    let (mut blows, mut swells): (Vec<usize>, bool) = (Vec::new(), false);
    for i in 0..loud.len() {
        let before = &loud[i.saturating_sub(beside)..i];
        let after = &loud[i + 1..(i + 1 + beside).min(loud.len())];
        let stands_out = loud[i] > STANDS_OUT * pieces.floor && loud[i] > 0.0;
        let is_top = before.iter().all(|b| *b < loud[i]) && after.iter().all(|a| *a <= loud[i]);
        if !(stands_out && is_top) {
            continue;
        }
        let least = before.iter().copied().fold(f64::INFINITY, f64::min);
        let begins = i < 2;
        if !(begins || least < RISES_FROM * loud[i]) {
            swells = true;
            continue;
        }
        if let Some(&last) = blows.last() {
            let between = loud[last + 1..i]
                .iter()
                .copied()
                .fold(f64::INFINITY, f64::min);
            let after_quiet = between < 3.5 * pieces.floor;
            let another = loud[i] > 0.6 * loud[last] && between < 0.3 * loud[i];
            if !(after_quiet || another) {
                continue;
            }
        }
        blows.push(i);
    }
    if blows.is_empty() {
        return Err(if swells {
            "what stands out swells slowly, as a lorry does; a knock rises at once"
        } else {
            "no knock stands out of the record's noise"
        });
    }
    let noise = pieces.noise();
    let found = blows
        .iter()
        .enumerate()
        .map(|(n, &i)| {
            let next = blows
                .get(n + 1)
                .map_or(y.len(), |next| next.saturating_sub(1) * pieces.samples);
            blow(&pieces, i, next, rate_hz, noise)
        })
        .collect::<Vec<_>>();
    let mut found: Vec<Blow> = found;
    if found.len() > MOST {
        found.sort_by(|a, b| {
            pieces.swing[b.at]
                .abs()
                .total_cmp(&pieces.swing[a.at].abs())
        });
        found.truncate(MOST);
        found.sort_by_key(|blow| blow.at);
    }
    Ok((found, pieces))
}

/// The strongest line after the loudest moment.
fn slowest(t: &[f64], y: &[f64], rate_hz: f64) -> Option<f64> {
    let pieces = Pieces::of(y, rate_hz, 0.04);
    let from = largest(&pieces.loud)? * pieces.samples;
    let to = (from + (3.0 * rate_hz) as usize).min(y.len());
    let step = 0.25 * rate_hz / (to - from).max(1) as f64;
    let lines = ring::spectrum(
        &t[from..to],
        &pieces.swing[from..to],
        0.8,
        0.45 * rate_hz,
        step,
    );
    Some(ring::loudest(&lines).unwrap_or(10.0))
}

fn largest(values: &[f64]) -> Option<usize> {
    values
        .iter()
        .enumerate()
        .max_by(|a, b| a.1.total_cmp(b.1))
        .map(|(i, _)| i)
}

fn blow(pieces: &Pieces, i: usize, next: usize, rate_hz: f64, noise: f64) -> Blow {
    let samples = pieces.samples;
    let (from, to) = (
        i.saturating_sub(1) * samples,
        ((i + 2) * samples).min(pieces.swing.len()),
    );
    let sizes: Vec<f64> = pieces.swing[from..to].iter().map(|y| y.abs()).collect();
    let at = from + largest(&sizes).unwrap_or(0);
    let last = next
        .min(at + (LONGEST_S * rate_hz) as usize)
        .min(pieces.swing.len());
    // The end is where the noise has it: five pieces in a row no louder than one and a half times the noise.
    let quiet = (i + 3..pieces.loud.len().saturating_sub(5))
        .find(|j| mean(&pieces.loud[*j..j + 5]) < 1.5 * noise)
        .map_or(last, |j| (j + 5) * samples);
    Blow {
        at,
        end: last.min(quiet.max(at + (0.5 * rate_hz) as usize)),
    }
}
