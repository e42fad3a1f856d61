//! ISO 898-1:2013 and ISO 3506-1:2009: loads of studs as the standards' tables print them, met in reproductions.
//! ISO 10684 and a European technical assessment of threaded rods (its table of steel resistances) stand beside them.

use stillground::rules::en_1992_4_2018::{factors, steel as en};
use stillground::rules::threads::{steel, stress_area, stress_diameter, thread};
use stillground::site_plan::anchors::{Size, StrengthClass};
use stillground::units::{cubic_millimetre, kilonewton, megapascal, square_millimetre};

const SIZES: [Size; 5] = [Size::M10, Size::M12, Size::M16, Size::M20, Size::M24];

/// Minimum ultimate and proof loads, kN, ISO 898-1 Tables 4 and 5, as reproduced.
const LOADS: [(StrengthClass, [f64; 5], [f64; 5]); 3] = [
    (
        StrengthClass::C5_8,
        [30.2, 43.8, 81.6, 127.0, 184.0],
        [22.0, 32.0, 59.7, 93.1, 134.0],
    ),
    (
        StrengthClass::C8_8,
        [46.4, 67.4, 125.0, 203.0, 293.0],
        [33.7, 48.9, 91.0, 147.0, 212.0],
    ),
    (
        StrengthClass::C10_9,
        [60.3, 87.7, 163.0, 255.0, 367.0],
        [48.1, 70.0, 130.0, 203.0, 293.0],
    ),
];

#[test]
fn ultimate_and_proof_loads_of_carbon_steel() {
    for (class, ultimate, proof) in LOADS {
        for (i, &size) in SIZES.iter().enumerate() {
            let (thread, steel) = (thread(size), steel(class, size));
            // The tables round to three figures.
            close(
                &format!("{class:?} {size:?} ultimate"),
                kilonewton::get(thread.stress_area * steel.least_ultimate),
                ultimate[i],
            );
            close(
                &format!("{class:?} {size:?} proof"),
                kilonewton::get(thread.stress_area * steel.proof),
                proof[i],
            );
        }
    }
}

/// 0.2 % stress and strength of A4-70 and A4-80: 450 and 700, 600 and 800 MPa.
#[test]
fn strengths_of_stainless_steel() {
    for (class, yields, breaks) in [
        (StrengthClass::A4_70, 450.0, 700.0),
        (StrengthClass::A4_80, 600.0, 800.0),
    ] {
        let steel = steel(class, Size::M16);
        assert_eq!(
            (
                megapascal::get(steel.proof),
                megapascal::get(steel.least_ultimate)
            ),
            (yields, breaks)
        );
        assert!(steel.stainless);
    }
}

/// ISO 898-1 Table 4, nominal stress areas of coarse threads.
#[test]
fn stress_areas() {
    for (size, printed) in SIZES.into_iter().zip([58.0, 84.3, 157.0, 245.0, 353.0]) {
        let thread = thread(size);
        assert_eq!(square_millimetre::get(thread.stress_area), printed);
        close(
            "by its formula",
            square_millimetre::get(stress_area(&thread)),
            printed,
        );
    }
}

/// A European technical assessment of threaded rods prints N_Rk,s and V_Rk,s in whole kilonewtons, and γ_Ms,N.
#[test]
fn steel_resistances_of_an_assessment() {
    let pulled = [
        (StrengthClass::C5_8, [29.0, 42.0, 78.0, 122.0, 176.0], 1.5),
        (StrengthClass::C8_8, [46.0, 67.0, 125.0, 196.0, 282.0], 1.5),
        (
            StrengthClass::A4_70,
            [41.0, 59.0, 110.0, 171.0, 247.0],
            1.87,
        ),
    ];
    for (class, printed, factor) in pulled {
        for (i, &size) in SIZES.iter().enumerate() {
            let (thread, steel) = (thread(size), steel(class, size));
            within_a_kilonewton(
                kilonewton::get(en::tension(thread.stress_area, steel.ultimate)),
                printed[i],
            );
            let found = factors::steel_tension_factor(steel.ultimate, steel.yield_strength);
            assert!((found - factor).abs() < 0.005, "{class:?}: {found}");
        }
    }
    for (class, printed) in [
        (StrengthClass::C5_8, [15.0, 21.0, 39.0, 61.0, 88.0]),
        (StrengthClass::C8_8, [23.0, 34.0, 63.0, 98.0, 141.0]),
    ] {
        for (i, &size) in SIZES.iter().enumerate() {
            let (thread, steel) = (thread(size), steel(class, size));
            within_a_kilonewton(
                kilonewton::get(en::shear_single(thread.stress_area, steel.ultimate)),
                printed[i],
            );
        }
    }
}

/// Round bars of the stress areas by sectionproperties (`reference/stud_sections.py`), polygons of 256 sides.
#[test]
fn section_moduli_by_sectionproperties() {
    let reference: serde_json::Value =
        serde_json::from_str(include_str!("reference/stud_sections.json")).unwrap();
    let rows = reference["rows"].as_array().unwrap();
    assert_eq!(rows.len(), 5);
    for row in rows {
        let size = Size::from_key(row["size"].as_str().unwrap()).unwrap();
        let found = cubic_millimetre::get(en::section_modulus(stress_diameter(&thread(size))));
        close("W_el", found, row["elastic_modulus_mm3"].as_f64().unwrap());
    }
}

fn within_a_kilonewton(found: f64, printed: f64) {
    assert!((found - printed).abs() < 1.0, "{found} against {printed}");
}

fn close(what: &str, found: f64, printed: f64) {
    stillground_tests::close(what, found, printed, 0.005);
}
