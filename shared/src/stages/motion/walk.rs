//! A walk: one foot after the other, each at its own place on the drawn path.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::image_motion::{scale, width};
use crate::rules::li_2010::step;
use crate::site_plan::floor::Soles;
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::growth::{Exposure, Likely, Movement};
use crate::stages::motion::history::{self, Forces, History, STEP_S};
use crate::stages::motion::influence::{Influence, through_floor};
use crate::stages::motion::people;
use crate::stages::motion::system::{Planes, System};
use crate::stages::motion::trail::{self, Drawn};
use crate::units::{
    Frequency, STANDARD_GRAVITY_M_S2, Time, hertz, kilogram, metre_per_second, second,
};

/// Longest part of a walk that is followed, s: the part nearest to the pier.
pub const LONGEST_S: f64 = 40.0;
/// Time that is followed after the last step, s.
const AFTER_S: f64 = 1.5;
/// Distance at which a second person follows, m: to the next whole step.
const FOLLOWS_M: f64 = 1.0;
/// Half the distance between the tracks of left and right foot, m.
const HALF_TRACK_M: f64 = 0.05;
/// Steps until a swing has built up.
const STEPS_ON_THE_SPOT: usize = 8;
/// Multiples of the pace that have a line of their own in the spectrum.
const HARMONICS: u32 = 20;
/// A hard heel: a blow of so much of the weight for so long on top of the step.
const HEEL_RATIO: f64 = 0.4;
const HEEL_S: f64 = 0.02;
/// Where the heel comes from.
pub const HEEL_SOURCE: Source = Source::judgement(
    "hard heel on a hard floor: a blow of 0.4 of the weight for 20 ms at each step",
);

/// The star during the walk.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Walk {
    /// Root mean square of the star's distance from its mean place.
    pub rms_arcsec: Option<f64>,
    /// Largest distance from rest.
    pub peak_arcsec: Option<f64>,
    /// Length of the star's trail from end to end, within one exposure.
    pub trail_arcsec: Option<f64>,
    /// The same on the chip.
    pub trail_pixels: Option<f64>,
    /// The peak in the softest ground thought likely.
    pub worst_peak_arcsec: Option<f64>,
    /// Root mean square with a guider.
    pub guided_rms_arcsec: Option<f64>,
    /// Width of the star when somebody walks all through the exposure, not guided.
    pub star_width_arcsec: Option<f64>,
    /// Time of the walk that was followed.
    pub lasts_s: f64,
    /// Number of steps in it.
    pub steps: usize,
    /// Points for drawings.
    pub drawn: Option<Drawn>,
    /// Why there are no figures, where there are none.
    pub unknown_because: Option<String>,
    /// The walk in short, alone and with somebody who follows.
    #[serde(skip)]
    pub in_short: Option<[Peaks; 2]>,
}

/// A footfall: when, and where.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Foot {
    starts_s: f64,
    place: [f64; 2],
}

/// A walk of which nothing can be said.
#[must_use]
pub fn unknown(why: impl Into<String>) -> Walk {
    Walk {
        rms_arcsec: None,
        peak_arcsec: None,
        trail_arcsec: None,
        trail_pixels: None,
        worst_peak_arcsec: None,
        guided_rms_arcsec: None,
        star_width_arcsec: None,
        lasts_s: 0.0,
        steps: 0,
        drawn: None,
        unknown_because: Some(why.into()),
        in_short: None,
    }
}

/// Follows the walk.
#[must_use]
pub fn find(
    brief: &Brief,
    floor: &Floor,
    system: &System,
    influence: &dyn Influence,
    notes: &mut Notes,
) -> Walk {
    let Some(steps) = Steps::take(brief, floor, influence) else {
        return unknown("No path is drawn.");
    };
    let typical = history::run(&system.typical, &steps.forces);
    let worst = history::run(&system.low, &steps.forces);
    note(brief, &typical, notes);
    tell(brief, system, &typical, &worst, &steps)
}

