//! Records of knocks and of steps with known truth: five made by another hand, with `reference/records/truth.json`, and made-up
//! ones of our own. Bounds are those of the basis' closed form, computed apart: for one mode in white noise
//! E = A²f_s(1 − e^(−2αT))/(4ασ²), v = 1/(4α²) − T²e^(−2αT)/(1 − e^(−2αT))², sd(ω) = sd(α) = 1/√(E v).

use std::f64::consts::TAU;

use serde_json::Value;
use stillground::site_plan::commissioning::Direction;
use stillground::trace::{Along, Asked, Damped, Kind, Trace, fit, read, start};

use crate::proof_chance::Chance;

fn record(name: &str) -> Vec<u8> {
    let folder = stillground_tests::workspace().join("tests/engineering/reference/records");
    std::fs::read(folder.join(name)).unwrap()
}

fn truth(name: &str) -> Value {
    let all: Value = serde_json::from_slice(&record("truth.json")).unwrap();
    all[name].clone()
}

fn answered(name: &str, asked: &Asked) -> Trace {
    read(&record(name), asked).unwrap()
}

/// The frequency within so many hertz, the damping within a share, as the record's truth asks.
fn tells(trace: &Trace, name: &str, within_hz: f64, within_share: f64) {
    let truth = truth(name);
    let modes = truth["modes"].as_array().unwrap();
    assert_eq!(trace.modes.len(), modes.len(), "{name}: {trace:?}");
    for (found, truth) in trace.modes.iter().zip(modes) {
        let hz = truth["frequency_hz"].as_f64().unwrap();
        let ratio = truth["damping_ratio"].as_f64().unwrap();
        assert!(
            (found.frequency_hz - hz).abs() < within_hz,
            "{name}: {found:?}, truly {hz}"
        );
        assert!(
            (found.damping_ratio / ratio - 1.0).abs() < within_share,
            "{name}: {found:?}, truly {ratio}"
        );
    }
}

fn remarked(trace: &Trace, words: &str) -> bool {
    trace.remarks.iter().any(|remark| remark.contains(words))
}

#[test]
fn a_plain_record_is_answered_without_a_word() {
    tells(
        &answered("r01_plain.csv", &Asked::default()),
        "r01_plain.csv",
        0.05,
        0.1,
    );
}

#[test]
fn gaps_and_uneven_times_are_said_and_not_filled() {
    let found = answered("r03_tab_epoch_gaps.txt", &Asked::default());
    tells(&found, "r03_tab_epoch_gaps.txt", 0.06, 0.12);
    assert!(
        remarked(&found, "4 gaps") && remarked(&found, "not evenly apart"),
        "{:?}",
        found.remarks
    );
}

#[test]
fn a_rate_is_asked_for_and_two_close_swings_are_told_apart() {
    let refused = read(&record("r04_one_column_200hz.txt"), &Asked::default()).unwrap_err();
    assert!(refused.0.contains("rate"), "{refused}");
    let asked = Asked {
        rate_hz: Some(200.0),
        ..Asked::default()
    };
    tells(
        &answered("r04_one_column_200hz.txt", &asked),
        "r04_one_column_200hz.txt",
        0.05,
        0.15,
    );
}

#[test]
fn what_the_sensor_cut_off_is_left_out() {
    let found = answered("r06_clipped_comments.csv", &Asked::default());
    tells(&found, "r06_clipped_comments.csv", 0.05, 0.15);
    assert!(remarked(&found, "clipped"), "{:?}", found.remarks);
}

#[test]
fn a_lean_in_pixels_is_found_with_its_noise() {
    let asked = Asked {
        scale_arcsec_per_unit: Some(0.776),
        ..Asked::default()
    };
    let found = answered("r08_lean_pixels.csv", &asked);
    assert_eq!(found.kind, Kind::Lean);
    let truth = truth("r08_lean_pixels.csv");
    let steps = truth["step_arcsec"].as_array().unwrap();
    assert_eq!(found.steps.len(), 2);
    for (found, truth) in found.steps.iter().zip(steps) {
        let truth = truth.as_f64().unwrap();
        assert!(
            (found.size - truth).abs() < 2.0 * found.sd,
            "{found:?}, truly {truth}"
        );
        assert!((0.05..0.15).contains(&found.sd), "{found:?}");
    }
}

