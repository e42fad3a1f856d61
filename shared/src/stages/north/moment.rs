//! A moment of the start day or the night after it, by universal time and by the clocks of the place.

use serde::Serialize;

use crate::rules::calendar;

/// A moment, to the second.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Moment {
    /// Universal time, ISO 8601.
    pub utc: String,
    /// The same by the clocks of the place; null where nobody said how they are set.
    pub clock: Option<String>,
}

impl Moment {
    /// The moment of a Julian day of universal time.
    pub(super) fn of(julian_day: f64, offset_h: Option<f64>) -> Self {
        let text = |day| {
            let (date, hour, minute, second) = calendar::moment(day);
            format!("{date}T{hour:02}:{minute:02}:{second:02}")
        };
        Self {
            utc: format!("{}Z", text(julian_day)),
            clock: offset_h.map(|hours| text(julian_day + hours / 24.0)),
        }
    }

    /// The day that a reader of the place's clocks, or else of universal time, would call it.
    pub fn day(&self) -> &str {
        self.clock
            .as_deref()
            .unwrap_or(&self.utc)
            .get(..10)
            .unwrap_or_default()
    }

    /// Hours, minutes and seconds, by the clocks of the place where they are known.
    pub fn words(&self) -> String {
        let part = |text: &str| text.get(11..19).unwrap_or_default().to_owned();
        match &self.clock {
            Some(clock) => format!("{} by your clocks ({} UTC)", part(clock), part(&self.utc)),
            None => format!("{} UTC", part(&self.utc)),
        }
    }

    /// Hours and minutes alone, for a table whose heading says by which clock.
    pub fn short(&self) -> &str {
        self.clock
            .as_deref()
            .unwrap_or(&self.utc)
            .get(11..16)
            .unwrap_or_default()
    }

    /// Hours, minutes and seconds alone.
    pub fn exact(&self) -> &str {
        self.clock
            .as_deref()
            .unwrap_or(&self.utc)
            .get(11..19)
            .unwrap_or_default()
    }
}
