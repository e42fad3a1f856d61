//! A walking load against the tables of SCI P354 (Table 3.1, read in public code that cites it) and CCIP-016 (Table 4.3,
//! from memory), and its Fourier content against them. The examples inside SCI P354 and CCIP-016 were looked for and not found
//! in a text that could be read; an office bay by AISC Design Guide 11 and a footbridge were, second-hand.

use std::f64::consts::PI;

use serde_json::Value;
use stillground::rules::li_2010::step;
use stillground::rules::mechanics::oscillator::Oscillator;
use stillground::rules::{ccip_016_2006, lamb_1904};
use stillground::site_plan::floor::Soles;
use stillground::stages::motion::footfall::{Strength, footfall};
use stillground::stages::motion::history::STEP_S;
use stillground::units::{Frequency, hertz, second};
use stillground_tests::close;

/// Design value of the Fourier coefficient of a harmonic, force over weight.
///
/// # Source
/// CCIP-016, Table 4.3: 0.41(f − 0.95) up to 0.56, 0.069 + 0.0056·2f, 0.033 + 0.0064·3f, 0.013 + 0.0065·4f.
/// # Valid for
/// Paces of 1 to 2.8 Hz, harmonics 1 to 4; nought for others.
fn harmonic_ratio(harmonic: u8, pace: Frequency) -> f64 {
    let f = hertz::get(pace);
    match harmonic {
        1 => (0.41 * (f - 0.95)).clamp(0.0, 0.56),
        2 => 0.069 + 0.0056 * 2.0 * f,
        3 => 0.033 + 0.0064 * 3.0 * f,
        4 => 0.013 + 0.0065 * 4.0 * f,
        _ => 0.0,
    }
}

/// Mean of the people measured of the Fourier coefficient of a harmonic, force over weight.
///
/// # Source
/// CCIP-016, Table 4.3: 0.37(f − 0.95) up to 0.50, 0.054 + 0.0044·2f, 0.026 + 0.0050·3f, 0.010 + 0.0051·4f.
/// # Valid for
/// Paces of 1 to 2.8 Hz, harmonics 1 to 4; nought for others.
fn mean_harmonic_ratio(harmonic: u8, pace: Frequency) -> f64 {
    let f = hertz::get(pace);
    match harmonic {
        1 => (0.37 * (f - 0.95)).clamp(0.0, 0.50),
        2 => 0.054 + 0.0044 * 2.0 * f,
        3 => 0.026 + 0.0050 * 3.0 * f,
        4 => 0.010 + 0.0051 * 4.0 * f,
        _ => 0.0,
    }
}

/// Amplitude of a harmonic of a walk over weight: one foot after the other, the feet overlapping.
fn harmonic(pace: f64, n: u8) -> f64 {
    let period = 1.0 / pace;
    let samples = 4000;
    let (mut c, mut s) = (0.0, 0.0);
    for i in 0..samples {
        let t = period * f64::from(i) / f64::from(samples);
        let force = step::force_ratio(hertz::new(pace), second::new(t))
            + step::force_ratio(hertz::new(pace), second::new(t + period));
        let phase = 2.0 * PI * f64::from(n) * t / period;
        c += force * phase.cos();
        s += force * phase.sin();
    }
    2.0 / f64::from(samples) * c.hypot(s)
}

/// The basis' figures for 2.0 Hz: 0.430, 0.091, 0.072, 0.027; CCIP-016's table has 0.430, 0.091, 0.071 for the first three.
#[test]
fn the_steps_add_up_to_the_harmonics_of_the_table() {
    let pace = hertz::new(2.0);
    for n in 1..=3 {
        close(
            &format!("harmonic {n}"),
            harmonic(2.0, n),
            harmonic_ratio(n, pace),
            0.03,
        );
    }
    close("harmonic 4", harmonic(2.0, 4), 0.027, 0.05);
}

/// Through the paces of SCI P354's table the first harmonic of the steps stays within a tenth of it.
#[test]
fn the_first_harmonic_follows_the_pace_as_sci_p354_has_it() {
    for pace in [1.8, 2.0, 2.2] {
        close(
            &format!("{pace} Hz"),
            harmonic(pace, 1),
            0.436 * (pace - 0.95),
            0.10,
        );
    }
}

/// Every step that the engine follows, as `reference/footfall.py` finds it by a convolution at a twentieth of the step.
#[test]
fn the_step_gives_an_oscillator_what_a_convolution_says() {
    let reference: Value = serde_json::from_str(include_str!("reference/footfall.json")).unwrap();
    let kinds = [
        ("soft", Soles::Soft, Strength::Mean),
        ("soft_design", Soles::Soft, Strength::Design),
        ("hard", Soles::Hard, Strength::Mean),
    ];
    for (name, soles, strength) in kinds {
        let foot = footfall(hertz::new(1.8), soles, strength);
        let rows = reference[name]["impulses_n_s"].as_array().unwrap();
        assert_eq!(rows.len(), 8);
        for row in rows {
            let [mode, expected] = [0, 1].map(|i| row[i].as_f64().unwrap());
            let found = foot.impulse_n_s(hertz::new(mode), 746.0);
            // At 40 Hz the engine's step of time is a twelfth of a swing, which tells in a heel of 20 ms.
            let within = if mode < 40.0 { 0.03 } else { 0.06 };
            close(&format!("{name} {mode} Hz"), found, expected, within);
        }
    }
}

