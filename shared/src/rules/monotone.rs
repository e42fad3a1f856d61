//! A curve through points that never turns where they do not: cubic pieces with the slopes of Fritsch and Butland.

use crate::source::Source;

/// Source of the slopes.
pub const SOURCE: Source = Source::from_memory(
    "Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5",
    "1984",
    "harmonic means of neighbouring slopes",
);

/// The curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Monotone {
    points: Vec<(f64, f64)>,
    slopes: Vec<f64>,
}

impl Monotone {
    /// Through points in order, no two at the same place.
    ///
    /// # Source
    /// Fritsch and Butland 1984; at the ends the slope of the outermost piece, which keeps the curve monotone.
    ///
    /// # Valid for
    /// One point or more.
    pub fn new(points: Vec<(f64, f64)>) -> Self {
        let steps: Vec<(f64, f64)> = points
            .windows(2)
            .map(|pair| {
                let width = pair[1].0 - pair[0].0;
                (width, (pair[1].1 - pair[0].1) / width)
            })
            .collect();
        let slopes = (0..points.len())
            .map(|i| {
                let (before, after) = (i.checked_sub(1).and_then(|i| steps.get(i)), steps.get(i));
                match (before, after) {
                    (Some(&(h0, d0)), Some(&(h1, d1))) if d0 * d1 > 0.0 => {
                        let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
                        (w0 + w1) / (w0 / d0 + w1 / d1)
                    }
                    (Some(_), Some(_)) | (None, None) => 0.0,
                    (None, Some(&(_, d))) | (Some(&(_, d)), None) => d,
                }
            })
            .collect();
        Self { points, slopes }
    }

    /// The curve's value; beyond the ends that of the end.
    ///
    /// # Source
    /// Fritsch and Butland 1984: the cubic piece through two points and their slopes.
    pub fn at(&self, x: f64) -> f64 {
        let piece = self
            .points
            .windows(2)
            .zip(self.slopes.windows(2))
            .find(|(points, _)| x <= points[1].0);
        match piece {
            Some((points, slopes)) if x > points[0].0 => {
                let h = points[1].0 - points[0].0;
                let t = (x - points[0].0) / h;
                let (t2, t3) = (t * t, t * t * t);
                (2.0 * t3 - 3.0 * t2 + 1.0) * points[0].1
                    + (t3 - 2.0 * t2 + t) * h * slopes[0]
                    + (3.0 * t2 - 2.0 * t3) * points[1].1
                    + (t3 - t2) * h * slopes[1]
            }
            Some((points, _)) => points[0].1,
            None => self.points.last().map_or(0.0, |point| point.1),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_line_stays_straight_and_a_step_does_not_overshoot() {
        let line = Monotone::new(vec![(0.0, 1.0), (1.0, 3.0), (4.0, 9.0)]);
        assert!((line.at(2.5) - 6.0).abs() < 1e-12 && line.at(-1.0) == 1.0 && line.at(9.0) == 9.0);
        let step = Monotone::new(vec![(0.0, 0.0), (1.0, 0.0), (1.1, 1.0), (2.0, 1.0)]);
        assert!((0..=200).all(|i| (0.0..=1.0).contains(&step.at(f64::from(i) / 100.0))));
        assert_eq!(Monotone::new(vec![(0.3, 2.0)]).at(5.0), 2.0);
    }
}
