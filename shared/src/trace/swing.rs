//! One blow's swing: its window, its poles, how well they are known, and when to say that they are not.

use crate::trace::columns::Series;
use crate::trace::fit::{Fitted, fit};
use crate::trace::knocks::Blow;
use crate::trace::ladder::Ladder;
use crate::trace::statistics::{averaged, less_running_mean, mean};
use crate::trace::{hum, ring, said};

/// What is looked at.
pub(super) struct Window<'a> {
    pub(super) series: &'a Series,
    pub(super) blow: Blow,
    /// Samples that are cut off; empty where none are.
    pub(super) cut: &'a [bool],
    pub(super) steady: &'a [f64],
    /// Noise of one sample before the blow.
    pub(super) noise: f64,
    /// How loud the record was just before the blow, as the amplitude of a swing.
    pub(super) before: Option<f64>,
    pub(super) rate_hz: f64,
}

/// One swing that is heard.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Heard {
    pub(super) hz: f64,
    pub(super) hz_sd: f64,
    pub(super) ratio: f64,
    pub(super) ln_ratio_sd: f64,
}

/// What one blow left.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Swing {
    /// The loudest first.
    pub(super) modes: Vec<Heard>,
    pub(super) drift_per_s: f64,
    /// Whether what was fitted as one may be two.
    pub(super) perhaps_two: bool,
    pub(super) remarks: Vec<String>,
}

/// What is left may be so many times the noise before the knock; beyond it something else was there.
const STRANGE: f64 = 3.0;
/// A knock rings louder than this many times what was there before it.
const ABOVE_BEFORE: f64 = 3.5;
/// Another swing that is told has at least this share of the first one's energy.
const SECOND: f64 = 0.01;
/// How badly the damping is known of what may be two swings.
pub(super) const OF_TWO: f64 = 0.6;
/// Two swings that look like one explain at least so much of the record.
const OF_TWO_EXPLAINED: f64 = 0.8;
/// Most samples that are fitted; more are averaged.
const MOST_FITTED: usize = 2400;

/// Finds the swing after a blow, or says why it cannot be answered.
pub(super) fn find(window: &Window) -> Result<Swing, String> {
    let Window {
        series,
        blow,
        cut,
        rate_hz,
        ..
    } = *window;
    let centred = less_running_mean(
        &series.y[blow.at..blow.end],
        ((0.5 * rate_hz) as usize).max(4),
    );
    let early = ((3.0 * rate_hz) as usize).min(centred.len());
    let span = series.t[blow.at + early - 1] - series.t[blow.at];
    if early < 24 || span.is_nan() || span <= 0.0 {
        return Err("the record ends too soon after the knock".to_owned());
    }
    let lines = ring::spectrum(
        &series.t[blow.at..blow.at + early],
        &centred[..early],
        0.8,
        0.45 * rate_hz,
        0.25 / span,
    );
    let away_from_hum: Vec<(f64, f64)> = lines
        .iter()
        .copied()
        .filter(|(hz, _)| {
            window
                .steady
                .iter()
                .all(|steady| (hz - steady).abs() > 1.0 / span)
        })
        .collect();
    let loudest = ring::loudest(&away_from_hum).ok_or("no swing stands out")?;
    // The blow itself lasts about one swing.
    let from = blow.at + ((rate_hz / loudest).ceil() as usize).max(1);
    if from + 24 > blow.end {
        return Err("the record ends too soon after the knock".to_owned());
    }
    let kept: Vec<usize> = (from..blow.end)
        .filter(|i| !cut.get(*i).copied().unwrap_or(false))
        .collect();
    let all = blow.end - from;
    let swings = (series.t[blow.end - 1] - series.t[from]) * loudest;
    if (all - kept.len()) * 10 > 3 * all {
        return Err(
            "more than three tenths of the swing are cut off by the sensor's range".to_owned(),
        );
    }
    if swings < 5.0 || kept.len() < 40 {
        return Err(format!(
            "only {} swings can be seen; five are needed",
            said(swings.floor())
        ));
    }
    let begin = series.t[from];
    let t: Vec<f64> = kept.iter().map(|i| series.t[*i] - begin).collect();
    let y: Vec<f64> = kept.iter().map(|i| series.y[*i]).collect();
    let together = (t.len() / MOST_FITTED + 1)
        .min((rate_hz / (10.0 * loudest)) as usize)
        .max(1);
    let (t, y) = if together > 1 {
        averaged(&t, &y, together)
    } else {
        (t, y)
    };
    judged(window, &t, &y, loudest, together, begin - series.t[blow.at])
}