/// The walk in short: how far it moves the star, and what of it one exposure sees.
#[derive(Debug, Clone, PartialEq)]
pub struct Peaks {
    /// Largest distance from rest, typical ground.
    pub typical: f64,
    /// The same in the softest ground thought likely.
    pub worst: f64,
    /// What one exposure sees of it.
    pub likely: Likely,
}

/// The walk in short, alone and with somebody who follows; none without a path.
#[must_use]
pub fn peaks(
    brief: &Brief,
    floor: &Floor,
    system: &System,
    influence: &dyn Influence,
) -> Option<[Peaks; 2]> {
    let steps = Steps::take(brief, floor, influence)?;
    let typical = history::run(&system.typical, &steps.forces);
    Some(in_short(
        brief,
        &typical,
        &history::run(&system.low, &steps.forces),
    ))
}

/// Alone, and with somebody who follows in step.
fn in_short(brief: &Brief, typical: &History, worst: &History) -> [Peaks; 2] {
    let later = second::get(follows_after(brief));
    [
        peaks_of(brief, typical, worst),
        peaks_of(
            brief,
            &typical.with_follower(later),
            &worst.with_follower(later),
        ),
    ]
}

fn peaks_of(brief: &Brief, typical: &History, worst: &History) -> Peaks {
    let exposure = Exposure::of(brief);
    let seen = |history: &History| Movement::once(exposure.of_history(history));
    Peaks {
        typical: typical.peak_arcsec(),
        worst: worst.peak_arcsec(),
        likely: Likely {
            expected: seen(typical),
            soft: seen(worst),
            load_ratio: 1.0,
        },
    }
}

/// Time after which a second person treads where the first one trod: whole steps, so that both tread at once.
fn follows_after(brief: &Brief) -> Time {
    let pace = hertz::get(brief.floor.pace.value);
    let stride = metre_per_second::get(brief.floor.walk_speed.value) / pace;
    let steps = if stride > 0.0 {
        (FOLLOWS_M / stride).ceil().clamp(1.0, 100.0)
    } else {
        1.0
    };
    second::new(steps / pace)
}

/// How many times as far as somebody who stands a step moves the star: both feet carry for a while, and the pier swings.
#[must_use]
pub fn step_ratio(brief: &Brief, planes: &Planes) -> f64 {
    let (pace, trace) = (hertz::get(brief.floor.pace.value), trace(brief));
    let across = [0.0, 0.0, 0.0, -1.0, 1.0, 0.0];
    let mut forces = Forces::at_rest((STEPS_ON_THE_SPOT as f64 + 1.0) / pace);
    for step in 0..STEPS_ON_THE_SPOT {
        forces.add(&across, step as f64 / pace, &trace);
    }
    let weight = kilogram::get(brief.floor.walker_mass.value) * STANDARD_GRAVITY_M_S2;
    let [x, y] = people::steady(planes, &across);
    let still = weight * x.hypot(y);
    if still > 0.0 {
        (history::run(planes, &forces).peak_arcsec() / still).max(1.0)
    } else {
        1.0
    }
}

/// The steps of the walk as forces on the block.
struct Steps {
    forces: Forces,
    lasts_s: f64,
    count: usize,
}

impl Steps {
    fn take(brief: &Brief, floor: &Floor, influence: &dyn Influence) -> Option<Self> {
        let path = &brief.floor.walk.value;
        let feet = feet(
            path,
            metre_per_second::get(brief.floor.walk_speed.value),
            hertz::get(brief.floor.pace.value),
        );
        let trace = trace(brief);
        let lasts_s = feet.last()?.starts_s + trace.len() as f64 * STEP_S;
        let mut forces = Forces::at_rest(lasts_s + AFTER_S);
        for foot in &feet {
            forces.add(
                &through_floor(influence, floor, foot.place[0], foot.place[1]),
                foot.starts_s,
                &trace,
            );
        }
        Some(Self {
            forces,
            lasts_s,
            count: feet.len(),
        })
    }
}

