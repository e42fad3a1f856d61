use super::{Typed, read};
use stillground::figure::{Unit, Units};

fn metric(text: &str, unit: Unit) -> Typed {
    read(text, unit, Units::Metric)
}

fn metres(text: &str) -> f64 {
    match metric(text, Unit::Metre) {
        Typed::Value(value) => value,
        other => panic!("{text}: {other:?}"),
    }
}

#[test]
fn lengths_are_read_as_people_write_them() {
    for (text, value) in [
        ("30 cm", 0.3),
        ("30cm", 0.3),
        ("12\"", 0.3048),
        ("0,3 m", 0.3),
        ("0,300", 0.3),
        (".3", 0.3),
        ("1 ft 3 in", 0.381),
        ("1' 3\"", 0.381),
        ("1′3″", 0.381),
        ("1ft3in", 0.381),
        ("5 ft 1/2 in", 1.5367),
        ("1/2 in", 0.0127),
        ("1 1/2\"", 0.0381),
        ("1½ in", 0.0381),
        ("1 ft 3 1/2", 0.3937),
        ("3'6", 1.0668),
        ("3' 6", 1.0668),
        ("3′ 6 1/2″", 1.0795),
        ("8 5/8\"", 0.219_075),
        ("5/8\"", 0.015_875),
        ("#5", 0.015_875),
        ("1 m 20 cm", 1.2),
        ("1 250 mm", 1.25),
        ("1,250.5 mm", 1.2505),
        ("1.250,5 mm", 1.2505),
        ("1.25", 1.25),
        ("2 yd", 1.8288),
        ("−0.5", -0.5),
        ("-5' 4\"", -1.6256),
        ("-8 5/8\"", -0.219_075),
    ] {
        assert_eq!(metres(text), value, "{text}");
    }
}

#[test]
fn a_bare_figure_is_in_the_readers_unit() {
    assert_eq!(
        read("12", Unit::Millimetre, Units::Imperial),
        Typed::Value(304.8)
    );
    assert_eq!(
        read("50", Unit::Celsius, Units::Imperial),
        Typed::Value(10.0)
    );
    assert_eq!(
        read("30 cm", Unit::Metre, Units::Imperial),
        Typed::Value(0.3)
    );
}

#[test]
fn a_bare_fraction_is_inches_in_a_box_of_inches_and_a_bar_has_its_number() {
    let box_of_inches = |text| read(text, Unit::Millimetre, Units::Imperial);
    assert_eq!(box_of_inches("5/8"), Typed::Value(15.875));
    assert_eq!(box_of_inches("8 5/8"), Typed::Value(219.075));
    assert_eq!(box_of_inches("#5"), Typed::Value(15.875));
    assert_eq!(box_of_inches("1,25 m"), Typed::Value(1250.0));
    // From #9 on a bar's number is no longer its eighths.
    assert!(matches!(box_of_inches("#9"), Typed::Bad(_)));
    assert!(matches!(
        read("#5", Unit::Kilogram, Units::Imperial),
        Typed::Bad(_)
    ));
}

#[test]
fn what_fills_a_box_reads_back_as_the_same_size() {
    for sixteenths in 1..2000 {
        let millimetres = f64::from(sixteenths) * 25.4 / 16.0;
        for (value, unit) in [
            (millimetres, Unit::Millimetre),
            (millimetres / 1000.0, Unit::Metre),
        ] {
            let entry = Units::Imperial.entry(value, unit);
            let Typed::Value(found) = read(&entry, unit, Units::Imperial) else {
                panic!("{entry}");
            };
            assert!(
                (found - value).abs() <= 1e-9 * value,
                "{entry}: {found} for {value}"
            );
        }
    }
    assert_eq!(Units::Imperial.entry(17.4625, Unit::Millimetre), "11/16");
    assert_eq!(Units::Imperial.entry(219.075, Unit::Millimetre), "8 5/8");
    assert_eq!(Units::Imperial.entry(1.016, Unit::Metre), "3' 4\"");
    assert_eq!(Units::Imperial.entry(1.2192, Unit::Metre), "4");
}

