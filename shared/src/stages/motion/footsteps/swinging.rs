//! A mode that swings under a foot and after it.

use super::Detail;
use crate::rules::mechanics::oscillator::Oscillator;
use crate::stages::motion::footfall::Footfall;
use crate::stages::motion::modes::Mode;

/// Time for which a free swing is kept in a table, s: a little more than from one foot to the next.
const TABLE_S: f64 = 0.7;

/// A footfall's parts in newtons: the weight as it comes and goes, what is quick of it, along the way, outward.
pub struct Parts {
    pub slow: Vec<f64>,
    pub quick: Vec<f64>,
    pub along: Vec<f64>,
    pub outward: Vec<f64>,
}

impl Parts {
    /// With as many samples as are followed.
    pub fn of(footfall: &Footfall, detail: Detail) -> Self {
        let thin = |part: &[f64]| part.iter().step_by(detail.every).copied().collect();
        Self {
            slow: thin(&footfall.slow),
            quick: thin(&footfall.quick),
            along: thin(&footfall.along),
            outward: thin(&footfall.outward),
        }
    }

    /// Samples.
    pub fn len(&self) -> usize {
        self.slow.len()
    }
}

/// A mode that swings, with its free swing from a unit of displacement and from one of speed: displacement and speed by sample.
pub struct Swinging<'a> {
    mode: &'a Mode,
    step_s: f64,
    pub from_place: [Vec<f64>; 2],
    pub from_speed: [Vec<f64>; 2],
}

/// A mode under one part of a footfall.
pub struct Forced {
    /// While the foot is down.
    pub turns: Vec<f64>,
    /// Displacement and speed at the first sample after it.
    pub end: [f64; 2],
}

impl<'a> Swinging<'a> {
    /// Makes its tables.
    pub fn new(mode: &'a Mode, detail: Detail) -> Self {
        let step_s = detail.step_s();
        let count = (TABLE_S / step_s) as usize + 1;
        let free = |mut one: Oscillator| {
            let mut both = [Vec::with_capacity(count), Vec::with_capacity(count)];
            for _ in 0..count {
                both[0].push(one.q);
                both[1].push(one.v);
                one.advance(0.0, 0.0);
            }
            both
        };
        let from = |q, v| {
            let mut one = Oscillator::at_rest(mode.omega, mode.damping_ratio, step_s);
            (one.q, one.v) = (q, v);
            free(one)
        };
        Self {
            mode,
            step_s,
            from_place: from(1.0, 0.0),
            from_speed: from(0.0, 1.0),
        }
    }

    /// Under the parts of a footfall: downward, along its way, outward.
    pub fn under(&self, parts: &Parts) -> [Forced; 3] {
        let down: Vec<f64> = parts
            .slow
            .iter()
            .zip(&parts.quick)
            .map(|(slow, quick)| slow + quick)
            .collect();
        let still = Oscillator::at_rest(self.mode.omega, self.mode.damping_ratio, self.step_s);
        let mut ways = [(); 3].map(|()| (still, Vec::with_capacity(parts.len())));
        let mut before = [0.0; 3];
        // All three at once, each step of one waiting for nothing of the others.
        for ((&down, &along), &outward) in down.iter().zip(&parts.along).zip(&parts.outward) {
            let now = [down, along, outward];
            for (((one, turns), before), now) in ways.iter_mut().zip(before).zip(now) {
                one.advance(before, now);
                turns.push(one.q);
            }
            before = now;
        }
        let mut before = before.into_iter();
        ways.map(|(mut one, turns)| {
            one.advance(before.next().unwrap_or_default(), 0.0);
            Forced {
                turns,
                end: [one.q, one.v],
            }
        })
    }

    /// Displacement and speed of its free swing so many samples later, at most as many as the table has.
    pub fn after(&self, count: usize, [q, v]: [f64; 2]) -> [f64; 2] {
        let ([place, place_speed], [speed, speed_speed]) = (&self.from_place, &self.from_speed);
        [
            q * place[count] + v * speed[count],
            q * place_speed[count] + v * speed_speed[count],
        ]
    }
}
