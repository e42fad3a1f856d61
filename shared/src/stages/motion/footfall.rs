//! One footfall: the force of a foot from heel strike to toe off, downward and sideways.
//!
//! The five terms of Li give a walk its first three harmonics and leave nothing above; what a pier of 10 to 30 Hz feels is
//! the blow of the heel. It is added, and with it the fourth harmonic that the terms lack, so that the trace as a whole
//! does to an oscillator what the effective impulse of CCIP-016 does (`tests/engineering/footfall.rs`).

use std::f64::consts::PI;

use crate::rules::li_2010::step;
use crate::rules::mechanics::oscillator::Oscillator;
use crate::site_plan::floor::Soles;
use crate::source::Source;
use crate::stages::motion::history::STEP_S;
use crate::units::{Frequency, hertz, second};

/// Where the heel comes from.
pub const HEEL_SOURCE: Source = Source::judgement(
    "heel at each step: soft soles 0.13 of the weight over 20 ms and 0.16 over 50 ms, chosen so that the step agrees with the \
     mean impulse of CCIP-016 from 8 to 40 Hz; hard heels 0.4 over 20 ms",
);
/// Share of the weight in the fourth harmonic's term: brings it to the mean and to the design value of CCIP-016.
const FOURTH_RATIO: [f64; 2] = [0.058, 0.068];
/// Force along the way, braking first, over weight, and outward, over weight.
const ALONG_RATIO: f64 = 0.2;
const OUTWARD_RATIO: f64 = 0.05;
/// Where the sideways force comes from.
pub const SIDEWAYS_SOURCE: Source = Source::judgement(
    "foot force along the way a fifth of the weight, braking and then pushing off; a twentieth outward",
);
/// Damping of the oscillator that an impulse is read from, as in the basis' table.
const READ_DAMPING: f64 = 0.03;

/// Whose step it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strength {
    /// The mean of people.
    Mean,
    /// A design value, which few exceed.
    Design,
}

/// Half sines of the heel's blow, the shortest first: height over the weight, and how long it lasts, s. Bone and heel strike
/// first, flesh and sole give after them.
fn heel(soles: Soles, strength: Strength) -> [(f64, f64); 2] {
    match (soles, strength) {
        (Soles::Soft, Strength::Mean) => [(0.13, 0.02), (0.16, 0.05)],
        (Soles::Soft, Strength::Design) => [(0.195, 0.02), (0.24, 0.05)],
        (Soles::Hard, Strength::Mean) => [(0.4, 0.02), (0.0, 0.05)],
        (Soles::Hard, Strength::Design) => [(0.6, 0.02), (0.0, 0.05)],
    }
}

/// Impulse of the heel's blow over weight, s.
pub fn heel_impulse_s(soles: Soles) -> f64 {
    let impulse = |(height, lasts)| height * lasts * 2.0 / PI;
    heel(soles, Strength::Mean).into_iter().map(impulse).sum()
}

/// How long the quickest part of the heel's blow lasts, s.
pub fn heel_lasts_s(soles: Soles) -> f64 {
    heel(soles, Strength::Mean)[0].1
}

/// Force of a foot over the walker's weight, one sample each step of time.
#[derive(Debug, Clone, PartialEq)]
pub struct Footfall {
    /// The weight as it comes and goes: slow enough for the ground to follow as if at rest, but for what makes a mode swing.
    pub slow: Vec<f64>,
    /// Heel and fourth harmonic: quick enough to come as a wave where the ground is soft or the foot far.
    pub quick: Vec<f64>,
    /// Along the way.
    pub along: Vec<f64>,
    /// Away from the other foot's track.
    pub outward: Vec<f64>,
}

/// The footfall at a pace.
pub fn footfall(pace: Frequency, soles: Soles, strength: Strength) -> Footfall {
    let contact = second::get(step::contact(pace));
    let count = (contact / STEP_S).ceil() as usize + 1;
    let whole = 1.0 / step::mean_ratio(pace);
    let coefficients = step::coefficients(pace);
    let heel = heel(soles, strength);
    let fourth = FOURTH_RATIO[usize::from(strength == Strength::Design)];
    let mut found = Footfall {
        slow: Vec::with_capacity(count),
        quick: Vec::with_capacity(count),
        along: Vec::with_capacity(count),
        outward: Vec::with_capacity(count),
    };
    let mut arch = Turning::new(PI * STEP_S / contact);
    let mut fourth_swing = Turning::new(8.0 * PI * hertz::get(pace) * STEP_S);
    for i in 0..count {
        let t = i as f64 * STEP_S;
        if t > contact {
            for part in found.each() {
                part.push(0.0);
            }
            continue;
        }
        let ([sin, cos], [swing, _]) = (arch.next(), fourth_swing.next());
        let half_sine = |(height, lasts): &(f64, f64)| height * (PI * t / lasts).sin();
        let blow: f64 = heel
            .iter()
            .filter(|(_, lasts)| t < *lasts)
            .map(half_sine)
            .sum();
        found.slow.push(whole * terms(&coefficients, sin, cos));
        found.quick.push(blow + fourth * sin * swing);
        found.along.push(ALONG_RATIO * 2.0 * sin * cos);
        found.outward.push(OUTWARD_RATIO * sin);
    }
    found
}