/// The record's truth says that it was knocked along `ax`.
#[test]
fn which_way_a_column_measures_is_told_and_gravity_is_no_swing() {
    let found = answered("r01_plain.csv", &Asked::default());
    assert_eq!(found.direction, Some(Direction::X));
    let columns: Vec<_> = found
        .columns
        .iter()
        .map(|column| (column.name.as_str(), column.along, column.used))
        .collect();
    assert_eq!(
        columns,
        [
            ("ax", Some(Along::X), true),
            ("ay", Some(Along::Y), false),
            ("az", Some(Along::Z), false)
        ]
    );
    for words in [
        "“ax” is taken for east and west",
        "“ay”, north and south, is read where it is named",
        "“az” is up and down",
    ] {
        assert!(remarked(&found, words), "{words}: {:?}", found.remarks);
    }
    let other = Asked {
        value: Some("ay".to_owned()),
        ..Asked::default()
    };
    assert_eq!(
        answered("r01_plain.csv", &other).direction,
        Some(Direction::Y)
    );
}

/// The same record with its columns under other names.
fn renamed(header: &str) -> Trace {
    let text = String::from_utf8(record("r01_plain.csv")).unwrap();
    let rest = text.split_once('\n').unwrap().1;
    read(format!("{header}\n{rest}").as_bytes(), &Asked::default()).unwrap()
}

#[test]
fn no_direction_is_guessed_where_no_name_says_it_or_the_sensor_stood() {
    let found = renamed("time,first,second,third");
    assert_eq!(found.direction, None);
    assert!(
        remarked(&found, "Nothing says which way “first” measures"),
        "{:?}",
        found.remarks
    );
    // Gravity stands in what is called x: the telephone stood on its side.
    let found = renamed("time,ay,az,ax");
    assert_eq!(found.direction, None);
    assert!(
        remarked(&found, "the sensor did not lie flat"),
        "{:?}",
        found.remarks
    );
    assert_eq!(found.columns[2].along, Some(Along::Z));
}

#[test]
fn a_magnitude_beside_the_axes_is_not_read_for_a_swing() {
    let text = String::from_utf8(record("r01_plain.csv")).unwrap();
    let mut lines = text.lines();
    let mut table = format!("{},Absolute acceleration\n", lines.next().unwrap());
    for line in lines {
        let axes: Vec<f64> = line
            .split(',')
            .skip(1)
            .map(|cell| cell.parse().unwrap())
            .collect();
        let size = axes.iter().map(|a| a * a).sum::<f64>().sqrt();
        table.push_str(&format!("{line},{size:.4}\n"));
    }
    let found = read(table.as_bytes(), &Asked::default()).unwrap();
    tells(&found, "r01_plain.csv", 0.05, 0.1);
    assert!(
        remarked(&found, "Not looked at: “Absolute acceleration”"),
        "{:?}",
        found.remarks
    );
}

/// The record's truth: 0.41″ along x and −0.18″ along y, which is 0.448″ at −23.7°. With x growing where the top leans towards
/// the south and y where it leans towards the east: 0.41 south and 0.18 west, by hand 180° + atan(0.18/0.41) = 203.7°.
#[test]
fn two_columns_tell_a_direction_and_with_their_bearings_where_the_top_leaned() {
    let mut asked = Asked {
        scale_arcsec_per_unit: Some(0.776),
        ..Asked::default()
    };
    let found = answered("r08_lean_pixels.csv", &asked).together.unwrap();
    let near = |found: f64, truth: f64, sd: f64| (found - truth).abs() < 2.0 * sd;
    assert!(near(found.size, 0.4478, found.sd), "{found:?}");
    let (angle, angle_sd) = (found.angle_deg.unwrap(), found.angle_sd_deg.unwrap());
    assert!(near(angle, -23.7, angle_sd), "{found:?}");
    assert!((5.0..20.0).contains(&angle_sd), "{found:?}");
    assert_eq!(found.bearing_deg, None, "a picture is not the ground");
    asked.towards_deg = vec![180.0, 90.0];
    let found = answered("r08_lean_pixels.csv", &asked).together.unwrap();
    assert!(
        near(found.bearing_deg.unwrap(), 203.7, angle_sd),
        "{found:?}"
    );
    // One column tells its own part alone, and says so.
    asked.towards_deg = Vec::new();
    asked.value = Some("x_px".to_owned());
    let found = answered("r08_lean_pixels.csv", &asked);
    assert_eq!((found.steps.len(), found.together), (1, None));
    assert!(
        remarked(&found, "One column tells the part"),
        "{:?}",
        found.remarks
    );
    // Named in the other order, the angle is counted from the other.
    asked.value = Some("y_px,x_px".to_owned());
    let found = answered("r08_lean_pixels.csv", &asked).together.unwrap();
    assert!(near(found.angle_deg.unwrap(), 113.7, angle_sd), "{found:?}");
}

