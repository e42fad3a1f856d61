//! AISC Design Guide 1, "Base Plate and Anchor Rod Design" (2nd edition, 2006) and "Base Connection Design for Steel
//! Structures" (3rd edition, 2024): its worked examples, in the inches and kips in which they were printed. The examples of
//! chapter 4 were read where engineers copied them out, not in the book itself.

use stillground::rules::aci_318_19::breakout;
use stillground::rules::aci_318_19::edition::Edition;
use stillground::rules::en_1992_4_2018::{cone, steel};
use stillground::rules::stud_group::{self, GroutedPlate};
use stillground::stages::anchors::layout::{Concrete, Group, Stud};
use stillground::units::{
    Area, Force, Length, kilonewton, megapascal, millimetre, newton_metre, square_millimetre,
};
use stillground_tests::close;

/// One kip in kN, one psi in MPa.
const KIP: f64 = 4.448_221_615_260_5;
const PSI: f64 = KIP * 1000.0 / (25.4 * 25.4) / 1000.0;

fn inch(value: f64) -> Length {
    millimetre::new(25.4 * value)
}

fn square_inches(area: Area) -> f64 {
    square_millimetre::get(area) / (25.4 * 25.4)
}

fn kips(force: Force) -> f64 {
    kilonewton::get(force) / KIP
}

/// Four rods at 4 in in the middle of a square block of so many inches.
fn four_in_a_block(side: f64) -> Group {
    let studs = [(2.0, 2.0), (-2.0, 2.0), (-2.0, -2.0), (2.0, -2.0)]
        .map(|(x, y)| Stud {
            x: inch(x),
            y: inch(y),
        })
        .to_vec();
    Group {
        studs,
        concrete: Concrete {
            half: [inch(side / 2.0); 2],
            thickness: inch(60.0),
        },
    }
}

/// Example 4.7-15 of the 3rd edition, by ACI 318-19 17.6.2: four rods at 4 in in a concrete column of 20 in, 8 in from each of
/// its four edges, 4000 psi: h_ef counted 5.33 in, A_Nc 400 and A_Nco 256 in², ψ_ed 1.0, N_b 18.7 kip, N_cbg 29.2 kip.
#[test]
fn a_group_near_four_edges() {
    let group = four_in_a_block(20.0);
    let counted = breakout::narrow_embedment(inch(13.6), inch(8.0), inch(4.0));
    close("h_ef, in", millimetre::get(counted) / 25.4, 5.33, 1e-3);
    let (single, area) = (
        square_inches(breakout::single_area(counted)),
        square_inches(group.area(counted * 1.5)),
    );
    close("A_Nco, in²", single, 256.0, 1e-3);
    close("A_Nc, in²", area, 400.0, 1e-6);
    let edge = breakout::edge_factor(group.nearest_edge(), counted);
    close("ψ_ed,N", edge, 1.0, 1e-9);
    let basic = breakout::basic(Edition::Inch, 24.0, megapascal::new(4000.0 * PSI), counted);
    assert!((kips(basic) - 18.7).abs() < 0.05, "N_b {}", kips(basic));
    let whole = kips(basic) * area / single * edge;
    assert!((whole - 29.2).abs() < 0.05, "N_cbg {whole}");
}

/// The same block by EN 1992-4 7.2.1.4 (8), whose depth, areas and edge factor are of the same form: the printed figures again.
#[test]
fn the_european_cone_counts_the_same_areas() {
    let group = four_in_a_block(20.0);
    let counted = cone::narrow_embedment(inch(13.6), inch(8.0), inch(4.0));
    close("h'_ef, in", millimetre::get(counted) / 25.4, 5.33, 1e-3);
    let reach = cone::characteristic_spacing(counted) / 2.0;
    close("A_c,N, in²", square_inches(group.area(reach)), 400.0, 1e-6);
    close(
        "ψ_s,N",
        cone::edge_factor(group.nearest_edge(), reach),
        1.0,
        1e-9,
    );
}

/// Example 4.7-3 of the 3rd edition: the same four rods 15 in deep in a large footing: A_Nc 2400 and A_Nco 2030 in².
#[test]
fn a_group_far_from_edges() {
    let (group, depth) = (four_in_a_block(200.0), inch(15.0));
    let (single, area) = (
        square_inches(breakout::single_area(depth)),
        square_inches(group.area(depth * 1.5)),
    );
    assert!(
        (single - 2030.0).abs() < 5.1 && (area - 2400.0).abs() < 5.0,
        "{single}, {area}"
    );
}

/// Example 4.11 of the 2nd edition: four rods under 36.8 kip of shear and 69.8 kip of uplift bend between grout and a washer
/// that is welded onto the plate: half the free length of 1.125 in is an arm of 0.563 in, 5.18 kip in a rod. The guide goes on
/// with stresses of its own specification; here the arm, and the shear that the moment gives back, are EN 1992-4's.
#[test]
fn shear_with_a_lever_arm() {
    // The plate of 1 in is the rod's free length; the washer of ¼ in is what holds its head.
    let arm = steel::lever_arm(inch(1.125), inch(1.0), inch(0.25), true);
    close(
        "l_a/α_M, in",
        millimetre::get(arm) / 25.4 / 2.0,
        0.563,
        1e-3,
    );
    let moment = 5.18;
    let shear = steel::shear_with_lever(newton_metre::new(moment * KIP * 25.4), arm, 2.0);
    close("V of a rod, kip", kips(shear), 36.8 / 4.0, 2e-3);
}

/// B.5.2 of the 2nd edition (ASD): plate 14 × 14 in, rods 5.5 in from the middle, 60 kip and 480 kip in, edge pressure
/// 2.04 ksi: 5.27 in press. The rods' area is what leads to that length; equilibrium then gives the pressure.
#[test]
fn a_moment_on_a_group() {
    let (press, turn) = (
        kilonewton::new(60.0 * KIP),
        newton_metre::new(480.0 * KIP * 25.4),
    );
    let with = |area: f64| {
        let levers = vec![inch(5.5), inch(5.5)];
        let plate = GroutedPlate {
            length: inch(14.0),
            width: inch(14.0),
            levers,
            stud_area: square_millimetre::new(area),
            modular_ratio: 9.0,
        };
        stud_group::grouted(&plate, press, turn).unwrap()
    };
    let (mut small, mut large) = (1.0, 1e5);
    for _ in 0..60 {
        let middle = (small + large) / 2.0;
        if millimetre::get(with(middle).pressed) < 5.27 * 25.4 {
            small = middle
        } else {
            large = middle
        }
    }
    let contact = with(large);
    close(
        "pressure, ksi",
        megapascal::get(contact.pressure) / (PSI * 1000.0),
        2.04,
        0.003,
    );
    let pull: f64 = contact.tensions.iter().map(|&tension| kips(tension)).sum();
    close(
        "pull in the rods, kip",
        pull,
        2.04 * 14.0 * 5.27 / 2.0 - 60.0,
        0.02,
    );
}
