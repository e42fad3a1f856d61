//! North at odd places and on odd days.

use super::*;
use crate::brief::resolve;
use crate::site_plan::SitePlan;

fn north(latitude: f64, longitude: f64, date: &str, offset_h: Option<f64>) -> North {
    let mut plan = SitePlan::unknown();
    plan.site.latitude_deg = Some(latitude);
    plan.site.longitude_deg = Some(longitude);
    plan.work.start_date = Some(date.to_owned());
    plan.work.utc_offset_h = offset_h;
    stage(&resolve(&plan).unwrap()).value
}

fn has(text: Option<&String>, part: &str) -> bool {
    text.is_some_and(|text| text.contains(part))
}

#[test]
fn without_a_place_or_a_day_each_way_says_why() {
    let found = stage(&resolve(&SitePlan::unknown()).unwrap());
    let north = &found.value;
    for why in [
        &north.compass.why_not,
        &north.noon.why_not,
        &north.polaris.why_not,
    ] {
        assert!(has(why.as_ref(), "latitude and longitude"), "{why:?}");
    }
    assert!(
        found
            .notes
            .assumptions
            .iter()
            .any(|taken| taken.field == "site.latitude_deg")
    );
    let mut plan = SitePlan::unknown();
    (plan.site.latitude_deg, plan.site.longitude_deg) = (Some(50.0), Some(10.0));
    let north = stage(&resolve(&plan).unwrap()).value;
    assert!(
        north.compass.declination_deg.is_some() && north.compass.says[0].contains("no start day")
    );
    assert!(
        has(north.noon.why_not.as_ref(), "No start day")
            && has(north.polaris.why_not.as_ref(), "No start day")
    );
}

#[test]
fn the_model_is_not_used_outside_its_years_or_near_the_magnetic_poles() {
    assert!(has(
        north(50.0, 10.0, "2024-12-31", None)
            .compass
            .why_not
            .as_ref(),
        "outside"
    ));
    assert!(has(
        north(50.0, 10.0, "2030-02-01", None)
            .compass
            .why_not
            .as_ref(),
        "outside"
    ));
    assert!(
        north(50.0, 10.0, "2029-12-31", None)
            .compass
            .declination_deg
            .is_some()
    );
    assert!(has(
        north(85.8, 140.0, "2026-06-01", None)
            .compass
            .why_not
            .as_ref(),
        "blackout"
    ));
    assert!(has(
        north(-64.0, 136.0, "2026-06-01", None)
            .compass
            .why_not
            .as_ref(),
        "straight up"
    ));
    assert!(has(
        north(90.0, 0.0, "2026-06-01", None)
            .compass
            .why_not
            .as_ref(),
        "pole itself"
    ));
    assert!(
        north(78.0, -70.0, "2026-06-01", None)
            .compass
            .says
            .iter()
            .any(|said| said.contains("sluggish"))
    );
}

#[test]
fn the_ring_reads_the_needle_error_taken_off() {
    let compass = north(-33.0, 18.5, "2027-03-01", None).compass;
    let (declination, reads) = (compass.declination_deg.unwrap(), compass.reads_deg.unwrap());
    assert!(
        declination < -20.0 && (declination + reads).abs() < 1e-9,
        "{declination} {reads}"
    );
    assert!(compass.says[0].contains("west"));
}

#[test]
fn noon_keeps_to_the_day_of_the_clocks_at_the_date_line() {
    for (longitude, offset) in [
        (-171.8, 13.0),
        (179.5, 12.0),
        (-179.5, -12.0),
        (-157.5, 14.0),
        (0.0, 0.0),
    ] {
        let noon = north(-14.0, longitude, "2027-07-01", Some(offset)).noon;
        assert_eq!(noon.days[0].at.day(), "2027-07-01", "{longitude}");
        let hour: f64 = noon.days[0].at.exact()[..2].parse().unwrap();
        assert!((9.0..=15.0).contains(&hour), "{longitude}: {hour}");
    }
}

#[test]
fn the_sun_is_refused_overhead_and_below_the_horizon() {
    assert!(has(
        north(23.0, 10.0, "2027-06-21", None).noon.why_not.as_ref(),
        "overhead"
    ));
    let dark = north(75.0, 10.0, "2027-12-21", None).noon;
    assert!(has(dark.why_not.as_ref(), "below the horizon"));
    assert!(
        dark.says.is_empty(),
        "no shadow is spoken of where there is none"
    );
    let noon = north(-34.0, 10.0, "2027-06-21", None).noon;
    assert!(noon.days.iter().all(|day| day.shadow_points == "south"));
    assert!(
        north(52.0, 10.0, "2027-06-21", None)
            .noon
            .days
            .iter()
            .all(|day| day.shadow_points == "north")
    );
}

#[test]
fn the_pole_star_serves_dark_northern_nights_only() {
    assert!(has(
        north(-34.0, 10.0, "2027-06-21", None)
            .polaris
            .why_not
            .as_ref(),
        "below the horizon"
    ));
    assert!(has(
        north(2.0, 10.0, "2027-06-21", None)
            .polaris
            .why_not
            .as_ref(),
        "equator"
    ));
    assert!(has(
        north(66.0, 10.0, "2027-06-21", None)
            .polaris
            .why_not
            .as_ref(),
        "dark enough"
    ));
    let polaris = north(52.0, 10.0, "2027-12-21", Some(1.0)).polaris;
    assert!(
        polaris.hours.len() > 10
            && polaris
                .hours
                .iter()
                .all(|at| at.bearing_deg.abs() <= polaris.most_aside_deg.unwrap() + 1e-6)
    );
    assert!((polaris.most_aside_deg.unwrap() - 1.01).abs() < 0.02);
    assert_eq!(polaris.in_the_north.len(), 1);
}

#[test]
fn days_before_1950_and_after_2100_are_refused() {
    assert!(has(
        north(52.0, 10.0, "2101-06-21", None).noon.why_not.as_ref(),
        "1950 to 2100"
    ));
    assert!(has(
        north(52.0, 10.0, "1930-06-21", None)
            .polaris
            .why_not
            .as_ref(),
        "1950 to 2100"
    ));
}
