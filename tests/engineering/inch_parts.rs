//! Inch parts against published tables, and chosen parts against the catalogue.

use stillground::brief::resolve;
use stillground::figure::Units;
use stillground::rules::aci_318_19::{bond, breakout, steel};
use stillground::rules::en_10210_2_2006::section;
use stillground::rules::threads;
use stillground::rules::tubes::{self, Family};
use stillground::site_plan::SitePlan;
use stillground::site_plan::anchors::{Size, StrengthClass};
use stillground::stock::Stock;
use stillground::units::{
    kilogram_per_metre, kilonewton, megapascal, millimetre, millimetre_to_the_fourth,
};

/// A pound a foot, kg/m.
const LB_FT: f64 = 0.453_592_37 / 0.3048;

/// Plain-end weights of ASME B36.10M and ASTM A53 Table X2.2, lb/ft (from memory): NPS 3 7.58, 4 10.80, 5 14.63, 6 18.99,
/// 8 28.58, 10 40.52, 12 STD 49.61, 16 STD 62.64. Their formula is 10.69 (D − t) t with D and t in inches.
#[test]
fn pipe_weighs_what_the_table_says() {
    let published = [
        ("NPS 3 Sch 40", 3.5_f64, 0.216_f64, 7.58_f64),
        ("NPS 4 Sch 40", 4.5, 0.237, 10.80),
        ("NPS 5 Sch 40", 5.563, 0.258, 14.63),
        ("NPS 6 Sch 40", 6.625, 0.280, 18.99),
        ("NPS 8 Sch 40", 8.625, 0.322, 28.58),
        ("NPS 10 Sch 40", 10.75, 0.365, 40.52),
        ("NPS 12 STD", 12.75, 0.375, 49.61),
        ("NPS 16 STD", 16.0, 0.375, 62.64),
    ];
    for (name, d, t, weight) in published {
        let row = tubes::by_name(name).unwrap();
        let ours = kilogram_per_metre::get(section::mass_per_length(row.outside(), row.wall()));
        let by_formula = 10.69 * (d - t) * t;
        assert!(
            (by_formula - weight).abs() < 0.005 * weight,
            "{name}: {by_formula}"
        );
        assert!(
            (ours / LB_FT - weight).abs() < 0.005 * weight,
            "{name}: {} against {weight}",
            ours / LB_FT
        );
    }
}

/// Second moments of area of standard pipe, AISC Manual Table 1-14 (from memory): 4 STD 7.23, 6 STD 28.1, 8 STD 72.5,
/// 10 STD 161, 12 STD 279 in⁴. The first two there are of the full section too; the manual's design wall of 0.93 applies to
/// the later editions' table, so each is held against the closed form of the nominal section as well.
#[test]
fn pipe_is_as_stiff_as_the_closed_form_of_its_nominal_section() {
    for (name, d, t, nominal) in [
        ("NPS 4 Sch 40", 4.5f64, 0.237, 7.23),
        ("NPS 6 Sch 40", 6.625, 0.280, 28.1),
        ("NPS 8 Sch 40", 8.625, 0.322, 72.5),
        ("NPS 10 Sch 40", 10.75, 0.365, 161.0),
        ("NPS 12 STD", 12.75, 0.375, 279.0),
    ] {
        let row = tubes::by_name(name).unwrap();
        let ours = millimetre_to_the_fourth::get(section::second_moment(row.outside(), row.wall()))
            / 25.4f64.powi(4);
        let closed = std::f64::consts::PI / 64.0 * (d.powi(4) - (d - 2.0 * t).powi(4));
        assert!(
            (closed - nominal).abs() < 0.01 * nominal,
            "{name}: {closed}"
        );
        assert!(
            (ours - closed).abs() < 0.005 * closed,
            "{name}: {ours} against {closed}"
        );
    }
}

/// Every row of pipe is named in inches that are its millimetres to what ASME B36.10M rounds them by.
#[test]
fn inches_and_millimetres_of_a_row_are_one_size() {
    let mut looked_at = 0;
    for tube in tubes::all().filter(|tube| tube.family == Family::American) {
        let (across, thick) = tube.inches.unwrap();
        let inches: f64 = across
            .split(' ')
            .map(|part| match part.split_once('/') {
                Some((above, below)) => {
                    above.parse::<f64>().unwrap() / below.parse::<f64>().unwrap()
                }
                None => part.parse().unwrap(),
            })
            .sum();
        assert!(
            (inches * 25.4 - tube.outside_mm).abs() < 0.45,
            "{}",
            tube.name
        );
        let wall: f64 = thick.parse().unwrap();
        assert!((wall * 25.4 - tube.wall_mm).abs() < 0.02, "{}", tube.name);
        looked_at += 1;
    }
    assert_eq!(looked_at, 32);
}

/// Worked by hand in pounds and inches, and so computed apart: a rod 5/8-11 of F1554 grade 36, 5 in deep in cracked concrete of
/// 4000 psi, bond 1000 psi. N_sa = 0.226 · 58 000 = 13 108 lb; N_b = 17 √4000 · 5^1.5 = 12 021 lb (17.6.2.2.1);
/// N_ba = 1000 · π · 0.625 · 5 = 9817 lb (17.6.5.2.1). The SI form of the code (7 √f'c for 17) is 0.8 % lower than 17 in
/// inches, so that breakout agrees to 1 %.
#[test]
fn an_inch_rod_by_aci_in_pounds_and_inches() {
    const LBF_KN: f64 = 4.448_221_615_260_5e-3;
    const PSI_MPA: f64 = 0.006_894_757;
    let thread = threads::thread(Size::Unc5_8);
    let rod = threads::steel(StrengthClass::F1554_36, Size::Unc5_8);
    let counts = steel::ultimate_that_counts(rod.ultimate, rod.yield_strength);
    let in_steel = kilonewton::get(steel::tension(thread.stress_area, counts)) / LBF_KN;
    assert!((in_steel - 13_108.0).abs() < 0.001 * 13_108.0, "{in_steel}");
    let depth = millimetre::new(5.0 * 25.4);
    let breakout = kilonewton::get(breakout::basic(
        breakout::POST_INSTALLED_FACTOR,
        megapascal::new(4000.0 * PSI_MPA),
        depth,
    )) / LBF_KN;
    assert!((breakout - 12_021.0).abs() < 0.01 * 12_021.0, "{breakout}");
    let bond = kilonewton::get(bond::basic(
        megapascal::new(1000.0 * PSI_MPA),
        thread.diameter,
        depth,
    )) / LBF_KN;
    assert!((bond - 9817.0).abs() < 0.001 * 9817.0, "{bond}");
}

/// Units change words, stock changes parts, and neither changes the other.
#[test]
fn stock_units_and_code_are_three_answers() {
    let mut plan = SitePlan::unknown();
    let metric = resolve(&plan).unwrap();
    assert_eq!(metric.stock.value, Stock::Metric);
    plan.units = Some(Units::Imperial);
    assert_eq!(resolve(&plan).unwrap().stock.value, Stock::Inch);
    plan.stock = Some(Stock::Metric);
    let read_in_feet = resolve(&plan).unwrap();
    assert_eq!(read_in_feet.anchors.size.value, Size::M16);
    assert_eq!(
        read_in_feet.pier.outside_diameter.value,
        metric.pier.outside_diameter.value
    );
    plan.units = None;
    plan.stock = Some(Stock::Inch);
    let inch = resolve(&plan).unwrap();
    assert_eq!(inch.anchors.size.value, Size::Unc5_8);
    assert_eq!(inch.units, Units::Metric);
}
