//! North by the pole star, in the night after the start day.

use serde::Serialize;

use super::{Moment, Place};
use crate::figure::Degree;
use crate::notes::{Notes, Working};
use crate::rules::meeus_1998::earth::sidereal_time_deg;
use crate::rules::meeus_1998::horizon::{Direction, SOURCE, seen};
use crate::rules::meeus_1998::star::{POLARIS, mean_place};
use crate::rules::meeus_1998::sun;

/// South of this latitude haze and hills hide the star.
const LOWEST_LATITUDE_DEG: f64 = 5.0;
/// North of this latitude the star stands too high to be brought down to the ground with a plumb line.
const HIGHEST_LATITUDE_DEG: f64 = 75.0;
/// The star is found with bare eyes once the sun is so far down.
const DARK_DEG: f64 = -6.0;
/// Between two looks for the moment at which the star crosses the meridian, in days.
const LOOK: f64 = 10.0 / 1440.0;

/// North by the pole star.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Polaris {
    /// How far the star stands from the pole; null where it cannot be used.
    pub pole_distance_deg: Option<f64>,
    /// How far to the side of north it is seen at most.
    pub most_aside_deg: Option<f64>,
    /// When it stands exactly in the north during the dark hours.
    pub in_the_north: Vec<Moment>,
    /// Where it stands, hour by hour in the dark.
    pub hours: Vec<PolarisAt>,
    /// What to do, in sentences.
    pub says: Vec<String>,
    /// Why it cannot be used; null where it can.
    pub why_not: Option<String>,
}

/// Where the pole star stands at an hour.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PolarisAt {
    /// When.
    pub at: Moment,
    /// East of true north; to the west negative.
    pub bearing_deg: f64,
    /// Above the horizon.
    pub altitude_deg: f64,
}

impl Polaris {
    /// No north by the pole star, and why.
    pub(super) fn not(why: String) -> Self {
        Self {
            pole_distance_deg: None,
            most_aside_deg: None,
            in_the_north: Vec::new(),
            hours: Vec::new(),
            says: Vec::new(),
            why_not: Some(why),
        }
    }
}

/// Finds where the pole star stands; `midnight` begins the start day in universal time.
pub(super) fn find(place: &Place, midnight: f64, notes: &mut Notes) -> Result<Polaris, String> {
    if let Some(why) = out_of_reach(place.latitude_deg) {
        return Err(why.to_owned());
    }
    let start = noon_hour(place, midnight);
    let (dark, hours) = (
        |instant: &f64| is_dark(place, *instant),
        hours(place, start),
    );
    if hours.is_empty() {
        return Err(format!(
            "In the night after {} it does not grow dark enough to see the star. Use the sun.",
            place.day()
        ));
    }
    let distance = 90.0 - mean_place(&POLARIS, midnight + 1.0).declination_deg;
    let aside = (distance.to_radians().sin() / place.latitude_deg.to_radians().cos())
        .min(1.0)
        .asin()
        .to_degrees();
    notes.working(
        Working::new(
            "north.polaris",
            "How far aside of north the pole star is seen at most",
            "sin A = sin p / cos φ",
            SOURCE,
        )
        .with("p", distance, Degree)
        .with("φ", place.latitude_deg, Degree)
        .gives("A", aside, Degree),
    );
    let crossings: Vec<Moment> = crossings(place, start)
        .into_iter()
        .filter(dark)
        .map(|instant| place.moment(instant))
        .collect();
    let says = says(place, aside, &crossings);
    Ok(Polaris {
        pole_distance_deg: Some(distance),
        most_aside_deg: Some(aside),
        in_the_north: crossings,
        hours,
        says,
        why_not: None,
    })
}

fn out_of_reach(latitude_deg: f64) -> Option<&'static str> {
    match latitude_deg {
        latitude if latitude < 0.0 => Some(
            "South of the equator the pole star is below the horizon, and no bright star marks the southern pole: use the sun's shadow.",
        ),
        latitude if latitude < LOWEST_LATITUDE_DEG => Some(
            "So near the equator the pole star drowns in the haze of the horizon: use the sun's shadow.",
        ),
        latitude if latitude > HIGHEST_LATITUDE_DEG => Some(
            "So far north the pole star stands nearly overhead and cannot be brought down to the ground by eye: use the sun's shadow, or a compass \
             while the sun stays away.",
        ),
        _ => None,
    }
}

fn star(place: &Place, instant: f64) -> Direction {
    seen(
        mean_place(&POLARIS, instant),
        sidereal_time_deg(instant) + place.longitude_deg,
        place.latitude_deg,
    )
}

fn is_dark(place: &Place, instant: f64) -> bool {
    seen(
        sun::at(instant).place,
        sidereal_time_deg(instant) + place.longitude_deg,
        place.latitude_deg,
    )
    .altitude_deg
        < DARK_DEG
}

/// The full hour of the place's clocks next to noon of the start day.
fn noon_hour(place: &Place, midnight: f64) -> f64 {
    let offset = place
        .brief
        .work
        .utc_offset_h
        .unwrap_or_else(|| (place.longitude_deg / 15.0).round());
    midnight + 0.5 - offset / 24.0
}

fn hours(place: &Place, start: f64) -> Vec<PolarisAt> {
    let at = |hour: u32| start + f64::from(hour) / 24.0;
    let dark = (0..=24).map(at).filter(|&instant| is_dark(place, instant));
    dark.map(|instant| {
        let there = star(place, instant);
        PolarisAt {
            at: place.moment(instant),
            bearing_deg: there.bearing_deg,
            altitude_deg: there.altitude_deg,
        }
    })
    .collect()
}

/// Moments of the day from `start` on at which the star's bearing passes through north.
fn crossings(place: &Place, start: f64) -> Vec<f64> {
    let steps = (1.0 / LOOK).round() as u32;
    let mut found = Vec::new();
    let mut before = star(place, start).bearing_deg;
    for step in 1..=steps {
        let instant = start + f64::from(step) * LOOK;
        let after = star(place, instant).bearing_deg;
        if (before < 0.0) != (after < 0.0) {
            found.push(instant - LOOK * after / (after - before));
        }
        before = after;
    }
    found
}

fn says(place: &Place, aside: f64, crossings: &[Moment]) -> Vec<String> {
    let two = |value: f64| place.degrees((value * 100.0).round() / 100.0);
    let mut says = vec![format!(
        "The pole star is never more than {} aside of true north here. Hang two plumb lines, one at the pier's axis and one some \
         way north of it, and stand south of both: when the lines and the star are in one, the lines' feet lie on the bearing that the \
         table gives for the hour.",
        two(aside)
    )];
    match crossings {
        [] => says
            .push("It does not stand exactly in the north during the dark hours of that night; take the table's bearing off.".to_owned()),
        some => says.push(format!(
            "In the night after {} it stands exactly in the north at {}.",
            place.day(),
            some.iter().map(Moment::words).collect::<Vec<_>>().join(" and at ")
        )),
    }
    says.push("Light the plumb lines faintly from the side, not the eye. A star a day later stands there four minutes earlier.".to_owned());
    says
}
