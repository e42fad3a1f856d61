//! Worked examples of column bases from the workshop on the design of steel buildings that the European Commission's Joint
//! Research Centre held in Brussels in 2014 (F. Wald's lecture): a plain base plate, and one that takes a moment, by
//! EN 1993-1-8. Their figures were read where engineers' notes quote the lecture slide by slide.

use stillground::rules::en_1993_1_8_2005::{base_plate, t_stub};
use stillground::units::{
    Length, kilonewton, megapascal, millimetre, newton_metre_per_radian, square_millimetre,
};
use stillground_tests::close;

fn mm(value: f64) -> Length {
    millimetre::new(value)
}

/// Plate of 18 mm in S235 on C12/15, block 850 by a plate of 340 mm: f_jd 13.3 MPa, c 43.7 mm.
#[test]
fn a_plain_base_plate() {
    let bearing = base_plate::bearing(megapascal::new(12.0), 850.0 / 340.0);
    assert!((megapascal::get(bearing) - 13.3).abs() < 0.05);
    close(
        "c",
        millimetre::get(base_plate::effective_width(
            mm(18.0),
            megapascal::new(235.0),
            bearing,
        )),
        43.7,
        2e-3,
    );
}

/// Plate of 30 mm and 420 mm in S235, bolts M24 of 360 MPa 60 mm outside the column, weld with a throat of 6 mm: F_T,3 183.0 kN
/// for the row, as the lecture prints it. The notes' own sums: m 53.2 mm; half the plate, 210 mm, as effective length, which is
/// less than the patterns; c 54.2 mm under 24 MPa.
#[test]
fn a_base_plate_with_a_moment() {
    let m = t_stub::lever(mm(160.0), mm(200.0), mm(6.0 * std::f64::consts::SQRT_2));
    close("m", millimetre::get(m), 53.2, 1e-3);
    let row = t_stub::two_studs(square_millimetre::new(353.0), megapascal::new(360.0));
    close("F_T,3", kilonewton::get(row), 183.0, 3e-4);
    close(
        "l_eff",
        millimetre::get(t_stub::effective_length(m, mm(50.0), mm(420.0 / 2.0))),
        210.0,
        1e-9,
    );
    let plastic = t_stub::plastic_moment(mm(210.0), mm(30.0), megapascal::new(235.0));
    let plate = t_stub::without_prying(plastic, m);
    assert!(plate > row * 2.0, "the bolts decide, as printed");
    close(
        "c",
        millimetre::get(base_plate::effective_width(
            mm(30.0),
            megapascal::new(235.0),
            megapascal::new(24.0),
        )),
        54.2,
        1e-3,
    );
}

/// Its turning stiffness, S_j,ini 20 799 kN m/rad under 500 kN and 103.1 kN m: L_b 261.5 mm, studs' part 2.70 mm, and the last
/// factor of Table 6.12, e/(e + e₀), which is 1 where hardly any weight stands on the base, as under a pier.
#[test]
fn its_turning_stiffness() {
    let (steel, concrete) = (megapascal::new(210_000.0), megapascal::new(27_000.0));
    let m = t_stub::lever(mm(160.0), mm(200.0), mm(6.0 * std::f64::consts::SQRT_2));
    let studs = base_plate::stud_part(square_millimetre::new(353.0), mm(261.5), false);
    close("k_b", millimetre::get(studs), 2.70, 2e-3);
    let plate = base_plate::plate_part(mm(210.0), mm(30.0), m, false);
    let pulled = 1.0 / (1.0 / millimetre::get(studs) + 1.0 / millimetre::get(plate));
    let pressed = base_plate::concrete_part(concrete, steel, mm(15.0 + 2.5 * 30.0), mm(200.0));
    let whole = base_plate::joint(steel, mm(160.0 + 92.5), mm(pulled), pressed);
    let shift =
        (millimetre::get(pressed) * 92.5 - pulled * 160.0) / (millimetre::get(pressed) + pulled);
    let eccentricity = 103.1e3 / 500.0;
    let found =
        newton_metre_per_radian::get(whole) / 1000.0 * eccentricity / (eccentricity + shift);
    close("S_j,ini, kN m/rad", found, 20_799.0, 2e-3);
}
