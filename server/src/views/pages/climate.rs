//! The climate of a place: a question, and a proposal.

use askama::Template;
use stillground::figure::{Celsius, Unit, Units};

use super::frame::Frame;
use crate::lookup::Climate;

/// The page.
#[derive(Template)]
#[template(path = "pages/climate.html")]
pub struct ClimatePage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// The service's name and licence.
    pub source: String,
    /// The host that is asked.
    pub host: String,
    /// Latitude as the plan has it.
    pub latitude: String,
    /// Longitude as the plan has it.
    pub longitude: String,
    /// The revision that an answer is saved on.
    pub base: u32,
    /// What was found out.
    pub proposal: Option<Proposal>,
    /// What went wrong.
    pub said: Option<String>,
}

/// What was found out, to be taken or left.
#[derive(Debug, Clone)]
pub struct Proposal {
    /// Where and when, in words.
    pub of: String,
    /// The place that was asked about, degrees north and east.
    pub place: (f64, f64),
    /// What can be taken.
    pub lines: Vec<Line>,
    /// Means of the months, in words.
    pub months: Vec<(&'static str, String)>,
}

/// A figure that can be taken.
#[derive(Debug, Clone)]
pub struct Line {
    /// Its name in the form.
    pub key: &'static str,
    /// The question that it answers.
    pub label: &'static str,
    /// The figure in words.
    pub said: String,
    /// The figure, in the plan's own unit.
    pub value: f64,
    /// How it was found.
    pub how: String,
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

impl Proposal {
    /// The proposal for a place.
    #[must_use]
    pub fn of(climate: &Climate, latitude_deg: f64, longitude_deg: f64, units: Units) -> Self {
        let (winters, coldest) = climate.winters;
        let index = format!(
            "From the means of each day in {winters} winters: {}.",
            if coldest == 3 {
                "the mean of the three coldest"
            } else {
                "the coldest of them, since there are fewer than thirty"
            }
        );
        let mean = "The mean of all days.".to_owned();
        let gust = "Exceeded once in fifty years, from the greatest of each year. A service that computes weather smooths gusts: a \
                    figure from a code or a mast comes before this one.";
        let mut lines = vec![
            line(
                "index",
                "Freezing index of a hard winter",
                climate.freezing_index_c_days.round(),
                units,
                Unit::CelsiusDay,
                index,
            ),
            line(
                "mean",
                "Mean air temperature over the year",
                (climate.mean_c * 10.0).round() / 10.0,
                units,
                Unit::Celsius,
                mean,
            ),
        ];
        let found = climate
            .gust_m_s
            .map(|gust| (gust.max(10.0) * 10.0).round() / 10.0);
        lines.extend(found.map(|speed| {
            line(
                "gust",
                "Gust speed for strength",
                speed,
                units,
                Unit::WindMetrePerSecond,
                gust.to_owned(),
            )
        }));
        let month = |(name, mean): (&&'static str, &f64)| {
            (*name, units.say((mean * 10.0).round() / 10.0, Celsius))
        };
        Self {
            place: (latitude_deg, longitude_deg),
            of: format!(
                "{}, {} to {}",
                place(latitude_deg, longitude_deg),
                climate.years.0,
                climate.years.1
            ),
            lines,
            months: MONTHS.iter().zip(&climate.months_c).map(month).collect(),
        }
    }

    /// A figure that can be taken, by its name in the form.
    #[must_use]
    pub fn value(&self, key: &str) -> Option<f64> {
        let line = self.lines.iter().find(|line| line.key == key);
        line.map(|line| line.value)
    }
}

/// A place in words, to the accuracy that is asked about.
#[must_use]
pub fn place(latitude_deg: f64, longitude_deg: f64) -> String {
    let side = |degrees: f64, ahead: &'static str, behind: &'static str| {
        if degrees < 0.0 { behind } else { ahead }
    };
    let (north, east) = (
        side(latitude_deg, "north", "south"),
        side(longitude_deg, "east", "west"),
    );
    format!(
        "{:.2}° {north}, {:.2}° {east}",
        latitude_deg.abs(),
        longitude_deg.abs()
    )
}

fn line(
    key: &'static str,
    label: &'static str,
    value: f64,
    units: Units,
    unit: Unit,
    how: String,
) -> Line {
    Line {
        key,
        label,
        said: units.say(value, unit),
        value,
        how,
    }
}
