//! Paces: nobody knows his own to 5 %, and a harmonic of it that meets the pier makes a walk twice as bad.
//!
//! The walk is followed with all modes at two paces: one that is no worse than the middle of the band, and one that nine
//! tenths of the band do not exceed. Which ones these are is found by following the two slowest modes of each plane, every
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
const PACES: u8 = 11;
/// Samples of a history for one that is looked at here.
const COARSE: usize = 2;
const COARSE_S: f64 = STEP_S * COARSE as f64;
/// Modes of each plane that are followed here.
const SWINGING: usize = 2;
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

/// A pace, and the row of chance by which its steps are uneven: another for each pace of a band, so that no one row decides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Steps a second.
    pub hertz: f64,
    /// Number of the row.
    pub row: u8,
}

/// A pace that is tried: one footfall at every second sample, slow and quick part, and when each foot falls.
struct Tried {
    pace: Pace,
    force: Vec<[f64; 2]>,
    times_s: Vec<f64>,
}

/// The paces of a band, ready to be tried in one ground after another.
pub struct Band(Vec<Tried>);

impl Band {
    /// Takes the paces evenly from a band.
    #[must_use]
    pub fn new((from, to): (f64, f64), trodden: &Trodden) -> Self {
        let tried = |row: u8| {
            let hertz = from + (to - from) * f64::from(row) / f64::from(PACES - 1);
            let pace = Pace { hertz, row };
            let step = trodden.footfall(hertz, Strength::Mean);
            let both = step.slow.iter().zip(&step.quick);
            Tried {
                pace,
                force: both.step_by(COARSE).map(|(a, b)| [*a, *b]).collect(),
                times_s: trodden.times_s(pace),
            }
        };
        Self((0..PACES).map(tried).collect())
    }

    /// The middle and the unfavourable pace on these modes.
    #[must_use]
    pub fn choose(&self, planes: &Planes, trodden: &Trodden) -> [Pace; 2] {
        let mut all: Vec<(f64, Pace)> = self
            .0
            .iter()
            .map(|tried| (tried.peak(planes, trodden), tried.pace))
            .collect();
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        // Of eleven, the sixth is the middle, and nine tenths do not exceed the tenth.
        let at = |tenths: usize| all[(all.len() - 1) * tenths / 10].1;
        [at(5), at(9)]
    }
}

impl Tried {
    /// Largest turn through the walk, but for a factor that is the same at every pace.
    fn peak(&self, planes: &Planes, trodden: &Trodden) -> f64 {
        let last = self.times_s.last().copied().unwrap_or_default();
        let count = sample(last) + self.force.len() + AFTER;
        let mut pushes = vec![0.0; count];
        let [east, north] = [0, 1].map(|plane| {
            let mut turns = vec![0.0; count];
            self.follow(planes, plane, trodden, &mut pushes, &mut turns);
            turns
        });
        let far = east.iter().zip(&north).map(|(x, y)| x * x + y * y);
        far.fold(0.0, f64::max).sqrt()
    }

    /// Adds the turn in a plane, sample by sample.
    fn follow(
        &self,
        planes: &Planes,
        plane: usize,
        trodden: &Trodden,
        pushes: &mut [f64],
        turns: &mut [f64],
    ) {
        let modes = planes.both()[plane];
        let slow = modes.iter().filter(|mode| mode.omega < FASTEST).count();
        let (swinging, following) = modes.split_at(slow.min(SWINGING));
        for mode in swinging {
            pushes.fill(0.0);
            let work = |foot: usize| trodden.work(plane, mode, foot);
            let flexible = mode.load_turn / mode.omega.powi(2);
            let waves = trodden.wave_ratios(planes, mode);
            self.tread(pushes, |foot| [waves[foot] * work(foot); 2]);
            // The slow part is followed as if at rest.
            self.tread(turns, |foot| {
                [flexible * work(foot) * (1.0 - waves[foot]), 0.0]
            });
            let mut one = Oscillator::at_rest(mode.omega, mode.damping_ratio, COARSE_S);
            let mut before = 0.0;
            for (turn, &now) in turns.iter_mut().zip(pushes.iter()) {
                one.advance(before, now);
                before = now;
                *turn += mode.load_turn * one.q;
            }
        }
        if let Some(first) = modes.first() {
            let turn = |mode: &Mode, foot: usize| {
                mode.load_turn * trodden.work(plane, mode, foot) / mode.omega.powi(2)
            };
            let waves = trodden.wave_ratios(planes, first);
            self.tread(turns, |foot| {
                let all: f64 = following.iter().map(|mode| turn(mode, foot)).sum();
                [all, all * waves[foot]]
            });
        }
    }

    /// Adds so many times each foot's slow part and its quick one.
    fn tread(&self, sums: &mut [f64], times: impl Fn(usize) -> [f64; 2]) {
        for (foot, &at) in self.times_s.iter().enumerate() {
            let [of_slow, of_quick] = times(foot);
            for (sum, [slow, quick]) in sums[sample(at)..].iter_mut().zip(&self.force) {
                *sum += of_slow * slow + of_quick * quick;
            }
        }
    }
}

fn sample(at_s: f64) -> usize {
    (at_s / COARSE_S).round() as usize
}
