//! Paces: nobody knows his own to 5 %, and a harmonic of it that meets the pier makes a walk twice as bad.
//!
//! The walk is followed at every pace of a band through the three slowest modes of each plane, every second sample; the quicker
//! ones go with each foot at once. What is said of it is then either of all these paces together, as the star's growth, or the
//! middle of their figures, or the one that nine tenths of them do not exceed, each figure by itself. None of these jumps where one
//! pace takes another's place. What is drawn is one walk, at the pace whose largest movement nine tenths do not exceed.

use crate::brief::{Brief, Origin};
use crate::source::Source;
use crate::stages::motion::footsteps::{Detail, Held, Steps};
use crate::stages::motion::history::History;
use crate::stages::motion::steps::{Pace, Trodden};
use crate::stages::motion::system::Planes;
use crate::units::hertz;

/// Paces of people who were not asked, Hz.
const BAND_HZ: (f64, f64) = (1.6, 2.1);
/// How well a stated pace is known.
const STATED_RATIO: f64 = 0.05;
/// Paces that are looked at.
const PACES: u8 = 11;
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
pub fn band_hz(brief: &Brief) -> (f64, f64) {
    let pace = brief.floor.pace;
    if pace.origin == Origin::Said {
        let stated = hertz::get(pace.value);
        (stated * (1.0 - STATED_RATIO), stated * (1.0 + STATED_RATIO))
    } else {
        BAND_HZ
    }
}

/// The walk at every pace of a band, ready to be followed in one ground after another.
pub struct Band(Vec<(Pace, Steps)>);

impl Band {
    /// Takes the paces evenly from a band.
    pub fn new((from, to): (f64, f64), trodden: &Trodden) -> Self {
        let at = |row: u8| {
            let hertz = from + (to - from) * f64::from(row) / f64::from(PACES - 1);
            let pace = Pace { hertz, row };
            (pace, Steps::at(trodden, pace, Detail::COARSE))
        };
        Self((0..PACES).map(at).collect())
    }

    /// Follows the walk at every pace on these modes, one after another.
    pub fn walk(&self, planes: &Planes, trodden: &Trodden, mut each: impl FnMut(Pace, History)) {
        let held = Held::by(planes, trodden, Detail::COARSE);
        for (pace, steps) in &self.0 {
            each(*pace, held.follow(steps));
        }
    }

    /// The paces, as they come.
    pub fn paces(&self) -> impl Iterator<Item = Pace> + '_ {
        self.0.iter().map(|(pace, _)| *pace)
    }
}

/// Of a figure at every pace the middle one and the one that nine tenths of them do not exceed, each with its place; none
/// without paces.
pub fn middle_and_unfavourable(figures: &[f64]) -> Option<[(usize, f64); 2]> {
    let mut all: Vec<(usize, f64)> = figures.iter().copied().enumerate().collect();
    all.sort_by(|a, b| a.1.total_cmp(&b.1));
    // Of eleven, the sixth is the middle, and nine tenths do not exceed the tenth.
    let at = |tenths: usize| all.get(all.len().saturating_sub(1) * tenths / 10).copied();
    Some([at(5)?, at(9)?])
}