fn tell(brief: &Brief, system: &System, typical: &History, worst: &History, steps: &Steps) -> Walk {
    let load = &brief.load;
    let trail = trail::length_arcsec(typical, second::get(load.exposure.value));
    let rms = typical.rms_arcsec();
    Walk {
        rms_arcsec: Some(rms),
        peak_arcsec: Some(typical.peak_arcsec()),
        trail_arcsec: Some(trail),
        trail_pixels: Some(
            trail / scale::arcsec_per_pixel(load.pixel.value, load.focal_length.value),
        ),
        worst_peak_arcsec: Some(worst.peak_arcsec()),
        guided_rms_arcsec: Some(
            typical
                .guided(second::get(load.guiding_interval.value))
                .rms_arcsec(),
        ),
        star_width_arcsec: Some(width::grown_arcsec(
            load.seeing_arcsec.value,
            rms / 2f64.sqrt(),
        )),
        lasts_s: steps.lasts_s,
        steps: steps.count,
        drawn: Some(trail::drawn(typical, &marks_hz(brief, system))),
        unknown_because: None,
        in_short: Some(in_short(brief, typical, worst)),
    }
}

/// Frequencies worth a line of their own in the spectrum: those of the steps and of the pier.
fn marks_hz(brief: &Brief, system: &System) -> Vec<f64> {
    let pace = hertz::get(brief.floor.pace.value);
    let modes = system
        .typical
        .both()
        .into_iter()
        .flatten()
        .map(|mode| mode.omega / (2.0 * std::f64::consts::PI));
    (1..=HARMONICS)
        .map(|n| f64::from(n) * pace)
        .chain(modes)
        .collect()
}

/// Force of one step in newtons, sample by sample.
fn trace(brief: &Brief) -> Vec<f64> {
    let pace: Frequency = brief.floor.pace.value;
    let weight = kilogram::get(brief.floor.walker_mass.value) * STANDARD_GRAVITY_M_S2;
    let whole = weight / step::mean_ratio(pace);
    let count = (second::get(step::contact(pace)) / STEP_S).ceil() as usize + 1;
    (0..count)
        .map(|i| {
            let t = i as f64 * STEP_S;
            let heel = if brief.floor.soles.value == Soles::Hard && t < HEEL_S {
                HEEL_RATIO * weight * (std::f64::consts::PI * t / HEEL_S).sin()
            } else {
                0.0
            };
            whole * step::force_ratio(pace, second::new(t)) + heel
        })
        .collect()
}

