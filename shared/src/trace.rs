//! Traces: a table of a knock's swing or of a star's places becomes frequencies, damping and steps, each with its
//! uncertainty. What a file does not say is asked for, and what was found in it is told.

mod bearing;
mod cells;
mod clean;
mod clock;
mod columns;
mod fit;
mod hum;
mod knock;
mod knocks;
mod ladder;
mod layout;
mod lean;
mod names;
mod noise;
mod pencil;
mod restricted;
mod ring;
mod sides;
mod statistics;
mod swing;
mod table;
mod visits;

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::site_plan::commissioning::Direction;

pub use fit::{Damped, Fitted, fit};
pub use pencil::start;
pub use sides::{Along, Column};
pub use table::Reader;

/// Most bytes of a file that are read.
pub const MOST_BYTES: usize = 20 * 1024 * 1024;
/// Most rows of a table that are read.
pub const MOST_ROWS: usize = 1_000_000;

/// What a trace shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A swing that dies away after a blow.
    Knock,
    /// Somebody steps to a place and away again.
    Lean,
}

/// What the person says of a file; each answer goes before what is found in it.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Asked {
    /// What it shows.
    pub kind: Option<Kind>,
    /// Samples a second, where the file has no times or wrong ones.
    pub rate_hz: Option<f64>,
    /// The column of times: its name or its number from one; `:ms` after it says its unit.
    pub time: Option<String>,
    /// The column of what was measured: its name or its number from one; several with commas between.
    pub value: Option<String>,
    /// Towards which bearings the top leans where the first and the second column of a lean grow, degrees from north.
    pub towards_deg: Vec<f64>,
    /// Seconds of arc in one unit of the column.
    pub scale_arcsec_per_unit: Option<f64>,
    /// When somebody stepped there and away, in turn, seconds from the first row.
    pub at_s: Vec<f64>,
}

/// One swing that was found.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FoundMode {
    /// Frequency of the damped swing, as the record shows it.
    pub frequency_hz: f64,
    /// Its standard deviation.
    pub frequency_sd_hz: f64,
    /// Damping over critical.
    pub damping_ratio: f64,
    /// Its standard deviation.
    pub damping_sd: f64,
}

/// One step that was found, all visits to the place taken together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FoundStep {
    /// When it was made first, from the beginning of the record.
    pub at_s: f64,
    /// How far, in the column's unit or in seconds of arc where the scale is known.
    pub size: f64,
    /// Its standard deviation.
    pub sd: f64,
}

/// The steps of two columns taken together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Together {
    /// How far.
    pub size: f64,
    /// Its standard deviation.
    pub sd: f64,
    /// Direction, from where the first column grows towards where the second does; null where the step is too small to tell.
    pub angle_deg: Option<f64>,
    /// Its standard deviation.
    pub angle_sd_deg: Option<f64>,
    /// Bearing towards which the top leaned; null where nothing says how the columns lie.
    pub bearing_deg: Option<f64>,
}

/// What a trace says. Where it cannot be answered, `modes` and `steps` are empty and the first remark says why.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Trace {
    /// What it shows.
    pub kind: Kind,
    /// Swings, the one that is heard first.
    pub modes: Vec<FoundMode>,
    /// Steps, one a column.
    pub steps: Vec<FoundStep>,
    /// The steps of two columns taken together.
    pub together: Option<Together>,
    /// The columns of measurements, and which way each measures.
    pub columns: Vec<Column>,
    /// Which way the swing goes; null where no column's name says it.
    pub direction: Option<Direction>,
    /// Drift of the column that was used first, units a second.
    pub drift_per_s: f64,
    /// How the file was read, what was found in it and what is not to be trusted.
    pub remarks: Vec<String>,
}

/// Why a file cannot be read at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal(pub String);

impl Refusal {
    /// A refusal in words.
    pub fn new(said: impl Into<String>) -> Self {
        Self(said.into())
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.write_str(&self.0)
    }
}

impl std::error::Error for Refusal {}

/// A figure within a remark.
fn said(value: f64) -> String {
    crate::figure::significant(value, 4)
}

/// Reads a whole table and answers it.
///
/// # Errors
/// It is no table of figures, too large, or says too little and the sentence says what to add.
pub fn read(bytes: &[u8], asked: &Asked) -> Result<Trace, Refusal> {
    let mut reader = Reader::new(asked.clone())?;
    for piece in bytes.chunks(64 * 1024) {
        reader.push(piece)?;
    }
    reader.finish()
}
