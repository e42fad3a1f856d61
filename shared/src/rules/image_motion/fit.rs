//! The star as a round Gaussian is fitted to it: how much wider it is recorded, and how much of its peak is left.
//!
//! Least squares. The image is the seeing, a Gaussian, once at each place with the share of time spent there. Its overlap
//! with a Gaussian of another width is again a Gaussian of the distance, so that the best fit needs no image: a place at
//! the distance d from the fitted centre counts with exp(−d²/2(σ² + s²)), which is 4^(−(d/w)²) while the fit is about as
//! wide as the seeing, and the fitted variance is s² = m + √(m² + σ⁴), m the mean of d² so weighted. For movements
//! below a quarter of the seeing that is the plain variance; a far place that the star visits for a moment hardly
//! widens it, and only takes light from its peak.

use crate::rules::image_motion::places::{Cell, Places};
use crate::rules::image_motion::width::FWHM_PER_RMS_RATIO;
use crate::source::Source;

/// Where it comes from.
pub const SOURCE: Source = Source::derived(
    "least-squares fit of a Gaussian to the seeing convolved with the star's places; held against made-up images, docs/motion-validation.md",
);
/// Rounds after which the fit is taken as it is.
const ROUNDS: usize = 100;
/// Change of the fitted variance over the seeing's at which it stands.
const ENOUGH_RATIO: f64 = 1e-9;

/// Square of a distance over the seeing's variance within which a place is part of the one image: 1.3 widths.
const NEAR_SQUARE: f64 = 9.0;

/// A star that moved during an exposure, against one that did not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Star {
    /// Width along each axis over the seeing.
    pub width_ratio: [f64; 2],
    /// Height of its peak over that of a star at rest.
    pub peak_left_ratio: f64,
}

impl Star {
    /// A star at rest.
    pub const AT_REST: Self = Self {
        width_ratio: [1.0, 1.0],
        peak_left_ratio: 1.0,
    };

    /// Growth of the round width √(w_x w_y), which is what stacking and focusing software reports: 0.05 is a twentieth.
    ///
    /// # Source
    /// Geometry: a circle of the same area.
    pub fn growth_ratio(&self) -> f64 {
        (self.width_ratio[0] * self.width_ratio[1]).sqrt() - 1.0
    }
}

/// The star with a movement that goes on all the time, of so many arcsec rms along each axis, and with its places.
///
/// # Source
/// Derived above; stationary point of the overlap of image and fit.
/// # Valid for
/// A Gaussian seeing and a movement all through one or many exposures. A Moffat star's half-maximum (β 3 to 4.8) grows 1.2
/// to 1.5 times as much for small movements. Two images of like strength far apart are fitted as one wide star.
/// # Errors
/// None: without places, or without seeing, the star is at rest but for the steady movement.
pub fn star(seeing_arcsec: f64, steady_rms_arcsec: [f64; 2], places: &Places) -> Star {
    let still = (seeing_arcsec / FWHM_PER_RMS_RATIO).powi(2);
    if !(still > 0.0 && still.is_finite()) {
        return Star::AT_REST;
    }
    let seen = steady_rms_arcsec.map(|rms| still + rms * rms);
    let Some((centre, fitted)) = fit(seen, places) else {
        return Star {
            width_ratio: seen.map(|variance| (variance / still).sqrt()),
            peak_left_ratio: still / (seen[0] * seen[1]).sqrt(),
        };
    };
    Star {
        width_ratio: fitted.map(|variance| (variance / still).sqrt()),
        peak_left_ratio: still * peak(seen, centre, places),
    }
}

/// Centre and variance along each axis of a fitted Gaussian.
type Fitted = ([f64; 2], [f64; 2]);

/// Centre and variance of the Gaussian that fits best; none without places.
///
/// Where the star is thrown far, a fit may come to rest on the brighter image alone or on all of it together: both are tried, and
/// the one that leaves less of the image over is taken.
fn fit(seen: [f64; 2], places: &Places) -> Option<Fitted> {
    let [[x, x_variance], [y, y_variance]] = places.moments();
    // From the plain moments inwards: a few far places lose their say as the fit narrows.
    let all = ([x, y], [seen[0] + x_variance, seen[1] + y_variance]);
    let wide = settle(seen, places, all)?;
    if near(seen, places, [x, y]) {
        return Some(wide);
    }
    // From the brightest place outwards.
    let narrow = settle(
        seen,
        places,
        (uphill(seen, brightest(places)?, places), seen),
    )?;
    let better = taken(seen, places, &narrow) > taken(seen, places, &wide);
    Some(if better { narrow } else { wide })
}