/// Places of the feet along the path, left and right of it in turn; of a long walk the part nearest to the pier.
fn feet(path: &[[f64; 2]], speed: f64, pace: f64) -> Vec<Foot> {
    let stride = speed / pace;
    let mut all = Vec::new();
    let (mut ahead, mut index) = (0.0, 0usize);
    for leg in path.windows(2) {
        let [from, to] = [leg[0], leg[1]];
        let length = (to[0] - from[0]).hypot(to[1] - from[1]);
        while ahead <= length && length > 0.0 && all.len() < 100_000 {
            let [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
            let side = if index.is_multiple_of(2) {
                HALF_TRACK_M
            } else {
                -HALF_TRACK_M
            };
            all.push(Foot {
                starts_s: index as f64 / pace,
                place: [
                    from[0] + ux * ahead - uy * side,
                    from[1] + uy * ahead + ux * side,
                ],
            });
            index += 1;
            ahead += stride;
        }
        ahead -= length;
    }
    nearest(all, (LONGEST_S * pace) as usize)
}

fn nearest(all: Vec<Foot>, most: usize) -> Vec<Foot> {
    if all.len() <= most {
        return all;
    }
    let closest = all
        .iter()
        .enumerate()
        .min_by(|(_, a), (_, b)| {
            a.place[0]
                .hypot(a.place[1])
                .total_cmp(&b.place[0].hypot(b.place[1]))
        })
        .map_or(0, |(i, _)| i);
    let first = closest.saturating_sub(most / 2).min(all.len() - most);
    let start = all[first].starts_s;
    all[first..first + most]
        .iter()
        .map(|foot| Foot {
            starts_s: foot.starts_s - start,
            ..*foot
        })
        .collect()
}

fn note(brief: &Brief, typical: &History, notes: &mut Notes) {
    if brief.floor.soles.value == Soles::Hard {
        let weight = kilogram::get(brief.floor.walker_mass.value) * STANDARD_GRAVITY_M_S2;
        notes.working(
            Working::new(
                "motion.heel",
                "Blow of a hard heel at each step",
                "J = 0.4 G · 2 t/π",
                HEEL_SOURCE,
            )
            .with("G", weight, Unit::Newton)
            .with("t", HEEL_S, Unit::Second)
            .gives(
                "J",
                HEEL_RATIO * weight * 2.0 * HEEL_S / std::f64::consts::PI,
                Unit::NewtonSecond,
            ),
        );
    }
    notes.working(
        Working::new(
            "motion.walk_step",
            "Time for which one foot stands",
            "T_e = 1/(0.76 f)",
            step::SOURCE,
        )
        .with("f", hertz::get(brief.floor.pace.value), Unit::Hertz)
        .gives(
            "T_e",
            second::get(step::contact(brief.floor.pace.value)),
            Unit::Second,
        ),
    );
    notes.working(
        Working::new(
            "motion.walk",
            "Largest movement of the star during the walk",
            "F(t)/G = Σ A_n sin(nπt/T_e) at each foot's place, through every mode",
            step::SOURCE,
        )
        .with(
            "m",
            kilogram::get(brief.floor.walker_mass.value),
            Unit::Kilogram,
        )
        .with("f", hertz::get(brief.floor.pace.value), Unit::Hertz)
        .with(
            "v",
            metre_per_second::get(brief.floor.walk_speed.value),
            Unit::MetrePerSecond,
        )
        .gives("peak", typical.peak_arcsec(), Unit::Arcsecond),
    );
    let scale = scale::arcsec_per_pixel(brief.load.pixel.value, brief.load.focal_length.value);
    notes.working(
        Working::new(
            "motion.pixel",
            "Sky on one pixel",
            "s = 206 265 p/f",
            scale::SOURCE,
        )
        .with(
            "p",
            crate::units::micrometre::get(brief.load.pixel.value),
            Unit::Micrometre,
        )
        .with(
            "f",
            crate::units::millimetre::get(brief.load.focal_length.value),
            Unit::Millimetre,
        )
        .gives("s", scale, Unit::ArcsecondPerPixel),
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn feet_fall_a_stride_apart_round_corners() {
        let feet = feet(&[[0.0, 0.0], [1.0, 0.0], [1.0, 1.0]], 1.0, 2.0);
        let times: Vec<f64> = feet.iter().map(|f| f.starts_s).collect();
        assert_eq!(times, [0.0, 0.5, 1.0, 1.5, 2.0]);
        assert!((feet[3].place[1] - 0.5).abs() < 1e-9 && (feet[3].place[0] - 1.0).abs() < 0.051);
    }

    #[test]
    fn of_a_very_long_walk_the_nearest_part_is_followed() {
        let feet = feet(&[[-50.0, 1.0], [50.0, 1.0]], 0.5, 2.0);
        assert_eq!(feet.len(), 80);
        assert!(
            feet.first().unwrap().starts_s == 0.0 && feet.iter().any(|f| f.place[0].abs() < 0.2)
        );
        assert!(
            super::feet(&[[1.0, 1.0]], 1.0, 2.0).is_empty()
                && super::feet(&[[1.0, 1.0], [1.0, 1.0]], 1.0, 2.0).is_empty()
        );
    }
}
