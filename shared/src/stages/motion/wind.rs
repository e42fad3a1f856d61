//! Wind on telescope, mount and column while one observes: its mean, and what flutters about it.

mod slow;

use std::f64::consts::PI;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Arcsecond, Metre, One, Unit, WindMetrePerSecond};
use crate::notes::{Notes, Working};
use crate::rules::en_1991_1_4_2005::{cylinder, gust, turbulence};
use crate::rules::mechanics::guider;
use crate::site_plan::load::Enclosure;
use crate::site_plan::site::Exposure;
use crate::source::Source;
use crate::stages::motion::modes::Mode;
use crate::stages::motion::system::{Planes, System, steady_turn_arcsec};
use crate::stages::pier::Pier;
use crate::units::{Length, Spread, Velocity, hertz, metre, metre_per_second, newton, second};

pub use slow::{SlowPart, slow_part};

/// Share of the wind's speed that reaches the telescope.
pub const fn shelter_ratio(enclosure: Enclosure) -> f64 {
    match enclosure {
        Enclosure::Open => 1.0,
        Enclosure::RollOff => 0.4,
        Enclosure::Dome => 0.2,
    }
}

/// Where the shelter comes from.
pub const SHELTER_SOURCE: Source = Source::judgement(
    "lee of walls and of a slit, 0.2 to 0.4 of the speed; no measurement at this site",
);

/// Strength of the fluctuations against the mean, over what it is in the open: walls slow the mean more than the
/// fluctuations.
pub const fn turbulence_ratio(enclosure: Enclosure) -> f64 {
    match enclosure {
        Enclosure::Open => 1.0,
        Enclosure::RollOff => 1.5,
        Enclosure::Dome => 2.0,
    }
}

/// Where the fluctuations come from.
pub const TURBULENCE_SOURCE: Source = Source::judgement(
    "behind walls 0.4 of the mean and 0.6 of the fluctuations are left, in a dome 0.2 and 0.4",
);

/// Roughness length and least height of the ground about.
fn terrain(exposure: Exposure) -> (Length, Length) {
    let (roughness, least) = match exposure {
        Exposure::Open => (0.01, 1.0),
        Exposure::Country => (0.05, 2.0),
        Exposure::Sheltered => (0.3, 5.0),
    };
    (metre::new(roughness), metre::new(least))
}

/// Below this speed eddies pass so slowly that none is seen, m/s; keeps their rate finite.
const STILL_AIR_M_S: f64 = 1e-6;

/// What the wind does to the star.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Wind {
    /// Mean speed at the telescope.
    pub speed_m_s: f64,
    /// Steady turn by the mean.
    pub mean_arcsec: f64,
    /// Root mean square of what flutters within one exposure, not guided.
    pub rms_arcsec: f64,
    /// The same with a guider.
    pub guided_rms_arcsec: f64,
    /// Peak above the mean in ten minutes.
    pub gust_arcsec: f64,
    /// The flutter that the verdict uses: guided, in the worst ground, as the amplitude of a swing of the same rms.
    pub worst_arcsec: f64,
    /// The same wind on the site in the open, behind walls, and in a dome.
    pub housings: Vec<Housing>,
}

/// What the wind does to the star in one housing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Housing {
    /// What stands round the telescope.
    pub enclosure: Enclosure,
    /// Mean speed at the telescope.
    pub speed_m_s: f64,
    /// Peak above the mean in ten minutes.
    pub gust_arcsec: f64,
    /// The flutter as the verdict uses it.
    pub worst_arcsec: f64,
}

/// The wind's own figures.
#[derive(Debug, Clone, Copy)]
struct Air {
    speed: Velocity,
    eddies: Length,
    intensity: f64,
    telescope_n: f64,
    column_n: f64,
    /// What one exposure sees.
    within: Seen,
    /// What is left of it with a guider.
    guided: Seen,
}

/// What is seen of a movement: in whole, within an exposure, or with a guider.
#[derive(Debug, Clone, Copy)]
struct Seen {
    window_s: f64,
    weight: fn(f64) -> f64,
    /// Share of the steady part's variance.
    background_ratio: f64,
}

impl Seen {
    fn new(window_s: f64, weight: fn(f64) -> f64, eddies_per_hertz: f64) -> Self {
        Self {
            window_s,
            weight,
            background_ratio: turbulence::share_weighed_ratio(eddies_per_hertz, window_s, weight),
        }
    }

    /// Everything.
    const ALL: Self = Self {
        window_s: 1.0,
        weight: |_| 1.0,
        background_ratio: 1.0,
    };

    fn ratio(&self, hertz: f64) -> f64 {
        (self.weight)(hertz * self.window_s)
    }
}

