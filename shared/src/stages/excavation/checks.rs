//! Demands on the pit held against what the site allows.

use crate::brief::Brief;
use crate::figure::Metre;
use crate::notes::{Check, Notes};
use crate::paths;
use crate::rules::osha_1926_p_1989::{distances, slopes};
use crate::source::Source;
use crate::stages::excavation::{Excavation, neighbours};
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::stages::room::{DepthLimit, Room};
use crate::units::{Length, metre};

/// What was said of the site's room.
const ROOM: Source = Source::judgement("room on the site");

/// Adds the checks.
pub fn checks(brief: &Brief, ground: &Ground, room: &Room, pit: &Excavation, notes: &mut Notes) {
    extent(room, pit, notes);
    depth(brief, room, pit, notes);
    sides(ground, pit, notes);
    dry(ground, pit, notes);
    below_topsoil(ground, pit, notes);
    above_rock(ground, pit, notes);
    neighbours::clear_of_building(brief, ground, pit, notes);
    neighbours::clear_of_drain(brief, pit, notes);
}

/// A pit that was made as large as the limit meets it, whatever the last digit of a sum says.
const SAME_M: f64 = 1e-9;

fn at_most(
    id: &'static str,
    title: &str,
    demand: Length,
    capacity: Length,
    source: Source,
) -> Check {
    let demand = if (demand - capacity).abs() < metre::new(SAME_M) {
        capacity
    } else {
        demand
    };
    Check::at_most(id, title, demand, capacity, Metre, source)
}

fn extent(room: &Room, pit: &Excavation, notes: &mut Notes) {
    let note = "Size of the pit at ground level against the room there is; sloped sides need much more room than vertical ones.";
    notes.check(
        at_most(
            "excavation.length",
            "Is there room for the pit, east to west?",
            pit.length,
            room.pit[0],
            ROOM,
        )
        .note(note)
        .moved_by(paths![
            block.length_m,
            excavation.max_length_m,
            excavation.sides,
        ]),
    );
    notes.check(
        at_most(
            "excavation.width",
            "Is there room for the pit, north to south?",
            pit.width,
            room.pit[1],
            ROOM,
        )
        .note(note)
        .moved_by(paths![
            block.width_m,
            excavation.max_width_m,
            excavation.sides,
        ]),
    );
}

fn depth(brief: &Brief, room: &Room, pit: &Excavation, notes: &mut Notes) {
    let by = match room.limited_by {
        DepthLimit::Stated => "as stated",
        DepthLimit::Assumed => "assumed, since it was not said",
        DepthLimit::Water => "set by the groundwater, with a dry bottom above it",
        DepthLimit::Rock => "set by the rock, on which the block then stands",
        DepthLimit::Batter => "set by sloped sides that run out of room",
    };
    let note = format!(
        "The deepest base here is at {}, {by}.",
        brief.units.say(room.depth, Metre)
    );
    notes.check(
        at_most(
            "excavation.depth",
            "Can the pit be dug deep enough for the block?",
            pit.depth,
            room.depth,
            ROOM,
        )
        .note(note)
        .moved_by(paths![
            block.depth_m,
            excavation.max_depth_m,
            site.groundwater_depth_m,
            site.rock_depth_m,
        ]),
    );
}

/// Depth against that from which sides need protection, or to which the table of slopes holds.
fn sides(ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    if ground.is_stable_rock() {
        return;
    }
    let check = if pit.cast_against_ground {
        at_most("excavation.sides", "Is the pit shallower than the depth where support is mandatory?", pit.depth, distances::protection_from(), distances::PROTECTION).note(
            "From this depth on no one may enter without shoring, a shield or sloped sides; at less depth too, wherever the \
             ground may cave in. \
             A block poured against the ground needs nobody in the pit: trim the bottom and place steel from above.",
        )
    } else {
        at_most("excavation.sides", "Is the pit within the depth that the slope table covers?", pit.depth, slopes::deepest(), slopes::SOURCE)
            .note("The slopes hold to this depth in soil without water, cracks or loads at the edge. Deeper pits are an engineer's work.")
    };
    notes.check(check.moved_by(paths![block.depth_m, excavation.sides]));
}

fn dry(ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    let Some(water) = ground.groundwater_depth else {
        return;
    };
    notes.check(
        at_most("excavation.dry", "Does the pit stay above groundwater?", pit.depth, water, Source::judgement("dry pit"))
            .note(
                "Below the groundwater the bottom boils and the sides run. Dig in the dry season, go less deep and wider, or have the water \
                 lowered by wells outside the pit; pumping from the pit itself takes the ground with it.",
            )
            .moved_by(paths![block.depth_m, site.groundwater_depth_m]),
    );
}

fn below_topsoil(ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    let Some(topsoil) = ground.topsoil_depth else {
        return;
    };
    let source = Source::common_practice("no footing on topsoil");
    notes.check(
        Check::at_least(
            "excavation.topsoil",
            "Is the base below the topsoil?",
            pit.depth,
            topsoil,
            Metre,
            source,
        )
        .note("Topsoil is loose and full of roots; no footing stands on it.")
        .moved_by(paths![block.depth_m, site.topsoil_depth_m]),
    );
}

fn above_rock(ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    let Some(rock) = ground.rock_depth.filter(|_| ground.group != Group::Rock) else {
        return;
    };
    notes.check(
        at_most("excavation.rock", "Does the pit end at or above rock?", pit.depth, rock, Source::judgement("rock is not dug but stood on"))
            .note("A block stands best on clean rock; to go below its surface takes a breaker. Wash the rock before pouring.")
            .moved_by(paths![block.depth_m, site.rock_depth_m]),
    );
}