/// The basis' table 1.2: pencil and least squares against the bound, 200 records each there and here. f 14.2 Hz, ζ 0.02,
/// 100 Hz, 4 s. A ratio of 200 draws is known to 5 %.
#[test]
fn frequency_and_damping_are_as_good_as_the_bound() {
    let (hz, ratio, rate, lasts) = (14.2, 0.02, 100.0, 4.0);
    let decay = TAU * hz * ratio / f64::sqrt(1.0 - ratio * ratio);
    let mut chance = Chance::new(12);
    for (size, most_hz, most_ratio) in [(100.0, 1.15, 1.2), (20.0, 1.15, 1.2), (5.0, 1.15, 1.2)] {
        let gone = f64::exp(-2.0 * decay * lasts);
        let energy = size * size * rate * (1.0 - gone) / (4.0 * decay);
        let spread = 1.0 / (4.0 * decay * decay) - lasts * lasts * gone / (1.0 - gone).powi(2);
        let bound = 1.0 / (energy * spread).sqrt();
        let (mut of_hz, mut of_ratio, mut held) = (0.0, 0.0, 0);
        let records = 200;
        for _ in 0..records {
            let phase = TAU * chance.even();
            let t: Vec<f64> = (0..(rate * lasts) as usize)
                .map(|i| i as f64 / rate)
                .collect();
            let y: Vec<f64> = t
                .iter()
                .map(|t| size * (-decay * t).exp() * (TAU * hz * t + phase).cos() + chance.normal())
                .collect();
            let begins: Vec<Damped> = start(&y, 1.0 / rate, 3)
                .into_iter()
                .min_by(|a, b| {
                    (a.frequency_hz - hz)
                        .abs()
                        .total_cmp(&(b.frequency_hz - hz).abs())
                })
                .into_iter()
                .collect();
            let found = fit(&t, &y, &begins, &[]).unwrap();
            of_hz += (found.modes[0].frequency_hz - hz).powi(2);
            of_ratio += (found.modes[0].decay_per_s - decay).powi(2);
            held += usize::from((found.modes[0].frequency_hz - hz).abs() < 1.645 * found.sd[0][0]);
        }
        let over = |sum: f64, bound: f64| (sum / records as f64).sqrt() / bound;
        let (hz_over, decay_over) = (over(of_hz, bound / TAU), over(of_ratio, bound));
        println!(
            "A/σ {size}: rmse over bound {hz_over:.2} and {decay_over:.2}; 90 % held {held} of {records}"
        );
        assert!(
            hz_over < most_hz && decay_over < most_ratio,
            "{size}: {hz_over} {decay_over}"
        );
        assert!(held * 100 >= records * 84, "{size}: {held}");
    }
}

/// The basis' table 1.1: the closed form beside the width that the fit says, on one long clean record each.
#[test]
fn the_width_that_is_said_is_the_bounds() {
    for (size, hz, ratio, noise, rate, lasts, sd_hz) in [
        (0.5, 8.3, 0.01, 0.01, 100.0, 10.0, 0.00048),
        (1.0, 17.35, 0.0084, 0.02, 200.0, 8.0, 0.00079),
        (0.2, 39.0, 0.03, 0.01, 400.0, 3.0, 0.03151),
    ] {
        let mut chance = Chance::new(5);
        let decay = TAU * hz * ratio;
        let t: Vec<f64> = (0..(rate * lasts) as usize)
            .map(|i| i as f64 / rate)
            .collect();
        let y: Vec<f64> = t
            .iter()
            .map(|t| size * (-decay * t).exp() * (TAU * hz * t).cos() + noise * chance.normal())
            .collect();
        let begin = Damped {
            frequency_hz: 1.005 * hz,
            decay_per_s: 1.5 * decay,
        };
        let found = fit(&t, &y, &[begin], &[]).unwrap();
        assert!(
            (found.sd[0][0] / sd_hz - 1.0).abs() < 0.15,
            "{hz}: {} and {sd_hz}",
            found.sd[0][0]
        );
    }
}
