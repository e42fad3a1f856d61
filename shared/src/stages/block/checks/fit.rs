//! Whether the block is deep and wide enough. Edge distance and thickness for the studs are checked with the studs.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::Check;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::block::needs::plate_needs;
use crate::stages::block::outline::Outline;
use crate::stages::ground::Ground;
use crate::units::{metre, millimetre};

pub(super) fn frost(brief: &Brief, ground: &Ground, outline: &Outline) -> Check {
    let needed = ground.frost_base_depth;
    let note = if brief.site.soil.value == Soil::Rock {
        "Sound rock does not heave when it freezes. Where it is jointed and holds fines or water, count it as weathered rock.".to_owned()
    } else {
        format!(
            "In a hard winter the ground freezes to about {}. A base that stands on frozen ground is lifted and tilted; freezing soil can \
             also grip the sides and lift them. Where it cannot go deeper, replace frost-susceptible soil below it by clean gravel that \
             drains, or lay insulation round it; a ground engineer can say how much.",
            brief.units.say(metre::get(ground.frost_depth), Unit::Metre)
        )
    };
    let source = Source::common_practice("base of a footing below the frost");
    Check::at_least(
        "block.frost",
        "Base below the frost",
        metre::get(outline.depth),
        metre::get(needed),
        Unit::Metre,
        source,
    )
    .note(note)
    .moved_by(&[
        "block.depth_m",
        "site.frost_depth_m",
        "site.freezing_index_c_days",
    ])
}

pub(super) fn plate(brief: &Brief, outline: &Outline) -> Check {
    let (given, needed) = (
        millimetre::get(outline.shorter()),
        millimetre::get(plate_needs(brief)),
    );
    let source = Source::judgement("50 mm of concrete round the plate");
    Check::at_least(
        "block.plate_fits",
        "Base plate within the block's top",
        given,
        needed,
        Unit::Millimetre,
        source,
    )
    .note("The plate needs concrete under all of it and a margin beside it, or the edge spalls.")
    .moved_by(&["pier.plate_side_mm", "block.length_m", "block.width_m"])
}
