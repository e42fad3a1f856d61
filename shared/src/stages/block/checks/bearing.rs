//! Whether the ground carries the block: by the least that tables presume, net of the soil that was there, and by the ground's
//! own strength in every design approach.

use crate::brief::Brief;
use crate::field::Path;
use crate::figure::{Degree, Kilonewton, Kilopascal, Metre, PerCent, Unit};
use crate::notes::{Check, Verdict, exceeds};
use crate::paths;
use crate::rules::base_on_slope;
use crate::rules::en_1997_1_2004::annex_d::{self, Base, Load};
use crate::rules::en_1997_1_2004::design_approaches::{self, Approach};
use crate::rules::en_1997_1_2004::eccentric_base as base;
use crate::stages::block::actions::{Actions, Case};
use crate::stages::block::outline::Outline;
use crate::stages::ground::Ground;
use crate::stages::ground::bearing_table::Strength;
use crate::stages::ground::soil_table::Group;
use crate::units::{
    Force, Length, Moment, Pressure, Spread, UnitWeight, kilonewton, kilopascal, square_metre,
};

/// What is left of the bearing of sand and gravel with water within the base's width below it.
const WET_FACTOR: f64 = 0.5;
/// Farthest off the centre that a storm may push the force, as a share of the width.
const STORM_RATIO: f64 = 1.0 / 3.0;
/// What moves these checks.
const FIELDS: &[Path] = paths![
    site.soil,
    site.presumed_bearing_kpa,
    site.undrained_strength_kpa,
    site.friction_angle_deg,
    site.groundwater_depth_m,
    site.slope_deg,
    block.length_m,
    block.width_m,
];

/// Presumed net pressure at this block: sand and gravel carry half where water stands within the base's width below it, and at
/// the low end where nobody knows the water.
///
/// # Source
/// National Building Code of Canada 9.4.4.3, as quoted.
pub(super) fn presumed(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
) -> Option<Spread<Pressure>> {
    let range = ground.presumed_bearing_range?;
    if !matches!(ground.group, Group::Sand | Group::Gravel)
        || brief.site.stated.presumed_bearing_kpa.is_some()
    {
        return Some(range);
    }
    Some(match ground.groundwater_depth {
        Some(water) if water < outline.depth + outline.shorter() => {
            range.map(|pressure| pressure * WET_FACTOR)
        }
        Some(_) => range,
        None => Spread {
            low: range.low * WET_FACTOR,
            ..range
        },
    })
}

/// Stress of the soil that the block replaces, less the water's pressure.
pub(super) fn overburden(ground: &Ground, outline: &Outline) -> Pressure {
    ground.effective_stress(outline.depth)
}

/// Weight on the base, less the lift of the water.
pub(super) fn downwards(actions: &Actions) -> Force {
    actions.weight - actions.lift
}

/// Net pressure in a case; none when the force falls outside the base.
pub(super) fn net_pressure(
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    case: &Case,
) -> Option<Pressure> {
    net_of(
        downwards(actions),
        case.moment,
        [outline.shorter(), outline.longer()],
        overburden(ground, outline),
    )
}

/// Even pressure on the part of the base that carries, less that of the soil that was there: q = V/A' − σ'.
pub(super) fn net_of(
    down: Force,
    moment: Moment,
    [along, across]: [Length; 2],
    overburden: Pressure,
) -> Option<Pressure> {
    let area =
        base::eccentricity(moment, down).and_then(|e| base::effective_area(e, along, across))?;
    let gross = kilonewton::get(down) / square_metre::get(area);
    Some(kilopascal::new(gross) - overburden)
}

/// How much of the ground's strength is used in the worst approach and case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Used {
    pub(super) approach: Approach,
    pub(super) case: &'static str,
    pub(super) load: Load,
    pub(super) resistance: Force,
    pub(super) ratio: f64,
}

