//! Noon by the sun and the bearing of the pole star against ERFA, the open form of the IAU's own routines.
//!
//! Script and values stand in `reference/sun_and_star.*`.

use serde::Deserialize;
use stillground::rules::calendar::julian_day;
use stillground::rules::meeus_1998::earth::sidereal_time_deg;
use stillground::rules::meeus_1998::horizon::seen;
use stillground::rules::meeus_1998::star::{POLARIS, mean_place};
use stillground::rules::meeus_1998::sun::{at, noon};

#[derive(Deserialize)]
struct Reference {
    suns: Vec<Sun>,
    stars: Vec<Star>,
}

#[derive(Deserialize)]
struct Sun {
    date: String,
    longitude_deg: f64,
    hours_after_midnight_utc: f64,
    declination_deg: f64,
}

#[derive(Deserialize)]
struct Star {
    date: String,
    longitude_deg: f64,
    latitude_deg: f64,
    hour_utc: f64,
    bearing_deg: f64,
    altitude_deg: f64,
}

fn reference() -> Reference {
    serde_json::from_str(include_str!("reference/sun_and_star.json")).unwrap()
}

#[test]
fn noon_by_the_sun_is_right_to_five_seconds_and_its_height_to_a_minute_of_arc() {
    let reference = reference();
    assert_eq!(reference.suns.len(), 32);
    for sun in reference.suns {
        let midnight = julian_day(&sun.date).unwrap();
        let found = noon(midnight, sun.longitude_deg);
        let seconds = ((found - midnight) * 24.0 - sun.hours_after_midnight_utc) * 3600.0;
        assert!(
            seconds.abs() < 5.0,
            "{} {}: {seconds} s",
            sun.date,
            sun.longitude_deg
        );
        assert!(
            (at(found).place.declination_deg - sun.declination_deg).abs() < 1.0 / 60.0,
            "{}",
            sun.date
        );
    }
}

#[test]
fn the_pole_star_is_right_to_half_a_minute_of_arc_on_the_sky() {
    let reference = reference();
    assert_eq!(reference.stars.len(), 288);
    for star in reference.stars {
        let instant = julian_day(&star.date).unwrap() + star.hour_utc / 24.0;
        let found = seen(
            mean_place(&POLARIS, instant),
            sidereal_time_deg(instant) + star.longitude_deg,
            star.latitude_deg,
        );
        let aside = (found.bearing_deg - star.bearing_deg) * star.altitude_deg.to_radians().cos();
        let above = found.altitude_deg - star.altitude_deg;
        assert!(
            aside.hypot(above) * 3600.0 < 32.0,
            "{} {}: {} and {} seconds of arc",
            star.date,
            star.hour_utc,
            aside * 3600.0,
            above * 3600.0
        );
    }
}
