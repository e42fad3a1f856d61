//! Whether the block is deep and wide enough. Edge distance and thickness for the studs are checked with the studs.

use crate::brief::Brief;
use crate::figure::{Metre, Unit};
use crate::notes::Check;
use crate::paths;
use crate::source::Source;
use crate::stages::block::needs::plate_needs;
use crate::stages::block::outline::Outline;
use crate::stages::ground::Ground;
use crate::units::millimetre;

/// None on sound rock, which does not heave: there is nothing to judge.
pub(super) fn frost(brief: &Brief, ground: &Ground, outline: &Outline) -> Option<Check> {
    if ground.is_sound_rock_at(outline.depth) {
        return None;
    }
    let note = format!(
        "In a hard winter the ground freezes to about {}. A base that stands on frozen ground is lifted and tilted. Where it cannot go \
         deeper, replace frost-susceptible soil below it by clean gravel that drains; a ground engineer can say how much.",
        brief.units.say(ground.frost_depth, Metre)
    );
    let source = Source::common_practice("base of a footing below the frost");
    let check = Check::at_least(
        "block.frost",
        "Is the base below the frost depth?",
        outline.depth,
        ground.frost_base_depth,
        Metre,
        source,
    );
    Some(check.note(note).moved_by(paths![
        block.depth_m,
        site.frost_depth_m,
        site.freezing_index_c_days,
    ]))
}

pub(super) fn plate(brief: &Brief, outline: &Outline) -> Check {
    let (given, needed) = (
        millimetre::get(outline.shorter()),
        millimetre::get(plate_needs(brief)),
    );
    let source = Source::judgement("50 mm of concrete round the plate");
    Check::at_least(
        "block.plate_fits",
        "Does the base plate fit on the block?",
        given,
        needed,
        Unit::Millimetre,
        source,
    )
    .note("The plate needs concrete under all of it and a margin beside it, or the edge spalls.")
    .moved_by(paths![pier.plate_side_mm, block.length_m, block.width_m])
}
