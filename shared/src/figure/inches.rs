//! Lengths in feet and inches as they stand on a tape: feet, whole inches, and a fraction down to a sixteenth.

use crate::units::customary::INCH_MM;

/// A length so near a mark of the tape is on it, in.
const ON_A_MARK_IN: f64 = 0.0025;
/// From here feet are told from inches where a length is a distance, in.
const FOOT_IN: f64 = 12.0;
/// From here nobody reads a fraction of an inch any more, in.
const FAR_IN: f64 = 240.0;
/// From here whole feet are enough, in.
const VERY_FAR_IN: f64 = 1200.0;

/// A length in inches with a fraction, `10 5/8″`, where it is on a mark of the tape.
pub(super) fn on_a_mark(millimetres: f64) -> Option<String> {
    let inches = millimetres / INCH_MM;
    let marks = (inches * 16.0).round();
    ((inches - marks / 16.0).abs() <= ON_A_MARK_IN && marks != 0.0 && marks.abs() < 16.0 * FAR_IN)
        .then(|| sixteenths(marks, false))
}

/// A distance as a tape reads it, `3′ 6 1/2″`, to the nearest mark; none for what is finer than a tape.
pub(super) fn distance(millimetres: f64) -> Option<String> {
    let inches = millimetres / INCH_MM;
    let far = inches.abs();
    let step = match far {
        f if !f.is_finite() || f > 10.0 * VERY_FAR_IN => return None,
        f if f >= VERY_FAR_IN => FOOT_IN,
        f if f >= FAR_IN => 1.0,
        f if f >= 1.0 => 1.0 / 16.0,
        _ => return on_a_mark(millimetres),
    };
    Some(sixteenths((inches / step).round() * step * 16.0, true))
}

/// A dimension on a drawing: the nearest mark of the tape, in inches below three feet and in feet and inches from there. What is
/// less than an inch and on no mark is no work for a tape, the wall of a pipe for instance, and keeps its thousandths.
pub fn dimension(millimetres: f64) -> String {
    if millimetres.abs() < INCH_MM && millimetres != 0.0 && on_a_mark(millimetres).is_none() {
        return format!("{}\u{2033}", super::significant(millimetres / INCH_MM, 3));
    }
    let marks = (millimetres / INCH_MM * 16.0).round();
    if !marks.is_finite() {
        return "not known".to_owned();
    }
    sixteenths(marks, marks.abs() >= 16.0 * 36.0)
}

/// Steps from which a round size is taken, in: the coarsest that is near enough.
const ROUND_IN: [f64; 9] = [120.0, 60.0, 12.0, 6.0, 1.0, 0.5, 0.25, 0.125, 0.0625];
/// How near is near enough for a size of common practice, and for one that is calculated with.
const PRACTICE_RATIO: f64 = 0.05;
const NEAR_RATIO: f64 = 0.02;

/// The round size of a tape in inches that stands for a round metric one, mm.
pub fn nominal(millimetres: f64) -> f64 {
    round(millimetres, PRACTICE_RATIO)
}

/// The same within 2 %, and what is exactly on a mark of the tape as it is, mm: 300 mm lies near one, and is a foot.
pub fn near(millimetres: f64) -> f64 {
    let marks = millimetres / INCH_MM * 16.0;
    if (marks - marks.round()).abs() < 1e-6 {
        millimetres
    } else {
        round(millimetres, NEAR_RATIO)
    }
}

fn round(millimetres: f64, ratio: f64) -> f64 {
    let inches = millimetres / INCH_MM;
    let near = |step: &f64| {
        let round = (inches / step).round() * step;
        ((round - inches).abs() <= ratio * inches.abs()).then_some(round)
    };
    let round = ROUND_IN
        .iter()
        .find_map(near)
        .unwrap_or_else(|| (inches * 16.0).round() / 16.0);
    round * INCH_MM
}

/// What fills a box with a length that is exactly on a mark: `8 5/8` in a box of inches, `3' 4"` in one of feet.
pub(super) fn entry(amount: f64, unit: super::Unit) -> Option<String> {
    let (millimetres, in_feet) = match unit {
        super::Unit::Metre => (amount * 1000.0, true),
        super::Unit::Millimetre => (amount, false),
        _ => return None,
    };
    let marks = millimetres / INCH_MM * 16.0;
    let whole = marks.round().abs();
    if (marks.abs() - whole).abs() > 1e-7 || whole <= 0.0 || whole > 16.0 * VERY_FAR_IN {
        return None;
    }
    let sign = if marks < 0.0 { "-" } else { "" };
    let feet_only = in_feet && (whole as u64).is_multiple_of(16 * 12);
    if feet_only {
        return Some(format!("{sign}{}", whole as u64 / (16 * 12)));
    }
    let text = sixteenths(whole, in_feet).replace('\u{a0}', " ");
    let text = if in_feet {
        text.replace('\u{2032}', "'").replace('\u{2033}', "\"")
    } else {
        text.replace('\u{2033}', "")
    };
    Some(format!("{sign}{text}"))
}

