//! How a figure is written.

use super::*;

fn cents(amount: i64) -> Decimal {
    Decimal::new(amount, 2)
}

#[test]
fn money_reads_as_a_shop_writes_it() {
    assert_eq!(
        (money(cents(0)), money(cents(5)), money(cents(123_456_789))),
        (
            "0.00".into(),
            "0.05".into(),
            "1\u{202f}234\u{202f}567.89".into()
        )
    );
    assert_eq!(
        (
            money(cents(-1)),
            money(Decimal::new(1_455_000, 4)),
            money(Decimal::new(456, 4)),
            money(Decimal::new(450, 4))
        ),
        (
            "\u{2212}0.01".into(),
            "145.50".into(),
            "0.0456".into(),
            "0.045".into()
        )
    );
    assert_eq!(
        (
            ordered(Decimal::new(4200, 3)),
            ordered(Decimal::new(1_475_000, 3)),
            ordered(Decimal::new(5, 3))
        ),
        ("4.2".into(), "1475".into(), "0.005".into())
    );
}

#[test]
fn figures_read_as_a_person_writes_them() {
    assert_eq!(significant(2352.0, 3), "2350");
    assert_eq!(significant(0.0456, 2), "0.046");
    assert_eq!(significant(-1.5, 3), "\u{2212}1.5");
    assert_eq!(significant(1.0, 3), "1");
    assert_eq!(significant(184_000_000.0, 3), "184\u{202f}000\u{202f}000");
    assert_eq!(significant(f64::NAN, 3), "not known");
    assert_eq!(Units::Imperial.say(0.0, Unit::Celsius), "32\u{a0}°F");
    assert_eq!(
        Units::Metric.say(-160e6, Unit::Newton),
        "\u{2212}160\u{a0}MN"
    );
    assert_eq!(
        Units::Metric.say(400e3, Unit::NewtonMetrePerRadian),
        "400\u{202f}000\u{a0}N\u{a0}m/rad"
    );
    assert_eq!(Units::Imperial.say(0.3048, Unit::Metre), "1\u{2032}");
    assert_eq!(
        Units::Imperial.say(1.2192, Unit::Metre),
        "4\u{2032}",
        "feet and inches, no decimals of a foot"
    );
    assert_eq!(
        Units::Imperial.say(1.75 * 0.9144f64.powi(3), Unit::CubicMetre),
        "1\u{a0}3/4\u{a0}yd³"
    );
}
