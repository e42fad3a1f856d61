//! What to do with the nuts, with the figure and what decides it, in whole sentences.

use crate::brief::Brief;
use crate::figure::NewtonMetre;
use crate::rules::vdi_2230_2015 as tightening;
use crate::stages::anchors::seat::Seat;
use crate::units::{Moment, newton_metre};

use super::{Limit, Screw, WaitsFor, Way};

/// What to do and which limit decides: the same sentence on page, sheet, record and interface.
pub(super) fn says(
    brief: &Brief,
    way: Way,
    waits_for: WaitsFor,
    set: Moment,
    high: Moment,
    limits: &[Limit],
) -> String {
    let say = |torque: Moment| brief.units.say(torque, NewtonMetre);
    let decides = limits
        .iter()
        .find(|limit| limit.governs)
        .map_or("", |limit| limit.what);
    let (set, most) = (say(set), say(high));
    let first = match waits_for {
        WaitsFor::Nothing => {
            format!("Tighten each nut to {set} and never above {most}; {decides} decides.")
        }
        WaitsFor::Sheet => format!(
            "Do not tighten before the resin's sheet is at hand: enter its largest torque. Until then no nut goes above {most}; {decides} \
             decides."
        ),
        WaitsFor::Grout => {
            let sheet = if brief.anchors.max_torque.is_none() {
                " and the resin's sheet is at hand"
            } else {
                ""
            };
            format!(
                "Do not tighten yet: nothing stands under the plate at the studs. Grout under it first; once that is hard{sheet}, {set} and \
                 never above {most}; {decides} decides."
            )
        }
    };
    match way {
        Way::Nuts => format!(
            "{first} Hold the lower nut with a second spanner, or up to {} of it twists the stud in its resin.",
            say(high * thread_share(brief))
        ),
        Way::Grouted | Way::Straight | Way::Ungrouted => first,
    }
}

/// Share of a torque that reaches the stud's thread, at a friction of 0.12.
fn thread_share(brief: &Brief) -> f64 {
    let [pitch, flank, face] = tightening::shares(&brief.anchors.thread(), 0.12, 0.12);
    (pitch + flank) / (pitch + flank + face)
}

/// What happens below the band, and above it.
pub(super) fn around(brief: &Brief, seat: Seat, screw: &Screw, high: f64) -> (String, String) {
    let say = |torque: Moment| brief.units.say(torque, NewtonMetre);
    let below = match seat {
        Seat::Nuts => {
            "Below the band the nuts may work loose with heat and cold; the foot is no softer for it while they hold."
        }
        Seat::Bedded => {
            "Below the band the joint opens sooner under wind or a leaning person, and the foot then turns about ten times as easily."
        }
        Seat::Dished => {
            "Below the band the plate is bent less and lifts sooner from the column's edge."
        }
    };
    let first = match seat {
        Seat::Nuts => "Above the band the stud's thread comes near to yielding.",
        Seat::Bedded | Seat::Dished => {
            "Above the band the resin is asked to hold more than it can for good: it creeps, and the preload goes."
        }
    };
    let above = format!(
        "{first} A typical stud begins to stretch for good at about {} and breaks at about {}; the limit for this plan is {}.",
        say(screw.torque(screw.proof)),
        say(screw.torque(screw.breaking)),
        say(newton_metre::new(high))
    );
    (below.to_owned(), above)
}
