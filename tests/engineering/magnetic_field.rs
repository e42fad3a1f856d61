//! The World Magnetic Model 2025 against the test values published with it and against two open libraries.
//!
//! Test values: NOAA NCEI and British Geological Survey, `WMM2025_TEST_VALUES.txt` (report, table 6) and
//! `WMM2025_TestValues.txt`, of which ten rows are quoted here. Script and values of the libraries stand in
//! `reference/magnetic_field.*`.

use serde::Deserialize;
use stillground::rules::world_magnetic_model_2025::field;

/// Year, height in km, latitude, longitude, declination: the twelve rows of the report's table 6.
const TABLE_6: [(f64, f64, f64, f64, f64); 12] = [
    (2025.0, 0.0, 80.0, 0.0, 1.28),
    (2025.0, 0.0, 0.0, 120.0, -0.16),
    (2025.0, 0.0, -80.0, -120.0, 68.78),
    (2025.0, 100.0, 80.0, 0.0, 0.85),
    (2025.0, 100.0, 0.0, 120.0, -0.15),
    (2025.0, 100.0, -80.0, -120.0, 68.21),
    (2027.5, 0.0, 80.0, 0.0, 2.59),
    (2027.5, 0.0, 0.0, 120.0, -0.24),
    (2027.5, 0.0, -80.0, -120.0, 68.49),
    (2027.5, 100.0, 80.0, 0.0, 2.16),
    (2027.5, 100.0, 0.0, 120.0, -0.23),
    (2027.5, 100.0, -80.0, -120.0, 67.93),
];

/// Year, height in km, latitude, longitude, declination, inclination, X, Y, Z.
const PRECISE: [[f64; 9]; 10] = [
    [
        2025.0,
        28.0,
        89.0,
        -121.0,
        -99.77,
        88.47,
        -255.388_723,
        -1_482.460_628,
        56_194.288_771,
    ],
    [
        2025.0,
        65.0,
        43.0,
        93.0,
        0.50,
        64.10,
        24_299.852_822,
        210.517_066,
        50_037.923_998,
    ],
    [
        2025.0,
        51.0,
        -33.0,
        109.0,
        -5.49,
        -67.50,
        21_737.778_822,
        -2_090.274_098,
        -52_710.003_92,
    ],
    [
        2025.5,
        6.0,
        -36.0,
        -137.0,
        20.28,
        -52.11,
        23_781.930_678,
        8_786.698_927,
        -32_577.518_648,
    ],
    [
        2025.5,
        8.0,
        -66.0,
        17.0,
        -33.14,
        -59.55,
        15_201.438_652,
        -9_925.501_123,
        -30_881.123_197,
    ],
    [
        2026.0,
        74.0,
        -57.0,
        3.0,
        -22.51,
        -58.65,
        13_268.119_649,
        -5_498.179_626,
        -23_576.062_921,
    ],
    [
        2026.0,
        62.0,
        -14.0,
        99.0,
        -1.43,
        -44.70,
        33_437.828_63,
        -835.919_473,
        -33_100.922_253,
    ],
    [
        2026.5,
        14.0,
        0.0,
        80.0,
        -3.10,
        -17.15,
        39_431.415_992,
        -2_133.456_168,
        -12_188.838_466,
    ],
    [
        2027.0,
        37.0,
        -66.0,
        -5.0,
        -17.22,
        -59.04,
        16_390.771_268,
        -5_079.626_554,
        -28_608.243_575,
    ],
    [
        2027.5,
        73.0,
        -72.0,
        95.0,
        -102.64,
        -76.49,
        -2_912.418_045,
        -12_984.118_939,
        -55_399.217_725,
    ],
];

/// Half of the last digit that is printed.
const HUNDREDTH_DEG: f64 = 0.005_001;

#[test]
fn the_twelve_published_declinations_come_out() {
    for (year, height_km, latitude, longitude, declination) in TABLE_6 {
        let found = field(latitude, longitude, 1000.0 * height_km, year)
            .unwrap()
            .declination_deg();
        assert!(
            (found - declination).abs() <= HUNDREDTH_DEG,
            "{latitude} {longitude} {year}: {found} against {declination}"
        );
    }
}

#[test]
fn ten_rows_of_the_precise_test_values_come_out() {
    for [
        year,
        height_km,
        latitude,
        longitude,
        declination,
        inclination,
        north,
        east,
        down,
    ] in PRECISE
    {
        let found = field(latitude, longitude, 1000.0 * height_km, year).unwrap();
        assert!(
            (found.declination_deg() - declination).abs() <= HUNDREDTH_DEG,
            "{latitude} {longitude}"
        );
        assert!(
            (found.inclination_deg() - inclination).abs() <= HUNDREDTH_DEG,
            "{latitude} {longitude}"
        );
        // The file's own X carries a residue of up to 0.0007 nT; Y and Z are printed to a millionth.
        for (name, found, printed) in [
            ("X", found.north_nt, north),
            ("Y", found.east_nt, east),
            ("Z", found.down_nt, down),
        ] {
            assert!(
                (found - printed).abs() < 0.001,
                "{name} at {latitude} {longitude}: {found} against {printed}"
            );
        }
    }
}

#[derive(Deserialize)]
struct Reference {
    places: Vec<Place>,
}

#[derive(Deserialize)]
struct Place {
    latitude_deg: f64,
    longitude_deg: f64,
    height_m: f64,
    year: f64,
    north_nt: f64,
    east_nt: f64,
    down_nt: f64,
    declination_deg: f64,
    port_declination_deg: f64,
}

#[test]
fn two_open_libraries_agree_at_sixty_places() {
    let reference: Reference =
        serde_json::from_str(include_str!("reference/magnetic_field.json")).unwrap();
    assert_eq!(reference.places.len(), 60);
    for place in reference.places {
        let found = field(
            place.latitude_deg,
            place.longitude_deg,
            place.height_m,
            place.year,
        )
        .unwrap();
        for (found, other) in [
            (found.north_nt, place.north_nt),
            (found.east_nt, place.east_nt),
            (found.down_nt, place.down_nt),
        ] {
            assert!(
                (found - other).abs() < 0.01,
                "{} {}: {found} against {other}",
                place.latitude_deg,
                place.longitude_deg
            );
        }
        for other in [place.declination_deg, place.port_declination_deg] {
            assert!(
                (found.declination_deg() - other).abs() < 1e-4,
                "{} {}",
                place.latitude_deg,
                place.longitude_deg
            );
        }
    }
}