/// A dimension in plain letters, for what reads no others: `15 13/16"`.
pub fn plain(millimetres: f64) -> String {
    dimension(millimetres)
        .replace('\u{2032}', "'")
        .replace('\u{2033}', "\"")
        .replace('\u{a0}', " ")
        .replace('\u{2212}', "-")
}

/// So many sixteenths of an inch in words; with feet where they are asked for and there is one.
fn sixteenths(marks: f64, with_feet: bool) -> String {
    let sign = if marks < 0.0 { "\u{2212}" } else { "" };
    let marks = marks.abs() as u64;
    let (mut inches, part) = (marks / 16, marks % 16);
    let mut out = sign.to_owned();
    if with_feet && inches >= 12 {
        out += &format!("{}\u{2032}", super::grouped(&(inches / 12).to_string()));
        inches %= 12;
        if inches == 0 && part == 0 {
            return out;
        }
        out.push('\u{a0}');
    }
    let fraction = fraction(part);
    match (inches, fraction.is_empty()) {
        (whole, true) => out += &whole.to_string(),
        (0, false) => out += &fraction,
        (whole, false) => out += &format!("{whole}\u{a0}{fraction}"),
    }
    out.push('\u{2033}');
    out
}

/// Sixteenths in lowest terms; nothing for none.
fn fraction(part: u64) -> String {
    let mut over = 16;
    let mut part = part;
    while part > 0 && part.is_multiple_of(2) {
        part /= 2;
        over /= 2;
    }
    if part == 0 {
        String::new()
    } else {
        format!("{part}/{over}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(text: Option<String>) -> Option<String> {
        text.map(|text| text.replace('\u{a0}', " "))
    }

    #[test]
    fn what_is_on_a_mark_is_a_fraction_and_the_rest_is_not() {
        let said = |inches: f64| plain(on_a_mark(inches * 25.4));
        assert_eq!(said(8.625).as_deref(), Some("8 5/8″"));
        assert_eq!(said(0.5).as_deref(), Some("1/2″"));
        assert_eq!(said(11.0 / 16.0).as_deref(), Some("11/16″"));
        assert_eq!(said(42.0).as_deref(), Some("42″"));
        assert_eq!(said(0.322), None);
        assert_eq!(said(0.0), None);
        assert_eq!(on_a_mark(20.0), None);
        // A diameter of pipe that its standard rounds to a tenth of a millimetre is still its own size.
        assert_eq!(plain(on_a_mark(219.1)).as_deref(), Some("8 5/8″"));
    }

    #[test]
    fn distances_are_feet_and_inches_to_the_nearest_mark() {
        let said = |inches: f64| plain(distance(inches * 25.4));
        assert_eq!(said(42.0).as_deref(), Some("3′ 6″"));
        assert_eq!(said(36.0).as_deref(), Some("3′"));
        assert_eq!(said(42.49).as_deref(), Some("3′ 6 1/2″"));
        assert_eq!(said(11.999).as_deref(), Some("1′"));
        assert_eq!(said(301.2).as_deref(), Some("25′ 1″"));
        assert_eq!(said(6561.7).as_deref(), Some("547′"));
        assert_eq!(said(0.3), None);
        assert_eq!(said(-42.0).as_deref(), Some("\u{2212}3′ 6″"));
        assert_eq!(said(f64::NAN), None);
    }

    #[test]
    fn a_round_metric_size_has_a_round_one_in_inches_beside_it() {
        let inches = |mm: f64| nominal(mm) / 25.4;
        for (mm, wanted) in [
            (50.0, 2.0),
            (25.0, 1.0),
            (40.0, 1.5),
            (12.0, 0.5),
            (10.0, 0.375),
            (150.0, 6.0),
            (300.0, 12.0),
            (600.0, 24.0),
            (1000.0, 39.0),
            (1200.0, 48.0),
            (2000.0, 78.0),
            (15_000.0, 600.0),
        ] {
            assert!((inches(mm) - wanted).abs() < 1e-9, "{mm}: {}", inches(mm));
        }
    }

    #[test]
    fn a_box_is_filled_with_what_its_tape_shows_west_and_south_too() {
        let feet = |inches: f64| entry(inches * 0.0254, crate::figure::Unit::Metre);
        assert_eq!(feet(64.0).as_deref(), Some("5' 4\""));
        assert_eq!(feet(-64.0).as_deref(), Some("-5' 4\""));
        assert_eq!(feet(-48.0).as_deref(), Some("-4"));
        assert_eq!(feet(0.0), None);
        let inches = entry(-8.625 * 25.4, crate::figure::Unit::Millimetre);
        assert_eq!(inches.as_deref(), Some("-8 5/8"));
    }

    #[test]
    fn a_dimension_is_always_a_mark_of_the_tape() {
        assert_eq!(dimension(401.0).replace('\u{a0}', " "), "15 13/16″");
        assert_eq!(dimension(1066.8).replace('\u{a0}', " "), "3′ 6″");
        assert_eq!(dimension(0.0), "0″");
        assert_eq!(dimension(8.18), "0.322″");
    }
}
