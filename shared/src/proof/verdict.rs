//! From draws to words: ranges, agreement, suspects, and what to measure next.
//!
//! # Source
//! Prior predictive check (G. E. P. Box 1980, from memory); what makes a suspect was computed apart on made-up piers with a
//! wrong mount, ground and joint.

use crate::proof::chance::{Chance, below};
use crate::proof::fitted::{Agreement, Fitted, Range, Shares};
use crate::proof::measure::{Measure, Of};
use crate::proof::moments::{TOLD, moments, thirds};
use crate::proof::pier::{Standing, UNKNOWNS, Unknown};
use crate::proof::sampler::{Draw, Sampled};
use crate::proof::{next, suspects, words};
use crate::stages::motion::rig::Axis;

fn range(values: impl Iterator<Item = f64>, told: bool, holds: bool) -> Range {
    match thirds(values).filter(|_| holds) {
        Some([low, typical, high]) => Range {
            low: Some(low),
            typical: Some(typical),
            high: Some(high),
            told,
        },
        None => Range {
            low: None,
            typical: None,
            high: None,
            told: false,
        },
    }
}

/// All that is said of the draws; remedies and motion come afterwards.
pub(super) fn judge(standing: &Standing, sampled: &Sampled) -> Option<Fitted> {
    let (draws, holds) = (&sampled.posterior, sampled.holds);
    let moments = moments(draws)?;
    let told = |unknown: Unknown| holds && moments.sd[unknown as usize] < TOLD;
    let of = |unknown: Unknown, factor: f64| {
        range(
            draws
                .iter()
                .map(|draw| factor * standing.value(&draw.at, unknown)),
            told(unknown),
            holds,
        )
    };
    let firsts: Vec<_> = draws
        .iter()
        .filter_map(|draw| standing.mounted(&draw.at, Axis::X))
        .collect();
    let share = |part: usize| range(firsts.iter().map(|first| first.shares[part]), holds, holds);
    let shares = Shares {
        ground: share(0),
        joint: share(1),
        column: share(2),
        mount: share(3),
    };
    let agreement = agreement(standing, sampled)?;
    let chance_ratio = chance(standing, sampled);
    let suspects = suspects::find(&moments, &agreement, draws, chance_ratio, holds);
    let not_told: Vec<&'static str> = Unknown::TOLD
        .into_iter()
        .filter(|unknown| !told(*unknown))
        .map(Unknown::words)
        .collect();
    let next = next::find(standing, draws, holds);
    let mut fitted = Fitted {
        holds,
        shear_modulus_mpa: of(Unknown::Ground, 1e-6),
        side_contact_ratio: of(Unknown::Contact, 1.0),
        base_joint_stiffness_n_m_per_rad: of(Unknown::Joint, 1.0),
        column_stiffness_ratio: of(Unknown::Column, 1.0),
        mount_stiffness_n_m_per_rad: of(Unknown::Mount, 1.0),
        frequency_hz: range(firsts.iter().map(|first| first.hertz[0]), holds, holds),
        shares,
        agreement,
        chance_ratio,
        says: Vec::new(),
        suspects,
        not_told,
        together: if holds {
            words::together(&moments, draws)
        } else {
            Vec::new()
        },
        symptoms: Vec::new(),
        next,
        remedies: Vec::new(),
        motion: None,
    };
    fitted.says = words::of(&fitted);
    Some(fitted)
}

fn agreement(standing: &Standing, sampled: &Sampled) -> Option<Vec<Agreement>> {
    let of: Vec<&Of> = standing
        .measures
        .iter()
        .map(|measure| &measure.of)
        .collect();
    let foreseen = standing.expected(&[0.0; UNKNOWNS], &of, 2)?;
    standing
        .measures
        .iter()
        .enumerate()
        .map(|(i, measure)| {
            let nearer = |draw: &Draw| draw.expected[i].nearer(measure.value);
            let middle = thirds(sampled.prior.iter().map(nearer))?;
            let sd = (middle[2] / middle[0]).ln() / 3.29;
            let surprise = (measure.value / middle[1]).ln() / sd.hypot(measure.sd_ln);
            let fitted = sampled
                .holds
                .then(|| thirds(sampled.posterior.iter().map(nearer)))
                .flatten();
            let left_out = sampled
                .holds
                .then(|| left_out(&sampled.posterior, measure, i))
                .flatten();
            Some(Agreement {
                measurement: measure.words.clone(),
                measured: measure.value,
                foreseen: foreseen[i].nearer(measure.value),
                foreseen_between: [middle[0], middle[2]],
                fitted: fitted.map(|t| t[1]),
                fitted_between: fitted.map(|t| [t[0], t[2]]),
                sd_ratio: measure.sd_ln,
                surprise,
                left_out,
                unit: measure.unit,
                says: surprise_in_words(surprise, left_out),
            })
        })
        .collect()
}

