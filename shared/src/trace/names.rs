//! What the names of columns say.

/// Seconds in one of a unit.
pub(super) fn seconds_in(unit: &str) -> Option<f64> {
    Some(match unit.to_lowercase().as_str() {
        "s" | "sec" | "secs" | "second" | "seconds" => 1.0,
        "ms" | "msec" | "millis" | "milliseconds" => 1e-3,
        "us" | "µs" | "usec" | "micros" | "microseconds" => 1e-6,
        "ns" | "nanos" | "nanoseconds" => 1e-9,
        "min" | "minutes" => 60.0,
        _ => return None,
    })
}

/// The words of a column's name.
pub(super) fn words(name: &str) -> Vec<String> {
    name.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect()
}

pub(super) fn is_time_by_name(name: &str) -> bool {
    const NAMES: [&str; 12] = [
        "t",
        "time",
        "times",
        "epoch",
        "clock",
        "timestamp",
        "stamp",
        "elapsed",
        "sec",
        "seconds",
        "millis",
        "utc",
    ];
    words(name)
        .first()
        .is_some_and(|first| NAMES.contains(&first.as_str()))
        || words(name)
            .iter()
            .any(|word| word == "time" || word == "timestamp")
}
