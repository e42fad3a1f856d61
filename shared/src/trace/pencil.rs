//! First guess of the poles in a swing that dies away: the matrix pencil on evenly spaced samples.
//!
//! # Source
//! Y. Hua and T. K. Sarkar (1990), matrix pencil method for damped sinusoids (title and abstract read; the pencil's
//! length of a third of the record computed apart). Here by the eigenvectors of the Hankel matrix's Gram matrix, which
//! is enough for a start that least squares then betters.

use std::f64::consts::TAU;

use nalgebra::{DMatrix, Schur, SymmetricEigen};

use crate::trace::fit::Damped;

/// Longest pencil.
const LONGEST: usize = 120;
/// Most samples that are looked at.
const MOST_SAMPLES: usize = 700;

/// Poles of evenly spaced samples `step_s` apart, at most `most` pairs; those with the most energy first.
pub fn start(samples: &[f64], step_s: f64, most: usize) -> Vec<Damped> {
    let samples = &samples[..samples.len().min(MOST_SAMPLES)];
    let length = (samples.len() / 3).min(LONGEST);
    let rank = 2 * most;
    if length < rank + 2
        || step_s.is_nan()
        || step_s <= 0.0
        || samples.iter().any(|y| !y.is_finite())
    {
        return Vec::new();
    }
    let Some(eigen) = SymmetricEigen::try_new(gram(samples, length), 1e-12, 400) else {
        return Vec::new();
    };
    let mut order: Vec<usize> = (0..=length).collect();
    order.sort_by(|a, b| eigen.eigenvalues[*b].total_cmp(&eigen.eigenvalues[*a]));
    let wide = DMatrix::from_fn(length + 1, rank, |i, j| eigen.eigenvectors[(i, order[j])]);
    let (upper, lower) = (wide.rows(0, length), wide.rows(1, length));
    let Some(inverse) = (upper.transpose() * upper).try_inverse() else {
        return Vec::new();
    };
    let shift = inverse * upper.transpose() * lower;
    if shift.iter().any(|value| !value.is_finite()) {
        return Vec::new();
    }
    let Some(schur) = Schur::try_new(shift, 1e-12, 600) else {
        return Vec::new();
    };
    schur
        .complex_eigenvalues()
        .iter()
        .filter(|z| z.im > 0.0 && z.norm() > 0.0)
        .map(|z| Damped {
            frequency_hz: z.arg() / (TAU * step_s),
            decay_per_s: -z.norm().ln() / step_s,
        })
        .filter(|pole| {
            pole.frequency_hz > 0.8
                && pole.frequency_hz * step_s < 0.47
                && pole.decay_per_s > 0.005
                && pole.decay_per_s < 0.6 * TAU * pole.frequency_hz
        })
        .collect()
}

/// Hankel matrix times its transpose, each row from the one above.
fn gram(x: &[f64], length: usize) -> DMatrix<f64> {
    let rows = x.len() - length;
    let mut g = DMatrix::zeros(length + 1, length + 1);
    for j in 0..=length {
        let sum = (0..rows).map(|i| x[i] * x[i + j]).sum::<f64>();
        g[(0, j)] = sum;
        g[(j, 0)] = sum;
    }
    for i in 0..length {
        for j in i..length {
            let next = g[(i, j)] - x[i] * x[j] + x[i + rows] * x[j + rows];
            g[(i + 1, j + 1)] = next;
            g[(j + 1, i + 1)] = next;
        }
    }
    g
}
