//! A star's places while somebody steps to a place and away: the step by generalised least squares, with seeing that
//! lasts, a mount that wanders and readings that are rounded.
//!
//! # Source
//! Generalised least squares with restricted likelihood for what the noise is (D. A. Harville 1977, from memory); the
//! noise as a sum of a process that forgets, a walk at random and white noise, whitened by a filter of two states
//! (R. E. Kalman 1960, from memory).

use crate::trace::bearing::{together, towards};
use crate::trace::columns::{Read, Series};
use crate::trace::restricted::restricted;
use crate::trace::statistics::{mean, median};
use crate::trace::{Asked, FoundStep, Kind, Trace, said, visits};

/// Rows that are worked with at most; more are averaged.
const MOST_ROWS: usize = 4000;

/// Answers a record of steps.
pub(super) fn answer(read: Read, asked: &Asked) -> Trace {
    let Read {
        series,
        notes,
        unit,
        clock,
        columns,
        mut remarks,
        ..
    } = read;
    let mut both = None;
    let scale = asked.scale_arcsec_per_unit;
    match scale {
        Some(scale) => remarks.push(format!(
            "Sizes are in seconds of arc, {} to one of the column.",
            said(scale)
        )),
        None if unit == "arcsec" => {
            remarks.push("Sizes are in seconds of arc, as the column's name says.".to_owned())
        }
        None => remarks.push(
            "Sizes are in the column's own unit; state the scale for seconds of arc.".to_owned(),
        ),
    }
    let (mut steps, mut drift_per_s, mut refusals) = (Vec::new(), 0.0, Vec::new());
    match visits::find(&notes, asked, &mut remarks) {
        Err(why) => refusals.push(why),
        Ok(edges) => {
            let mut sizes = Vec::new();
            for (n, one) in series.iter().take(2).enumerate() {
                match of_one(one, &edges, scale.unwrap_or(1.0), clock.rate_hz) {
                    Ok(found) => {
                        if n == 0 {
                            drift_per_s = found.drift_per_s;
                        }
                        remarks.push(format!(
                            "“{}”: {} ± {}; by plain differences there and back {} ± {}.",
                            one.name,
                            said(found.size),
                            said(found.sd),
                            said(found.plain),
                            said(found.plain_sd)
                        ));
                        sizes.push((found.size, found.sd));
                        steps.push(FoundStep {
                            at_s: edges[0],
                            size: found.size,
                            sd: found.sd,
                        });
                    }
                    Err(why) => refusals.push(format!("“{}”: {why}", one.name)),
                }
            }
            match sizes.as_slice() {
                [first, second] => {
                    both = Some(together(*first, *second, &towards(&series, asked), &mut remarks));
                }
                [_] if refusals.is_empty() => remarks.push(
                    "One column tells the part of the step along itself alone; the whole of it takes two that lie across each other."
                        .to_owned(),
                ),
                _ => {}
            }
        }
    }
    for why in refusals.into_iter().rev() {
        remarks.insert(0, format!("No answer: {why}."));
    }
    Trace {
        kind: Kind::Lean,
        modes: Vec::new(),
        steps,
        together: both,
        columns,
        direction: None,
        drift_per_s,
        remarks,
    }
}

struct Step {
    size: f64,
    sd: f64,
    plain: f64,
    plain_sd: f64,
    drift_per_s: f64,
}

fn of_one(series: &Series, edges: &[f64], scale: f64, rate_hz: f64) -> Result<Step, String> {
    let rows = without_hits(series);
    let mut kept: Vec<[f64; 3]> = rows
        .into_iter()
        .filter_map(|(t, y)| Some([t, y * scale, visits::there(edges, t)?]))
        .collect();
    let together = kept.len() / MOST_ROWS + 1;
    if together > 1 {
        kept = averaged(&kept, together);
    }
    let there = kept.iter().filter(|row| row[2] > 0.5).count();
    if there < 8 || kept.len() - there < 8 {
        return Err(format!(
            "there are {there} readings with somebody there and {} without; eight of each are needed, at {} a second",
            kept.len() - there,
            said(rate_hz)
        ));
    }
    let (plain, plain_sd) = there_and_back(&kept, edges);
    let span = kept[kept.len() - 1][0] - kept[0][0];
    let design: Vec<Vec<f64>> = kept
        .iter()
        .map(|row| vec![row[2], 1.0, (row[0] - kept[0][0]) / span - 0.5])
        .collect();
    let y: Vec<f64> = kept.iter().map(|row| row[1]).collect();
    let t: Vec<f64> = kept.iter().map(|row| row[0]).collect();
    let fitted = restricted(&t, &y, &design).ok_or("the step cannot be told from the drift")?;
    let (size, sd) = (fitted.size, fitted.sd);
    if edges.len() >= 4 && (size - plain).abs() > 2.0 * sd.max(plain_sd) {
        return Err(format!(
            "the fit ({}) and plain differences ({}) disagree; the star moved for another reason",
            said(size),
            said(plain)
        ));
    }
    if guided(&kept, edges, size) {
        return Err(
            "the step goes back while somebody still stands there, as under guiding; turn guiding off and leave tracking on"
                .to_owned(),
        );
    }
    Ok(Step {
        size,
        sd,
        plain,
        plain_sd,
        drift_per_s: fitted.slope / span,
    })
}

