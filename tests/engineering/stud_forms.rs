//! The studs against values worked out apart from the engine (`reference/stud_forms.py`): areas by shapely, T-stubs by limit
//! analysis as a linear program, forces by a plane through the studs, and the codes' formulas written anew.

use serde_json::Value;
use stillground::rules::aci_318_19::edition::Edition;
use stillground::rules::aci_318_19::{breakout, shear};
use stillground::rules::en_1992_4_2018::{bond, cone, edge, steel};
use stillground::rules::en_1993_1_8_2005::t_stub;
use stillground::rules::stud_group;
use stillground::rules::threads::{stress_diameter, thread};
use stillground::site_plan::anchors::Size;
use stillground::stages::anchors::areas::EdgeArea;
use stillground::stages::anchors::layout::{Concrete, Group, Stud};
use stillground::units::{
    Length, kilonewton, megapascal, millimetre, newton, newton_metre, square_millimetre,
};
use stillground_tests::close;

fn reference() -> Value {
    let found: Value = serde_json::from_str(include_str!("reference/stud_forms.json")).unwrap();
    let counts = ["areas", "t_stubs", "forces"].map(|name| found[name].as_array().unwrap().len());
    assert_eq!(counts, [4, 4, 3]);
    found
}

fn mm(value: f64) -> Length {
    millimetre::new(value)
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn areas_of_cones_by_shapely() {
    for row in reference()["areas"].as_array().unwrap() {
        let studs = row["studs"]
            .as_array()
            .unwrap()
            .iter()
            .map(|at| Stud {
                x: mm(number(&at[0])),
                y: mm(number(&at[1])),
            })
            .collect();
        let half = [mm(number(&row["half"][0])), mm(number(&row["half"][1]))];
        let group = Group {
            studs,
            concrete: Concrete {
                half,
                thickness: mm(1000.0),
            },
        };
        close(
            "area",
            square_millimetre::get(group.area(mm(number(&row["reach"])))),
            number(&row["area"]),
            1e-9,
        );
    }
}

/// One stud is half of a T-stub: the linear program knows neither modes nor factors of two.
#[test]
fn t_stubs_by_limit_analysis() {
    for row in reference()["t_stubs"].as_array().unwrap() {
        let (m, n) = (mm(number(&row["m"])), mm(number(&row["n"])));
        let plastic = newton_metre::new(number(&row["plastic_n_mm"]) / 1000.0);
        let stud = newton::new(number(&row["stud_n"]));
        close(
            "prying",
            newton::get(t_stub::half_prying(plastic, m, n, stud * 2.0)),
            number(&row["prying"]),
            1e-6,
        );
        let free = t_stub::without_prying(plastic, m) / 2.0;
        let free = if free < stud { free } else { stud };
        close("free", newton::get(free), number(&row["free"]), 1e-6);
    }
}

#[test]
fn forces_of_a_group_under_moment_by_a_plane() {
    for row in reference()["forces"].as_array().unwrap() {
        let (count, radius, direction) = (
            number(&row["count"]) as usize,
            number(&row["radius"]),
            number(&row["direction_deg"]).to_radians(),
        );
        let first = if count == 4 { 45f64 } else { 0.0 }.to_radians();
        let angle = |i: usize| first + std::f64::consts::TAU * i as f64 / count as f64;
        let levers: Vec<Length> = (0..count)
            .map(|i| mm(radius * (angle(i) - direction).cos()))
            .collect();
        let found = stud_group::stud_forces(
            newton::new(number(&row["axial"])),
            newton_metre::new(number(&row["moment"]) / 1000.0),
            &levers,
        );
        for (force, expected) in found.iter().zip(row["pulls"].as_array().unwrap()) {
            assert!(
                (newton::get(*force) - number(expected)).abs() < 1e-6,
                "{count}"
            );
        }
    }
}

/// M16, 125 mm, C25, a pair 120 mm from an edge and 150 mm apart, and one over a gap of 25 mm under a plate of 20 mm.
#[test]
fn resistances_by_both_codes_written_anew() {
    let reference = reference();
    let expect =
        |name: &str, found: f64| close(name, found, number(&reference["resistances"][name]), 1e-4);
    let (d, depth, strength, c1) = (mm(16.0), mm(125.0), megapascal::new(25.0), mm(120.0));
    let studs = vec![
        Stud {
            x: mm(880.0),
            y: mm(-75.0),
        },
        Stud {
            x: mm(880.0),
            y: mm(75.0),
        },
    ];
    let pair = Group {
        studs,
        concrete: Concrete {
            half: [mm(1000.0); 2],
            thickness: mm(1000.0),
        },
    };
    let ratio = (pair.area(depth * 1.5) / breakout::single_area(depth)).value;
    let one = cone::single(7.7, strength, depth);
    expect("en_cone_single_kn", kilonewton::get(one));
    expect(
        "en_cone_pair_kn",
        kilonewton::get(one) * ratio * cone::edge_factor(c1, depth * 1.5),
    );
    expect(
        "en_bond_single_kn",
        kilonewton::get(bond::single(1.0, megapascal::new(7.0), d, depth)),
    );
    expect(
        "en_spacing_mm",
        millimetre::get(bond::characteristic_spacing(
            d,
            1.0,
            megapascal::new(10.0),
            depth,
        )),
    );
    let area = EdgeArea::of(&pair, 0);
    let edged = edge::single(
        1.7,
        d,
        edge::bearing_length(depth, d),
        strength,
        area.counted,
    ) * area.ratio();
    expect("en_edge_pair_kn", kilonewton::get(edged));
    expect(
        "en_edge_pair_eccentric_kn",
        kilonewton::get(edged) * edge::eccentricity_factor(mm(60.0), c1),
    );
    let american = breakout::basic(Edition::Si, 7.0, strength, depth);
    expect("aci_breakout_single_kn", kilonewton::get(american));
    expect(
        "aci_breakout_pair_kn",
        kilonewton::get(american) * ratio * breakout::edge_factor(c1, depth),
    );
    expect(
        "aci_edge_pair_kn",
        kilonewton::get(shear::basic(Edition::Si, d, depth, strength, area.counted)) * area.ratio(),
    );
    close(
        "ψ_ec,V of both codes",
        shear::eccentricity_factor(mm(60.0), c1),
        edge::eccentricity_factor(mm(60.0), c1),
        1e-12,
    );
    let bending = steel::bending(
        steel::section_modulus(stress_diameter(&thread(Size::M16))),
        megapascal::new(800.0),
    );
    let left = steel::bending_with_tension(bending, kilonewton::new(20.0), kilonewton::new(83.73));
    expect(
        "lever_arm_kn",
        kilonewton::get(steel::shear_with_lever(
            left,
            steel::lever_arm(d, mm(25.0), mm(20.0), false),
            2.0,
        )),
    );
}

/// M16, 160 mm deep with 7 MPa: four at 120 mm, 120 mm from both edges of a corner, pulled in the middle and 50 mm beside it.
#[test]
fn a_bonded_group_in_a_corner() {
    let reference = reference();
    let expect =
        |name: &str, found: f64| close(name, found, number(&reference["resistances"][name]), 1e-4);
    let (d, depth, tau) = (mm(16.0), mm(160.0), megapascal::new(7.0));
    let studs = [(1.0, 1.0), (2.0, 1.0), (1.0, 2.0), (2.0, 2.0)].map(|(i, j)| Stud {
        x: mm(2000.0 - 120.0 * i),
        y: mm(2000.0 - 120.0 * j),
    });
    let group = Group {
        studs: studs.to_vec(),
        concrete: Concrete {
            half: [mm(2000.0); 2],
            thickness: mm(600.0),
        },
    };
    let spacing = bond::characteristic_spacing(d, 1.0, tau, depth);
    let ratio = (group.area(spacing / 2.0) / (spacing * spacing)).value;
    let close_factor = bond::close_group_factor(
        4,
        tau,
        bond::concrete_bond(true, d, depth, megapascal::new(25.0)),
    );
    let grouped = bond::group_factor(close_factor, mm(120.0), spacing);
    let edge = cone::edge_factor(group.nearest_edge(), spacing / 2.0);
    let whole = kilonewton::get(bond::single(1.0, tau, d, depth)) * ratio * grouped * edge;
    expect("en_bond_corner_kn", whole);
    expect(
        "en_bond_corner_eccentric_kn",
        whole * cone::eccentricity_factor(mm(50.0), spacing),
    );
}
