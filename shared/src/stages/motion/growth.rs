//! Growth: what a movement does to the star within one exposure. Every judgement of the star's width is made here.
//!
//! A movement counts for the time that it lasts within the exposure, the quiet rest of it included. Where a guider corrects
//! within the exposure, the star is where the guider lets it go. Of a short frame only what moves within it counts.

mod movement;

use serde::Serialize;

use crate::brief::Brief;
use crate::rules::image_motion::fit::{self, Star};
use crate::rules::image_motion::places::Places;
use crate::rules::image_motion::{scale, width};
use crate::site_plan::Use;
use crate::stages::motion::history::{History, STEP_S, mean};
use crate::units::{Outcome, second};

pub use movement::{Likely, Movement};

/// Exposures up to this are frames, of which hundreds are stacked or which the eye takes in one after another, s.
const FRAME_S: f64 = 1.0;
/// Time in which somebody comes to a stand, sits down or leaves, s.
const RISES_S: f64 = 0.5;

/// Time for which somebody walks about within one exposure, s: across a room and back (judgement).
const WALKS_S: f64 = 10.0;
/// Rate at which the steps of a walk follow each other, Hz.
const STEPS_HZ: f64 = 2.0;

/// Samples of a history for one that is taken where several histories are put together: one in 24 ms of a coarse walk.
const SAMPLED: usize = 6;

/// So long at a place.
type Timed = (f64, [f64; 2]);

/// Places with the time spent at each, of one history or of several.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Seen(Vec<Timed>);

/// How the star is recorded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exposure {
    /// Width of a star at rest, arcsec: the seeing's, or for planets that of the disc which the aperture shows.
    pub width_arcsec: f64,
    lasts_s: f64,
    /// Time between two corrections; none where nothing is corrected within the exposure.
    guided_every_s: Option<f64>,
}

/// What a movement costs a star within one exposure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Cost {
    /// Growth of its round width: 0.05 is a twentieth wider.
    pub star_growth_ratio: Outcome<f64>,
    /// Share of its peak that is left; the worst is the least.
    pub peak_left_ratio: Outcome<f64>,
}

impl Exposure {
    /// As the plan has it.
    pub fn of(brief: &Brief) -> Self {
        let load = &brief.load;
        let [lasts_s, guided] = [load.exposure.value, load.guiding_interval.value].map(second::get);
        Self {
            width_arcsec: match brief.purpose.value {
                Use::Planetary => scale::disc_arcsec(load.aperture.value),
                Use::DeepSky | Use::Visual => load.seeing_arcsec.value,
            },
            lasts_s,
            guided_every_s: (guided < lasts_s).then_some(guided),
        }
    }

    /// Whether it is so short that only what moves within it counts.
    pub fn is_frame(&self) -> bool {
        self.lasts_s <= FRAME_S
    }

    /// The star's places when a history happens once in the exposure: for a history that lasts longer, in that part of it
    /// which moves the star most; for frames, in all that fall into it.
    pub fn of_history(&self, history: &History) -> Places {
        let mut seen = Seen::default();
        self.sees(history, 1, 2, &mut seen);
        self.places(&seen)
    }

    /// Puts some samples of a history to those of others, each as likely as the others.
    pub fn sees_in_part(&self, history: &History, seen: &mut Seen) {
        self.sees(history, SAMPLED, SAMPLED, seen);
    }

    /// Of a history one sample of so many within frames, and one of at most so many where it is seen whole.
    fn sees(&self, history: &History, in_frames: usize, whole: usize, seen: &mut Seen) {
        if self.is_frame() {
            self.within_frames(&history.fine().turns, in_frames, &mut seen.0);
        } else {
            // A guider is followed by eight samples between two of its corrections, however quick it is.
            let guided = self.guided_every_s.unwrap_or(f64::INFINITY);
            let most = (guided / (8.0 * history.step_s)).min(whole as f64) as usize;
            self.within(&history.each(most.max(1)), &mut seen.0);
        }
    }

    /// The star's places of all that was seen.
    pub fn places(&self, seen: &Seen) -> Places {
        self.gather(seen.0.iter().copied())
    }

    /// Places of one history with the rest of the exposure.
    fn within(&self, history: &History, timed: &mut Vec<Timed>) {
        let guided = self
            .guided_every_s
            .map(|interval| self.followed(history, interval.max(STEP_S)));
        let turns = guided.as_ref().unwrap_or(history).turns.as_slice();
        let most = ((self.lasts_s / history.step_s) as usize).max(1);
        let seen = if turns.len() > most {
            liveliest(turns, most)
        } else {
            turns
        };
        let lasts_s = history.step_s * seen.len() as f64;
        timed.extend(seen.iter().map(|turn| (history.step_s, *turn)));
        timed.push(((self.lasts_s - lasts_s).max(0.0), [0.0; 2]));
    }