/// Finds what the wind does.
pub fn find(
    brief: &Brief,
    pier: &Pier,
    foot_above_ground: Length,
    system: &System,
    notes: &mut Notes,
) -> Wind {
    let air = air(brief, pier, foot_above_ground, brief.load.enclosure.value);
    let turned = turned(system, &air);
    let (mean, rms, guided, gust) = turned.typical;
    note_air(brief, &air, notes);
    note(&air, mean, rms, notes);
    let housing = |enclosure| {
        let air = self::air(brief, pier, foot_above_ground, enclosure);
        let turned = self::turned(system, &air);
        Housing {
            enclosure,
            speed_m_s: metre_per_second::get(air.speed),
            gust_arcsec: turned.typical.3,
            worst_arcsec: worst(&turned),
        }
    };
    Wind {
        speed_m_s: metre_per_second::get(air.speed),
        mean_arcsec: mean,
        rms_arcsec: rms,
        guided_rms_arcsec: guided,
        gust_arcsec: gust,
        worst_arcsec: worst(&turned),
        housings: [Enclosure::Open, Enclosure::RollOff, Enclosure::Dome]
            .map(housing)
            .to_vec(),
    }
}

/// The two figures by which the star's width is judged, in this wind on these modes: the flutter that is left, root mean
/// square, in typical ground, and in the worst ground as the amplitude of a swing.
pub fn left(brief: &Brief, pier: &Pier, foot_above_ground: Length, system: &System) -> (f64, f64) {
    let air = air(brief, pier, foot_above_ground, brief.load.enclosure.value);
    let turned = turned(system, &air);
    (turned.typical.2, worst(&turned))
}

/// Mean, rms within the exposure, rms between two corrections, gust.
type Turned = (f64, f64, f64, f64);

fn turned(system: &System, air: &Air) -> Spread<Turned> {
    Spread {
        low: turn(&system.low, air),
        typical: turn(&system.typical, air),
        high: turn(&system.high, air),
    }
}

fn worst(turned: &Spread<Turned>) -> f64 {
    2f64.sqrt() * turned.low.2.max(turned.typical.2).max(turned.high.2)
}

fn air(brief: &Brief, pier: &Pier, foot_above_ground: Length, enclosure: Enclosure) -> Air {
    let load = &brief.load;
    let share = shelter_ratio(enclosure);
    let speed = load.observing_wind.value * share;
    let (roughness, least) = terrain(brief.site.exposure.value);
    let height = (foot_above_ground + pier.height + load.centre_above_pier.value).max(least);
    let exposure_s = second::get(load.exposure.value);
    // A wind of this mean passes through every slower speed too, so that a faster one never moves the star less.
    let drag = cylinder::enveloped_factor(speed, pier.outside_diameter);
    let telescope_n = newton::get(gust::force(
        speed,
        load.wind_area.value,
        cylinder::TELESCOPE_FORCE_FACTOR,
    ));
    let eddies = turbulence::length_scale(height, roughness);
    let per_hertz = metre::get(eddies) / metre_per_second::get(speed).max(STILL_AIR_M_S);
    let guiding_s = second::get(load.guiding_interval.value);
    let within = Seen::new(exposure_s, guider::seen_ratio, per_hertz);
    Air {
        speed,
        eddies,
        intensity: turbulence::intensity_ratio(height, roughness) * turbulence_ratio(enclosure),
        telescope_n,
        column_n: newton::get(gust::force(
            speed,
            pier.outside_diameter * pier.height,
            drag,
        )),
        within,
        guided: if guiding_s < exposure_s {
            Seen::new(guiding_s, guider::left_ratio, per_hertz)
        } else {
            within
        },
    }
}

fn note_air(brief: &Brief, air: &Air, notes: &mut Notes) {
    let load = &brief.load;
    notes.working(
        Working::new(
            "motion.wind_speed",
            "Wind that reaches the telescope",
            "v = s v_site",
            SHELTER_SOURCE,
        )
        .with("s", shelter_ratio(load.enclosure.value), One)
        .with("v_site", load.observing_wind.value, WindMetrePerSecond)
        .gives("v", air.speed, WindMetrePerSecond),
    );
    notes.working(
        Working::new(
            "motion.turbulence",
            "Strength of the fluctuations at the telescope",
            "I_v = t/ln(z/z₀)",
            TURBULENCE_SOURCE,
        )
        .with("t", turbulence_ratio(load.enclosure.value), One)
        .gives("I_v", air.intensity, One),
    );
    notes.working(
        Working::new(
            "motion.guider",
            "Share of the flutter's slow part that is left with a guider",
            "∫ (1 + s² − 2 s² cos 2πfT) S_L d ln f, s = sinc fT",
            guider::SOURCE,
        )
        .with("T", air.guided.window_s, Unit::Second)
        .gives("share", air.guided.background_ratio, One),
    );
    notes.working(
        Working::new(
            "motion.wind_force",
            "Mean force on telescope and mount",
            "F = c_f ½ ρ v² A",
            gust::SOURCE,
        )
        .with("c_f", cylinder::TELESCOPE_FORCE_FACTOR, One)
        .with("v", air.speed, WindMetrePerSecond)
        .with("A", load.wind_area.value.value, Unit::SquareMetre)
        .gives("F", air.telescope_n, Unit::Newton),
    );
}