/// Readings without those that stand out from their neighbours by more than five times the usual.
fn without_hits(series: &Series) -> Vec<(f64, f64)> {
    let off: Vec<f64> = (0..series.y.len())
        .map(|i| {
            let near = &series.y[i.saturating_sub(3)..(i + 4).min(series.y.len())];
            (series.y[i] - median(near)).abs()
        })
        .collect();
    let usual = median(&off);
    let limit = if usual > 0.0 {
        1.4826 * 5.0 * usual
    } else {
        f64::INFINITY
    };
    series
        .t
        .iter()
        .zip(&series.y)
        .zip(&off)
        .filter(|(_, off)| **off <= limit)
        .map(|((t, y), _)| (*t, *y))
        .collect()
}

fn averaged(rows: &[[f64; 3]], together: usize) -> Vec<[f64; 3]> {
    rows.chunk_by(|a, b| a[2] == b[2])
        .flat_map(|alike| alike.chunks(together))
        .map(|piece| {
            let of = |i: usize| piece.iter().map(|row| row[i]).sum::<f64>() / piece.len() as f64;
            [of(0), of(1), piece[0][2]]
        })
        .collect()
}

/// Stretches between which somebody comes or goes.
fn stretches(rows: &[[f64; 3]], edges: &[f64]) -> Vec<Vec<[f64; 3]>> {
    let mut found = vec![Vec::new(); edges.len() + 1];
    for row in rows {
        found[edges.iter().filter(|edge| **edge <= row[0]).count()].push(*row);
    }
    found
}

/// Each visit against the mean of what lies before and after it, as a person would do it.
fn there_and_back(rows: &[[f64; 3]], edges: &[f64]) -> (f64, f64) {
    let level: Vec<Option<f64>> = stretches(rows, edges)
        .iter()
        .map(|rows| {
            (rows.len() >= 2).then(|| mean(&rows.iter().map(|row| row[1]).collect::<Vec<_>>()))
        })
        .collect();
    let differences: Vec<f64> = (1..level.len())
        .step_by(2)
        .filter_map(|i| {
            let before = level[i - 1];
            let after = level.get(i + 1).copied().flatten();
            let beside = match (before, after) {
                (Some(before), Some(after)) => 0.5 * (before + after),
                (one, other) => one.or(other)?,
            };
            Some(level[i]? - beside)
        })
        .collect();
    let count = differences.len().max(1) as f64;
    let middle = mean(&differences);
    let squares: f64 = differences.iter().map(|d| (d - middle).powi(2)).sum();
    let sd = if differences.len() > 1 {
        (squares / (count - 1.0) / count).sqrt()
    } else {
        middle.abs()
    };
    (middle, sd)
}

/// Whether the step fades during the visits.
fn guided(rows: &[[f64; 3]], edges: &[f64], size: f64) -> bool {
    let found = stretches(rows, edges);
    let (mut first, mut last, mut noise) = (Vec::new(), Vec::new(), Vec::new());
    for i in (1..found.len()).step_by(2) {
        let (before, visit) = (&found[i - 1], &found[i]);
        if before.len() < 9 || visit.len() < 9 {
            continue;
        }
        let third = visit.len() / 3;
        let of = |rows: &[[f64; 3]]| mean(&rows.iter().map(|row| row[1]).collect::<Vec<_>>());
        let ground = of(&before[before.len() - third.min(before.len())..]);
        first.push(of(&visit[..third]) - ground);
        last.push(of(&visit[visit.len() - third..]) - ground);
        noise.push(crate::trace::statistics::spread(
            &visit.iter().map(|row| row[1]).collect::<Vec<_>>(),
        ));
    }
    if first.len() < 2 {
        return false;
    }
    let (first, last, noise) = (mean(&first), mean(&last), mean(&noise));
    first.abs() > 2.0 * noise && first.abs() > 2.5 * last.abs() && first.abs() > 1.5 * size.abs()
}
