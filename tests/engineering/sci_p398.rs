//! The Steel Construction Institute's P398, "Joints in Steel Construction: Moment-resisting Joints to Eurocode 3" (2013),
//! worked example C.1: T-stubs by EN 1993-1-8 6.2.4, sheets 4 to 7. Its figures were read where an engineer's tests quote them
//! sheet by sheet. And P358, "Simple Joints to Eurocode 3" (2011), example 4: the base of a round column.

use stillground::rules::en_1993_1_8_2005::{base_plate, t_stub};
use stillground::units::{
    Force, Length, Moment, kilonewton, megapascal, millimetre, square_millimetre,
};
use stillground_tests::close;

fn mm(value: f64) -> Length {
    millimetre::new(value)
}

/// Two M24 of 8.8 in the row: ΣF_t,Rd 406 kN.
fn row() -> Force {
    t_stub::two_studs(square_millimetre::new(353.0), megapascal::new(800.0))
}

/// Mode 1 by the table's second method, from that by the first: the washers, of e_w, hold the plate over a width.
fn with_washers(plastic: Moment, m: f64, n: f64) -> f64 {
    let e_w = 39.55 / 4.0;
    let gain = (8.0 * n - 2.0 * e_w) * m / (4.0 * (2.0 * m * n - e_w * (m + n)));
    kilonewton::get(t_stub::mode_1(plastic, mm(m))) * gain
}

/// Sheets 4 and 5, column flange at bolt row 1: m 33.4, e 79.4 mm: round pattern 210, straight 233 mm; 20.5 mm of 265 MPa:
/// F_T,1 898 kN with the washers' second method, F_T,2 398 kN, F_T,3 406 kN.
#[test]
fn example_c_1_column_flange() {
    let (m, e) = (mm(33.4), mm(79.4));
    close(
        "l_eff, round",
        millimetre::get(t_stub::effective_length(m, e, mm(1e4))),
        210.0,
        2e-3,
    );
    close("l_eff, straight", 4.0 * 33.4 + 1.25 * 79.4, 233.0, 2e-3);
    close("F_T,3", kilonewton::get(row()), 406.0, 2e-3);
    let plastic =
        |length: f64| t_stub::plastic_moment(mm(length), mm(20.5), megapascal::new(265.0));
    close(
        "F_T,1",
        with_washers(plastic(210.0), 33.4, 1.25 * 33.4),
        898.0,
        2e-3,
    );
    close(
        "F_T,2",
        kilonewton::get(t_stub::mode_2(plastic(233.0), m, mm(75.0), row())),
        398.0,
        2e-3,
    );
}

/// Sheets 6 and 7, the end plate's overhang: m_x 30.4, e_x 50 mm, plate 250 mm wide: round pattern 191, straight 125 mm, half
/// the plate; 25 mm of 265 MPa: F_T,1 901 kN, F_T,2 377 kN.
#[test]
fn example_c_1_end_plate() {
    let (m, e) = (mm(30.4), mm(50.0));
    close("l_eff, round", std::f64::consts::TAU * 30.4, 191.0, 2e-3);
    close(
        "l_eff, half the plate",
        millimetre::get(t_stub::effective_length(m, e, mm(250.0 / 2.0))),
        125.0,
        1e-9,
    );
    let plastic = t_stub::plastic_moment(mm(125.0), mm(25.0), megapascal::new(265.0));
    close(
        "F_T,1",
        with_washers(plastic, 30.4, 1.25 * 30.4),
        901.0,
        2e-3,
    );
    close(
        "F_T,2",
        kilonewton::get(t_stub::mode_2(plastic, m, e, row())),
        377.0,
        2e-3,
    );
    let half = kilonewton::get(t_stub::half_prying(plastic, m, e, row()));
    close(
        "one stud is half of the least mode",
        half,
        377.0 / 2.0,
        2e-3,
    );
}

/// P358, example 4: a round column of 273 by 10 mm under 1400 kN on C30 with the national α_cc of 0.85: f_jd 17 MPa, c 45 mm
/// and 19.7 mm of 265 MPa, made 20; its table for a wall of 5 mm on that plate says 1376 kN.
#[test]
fn the_base_of_a_round_column() {
    let bearing = base_plate::bearing(megapascal::new(0.85 * 30.0), 1.5);
    close("f_jd", megapascal::get(bearing), 17.0, 1e-9);
    let ring = |wall: f64, c: f64| {
        std::f64::consts::PI * (273.0 - wall) * (wall + 2.0 * c) * 17.0 / 1000.0
    };
    let c = millimetre::get(base_plate::effective_width(
        mm(19.7),
        megapascal::new(265.0),
        bearing,
    ));
    assert!(
        (c - 45.0).abs() < 0.3 && (ring(10.0, c) - 1400.0).abs() < 7.0,
        "{c}"
    );
    let c = millimetre::get(base_plate::effective_width(
        mm(20.0),
        megapascal::new(265.0),
        bearing,
    ));
    close("N_Rd of the table, kN", ring(5.0, c), 1376.0, 1e-3);
}
