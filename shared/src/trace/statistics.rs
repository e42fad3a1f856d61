//! Medians and the like, of lists in which every figure is finite.

/// The value below which this share of them lies; nought of none.
pub(super) fn quantile(values: &[f64], share: f64) -> f64 {
    let mut sorted: Vec<f64> = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let last = sorted.len().saturating_sub(1);
    let place = (share.clamp(0.0, 1.0) * last as f64).round() as usize;
    sorted.get(place.min(last)).copied().unwrap_or(0.0)
}

/// The middle one.
pub(super) fn median(values: &[f64]) -> f64 {
    quantile(values, 0.5)
}

/// Mean; nought of none.
pub(super) fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len().max(1) as f64
}

/// Root of the mean square about the mean.
pub(super) fn spread(values: &[f64]) -> f64 {
    let middle = mean(values);
    let squares: f64 = values.iter().map(|value| (value - middle).powi(2)).sum();
    (squares / values.len().max(1) as f64).sqrt()
}

/// Each value less the mean of those within so many places on either side.
pub(super) fn less_running_mean(values: &[f64], beside: usize) -> Vec<f64> {
    let (mut sum, mut from, mut to) = (0.0, 0, 0);
    (0..values.len())
        .map(|i| {
            while to < (i + beside + 1).min(values.len()) {
                sum += values[to];
                to += 1;
            }
            while from < i.saturating_sub(beside) {
                sum -= values[from];
                from += 1;
            }
            values[i] - sum / (to - from) as f64
        })
        .collect()
}

/// Of these columns the one whose loud pieces stand out most of its quiet ones, by how far they swing.
pub(super) fn loudest(among: &[usize], columns: &[Vec<f32>], rate_hz: f64) -> usize {
    let samples = ((0.25 * rate_hz) as usize).clamp(8, 4096);
    let swing = |column: &Vec<f32>| {
        let mut loud: Vec<f64> = column
            .chunks_exact(samples)
            .map(|piece| {
                let finite: Vec<f64> = piece
                    .iter()
                    .filter(|y| y.is_finite())
                    .map(|y| f64::from(*y))
                    .collect();
                spread(&finite)
            })
            .collect();
        let floor = quantile(&loud, 0.15);
        loud.sort_by(f64::total_cmp);
        let most = loud.last().copied().unwrap_or(0.0);
        // A column that only rests does not win by its unit.
        if most > 3.0 * floor {
            most
        } else {
            1e-9 * most
        }
    };
    among
        .iter()
        .map(|n| (*n, swing(&columns[*n])))
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map_or(0, |(n, _)| n)
}

/// Means of so many neighbours.
pub(super) fn averaged(t: &[f64], y: &[f64], together: usize) -> (Vec<f64>, Vec<f64>) {
    let mean = |values: &[f64]| {
        values
            .chunks_exact(together)
            .map(|piece| piece.iter().sum::<f64>() / together as f64)
            .collect()
    };
    (mean(t), mean(y))
}
