//! Paces: nobody knows his own to 5 %, and a harmonic of it that meets the pier makes a walk twice as bad.
//!
//! The walk is followed with all modes at two paces: one that is no worse than the middle of the band, and one that nine
//! tenths of the band do not exceed. Which ones these are is found by following the slowest mode of each plane alone, every
//! second sample; the quicker ones go with each foot at once.

use crate::brief::{Brief, Origin};
use crate::rules::mechanics::oscillator::Oscillator;
use crate::source::Source;
use crate::stages::motion::footfall::Strength;
use crate::stages::motion::history::{FASTEST_HZ, STEP_S};
use crate::stages::motion::modes::Mode;
use crate::stages::motion::steps::Trodden;
use crate::stages::motion::system::Planes;
use crate::units::hertz;

/// Paces of people who were not asked, Hz.
const BAND_HZ: (f64, f64) = (1.6, 2.1);
/// How well a stated pace is known.
const STATED_RATIO: f64 = 0.05;
/// Paces that are looked at.
const PACES: usize = 11;
/// Samples of a history for one that is looked at here.
const COARSE: usize = 2;
const COARSE_S: f64 = STEP_S * COARSE as f64;
/// Samples after the last foot is up.
const AFTER: usize = 50;
/// Circular frequency from which on a mode follows a foot at once.
const FASTEST: f64 = FASTEST_HZ * 2.0 * std::f64::consts::PI;
/// Where the band comes from.
pub const SOURCE: Source = Source::judgement(
    "paces of 1.6 to 2.1 Hz, a stated one to 5 %; held is what nine tenths of them do not exceed",
);

/// The band of paces and the two that are followed.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Paces {
    /// Slowest, Hz.
    pub from_hz: f64,
    /// Quickest, Hz.
    pub to_hz: f64,
    /// One in the middle of what the band does to the star, typical ground.
    pub middle_hz: f64,
    /// One that nine tenths of the band do not exceed, typical ground.
    pub unfavourable_hz: f64,
}

/// Slowest and quickest pace.
#[must_use]
pub fn band_hz(brief: &Brief) -> (f64, f64) {
    let pace = brief.floor.pace;
    if pace.origin == Origin::Said {
        let stated = hertz::get(pace.value);
        (stated * (1.0 - STATED_RATIO), stated * (1.0 + STATED_RATIO))
    } else {
        BAND_HZ
    }
}

/// A pace that is tried: one footfall at every second sample, slow and quick part, and when each foot falls.
struct Tried {
    pace_hz: f64,
    force: Vec<[f64; 2]>,
    times_s: Vec<f64>,
}

/// The paces of a band, ready to be tried in one ground after another.
pub struct Band(Vec<Tried>);

impl Band {
    /// Takes the paces evenly from a band.
    #[must_use]
    pub fn new((from, to): (f64, f64), trodden: &Trodden) -> Self {
        let tried = |i: usize| {
            let pace_hz = from + (to - from) * i as f64 / (PACES - 1) as f64;
            let step = trodden.footfall(pace_hz, Strength::Mean);
            let both = step.slow.iter().zip(&step.quick);
            Tried {
                pace_hz,
                force: both.step_by(COARSE).map(|(a, b)| [*a, *b]).collect(),
                times_s: trodden.times_s(pace_hz),
            }
        };
        Self((0..PACES).map(tried).collect())
    }

    /// The middle and the unfavourable pace on these modes.
    #[must_use]
    pub fn choose(&self, planes: &Planes, trodden: &Trodden) -> [f64; 2] {
        let waves = trodden.wave_ratios(planes);
        let mut all: Vec<(f64, f64)> = self
            .0
            .iter()
            .map(|tried| (tried.peak(planes, trodden, &waves), tried.pace_hz))
            .collect();
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        // Of eleven, the sixth is the middle, and nine tenths do not exceed the tenth.
        [all[PACES / 2].1, all[PACES * 9 / 10].1]
    }
}

impl Tried {
    /// Largest turn through the walk, but for a factor that is the same at every pace.
    fn peak(&self, planes: &Planes, trodden: &Trodden, waves: &[f64]) -> f64 {
        let last = self.times_s.last().copied().unwrap_or_default();
        let count = sample(last) + self.force.len() + AFTER;
        let mut turns = vec![[0.0; 2]; count];
        for (plane, modes) in planes.both().into_iter().enumerate() {
            let swings = usize::from(modes.first().is_some_and(|mode| mode.omega < FASTEST));
            let (swinging, following) = modes.split_at(swings);
            let mut pushes = vec![0.0; count];
            for (foot, (&at, &wave)) in self.times_s.iter().zip(waves).enumerate() {
                let work = |mode: &Mode| trodden.work(plane, mode, foot);
                let push: f64 = swinging.iter().map(work).sum();
                let steady: f64 = following
                    .iter()
                    .map(|mode| mode.load_turn * work(mode) / mode.omega.powi(2))
                    .sum();
                let first = sample(at);
                let samples = pushes[first..].iter_mut().zip(&mut turns[first..]);
                for ((pushed, turn), [slow, quick]) in samples.zip(&self.force) {
                    let force = slow + wave * quick;
                    *pushed += push * force;
                    turn[plane] += steady * force;
                }
            }
            for mode in swinging {
                swing(mode, &pushes, |i, turn| turns[i][plane] += turn);
            }
        }
        let far = turns.into_iter().map(|[x, y]| x * x + y * y);
        far.fold(0.0, f64::max).sqrt()
    }
}

fn sample(at_s: f64) -> usize {
    (at_s / COARSE_S).round() as usize
}

/// Follows one mode and tells its turn at each sample.
fn swing(mode: &Mode, pushes: &[f64], mut each: impl FnMut(usize, f64)) {
    let mut one = Oscillator::at_rest(mode.omega, mode.damping_ratio, COARSE_S);
    let mut before = 0.0;
    for (i, &now) in pushes.iter().enumerate() {
        one.advance(before, now);
        before = now;
        each(i, mode.load_turn * one.q);
    }
}
