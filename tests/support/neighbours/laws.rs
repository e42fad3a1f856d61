//! Laws: as an answer moves in the direction that is worse, what hangs on it gets no better.

use stillground::brief::resolve;
use stillground::design::{Design, design};
use stillground::field::NumberField;
use stillground::halfspace::Shelf;
use stillground::site_plan::SitePlan;
use stillground::units::{millimetre, newton_metre};

use super::figures::{stiffnesses, studs_that_are_pulled, usage};
use crate::generated::Dice;

/// What an answer that gets worse may not make better.
#[derive(Debug, Clone, Copy)]
pub enum Watched {
    /// How much of a check's capacity is used.
    Use(&'static str),
    /// Use of every check whose name begins so.
    UsesOf(&'static str),
    /// Hours until a task is done.
    Done(&'static str),
    /// How little each stiffness of the ground is, at either end and in the middle.
    Softness,
    /// How little the column's top resists a push.
    SoftTop,
    /// How little torque is set.
    SmallTorque,
}

/// As the answer moves in the direction that is worse, what is watched gets no better.
pub struct Law {
    /// The law in words.
    pub name: &'static str,
    /// Path of the answer.
    pub field: &'static str,
    /// Whether more of it is worse.
    pub more_is_worse: bool,
    /// What is watched.
    pub watched: &'static [Watched],
    /// Names of checks that are no part of it, though they begin so.
    pub but: &'static [&'static str],
    /// Where the law holds.
    pub holds: fn(&Design) -> bool,
    /// Whether it speaks of the same studs only: the codes judge those that are pulled as one group, and deeper studs, which hold
    /// stiffer, may have more of them pulled.
    pub of_one_group: bool,
}

const ANYWHERE: fn(&Design) -> bool = |_| true;
/// Above the warmest row of its table a resin has no time: the schedule holds a better day's place with the longest of the table.
const RESIN_CURES: fn(&Design) -> bool = |design| design.anchors.setting.cure_time.is_some();
/// In a strip or a corner of concrete the factors for a near edge fall with the depth, EN 1992-4 by up to a seventh, where the area
/// no longer grows, and ACI 318-19 17.6.2.6.1 within twice the depth.
const FAR_FROM_EDGES: fn(&Design) -> bool = |design| {
    let near_mm = 2.0 * millimetre::get(design.anchors.embedment);
    edge_mm(design).is_some_and(|given_mm| given_mm >= near_mm)
};
/// A stud beside the block has no concrete that could break; its distance to the edge counts as a tenth of a millimetre.
const STUDS_IN_CONCRETE: fn(&Design) -> bool =
    |design| edge_mm(design).is_some_and(|given_mm| given_mm > 1.0);

const fn law(
    name: &'static str,
    field: &'static str,
    more_is_worse: bool,
    watched: &'static [Watched],
) -> Law {
    Law {
        name,
        field,
        more_is_worse,
        watched,
        but: &[],
        holds: ANYWHERE,
        of_one_group: false,
    }
}

/// From a stud to the nearest edge of the block.
fn edge_mm(design: &Design) -> Option<f64> {
    let mut checks = design.checks.iter();
    checks
        .find(|check| check.id == "anchors.edge_distance")?
        .capacity
}

/// The laws.
pub const LAWS: [Law; 14] = [
    Law {
        holds: RESIN_CURES,
        ..law(
            "colder work is never quicker",
            "work.temperature_c",
            false,
            &[Watched::Done("load"), Watched::Done("full_strength")],
        )
    },
    Law {
        holds: RESIN_CURES,
        ..law(
            "colder concrete is never quicker",
            "anchors.concrete_temperature_c",
            false,
            &[Watched::Done("load"), Watched::Done("resin_cures")],
        )
    },
    law(
        "lower bearing is never better",
        "site.presumed_bearing_kpa",
        false,
        &[
            Watched::Use("block.bearing"),
            Watched::Use("block.effective_bearing"),
        ],
    ),
    law(
        "less contact is never stiffer",
        "block.side_contact_from_m",
        true,
        &[Watched::Softness],
    ),
    law(
        "softer ground is never stiffer",
        "site.shear_wave_speed_m_s",
        false,
        &[Watched::Softness],
    ),
    law(
        "a bigger gust is never kinder",
        "site.design_gust_m_s",
        true,
        &[
            Watched::Use("block.overturning"),
            Watched::Use("block.sliding"),
            Watched::Use("block.bearing"),
            Watched::Use("block.effective_bearing"),
            Watched::Use("block.eccentricity"),
            Watched::Use("pier.strength"),
            Watched::UsesOf("anchors."),
        ],
    ),
    Law {
        // The torque is halved near an edge, and with it what it uses of the thread.
        but: &["anchors.proof", "anchors.torque"],
        holds: STUDS_IN_CONCRETE,
        ..law(
            "a closer edge is never stronger",
            "block.width_m",
            false,
            &[
                Watched::UsesOf("anchors."),
                Watched::Use("block.overturning"),
            ],
        )
    },
    law(
        "deeper frost is never kinder",
        "site.frost_depth_m",
        true,
        &[Watched::Use("block.frost"), Watched::Use("block.adfreeze")],
    ),
    law(
        "a steeper slope is never better",
        "site.slope_deg",
        true,
        &[
            Watched::Use("block.bearing"),
            Watched::Use("block.effective_bearing"),
        ],
    ),
    // Not the pressure under the base: water carries its share of the block, and the net pressure with it.
    law(
        "higher water is never better",
        "site.groundwater_depth_m",
        false,
        &[
            Watched::Use("block.buoyancy"),
            Watched::Use("block.overturning"),
            Watched::Use("block.sliding"),
        ],
    ),
    law(
        "deeper rock is never stiffer",
        "site.rock_depth_m",
        true,
        &[Watched::Softness],
    ),
    Law {
        of_one_group: true,
        holds: FAR_FROM_EDGES,
        ..law(
            "a shallower stud is never stronger",
            "anchors.embedment_mm",
            false,
            &[
                Watched::Use("anchors.bond"),
                Watched::Use("anchors.cone"),
                Watched::Use("anchors.pry_out"),
            ],
        )
    },
    law(
        "a lower limit never gives more torque",
        "anchors.max_torque_n_m",
        false,
        &[Watched::SmallTorque],
    ),
    law(
        "a taller column is never stiffer",
        "pier.height_m",
        true,
        &[Watched::SoftTop],
    ),
];

/// What is watched, larger is worse: each with its name. What could not be found is left out.
fn watched(design: &Design, what: Watched) -> Vec<(String, f64)> {
    let uses = |id: &dyn Fn(&str) -> bool| {
        design
            .checks
            .iter()
            .filter(|check| id(check.id))
            .filter_map(|check| Some((check.id.to_owned(), usage(check)?)))
            .collect()
    };
    match what {
        Watched::Use(id) => uses(&|found| found == id),
        Watched::UsesOf(stage) => uses(&|found| found.starts_with(stage)),
        Watched::Done(task) => design
            .schedule
            .iter()
            .filter(|found| found.id == task)
            .map(|found| (task.to_owned(), found.done_h))
            .collect(),
        Watched::Softness => {
            let held = &design.ground_stiffness;
            [&held.low, &held.typical, &held.high]
                .into_iter()
                .zip(["low", "typical", "high"])
                .flat_map(|(held, end)| {
                    stiffnesses(held)
                        .into_iter()
                        .map(move |(name, k)| (format!("{name} {end}"), 1.0 / k))
                })
                .collect()
        }
        Watched::SoftTop => vec![("top".to_owned(), 1.0 / design.pier.top_stiffness.value)],
        Watched::SmallTorque => vec![(
            "torque".to_owned(),
            1.0 / newton_metre::get(design.anchors.torque.set),
        )],
    }
}

/// How far a figure may get better by rounding and by the mesh of the solved ground.
const ROUNDING_RATIO: f64 = 2e-3;

/// What broke a law: the law with the figure, and how.
pub type Broken = (String, String);

/// What a plan says against a law; the dice choose how far its answer is moved.
#[must_use]
pub fn broken(
    law: &Law,
    plan: &SitePlan,
    base: &Design,
    dice: &mut Dice,
    shelf: &dyn Shelf,
) -> Vec<Broken> {
    moved(law, plan, base, dice, shelf).unwrap_or_default()
}

fn moved(
    law: &Law,
    plan: &SitePlan,
    base: &Design,
    dice: &mut Dice,
    shelf: &dyn Shelf,
) -> Option<Vec<Broken>> {
    let field: &NumberField = SitePlan::numbers().find(|field| field.path == law.field)?;
    let was = (field.get)(plan)?;
    if !(law.holds)(base) {
        return None;
    }
    let (least, most) = if law.more_is_worse {
        (was, field.most)
    } else {
        (field.least, was)
    };
    // Near as often as far.
    let share = dice.number(1e-3, 1.0);
    let is = if law.more_is_worse {
        was + share * (most - was)
    } else {
        was - share * (was - least)
    };
    let mut other = plan.clone();
    (field.set)(&mut other, Some(is.clamp(field.least, field.most)));
    let worse = design(&resolve(&other).ok()?, shelf);
    if law.of_one_group && studs_that_are_pulled(base) != studs_that_are_pulled(&worse) {
        return None;
    }
    let mut found = Vec::new();
    for &what in law.watched {
        let after = watched(&worse, what);
        for (name, before) in watched(base, what) {
            let Some((_, now)) = after.iter().find(|(other, _)| *other == name) else {
                continue;
            };
            if !law.but.contains(&name.as_str()) && *now < before * (1.0 - ROUNDING_RATIO) - 1e-9 {
                found.push((
                    format!("{}: {name}", law.name),
                    format!(
                        "{} from {was} to {is}: {name} {before} became {now}",
                        law.field
                    ),
                ));
            }
        }
    }
    Some(found)
}
