//! Warnings from what lies round the pier: water, frost, topsoil, and answers that disagree.

use crate::brief::Brief;
use crate::figure::{Metre, Unit};
use crate::notes::{Notes, When};
use crate::source::{Source, Standing};
use crate::stages::ground::Ground;
use crate::stages::ground::frost_class::FrostClass;
use crate::stages::ground::soil_table::{self, Group};
use crate::stages::ground::stiffness::counts;
use crate::units::metre;

/// A drain nearer than this can wet the ground that holds the block.
const DRAIN_NEAR_M: f64 = 3.0;
/// A measured speed that is this many times outside the range for the soil in words is worth a second look.
const DISAGREES_FACTOR: f64 = 1.5;

/// Source of frost's grip on a block's sides.
const ADFREEZE: Source = Source::new(
    "UFC 3-130-04",
    "2004",
    "frost heave and adfreezing on foundations",
    Standing::FromMemory,
);

/// Lists the warnings.
pub fn cautions(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    drain(brief, notes);
    water(brief, ground, notes);
    frost(brief, ground, notes);
    topsoil(brief, ground, notes);
    disagreement(brief, notes);
    blow_count(brief, ground, notes);
}

fn drain(brief: &Brief, notes: &mut Notes) {
    let Some(distance) = brief
        .site
        .stated
        .drain_distance_m
        .filter(|distance| *distance < DRAIN_NEAR_M)
    else {
        return;
    };
    let text = format!(
        "A drain or buried service runs {} away. Find its line and depth from the owner's records and with a locator before digging, dig \
         by hand near it, and have an old drain tested: a leak softens the ground beside the block.",
        brief.units.say(distance, Unit::Metre)
    );
    notes.caution(
        "ground.drain",
        When::Digging,
        text,
        Source::common_practice("locate services before digging"),
    );
}

fn water(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let Some(depth) = ground
        .groundwater_depth
        .map(metre::get)
        .filter(|depth| *depth < 2.0)
    else {
        return;
    };
    let group = match ground.group {
        Group::Silt | Group::Sand | Group::Gravel => {
            "It takes stiffness and bearing from this soil, which the figures count in. "
        }
        Group::Clay => "In clay it counts at the low end of the stiffness. ",
        Group::Rock | Group::Unfit => "",
    };
    let place = if depth > 0.0 {
        format!("{} below the surface", brief.units.say(depth, Unit::Metre))
    } else {
        "at the surface".to_owned()
    };
    let text = format!(
        "Groundwater stands {place} at its highest. {group}It lifts a block that reaches into it, and the stiffness will \
         change a little from a wet to a dry season; measure the pier in both."
    );
    notes.caution(
        "ground.water",
        When::Planning,
        text,
        Source::derived("effective stress and buoyancy"),
    );
}

fn frost(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    if ground.frost_class < FrostClass::F2 || ground.frost_depth <= metre::new(0.0) {
        return;
    }
    let text = format!(
        "This soil heaves when it freezes, down to {} in a hard winter. A base below that depth is not lifted from beneath, but frozen \
         ground grips the block's sides and lifts it. Keep the ground beside it drained, and carry out what the plan has against it \
         before the first winter.",
        brief.units.say(ground.frost_depth, Metre)
    );
    notes.caution("ground.frost", When::Planning, text, ADFREEZE);
}

fn topsoil(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let Some(depth) = ground
        .topsoil_depth
        .filter(|depth| *depth > metre::new(0.0))
    else {
        return;
    };
    let text = format!(
        "The upper {} is topsoil: strip it and keep it apart for the garden. It does not hold the block's sides, which \
         are counted as held only below it unless the plan states otherwise. The base must stand below it.",
        brief.units.say(depth, Metre)
    );
    notes.caution(
        "ground.topsoil",
        When::Digging,
        text,
        Source::common_practice("topsoil is stripped"),
    );
}

/// A measured value beats an assumed one, but where it is far from what the words say, one of the two is mistaken.
fn disagreement(brief: &Brief, notes: &mut Notes) {
    let stated = &brief.site.stated;
    let (Some(speed), Some(soil)) = (stated.shear_wave_speed_m_s, stated.soil) else {
        return;
    };
    let Some([low, _, high]) = soil_table::row(soil).speed_m_s else {
        return;
    };
    if speed >= low / DISAGREES_FACTOR && speed <= high * DISAGREES_FACTOR {
        return;
    }
    let say = |value| brief.units.say(value, Unit::MetrePerSecond);
    let text = format!(
        "The stated speed of shear waves, {}, is far from what {} usually has near the surface, {} to {}. The plan uses the stated one. An \
         average over thirty metres is not the speed at one metre: check what was measured.",
        say(speed),
        soil_table::words(soil),
        say(low),
        say(high)
    );
    notes.caution(
        "ground.speed_disagrees",
        When::Planning,
        text,
        soil_table::SOURCE,
    );
}

/// A blow count that is set aside is said to be.
fn blow_count(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let stated = &brief.site.stated;
    if stated.blow_count.is_none() || stated.shear_wave_speed_m_s.is_some() || counts(ground.group)
    {
        return;
    }
    let text = format!(
        "The blow count is set aside: in {} the test says little about stiffness. Give the depth and kind of the ground in which it was \
         taken, or a measured speed of shear waves.",
        soil_table::words(ground.soil)
    );
    notes.caution(
        "ground.blow_count",
        When::Planning,
        text,
        Source::judgement("blow counts in rock, fill and peat"),
    );
}
