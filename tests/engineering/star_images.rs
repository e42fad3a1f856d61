//! How wide a star is recorded: the engine's rule against images.
//!
//! Each image is the seeing put once at every place of a made-up motion, pixel by pixel, and a Gaussian star is fitted to the
//! pixels by damped Gauss-Newton steps, from the brightest pixel and the seeing's own width. The rule makes no image and
//! fits no pixels. Nothing here comes from a book: expected values are the images themselves.

use stillground::rules::image_motion::fit::{Star, star};
use stillground::rules::image_motion::places::Places;
use stillground::rules::image_motion::width::FWHM_PER_RMS_RATIO;

/// Motions tried.
const MOTIONS: usize = 200;
/// Places of the star in each.
const SAMPLES: usize = 400;
/// Width of the seeing in pixels; the unit of length is the seeing.
const PIXELS: f64 = 6.0;

/// A linear congruential sequence, so that the motions are the same each time.
struct Draw(u64);

impl Draw {
    fn one(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.one()
    }

    /// Evenly spread in the logarithm.
    fn sized(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.one())
    }

    fn normal(&mut self) -> f64 {
        (-2.0 * self.one().max(1e-300).ln()).sqrt() * (std::f64::consts::TAU * self.one()).cos()
    }

    fn direction(&mut self) -> [f64; 2] {
        let (sin, cos) = (std::f64::consts::TAU * self.one()).sin_cos();
        [cos, sin]
    }
}

fn add(places: &mut [[f64; 2]], one: impl Fn(f64) -> [f64; 2]) {
    let count = places.len() as f64;
    for (i, place) in places.iter_mut().enumerate() {
        let moved = one((i as f64 + 0.5) / count);
        *place = [place[0] + moved[0], place[1] + moved[1]];
    }
}

/// Somebody comes or goes: the star is elsewhere for a share of the exposure.
fn stood(draw: &mut Draw, places: &mut [[f64; 2]]) {
    let ([x, y], far) = (draw.direction(), draw.sized(0.05, 2.5));
    let share = draw.sized(0.003, 0.3);
    add(places, |t| {
        if t < share {
            [far * x, far * y]
        } else {
            [0.0; 2]
        }
    });
}

/// A swing all through, along one line or round an ellipse.
fn swung(draw: &mut Draw, places: &mut [[f64; 2]]) {
    let ([x, y], [u, v]) = (draw.direction(), draw.direction());
    let (along, round) = (draw.sized(0.03, 0.4), draw.between(0.0, 0.2));
    add(places, |t| {
        let (sin, cos) = (std::f64::consts::TAU * 7.0 * t).sin_cos();
        [
            along * x * sin + round * u * cos,
            along * y * sin + round * v * cos,
        ]
    });
}

/// A blow that rings out.
fn struck(draw: &mut Draw, places: &mut [[f64; 2]]) {
    let ([x, y], far) = (draw.direction(), draw.sized(0.1, 2.0));
    let (starts, fades) = (draw.between(0.0, 0.5), draw.sized(0.01, 0.3));
    add(places, |t| {
        let after = t - starts;
        let swing = if after > 0.0 {
            far * (-after / fades).exp() * (400.0 * after).sin()
        } else {
            0.0
        };
        [swing * x, swing * y]
    });
}

/// Somebody walks past: the star leans away and back while the direction turns, with a ripple of steps.
fn walked(draw: &mut Draw, places: &mut [[f64; 2]]) {
    let (far, share) = (draw.sized(0.05, 1.5), draw.between(0.03, 0.8));
    let (first, turned) = (draw.between(0.0, 6.0), draw.between(-2.0, 2.0));
    add(places, |t| {
        let along = t / share;
        if along > 1.0 {
            return [0.0; 2];
        }
        let (sin, cos) = (first + turned * along).sin_cos();
        let lean = far * (std::f64::consts::PI * along).sin() * (1.0 + 0.4 * (120.0 * along).sin());
        [lean * cos, lean * sin]
    });
}

/// Wind: a normal movement along each axis all through.
fn blown(draw: &mut Draw, places: &mut [[f64; 2]]) {
    let strength = [draw.sized(0.02, 0.3), draw.sized(0.02, 0.3)];
    for place in places {
        *place = [
            place[0] + strength[0] * draw.normal(),
            place[1] + strength[1] * draw.normal(),
        ];
    }
}

