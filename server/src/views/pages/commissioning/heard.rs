//! What a file said, as a form that may be corrected.

use stillground::figure::significant;
use stillground::site_plan::commissioning::Direction;
use stillground::trace::{Kind, Trace};

use crate::forms::sheet::Sheet;

/// What a file said.
pub struct Heard {
    /// Whether it is a knock.
    pub is_knock: bool,
    /// What was found, as texts by box.
    pub found: Vec<(&'static str, String)>,
    /// How it was read.
    pub remarks: Vec<String>,
    /// What else the file holds: a swing in its other direction.
    pub other: Option<Other>,
}

/// A swing in the other direction of the same file.
pub struct Other {
    /// In words.
    pub words: String,
    /// The boxes, filled, as they stand in an address.
    pub query: String,
}

impl Heard {
    /// Of a record that was read.
    #[must_use]
    pub fn of(trace: &Trace) -> Self {
        let mut found = Vec::new();
        let mut tilt = |size: f64, sd: f64| {
            found.push(("tilt_arcsec", significant(size.abs(), 3)));
            found.push(("tilt_sd_arcsec", significant(sd, 2)));
        };
        match (trace.together, trace.steps.as_slice()) {
            (Some(both), _) => tilt(both.size, both.sd),
            (None, [one, ..]) => tilt(one.size, one.sd),
            (None, []) => {}
        }
        if let Some(bearing) = trace.together.and_then(|both| both.bearing_deg) {
            found.push(("bearing_deg", significant(bearing.round(), 3)));
        }
        if let Some(mode) = trace.modes.first() {
            found.push(("frequency_hz", significant(mode.frequency_hz, 5)));
            found.push(("frequency_sd_hz", significant(mode.frequency_sd_hz, 2)));
            found.push(("damping_ratio", significant(mode.damping_ratio, 3)));
            if let Some(direction) = trace.direction {
                found.push(("direction", direction.key().to_owned()));
            }
        }
        Self {
            is_knock: trace.kind == Kind::Knock,
            found,
            remarks: trace.remarks.clone(),
            other: None,
        }
    }

    /// The same, with what the file's other direction says, where it says anything.
    #[must_use]
    pub fn with_other(mut self, trace: &Trace) -> Self {
        let of = Self::of(trace);
        let text = |name: &str| {
            let found = of.found.iter().find(|(known, _)| *known == name);
            found.map(|(_, text)| text.clone()).unwrap_or_default()
        };
        let mut used = trace.columns.iter().filter(|column| column.used);
        self.other = used
            .next()
            .filter(|_| !trace.modes.is_empty())
            .map(|column| {
                let towards = trace
                    .direction
                    .map_or("in another direction", Direction::words);
                Other {
                    words: format!(
                        "The same file has a swing in “{}”, {towards}: {} Hz ± {} Hz, damping {}.",
                        column.name,
                        text("frequency_hz"),
                        text("frequency_sd_hz"),
                        text("damping_ratio")
                    ),
                    query: of
                        .found
                        .iter()
                        .map(|(name, text)| format!("{name}={text}"))
                        .collect::<Vec<_>>()
                        .join("&"),
                }
            });
        self
    }

    /// Of one that was not.
    #[must_use]
    pub fn refused(kind: Kind, said: &str) -> Self {
        Self {
            is_knock: kind == Kind::Knock,
            found: Vec::new(),
            remarks: vec![format!("This record cannot be read: {said}.")],
            other: None,
        }
    }

    /// What was found as a form that may be corrected.
    #[must_use]
    pub fn sheet(&self) -> Sheet {
        let what = if self.is_knock { "knock" } else { "lean" };
        let mut pairs = vec![("what".to_owned(), what.to_owned())];
        pairs.extend(
            self.found
                .iter()
                .map(|(name, text)| ((*name).to_owned(), text.replace('−', "-"))),
        );
        Sheet::sent(pairs)
    }
}
