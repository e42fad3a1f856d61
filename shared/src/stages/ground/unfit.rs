//! Ground that is not to be built on by presumption: the reason, and whom to ask.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes};
use crate::paths;
use crate::rules::ibc_2012::presumptive;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::ground::{Ground, soil_table};

/// Year's mean below which the ground may stay frozen from year to year, °C.
const PERMAFROST_MEAN_C: f64 = -1.0;

/// Says whom to ask and why; none where the ground may be presumed to carry.
///
/// Tested fill, that is with both a measured stiffness and a stated bearing, is taken as the ground that the test found.
/// Peat and shrinking clay move with load and season whatever a test of their stiffness says.
pub fn ask(brief: &Brief) -> Option<String> {
    let stated = &brief.site.stated;
    let tested = stated.shear_wave_speed_m_s.is_some() && stated.presumed_bearing_kpa.is_some();
    let reason = match brief.site.soil.value {
        Soil::MadeGround if !tested => {
            "Fill of unknown age and kind settles unevenly and for years, and nobody can tell by looking what lies in it. Ask a ground \
             engineer for a trial pit through the fill to natural ground, and for its stiffness and bearing; a block that goes down to \
             natural ground, or short piles, may be the answer."
        }
        Soil::Peat => {
            "Peat and black organic soil shrink, rot and creep under any lasting load, so that a pier leans more each year. Ask a ground \
             engineer; digging the peat out or piles to firm ground below it are the usual answers."
        }
        Soil::ShrinkingClay => {
            "Clay that shrinks and swells near trees moves by the width of a finger between a dry summer and a wet winter; one part in a thousand \
             of its width is more than three minutes of arc. Ask a ground engineer, and a tree specialist before any tree is cut: a deeper base \
             or piles with a sleeve may be the answer."
        }
        _ if stated
            .mean_annual_temperature_c
            .is_some_and(|mean| mean < PERMAFROST_MEAN_C) =>
        {
            "Where the year's mean is below freezing the ground may be frozen all year, and whatever thaws it makes it sink. Ask an engineer \
             who knows frozen ground in that country."
        }
        _ => return None,
    };
    Some(reason.to_owned())
}

/// Why nothing is presumed for it.
pub const fn source(soil: Soil) -> Source {
    match soil {
        Soil::MadeGround | Soil::Peat => presumptive::UNFIT,
        _ => Source::judgement("ground that moves with the seasons carries nothing by presumption"),
    }
}

/// Notes what stays unknown with such ground.
pub fn checks(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let soil = soil_table::words(brief.site.soil.value);
    if ground.presumed_bearing.is_none() {
        let why = format!(
            "No bearing pressure can be assumed for {soil}. {}",
            ground.ask_an_engineer.as_deref().unwrap_or_default()
        );
        notes.check(
            Check::unknown(
                "ground.bearing_known",
                "Is a bearing pressure known for this soil?",
                Unit::Kilopascal,
                source(brief.site.soil.value),
                why,
            )
            .moved_by(paths![site.soil, site.presumed_bearing_kpa]),
        );
    }
    if ground.shear_modulus.is_none() {
        let why = format!(
            "No stiffness can be assumed for {soil}, so tilts and frequencies stay unknown until the shear-wave speed has \
             been measured on the site."
        );
        notes.check(
            Check::unknown(
                "ground.stiffness_known",
                "Is the stiffness of this ground known?",
                Unit::Megapascal,
                Source::judgement("no stiffness by presumption"),
                why,
            )
            .moved_by(paths![site.soil, site.shear_wave_speed_m_s]),
        );
    }
}