/// Sine and cosine of even steps from nought, each from the one before: much quicker than to ask for each.
struct Turning {
    step: [f64; 2],
    now: [f64; 2],
}

impl Turning {
    fn new(step: f64) -> Self {
        let (sin, cos) = step.sin_cos();
        Self {
            step: [sin, cos],
            now: [0.0, 1.0],
        }
    }

    fn next(&mut self) -> [f64; 2] {
        let ([s, c], [sin, cos]) = (self.step, self.now);
        self.now = [sin * c + cos * s, cos * c - sin * s];
        [sin, cos]
    }
}

/// Σ Aₙ sin(nx) from sin x and cos x: each sine from the two before it.
fn terms(coefficients: &[f64; 5], sin: f64, cos: f64) -> f64 {
    let (mut before, mut now) = (0.0, sin);
    let mut sum = 0.0;
    for a in coefficients {
        sum += a * now;
        (before, now) = (now, 2.0 * cos * now - before);
    }
    sum
}

impl Footfall {
    /// Its four parts.
    pub fn each(&mut self) -> [&mut Vec<f64>; 4] {
        [
            &mut self.slow,
            &mut self.quick,
            &mut self.along,
            &mut self.outward,
        ]
    }

    /// Downward force as a whole over weight.
    pub fn downward(&self) -> Vec<f64> {
        self.slow
            .iter()
            .zip(&self.quick)
            .map(|(slow, quick)| slow + quick)
            .collect()
    }

    /// What arrives below a deck that swings by itself: its springs' and dampers' force in place of the foot's.
    pub fn through_deck(mut self, deck: Frequency, damping_ratio: f64) -> Self {
        let omega = 2.0 * PI * hertz::get(deck);
        // Followed until a hundredth is left of the swing.
        let rest = (100f64.ln() / (damping_ratio * omega) / STEP_S).ceil() as usize;
        for part in self.each() {
            let mut one = Oscillator::at_rest(omega, damping_ratio, STEP_S);
            let mut before = 0.0;
            part.resize(part.len() + rest, 0.0);
            for force in part.iter_mut() {
                one.advance(before, *force);
                before = *force;
                *force = omega * (omega * one.q + 2.0 * damping_ratio * one.v);
            }
        }
        self
    }

    /// Peak speed that one footfall gives to an oscillator of 1 kg, in N s, for a walker of so many newtons: what the
    /// effective impulses of the guides stand for.
    pub fn impulse_n_s(&self, mode: Frequency, weight_n: f64) -> f64 {
        let omega = 2.0 * PI * hertz::get(mode);
        let mut one = Oscillator::at_rest(omega, READ_DAMPING, STEP_S);
        let rest = (1.0 / (hertz::get(mode) * STEP_S)).ceil() as usize;
        let (mut before, mut most) = (0.0, 0.0_f64);
        for force in self
            .downward()
            .into_iter()
            .chain(std::iter::repeat_n(0.0, rest))
        {
            one.advance(before, force);
            before = force;
            most = most.max(one.v.abs());
        }
        weight_n * most
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_weight_is_the_mean_of_a_walk() {
        for pace in [1.6, 1.8, 2.1] {
            let foot = footfall(hertz::new(pace), Soles::Soft, Strength::Mean);
            let mean: f64 = foot.slow.iter().sum::<f64>() * STEP_S * pace;
            assert!((mean - 1.0).abs() < 2e-3, "{mean}");
            assert!(foot.along.iter().sum::<f64>().abs() < 1e-2 * foot.along.len() as f64);
        }
    }

    #[test]
    fn the_terms_are_those_of_the_rule() {
        let pace = hertz::new(1.9);
        let foot = footfall(pace, Soles::Soft, Strength::Mean);
        let expected = step::force_ratio(pace, second::new(0.3)) / step::mean_ratio(pace);
        assert!((foot.slow[150] - expected).abs() < 1e-12);
    }

    /// Transmission of a steady load is one, and a quick deck carries a slow force as it is.
    #[test]
    fn a_stiff_deck_hands_the_step_on_as_it_is() {
        let plain = footfall(hertz::new(1.8), Soles::Soft, Strength::Mean);
        let below = plain.clone().through_deck(hertz::new(200.0), 0.2);
        let most = plain
            .slow
            .iter()
            .zip(&below.slow)
            .map(|(a, b)| (a - b).abs())
            .fold(0.0, f64::max);
        assert!(most < 0.01, "{most}");
    }

    #[test]
    fn hard_heels_are_quicker_than_soft_ones() {
        let pace = hertz::new(1.8);
        let at = |soles, mode| {
            footfall(pace, soles, Strength::Mean).impulse_n_s(hertz::new(mode), 746.0)
        };
        assert!(at(Soles::Hard, 30.0) > 1.5 * at(Soles::Soft, 30.0));
        assert!(at(Soles::Hard, 10.0) < at(Soles::Soft, 10.0));
    }
}
