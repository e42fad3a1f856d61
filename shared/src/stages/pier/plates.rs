//! Plates: whether the mount's bolts fit the top, and the column its base.

use crate::brief::Brief;
use crate::figure::{Millimetre, Unit};
use crate::notes::{Check, Notes};
use crate::paths;
use crate::source::Source;
use crate::units::{Length, millimetre};

/// Least distance from the middle of a mount's bolt to the plate's edge, in bolt holes of 12 mm: 1.2 d₀ of EN 1993-1-8 Table 3.3.
const BOLT_EDGE_MM: f64 = 1.2 * 13.0;

/// Holds the plates against what they carry.
pub fn checks(brief: &Brief, notes: &mut Notes) {
    let pier = &brief.pier;
    let fit = Source::from_memory("EN 1993-1-8", "2005", "Table 3.3, end distance 1.2 d0");
    let needed = millimetre::get(pier.top_bolt_circle.value) + 2.0 * BOLT_EDGE_MM;
    notes.check(
        Check::at_least(
            "pier.top_plate",
            "Does the mount's bolt circle fit the top plate?",
            millimetre::get(pier.top_plate_side.value),
            needed,
            Unit::Millimetre,
            fit,
        )
        .note(format!(
            "The circle with an edge for bolts of {}. Take the circle from the mount in hand before the plate is cut.",
            brief.units.about(12.0, Unit::Millimetre)
        ))
        .moved_by(paths![pier.top_plate_side_mm, pier.top_bolt_circle_mm]),
    );
    let weld = pier.weld_leg.value * 2.0;
    notes.check(
        Check::at_least(
            "pier.base_plate",
            "Is the base plate wide enough for column and weld?", pier.plate_side.value, pier.outside_diameter.value + weld, Millimetre,
            Source::derived("outside diameter and a weld leg on either side"),
        )
        .note("The stud circle also needs room outside the column; the checks of the studs look at that.")
        .moved_by(paths![pier.plate_side_mm, pier.outside_diameter_mm, pier.weld_leg_mm]),
    );
    ducts(
        brief,
        pier.outside_diameter.value - 2.0 * pier.wall.value,
        notes,
    );
}

/// Cables rise inside the column: the bore must take the ducts of the block.
fn ducts(brief: &Brief, bore: Length, notes: &mut Notes) {
    let ducts = brief.block.duct_count.value;
    if ducts < 1.0 {
        return;
    }
    let needed = brief.block.duct_diameter.value * ducts.min(3.0) * 1.15;
    notes.check(
        Check::at_least(
            "pier.bore",
            "Is the column wide enough inside for the ducts?", bore, needed, Millimetre,
            Source::derived("ducts side by side, three at most in a row, with their walls"),
        )
        .note("Power and data come up inside the column through a hole in the base plate, clear of the studs.")
        .moved_by(paths![pier.outside_diameter_mm, block.duct_diameter_mm, block.duct_count]),
    );
}