fn motion(draw: &mut Draw, kind: usize) -> Vec<[f64; 2]> {
    let mut places = vec![[0.0; 2]; SAMPLES];
    match kind % 6 {
        0 => stood(draw, &mut places),
        1 => swung(draw, &mut places),
        2 => struck(draw, &mut places),
        3 => walked(draw, &mut places),
        4 => blown(draw, &mut places),
        _ => {
            blown(draw, &mut places);
            stood(draw, &mut places);
        }
    }
    places
}

/// An image of the star, with the seeing as the unit of length.
struct Image {
    low: [f64; 2],
    count: [usize; 2],
    light: Vec<f64>,
}

const STEP: f64 = 1.0 / PIXELS;
const SIGMA: f64 = 1.0 / FWHM_PER_RMS_RATIO;

fn bell(distance: f64, sigma: f64) -> f64 {
    (-0.5 * (distance / sigma).powi(2)).exp()
}

impl Image {
    /// The seeing at each place.
    fn of(places: &[[f64; 2]]) -> Self {
        let along = |axis: usize| {
            let (low, high) = places.iter().fold((0.0_f64, 0.0_f64), |(l, h), p| {
                (l.min(p[axis]), h.max(p[axis]))
            });
            let low = low - 2.0;
            (low, ((high + 2.0 - low) / STEP).ceil() as usize + 1)
        };
        let ((x, columns), (y, rows)) = (along(0), along(1));
        let mut light = vec![0.0; columns * rows];
        for place in places {
            let line = |low: f64, count: usize, at: f64| -> Vec<f64> {
                (0..count)
                    .map(|i| bell(low + STEP * i as f64 - at, SIGMA))
                    .collect()
            };
            let (across, up) = (line(x, columns, place[0]), line(y, rows, place[1]));
            for (row, b) in light.chunks_exact_mut(columns).zip(up) {
                for (pixel, a) in row.iter_mut().zip(&across) {
                    *pixel += a * b / places.len() as f64;
                }
            }
        }
        Self {
            low: [x, y],
            count: [columns, rows],
            light,
        }
    }

    fn pixels(&self) -> impl Iterator<Item = ([f64; 2], f64)> {
        let columns = self.count[0];
        self.light.iter().enumerate().map(move |(i, light)| {
            let place = [
                self.low[0] + STEP * (i % columns) as f64,
                self.low[1] + STEP * (i / columns) as f64,
            ];
            (place, *light)
        })
    }

    /// Height, centre and the two sigmas of the Gaussian that fits the pixels best.
    fn fitted(&self) -> [f64; 5] {
        let (brightest, height) =
            self.pixels().fold(
                ([0.0; 2], 0.0),
                |best, one| if one.1 > best.1 { one } else { best },
            );
        let mut at = [height, brightest[0], brightest[1], SIGMA, SIGMA];
        let (mut damped, mut misfit) = (1e-3, self.misfit(&at));
        for _ in 0..200 {
            let step = self.step(&at, damped);
            let mut next = at;
            (0..5).for_each(|i| next[i] += step[i]);
            let now = self.misfit(&next);
            if now <= misfit {
                let done = misfit - now < 1e-15;
                (at, misfit, damped) = (next, now, (damped * 0.3_f64).max(1e-12));
                if done {
                    break;
                }
            } else {
                damped *= 10.0;
            }
        }
        at
    }

    fn misfit(&self, at: &[f64; 5]) -> f64 {
        self.pixels()
            .map(|(place, light)| (light - model(at, place)).powi(2))
            .sum()
    }

    /// One damped step of Gauss and Newton.
    fn step(&self, at: &[f64; 5], damped: f64) -> [f64; 5] {
        let (mut normal, mut right) = ([[0.0; 5]; 5], [0.0; 5]);
        for (place, light) in self.pixels() {
            let value = model(at, place);
            let [x, y] = [place[0] - at[1], place[1] - at[2]];
            let slope = [
                value / at[0],
                value * x / at[3].powi(2),
                value * y / at[4].powi(2),
                value * x * x / at[3].powi(3),
                value * y * y / at[4].powi(3),
            ];
            for i in 0..5 {
                right[i] += slope[i] * (light - value);
                (0..5).for_each(|j| normal[i][j] += slope[i] * slope[j]);
            }
        }
        (0..5).for_each(|i| normal[i][i] *= 1.0 + damped);
        solved(normal, right)
    }
}

fn model(at: &[f64; 5], place: [f64; 2]) -> f64 {
    at[0] * bell(place[0] - at[1], at[3]) * bell(place[1] - at[2], at[4])
}

