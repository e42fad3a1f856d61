//! How a figure is written.

use super::*;

#[test]
fn money_reads_as_a_shop_writes_it() {
    assert_eq!(
        (money(0), money(5), money(123_456_789)),
        (
            "0.00".into(),
            "0.05".into(),
            "1\u{2009}234\u{2009}567.89".into()
        )
    );
    assert_eq!(
        (money(-1), price(1_455_000), price(456), price(450)),
        (
            "\u{2212}0.01".into(),
            "145.50".into(),
            "0.0456".into(),
            "0.045".into()
        )
    );
    assert_eq!(
        (thousandths(4200), thousandths(1_475_000), thousandths(5)),
        ("4.2".into(), "1475".into(), "0.005".into())
    );
}

#[test]
fn figures_read_as_a_person_writes_them() {
    assert_eq!(significant(2352.0, 3), "2350");
    assert_eq!(significant(0.0456, 2), "0.046");
    assert_eq!(significant(-1.5, 3), "\u{2212}1.5");
    assert_eq!(significant(1.0, 3), "1");
    assert_eq!(significant(184_000_000.0, 3), "184\u{2009}000\u{2009}000");
    assert_eq!(significant(f64::NAN, 3), "not known");
    assert_eq!(Units::Imperial.say(0.0, Unit::Celsius), "32\u{a0}°F");
    assert_eq!(
        Units::Metric.say(-160e6, Unit::Newton),
        "\u{2212}160\u{a0}MN"
    );
    assert_eq!(
        Units::Metric.say(400e3, Unit::NewtonMetrePerRadian),
        "400\u{2009}000\u{a0}N\u{a0}m/rad"
    );
    assert_eq!(Units::Imperial.say(0.3048, Unit::Metre), "1\u{a0}ft");
}
