//! Whether the concrete is warm enough, and cool enough, for the resin.

use crate::brief::{Brief, Origin};
use crate::figure::Celsius;
use crate::notes::{Check, Notes, Verdict};
use crate::paths;
use crate::rules::resin;

use super::Setting;

/// Outside the resin's range no stud is set that day; below 5 °C somebody reads the product's own sheet first.
pub(super) fn check(brief: &Brief, setting: &Setting, notes: &mut Notes) {
    let anchors = &brief.anchors;
    let celsius = anchors.concrete_temperature_c.value;
    let [coldest, warmest] = resin::generic::range_c(anchors.stated.resin);
    let stated = anchors.product.cure_time.origin == Origin::Said;
    let say = |value| brief.units.say(value, Celsius);
    let (id, fields) = (
        "anchors.resin_temperature",
        paths![
            anchors.concrete_temperature_c,
            work.temperature_c,
            anchors.resin,
        ],
    );
    let check = if celsius > warmest {
        let title = "Is the concrete cool enough for the resin?";
        Check::at_most(id, title, celsius, warmest, Celsius, resin::TIMES)
    } else {
        let title = "Is the concrete warm enough for the resin?";
        Check::at_least(id, title, celsius, coldest, Celsius, resin::TIMES)
    };
    let verdict = match setting.cure_time {
        _ if stated => Verdict::Holds,
        None => Verdict::Fails,
        Some(_) if celsius < resin::generic::SHEET_BELOW_C => Verdict::Unknown,
        Some(_) => Verdict::Holds,
    };
    let note = format!(
        "A resin of this kind is set from {} to {}; outside that wait for another day. Below {} only a product whose own sheet allows it, with the times that the sheet gives. The hole's temperature counts, and the night's while it cures.",
        say(coldest),
        say(warmest),
        say(resin::generic::SHEET_BELOW_C)
    );
    notes.check(
        Check {
            // A temperature has no share of its limit.
            utilisation: None,
            verdict,
            ..check
        }
        .note(note)
        .moved_by(fields),
    );
}