/// The step against the mean effective impulse of CCIP-016 (second-hand), 1.8 Hz and 746 N: within 6 % from 8 to 30 Hz and 7 % at 40. The basis
/// had 12 % to 25 Hz and 22 % at 30 with a heel of a single half sine. The five terms alone are a fifth to two thirds short of
/// it. With the heel of a design value the step stays within 12 % of the guide's design value.
#[test]
fn the_step_agrees_with_the_guides_impulse() {
    let pace = hertz::new(1.8);
    let [mean, design] =
        [Strength::Mean, Strength::Design].map(|strength| footfall(pace, Soles::Soft, strength));
    for mode in [8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0] {
        let mode_hz = hertz::new(mode);
        let guide = ccip_016_2006::walking::mean_impulse_n_s(pace, mode_hz);
        let ratio = mean.impulse_n_s(mode_hz, 746.0) / guide;
        assert!((ratio - 1.0).abs() <= 0.07, "{mode} Hz: {ratio}");
        let guide = ccip_016_2006::walking::impulse_n_s(pace, mode_hz);
        let ratio = design.impulse_n_s(mode_hz, 746.0) / guide;
        assert!((ratio - 1.0).abs() <= 0.12, "design, {mode} Hz: {ratio}");
    }
}

/// The fourth harmonic of a walk in soft soles lies between the mean and the design value of CCIP-016 (from memory) at every
/// usual pace; the five terms alone have half of the mean.
#[test]
fn a_walk_has_its_fourth_harmonic() {
    // From memory: 0.047 at 1.8 Hz.
    assert!((mean_harmonic_ratio(4, hertz::new(1.8)) - 0.047).abs() < 0.0005);
    for pace in [1.6, 1.7, 1.8, 1.9, 2.0, 2.1] {
        let force = footfall(hertz::new(pace), Soles::Soft, Strength::Mean).downward();
        let (mut c, mut s) = (0.0, 0.0);
        for (i, value) in force.iter().enumerate() {
            let phase = 8.0 * PI * pace * STEP_S * i as f64;
            (c, s) = (c + value * phase.cos(), s + value * phase.sin());
        }
        let found = 2.0 * pace * STEP_S * c.hypot(s);
        let mean = mean_harmonic_ratio(4, hertz::new(pace));
        let design = harmonic_ratio(4, hertz::new(pace));
        assert!(
            found > 0.88 * mean && found < design,
            "{pace} Hz: {found} against {mean} and {design}"
        );
    }
}

/// Slope of the ground beside a load that swings, Poisson's ratio 0.25 to 0.45, as `reference/waves.py` integrates it.
#[test]
fn a_heel_tilts_the_ground_as_lamb_s_integral_says() {
    let reference: Value = serde_json::from_str(include_str!("reference/waves.json")).unwrap();
    for (name, within) in [("nu_0.25", 0.055), ("nu_0.35", 1e-3), ("nu_0.45", 0.045)] {
        let rows = reference[name].as_array().unwrap();
        assert_eq!(rows.len(), 8);
        for row in rows {
            let [phase, expected] = [0, 1].map(|i| row[i].as_f64().unwrap());
            close(name, lamb_1904::slope::ratio(phase), expected, within);
        }
    }
}

/// Values of the basis for 1.8 Hz: 6.27, 3.70, 2.55 N s.
#[test]
fn the_guides_impulse_falls_with_the_modes_frequency() {
    let pace = hertz::new(1.8);
    for (mode, expected) in [(10.0, 6.27), (15.0, 3.70), (20.0, 2.55)] {
        close(
            "CCIP",
            ccip_016_2006::walking::impulse_n_s(pace, hertz::new(mode)),
            expected,
            2e-3,
        );
    }
}

/// The basis' table: a walk at 1.8 Hz, 2 per cent damping; from some 12 Hz on the mode follows the step.
#[test]
fn a_mode_above_twelve_hertz_follows_a_step_with_little_more() {
    let swing = |frequency: f64| {
        let dt = 0.001;
        let omega = 2.0 * PI * frequency;
        let mut one = Oscillator::at_rest(omega, 0.02, dt);
        let pace = hertz::new(1.8);
        let walk = |t: f64| {
            (0..40)
                .map(|k| step::force_ratio(pace, second::new(t - f64::from(k) / 1.8)))
                .sum::<f64>()
                * omega
                * omega
        };
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for i in 0..16_000 {
            let t = f64::from(i) * dt;
            one.advance(walk(t), walk(t + dt));
            if t > 10.0 {
                (low, high) = (low.min(one.q), high.max(one.q));
            }
        }
        high - low
    };
    let still = swing(200.0);
    close("static", still, 0.815, 0.02);
    assert!(swing(14.0) / still < 1.25, "{}", swing(14.0) / still);
    assert!(swing(39.0) / still < 1.2);
    // A mode on the third harmonic rings.
    assert!(swing(5.4) / still > 3.0);
}

