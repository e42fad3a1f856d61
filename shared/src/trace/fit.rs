//! Least squares of damped sinusoids on the given times by variable projection: frequency and decay are sought, and all
//! that the record depends on linearly is solved for at each step.
//!
//! # Source
//! G. H. Golub and V. Pereyra (1973), separable least squares; L. Kaufman (1975), its shorter Jacobian (both from
//! memory). Marquardt's damping. Widths from the inverse of the Jacobian's square over all columns.

use std::f64::consts::TAU;

use nalgebra::{DMatrix, DVector};

/// One damped sinusoid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Damped {
    /// Frequency of the damped swing.
    pub frequency_hz: f64,
    /// Rate of decay.
    pub decay_per_s: f64,
}

impl Damped {
    /// Damping over critical: α/√((2πf)² + α²).
    pub fn ratio(self) -> f64 {
        self.decay_per_s / (TAU * self.frequency_hz).hypot(self.decay_per_s)
    }
}

/// What a fit found.
#[derive(Debug, Clone)]
pub struct Fitted {
    /// The sinusoids, in the order of their starts.
    pub modes: Vec<Damped>,
    /// Standard deviations of frequency in Hz and of the decay's logarithm.
    pub sd: Vec<[f64; 2]>,
    /// First amplitudes.
    pub amplitudes: Vec<f64>,
    /// Sum of squares left.
    pub left: f64,
    /// Columns that were solved for, and sought.
    pub unknowns: usize,
    /// What is left at each time.
    pub residual: Vec<f64>,
    /// Slope of the record beside the swing, units a second.
    pub drift_per_s: f64,
    /// Share of the record's variance that is explained.
    pub explained: f64,
}

/// Most steps.
const MOST_STEPS: usize = 40;

/// Fits these sinusoids beside an offset, a slope and steady lines. None where they cannot be told apart.
pub fn fit(t: &[f64], y: &[f64], starts: &[Damped], steady_hz: &[f64]) -> Option<Fitted> {
    let solver = Solver::new(t, y, steady_hz)?;
    let mut at: Vec<f64> = starts
        .iter()
        .flat_map(|mode| [mode.frequency_hz, mode.decay_per_s.ln()])
        .collect();
    let mut now = solver.project(&at)?;
    let mut damping = 1e-3;
    for _ in 0..MOST_STEPS {
        let square = now.jacobian.transpose() * &now.jacobian;
        let slope = now.jacobian.transpose() * &now.residual;
        let mut moved = false;
        for _ in 0..8 {
            let mut held = square.clone();
            for i in 0..at.len() {
                held[(i, i)] += damping * square[(i, i)] + 1e-300;
            }
            let step = held.cholesky()?.solve(&(-&slope));
            let next: Vec<f64> = at
                .iter()
                .zip(step.iter())
                .map(|(at, step)| at + step)
                .collect();
            let better = solver
                .allows(&next)
                .then(|| solver.project(&next))
                .flatten()
                .filter(|next| next.left < now.left);
            if let Some(better) = better {
                let gain = (now.left - better.left) / now.left.max(1e-300);
                (at, now, damping) = (next, better, (damping * 0.2).max(1e-9));
                moved = gain > 1e-9;
                break;
            }
            damping *= 6.0;
        }
        if !moved {
            break;
        }
    }
    solver.finish(&at, now)
}

struct Solver<'a> {
    t: &'a [f64],
    y: DVector<f64>,
    steady: Vec<DVector<f64>>,
    fastest_hz: f64,
}

/// The record less what the columns explain, and how that changes.
struct Projected {
    residual: DVector<f64>,
    left: f64,
    jacobian: DMatrix<f64>,
    amplitudes: Vec<f64>,
    drift: f64,
}

impl<'a> Solver<'a> {
    fn new(t: &'a [f64], y: &[f64], steady_hz: &[f64]) -> Option<Self> {
        let (first, last) = (t.first()?, t.last()?);
        let span = last - first;
        if span.is_nan() || span <= 0.0 || t.len() != y.len() {
            return None;
        }
        let mut steady = vec![
            DVector::from_element(t.len(), 1.0),
            DVector::from_iterator(t.len(), t.iter().map(|t| (t - first) / span - 0.5)),
        ];
        for hz in steady_hz {
            steady.push(DVector::from_iterator(
                t.len(),
                t.iter().map(|t| (TAU * hz * t).cos()),
            ));
            steady.push(DVector::from_iterator(
                t.len(),
                t.iter().map(|t| (TAU * hz * t).sin()),
            ));
        }
        Some(Self {
            t,
            y: DVector::from_column_slice(y),
            steady,
            fastest_hz: 0.5 * (t.len() - 1) as f64 / span,
        })
    }

