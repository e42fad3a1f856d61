//! Knocks read by the planner beside what general modal-analysis libraries say of the same records:
//! `reference/trace_libraries.py`, which says which and how. Each library's own spread, the same record with other noise, is
//! kept beside its values.

use serde_json::Value;
use stillground::trace::{Asked, FoundMode, Kind, read};

/// Frequencies agree within so many of the library's own spreads.
const SPREADS: f64 = 3.0;
/// Damping agrees within this share of the middle of the libraries.
const DAMPING: f64 = 0.15;

fn records() -> Value {
    let folder = stillground_tests::workspace().join("tests/engineering/reference");
    serde_json::from_slice(&std::fs::read(folder.join("trace_libraries.json")).unwrap()).unwrap()
}

/// The record as a file, and what the planner says of it.
fn found(record: &Value) -> Vec<FoundMode> {
    let rate = record["rate_hz"].as_f64().unwrap();
    let unit = record["unit_m_s2"].as_f64().unwrap();
    let mut text = String::from("t_s,a\n");
    for (i, sample) in record["samples"].as_array().unwrap().iter().enumerate() {
        text.push_str(&format!(
            "{:.5},{:.3}\n",
            i as f64 / rate,
            unit * sample.as_f64().unwrap()
        ));
    }
    let asked = Asked {
        kind: Some(Kind::Knock),
        ..Asked::default()
    };
    read(text.as_bytes(), &asked).unwrap().modes
}

#[test]
fn knocks_are_read_as_general_libraries_read_them() {
    let records = records();
    let records = records.as_object().unwrap();
    assert_eq!(records.len(), 10);
    let (mut compared, mut missed) = (0, Vec::new());
    for (name, record) in records {
        let found = found(record);
        let truths = record["truth"].as_array().unwrap();
        assert_eq!(found.len(), truths.len(), "{name}: {found:?}");
        for (k, truth) in truths.iter().enumerate() {
            let hz = truth[0].as_f64().unwrap();
            let ours = found
                .iter()
                .min_by(|a, b| {
                    (a.frequency_hz - hz)
                        .abs()
                        .total_cmp(&(b.frequency_hz - hz).abs())
                })
                .unwrap();
            let mut ratios = Vec::new();
            for (library, told) in record["libraries"].as_object().unwrap() {
                let told = &told[k];
                let of = |key: &str| told[key].as_f64().unwrap();
                ratios.push(of("damping_ratio"));
                let off = (ours.frequency_hz - of("frequency_hz")).abs();
                println!(
                    "{name} {hz} Hz, {library}: {off:.5} Hz off, its spread {:.5}; damping {:.5}, here {:.5}",
                    of("spread_hz"),
                    of("damping_ratio"),
                    ours.damping_ratio
                );
                // A library that itself lies nowhere near what is in the record has failed on it, and is no reference.
                if (of("frequency_hz") - hz).abs() > 5.0 * of("spread_hz") {
                    missed.push(format!("{name}, {library}: {}", of("frequency_hz")));
                    continue;
                }
                assert!(
                    off < SPREADS * of("spread_hz").hypot(own_spread(record, k)),
                    "{name}, {library}: {off} Hz"
                );
                compared += 1;
            }
            ratios.sort_by(f64::total_cmp);
            let middle = ratios[ratios.len() / 2];
            assert!(
                (ours.damping_ratio / middle - 1.0).abs() < DAMPING,
                "{name}: {} and {middle}",
                ours.damping_ratio
            );
            assert!(
                (ours.frequency_hz - hz).abs() < 3.0 * ours.frequency_sd_hz,
                "{name}: {ours:?}"
            );
        }
    }
    assert!(compared >= 48, "{compared}");
    assert_eq!(
        missed.len(),
        1,
        "libraries that fail on a record: {missed:?}"
    );
}

/// The planner's own spread is that of least squares of damped cosines, which it is.
fn own_spread(record: &Value, k: usize) -> f64 {
    record["libraries"]["curve_fit"][k]["spread_hz"]
        .as_f64()
        .unwrap()
}