/// Gauss' elimination; the matrix is positive.
fn solved(mut matrix: [[f64; 5]; 5], mut right: [f64; 5]) -> [f64; 5] {
    for i in 0..5 {
        for row in i + 1..5 {
            let factor = matrix[row][i] / matrix[i][i];
            (i..5).for_each(|j| matrix[row][j] -= factor * matrix[i][j]);
            right[row] -= factor * right[i];
        }
    }
    for i in (0..5).rev() {
        let known: f64 = (i + 1..5).map(|j| matrix[i][j] * right[j]).sum();
        right[i] = (right[i] - known) / matrix[i][i];
    }
    right
}

/// The highest point of the image near a place, by ever finer search; not bound to the pixels.
fn highest(places: &[[f64; 2]], from: [f64; 2]) -> f64 {
    let light = |at: [f64; 2]| {
        places
            .iter()
            .map(|p| bell(p[0] - at[0], SIGMA) * bell(p[1] - at[1], SIGMA))
            .sum::<f64>()
            / places.len() as f64
    };
    let (mut at, mut best, mut reach) = (from, light(from), 0.2);
    while reach > 1e-4 {
        let around = [[reach, 0.0], [-reach, 0.0], [0.0, reach], [0.0, -reach]];
        let next = around
            .map(|[x, y]| [at[0] + x, at[1] + y])
            .into_iter()
            .map(|place| (place, light(place)))
            .fold((at, best), |a, b| if b.1 > a.1 { b } else { a });
        if next.1 > best {
            (at, best) = next;
        } else {
            reach *= 0.5;
        }
    }
    best
}

fn ruled(places: &[[f64; 2]]) -> Star {
    let timed = places.iter().map(|place| (1.0, *place));
    star(1.0, [0.0; 2], &Places::gather(1.0, timed))
}

#[test]
fn the_rule_agrees_with_images_over_two_hundred_motions() {
    let mut draw = Draw(20_261_128);
    let (mut tried, mut widest, mut worst) = (0, 0.0_f64, 0.0_f64);
    for kind in 0..MOTIONS {
        let places = motion(&mut draw, kind);
        let [_, x, y, wide_x, wide_y] = Image::of(&places).fitted();
        let image = (wide_x * wide_y).sqrt() / SIGMA - 1.0;
        let image_peak = highest(&places, [x, y]) - 1.0;
        let rule = ruled(&places);
        let (growth, peak) = (rule.growth_ratio(), rule.peak_left_ratio - 1.0);
        // A growth of a hundredth of a per cent is the least that the digits of a page show.
        assert!(
            (growth - image).abs() <= 0.1 * image.abs().max(1e-4),
            "motion {kind}: rule {growth}, image {image}"
        );
        assert!(
            (peak - image_peak).abs() <= 0.1 * image_peak.abs().max(1e-4),
            "motion {kind}: rule {peak}, image {image_peak}"
        );
        tried += 1;
        widest = widest.max(image);
        worst = worst.max((growth - image).abs() / image.abs().max(1e-4));
    }
    assert_eq!(tried, MOTIONS);
    // The motions must be worth the trial: some of them widen the star by more than a tenth.
    assert!(widest > 0.1, "{widest}");
    println!("largest growth {widest:.3}, largest difference {worst:.4} of the growth");
}

/// A movement that goes on all the time is told by its rms alone: the same wind, drawn sample by sample, makes the same image.
#[test]
fn wind_told_by_its_rms_makes_the_image_of_its_samples() {
    let mut draw = Draw(7);
    for strength in [0.05, 0.1, 0.2] {
        let places: Vec<[f64; 2]> = (0..4000)
            .map(|i| {
                let step = if i < 80 { 1.0 } else { 0.0 };
                [step + strength * draw.normal(), strength * draw.normal()]
            })
            .collect();
        let [_, _, _, wide_x, wide_y] = Image::of(&places).fitted();
        let image = (wide_x * wide_y).sqrt() / SIGMA - 1.0;
        let timed = [(0.98, [0.0, 0.0]), (0.02, [1.0, 0.0])];
        let rule = star(1.0, [strength; 2], &Places::gather(1.0, timed.into_iter()));
        assert!(
            (rule.growth_ratio() - image).abs() < 0.1 * image,
            "{strength}: rule {}, image {image}",
            rule.growth_ratio()
        );
    }
}
