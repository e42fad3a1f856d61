//! When the samples were taken: the rate from the whole span, rounded stamps undone, gaps found.

use crate::trace::said;
use crate::trace::statistics::median;
use crate::trace::{Asked, Kind, Refusal};

/// What one in the column of times is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum TimeUnit {
    /// So many seconds, by name or by what was said.
    Said(f64),
    /// A date or the time of day.
    Moments,
    /// Not said.
    Unsaid,
}

/// A gap is longer than so many samples.
const GAP: f64 = 2.5;

/// How the samples follow each other.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Clock {
    pub(super) rate_hz: f64,
    /// Whether the samples stand apart evenly, gaps aside.
    pub(super) even: bool,
    pub(super) gaps: Vec<[f64; 2]>,
}

/// Seconds from the first row, in order.
///
/// # Errors
/// The times stand still or are too far apart to be a measurement.
pub(super) fn find(
    raw: Vec<f64>,
    rows: usize,
    unit: TimeUnit,
    asked: &Asked,
    remarks: &mut Vec<String>,
) -> Result<(Vec<f64>, Clock), Refusal> {
    if raw.len() != rows || raw.is_empty() {
        let rate_hz = asked.rate_hz.ok_or_else(|| {
            Refusal::new("nothing in the file says when the samples were taken; say how many there are a second (rate)")
        })?;
        let t = (0..rows).map(|i| i as f64 / rate_hz).collect();
        return Ok((
            t,
            Clock {
                rate_hz,
                even: true,
                gaps: Vec::new(),
            },
        ));
    }
    let mut t = in_seconds(raw, unit, asked, remarks)?;
    roll_over(&mut t, unit);
    let back = t.windows(2).filter(|pair| pair[1] < pair[0]).count();
    if back * 20 > rows {
        return Err(Refusal::new(format!(
            "the times go backwards {back} times; name the column of times, or say the samples a second (rate)"
        )));
    }
    if back > 0 {
        remarks.push(format!(
            "The times go backwards {back} times; such rows are set where the row before stands."
        ));
        // Rows stay in their order, so that a measurement keeps its own time as nearly as can be said.
        let mut latest = f64::NEG_INFINITY;
        for time in &mut t {
            latest = latest.max(*time);
            *time = latest;
        }
    }
    let first = t[0];
    t.iter_mut().for_each(|time| *time -= first);
    let span = t[rows - 1];
    if !(span > 0.0 && span.is_finite()) {
        return Err(Refusal::new(
            "the times stand still; say how many samples there are a second (rate)",
        ));
    }
    if span > 200_000.0 {
        return Err(Refusal::new(format!(
            "the record would last {} days by its times; cut out the minute of the measurement, or say in which unit the \
             times are (for instance time “1:ms”)",
            said((span / 8640.0).round() / 10.0)
        )));
    }
    let clock = settle(&mut t, asked, remarks);
    Ok((t, clock))
}

fn in_seconds(
    raw: Vec<f64>,
    unit: TimeUnit,
    asked: &Asked,
    remarks: &mut Vec<String>,
) -> Result<Vec<f64>, Refusal> {
    let factor = match unit {
        TimeUnit::Said(seconds) => seconds,
        TimeUnit::Moments => 1.0,
        TimeUnit::Unsaid => {
            let first = raw[0].abs();
            let steps: Vec<f64> = raw
                .windows(2)
                .map(|pair| pair[1] - pair[0])
                .filter(|step| *step > 0.0)
                .take(2000)
                .collect();
            let step = median(&steps);
            let factor = if first > 1e17 {
                1e-9
            } else if first > 1e14 {
                1e-6
            } else if first > 1e11 {
                1e-3
            } else if first > 1e8 || asked.kind == Some(Kind::Lean) || step < 0.4 {
                1.0
            } else if step >= 2.0 {
                1e-3
            } else {
                return Err(Refusal::new(format!(
                    "times {} apart may be seconds or milliseconds; say which with the column of times (for instance time \
                     “1:s” or “1:ms”)",
                    said(step)
                )));
            };
            let said = match factor {
                1.0 => "seconds",
                1e-3 => "milliseconds",
                1e-6 => "microseconds",
                _ => "nanoseconds",
            };
            remarks.push(format!(
                "The unit of the times is not said; taken for {said}."
            ));
            factor
        }
    };
    let from = raw[0];
    let seconds: Vec<f64> = raw.into_iter().map(|time| (time - from) * factor).collect();
    if seconds
        .iter()
        .any(|time| !time.is_finite() || time.abs() > 1e9)
    {
        return Err(Refusal::new(
            "the times are no times; name the column of times, or say how many samples there are a second (rate)",
        ));
    }
    Ok(seconds)
}

