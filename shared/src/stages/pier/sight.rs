//! Sight: whether the telescope sees over the walls as low as wanted, and swings clear of floor and walls.

use crate::brief::Brief;
use crate::brief::pier::sight::{Towards, Wall};
use crate::field::Path;
use crate::figure::{Degree, Metre, Unit};
use crate::notes::{Check, Notes, Working};
use crate::paths;
use crate::rules::sightline;
use crate::source::Source;
use crate::units::{Length, metre};

/// Holds the pier's height against what must clear what.
pub fn checks(brief: &Brief, notes: &mut Notes) {
    let axis = brief.pier.sight.axis(brief.pier.height.value);
    notes.working(
        Working::new(
            "pier.axis_height",
            "Telescope's axes above the floor",
            "H = h + h_seat",
            Source::derived("plate's seat and load's centre less the floor"),
        )
        .with("h", brief.pier.height.value, Metre)
        .with("h_seat", brief.pier.sight.seat, Metre)
        .gives("H", axis, Metre),
    );
    for wall in &brief.pier.sight.walls {
        over(brief, wall, axis, notes);
    }
    swing(brief, axis, notes);
}

const fn names(towards: Towards) -> (&'static str, &'static str, &'static [Path]) {
    match towards {
        Towards::North => (
            "pier.sight_north",
            "Can the telescope see low enough to the north?",
            paths![
                pier.height_m,
                pier.wall_height_m,
                pier.lowest_altitude_north_deg,
            ],
        ),
        Towards::East => (
            "pier.sight_east",
            "Can the telescope see low enough to the east?",
            paths![
                pier.height_m,
                pier.wall_height_m,
                pier.lowest_altitude_east_deg,
            ],
        ),
        Towards::South => (
            "pier.sight_south",
            "Can the telescope see low enough to the south?",
            paths![
                pier.height_m,
                pier.wall_height_m,
                pier.lowest_altitude_south_deg,
            ],
        ),
        Towards::West => (
            "pier.sight_west",
            "Can the telescope see low enough to the west?",
            paths![
                pier.height_m,
                pier.wall_height_m,
                pier.lowest_altitude_west_deg,
            ],
        ),
    }
}

fn over(brief: &Brief, wall: &Wall, axis: Length, notes: &mut Notes) {
    let lowest = sightline::lowest_altitude_deg(
        wall.height,
        wall.distance,
        axis,
        brief.load.aperture.value / 2.0,
    );
    let (id, title, fields) = names(wall.towards);
    notes.working(
        Working::new(
            id,
            format!("{title}: lowest altitude over the wall"),
            "a = atan((h − H)/d) + asin(r/√(d² + (h − H)²))",
            sightline::SOURCE,
        )
        .with("h", wall.height, Metre)
        .with("d", wall.distance, Metre)
        .with("H", axis, Metre)
        .with("r", brief.load.aperture.value / 2.0, Metre)
        .gives("a", lowest, Degree),
    );
    if let Some(wanted) = wall.wanted_deg {
        notes.check(
            Check::at_most(id, title, lowest, wanted, Degree, sightline::SOURCE)
                .note("The lowest altitude that the whole telescope sees over the wall against the lowest that is wanted. A taller pier or a lower wall helps.")
                .moved_by(fields),
        );
    }
}

fn swing(brief: &Brief, axis: Length, notes: &mut Notes) {
    let Some(swing) = brief.pier.sight.swing_radius else {
        return;
    };
    let source = Source::derived("radius of the telescope's swing against the room for it");
    notes.check(
        Check::at_most(
            "pier.swing_floor",
            "Does the telescope swing clear of the floor?", swing, axis, Metre,
            source,
        )
        .note("Where it does not, it strikes floor or pier when it points low or crosses the meridian.")
        .moved_by(paths![pier.swing_radius_m, pier.height_m]),
    );
    if let Some(nearest) = brief
        .pier
        .sight
        .walls
        .iter()
        .map(|wall| metre::get(wall.distance))
        .reduce(f64::min)
    {
        notes.check(
            Check::at_most(
                "pier.swing_wall",
                "Does the telescope swing clear of the walls?",
                metre::get(swing),
                nearest,
                Unit::Metre,
                source,
            )
            .note("Leave room for a person between the swing and the wall as well.")
            .moved_by(paths![pier.swing_radius_m, pier.wall_distance_m]),
        );
    }
}
