//! Wind on telescope, mount and column while one observes: its mean, and what flutters about it.

use std::f64::consts::PI;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::en_1991_1_4_2005::{cylinder, gust, turbulence};
use crate::site_plan::load::Enclosure;
use crate::site_plan::site::Exposure;
use crate::source::Source;
use crate::stages::motion::modes::Mode;
use crate::stages::motion::system::{Planes, System, steady_turn_arcsec};
use crate::stages::pier::Pier;
use crate::units::{Length, Spread, Velocity, hertz, metre, metre_per_second, newton, second};

/// Share of the wind's speed that reaches the telescope.
#[must_use]
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

/// Roughness length and least height of the ground about.
fn terrain(exposure: Exposure) -> (Length, Length) {
    let (roughness, least) = match exposure {
        Exposure::Open => (0.01, 1.0),
        Exposure::Country => (0.05, 2.0),
        Exposure::Sheltered => (0.3, 5.0),
    };
    (metre::new(roughness), metre::new(least))
}

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
    exposure_s: f64,
    window_s: f64,
}

/// Finds what the wind does.
#[must_use]
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
    let drag = cylinder::cylinder_factor(speed, pier.outside_diameter);
    let telescope_n = newton::get(gust::force(
        speed,
        load.wind_area.value,
        cylinder::TELESCOPE_FORCE_FACTOR,
    ));
    Air {
        speed,
        eddies: turbulence::length_scale(height, roughness),
        intensity: turbulence::intensity_ratio(height, roughness),
        telescope_n,
        column_n: newton::get(gust::force(
            speed,
            pier.outside_diameter * pier.height,
            drag,
        )),
        exposure_s,
        window_s: exposure_s.min(second::get(load.guiding_interval.value)),
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
        .with("s", shelter_ratio(load.enclosure.value), Unit::One)
        .with(
            "v_site",
            metre_per_second::get(load.observing_wind.value),
            Unit::MetrePerSecond,
        )
        .gives("v", metre_per_second::get(air.speed), Unit::MetrePerSecond),
    );
    notes.working(
        Working::new(
            "motion.wind_force",
            "Mean force on telescope and mount",
            "F = c_f ½ ρ v² A",
            gust::SOURCE,
        )
        .with("c_f", cylinder::TELESCOPE_FORCE_FACTOR, Unit::One)
        .with("v", metre_per_second::get(air.speed), Unit::MetrePerSecond)
        .with("A", load.wind_area.value.value, Unit::SquareMetre)
        .gives("F", air.telescope_n, Unit::Newton),
    );
}

/// All of the worse plane.
fn turn(planes: &Planes, air: &Air) -> Turned {
    let work = |mode: &Mode| air.telescope_n * mode.load_move + air.column_n * mode.middle_move;
    let mean = planes.worst(|modes| steady_turn_arcsec(modes, work).abs());
    let flutter = |above_hz: f64| planes.worst(|modes| flutter(modes, air, work, above_hz).0);
    let gust = planes.worst(|modes| {
        let (rms, resonance_ratio) = self::flutter(modes, air, work, 0.0);
        let first = modes.first().map_or(1.0, |mode| mode.omega / (2.0 * PI));
        rms * turbulence::peak_factor(hertz::new(first * resonance_ratio.sqrt()))
    });
    (
        mean,
        flutter(slow(air.exposure_s)),
        flutter(slow(air.window_s)),
        gust,
    )
}

/// Frequency below which a movement is not seen within a window: a quarter of its rate.
fn slow(window_s: f64) -> f64 {
    0.25 / window_s
}

/// Root mean square of the turn above a frequency, and the resonant share of its variance: the steady part follows,
/// each mode resonates.
fn flutter(
    modes: &[Mode],
    air: &Air,
    work: impl Fn(&Mode) -> f64 + Copy,
    above_hz: f64,
) -> (f64, f64) {
    if metre_per_second::get(air.speed) <= 0.0 {
        return (0.0, 0.0);
    }
    let eddies = |f: f64| turbulence::eddies_ratio(hertz::new(f), air.eddies, air.speed);
    let steady = steady_turn_arcsec(modes, work);
    let background = steady * steady * turbulence::share_above_ratio(eddies(above_hz));
    let mut resonance = 0.0;
    for mode in modes {
        let frequency = mode.omega / (2.0 * PI);
        if frequency > above_hz {
            let own = steady_turn_arcsec(std::slice::from_ref(mode), work);
            let spectrum = turbulence::spectrum_ratio(eddies(frequency));
            resonance +=
                own * own * turbulence::resonance_ratio(2.0 * PI * mode.damping_ratio, spectrum);
        }
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
            "σ = 2 I_v √(θ² (1 + 10.2 f_L)^(−2/3) + Σ θ_i² π²/(2δ_i) S_L(f_i))",
            turbulence::SOURCE,
        )
        .with("I_v", air.intensity, Unit::One)
        .with("θ", mean, Unit::Arcsecond)
        .with("L", metre::get(air.eddies), Unit::Metre)
        .gives("σ", rms, Unit::Arcsecond),
    );
}