fn surprise_in_words(surprise: f64, left_out: Option<f64>) -> String {
    let tail = 2.0 * below(-surprise.abs());
    let way = if surprise < 0.0 { "lower" } else { "higher" };
    let mut says = match tail {
        p if p > 0.1 => "as foreseen".to_owned(),
        p if p > 0.02 => format!("{way} than foreseen, yet possible"),
        p if p > 0.002 => {
            format!("much {way} than foreseen; what the plan says is unlikely to be right")
        }
        _ => format!("far {way} than foreseen: something else is going on than the plan says"),
    };
    if left_out.is_some_and(|z| z.abs() >= 2.5) {
        says.push_str("; it does not fit the other measurements, so look at its unit, mass, distance and direction first");
    }
    says
}

/// How far a measurement lies from what the others say: draws weighted by one over its own likelihood.
fn left_out(draws: &[Draw], measure: &Measure, i: usize) -> Option<f64> {
    if draws.first()?.expected.len() < 2 {
        return None;
    }
    let logs: Vec<f64> = draws
        .iter()
        .map(|draw| -draw.expected[i].ln_likelihood(measure))
        .collect();
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = logs.iter().map(|log| (log - most).exp()).collect();
    let (sum, squares) = weights
        .iter()
        .fold((0.0, 0.0), |(a, b), w| (a + w, b + w * w));
    if sum * sum / squares < 50.0 {
        return None;
    }
    let values: Vec<f64> = draws
        .iter()
        .map(|draw| (draw.expected[i].nearer(measure.value) / measure.value).ln())
        .collect();
    let mean = values.iter().zip(&weights).map(|(v, w)| v * w).sum::<f64>() / sum;
    let variance = values
        .iter()
        .zip(&weights)
        .map(|(v, w)| w * (v - mean).powi(2))
        .sum::<f64>()
        / sum;
    Some(-mean / (variance + measure.sd_ln.powi(2)).sqrt())
}

/// How many piers of this plan would lie as far from its middle as this one: counted, since the figures are not normal.
fn chance(standing: &Standing, sampled: &Sampled) -> Option<f64> {
    let count = standing.measures.len();
    let mut luck = Chance::new(5);
    let rows: Vec<Vec<f64>> = sampled
        .prior
        .iter()
        .map(|draw| {
            draw.expected
                .iter()
                .zip(&standing.measures)
                .map(|(expected, measure)| {
                    expected.nearer(measure.value).ln() + measure.sd_ln * luck.normal()
                })
                .collect()
        })
        .collect();
    if rows.len() < 100 {
        return None;
    }
    let mean: Vec<f64> = (0..count)
        .map(|i| rows.iter().map(|row| row[i]).sum::<f64>() / rows.len() as f64)
        .collect();
    let covariance = nalgebra::DMatrix::from_fn(count, count, |i, j| {
        rows.iter()
            .map(|row| (row[i] - mean[i]) * (row[j] - mean[j]))
            .sum::<f64>()
            / rows.len() as f64
    });
    let held = covariance.cholesky()?;
    let far = |row: &[f64]| {
        let off = nalgebra::DVector::from_fn(count, |i, _| row[i] - mean[i]);
        off.dot(&held.solve(&off))
    };
    let own: Vec<f64> = standing
        .measures
        .iter()
        .map(|measure| measure.value.ln())
        .collect();
    let own = far(&own);
    let farther = rows.iter().filter(|row| far(row) >= own).count();
    Some((farther as f64 + 0.5) / (rows.len() as f64 + 1.0))
}
