//! Knocks of the telescope's own doing: a bump by hand, and the stop of a slew or a flip.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Arcsecond, DegreePerSecondSquared, Unit};
use crate::notes::{Notes, Working};
use crate::source::Source;
use crate::stages::motion::history::{FASTEST, History, STEP_S};
use crate::stages::motion::modes::Mode;
use crate::stages::motion::system::{Planes, Swings, System};
use crate::units::kilogram_square_metre;

/// A bump by hand at the telescope, N.
pub const BUMP_N: f64 = 10.0;
/// Time that it lasts, s: longer than a pier's swing, so that it is a push and no blow.
pub const BUMP_S: f64 = 0.1;
/// Where the bump comes from.
pub const BUMP_SOURCE: Source = Source::judgement(
    "a bump by hand at the telescope, 10 N for 0.1 s; what is left after a square pulse is at most min(ωT, 2) of the steady turn",
);

/// What a knock does, at most: all modes are taken to swing together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Knock {
    /// First swing of the star, typical ground.
    pub arcsec: f64,
    /// Time until it is below the budget, typical ground; null when that takes more than ten minutes.
    pub settle_s: Option<f64>,
    /// The same in the worst ground: soft ground swings farther, firm ground damps less.
    pub worst_settle_s: Option<f64>,
}

/// A bump by hand.
pub fn bump(system: &System, budget_arcsec: f64, notes: &mut Notes) -> Knock {
    let knock = worst(system, budget_arcsec, |modes| {
        Swings::after_pulse(modes, BUMP_S, |mode| BUMP_N * mode.load_move)
    });
    notes.working(
        Working::new(
            "motion.bump",
            "Swing of the star after a bump by hand, at most",
            "A = Σ min(ω_i T, 2) F φ_i θ_i/ω_i²",
            BUMP_SOURCE,
        )
        .with("F", BUMP_N, Unit::Newton)
        .with("T", BUMP_S, Unit::Second)
        .gives("A", knock.arcsec, Arcsecond),
    );
    notes.working(
        Working::new(
            "motion.settle",
            "Time for a bump to die below the budget, at most",
            "Σ A_i exp(−ζ_i ω_i t) = budget",
            BUMP_SOURCE,
        )
        .with("A", knock.arcsec, Arcsecond)
        .with("budget", budget_arcsec, Arcsecond)
        .gives("t", knock.settle_s.unwrap_or(f64::NAN), Unit::Second),
    );
    knock
}

/// The star after a bump, at most: every mode of a plane begins with the whole of its swing, and dies away at its own rate until a
/// thousandth is left. Modes too quick to be told sample by sample go with the slowest.
pub fn after_bump(modes: &[Mode], longest_s: f64) -> History {
    let amplitudes = Swings::after_pulse(modes, BUMP_S, |mode| BUMP_N * mode.load_move);
    let quick = |(mode, _): &(&Mode, f64)| mode.omega > FASTEST;
    let all = || modes.iter().zip(amplitudes.arcsec());
    let mut more: f64 = all().filter(quick).map(|(_, arcsec)| arcsec).sum();
    let mut turns: Vec<[f64; 2]> = Vec::new();
    for (mode, arcsec) in all().filter(|one| !quick(one)) {
        let rate = mode.damping_ratio * mode.omega;
        let lasts_s = (1000f64.ln() / rate).min(longest_s);
        let count = (lasts_s / STEP_S) as usize + 1;
        turns.resize(turns.len().max(count), [0.0; 2]);
        let (sin, cos) = (mode.omega * STEP_S).sin_cos();
        let decay = (-rate * STEP_S).exp();
        let mut swing = [arcsec + more, 0.0];
        more = 0.0;
        for turn in &mut turns[..count] {
            turn[0] += swing[0];
            let [a, b] = swing;
            swing = [decay * (a * cos - b * sin), decay * (a * sin + b * cos)];
        }
    }
    History::of(turns)
}

/// The stop of a slew: the mount's torque goes at once.
pub fn slew(brief: &Brief, system: &System, budget_arcsec: f64, notes: &mut Notes) -> Knock {
    let inertia = kilogram_square_metre::get(brief.load.inertia.value);
    let torque = torque(brief);
    let knock = worst(system, budget_arcsec, |modes| {
        Swings::after_release(modes, |mode| torque * mode.load_turn)
    });
    notes.working(
        Working::new(
            "motion.slew",
            "Swing when a slew stops, at most",
            "A = α J/K",
            Source::derived("the drive's torque over the stiffness below it"),
        )
        .with(
            "α",
            brief.load.slew_acceleration_deg_s2.value,
            DegreePerSecondSquared,
        )
        .with("J", inertia, Unit::KilogramSquareMetre)
        .gives("A", knock.arcsec, Arcsecond),
    );
    knock
}

/// The end of a flip across the meridian: both axes stop together, at right angles to each other.
pub fn flip(brief: &Brief, system: &System, budget_arcsec: f64) -> Knock {
    let torque = 2f64.sqrt() * torque(brief);
    worst(system, budget_arcsec, |modes| {
        Swings::after_release(modes, |mode| torque * mode.load_turn)
    })
}

/// Torque of the drive while it speeds up or brakes, N m.
fn torque(brief: &Brief) -> f64 {
    brief.load.slew_acceleration_deg_s2.value.to_radians()
        * kilogram_square_metre::get(brief.load.inertia.value)
}

fn worst(system: &System, budget_arcsec: f64, swings: impl Fn(&[Mode]) -> Swings) -> Knock {
    let settle = |planes: &Planes| {
        planes
            .both()
            .into_iter()
            .map(|modes| swings(modes).settle_s(budget_arcsec))
            .try_fold(0.0_f64, |most, one| one.map(|s| most.max(s)))
    };
    Knock {
        arcsec: system
            .typical
            .worst(|modes| swings(modes).bound_arcsec(0.0)),
        settle_s: settle(&system.typical),
        worst_settle_s: [&system.low, &system.typical, &system.high]
            .into_iter()
            .map(settle)
            .try_fold(0.0_f64, |most, one| one.map(|s| most.max(s))),
    }
}
