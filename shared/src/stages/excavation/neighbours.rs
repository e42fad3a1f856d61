//! The pit and its neighbours: footings, drains and services.

use crate::brief::Brief;
use crate::brief::site::assumed_footing_m;
use crate::figure::Unit;
use crate::notes::{Check, Notes};
use crate::paths;
use crate::source::Source;
use crate::stages::excavation::Excavation;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::units::metre;

/// Within this much outside the line from the footing somebody looks, m.
pub const NEAR_LINE_M: f64 = 1.0;
/// A pipe or cable this far outside the pit is neither cut nor laid bare.
const CLEAR_OF_DRAIN_M: f64 = 0.5;

/// The line from a footing's edge.
const LINE: Source = Source::second_hand(
    "Law on work beside a neighbour's footing",
    "",
    "the line that falls at 45 degrees; 1 in 2 in sand or below water is remembered",
);
/// Clear distance from the pit's edge to the footing, and the least that keeps the pit above the line from its edge.
pub struct Footing {
    /// Clear of the pit's edge.
    pub clear_m: f64,
    /// At least to be clear.
    pub needed_m: f64,
}

/// The line falls at 45°, or 1 in 2 in sand, gravel and silt and below water.
pub fn footing(brief: &Brief, ground: &Ground, pit: &Excavation) -> Option<Footing> {
    let stated = &brief.site.stated;
    let distance = stated.building_distance_m?;
    let deep = stated
        .building_footing_depth_m
        .unwrap_or(assumed_footing_m(brief.stock.value));
    let loose = matches!(ground.group, Group::Sand | Group::Gravel | Group::Silt) || pit.dewatering;
    let run = if loose { 2.0 } else { 1.0 };
    Some(Footing {
        clear_m: distance - 0.5 * metre::get(pit.length.max(pit.width)),
        needed_m: run * (metre::get(pit.depth) - deep).max(0.0),
    })
}

/// Inside the line from a neighbouring footing's edge the pit undermines it; within a metre outside it somebody looks.
pub fn clear_of_building(brief: &Brief, ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    let Some(footing) = footing(brief, ground, pit) else {
        return;
    };
    let near = footing.needed_m > 0.0 && footing.clear_m < footing.needed_m + NEAR_LINE_M;
    let check = Check::at_least(
        "excavation.building",
        "Does the pit stay clear of the neighbouring footing?",
        footing.clear_m,
        footing.needed_m,
        Unit::Metre,
        LINE,
    );
    let fails = check.verdict == crate::notes::Verdict::Fails;
    notes.check(
        check
            .ask_when(near && !fails)
            .note(format!(
                "The pit stays above the line that falls from the footing's edge, at 45°, in sand or below water half as steep. Inside it you \
                 would dig under the neighbour's footing; within {} outside it have a structural engineer look first. The law may ask you \
                 to tell the neighbour.",
                brief.units.about(NEAR_LINE_M, Unit::Metre)
            ))
            .moved_by(paths![
                site.building_distance_m,
                site.building_footing_depth_m,
                block.depth_m,
            ]),
    );
}

/// The distance is measured from the pier's axis, to the nearest corner's circle on the safe side.
pub fn clear_of_drain(brief: &Brief, pit: &Excavation, notes: &mut Notes) {
    let Some(distance) = brief.site.stated.drain_distance_m else {
        return;
    };
    let corner = 0.5 * metre::get(pit.length).hypot(metre::get(pit.width));
    let source = Source::common_practice("half a metre between a pit and a service");
    notes.check(
        Check::at_least(
            "excavation.drain",
            "Does the pit stay clear of the drain or service?",
            distance - corner,
            CLEAR_OF_DRAIN_M,
            Unit::Metre,
            source,
        )
        .note("Nearer, expose the pipe or cable by hand first, support it, and have its owner say what may be done beside it.")
        .moved_by(paths![site.drain_distance_m, block.length_m, block.width_m]),
    );
}
