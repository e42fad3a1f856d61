//! How many swings there are: one more is taken as long as it is worth its unknowns and can be told apart.

use crate::trace::fit::{Damped, Fitted, fit};
use crate::trace::statistics::{averaged, mean};
use crate::trace::{pencil, ring};

/// Sinusoids at most.
const MOST: usize = 3;

/// One, two, three sinusoids, as long as one more is worth its unknowns.
pub(super) struct Ladder {
    pub(super) fitted: Fitted,
    /// One more would explain more, and cannot be told apart.
    pub(super) perhaps_two: bool,
}

impl Ladder {
    pub(super) fn climb(
        t: &[f64],
        y: &[f64],
        loudest: f64,
        step: f64,
        steady: &[f64],
    ) -> Option<Self> {
        let poles = poles(t, y, loudest, step);
        let near = |hz: f64| {
            poles.iter().copied().min_by(|a, b| {
                (a.frequency_hz - hz)
                    .abs()
                    .total_cmp(&(b.frequency_hz - hz).abs())
            })
        };
        let plain = |hz: f64| Damped {
            frequency_hz: hz,
            decay_per_s: 0.08 * hz,
        };
        let one = near(loudest).filter(|pole| (pole.frequency_hz / loudest - 1.0).abs() < 0.06);
        let mut best = [
            one,
            Some(plain(loudest)),
            Some(Damped {
                decay_per_s: 0.03 * loudest,
                ..plain(loudest)
            }),
        ]
        .into_iter()
        .flatten()
        .filter_map(|start| fit(t, y, &[start], steady))
        .min_by(|a, b| a.left.total_cmp(&b.left))?;
        let mut perhaps_two = false;
        while best.modes.len() < MOST {
            let mut starts: Vec<Vec<Damped>> = Vec::new();
            if best.modes.len() == 1 {
                let mut sorted = poles.clone();
                sorted.sort_by(|a, b| {
                    (a.frequency_hz - loudest)
                        .abs()
                        .total_cmp(&(b.frequency_hz - loudest).abs())
                });
                if let [a, b, ..] = sorted.as_slice() {
                    starts.push(vec![*a, *b]);
                }
            }
            if let Some(next) = next_line(t, &best.residual) {
                starts.push([best.modes.clone(), vec![plain(next)]].concat());
            }
            let Some(more) = starts
                .iter()
                .filter_map(|start| fit(t, y, start, steady))
                .min_by(|a, b| a.left.total_cmp(&b.left))
            else {
                break;
            };
            if information(&more, t.len()) > information(&best, t.len()) - 6.0 {
                break;
            }
            if !apart(&more) {
                perhaps_two |= crowded(&more);
                break;
            }
            best = more;
        }
        Some(Self {
            fitted: best,
            perhaps_two,
        })
    }
}

/// Schwarz's criterion, less what all share.
fn information(fitted: &Fitted, samples: usize) -> f64 {
    let n = samples as f64;
    n * (fitted.left / n).max(1e-300).ln() + fitted.unknowns as f64 * n.ln()
}

fn pairs(fitted: &Fitted) -> impl Iterator<Item = (usize, usize)> {
    let count = fitted.modes.len();
    (0..count).flat_map(move |i| (i + 1..count).map(move |j| (i, j)))
}

/// Difference of two frequencies in widths of the wider swing.
fn ratio_apart(fitted: &Fitted, i: usize, j: usize) -> f64 {
    let decay = fitted.modes[i].decay_per_s.max(fitted.modes[j].decay_per_s);
    (fitted.modes[i].frequency_hz - fitted.modes[j].frequency_hz).abs() * std::f64::consts::TAU
        / decay
}

/// Whether each is known, and none is another's shadow.
fn apart(fitted: &Fitted) -> bool {
    fitted.sd.iter().all(|sd| sd[1] < 0.5)
        && pairs(fitted).all(|(i, j)| {
            let off = (fitted.modes[i].frequency_hz - fitted.modes[j].frequency_hz).abs();
            ratio_apart(fitted, i, j) >= 1.0 && off >= 4.0 * fitted.sd[i][0].hypot(fitted.sd[j][0])
        })
}

fn crowded(fitted: &Fitted) -> bool {
    pairs(fitted).any(|(i, j)| {
        let off = (fitted.modes[i].frequency_hz / fitted.modes[j].frequency_hz - 1.0).abs();
        off < 0.08
    })
}

fn next_line(t: &[f64], residual: &[f64]) -> Option<f64> {
    let span = t.last()?;
    let fastest = 0.45 * (t.len() - 1) as f64 / span;
    if fastest < 1.0 {
        return None;
    }
    ring::loudest(&ring::spectrum(
        t,
        residual,
        0.8,
        fastest,
        (0.25 / span).max(fastest / 3000.0),
    ))
}

/// Poles by the pencil, on the record brought to even times: starts only.
fn poles(t: &[f64], y: &[f64], loudest: f64, step: f64) -> Vec<Damped> {
    let together = ((1.0 / step) / (8.0 * loudest)).floor().max(1.0) as usize;
    let (t, y) = averaged(t, y, together);
    let step = step * together as f64;
    if t.len() < 12 {
        return Vec::new();
    }
    let samples = (((t[t.len() - 1] - t[0]) / step).floor() as usize + 1).min(700);
    let (mut even, mut at) = (Vec::with_capacity(samples), 0);
    for i in 0..samples {
        let time = t[0] + step * i as f64;
        while at + 2 < t.len() && t[at + 1] <= time {
            at += 1;
        }
        let share = ((time - t[at]) / (t[at + 1] - t[at]).max(1e-12)).clamp(0.0, 1.0);
        even.push(y[at] + share * (y[at + 1] - y[at]));
    }
    let level = mean(&even);
    even.iter_mut().for_each(|y| *y -= level);
    pencil::start(&even, step, 3)
}
