//! Piers that fit: drawn from the plan's ranges, then led by and by to those that the measurements allow.
//!
//! # Source
//! Tempered sequential Monte Carlo with Metropolis moves (P. Del Moral, A. Doucet and A. Jasra 2006, from memory). Ranges by
//! Laplace's method and by importance sampling about the best points were measured to miss, computed apart.

use nalgebra::{SMatrix, SVector};

use crate::proof::chance::Chance;
use crate::proof::measure::{Expected, Of};
use crate::proof::pier::{Point, Standing, UNKNOWNS};

/// Draws of the prior.
pub const BANK: usize = 2048;
/// Piers that are led.
pub const LED: usize = 700;
/// Least effective number of a stage, of those led.
const LEAST: f64 = 0.5;
/// Metropolis steps at each stage, in standard deviations.
const STEPS: [f64; 3] = [0.6, 0.25, 0.6];
/// Most stages.
const MOST_STAGES: usize = 40;

/// One pier.
#[derive(Debug, Clone)]
pub struct Draw {
    /// Where.
    pub at: Point,
    /// What each measurement would be.
    pub expected: Vec<Expected>,
    ln_likelihood: f64,
}

#[cfg(test)]
impl Draw {
    /// A pier of which nothing was tried.
    pub(super) fn at(at: Point) -> Self {
        Self {
            at,
            expected: Vec::new(),
            ln_likelihood: 0.0,
        }
    }
}

/// What was found.
#[derive(Debug, Clone)]
pub struct Sampled {
    /// Draws of the prior, those that have a solution.
    pub prior: Vec<Draw>,
    /// Piers that the measurements allow, all alike likely.
    pub posterior: Vec<Draw>,
    /// Whether they may be trusted: enough different ones, and they still moved at the end.
    pub holds: bool,
}

/// Leads draws of the prior to what the measurements allow.
pub fn sample(standing: &Standing, seed: u64) -> Sampled {
    let of: Vec<&Of> = standing
        .measures
        .iter()
        .map(|measure| &measure.of)
        .collect();
    let tried = |at: Point, rounds: usize| -> Option<Draw> {
        let expected = standing.expected(&at, &of, rounds)?;
        let ln_likelihood = expected
            .iter()
            .zip(&standing.measures)
            .map(|(expected, measure)| expected.ln_likelihood(measure))
            .sum::<f64>();
        ln_likelihood.is_finite().then_some(Draw {
            at,
            expected,
            ln_likelihood,
        })
    };
    let prior: Vec<Draw> = (0..BANK)
        .filter_map(|place| tried(Standing::drawn(place), 2))
        .collect();
    let mut chance = Chance::new(seed);
    let mut power = 0.0;
    let mut led: Vec<Draw> = prior.clone();
    let (mut accepted, mut stages) = (1.0, 0);
    while power < 1.0 && stages < MOST_STAGES && led.len() > 10 {
        let next = next_power(&led, power);
        led = resampled(&led, next - power, &mut chance);
        power = next;
        for step in STEPS {
            let Some(root) = spread(&led) else {
                break;
            };
            let mut took = 0;
            for draw in &mut led {
                let away = root * SVector::<f64, UNKNOWNS>::from_fn(|_, _| chance.normal()) * step;
                let at: Point = std::array::from_fn(|k| draw.at[k] + away[k]);
                let luck = chance.even().ln();
                let Some(other) = tried(at, 2) else {
                    continue;
                };
                let weight = |draw: &Draw| {
                    power * draw.ln_likelihood - 0.5 * draw.at.iter().map(|z| z * z).sum::<f64>()
                };
                if luck < weight(&other) - weight(draw) {
                    *draw = other;
                    took += 1;
                }
            }
            accepted = f64::from(took) / led.len() as f64;
        }
        stages += 1;
    }
    let mut places: Vec<f64> = led.iter().map(|draw| draw.at[0]).collect();
    places.sort_by(f64::total_cmp);
    places.dedup();
    let holds = power >= 1.0 && accepted >= 0.05 && places.len() >= 50;
    Sampled {
        prior,
        posterior: led,
        holds,
    }
}

/// Effective number of draws weighted by a power of their likelihood.
fn effective(draws: &[Draw], by: f64) -> f64 {
    let most = draws
        .iter()
        .map(|draw| draw.ln_likelihood)
        .fold(f64::NEG_INFINITY, f64::max);
    let (mut sum, mut squares) = (0.0, 0.0);
    for draw in draws {
        let weight = (by * (draw.ln_likelihood - most)).exp();
        sum += weight;
        squares += weight * weight;
    }
    sum * sum / squares
}

/// The largest power at which enough draws still count.
fn next_power(draws: &[Draw], power: f64) -> f64 {
    let wanted = LEAST * LED.min(draws.len()) as f64;
    if effective(draws, 1.0 - power) >= wanted {
        return 1.0;
    }
    let (mut low, mut high) = (0.0, 1.0 - power);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if effective(draws, middle) >= wanted {
            low = middle
        } else {
            high = middle
        }
    }
    (power + low.max(1e-6)).min(1.0)
}

/// Draws in proportion to their weights, by one throw of evenly spaced darts.
fn resampled(draws: &[Draw], by: f64, chance: &mut Chance) -> Vec<Draw> {
    let most = draws
        .iter()
        .map(|draw| draw.ln_likelihood)
        .fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = draws
        .iter()
        .map(|draw| (by * (draw.ln_likelihood - most)).exp())
        .collect();
    let all: f64 = weights.iter().sum();
    let mut found = Vec::with_capacity(LED);
    let (mut sum, mut place) = (weights[0], 0);
    let first = chance.even();
    for i in 0..LED {
        let dart = all * (i as f64 + first) / LED as f64;
        while sum < dart && place + 1 < draws.len() {
            place += 1;
            sum += weights[place];
        }
        found.push(draws[place].clone());
    }
    found
}

/// Root of the draws' covariance.
fn spread(draws: &[Draw]) -> Option<SMatrix<f64, UNKNOWNS, UNKNOWNS>> {
    covariance(draws).map(|mut covariance| {
        for k in 0..UNKNOWNS {
            covariance[(k, k)] += 1e-9;
        }
        covariance.cholesky().map(|cholesky| cholesky.l())
    })?
}

/// Covariance of the draws.
pub fn covariance(draws: &[Draw]) -> Option<SMatrix<f64, UNKNOWNS, UNKNOWNS>> {
    let count = draws.len() as f64;
    if draws.len() < 2 {
        return None;
    }
    let mean = draws
        .iter()
        .fold(SVector::<f64, UNKNOWNS>::zeros(), |sum, draw| {
            sum + SVector::from(draw.at)
        })
        / count;
    let mut all = SMatrix::<f64, UNKNOWNS, UNKNOWNS>::zeros();
    for draw in draws {
        let off = SVector::from(draw.at) - mean;
        all += off * off.transpose();
    }
    Some(all / (count - 1.0))
}