fn judged(
    window: &Window,
    t: &[f64],
    y: &[f64],
    loudest: f64,
    together: usize,
    since_s: f64,
) -> Result<Swing, String> {
    let step = together as f64 / window.rate_hz;
    let ladder =
        Ladder::climb(t, y, loudest, step, window.steady).ok_or("no swing can be fitted")?;
    let Ladder {
        fitted,
        perhaps_two,
    } = ladder;
    let main = (0..fitted.modes.len())
        .min_by(|a, b| {
            let off = |k: &usize| (fitted.modes[*k].frequency_hz - loudest).abs();
            off(a).total_cmp(&off(b))
        })
        .ok_or("no swing can be fitted")?;
    let pole = fitted.modes[main];
    let (hz, ratio) = (pole.frequency_hz, pole.ratio());
    if (hz / loudest - 1.0).abs() > 0.06 {
        return Err("the loudest line and the fitted swing disagree".to_owned());
    }
    let near_mains = hum::all_folded(window.rate_hz)
        .iter()
        .any(|line| (hz - line).abs() < 0.4);
    if ratio < 0.0008 || (near_mains && ratio < 0.003) {
        return Err(format!(
            "what is heard at {} Hz is a steady hum and does not die",
            said(hz)
        ));
    }
    if fitted.explained < 0.6 {
        return Err("the record holds more of something else than of a swing that dies".to_owned());
    }
    let noise = window.noise / (together as f64).sqrt();
    let free = (t.len() - fitted.unknowns).max(1) as f64;
    let left = fitted.left / free;
    let louder = noise > 0.0 && left > 1.5 * noise * noise;
    if left > (STRANGE * noise).powi(2) && fitted.explained < 0.92 {
        return Err(
            "far more is left beside the swing than the noise before the knock, as when a lorry passes".to_owned(),
        );
    }
    let rang = fitted.amplitudes[main] * (pole.decay_per_s * since_s).exp();
    if window
        .before
        .is_some_and(|before| rang < ABOVE_BEFORE * before)
    {
        return Err(
            "the record was loud before it already, as when a lorry passes or another knock still rings"
                .to_owned(),
        );
    }
    let perhaps_two = perhaps_two || (louder && fitted.modes.len() == 1);
    if perhaps_two && fitted.explained < OF_TWO_EXPLAINED {
        return Err("the record holds something else beside one swing that dies".to_owned());
    }
    let mut remarks = Vec::new();
    let mut modes: Vec<Heard> = Vec::new();
    for k in std::iter::once(main).chain((0..fitted.modes.len()).filter(|k| *k != main)) {
        let pole = fitted.modes[k];
        let grown = widened(t, &fitted, pole.frequency_hz);
        let mut heard = Heard {
            hz: pole.frequency_hz,
            hz_sd: fitted.sd[k][0] * grown,
            ratio: pole.ratio(),
            ln_ratio_sd: fitted.sd[k][1] * grown,
        };
        // Two swings closer than their own widths look like one that is known too well.
        if k == main && perhaps_two {
            heard.hz_sd = heard
                .hz_sd
                .max(pole.decay_per_s / (4.0 * std::f64::consts::PI));
            heard.ln_ratio_sd = heard.ln_ratio_sd.max(OF_TWO);
            remarks.push(
                "Perhaps two swings close together: more is left than the noise before the knock."
                    .to_owned(),
            );
        }
        if k == main {
            let changes = dies_otherwise(t, y, &fitted, main, window.steady, &mut heard);
            if changes && (fitted.modes.len() > 2 || perhaps_two) {
                return Err(
                    "what is heard changes all the time and is no swing that dies".to_owned(),
                );
            }
            if changes {
                remarks.push(
                    "The swing changes as it dies: something slips or gapes, or two swings are mixed."
                        .to_owned(),
                );
            }
            if !window.cut.is_empty() {
                heard.ln_ratio_sd *= 2.0;
            }
            modes.push(heard);
        } else if window.cut.is_empty() && tells(&fitted, k, main, &heard, noise) {
            modes.push(heard);
        }
    }
    let main = modes[0];
    if main.hz_sd > 0.05 * main.hz {
        return Err("the frequency is not known to one part in twenty".to_owned());
    }
    if main.ln_ratio_sd > 0.35 && !perhaps_two {
        return Err("the damping is not known to a third; it may be no free swing".to_owned());
    }
    Ok(Swing {
        modes,
        drift_per_s: fitted.drift_per_s,
        perhaps_two,
        remarks,
    })
}

