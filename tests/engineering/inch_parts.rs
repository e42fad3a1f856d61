//! Inch parts against published tables, and chosen parts against the catalogue.

use stillground::brief::resolve;
use stillground::decided::decide;
use stillground::figure::{Unit, Units};
use stillground::halfspace::NoShelf;
use stillground::record::{Asks, items};
use stillground::rules::aci_318_19::edition::Edition;
use stillground::rules::aci_318_19::{bond, breakout, steel};
use stillground::rules::en_10210_2_2006::section;
use stillground::rules::threads;
use stillground::rules::tubes::{self, Family};
use stillground::site_plan::SitePlan;
use stillground::site_plan::anchors::{Size, StrengthClass};
use stillground::stock::Stock;
use stillground::units::{
    kilogram_per_metre, kilonewton, megapascal, millimetre, millimetre_to_the_fourth, newton_metre,
};
use stillground_tests::example;

/// A pound a foot, kg/m.
const LB_FT: f64 = 0.453_592_37 / 0.3048;

/// Plain-end weights, lb/ft, of two published charts of pipe (second-hand): NPS 3 7.576, 4 10.79, 5 14.62, 6 18.97, 8 28.55,
/// 10 40.48, 12 STD 49.56, 16 STD 62.58. The formula is 10.69 (D − t) t with D and t in inches.
#[test]
fn pipe_weighs_what_the_table_says() {
    let published = [
        ("NPS 3 Sch 40", 3.5_f64, 0.216_f64, 7.576_f64),
        ("NPS 4 Sch 40", 4.5, 0.237, 10.79),
        ("NPS 5 Sch 40", 5.563, 0.258, 14.62),
        ("NPS 6 Sch 40", 6.625, 0.280, 18.97),
        ("NPS 8 Sch 40", 8.625, 0.322, 28.55),
        ("NPS 10 Sch 40", 10.75, 0.365, 40.48),
        ("NPS 12 STD", 12.75, 0.375, 49.56),
        ("NPS 16 STD", 16.0, 0.375, 62.58),
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

/// Second moments of area of standard pipe, in⁴, of two published tables (second-hand): NPS 4 7.233, 6 28.14, 8 72.49,
/// 10 160.7, and 12 3/4 by 0.375 279. They are of the nominal section, so that each is held against its closed form too.
#[test]
fn pipe_is_as_stiff_as_the_closed_form_of_its_nominal_section() {
    for (name, d, t, nominal) in [
        ("NPS 4 Sch 40", 4.5f64, 0.237, 7.233),
        ("NPS 6 Sch 40", 6.625, 0.280, 28.14),
        ("NPS 8 Sch 40", 8.625, 0.322, 72.49),
        ("NPS 10 Sch 40", 10.75, 0.365, 160.7),
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
/// N_ba = 1000 · π · 0.625 · 5 = 9817 lb (17.6.5.2.1).
#[test]
fn an_inch_rod_by_aci_in_pounds_and_inches() {
    const LBF_KN: f64 = 4.448_221_615_260_5e-3;
    const PSI_MPA: f64 = 0.006_894_757;
    let thread = threads::thread(Size::Unc5_8);
    let rod = threads::steel(StrengthClass::F1554_36, Size::Unc5_8);
    let counts = steel::ultimate_that_counts(Edition::Inch, rod.ultimate, rod.yield_strength);
    let in_steel = kilonewton::get(steel::tension(thread.stress_area, counts)) / LBF_KN;
    assert!((in_steel - 13_108.0).abs() < 0.001 * 13_108.0, "{in_steel}");
    let depth = millimetre::new(5.0 * 25.4);
    let breakout = kilonewton::get(breakout::basic(
        Edition::Inch,
        breakout::post_installed_factor(Edition::Inch),
        megapascal::new(4000.0 * PSI_MPA),
        depth,
    )) / LBF_KN;
    assert!((breakout - 12_021.0).abs() < 1.0, "{breakout}");
    let bond = kilonewton::get(bond::basic(
        megapascal::new(1000.0 * PSI_MPA),
        thread.diameter,
        depth,
    )) / LBF_KN;
    assert!((bond - 9817.0).abs() < 0.001 * 9817.0, "{bond}");
}

/// A published assessment of a bonded rod of 2015 (second-hand) prints for 3/8 to 1 in: bits of 7/16, 9/16, 11/16 or 3/4, 7/8, 1
/// and 1 1/8 in; least depths of 2 3/8, 2 3/4, 3 1/8, 3 1/2, 3 1/2 and 4 in, greatest of 4 1/2, 10, 12 1/2, 15, 17 1/2 and
/// 20 in; and for plain rod a largest torque of 10, 25, 50, 90, 125 and 165 lbf ft. Generic values stay within them.
#[test]
fn bits_depths_and_torques_are_within_a_published_assessment() {
    let published = [
        (0.4375, 2.375, 4.5, 10.0),
        (0.5625, 2.75, 10.0, 25.0),
        (0.6875, 3.125, 12.5, 50.0),
        (0.875, 3.5, 15.0, 90.0),
        (1.0, 3.5, 17.5, 125.0),
        (1.125, 4.0, 20.0, 165.0),
    ];
    let sizes: Vec<Size> = Size::of(Stock::Inch).collect();
    assert_eq!(sizes.len(), published.len());
    for (size, (bit, least, most, torque)) in sizes.into_iter().zip(published) {
        let row = threads::thread(size);
        let inches = |length| millimetre::get(length) / 25.4;
        assert!((inches(row.drill) - bit).abs() < 0.001, "{size:?}");
        let depth = inches(row.usual_embedment);
        assert!((least..=most).contains(&depth), "{size:?}: {depth}");
        let ceiling = threads::torque_ceiling(size, millimetre::new(1000.0));
        assert!(newton_metre::get(ceiling) <= torque * 1.355_818, "{size:?}");
    }
}

/// Farther than this a tape is read by whole inches.
const FAR_IN: f64 = 240.0;

/// What somebody measures on site of an inch plan is judged at marks of an inch tape, or by thousandths where it is finer than one.
#[test]
fn the_record_of_an_inch_plan_is_judged_at_marks_of_a_tape() {
    let bare = SitePlan {
        units: Some(Units::Imperial),
        stock: Some(Stock::Inch),
        ..SitePlan::unknown()
    };
    for plan in [example("inch-garden"), bare] {
        let decided = decide(&plan, &NoShelf).unwrap();
        let mut looked_at = 0;
        for item in items(&decided.brief, &decided.design) {
            let Asks::Number { unit, bands, .. } = &item.asks else {
                continue;
            };
            let scale = match unit {
                Unit::Millimetre => 1.0,
                Unit::Metre => 1000.0,
                _ => continue,
            };
            for limit in bands.iter().filter_map(|band| band.up_to) {
                let inches = limit * scale / 25.4;
                let marks = inches * 16.0;
                assert!(
                    (marks - marks.round()).abs() < 1e-6 || !(0.0625..=FAR_IN).contains(&inches),
                    "{}: {inches} in",
                    item.id
                );
                looked_at += 1;
            }
        }
        assert!(looked_at > 30, "{looked_at}");
    }
}

/// Where inches are sold nothing is ordered in decimals of a foot, a pound or a square foot.
#[test]
fn an_inch_order_is_in_whole_units() {
    let mut looked_at = 0;
    for line in decide(&example("inch-garden"), &NoShelf)
        .unwrap()
        .design
        .materials
    {
        let amount = line.quantity * line.unit.imperial_factor();
        let step = match line.unit {
            Unit::Metre | Unit::SquareMetre | Unit::Kilogram => 1.0,
            Unit::Litre => 0.25,
            Unit::CubicMetre if amount > 0.5 => 0.25,
            Unit::CubicMetre => 0.1,
            _ => continue,
        };
        let steps = amount / step;
        assert!(
            (steps - steps.round()).abs() < 1e-6,
            "{}: {amount}",
            line.id
        );
        looked_at += 1;
    }
    assert!(looked_at > 12, "{looked_at}");
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