#[test]
fn a_comma_before_three_digits_is_asked_about() {
    let Typed::Ask(question) = metric("1,250", Unit::Metre) else {
        panic!("not asked")
    };
    let readings: Vec<_> = question
        .readings
        .iter()
        .map(|reading| (reading.entry.as_str(), reading.value))
        .collect();
    assert_eq!(readings, [("1.25 m", 1.25), ("1250 m", 1250.0)]);
    for reading in &question.readings {
        assert_eq!(
            metric(&reading.entry, Unit::Metre),
            Typed::Value(reading.value)
        );
    }
}

#[test]
fn a_torque_in_kilos_has_three_readings() {
    for text in ["180 kilos", "180 kg", "180kg"] {
        let Typed::Ask(question) = metric(text, Unit::NewtonMetre) else {
            panic!("{text}: not asked")
        };
        assert_eq!(question.readings.len(), 3);
        for reading in &question.readings {
            assert_eq!(
                metric(&reading.entry, Unit::NewtonMetre),
                Typed::Value(reading.value),
                "{}",
                reading.entry
            );
        }
    }
    assert_eq!(
        metric("60 lbf ft", Unit::NewtonMetre),
        Typed::Value(81.349_076_899_9)
    );
    assert_eq!(metric("80 Nm", Unit::NewtonMetre), Typed::Value(80.0));
}

#[test]
fn other_kinds_are_read() {
    assert_eq!(metric("50 °F", Unit::Celsius), Typed::Value(10.0));
    assert_eq!(metric("5 min", Unit::Second), Typed::Value(300.0));
    assert_eq!(metric("36 km/h", Unit::MetrePerSecond), Typed::Value(10.0));
    assert_eq!(
        metric("2e5", Unit::NewtonMetrePerRadian),
        Typed::Value(200_000.0)
    );
    assert_eq!(
        metric("2 x 10^5 N m/rad", Unit::NewtonMetrePerRadian),
        Typed::Value(200_000.0)
    );
    assert_eq!(
        metric("1500 psf", Unit::Kilopascal),
        Typed::Value(71.820_388_470_5)
    );
    assert_eq!(metric("5 %", Unit::One), Typed::Value(0.05));
    assert_eq!(metric("3.76 µm", Unit::Micrometre), Typed::Value(3.76));
    assert_eq!(
        metric("11 st 6 lb", Unit::Kilogram),
        Typed::Value(72.574_779_2)
    );
}

#[test]
fn units_that_mean_different_things_are_asked_about() {
    for (text, unit, readings) in [
        ("2 tons", Unit::Kilogram, 3),
        ("10 fl oz", Unit::Millilitre, 2),
        ("1 gal", Unit::Millilitre, 2),
    ] {
        let Typed::Ask(question) = metric(text, unit) else {
            panic!("{text}: not asked")
        };
        assert_eq!(question.readings.len(), readings, "{text}");
        for reading in &question.readings {
            assert_eq!(
                metric(&reading.entry, unit),
                Typed::Value(reading.value),
                "{}",
                reading.entry
            );
        }
    }
}

#[test]
fn nothing_is_not_known() {
    for text in ["", "  ", "?", "not known", "Unknown", "don’t know"] {
        assert_eq!(metric(text, Unit::Metre), Typed::NotKnown, "{text}");
    }
}

#[test]
fn what_is_no_number_says_so() {
    for text in [
        "a lot",
        "12 kg",
        "1 m 2 m",
        "3 in 1 ft",
        "1 m 3",
        "#5 in",
        "1,2,3",
        "--3",
        "1/0 m",
        "12 furlongs",
        "1e999",
        "0x10",
        "\"",
        "½ ½ in in",
    ] {
        assert!(
            matches!(metric(text, Unit::Metre), Typed::Bad(_)),
            "{text}: {:?}",
            metric(text, Unit::Metre)
        );
    }
    assert_eq!(
        metric("12 kg", Unit::Metre),
        Typed::Bad("“kg” is a mass, and this asks for a length.".into())
    );
}

#[test]
fn any_text_is_answered() {
    for text in [
        "é", "1é", "1 µ", "９", "1\u{0}", "💧 2", "1''", "'", "1,", ",1", ".", "e5", "1e", "1 /2",
    ] {
        let _ = metric(text, Unit::Metre);
        let _ = metric(text, Unit::NewtonMetre);
    }
}
