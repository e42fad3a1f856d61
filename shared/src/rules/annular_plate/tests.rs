//! Plate and wall against known cases.

use super::*;
use crate::units::{kilonewton, megapascal, millimetre};

fn usual(thickness: f64) -> Plate {
    Plate {
        wall_radius: millimetre::new(106.4),
        wall: millimetre::new(6.3),
        stud_radius: millimetre::new(160.0),
        outer_radius: millimetre::new(200.0),
        thickness: millimetre::new(thickness),
        modulus: megapascal::new(210_000.0),
    }
}

/// Thin-plate finite elements of the same round plate (see the tests beside) give 197 kN/mm for 20 mm.
#[test]
fn a_usual_plate_is_as_stiff_as_finite_elements_say() {
    let found = newton_per_metre::get(stiffness_per_stud(&usual(20.0), 4).unwrap()) / 1e6;
    assert!((found - 197.0).abs() < 4.0, "{found}");
    let dished = dish(&usual(20.0), 4, kilonewton::new(25.0)).unwrap();
    assert!((megapascal::get(dished.wall_stress) * 6.3 * 6.3 / 6.0 - 1113.0).abs() < 2.0);
}

/// The section passes through the wall unmoved and through the studs where the dish has them.
#[test]
fn a_section_of_the_dish_agrees_with_it() {
    let (plate, pull) = (usual(20.0), kilonewton::new(25.0));
    let dished = dish(&plate, 4, pull).unwrap();
    let section = dish_section(&plate, 4, pull, 1001);
    let near = |radius: f64| {
        section.iter().min_by(|a, b| {
            let off = |point: &(Length, Length)| (millimetre::get(point.0) - radius).abs();
            off(a).total_cmp(&off(b))
        })
    };
    assert!(millimetre::get(near(106.4).unwrap().1).abs() < 2e-3);
    assert!(
        (millimetre::get(near(160.0).unwrap().1) - millimetre::get(dished.at_studs)).abs() < 1e-3
    );
    assert!(
        section[0].1 * dished.at_studs < metre::new(0.0) * metre::new(1.0),
        "the middle goes the other way"
    );
    let wall = wall_section(&plate, dished.slope_ratio, millimetre::new(200.0), 201);
    assert!((wall[0].2 - 1.0).abs() < 1e-12 && wall[200].2.abs() < 1e-4);
    let slope = metre::get(wall[1].1) / metre::get(wall[1].0);
    assert!((slope - dished.slope_ratio).abs() < 0.06 * dished.slope_ratio.abs());
}

#[test]
fn a_thick_plate_is_stiff_and_a_plate_without_rim_has_no_answer() {
    let thin = stiffness_per_stud(&usual(10.0), 4).unwrap();
    let thick = stiffness_per_stud(&usual(30.0), 4).unwrap();
    assert!(thick > thin * 10.0);
    let mut inside = usual(20.0);
    inside.stud_radius = millimetre::new(100.0);
    assert!(response(&inside, 1).is_none());
}
