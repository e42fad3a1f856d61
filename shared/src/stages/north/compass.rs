//! North by compass: the needle's error from the World Magnetic Model.

use serde::Serialize;

use super::Place;
use crate::figure::{Degree, Nanotesla, Unit, significant};
use crate::notes::{Notes, Working};
use crate::rules::world_magnetic_model_2025::{
    BLACKOUT_NT, CAUTION_NT, FIRST_YEAR, Field, LAST_YEAR, SOURCE, field,
};

/// Declination taken for no day: the middle of the model's years.
const MIDDLE_YEAR: f64 = (FIRST_YEAR + LAST_YEAR) / 2.0;
/// Distance from steel within which a compass is not to be believed, m.
const STEEL_M: f64 = 3.0;

/// North by compass.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Compass {
    /// How far east of true north the needle points; null where it cannot be said.
    pub declination_deg: Option<f64>,
    /// One standard deviation of it.
    pub doubt_deg: Option<f64>,
    /// How much it changes in a year.
    pub change_deg_a: Option<f64>,
    /// What a compass's ring reads along the line to true north.
    pub reads_deg: Option<f64>,
    /// First and last year of the model.
    pub valid_years: [f64; 2],
    /// What to do, in sentences.
    pub says: Vec<String>,
    /// Why it cannot be said; null where it can.
    pub why_not: Option<String>,
}

impl Compass {
    /// No north by compass, and why.
    pub(super) fn not(why: String) -> Self {
        Self {
            declination_deg: None,
            doubt_deg: None,
            change_deg_a: None,
            reads_deg: None,
            valid_years: [FIRST_YEAR, LAST_YEAR],
            says: Vec::new(),
            why_not: Some(why),
        }
    }
}

/// Finds what the needle's error is.
pub(super) fn find(place: &Place, notes: &mut Notes) -> Result<Compass, String> {
    let year = place.year.unwrap_or(MIDDLE_YEAR);
    if !(FIRST_YEAR..=LAST_YEAR).contains(&year) {
        return Err(format!(
            "The World Magnetic Model 2025 holds from {FIRST_YEAR:.0} to the end of {:.0}, and {} is outside: the needle's error drifts, \
             so use a newer model, a newer map, or the sun.",
            LAST_YEAR - 1.0,
            place.day()
        ));
    }
    let at = |year| {
        field(
            place.latitude_deg,
            place.longitude_deg,
            place.brief.site.stated.altitude_m.unwrap_or(0.0),
            year,
        )
    };
    let found = at(year).ok_or(
        "At the pole itself every way is south or north; a compass has nothing to say there.",
    )?;
    if found.horizontal_nt() < BLACKOUT_NT {
        return Err(format!(
            "The site lies in the blackout zone round a magnetic pole: the field points almost straight {}, and a needle wanders. Use the \
             sun.",
            if found.down_nt > 0.0 { "down" } else { "up" }
        ));
    }
    let (start, end) = (at(FIRST_YEAR), at(LAST_YEAR));
    let change = start.zip(end).map(|(start, end)| {
        turned(end.declination_deg() - start.declination_deg()) / (LAST_YEAR - FIRST_YEAR)
    });
    notes.working(
        Working::new(
            "north.declination",
            "How far east of true north the needle points",
            "D = atan2(Y, X)",
            SOURCE,
        )
        .with("X", found.north_nt, Nanotesla)
        .with("Y", found.east_nt, Nanotesla)
        .gives("D", found.declination_deg(), Degree),
    );
    Ok(Compass {
        declination_deg: Some(found.declination_deg()),
        doubt_deg: Some(found.declination_doubt_deg()),
        change_deg_a: change,
        reads_deg: Some(reads(found)),
        valid_years: [FIRST_YEAR, LAST_YEAR],
        says: says(place, found),
        why_not: None,
    })
}

/// What the ring of a compass, turned to the needle, reads along true north.
fn reads(found: Field) -> f64 {
    (-found.declination_deg()).rem_euclid(360.0)
}

/// An angle the short way round.
fn turned(degrees: f64) -> f64 {
    (degrees + 180.0).rem_euclid(360.0) - 180.0
}

/// A bearing on the ring, to a tenth of a degree.
fn exact(degrees: f64) -> String {
    format!(
        "{}°",
        significant((degrees * 10.0).round() / 10.0 % 360.0, 4)
    )
}

fn says(place: &Place, found: Field) -> Vec<String> {
    let declination = found.declination_deg();
    let (size, side) = (
        place.degrees((declination.abs() * 10.0).round() / 10.0),
        if declination < 0.0 { "west" } else { "east" },
    );
    let when = match place.year {
        Some(_) => format!("On {}", place.day()),
        None => "In the middle of 2027 (no start day was said)".to_owned(),
    };
    let mut says = vec![format!(
        "{when} the needle points {size} {side} of true north, give or take {} in open ground. Turn until the ring, set to the needle, \
         reads {}: that is true north.",
        place.degrees((found.declination_doubt_deg() * 10.0).round() / 10.0),
        exact(reads(found))
    )];
    says.push(format!(
        "Keep {} from steel: rebar, the column, the machine, the spade, a vehicle, a telephone and a knife in the pocket all turn the \
         needle. Read it at both pegs of the line; readings that differ by more than a degree mean that steel or the ground's own iron is \
         near, and then the sun is the better guide.",
        place.brief.units.about(STEEL_M, Unit::Metre)
    ));
    says.push(
        "A needle balanced for the other half of the Earth drags; a compass that corrects for declination by itself, or a telephone set to \
         true north, must not be corrected twice."
            .to_owned(),
    );
    if found.horizontal_nt() < CAUTION_NT {
        says.push(
            "The field is weak along the ground here, near a magnetic pole: a compass is sluggish, and magnetic storms turn it by degrees."
                .to_owned(),
        );
    }
    says
}