/// All of the worse plane.
fn turn(planes: &Planes, air: &Air) -> Turned {
    let work = |mode: &Mode| air.telescope_n * mode.load_move + air.column_n * mode.middle_move;
    let mean = planes.worst(|modes| steady_turn_arcsec(modes, work).abs());
    let flutter = |seen: &Seen| planes.worst(|modes| flutter(modes, air, work, seen).0);
    let gust = planes.worst(|modes| {
        let (rms, resonance_ratio) = self::flutter(modes, air, work, &Seen::ALL);
        let first = modes.first().map_or(1.0, |mode| mode.omega / (2.0 * PI));
        let linear = rms * turbulence::peak_factor(hertz::new(first * resonance_ratio.sqrt()));
        let steady = steady_turn_arcsec(modes, work).abs();
        if steady > 0.0 {
            steady * turbulence::gust_ratio(linear / steady)
        } else {
            linear
        }
    });
    (mean, flutter(&air.within), flutter(&air.guided), gust)
}

/// What is left of the flutter with a guider, or within one exposure where none corrects, root mean square of the worse
/// plane.
pub fn guided_rms_arcsec(
    brief: &Brief,
    pier: &Pier,
    foot_above_ground: Length,
    planes: &Planes,
) -> f64 {
    let air = air(brief, pier, foot_above_ground, brief.load.enclosure.value);
    turn(planes, &air).2
}

/// Root mean square of what is seen of the turn, and the resonant share of its variance: the steady part follows, each
/// mode resonates.
fn flutter(
    modes: &[Mode],
    air: &Air,
    work: impl Fn(&Mode) -> f64 + Copy,
    seen: &Seen,
) -> (f64, f64) {
    if metre_per_second::get(air.speed) <= 0.0 {
        return (0.0, 0.0);
    }
    let eddies = |f: f64| turbulence::eddies_ratio(hertz::new(f), air.eddies, air.speed);
    let steady = steady_turn_arcsec(modes, work);
    let background = steady * steady * seen.background_ratio;
    let mut resonance = 0.0;
    for mode in modes {
        let frequency = mode.omega / (2.0 * PI);
        let own = steady_turn_arcsec(std::slice::from_ref(mode), work);
        let spectrum = turbulence::spectrum_ratio(eddies(frequency));
        resonance += own
            * own
            * turbulence::resonance_ratio(2.0 * PI * mode.damping_ratio, spectrum)
            * seen.ratio(frequency);
    }
    let variance = background + resonance;
    (
        2.0 * air.intensity * variance.sqrt(),
        if variance > 0.0 {
            resonance / variance
        } else {
            0.0
        },
    )
}

fn note(air: &Air, mean: f64, rms: f64, notes: &mut Notes) {
    notes.working(
        Working::new(
            "motion.wind",
            "Flutter of the star in the wind",
            "σ = 2 I_v √(θ² ∫ w S_L d ln f + Σ θ_i² w(f_i) π²/(2δ_i) S_L(f_i)), w = 1 − sinc² fT within an exposure",
            turbulence::SOURCE,
        )
        .with("I_v", air.intensity, One)
        .with("θ", mean, Arcsecond)
        .with("L", air.eddies, Metre)
        .gives("σ", rms, Arcsecond),
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Judgement: behind walls 0.6 of the fluctuations are left where 0.4 of the mean is, in a dome 0.4 and 0.2.
    #[test]
    fn walls_slow_the_mean_more_than_the_fluctuations() {
        let left = |enclosure| shelter_ratio(enclosure) * turbulence_ratio(enclosure);
        assert!((left(Enclosure::RollOff) - 0.6).abs() < 1e-12);
        assert!((left(Enclosure::Dome) - 0.4).abs() < 1e-12);
        for enclosure in [Enclosure::RollOff, Enclosure::Dome] {
            assert!(left(enclosure) > shelter_ratio(enclosure));
        }
    }
}