/// Whether no place lies so far off that the fit could leave it out.
fn near(seen: [f64; 2], places: &Places, [x, y]: [f64; 2]) -> bool {
    places.cells.iter().all(|cell| {
        let [dx, dy] = [cell.place[0] - x, cell.place[1] - y];
        dx * dx / seen[0] + dy * dy / seen[1] < NEAR_SQUARE
    })
}

/// The place where the star is for longest.
fn brightest(places: &Places) -> Option<[f64; 2]> {
    let longest = |a: &&Cell, b: &&Cell| a.share_ratio.total_cmp(&b.share_ratio);
    places.cells.iter().max_by(longest).map(|cell| cell.place)
}

/// The stationary fit next to a first one.
fn settle(seen: [f64; 2], places: &Places, (mut centre, mut fitted): Fitted) -> Option<Fitted> {
    for _ in 0..ROUNDS {
        let both = [seen[0] + fitted[0], seen[1] + fitted[1]];
        let (next, spread) = weighted(&places.cells, centre, both)?;
        let variance = |axis: usize| {
            let m: f64 = spread[axis];
            m + m.hypot(seen[axis])
        };
        let next_fitted = [variance(0), variance(1)];
        let moved = (0..2)
            .map(|i| ((next_fitted[i] - fitted[i]).abs() + (next[i] - centre[i]).powi(2)) / seen[i])
            .fold(0.0, f64::max);
        (centre, fitted) = (next, next_fitted);
        if moved < ENOUGH_RATIO {
            break;
        }
    }
    Some((centre, fitted))
}

/// What a fit takes away of the image's sum of squares, but for a factor: the square of its overlap with the image over its own
/// sum of squares.
fn taken(seen: [f64; 2], places: &Places, (centre, fitted): &Fitted) -> f64 {
    let overlap = height([seen[0] + fitted[0], seen[1] + fitted[1]], *centre, places);
    overlap * overlap * (fitted[0] * fitted[1]).sqrt()
}

/// Mean place, and mean square about the given centre, of cells weighted by their overlap; none where nothing overlaps.
fn weighted(cells: &[Cell], centre: [f64; 2], both: [f64; 2]) -> Option<([f64; 2], [f64; 2])> {
    let mut sums = [0.0; 5];
    for cell in cells {
        let [x, y] = [cell.place[0] - centre[0], cell.place[1] - centre[1]];
        let weight = cell.share_ratio * (-0.5 * (x * x / both[0] + y * y / both[1])).exp();
        let squares = [x * x + cell.variance[0], y * y + cell.variance[1]];
        let add = [1.0, x, y, squares[0], squares[1]];
        sums.iter_mut()
            .zip(add)
            .for_each(|(sum, one)| *sum += weight * one);
    }
    let [all, x, y, xx, yy] = sums;
    (all > 0.0).then(|| {
        let step = [x / all, y / all];
        (
            [centre[0] + step[0], centre[1] + step[1]],
            [xx / all - step[0] * step[0], yy / all - step[1] * step[1]].map(|m| m.max(0.0)),
        )
    })
}

/// Height of the image's highest point times the seeing's own variance: from the fitted centre uphill.
fn peak(seen: [f64; 2], from: [f64; 2], places: &Places) -> f64 {
    height(seen, uphill(seen, from, places), places)
}

/// The highest point of the image uphill from a place.
fn uphill(seen: [f64; 2], from: [f64; 2], places: &Places) -> [f64; 2] {
    let mut at = from;
    for _ in 0..ROUNDS {
        let Some((next, _)) = weighted(&places.cells, at, seen) else {
            break;
        };
        let moved = (next[0] - at[0]).powi(2) / seen[0] + (next[1] - at[1]).powi(2) / seen[1];
        at = next;
        if moved < ENOUGH_RATIO {
            break;
        }
    }
    at
}

