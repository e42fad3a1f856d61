//! Groups of inch rods by ACI 318-19 in the inches and pounds of its own edition, against `reference/inch_aci.py`, which shares nothing
//! with the engine.

use serde_json::Value;
use stillground::rules::aci_318_19::edition::Edition;
use stillground::rules::aci_318_19::{bond, breakout, shear, steel};
use stillground::rules::threads;
use stillground::site_plan::anchors::Size;
use stillground::stages::anchors::layout::{Concrete, Group, Stud};
use stillground::units::{Area, Force, Length, millimetre, newton, square_millimetre};
use stillground_tests::close;

const LBF: f64 = 4.448_221_615_260_5;

fn inch(value: f64) -> Length {
    millimetre::new(25.4 * value)
}

fn inches(length: Length) -> f64 {
    millimetre::get(length) / 25.4
}

fn pounds(force: Force) -> f64 {
    newton::get(force) / LBF
}

fn square_inches(area: Area) -> f64 {
    square_millimetre::get(area) / 645.16
}

fn size(diameter: f64) -> Size {
    match diameter {
        0.5 => Size::Unc1_2,
        0.625 => Size::Unc5_8,
        _ => Size::Unc3_4,
    }
}

fn group(case: &Value) -> Group {
    let at = |x: f64, y: f64| {
        let corner = case["circle"].as_f64().unwrap() / 2.0 * 0.5f64.sqrt();
        Stud {
            x: inch(corner * x),
            y: inch(corner * y),
        }
    };
    let half = [0, 1].map(|i| inch(case["side"][i].as_f64().unwrap() / 2.0));
    Group {
        studs: vec![at(1.0, 1.0), at(-1.0, 1.0), at(-1.0, -1.0), at(1.0, -1.0)],
        concrete: Concrete {
            half,
            thickness: inch(case["thick"].as_f64().unwrap()),
        },
    }
}

#[test]
fn inch_rods_by_the_inch_edition() {
    const E: Edition = Edition::Inch;
    let cases: Value = serde_json::from_str(include_str!("reference/inch_aci.json")).unwrap();
    let cases = cases.as_array().unwrap();
    assert_eq!(cases.len(), 3);
    for case in cases {
        let name = case["name"].as_str().unwrap();
        let of = |key: &str| case[key].as_f64().unwrap();
        let near = |key: &str, found: f64, by| close(&format!("{name}: {key}"), found, of(key), by);
        let is = |key: &str, found: f64| near(key, found, 1e-3);
        // The standard's table of areas, which the engine reads, rounds to a thousandth of a square inch.
        let steel_is = |key: &str, found: f64| near(key, found, 2e-3);
        let (group, depth, strength) = (group(case), inch(of("hef")), E.stress_of(of("fc")));
        let thread = threads::thread(size(of("d")));
        let counts =
            steel::ultimate_that_counts(E, E.stress_of(of("futa")), E.stress_of(of("fya")));
        steel_is("a_se", square_inches(thread.stress_area));
        steel_is("n_sa", pounds(steel::tension(thread.stress_area, counts)));
        steel_is(
            "v_sa",
            pounds(steel::shear(thread.stress_area, counts, false)),
        );
        let counted = group.narrow(depth * 1.5).map_or(depth, |edge| {
            breakout::narrow_embedment(depth, edge, group.largest_spacing())
        });
        is("h_ef_counted", inches(counted));
        is("a_nc", square_inches(group.area(counted * 1.5)));
        is("a_nco", square_inches(breakout::single_area(counted)));
        let basic = breakout::basic(E, breakout::post_installed_factor(E), strength, counted);
        is("n_b", pounds(basic));
        let edged = breakout::edge_factor(group.nearest_edge(), counted);
        is("psi_ed", edged);
        let area = (group.area(counted * 1.5) / breakout::single_area(counted)).value;
        let broken = basic * (area * edged);
        is("n_cbg", pounds(broken));
        let reach = bond::reach(E, thread.diameter, E.stress_of(of("tau_u")));
        is("c_na", inches(reach));
        is("a_na", square_inches(group.area(reach)));
        let basic = bond::basic(E.stress_of(of("tau")), thread.diameter, depth);
        is("n_ba", pounds(basic));
        let edged = bond::edge_factor(group.nearest_edge(), reach);
        let bonded = basic * ((group.area(reach) / bond::single_area(reach)).value * edged);
        is("n_ag", pounds(bonded));
        let least = if broken < bonded { broken } else { bonded };
        is("v_cpg", pounds(least * shear::pry_out_factor(E, depth)));
        for (side, expected) in case["v_b"].as_array().unwrap().iter().enumerate() {
            let corner = of("circle") / 2.0 * 0.5f64.sqrt();
            let edge = inch(case["side"][side].as_f64().unwrap() / 2.0 - corner);
            let found = pounds(shear::basic(E, thread.diameter, depth, strength, edge));
            close(
                &format!("{name}: V_b {side}"),
                found,
                expected.as_f64().unwrap(),
                1e-3,
            );
        }
    }
}