/// A pulsating walker, 180 N at the first frequency, on a clamped bridge of 23 m: E 33.6 GPa, I 0.213 m⁴, 4160 kg/m, damping
/// 1.3 per cent. Printed: 0.17 m/s² (Štimac Grandić, Technical Gazette 22(2), 2015, read as a public finite-element
/// program's test reproduces it, with 25 steps of Newmark's method to a period).
///
/// The engine's step is exact and gives 0.182. Newmark's method at that step swings half a per cent slower than the force
/// drives it and gives the printed figure.
#[test]
fn a_worked_footbridge_has_its_printed_acceleration() {
    let (length, mass_per_m, damping) = (23.0_f64, 4160.0_f64, 0.013_f64);
    let omega = (4.730_04_f64 / length).powi(2) * (1.05 * 32e9 * 0.213 / mass_per_m).sqrt();
    // The clamped beam's first shape, one at mid-span, has 0.3965 of the beam's mass.
    let force = 180.0 / (0.3965 * mass_per_m * length);
    let lasts = 3.0 * length / (0.9 * omega / (2.0 * PI));
    let push = |t: f64| force * (omega * t).sin();
    let mut one = Oscillator::at_rest(omega, damping, 1e-4);
    let mut exact = 0.0_f64;
    for i in 0..(lasts / 1e-4) as i32 {
        let t = f64::from(i) * 1e-4;
        one.advance(push(t), push(t + 1e-4));
        exact = exact
            .max((push(t + 1e-4) - 2.0 * damping * omega * one.v - omega * omega * one.q).abs());
    }
    close(
        "exact",
        exact,
        180.0 / (2.0 * damping * 0.3965 * mass_per_m * length),
        5e-3,
    );
    let newmark = newmark(omega, damping, 2.0 * PI / (25.0 * omega), lasts, push);
    close("printed", newmark, 0.17, 5e-3);
    assert!(
        exact > newmark && exact < 1.08 * newmark,
        "{exact} {newmark}"
    );
}

/// An office bay under a walker by AISC Design Guide 11, worked in the institute's course of May 2016 (second session), read as
/// an open structural library's tests print it: beams sag 0.835 in, girders 0.366 in, effective weight 94.3 kip, damping 3 per
/// cent. Printed: 3.23 Hz and 0.0074 g. By the guide the bay is one mode of half that weight, driven at its own frequency by
/// half of 0.83 exp(−0.35 f) of a walker of 157 lbf, which is 65 exp(−0.35 f) lbf.
#[test]
fn a_worked_office_bay_has_its_printed_frequency_and_acceleration() {
    let (inch, gravity, damping) = (0.0254_f64, 9.80665_f64, 0.03_f64);
    // A uniform beam on two supports: Δ = 5 w L⁴/384 EI and f = π/2 √(EI g/w L⁴) = 0.1794 √(g/Δ); the guide rounds to 0.18.
    let frequency = 0.5 * PI * (5.0 * gravity / (384.0 * (0.835 + 0.366) * inch)).sqrt();
    close("frequency", frequency, 3.23, 6e-3);
    let (omega, dt) = (2.0 * PI * 3.23, STEP_S);
    // Forces and weights both in pounds-force: the acceleration comes out over g.
    let push = |t: f64| 65.0 * (-0.35_f64 * 3.23).exp() / (94_300.0 / 2.0) * (omega * t).sin();
    let mut bay = Oscillator::at_rest(omega, damping, dt);
    let mut largest = 0.0_f64;
    for i in 0..(20.0 / dt) as i32 {
        let t = f64::from(i) * dt;
        bay.advance(push(t), push(t + dt));
        largest = largest
            .max((push(t + dt) - 2.0 * damping * omega * bay.v - omega * omega * bay.q).abs());
    }
    close("acceleration over g", largest, 0.0074, 5e-3);
}

/// Largest acceleration by Newmark's method, average acceleration.
fn newmark(omega: f64, damping: f64, step: f64, lasts: f64, push: impl Fn(f64) -> f64) -> f64 {
    let (mut q, mut v, mut a, mut largest) = (0.0, 0.0, 0.0, 0.0_f64);
    for i in 1..=(lasts / step) as i32 {
        let (q0, v0) = (q + step * v + 0.25 * step * step * a, v + 0.5 * step * a);
        a = (push(f64::from(i) * step) - 2.0 * damping * omega * v0 - omega * omega * q0)
            / (1.0 + damping * omega * step + 0.25 * (omega * step).powi(2));
        (q, v) = (q0 + 0.25 * step * step * a, v0 + 0.5 * step * a);
        largest = largest.max(a.abs());
    }
    largest
}
