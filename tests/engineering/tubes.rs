//! Properties of tubes against the tables of EN 10210-2:2006 (quoted second-hand from steel makers' tables) and against
//! `sectionproperties` 3.10, a finite-element library (`reference/tube_sections.py`).

use stillground::rules::en_10210_2_2006::section;
use stillground::rules::mechanics::cantilever;
use stillground::rules::tubes;
use stillground::units::{
    cubic_millimetre, kilogram_per_metre, millimetre, millimetre_to_the_fourth, square_millimetre,
};
use stillground_tests::close;

/// EN 10210-2, Table B.3: D, T, M kg/m, A cm², I cm⁴, W_el cm³, W_pl cm³.
const TABLE: [[f64; 7]; 5] = [
    [139.7, 5.0, 16.6, 21.2, 481.0, 68.8, 90.8],
    [168.3, 6.3, 25.2, 32.1, 1053.0, 125.0, 165.0],
    [219.1, 6.3, 33.1, 42.1, 2386.0, 218.0, 285.0],
    [273.0, 8.0, 52.3, 66.6, 5852.0, 429.0, 562.0],
    [406.4, 10.0, 97.8, 125.0, 24_476.0, 1205.0, 1572.0],
];

#[test]
fn five_tubes_have_their_tabulated_properties() {
    for [d, t, mass, area, inertia, elastic, _plastic] in TABLE {
        let (d, t) = (millimetre::new(d), millimetre::new(t));
        close(
            "M",
            kilogram_per_metre::get(section::mass_per_length(d, t)),
            mass,
            0.005,
        );
        close(
            "A",
            square_millimetre::get(section::area(d, t)),
            area * 1e2,
            0.005,
        );
        close(
            "I",
            millimetre_to_the_fourth::get(section::second_moment(d, t)),
            inertia * 1e4,
            0.002,
        );
        close(
            "W_el",
            cubic_millimetre::get(section::elastic_modulus(d, t)),
            elastic * 1e3,
            0.003,
        );
    }
}

#[test]
fn a_finite_element_library_finds_the_same_sections() {
    let reference: serde_json::Value =
        serde_json::from_str(include_str!("reference/tube_sections.json")).unwrap();
    let rows = reference.as_array().unwrap();
    assert_eq!(rows.len(), 3);
    for row in rows {
        let number = |name: &str| row[name].as_f64().unwrap();
        let (d, t) = (millimetre::new(number("d")), millimetre::new(number("t")));
        close(
            "A",
            square_millimetre::get(section::area(d, t)),
            number("area"),
            1e-3,
        );
        close(
            "I",
            millimetre_to_the_fourth::get(section::second_moment(d, t)),
            number("inertia"),
            1e-3,
        );
        close(
            "W",
            cubic_millimetre::get(section::elastic_modulus(d, t)),
            number("modulus"),
            1e-3,
        );
        // The library's shear area is for a Poisson's ratio of nought.
        let bore = (number("d") - 2.0 * number("t")) / number("d");
        close(
            "A_s",
            cantilever::shear_factor(bore, 0.0) * number("area"),
            number("shear_area"),
            5e-3,
        );
    }
}

/// ASME B36.10M: 8 inch pipe of schedule 40 is 219.1 by 8.18 mm and weighs 42.55 kg/m.
#[test]
fn american_pipe_has_its_mass() {
    let pipe = tubes::by_name("NPS 8 Sch 40").unwrap();
    close(
        "mass",
        kilogram_per_metre::get(section::mass_per_length(pipe.outside(), pipe.wall())),
        42.55,
        2e-3,
    );
    assert!(tubes::names().count() > 120);
}