    /// The same when the star turns by so much once, and stays there: until the guider takes it out at its next
    /// correction, or from the middle of the exposure on.
    pub fn of_step(&self, turn: [f64; 2]) -> Places {
        if self.is_frame() {
            // A frame sees the share of the way that falls into it.
            let half = turn.map(|value| 0.5 * value * (self.lasts_s / RISES_S).min(1.0));
            let evenly = (0..16).map(move |i| {
                let along = (f64::from(i) - 7.5) / 8.0;
                (1.0, half.map(|value| value * along))
            });
            return self.gather(evenly);
        }
        let away = self.guided_every_s.unwrap_or(0.5 * self.lasts_s);
        let away = away.min(0.5 * self.lasts_s);
        self.gather([(self.lasts_s - away, [0.0; 2]), (away, turn)].into_iter())
    }

    /// The same when it goes to and fro by so much all through the exposure, as long here as there; too slow for a frame.
    pub fn of_shift(&self, turn: [f64; 2]) -> Places {
        if self.is_frame() {
            return self.of_step(turn);
        }
        let side = turn.map(|value| 0.5 * value);
        self.gather([(0.5, side), (0.5, side.map(|value| -value))].into_iter())
    }

    /// The same when somebody walks about for a part of the exposure, a step turning the star by so much: careful in that it
    /// is away by the whole of it for all that time. A frame sees the ripple of the steps.
    pub fn of_walking(&self, turn: [f64; 2]) -> Movement {
        if self.is_frame() {
            let seen = width::blur_ratio(STEPS_HZ, self.lasts_s) / 8f64.sqrt();
            return Movement::steady(turn.map(|value| seen * value.abs()));
        }
        let away = WALKS_S.min(0.5 * self.lasts_s);
        let timed = [(self.lasts_s - away, [0.0; 2]), (away, turn)];
        Movement::once(self.gather(timed.into_iter()))
    }

    /// The star with such a movement.
    pub fn star(&self, movement: &Movement) -> Star {
        fit::star(self.width_arcsec, movement.steady_arcsec, &movement.places)
    }

    /// The star with several movements that know nothing of each other: widths add as squares along each axis, and each
    /// leaves its share of the peak.
    pub fn together<'a>(&self, movements: impl Iterator<Item = &'a Movement>) -> Star {
        let (squares, peak_left_ratio) = movements.fold(([1.0; 2], 1.0), |(squares, peak), one| {
            let star = self.star(one);
            let wider = |axis: usize| squares[axis] + star.width_ratio[axis].powi(2) - 1.0;
            ([wider(0), wider(1)], peak * star.peak_left_ratio)
        });
        Star {
            width_ratio: squares.map(f64::sqrt),
            peak_left_ratio,
        }
    }

    /// Growth of the star when it turns by so much once in the exposure, as somebody makes it who comes.
    pub fn step_growth_ratio(&self, turn: [f64; 2]) -> f64 {
        self.star(&Movement::once(self.of_step(turn)))
            .growth_ratio()
    }

    /// What a movement costs, expected and at worst. At worst both the ground and the load are unfavourable; being
    /// independent of each other, they add as squares.
    pub fn cost(&self, likely: &Likely) -> Cost {
        let expected = self.star(&likely.expected);
        let worst = self.star(&likely.soft.scaled(likely.beyond_soft_ratio()));
        // A star that is thrown far for a moment is fitted no wider than one that moved a little: never better for it.
        Cost {
            star_growth_ratio: Outcome {
                expected: expected.growth_ratio(),
                worst: worst.growth_ratio().max(expected.growth_ratio()),
            },
            peak_left_ratio: Outcome {
                expected: expected.peak_left_ratio,
                worst: worst.peak_left_ratio.min(expected.peak_left_ratio),
            },
        }
    }

    /// The history after the guider, until its last mistake is taken out again.
    fn followed(&self, history: &History, every_s: f64) -> History {
        let length = ((every_s / history.step_s).round() as usize).max(1);
        let most = (self.lasts_s / history.step_s) as usize;
        let whole = (history.turns.len().div_ceil(length) + 1) * length;
        history.guided_until(every_s, whole.min(most))
    }

    fn gather<I: Iterator<Item = (f64, [f64; 2])>>(&self, timed: I) -> Places {
        Places::gather(self.width_arcsec, timed)
    }

    /// Places about each frame's own mean, of all frames that fall into a history of samples [`STEP_S`] apart.
    fn within_frames(&self, turns: &[[f64; 2]], every: usize, timed: &mut Vec<Timed>) {
        let samples = self.lasts_s / STEP_S;
        if samples < 8.0 {
            // Within so few samples the star goes straight on: evenly over its way, told by the two places that have the
            // same variance.
            let half = samples / 12f64.sqrt();
            timed.extend(turns.windows(2).step_by(every).flat_map(move |pair| {
                let step = [0, 1].map(|axis| half * (pair[1][axis] - pair[0][axis]));
                [(1.0, step), (1.0, step.map(|value| -value))]
            }));
            return;
        }
        for frame in turns.chunks_exact(samples as usize) {
            let [x, y] = mean(frame);
            let about = frame.iter().step_by(every);
            timed.extend(about.map(|turn| (1.0, [turn[0] - x, turn[1] - y])));
        }
    }
}

