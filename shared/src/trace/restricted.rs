//! Generalised least squares with the noise that is likeliest: a process that forgets, a walk at random and white noise.

use crate::trace::statistics::mean;

/// The first unknown, its standard deviation, and the slope over the whole record.
pub(super) struct Fit {
    pub(super) size: f64,
    pub(super) sd: f64,
    pub(super) slope: f64,
}

/// The noise's logarithms: variance and memory of what forgets, wander a second, white variance.
type Noise = [f64; 4];

/// Generalised least squares with the noise that is likeliest.
pub(super) fn restricted(t: &[f64], y: &[f64], design: &[Vec<f64>]) -> Option<Fit> {
    let differences: Vec<f64> = y
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).powi(2))
        .collect();
    let variance = (0.5 * mean(&differences)).max(1e-18);
    let start: Noise = [
        variance.ln(),
        2.0_f64.ln(),
        (variance * 1e-3).ln(),
        (variance * 0.1).ln(),
    ];
    let spread = [2.0, 1.0, 3.0, 2.0];
    let cost = |at: &Noise| {
        let held: f64 = (0..4)
            .map(|i| 0.5 * ((at[i] - start[i]) / spread[i]).powi(2))
            .sum();
        whitened(t, y, design, at).map_or(f64::INFINITY, |white| white.cost + held)
    };
    let best = simplex(start, cost);
    let white = whitened(t, y, design, &best)?;
    Some(Fit {
        size: white.solved[0],
        sd: white.sd,
        slope: white.solved[2],
    })
}

struct Whitened {
    cost: f64,
    solved: Vec<f64>,
    sd: f64,
}

fn whitened(t: &[f64], y: &[f64], design: &[Vec<f64>], noise: &Noise) -> Option<Whitened> {
    let [variance, memory, wander, white] = noise.map(f64::exp);
    let columns = design.first()?.len();
    // Two states for the record and for each column: what forgets, and what walks.
    let mut states = vec![[0.0_f64; 2]; columns + 1];
    let mut covariance = [[variance, 0.0], [0.0, 0.0]];
    let mut square = nalgebra::DMatrix::<f64>::zeros(columns, columns);
    let mut along = nalgebra::DVector::<f64>::zeros(columns);
    let (mut total, mut logs) = (0.0, 0.0);
    for (i, row) in design.iter().enumerate() {
        if i > 0 {
            let dt = (t[i] - t[i - 1]).max(0.0);
            let keep = (-dt / memory).exp();
            states.iter_mut().for_each(|state| state[0] *= keep);
            covariance[0][0] = keep * keep * covariance[0][0] + variance * (1.0 - keep * keep);
            covariance[0][1] *= keep;
            covariance[1][1] += wander * dt;
        }
        let sums = [
            covariance[0][0] + covariance[0][1],
            covariance[0][1] + covariance[1][1],
        ];
        let whole = sums[0] + sums[1] + white;
        if !(whole > 0.0 && whole.is_finite()) {
            return None;
        }
        let gain = [sums[0] / whole, sums[1] / whole];
        let mut news = Vec::with_capacity(columns + 1);
        for (j, state) in states.iter_mut().enumerate() {
            let value = if j == 0 { y[i] } else { row[j - 1] };
            let surprise = value - state[0] - state[1];
            state[0] += gain[0] * surprise;
            state[1] += gain[1] * surprise;
            news.push(surprise / whole.sqrt());
        }
        covariance[0][0] -= gain[0] * sums[0];
        covariance[0][1] -= gain[0] * sums[1];
        covariance[1][1] -= gain[1] * sums[1];
        total += news[0] * news[0];
        logs += whole.ln();
        for a in 0..columns {
            along[a] += news[a + 1] * news[0];
            for b in 0..columns {
                square[(a, b)] += news[a + 1] * news[b + 1];
            }
        }
    }
    let cholesky = square.cholesky()?;
    let solved = cholesky.solve(&along);
    let rest = (total - solved.dot(&along)).max(0.0);
    let determinant: f64 = cholesky.l().diagonal().iter().map(|d| 2.0 * d.ln()).sum();
    let inverse = cholesky.inverse();
    let cost = 0.5 * (rest + logs + determinant);
    let sd = inverse[(0, 0)].max(0.0).sqrt();
    (cost.is_finite() && sd.is_finite() && sd > 0.0).then(|| Whitened {
        cost,
        solved: solved.iter().copied().collect(),
        sd,
    })
}

/// The least of a cost over four unknowns, by a simplex that rolls downhill (J. A. Nelder and R. Mead 1965, from memory).
fn simplex(start: Noise, cost: impl Fn(&Noise) -> f64) -> Noise {
    let mut corners: Vec<(Noise, f64)> = (0..5)
        .map(|i| {
            let mut at = start;
            if i > 0 {
                at[i - 1] += 0.8;
            }
            (at, cost(&at))
        })
        .collect();
    for _ in 0..160 {
        corners.sort_by(|a, b| a.1.total_cmp(&b.1));
        if (corners[4].1 - corners[0].1).abs() < 1e-6 {
            break;
        }
        let middle: Noise =
            std::array::from_fn(|k| corners[..4].iter().map(|(at, _)| at[k]).sum::<f64>() / 4.0);
        let toward = |share: f64| -> (Noise, f64) {
            let at: Noise =
                std::array::from_fn(|k| middle[k] + share * (corners[4].0[k] - middle[k]));
            (at, cost(&at))
        };
        let mirrored = toward(-1.0);
        let next = if mirrored.1 < corners[0].1 {
            let farther = toward(-2.0);
            if farther.1 < mirrored.1 {
                farther
            } else {
                mirrored
            }
        } else if mirrored.1 < corners[3].1 {
            mirrored
        } else {
            let nearer = toward(0.5);
            if nearer.1 < corners[4].1 {
                nearer
            } else {
                let best = corners[0].0;
                for corner in &mut corners[1..] {
                    let at: Noise = std::array::from_fn(|k| 0.5 * (best[k] + corner.0[k]));
                    *corner = (at, cost(&at));
                }
                continue;
            }
        };
        corners[4] = next;
    }
    corners.sort_by(|a, b| a.1.total_cmp(&b.1));
    corners[0].0
}