/// Whether another swing is known well enough to be told.
fn tells(fitted: &Fitted, k: usize, main: usize, heard: &Heard, noise: f64) -> bool {
    let energy = |k: usize| fitted.amplitudes[k].powi(2) / fitted.modes[k].decay_per_s;
    heard.ln_ratio_sd < 0.35
        && heard.hz_sd < 0.02 * heard.hz
        && heard.ratio < 0.2
        && heard.ratio > 0.0008
        && fitted.amplitudes[k] > 4.0 * noise
        && energy(k) > SECOND * energy(main)
}

/// By how much the plain width is too small: what is left is louder about the swing than elsewhere, or early than late.
fn widened(t: &[f64], fitted: &Fitted, hz: f64) -> f64 {
    let span = t[t.len() - 1];
    let fastest = 0.45 * (t.len() - 1) as f64 / span;
    let step = (0.5 / span).max(fastest / 1500.0);
    let lines = ring::spectrum(
        t,
        &fitted.residual,
        0.8_f64.min(0.5 * fastest),
        fastest,
        step,
    );
    let power: Vec<f64> = lines.iter().map(|(_, power)| *power).collect();
    let near: Vec<f64> = lines
        .iter()
        .filter(|(line, _)| (line / hz - 1.0).abs() < 0.12)
        .map(|(_, power)| *power)
        .collect();
    let coloured = if near.len() >= 3 {
        (mean(&near) / mean(&power).max(1e-300)).max(1.0)
    } else {
        1.0
    };
    let half = fitted.residual.len() / 2;
    let of = |values: &[f64]| mean(&values.iter().map(|r| r * r).collect::<Vec<_>>());
    let early = (of(&fitted.residual[..half]) / of(&fitted.residual).max(1e-300)).max(1.0);
    // Half of a white record is louder than the whole by chance.
    let early = if early < 1.0 + 3.0 / (fitted.residual.len() as f64).sqrt() {
        1.0
    } else {
        early
    };
    (coloured.sqrt() * early).min(30.0)
}

/// A swing whose frequency or decay changes while it dies is no line of a linear thing; its width says so.
fn dies_otherwise(
    t: &[f64],
    y: &[f64],
    fitted: &Fitted,
    main: usize,
    steady: &[f64],
    heard: &mut Heard,
) -> bool {
    let pole = fitted.modes[main];
    let later = (0.5 / pole.decay_per_s).min(0.35 * t[t.len() - 1]);
    let from = t.iter().position(|t| *t >= later).unwrap_or(0);
    let Some(late) = fit(&t[from..], &y[from..], &fitted.modes, steady) else {
        return false;
    };
    let Some((mode, sd)) = late.modes.get(main).zip(late.sd.get(main)) else {
        return false;
    };
    let by = (mode.frequency_hz - pole.frequency_hz).abs();
    let slower = (mode.ratio() / heard.ratio).ln().abs();
    let unsure = sd[0].hypot(heard.hz_sd);
    let unsure_ratio = sd[1].hypot(heard.ln_ratio_sd);
    // A late fit that knows hardly anything says nothing.
    let changes_hz = by > 2.5 * unsure && by < 0.1 * pole.frequency_hz;
    let changes_ratio = slower > 2.5 * unsure_ratio && sd[1] < 0.5;
    if changes_hz || changes_ratio {
        heard.hz_sd = heard.hz_sd.max(0.7 * by).max(0.25 * heard.ratio * heard.hz);
        heard.ln_ratio_sd = heard.ln_ratio_sd.max(0.7 * slower);
    }
    changes_hz || changes_ratio
}
