//! Records that are hurt: never a confident wrong answer. A refusal is none.

use std::f64::consts::TAU;

use stillground::trace::{Asked, FoundMode, Kind, read};

use crate::proof_chance::{Chance, below};
use crate::proof_page::keeps;

/// How a made-up record is hurt.
const HURTS: [&str; 13] = [
    "clean",
    "jitter",
    "two",
    "close",
    "hum",
    "drift",
    "lorry and knock",
    "lorry",
    "clipped",
    "gaps",
    "coarse",
    "noisy",
    "short",
];

/// A swing: frequency and damping.
type True = (f64, f64);

struct Made {
    text: String,
    /// What is there, the louder first.
    swings: Vec<True>,
    rate: f64,
}

/// Noise of a telephone's sensor, m/s².
const NOISE: f64 = 0.012;

/// A telephone's record of one to three knocks: the mode, a dead one of the blow, noise, and what hurts it.
fn made(hurt: &str, chance: &mut Chance) -> Made {
    let is = |name: &str| hurt == name;
    let rate: f64 = [100.0, 200.0, 400.0][below(chance, 3)];
    let most = (0.36 * rate).min(40.0);
    let hz = 6.0 * f64::powf(most / 6.0, chance.even());
    let ratio = 0.004 * f64::powf(12.5, chance.even());
    let size = 0.15 + 1.2 * chance.even();
    let noise = if is("noisy") {
        size * (0.1 + 0.5 * chance.even())
    } else {
        NOISE
    };
    let lasts = if is("short") {
        1.7 + 0.4 + 2.0 * chance.even()
    } else {
        16.0
    };
    let knocks = match hurt {
        "lorry" => 0,
        "short" => 1,
        _ => 1 + below(chance, 3),
    };
    let away = match hurt {
        "two" => Some(1.03 + 0.12 * chance.even()),
        // A pier that is nearly the same both ways, knocked between them.
        "close" => Some(1.003 + 0.03 * chance.even()),
        _ => None,
    };
    let second_hz = away.map(|away| hz * away);
    let [share, second_ratio] = [
        0.4 + 0.6 * chance.even(),
        ratio * (0.7 + 0.6 * chance.even()),
    ];
    let blows: Vec<[f64; 3]> = (0..knocks)
        .map(|k| {
            [
                1.7 + 4.7 * k as f64 + 0.3 * chance.even(),
                size * (0.7 + 0.6 * chance.even()),
                TAU * chance.even(),
            ]
        })
        .collect();
    let hum = if is("hum") {
        size * (0.02 + 0.48 * chance.even())
    } else {
        0.0
    };
    let hum_hz = 50.0 + 0.02 * chance.normal();
    let cut = if is("clipped") {
        size * (0.3 + 0.5 * chance.even())
    } else {
        f64::INFINITY
    };
    let step = if is("coarse") {
        size / (6.0 + 20.0 * chance.even())
    } else {
        1e-5
    };
    let lorry = if hurt.starts_with("lorry") {
        size * (0.1 + 0.5 * chance.even())
    } else {
        0.0
    };
    let lorry_hz = 7.0 + 9.0 * chance.even();
    let (mut low, mut high) = (0.0, 0.0);
    let mut text = String::from("t_s,a\n");
    let mut walked = 0.0;
    for i in 0..(lasts * rate) as usize {
        let even = i as f64 / rate;
        let t = if is("jitter") {
            even + 0.3 * (2.0 * chance.even() - 1.0) / rate
        } else {
            even
        };
        if is("gaps") && (chance.even() < 0.004 || (i / 37) % 23 == 11) {
            continue;
        }
        let mut y = noise * chance.normal();
        for [at, size, phase] in &blows {
            if t >= *at {
                let s = t - at;
                let swing = |hz: f64, ratio: f64, phase: f64| {
                    (-TAU * hz * ratio * s).exp() * (TAU * hz * s + phase).cos()
                };
                y += size * swing(hz, ratio, *phase);
                y += size * 1.5 * swing(2.7 * hz.min(rate / 8.0), 0.25, 0.4);
                if let Some(second) = second_hz {
                    y += size * share * swing(second, second_ratio, phase + 1.0);
                }
            }
        }
        y += hum * (TAU * hum_hz * t).sin();
        if is("drift") {
            walked += 0.02 * chance.normal() / rate.sqrt();
            y += 0.2 * (0.2 * t).sin() + 0.03 * t + walked;
        }
        // Coloured noise about a line, that swells and goes.
        let swells = (-((t - 9.0) / 2.5).powi(2)).exp();
        let turn = TAU * lorry_hz / rate;
        low += turn * high;
        high += -turn * low - 0.12 * turn * high + chance.normal() * (0.24 * turn).sqrt();
        y += lorry * swells * high;
        let y = (y.clamp(-cut, cut) / step).round() * step;
        text.push_str(&format!("{t:.5},{y:.6}\n"));
    }
    let mut swings = vec![(hz, ratio)];
    swings.extend(second_hz.map(|hz| (hz, second_ratio)));
    Made { text, swings, rate }
}