/// The worst of all approaches and cases at one end of the word's strength; none for ground without one.
pub(super) fn worst_used(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    highest: bool,
) -> Option<Used> {
    let strength = ground.strength?;
    let base = base_in(ground, outline, highest);
    let falling = base_on_slope::falling(brief.site.stated.slope_deg.unwrap_or(0.0));
    let mut worst: Option<Used> = None;
    let lasting = actions.cases.iter().filter(|case| !case.passing);
    for case in lasting.chain([&actions.calm()]) {
        for approach in design_approaches::ALL {
            // An accident has no partial factor.
            let factor = approach.variable_factor.min(case.factor);
            let load = Load {
                vertical: downwards(actions) * approach.permanent_factor,
                push: case.push * factor,
                moment: case.moment * factor,
            };
            let found = match strength {
                Strength::Undrained { low_kpa, high_kpa } => {
                    let strength = if highest { high_kpa } else { low_kpa };
                    let strength = kilopascal::new(strength / approach.undrained_factor);
                    annex_d::undrained(&load, &base, strength, &falling)
                }
                Strength::Drained { low_deg, high_deg } => {
                    let angle: f64 = if highest { high_deg } else { low_deg };
                    let reduced = (angle.to_radians().tan() / approach.friction_factor).atan();
                    annex_d::drained(&load, &base, reduced.to_degrees(), &falling)
                }
            };
            let resistance = found.unwrap_or(kilonewton::new(0.0)) / approach.bearing_factor;
            let ratio = kilonewton::get(load.vertical) / kilonewton::get(resistance);
            if worst.is_none_or(|worst| ratio.is_nan() || ratio > worst.ratio) {
                worst = Some(Used {
                    approach,
                    case: case.name,
                    load,
                    resistance,
                    ratio,
                });
            }
        }
    }
    worst
}

/// The base for Annex D. Where nobody knows the water, the low end has it at the base and the high end far below.
pub(super) fn base_in(ground: &Ground, outline: &Outline, highest: bool) -> Base {
    Base {
        along: outline.shorter(),
        across: outline.longer(),
        overburden: overburden(ground, outline),
        unit_weight: weight_below(ground, outline, highest),
    }
}

/// Weight of the soil below the base: buoyant with water at the base, moist with water the base's width below it, between the
/// two in proportion.
fn weight_below(ground: &Ground, outline: &Outline, highest: bool) -> UnitWeight {
    let dry = |water: Length| {
        ((water - outline.depth) / outline.shorter())
            .value
            .clamp(0.0, 1.0)
    };
    let dry = match ground.groundwater_depth {
        Some(water) => dry(water),
        None if highest => 1.0,
        None => 0.0,
    };
    ground.layers.moist * dry + ground.layers.buoyant() * (1.0 - dry)
}

/// Whether both checks hold by the low end, for sizing.
pub(in crate::stages::block) fn carries(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
) -> bool {
    let Some(range) = presumed(brief, ground, outline) else {
        return true;
    };
    let worst = actions.worst();
    net_pressure(ground, outline, actions, &worst).is_some_and(|net| {
        !exceeds(
            kilopascal::get(net),
            kilopascal::get(judged_by(ground, &range)),
        )
    }) && worst_used(brief, ground, outline, actions, false)
        .is_none_or(|used| !exceeds(used.ratio, 1.0))
        && off_centre(actions).is_some_and(|e| e <= outline.shorter() * STORM_RATIO)
}

/// The end of the presumed range by which a block is judged: the least, but the most where the strength itself was measured and
/// answers in the check beside this one.
fn judged_by(ground: &Ground, range: &Spread<Pressure>) -> Pressure {
    if ground.strength_is_measured {
        range.high
    } else {
        range.low
    }
}

fn off_centre(actions: &Actions) -> Option<Length> {
    base::eccentricity(actions.worst().moment, downwards(actions))
}

/// Net pressure against the least that tables presume: above the least somebody looks, above the most it fails.
pub(super) fn net(brief: &Brief, ground: &Ground, outline: &Outline, actions: &Actions) -> Check {
    let (id, title) = (
        "block.bearing",
        "Can the soil bear the net pressure under the base?",
    );
    let Some(range) = presumed(brief, ground, outline) else {
        return unknown(id, title, ground);
    };
    let worst = actions.worst();
    let Some(net) = net_pressure(ground, outline, actions, &worst) else {
        return super::stand::outside(id, title, actions);
    };
    let net = kilopascal::get(net).max(0.0);
    let [limit, high] = [judged_by(ground, &range), range.high].map(kilopascal::get);
    let source = ground.bearing_sources.map_or(base::SOURCE, |sources| {
        if ground.strength_is_measured {
            sources.high
        } else {
            sources.low
        }
    });
    Check::at_most(id, title, net, limit, Unit::Kilopascal, source)
        .ask_when(exceeds(net, limit) && !exceeds(net, high) || ground.unsure.is_some())
        .note(net_note(brief, ground, &range, &worst))
        .moved_by(FIELDS)
}

