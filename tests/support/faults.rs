//! Trials in which something breaks while people save. Whatever broke: what was acknowledged is there afterwards.

mod calls;
mod databases;
mod disks;
mod instances;
mod kills;
mod saver;

use std::fmt;

pub use calls::{failing_calls, slow_calls};
pub use databases::{database_restarts, database_silent};
pub use disks::{full_database, full_disk, limited_file, read_only_folder};
pub use instances::{instance_killed, two_writers};
pub use kills::kills;
pub use saver::{Load, Saver};

/// What was tried, and what became of it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Trial {
    /// What broke.
    pub name: String,
    /// Times that it broke.
    pub rounds: u32,
    /// Saves that were sent.
    pub sent: u64,
    /// Saves that were acknowledged.
    pub acknowledged: u64,
    /// Saves that were refused in words, nothing changed.
    pub refused: u64,
    /// Saves that were acknowledged and are not there: always nought.
    pub lost: u64,
    /// What else was looked at and was not as it should be.
    pub wrong: Vec<String>,
    /// Why it could not be tried here.
    pub untried: Option<String>,
}

impl Trial {
    /// A trial of a name.
    #[must_use]
    pub fn new(name: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            ..Self::default()
        }
    }

    /// A trial that could not be made here.
    fn untried(name: &str, why: &str) -> Self {
        Self {
            untried: Some(why.to_owned()),
            ..Self::new(name)
        }
    }

    /// Whether everything was held, with saves that went through at all.
    #[must_use]
    pub fn held(&self) -> bool {
        self.untried.is_some() || (self.lost == 0 && self.wrong.is_empty() && self.acknowledged > 0)
    }

    /// Fails a test when something was not held.
    ///
    /// # Panics
    /// When something was not held.
    pub fn must_hold(&self) {
        assert!(self.held(), "{self}\n{}", self.wrong.join("\n"));
    }

    /// Notes what is not as it should be.
    fn expect(&mut self, right: bool, otherwise: impl FnOnce() -> String) {
        if !right {
            self.wrong.push(otherwise());
        }
    }

    /// Adds what a saver did and looks for what it was promised.
    fn count(&mut self, saver: &Saver, at: std::net::SocketAddr) {
        self.sent += saver.sent;
        self.acknowledged += saver.acknowledged.len() as u64;
        self.refused += saver.refused;
        let missing = saver.missing(at);
        self.lost += missing.len() as u64;
        self.wrong.extend(missing);
        self.wrong.extend(saver.odd.iter().cloned());
    }
}

impl fmt::Display for Trial {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(why) = &self.untried {
            return write!(f, "{:<62} not tried here: {why}", self.name);
        }
        let verdict = if self.held() { "held" } else { "NOT HELD" };
        write!(
            f,
            "{:<62} {:>6} {:>8} {:>12} {:>8} {:>6}  {verdict}",
            self.name, self.rounds, self.sent, self.acknowledged, self.refused, self.lost
        )
    }
}

/// The heads of the columns.
#[must_use]
pub fn heads() -> String {
    format!(
        "{:<62} {:>6} {:>8} {:>12} {:>8} {:>6}",
        "what broke", "rounds", "sent", "acknowledged", "refused", "lost"
    )
}
