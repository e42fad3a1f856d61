//! What is held just now: memory, connections, bytes of bodies, turns, and the copies.

use std::fmt::Write as _;

use crate::app::App;
use crate::turns::Work;

/// A figure's name, kind, words, and its values with their labels.
type Figure = (&'static str, &'static str, &'static str, Vec<(String, f64)>);

/// The figures as text.
pub(super) fn text(app: &App) -> String {
    let mut text = String::new();
    for (name, kind, help, values) in figures(app) {
        let _ = writeln!(
            text,
            "# HELP stillground_{name} {help}\n# TYPE stillground_{name} {kind}"
        );
        for (labels, value) in values {
            let _ = writeln!(text, "stillground_{name}{labels} {value}");
        }
    }
    text
}

// A count past 2^53 would lose its last digit, and there is no such machine.
#[allow(
    clippy::cast_precision_loss,
    reason = "counts of what one machine holds"
)]
fn figures(app: &App) -> Vec<Figure> {
    let one = |value: usize| vec![(String::new(), value as f64)];
    let copies = app.copies.told();
    let mut figures = vec![
        (
            "connections",
            "gauge",
            "Connections that are open.",
            one(app.connections.taken()),
        ),
        (
            "requests_placed",
            "gauge",
            "Requests that have a place and are worked on.",
            one(app.places.taken()),
        ),
        (
            "body_bytes_held",
            "gauge",
            "Bytes of bodies that are held.",
            one(app.bodies.held.taken()),
        ),
        (
            "refusals_late",
            "gauge",
            "Refusals that are kept back from clients which were refused many times.",
            one(app.guard.late()),
        ),
        (
            "turns",
            "gauge",
            "Turns at the processors, by work: those that work and those that wait.",
            turns(app),
        ),
        (
            "damaged_rows",
            "gauge",
            "Rows of the store that are known to be damaged.",
            one(app.store.damaged_rows()),
        ),
    ];
    if let Some(bytes) = resident() {
        figures.push((
            "resident_bytes",
            "gauge",
            "Memory that the process has, bytes.",
            one(bytes),
        ));
    }
    if app.config.copying.is_some() {
        let failing = usize::from(copies.failed.is_some());
        let last = copies.last_good.map_or(0, jiff::Timestamp::as_second);
        figures.extend([
            (
                "copies_failing",
                "gauge",
                "Whether the last copy failed.",
                one(failing),
            ),
            (
                "copies_good_total",
                "counter",
                "Good copies since the start.",
                vec![(String::new(), copies.good as f64)],
            ),
            (
                "copies_failed_total",
                "counter",
                "Copies that failed since the start.",
                vec![(String::new(), copies.failures as f64)],
            ),
            (
                "copy_last_good_seconds",
                "gauge",
                "When the last good copy since the start was made, in seconds since 1970; 0 when none was.",
                vec![(String::new(), last as f64)],
            ),
        ]);
    }
    figures
}

#[allow(clippy::cast_precision_loss, reason = "a few hundred at most")]
fn turns(app: &App) -> Vec<(String, f64)> {
    let of = |work: Work| {
        let (working, waiting) = app.turns.busy(work);
        [("working", working), ("waiting", waiting)].map(|(state, count)| {
            let labels = format!("{{work=\"{}\",state=\"{state}\"}}", work.name());
            (labels, count as f64)
        })
    };
    Work::ALL.into_iter().flat_map(of).collect()
}

/// Memory that the process has, bytes; where the system says it, as Linux does.
fn resident() -> Option<usize> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmRSS:"))?;
    let kib: usize = line.split_whitespace().nth(1)?.parse().ok()?;
    kib.checked_mul(1024)
}
