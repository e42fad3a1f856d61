//! Whether concrete may be poured at the temperature of the work.

use crate::brief::Brief;
use crate::figure::{Celsius, Unit};
use crate::notes::{Check, Notes};
use crate::paths;
use crate::source::Source;

/// Colder than this no concrete is poured, °C.
pub const COLDEST_C: f64 = 5.0;
/// From this on it needs no blanket, °C.
pub const MILD_C: f64 = 10.0;
/// Hotter than this none is poured, °C.
const HOTTEST_C: f64 = 35.0;
/// From this on it is hurried and wetted, °C.
pub const WARM_C: f64 = 25.0;

/// At least 5 °C when delivered, and kept there until 5 MPa.
const COLD: Source = Source::second_hand(
    "EN 206 and BS 8500",
    "",
    "temperature of fresh concrete at delivery, at least 5 °C",
);
/// Below 35 °C.
const HOT: Source = Source::second_hand(
    "ACI 301 and BS 8500",
    "",
    "temperature of fresh concrete, below 35 °C",
);

/// Adds the checks.
pub(super) fn notes(brief: &Brief, notes: &mut Notes) {
    let celsius = brief.work.temperature_c.value;
    cold(brief, celsius, notes);
    if celsius > WARM_C {
        hot(celsius, notes);
    }
}

fn cold(brief: &Brief, celsius: f64, notes: &mut Notes) {
    let say = |value| brief.units.say(value, Celsius);
    let note = format!(
        "Too cold for concrete below {}, and never on frozen ground: wait for a milder day. From there to {} it takes care: \
         a blanket, a warm mix and no frost in the next three nights. Concrete that freezes before it has {} loses up to half its strength.",
        say(COLDEST_C),
        say(MILD_C),
        brief.units.say(3.5, Unit::Megapascal)
    );
    notes.check(
        Check {
            // A temperature has no share of its limit: nought is not half of anything.
            utilisation: None,
            verdict: judged(celsius),
            ..Check::at_least(
                "block.cold",
                "Is it warm enough to pour?",
                celsius,
                COLDEST_C,
                Celsius,
                COLD,
            )
        }
        .note(note)
        .moved_by(paths![work.temperature_c]),
    );
}

fn judged(celsius: f64) -> crate::notes::Verdict {
    use crate::notes::Verdict;
    if celsius < COLDEST_C {
        Verdict::Fails
    } else if celsius < MILD_C {
        Verdict::Unknown
    } else {
        Verdict::Holds
    }
}

fn hot(celsius: f64, notes: &mut Notes) {
    notes.check(
        Check::at_most(
            "block.hot",
            "Is it cool enough to pour?", celsius, HOTTEST_C, Celsius,
            HOT,
        )
        .note("In more heat than this, concrete sets before it is compacted and cracks as it cools: pour on a cooler day or before dawn.")
        .moved_by(paths![work.temperature_c]),
    );
}