/// Height at a place of the image as it is seen through a Gaussian of these variances.
fn height(seen: [f64; 2], at: [f64; 2], places: &Places) -> f64 {
    let one = |cell: &Cell| {
        let along = |axis: usize| {
            let wide = seen[axis] + cell.variance[axis];
            (-0.5 * (cell.place[axis] - at[axis]).powi(2) / wide).exp() / wide.sqrt()
        };
        cell.share_ratio * along(0) * along(1)
    };
    places.cells.iter().map(one).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A star of one arcsec that is so far away, in widths, for a share of the exposure.
    fn step(distance: f64, share: f64) -> Star {
        let timed = [(1.0 - share, [0.0, 0.0]), (share, [distance, 0.0])];
        star(1.0, [0.0; 2], &Places::gather(1.0, timed.into_iter()))
    }

    fn within(found: f64, expected: f64, of: f64) {
        assert!(
            (found - expected).abs() <= of * expected.abs() + 6e-5,
            "{found} {expected}"
        );
    }

    /// Computed apart by images made by convolving the seeing with the motion, to the digits given: growth of the axis, of
    /// the round width, and peak.
    #[test]
    fn steps_widen_a_star_as_images_say() {
        for (distance, share, axis, round, peak) in [
            (0.25, 0.0013, 0.000_21, 0.000_10, -0.000_21),
            (0.5, 0.007, 0.003_4, 0.001_7, -0.003_5),
            (1.0, 0.033, 0.025, 0.012, -0.031),
            (2.0, 0.033, 0.001_5, 0.000_8, -0.033),
        ] {
            let star = step(distance, share);
            within(star.width_ratio[0] - 1.0, axis, 0.1);
            within(star.growth_ratio(), round, 0.1);
            within(star.peak_left_ratio - 1.0, peak, 0.1);
            assert!((star.width_ratio[1] - 1.0).abs() < 1e-9);
        }
    }

    /// The same: a swing of 0.2755 widths all through, +10.7 % along it, +5.2 % round, −9.7 % of the peak.
    #[test]
    fn a_swing_all_through_widens_it() {
        let swing = (0..2000).map(|i| {
            let angle = std::f64::consts::TAU * (f64::from(i) + 0.5) / 2000.0;
            (1.0, [0.2755 * angle.sin(), 0.0])
        });
        let star = star(1.0, [0.0; 2], &Places::gather(1.0, swing));
        within(star.width_ratio[0] - 1.0, 0.107, 0.02);
        within(star.growth_ratio(), 0.052, 0.02);
        within(star.peak_left_ratio - 1.0, -0.097, 0.02);
    }

    /// The same: wind of 0.1 widths rms with a step of a width for two hundredths of the time, +2.12 % round, −4.48 % of the
    /// peak.
    #[test]
    fn wind_and_a_step_add_up() {
        let timed = [(0.98, [0.0, 0.0]), (0.02, [1.0, 0.0])];
        let star = star(1.0, [0.1, 0.0], &Places::gather(1.0, timed.into_iter()));
        within(star.growth_ratio(), 0.021_2, 0.03);
        within(star.peak_left_ratio - 1.0, -0.044_8, 0.03);
    }

    /// Computed apart by going through centres and widths: with three tenths of the time two, three, four and six widths away the
    /// fit that leaves least over is 2 % wider along the axis at two widths and no wider beyond. One that began with both images
    /// came to rest on both.
    #[test]
    fn the_better_of_two_fits_is_taken() {
        for distance in [2.0, 3.0, 4.0, 6.0] {
            let star = step(distance, 0.3);
            assert!(star.width_ratio[0] < 1.03, "{distance}: {star:?}");
            assert!(
                (star.peak_left_ratio - 0.7).abs() < 0.01,
                "{distance}: {star:?}"
            );
        }
    }

    #[test]
    fn a_star_at_rest_or_without_places_stays_as_it_is() {
        assert_eq!(star(2.0, [0.0; 2], &Places::default()), Star::AT_REST);
        let rest = Places::gather(2.0, [(300.0, [4.0, -1.0])].into_iter());
        let star = star(2.0, [0.0; 2], &rest);
        assert!(star.growth_ratio().abs() < 1e-12 && (star.peak_left_ratio - 1.0).abs() < 1e-12);
        assert_eq!(super::star(0.0, [1.0; 2], &rest), Star::AT_REST);
    }
}