    fn allows(&self, at: &[f64]) -> bool {
        at.chunks_exact(2).all(|mode| {
            let decay = mode[1].exp();
            mode[0] > 0.3
                && mode[0] < self.fastest_hz
                && decay > 1e-4
                && decay < 0.8 * TAU * mode[0]
        })
    }

    fn project(&self, at: &[f64]) -> Option<Projected> {
        let n = self.t.len();
        let first = self.t[0];
        let linear = self.steady.len() + at.len();
        if n < linear + at.len() + 4 {
            return None;
        }
        let mut columns = self.steady.clone();
        for mode in at.chunks_exact(2) {
            let (mut cos, mut sin) = (DVector::zeros(n), DVector::zeros(n));
            let decay = mode[1].exp();
            for (i, t) in self.t.iter().enumerate() {
                let t = t - first;
                let (s, c) = (TAU * mode[0] * t).sin_cos();
                let size = (-decay * t).exp();
                (cos[i], sin[i]) = (size * c, size * s);
            }
            columns.extend([cos, sin]);
        }
        let (orthogonal, upper) = orthogonal(&columns)?;
        let mut residual = self.y.clone();
        let mut along = DVector::zeros(linear);
        for _ in 0..2 {
            for (j, q) in orthogonal.iter().enumerate() {
                let part = q.dot(&residual);
                along[j] += part;
                residual.axpy(-part, q, 1.0);
            }
        }
        let solved = upper.solve_upper_triangular(&along)?;
        let mut jacobian = DMatrix::zeros(n, at.len());
        let mut amplitudes = Vec::new();
        for (k, mode) in at.chunks_exact(2).enumerate() {
            let place = self.steady.len() + 2 * k;
            let (a, b) = (solved[place], solved[place + 1]);
            amplitudes.push(a.hypot(b));
            let decay = mode[1].exp();
            for (i, t) in self.t.iter().enumerate() {
                let t = t - first;
                let (cos, sin) = (columns[place][i], columns[place + 1][i]);
                jacobian[(i, 2 * k)] = -TAU * t * (b * cos - a * sin);
                jacobian[(i, 2 * k + 1)] = decay * t * (a * cos + b * sin);
            }
        }
        for mut column in jacobian.column_iter_mut() {
            for q in &orthogonal {
                let part = q.dot(&column);
                column.axpy(-part, q, 1.0);
            }
        }
        let left = residual.norm_squared();
        let span = self.t[n - 1] - first;
        let all_finite = left.is_finite() && jacobian.iter().all(|value| value.is_finite());
        all_finite.then(|| Projected {
            residual,
            left,
            jacobian,
            amplitudes,
            drift: solved[1] / span,
        })
    }

    fn finish(&self, at: &[f64], now: Projected) -> Option<Fitted> {
        let unknowns = self.steady.len() + 2 * at.len();
        let free = self
            .t
            .len()
            .checked_sub(unknowns)
            .filter(|free| *free > 0)?;
        let inverse = (now.jacobian.transpose() * &now.jacobian).try_inverse()?;
        let variance = now.left / free as f64;
        let width = |i: usize| (variance * inverse[(i, i)]).max(0.0).sqrt();
        let middle = self.y.mean();
        let all: f64 = self.y.iter().map(|y| (y - middle).powi(2)).sum();
        let fitted = Fitted {
            modes: at
                .chunks_exact(2)
                .map(|mode| Damped {
                    frequency_hz: mode[0],
                    decay_per_s: mode[1].exp(),
                })
                .collect(),
            sd: (0..at.len() / 2)
                .map(|k| [width(2 * k), width(2 * k + 1)])
                .collect(),
            amplitudes: now.amplitudes,
            left: now.left,
            unknowns,
            residual: now.residual.iter().copied().collect(),
            drift_per_s: now.drift,
            explained: if all > 0.0 { 1.0 - now.left / all } else { 0.0 },
        };
        fitted
            .sd
            .iter()
            .flatten()
            .all(|sd| sd.is_finite())
            .then_some(fitted)
    }
}

/// Columns made orthogonal one after another, twice, and the triangle that brings them back.
fn orthogonal(columns: &[DVector<f64>]) -> Option<(Vec<DVector<f64>>, DMatrix<f64>)> {
    let mut done: Vec<DVector<f64>> = Vec::with_capacity(columns.len());
    let mut upper = DMatrix::zeros(columns.len(), columns.len());
    for (j, column) in columns.iter().enumerate() {
        let mut rest = column.clone();
        for _ in 0..2 {
            for (i, q) in done.iter().enumerate() {
                let part = q.dot(&rest);
                upper[(i, j)] += part;
                rest.axpy(-part, q, 1.0);
            }
        }
        let size = rest.norm();
        if size.is_nan() || size <= 1e-10 * column.norm() {
            return None;
        }
        upper[(j, j)] = size;
        done.push(rest / size);
    }
    Some((done, upper))
}