fn net_note(brief: &Brief, ground: &Ground, range: &Spread<Pressure>, worst: &Case) -> String {
    let say = |value| brief.units.say(value, Kilopascal);
    let (low, high) = (say(range.low), say(range.high));
    let judged = if ground.strength_is_measured {
        format!(
            "The soil's strength was measured and is used in the check of the effective base, so this pressure is compared \
             with the highest value in the tables, {high}; the lowest is {low}. Above the highest, make the block wider."
        )
    } else {
        format!(
            "Judged by the lowest value in the tables, {low}; the highest is {high}. Above the lowest, have the ground \
             looked at; above the highest, make the block wider."
        )
    };
    let mut said = format!(
        "How much more the base presses than the soil that was there, on the part of it that carries, in the worst case: {}. {judged}",
        worst.name
    );
    if let Some(unsure) = &ground.unsure {
        said.push_str(&format!(" {unsure}"));
    }
    said
}

/// The ground's strength in every design approach of EN 1997-1; none where no strength is known by a word.
pub(super) fn resisted(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
) -> Option<Check> {
    let used = worst_used(brief, ground, outline, actions, false)?;
    let best = worst_used(brief, ground, outline, actions, true)?;
    let (id, title) = (
        "block.effective_bearing",
        "Does the soil's strength resist the load on the effective base?",
    );
    let check = Check::at_most(
        id,
        title,
        used.load.vertical,
        used.resistance,
        Kilonewton,
        annex_d::SOURCE,
    );
    let fails = check.verdict == Verdict::Fails;
    let strength = strength_words(brief, ground, best.ratio);
    Some(
        check
            .ask_when(fails && !exceeds(best.ratio, 1.0) || ground.unsure.is_some())
            .note(format!(
                "Bearing resistance in the worst of all design approaches, {}, and the worst case, {}. Which approach a country uses is its \
                 own choice. {strength}",
                used.approach.name, used.case
            ))
            .moved_by(FIELDS),
    )
}

/// The strength that it was found with.
fn strength_words(brief: &Brief, ground: &Ground, best_ratio: f64) -> String {
    let [low, high] = ends(brief, ground);
    if ground.strength_is_measured {
        return format!("Found with the measured strength, {low}.");
    }
    format!(
        "Found with the lowest strength usual for this soil, {low}; with the highest, {high}, {} of the resistance would be used.",
        brief
            .units
            .say(100.0 * best_ratio.clamp(0.0, 99.0), PerCent)
    )
}

/// The two ends of the strength, in words.
fn ends(brief: &Brief, ground: &Ground) -> [String; 2] {
    match ground.strength {
        Some(Strength::Undrained { low_kpa, high_kpa }) => {
            [low_kpa, high_kpa].map(|value| brief.units.say(value, Unit::Kilopascal))
        }
        Some(Strength::Drained { low_deg, high_deg }) => {
            [low_deg, high_deg].map(|value| brief.units.say(value, Degree))
        }
        None => [String::new(), String::new()],
    }
}

/// How far off the centre the force acts in the worst case: beyond a third of the width the code asks for special care.
pub(super) fn eccentric(outline: &Outline, actions: &Actions) -> Check {
    let (id, title) = (
        "block.eccentricity",
        "Does the force stay within the middle of the base?",
    );
    let Some(off) = off_centre(actions) else {
        return super::stand::outside(id, title, actions);
    };
    Check::at_most(
        id,
        title, off, outline.shorter() * STORM_RATIO, Metre,
        base::SOURCE,
    )
    .asks_beyond()
    .note(
        "This is how far from the base's centre the force acts in the worst case; up to a third of the width is ordinary, \
         and beyond it the code asks for special care. At rest the force acts at the centre, and no part of the base lifts.",
    )
    .moved_by(paths![block.length_m, block.width_m, pier.height_m, site.design_gust_m_s])
}

fn unknown(id: &'static str, title: &str, ground: &Ground) -> Check {
    let why = ground
        .ask_an_engineer
        .clone()
        .unwrap_or_else(|| "Tables give no bearing pressure for this ground.".to_owned());
    Check::unknown(id, title, Unit::Kilopascal, base::EDGE_SOURCE, why)
        .moved_by(paths![site.soil, site.presumed_bearing_kpa])
}