/// The part of so many samples that moves the star most.
fn liveliest(turns: &[[f64; 2]], most: usize) -> &[[f64; 2]] {
    let variance = |part: &[[f64; 2]]| {
        let [x, y] = mean(part);
        part.iter()
            .map(|[a, b]| (a - x).powi(2) + (b - y).powi(2))
            .sum::<f64>()
    };
    (0..=turns.len() - most)
        .step_by((most / 4).max(1))
        .map(|first| &turns[first..first + most])
        .max_by(|a, b| variance(a).total_cmp(&variance(b)))
        .unwrap_or(turns)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn long(guided_every_s: Option<f64>) -> Exposure {
        Exposure {
            width_arcsec: 2.0,
            lasts_s: 300.0,
            guided_every_s,
        }
    }

    fn likely(expected: Movement, soft_ratio: f64, load_ratio: f64) -> Likely {
        Likely {
            soft: expected.scaled(soft_ratio),
            expected,
            load_ratio,
        }
    }

    /// Computed by hand: a step of 0.2 arcsec for 2 s of 300 s has the variance p (1 − p) d² along its axis.
    #[test]
    fn a_step_counts_for_the_time_that_it_shows() {
        let exposure = long(Some(2.0));
        let movement = Movement::once(exposure.of_step([0.2, 0.0]));
        let variance: f64 = 2.0 / 300.0 * (298.0 / 300.0) * 0.04;
        assert!((movement.rms_arcsec() / (0.5 * variance).sqrt() - 1.0).abs() < 1e-9);
        let growth = exposure.star(&movement).growth_ratio();
        assert!(
            (growth / (5.545 * variance / 4.0 / 4.0) - 1.0).abs() < 0.03,
            "{growth}"
        );
        let left = Movement::once(long(None).of_step([0.2, 0.0]));
        assert!(long(None).star(&left).growth_ratio() > 30.0 * growth);
    }

    /// The same walk costs an exposure that is five times as long a fifth.
    #[test]
    fn an_event_counts_once_in_an_exposure() {
        let turns = (0..10_000)
            .map(|i| [0.3 * (0.05 * f64::from(i)).sin(), 0.0])
            .collect();
        let history = History::of(turns);
        let grown = |lasts_s: f64| {
            let exposure = Exposure {
                lasts_s,
                ..long(None)
            };
            exposure
                .star(&Movement::once(exposure.of_history(&history)))
                .growth_ratio()
        };
        assert!((grown(60.0) / grown(300.0) - 5.0).abs() < 0.1);
        assert!((grown(10.0) / grown(20.0) - 1.0).abs() < 0.02);
    }

    /// Somebody who stood up blurs nothing in 2 ms; a swing of 10 Hz in frames of 10 and 20 ms blurs 0.180 and 0.353 of its
    /// rms (computed apart).
    #[test]
    fn of_a_frame_only_what_moves_within_it_counts() {
        let frame = |lasts_s| Exposure {
            width_arcsec: 0.6,
            lasts_s,
            guided_every_s: None,
        };
        let stood = Movement::once(frame(0.002).of_step([1.0, 0.0]));
        assert!(frame(0.002).star(&stood).growth_ratio() < 1e-4);
        let turns = (0..5000)
            .map(|i| {
                [
                    0.1 * (std::f64::consts::TAU * 10.0 * STEP_S * f64::from(i)).sin(),
                    0.0,
                ]
            })
            .collect();
        let history = History::of(turns);
        for (lasts_s, blur) in [(0.010, 0.180), (0.020, 0.353)] {
            let seen = frame(lasts_s).of_history(&history);
            let rms = seen.moments()[0][1].sqrt() / (0.1 / 2f64.sqrt());
            assert!((rms / blur - 1.0).abs() < 0.03, "{lasts_s}: {rms}");
        }
    }

    /// Ground half as much again and a load twice as large: 1 + √(0.25 + 1) = 2.118 of the movement (computed by hand).
    #[test]
    fn ground_and_load_add_as_squares() {
        let exposure = long(Some(2.0));
        let movement = Movement::steady([0.1, 0.1]);
        let likely = likely(movement.clone(), 1.5, 2.0);
        assert!((likely.worst_ratio() - 2.118).abs() < 1e-3);
        let cost = exposure.cost(&likely);
        let worst = exposure.star(&movement.scaled(2.118_034)).growth_ratio();
        assert!((cost.star_growth_ratio.worst - worst).abs() < 1e-6);
        assert!(cost.peak_left_ratio.worst < cost.peak_left_ratio.expected);
    }

    #[test]
    fn the_worst_is_never_kinder_than_what_is_expected() {
        let exposure = long(Some(10.0));
        let thrown = Movement::once(exposure.of_step([1.6, 0.0]));
        let cost = exposure.cost(&likely(thrown, 4.0, 1.0));
        assert!(cost.star_growth_ratio.worst >= cost.star_growth_ratio.expected);
        assert!(cost.peak_left_ratio.worst <= cost.peak_left_ratio.expected);
    }
}
