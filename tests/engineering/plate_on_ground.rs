//! A plate on an elastic half-space under a point load (Hogg 1938), by quadrature; script and values in `reference/plate.*`.

use serde::Deserialize;
use stillground::rules::hogg_1938::plate::{
    QUARTILE_RADII, characteristic_length, slab_stiffness_n_m,
};
use stillground::units::{megapascal, metre, millimetre};
use stillground_tests::close;

#[derive(Deserialize)]
struct Reference {
    quartile_radii: [f64; 2],
    central_pressure: f64,
}

fn reference() -> Reference {
    serde_json::from_str(include_str!("reference/plate.json")).unwrap()
}

#[test]
fn a_quarter_and_three_quarters_of_the_load_lie_inside_these_radii() {
    for (found, reference) in QUARTILE_RADII.into_iter().zip(reference().quartile_radii) {
        close("radius", found, reference, 1e-5);
    }
}

#[test]
fn the_quadrature_gives_the_known_pressure_under_the_load() {
    // Textbooks on pavements print 0.192 P/l² at the centre; exactly 1/(3 √3).
    close(
        "pressure",
        reference().central_pressure,
        1.0 / (3.0 * 3f64.sqrt()),
        1e-6,
    );
}

#[test]
fn characteristic_length_in_the_form_with_youngs_modulus() {
    // l³ = 2 D (1 − ν²)/E with E = 2 G (1 + ν).
    let (stiffness, g_mpa, nu) = (
        slab_stiffness_n_m(megapascal::new(30_000.0), millimetre::new(120.0)),
        33.0,
        0.3,
    );
    let young = 2.0 * g_mpa * 1e6 * (1.0 + nu);
    let reference = (2.0 * stiffness * (1.0 - nu * nu) / young).cbrt();
    close(
        "length",
        metre::get(characteristic_length(stiffness, megapascal::new(g_mpa), nu)),
        reference,
        1e-12,
    );
}