/// The time of day begins anew at midnight.
fn roll_over(t: &mut [f64], unit: TimeUnit) {
    if unit != TimeUnit::Moments {
        return;
    }
    let (mut added, mut last) = (0.0, t[0]);
    for time in t {
        if *time + added < last - 43_200.0 {
            added += 86_400.0;
        }
        *time += added;
        last = *time;
    }
}

fn settle(t: &mut [f64], asked: &Asked, remarks: &mut Vec<String>) -> Clock {
    let rows = t.len();
    // Every so many steps are enough for the usual one.
    let every = rows / 50_000 + 1;
    let some: Vec<f64> = t
        .windows(2)
        .step_by(every)
        .map(|pair| pair[1] - pair[0])
        .collect();
    let quantum = quantum(t);
    // Stamps rounded to a quantum may stand still or leap by it; the mean step is right whatever they do.
    let usual = median(&some).max(t[rows - 1] / (rows - 1) as f64 * 0.5);
    let limit = (GAP * usual).max(usual + 1.5 * quantum);
    let gaps: Vec<[f64; 2]> = t
        .windows(2)
        .filter(|pair| pair[1] - pair[0] > limit)
        .map(|pair| [pair[0], pair[1]])
        .collect();
    let lost: f64 = gaps.iter().map(|gap| gap[1] - gap[0]).sum();
    let steps = (rows - 1 - gaps.len()).max(1);
    let mut step = (t[rows - 1] - lost) / steps as f64;
    let mut even = false;
    if gaps.is_empty() {
        let (begin, slope) = line(t);
        let worst = t
            .iter()
            .enumerate()
            .map(|(i, time)| (time - begin - slope * i as f64).abs())
            .fold(0.0, f64::max);
        even = worst <= 1.05 * quantum + 1e-3 * slope;
        if even && slope > 0.0 {
            step = slope;
            if worst > 1e-3 * slope {
                remarks.push(format!(
                    "The times are rounded to {} s; the samples are taken as even, as they follow one line.",
                    said(quantum)
                ));
            }
            t.iter_mut()
                .enumerate()
                .for_each(|(i, time)| *time = slope * i as f64);
        }
    }
    let rate_hz = 1.0 / step;
    remarks.push(format!(
        "{} samples a second by the whole span, {} s.",
        said((rate_hz * 100.0).round() / 100.0),
        said((t[rows - 1] * 100.0).round() / 100.0)
    ));
    if !even {
        let about: Vec<f64> = some
            .iter()
            .filter(|gap| **gap <= limit)
            .map(|gap| (gap - step).abs())
            .collect();
        if median(&about) > 0.02 * step && asked.rate_hz.is_none() {
            remarks
                .push("The samples are not evenly apart; each is used at its own time.".to_owned());
        }
    }
    if !gaps.is_empty() {
        remarks.push(format!(
            "There are {} gaps, {} s in all; nothing is filled in.",
            gaps.len(),
            said((lost * 100.0).round() / 100.0)
        ));
    }
    Clock {
        rate_hz,
        even,
        gaps,
    }
}

/// Least-squares line of the times over their places.
fn line(t: &[f64]) -> (f64, f64) {
    let middle = (t.len() - 1) as f64 / 2.0;
    let mean = t.iter().sum::<f64>() / t.len() as f64;
    let (mut top, mut bottom) = (0.0, 0.0);
    for (i, time) in t.iter().enumerate() {
        let place = i as f64 - middle;
        top += place * (time - mean);
        bottom += place * place;
    }
    let slope = if bottom > 0.0 { top / bottom } else { 0.0 };
    (mean - slope * middle, slope)
}

/// To what the times are rounded; nought where it is finer than a millionth of a second.
fn quantum(t: &[f64]) -> f64 {
    [1.0, 0.1, 0.01, 0.001, 1e-4, 1e-5, 1e-6]
        .into_iter()
        .find(|q| {
            t.iter().take(5000).all(|time| {
                let places = time / q;
                (places - places.round()).abs() < 1e-3 + 1e-9 * places.abs()
            })
        })
        .unwrap_or(0.0)
}