/// A figure that lies so many of its standard deviations away is a confident wrong answer.
const WRONG: f64 = 3.0;

/// What came of records that were hurt.
#[derive(Default, Debug, Clone)]
struct Tally {
    records: usize,
    answered: usize,
    modes: usize,
    held_hz: usize,
    held_ratio: usize,
    wrong: usize,
    farthest: f64,
    both: usize,
}

impl Tally {
    /// Every swing that is told lies where one is; how far, in its own standard deviations, in frequency and in damping.
    fn judge(&mut self, mode: &FoundMode, made: &Made) -> [f64; 2] {
        let off = |truth: &True| {
            [
                (mode.frequency_hz - truth.0).abs() / mode.frequency_sd_hz,
                (mode.damping_ratio / truth.1).ln().abs() / (mode.damping_sd / mode.damping_ratio),
            ]
        };
        let off = made
            .swings
            .iter()
            .map(off)
            .min_by(|a, b| a[0].max(a[1]).total_cmp(&b[0].max(b[1])))
            .unwrap_or([f64::INFINITY; 2]);
        self.modes += 1;
        self.held_hz += usize::from(off[0] < 1.645);
        self.held_ratio += usize::from(off[1] < 1.645);
        self.wrong += off.iter().filter(|off| **off > WRONG).count();
        self.farthest = self.farthest.max(off[0]).max(off[1]);
        off
    }
}

fn tally(hurt: &str, seed: u64, records: usize) -> Tally {
    let mut chance = Chance::new(seed);
    let mut tally = Tally {
        records,
        ..Tally::default()
    };
    for n in 0..records {
        let made = made(hurt, &mut chance);
        let asked = Asked {
            kind: Some(Kind::Knock),
            ..Asked::default()
        };
        let found = read(made.text.as_bytes(), &asked).unwrap();
        if found.modes.is_empty() {
            assert!(
                found.remarks[0].starts_with("No answer: "),
                "{:?}",
                found.remarks
            );
            println!(
                "{hurt} {seed}/{n}: {}, truly {:?}",
                found.remarks[0], made.swings
            );
            continue;
        }
        tally.answered += 1;
        tally.both += usize::from(found.modes.len() > 1);
        for mode in &found.modes {
            let off = tally.judge(mode, &made);
            if off[0].max(off[1]) > WRONG {
                println!(
                    "{hurt} {seed}/{n}: off by {off:.1?}: {mode:?}, truly {:?} at {} Hz: {:?}",
                    made.swings, made.rate, found.remarks
                );
            }
        }
    }
    println!("{hurt}: {tally:?}");
    tally
}

fn hurt_records(seed: u64, each: usize) -> Vec<(&'static str, Tally)> {
    HURTS
        .into_iter()
        .map(|hurt| (hurt, tally(hurt, seed, each)))
        .collect()
}

fn holds(tallies: &[(&str, Tally)]) {
    let sum = |of: fn(&Tally) -> usize| tallies.iter().map(|(_, tally)| of(tally)).sum::<usize>();
    let (records, answered, modes) = (sum(|t| t.records), sum(|t| t.answered), sum(|t| t.modes));
    let (held_hz, held_ratio, wrong) =
        (sum(|t| t.held_hz), sum(|t| t.held_ratio), sum(|t| t.wrong));
    println!(
        "answered {answered} of {records}; of {modes} swings f held {held_hz}, ζ held {held_ratio}, wrong {wrong}"
    );
    for (hurt, tally) in tallies {
        match *hurt {
            "lorry" => assert_eq!(tally.answered, 0, "a lorry is no knock"),
            "clean" => assert!(tally.answered * 10 >= tally.records * 8, "{tally:?}"),
            _ => {}
        }
    }
    assert!(answered * 10 >= records * 6, "{answered} of {records}");
    assert_eq!(
        wrong, 0,
        "a figure further off than three of its standard deviations is a confident wrong answer"
    );
    assert!(held_hz * 100 >= modes * 88, "{held_hz} of {modes}");
    assert!(held_ratio * 100 >= modes * 88, "{held_ratio} of {modes}");
}

#[test]
fn ninety_hurt_records_have_no_confident_wrong_answer() {
    holds(&hurt_records(41, 7));
}

/// Two hundred that are hurt, and seventeen that are not: `tests/run slow`.
#[test]
#[ignore = "slow"]
fn two_hundred_hurt_records_have_no_confident_wrong_answer() {
    let tallies = hurt_records(314, 17);
    holds(&tallies);
    let mut table = String::from(
        "| hurt | answered | swings told | frequency in 90 % | damping in 90 % | farthest, standard deviations |\n|---|---|---|---|---|---|\n",
    );
    for (hurt, tally) in &tallies {
        table.push_str(&format!(
            "| {hurt} | {} of {} | {} | {} | {} | {:.1} |\n",
            tally.answered,
            tally.records,
            tally.modes,
            tally.held_hz,
            tally.held_ratio,
            tally.farthest
        ));
    }
    keeps("hurt", &table);
}
