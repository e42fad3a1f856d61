//! The ground and what lies round the pier: slope, tree, water, frost, topsoil, and answers that disagree.

use crate::brief::Brief;
use crate::figure::{Degree, Metre, Unit};
use crate::notes::{Notes, When};
use crate::rules::tree_reach;
use crate::rules::ufc_3_130_06_2004::berggren;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::ground::frost_class::FrostClass;
use crate::stages::ground::soil_table::{self, Group};
use crate::stages::ground::stiffness::counts;
use crate::stages::ground::{Ground, frost, slope, strength, tree, unfit};
use crate::units::metre;

/// A drain nearer than this can wet the ground that holds the block.
const DRAIN_NEAR_M: f64 = 3.0;
/// A measured speed that is this many times outside the range for the soil in words is worth a second look.
const DISAGREES_FACTOR: f64 = 1.5;

/// Source of frost's grip on a block's sides.
const ADFREEZE: Source = Source::from_memory(
    "UFC 3-130-04",
    "2004",
    "frost heave and adfreezing on foundations",
);

/// Lists the warnings.
pub(super) fn list(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    frost_disagrees(brief, notes);
    if let Some(reason) = &ground.ask_an_engineer {
        notes.caution(
            "ground.ask_an_engineer",
            When::Planning,
            reason.clone(),
            unfit::source(brief.site.soil.value),
        );
    }
    if strength::is_set_aside(brief, ground) {
        strength_set_aside(ground, notes);
    }
    slope(brief, ground, notes);
    tree(brief, ground, notes);
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
            "It makes this soil less stiff and less strong, and the figures allow for that. "
        }
        Group::Clay => "In clay the low end of the stiffness allows for it. ",
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
         ground grips the block's sides and lifts it. Keep the ground beside it drained, and build in the plan's frost \
          remedy before the first winter.",
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
        "The stated shear-wave speed, {}, is far from what {} usually has near the surface, {} to {}. The plan uses the stated one. An \
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
        "The blow count is not used: in {} the test says little about stiffness. Give the depth and kind of the ground in \
         which it was taken, or a measured shear-wave speed.",
        soil_table::words(ground.soil)
    );
    notes.caution(
        "ground.blow_count",
        When::Planning,
        text,
        Source::judgement("blow counts in rock, fill and peat"),
    );
}

/// A stated depth less than this share of the calculated one is worth a second look.
const FROST_DISAGREES_RATIO: f64 = 0.6;

fn frost_disagrees(brief: &Brief, notes: &mut Notes) {
    let Some([depth, found]) = frost::stated_and_calculated(brief) else {
        return;
    };
    if depth < found * FROST_DISAGREES_RATIO {
        let say = |length| brief.units.say(length, Metre);
        let text = format!(
            "The stated frost depth, {}, is much less than the {} that the freezing index gives in this soil kept clear of snow. The plan \
             uses the stated one; turf and snow keep frost out, a swept floor does not.",
            say(depth),
            say(found)
        );
        notes.caution(
            "ground.frost_disagrees",
            When::Planning,
            text,
            berggren::SOURCE,
        );
    }
}

fn strength_set_aside(ground: &Ground, notes: &mut Notes) {
    let text = format!(
        "The measured strength is not used: undrained strength counts in clay and silt, the friction angle in silt, sand and gravel, \
         and the ground at the block's depth is described as {}. Check which ground was tested.",
        soil_table::words(ground.soil)
    );
    notes.caution(
        "ground.strength_set_aside",
        When::Planning,
        text,
        Source::judgement("each kind of ground has its own strength"),
    );
}

/// Slope above which the figures carry a factor worth saying: about 1 in 10.
const SAID_DEG: f64 = 6.0;

fn slope(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let Some(slope) = brief
        .site
        .stated
        .slope_deg
        .filter(|slope| *slope > SAID_DEG)
    else {
        return;
    };
    let unstable = slope > slope::most_deg(ground.group);
    let said = brief.units.say(slope, Degree);
    let text = if unstable {
        format!(
            "A slope of {said} may creep or slide, and a pit cut into it makes that more likely. Ask a ground engineer before you dig, and keep clear \
             of the foot of the slope after rain."
        )
    } else {
        format!(
            "On a slope of {said} the pit is deeper uphill than downhill. Measure depths from the downhill edge, pile the spoil downhill, \
             and lead rainwater round the pit."
        )
    };
    notes.caution(
        "ground.slope",
        When::Planning,
        text,
        Source::judgement("ground on a slope"),
    );
}

/// Roots are in a pit this near to a tree, whatever the ground, m.
const ROOTS_M: f64 = 2.0;
/// Source of that.
const ROOTS: Source = Source::judgement("roots within two metres of a trunk");

fn tree(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let Some(tree) = tree::tree(brief) else {
        return;
    };
    let shrinks = tree::may_shrink(ground.soil, ground.group);
    if tree.distance_m > if shrinks { tree.reach_m } else { ROOTS_M } {
        return;
    }
    let say = |value| brief.units.say(value, Unit::Metre);
    let who = if brief.site.stated.tree_height_m.is_some() {
        ""
    } else {
        " (assumed)"
    };
    let what = if ground.soil == Soil::ShrinkingClay {
        "Its roots dry the clay in summer. Neither cut nor plant a tree before the engineer has said how the pier is to stand: clay that \
         is no longer dried swells for years."
    } else if shrinks {
        "A tree this near in clay moves the ground with the seasons: move the pier, or have it looked at. Neither cut nor plant a tree \
         before that: clay that is no longer dried swells for years."
    } else {
        "Its roots may be in the pit, its sway moves the ground, and it hides the sky. Cut no thick roots without a tree \
         specialist; the tree may be protected."
    };
    let text = format!(
        "A tree {} high{who} stands {} away. {what}",
        say(tree.height_m),
        say(tree.distance_m)
    );
    let source = if shrinks { tree_reach::SOURCE } else { ROOTS };
    notes.caution("ground.tree", When::Planning, text, source);
}
