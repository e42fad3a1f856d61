//! Whether the block presses too hard, tips, slides or floats.

use crate::brief::Brief;
use crate::figure::{Kilonewton, KilonewtonMetre, Unit};
use crate::notes::Check;
use crate::paths;
use crate::rules::en_1997_1_2004::{eccentric_base as base, sliding, uplift};
use crate::rules::ibc_2012::sliding::{self as presumed, BaseResistance};
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::block::actions::Actions;
use crate::stages::block::outline::Outline;
use crate::units::{Force, Length, Moment, Pressure, kilonewton};

/// Factor on the weight that holds; what tips and pushes has its own.
const HOLDING_FACTOR: f64 = 0.9;
/// Factor on the water's lift, a permanent action that takes from it.
const LIFT_FACTOR: f64 = 1.1;
/// Where they come from.
pub(super) const EQU_SOURCE: Source =
    Source::from_memory("EN 1990", "2002", "Table A1.2(A), set A (EQU)");

/// Largest pressure at the base's edge; none when the force falls outside the base.
pub(in crate::stages::block) fn largest_pressure(
    outline: &Outline,
    actions: &Actions,
) -> Option<Pressure> {
    let eccentricity = base::eccentricity(actions.worst().moment, actions.weight)?;
    base::edge_pressure(
        actions.weight,
        eccentricity,
        outline.shorter(),
        outline.longer(),
    )
}

pub(in crate::stages::block) fn stands(outline: &Outline, actions: &Actions) -> bool {
    overturning_moment(actions) <= stabilising_moment(outline, actions)
}

pub(in crate::stages::block) fn stays_put(
    brief: &Brief,
    outline: &Outline,
    actions: &Actions,
) -> bool {
    sliding_resistance(brief, outline, actions)
        .is_none_or(|resistance| actions.push() <= resistance)
}

fn overturning_moment(actions: &Actions) -> Moment {
    let most = actions.overturns_most();
    most.moment * most.factor
}

pub(super) fn stabilising_moment(outline: &Outline, actions: &Actions) -> Moment {
    holding(actions.weight, actions.lift, outline.shorter())
}

/// What holds upright: nine tenths of the weight less eleven tenths of the lift, on half the base.
pub(super) fn holding(weight: Force, lift: Force, side: Length) -> Moment {
    (weight * HOLDING_FACTOR - lift * LIFT_FACTOR) * (side / 2.0)
}

/// Weight that is counted on against overturning and sliding.
fn held_down(actions: &Actions) -> Force {
    actions.weight * HOLDING_FACTOR - actions.lift * LIFT_FACTOR
}

fn sliding_resistance(brief: &Brief, outline: &Outline, actions: &Actions) -> Option<Force> {
    let presumed = match brief.site.soil.value {
        Soil::SoftClay | Soil::FirmClay | Soil::StiffClay | Soil::HardClay | Soil::Silt => {
            presumed::clay()
        }
        Soil::LooseSand | Soil::MediumSand | Soil::DenseSand => presumed::SAND,
        Soil::Gravel => presumed::GRAVEL,
        Soil::WeatheredRock | Soil::Rock => presumed::SEDIMENTARY_ROCK,
        Soil::MadeGround | Soil::Peat | Soil::ShrinkingClay => return None,
    };
    let weight = held_down(actions);
    let none = kilonewton::new(0.0);
    Some(match presumed {
        _ if weight <= none => none,
        BaseResistance::Friction { .. } | BaseResistance::Adhesion { .. } => {
            sliding::resistance(weight, outline.plan(), presumed)
        }
    })
}

/// The force falls outside the base: nothing of it carries, whatever the ground.
pub(super) fn outside(id: &'static str, title: &str, actions: &Actions) -> Check {
    let down = actions.weight - actions.lift;
    Check::at_most(id, title, down, kilonewton::new(0.0), Kilonewton, base::EDGE_SOURCE)
        .note("The force falls outside the base, so no pressure under it can balance it: the block tips before the ground gives way.")
        .moved_by(paths![block.length_m, block.width_m, pier.height_m, site.design_gust_m_s])
}

pub(super) fn overturning(outline: &Outline, actions: &Actions) -> Check {
    let (demand, capacity) = (
        overturning_moment(actions),
        stabilising_moment(outline, actions),
    );
    Check::at_most("block.overturning", "Is the block safe against overturning?", demand, capacity, KilonewtonMetre, EQU_SOURCE)
        .note(format!(
            "Looked at: a person who leans on the telescope, a ladder with a person on it, the design gust on column and telescope, a \
             knock; the worst is {}. Overturning loads are multiplied by 1.5, accidents (a knock, a gust that catches a roof \
              open) by 1, the weight by 0.9 and the water's uplift by 1.1; soil at the sides is ignored.",
            actions.overturns_most().name
        ))
        .moved_by(paths![block.width_m, block.length_m, pier.height_m, site.design_gust_m_s, load.wind_area_m2])
}

pub(super) fn sliding(brief: &Brief, outline: &Outline, actions: &Actions) -> Check {
    let (id, title) = ("block.sliding", "Is the block safe against sliding?");
    let Some(resistance) = sliding_resistance(brief, outline, actions) else {
        let why =
            "Tables give no sliding resistance for this ground; a ground engineer has to say.";
        return Check::unknown(id, title, Unit::Kilonewton, sliding::SOURCE, why)
            .moved_by(paths![site.soil]);
    };
    Check::at_most(id, title, actions.push(), resistance, Kilonewton, presumed::SOURCE)
        .note("Friction or adhesion under the base alone; the ground in front of a block that is cast into it holds many times more.")
        .moved_by(paths![site.soil, block.length_m, block.width_m, site.design_gust_m_s])
}

pub(super) fn buoyancy(brief: &Brief, outline: &Outline) -> Check {
    let said = brief.site.groundwater_depth.value;
    let lift = uplift::lift(outline.plan(), outline.depth, said.unwrap_or(outline.depth));
    let holding = uplift::holding(outline.weight());
    let note = match said {
        Some(water) if water < outline.depth => {
            "Concrete is more than twice as heavy as water, so a solid block stays down; keep the fresh concrete out of the water, though."
        }
        Some(_) => "The base lies above the groundwater.",
        None => {
            "No groundwater is stated; a solid block would stay down even in water up to its top."
        }
    };
    Check::at_most(
        "block.buoyancy",
        "Is the block safe against uplift by groundwater?",
        lift,
        holding,
        Kilonewton,
        uplift::SOURCE,
    )
    .note(note)
    .moved_by(paths![site.groundwater_depth_m, block.depth_m])
}
