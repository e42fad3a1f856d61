//! Paces: nobody knows his own to 5 %, and a harmonic of it that meets the pier makes a walk twice as bad.
//!
//! The walk is followed sample by sample at two paces: one that is no worse than the middle of the band, and one that nine
//! tenths of the band do not exceed. Which ones these are is found without following: between two steps a mode swings
//! freely, so that its state after each step is the last one, turned and decayed, and what a footfall adds.

use nalgebra::Complex;

use crate::brief::{Brief, Origin};
use crate::source::Source;
use crate::stages::motion::footfall::Strength;
use crate::stages::motion::history::{FASTEST_HZ, STEP_S};
use crate::stages::motion::modes::Mode;
use crate::stages::motion::steps::Trodden;
use crate::stages::motion::system::Planes;
use crate::units::{ARCSEC_PER_RADIAN, hertz};

/// Paces of people who were not asked, Hz.
const BAND_HZ: (f64, f64) = (1.6, 2.1);
/// How well a stated pace is known.
const STATED_RATIO: f64 = 0.05;
/// Paces that are looked at.
const PACES: usize = 11;
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

/// The middle and the unfavourable pace on these modes.
#[must_use]
pub fn choose(band_hz: (f64, f64), planes: &Planes, trodden: &Trodden) -> [f64; 2] {
    let (from, to) = band_hz;
    let mut all: Vec<(f64, f64)> = (0..PACES)
        .map(|i| from + (to - from) * i as f64 / (PACES - 1) as f64)
        .map(|pace| (largest(pace, planes, trodden), pace))
        .collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    // Of eleven, the sixth is the middle, and nine tenths do not exceed the tenth.
    [all[PACES / 2].1, all[PACES * 9 / 10].1]
}

/// A figure that grows as the largest swing of the walk does.
fn largest(pace_hz: f64, planes: &Planes, trodden: &Trodden) -> f64 {
    let step = trodden.footfall(pace_hz, Strength::Mean);
    let waves = trodden.wave_ratios(planes);
    let times = trodden.times_s(pace_hz);
    let peak = step.slow.iter().copied().fold(0.0, f64::max);
    let mut most = vec![[0.0; 2]; times.len()];
    for (plane, modes) in planes.both().into_iter().enumerate() {
        for mode in modes {
            let work = |foot: usize| trodden.work(plane, mode, foot);
            let gain = (ARCSEC_PER_RADIAN * mode.load_turn).abs();
            let ringing = Ringing::new(mode, &step.slow, &step.quick);
            let mut state = Complex::new(0.0, 0.0);
            for (foot, sums) in most.iter_mut().enumerate() {
                let gap = foot
                    .checked_sub(1)
                    .map_or(0.0, |before| times[foot] - times[before]);
                state = match &ringing {
                    Some(ringing) => {
                        state * (ringing.rate * gap).exp()
                            + (ringing.slow + ringing.quick * waves[foot]) * work(foot)
                    }
                    None => state,
                };
                let swing = ringing.as_ref().map_or(0.0, |r| state.norm() / r.rate.im);
                sums[plane] += gain * (swing + peak * work(foot).abs() / mode.omega.powi(2));
            }
        }
    }
    most.into_iter()
        .map(|[x, y]| x.hypot(y))
        .fold(0.0, f64::max)
}

/// What is left of one footfall in a mode: its rate, and the state after the slow and after the quick part.
struct Ringing {
    rate: Complex<f64>,
    slow: Complex<f64>,
    quick: Complex<f64>,
}

impl Ringing {
    /// None for modes that follow at once.
    fn new(mode: &Mode, slow: &[f64], quick: &[f64]) -> Option<Self> {
        if mode.omega > FASTEST_HZ * 2.0 * std::f64::consts::PI {
            return None;
        }
        let damping = mode.damping_ratio;
        let rate = Complex::new(
            -damping * mode.omega,
            mode.omega * (1.0 - damping * damping).sqrt(),
        );
        let turn = (rate * STEP_S).exp();
        let after = |trace: &[f64]| {
            trace.iter().fold(Complex::new(0.0, 0.0), |state, &force| {
                state * turn + force * STEP_S
            })
        };
        Some(Self {
            rate,
            slow: after(slow),
            quick: after(quick),
        })
    }
}
