//! Where a star is during one exposure, and for which share of it.
//!
//! The exposure does not ask when the star was somewhere, only for how long. Places are gathered in the cells of a grid,
//! each with its share of the time, its mean place and the spread within it, so that an hour of samples costs no more
//! than the few hundred cells that they fall into.

/// Width of a cell over the seeing: what is left out within a cell is then below a thousandth of a small growth.
const CELL_RATIO: f64 = 1.0 / 16.0;
/// Most cells along one axis, six widths. What is farther out on either side is gathered in the last cell there.
const MOST_CELLS: usize = 96;

/// One cell of the grid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cell {
    /// Share of the exposure that the star is in it.
    pub share_ratio: f64,
    /// Mean place within it, arcsec.
    pub place: [f64; 2],
    /// Variance about that place along each axis, arcsec².
    pub variance: [f64; 2],
}

/// The star's places during one exposure; the shares add up to one.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Places {
    /// Cells in which the star is for some time.
    pub cells: Vec<Cell>,
}

impl Places {
    /// Gathers places with the time spent at each. What is not finite or lasts no time is left out.
    ///
    /// # Source
    /// Counting.
    /// # Valid for
    /// Any movement. Beyond three widths of the seeing from where the star is half of the time only mean and spread are kept:
    /// so far away it takes light from the star and no longer widens it.
    pub fn gather<I>(seeing_arcsec: f64, timed: I) -> Self
    where
        I: Iterator<Item = (f64, [f64; 2])>,
    {
        let sound = |(time, [x, y]): &(f64, [f64; 2])| *time > 0.0 && (time + x + y).is_finite();
        let timed: Vec<(f64, [f64; 2])> = timed.filter(sound).collect();
        let Some(grid) = Grid::about(seeing_arcsec, &timed) else {
            return Self::default();
        };
        let mut sums = vec![[0.0; 5]; grid.count[0] * grid.count[1]];
        let mut all = 0.0;
        for &(time, place) in &timed {
            let [x, y] = [place[0] - grid.low[0], place[1] - grid.low[1]];
            all += time;
            if let Some(sum) = sums.get_mut(grid.index([x, y])) {
                let add = [time, time * x, time * y, time * x * x, time * y * y];
                sum.iter_mut().zip(add).for_each(|(sum, one)| *sum += one);
            }
        }
        let cell = |[time, x, y, xx, yy]: &[f64; 5]| {
            let mean = [x / time, y / time];
            let about = |square: f64, mean: f64| (square / time - mean * mean).max(0.0);
            Cell {
                share_ratio: time / all,
                place: [mean[0] + grid.low[0], mean[1] + grid.low[1]],
                variance: [about(*xx, mean[0]), about(*yy, mean[1])],
            }
        };
        Self {
            cells: sums.iter().filter(|sum| sum[0] > 0.0).map(cell).collect(),
        }
    }

    /// The same with every movement so many times as large.
    ///
    /// # Source
    /// Geometry.
    pub fn scaled(&self, factor: f64) -> Self {
        let cell = |cell: &Cell| Cell {
            place: cell.place.map(|value| value * factor),
            variance: cell.variance.map(|value| value * factor * factor),
            ..*cell
        };
        Self {
            cells: self.cells.iter().map(cell).collect(),
        }
    }

    /// Mean place and variance along each axis.
    ///
    /// # Source
    /// Mechanics: the centre and the second moment of a share of time.
    pub fn moments(&self) -> [[f64; 2]; 2] {
        [0, 1].map(|axis| {
            let mean: f64 = self
                .cells
                .iter()
                .map(|c| c.share_ratio * c.place[axis])
                .sum();
            let about =
                |c: &Cell| c.share_ratio * ((c.place[axis] - mean).powi(2) + c.variance[axis]);
            [mean, self.cells.iter().map(about).sum()]
        })
    }
}

/// The grid about the places.
struct Grid {
    low: [f64; 2],
    /// Cells in an arcsec.
    per_cell: f64,
    count: [usize; 2],
}

impl Grid {
    fn about(seeing_arcsec: f64, timed: &[(f64, [f64; 2])]) -> Option<Self> {
        let (low, high) = timed.iter().fold(
            ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]),
            |(low, high), &(_, [x, y])| {
                (
                    [low[0].min(x), low[1].min(y)],
                    [high[0].max(x), high[1].max(y)],
                )
            },
        );
        let cell = CELL_RATIO * seeing_arcsec;
        let along = |axis: usize| {
            let range: f64 = high[axis] - low[axis];
            if !(range.is_finite() && cell > 0.0) {
                return None;
            }
            if range < MOST_CELLS as f64 * cell {
                return Some((low[axis], (range / cell) as usize + 1));
            }
            let middle = median(timed.iter().map(|(time, place)| (place[axis], *time)));
            Some((middle - 0.5 * MOST_CELLS as f64 * cell, MOST_CELLS))
        };
        let ((x_low, x_count), (y_low, y_count)) = (along(0)?, along(1)?);
        Some(Self {
            low: [x_low, y_low],
            per_cell: 1.0 / cell,
            count: [x_count, y_count],
        })
    }

    /// Of a place from the grid's low corner.
    fn index(&self, [x, y]: [f64; 2]) -> usize {
        // A place below the grid counts in its first cell.
        let at =
            |along: f64, count: usize| ((along * self.per_cell).max(0.0) as usize).min(count - 1);
        at(y, self.count[1]) * self.count[0] + at(x, self.count[0])
    }
}

/// The value below which half of the time is spent.
fn median(timed: impl Iterator<Item = (f64, f64)>) -> f64 {
    let mut all: Vec<(f64, f64)> = timed.collect();
    all.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    let half = 0.5 * all.iter().map(|(_, time)| time).sum::<f64>();
    let mut sum = 0.0;
    all.iter()
        .find(|(_, time)| {
            sum += time;
            sum >= half
        })
        .map_or(0.0, |(value, _)| *value)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed by hand: a place at 1 for a third of the time and at 4 for two thirds has the mean 3 and the variance 2.
    #[test]
    fn shares_means_and_variances_survive_the_grid() {
        let timed = [(1.0, [1.0, 0.0]), (2.0, [4.0, 0.0])];
        let places = Places::gather(2.0, timed.into_iter());
        assert_eq!(places.cells.len(), 2);
        let [[mean, variance], [_, across]] = places.moments();
        assert!((mean - 3.0).abs() < 1e-12 && (variance - 2.0).abs() < 1e-12 && across == 0.0);
        let [[mean, variance], _] = places.scaled(0.5).moments();
        assert!((mean - 1.5).abs() < 1e-12 && (variance - 0.5).abs() < 1e-12);
    }

    /// A sine of amplitude 0.01 lies within one cell of a star of two: its variance of half the square is still there.
    #[test]
    fn what_moves_within_one_cell_is_not_lost() {
        let swing = (0..1000).map(|i| (1.0, [0.01 * (0.0628318530718 * f64::from(i)).sin(), 0.0]));
        let [[_, variance], _] = Places::gather(2.0, swing).moments();
        assert!((variance / 5e-5 - 1.0).abs() < 1e-3, "{variance}");
    }

    #[test]
    fn nothing_sound_is_no_place() {
        let unsound = [(0.0, [1.0, 1.0]), (1.0, [f64::NAN, 0.0])];
        assert!(Places::gather(2.0, unsound.into_iter()).cells.is_empty());
        assert!(Places::gather(2.0, std::iter::empty()).cells.is_empty());
    }
}
