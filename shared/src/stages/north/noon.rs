//! North by the sun's shadow when the sun crosses the meridian.

use crate::figure::{Degree, Unit};
use serde::Serialize;

use super::{Moment, Place};
use crate::notes::{Notes, Working};
use crate::rules::meeus_1998::earth::sidereal_time_deg;
use crate::rules::meeus_1998::horizon::seen;
use crate::rules::meeus_1998::sun::{SOURCE, at, noon};

/// Days after the start day for which noon is told: the digging, the pour and the drilling lie within them.
const DAYS: [u32; 7] = [0, 7, 14, 21, 28, 35, 42];
/// Lowest sun whose shadow still has an end.
const LOWEST_SUN_DEG: f64 = 3.0;
/// Most that the shadow may turn in a minute; faster, a clock is not good enough.
const FASTEST_DEG_MIN: f64 = 1.0;

/// North by the shadow at noon.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Noon {
    /// Noon on the start day and some weeks after it; empty where it cannot be said.
    pub days: Vec<NoonDay>,
    /// What to do, in sentences.
    pub says: Vec<String>,
    /// Why it cannot be said; null where it can.
    pub why_not: Option<String>,
}

/// Noon of one day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NoonDay {
    /// When the sun crosses the meridian.
    pub at: Moment,
    /// How high it stands then.
    pub sun_altitude_deg: f64,
    /// Length of a shadow over the height of what casts it.
    pub shadow_ratio: f64,
    /// Where the shadow points, `north` or `south`.
    pub shadow_points: &'static str,
    /// How far the shadow's line turns in a minute.
    pub turn_deg_min: f64,
}

impl Noon {
    /// No north by the sun, and why.
    pub(super) fn not(why: String) -> Self {
        Self {
            days: Vec::new(),
            says: Vec::new(),
            why_not: Some(why),
        }
    }

    /// No north by the moment of noon, and why; the shadow's circle still gives it where there is a shadow.
    pub(super) fn by_the_circle(why: String) -> Self {
        let says = vec![
            "Without the time of noon: stand a straight pole plumb, mark the end of its shadow in the morning and draw a circle through it \
             round the pole's foot; mark where the shadow's end meets the circle again in the afternoon. Half-way between the two marks \
             lies the meridian, as seen from the foot."
                .to_owned(),
        ];
        Self {
            days: Vec::new(),
            says,
            why_not: Some(why),
        }
    }
}

/// Finds noon; `midnight` begins the start day in universal time.
pub(super) fn find(place: &Place, midnight: f64, notes: &mut Notes) -> Noon {
    let days: Vec<NoonDay> = DAYS
        .iter()
        .map(|&days| day(place, midnight + f64::from(days)))
        .collect();
    let Some(first) = days.first() else {
        return Noon::not("There is no day to tell noon for.".to_owned());
    };
    if first.sun_altitude_deg < LOWEST_SUN_DEG {
        return Noon::not(format!(
            "On {} the sun stands {} at noon: no shadow to measure. Use a compass, or the pole star where it can be brought down to the \
             ground.",
            place.day(),
            if first.sun_altitude_deg > 0.0 {
                "hardly above the horizon"
            } else {
                "below the horizon"
            }
        ));
    }
    if first.turn_deg_min > FASTEST_DEG_MIN {
        return Noon::by_the_circle(format!(
            "On {} the sun stands almost overhead at noon, and the stub of a shadow swings by {} in a minute. Use the longer shadows of \
             morning and afternoon by the circle, a compass, or the pole star.",
            place.day(),
            place.degrees(first.turn_deg_min)
        ));
    }
    working(place, midnight, notes);
    let says = says(place, first);
    Noon {
        days: days
            .into_iter()
            .filter(|day| {
                day.sun_altitude_deg >= LOWEST_SUN_DEG && day.turn_deg_min <= FASTEST_DEG_MIN
            })
            .collect(),
        says,
        why_not: None,
    }
}

fn day(place: &Place, midnight: f64) -> NoonDay {
    let instant = of_day(place, midnight);
    let sun = at(instant).place;
    let there = seen(
        sun,
        sidereal_time_deg(instant) + place.longitude_deg,
        place.latitude_deg,
    );
    let altitude = there.altitude_deg;
    // Degrees by which the hour angle grows in a minute, seen on the ground.
    let turn =
        0.25 * sun.declination_deg.to_radians().cos() / altitude.to_radians().cos().max(1e-6);
    NoonDay {
        at: place.moment(instant),
        sun_altitude_deg: altitude,
        shadow_ratio: 1.0 / altitude.to_radians().tan().abs().max(1e-6),
        shadow_points: if sun.declination_deg > place.latitude_deg {
            "south"
        } else {
            "north"
        },
        turn_deg_min: turn,
    }
}

/// Noon of the day by the clocks of the place; near the date line it may lie in the day before or after by universal time.
fn of_day(place: &Place, midnight: f64) -> f64 {
    let instant = noon(midnight, place.longitude_deg);
    let Some(offset) = place.brief.work.utc_offset_h else {
        return instant;
    };
    let days = (instant + offset / 24.0 - midnight).floor();
    if days == 0.0 {
        instant
    } else {
        noon(midnight - days, place.longitude_deg)
    }
}

fn working(place: &Place, midnight: f64, notes: &mut Notes) {
    let instant = of_day(place, midnight);
    let hours = ((instant + 0.5).fract() * 24.0).rem_euclid(24.0);
    notes.working(
        Working::new(
            "north.noon",
            "Noon by the sun, in universal time",
            "t = 12 h − λ/15 − E/60",
            SOURCE,
        )
        .with("λ", place.longitude_deg, Degree)
        .with("E", at(instant).equation_of_time_min, Unit::Minute)
        .gives("t", hours, Unit::Hour),
    );
}

fn says(place: &Place, first: &NoonDay) -> Vec<String> {
    let units = place.brief.units;
    let pole = |ratio: f64| units.say(1.5 * ratio, Unit::Metre);
    vec![
        format!(
            "On {} the sun crosses the meridian at {}. At that moment the shadow of a plumb line or a straight pole points true {}; one \
             of {} is {} long.",
            first.at.day(),
            first.at.words(),
            first.shadow_points,
            pole(1.0),
            pole(first.shadow_ratio)
        ),
        format!(
            "Set a watch by a time signal or a telephone. A minute off turns the line by {}. Mark the shadow every minute from five \
             minutes before, and take the mark of the minute: a cloud then spoils nothing.",
            place.degrees((first.turn_deg_min * 100.0).round() / 100.0)
        ),
        "Shield a plumb line from the wind and let its bob hang in a bucket of water. The edge of the shadow is soft: mark its middle, \
         not its edge."
            .to_owned(),
    ]
}
