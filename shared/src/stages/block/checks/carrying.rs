//! The lines of calculation behind what the ground carries: net pressure, strength, settlement.

use crate::brief::Brief;
use crate::figure::{
    Arcsecond, Degree, Kilonewton, KilonewtonMetre, KilonewtonPerCubicMetre, Kilopascal,
    Megapascal, Metre, Millimetre, One, Unit,
};
use crate::notes::{Line, Notes, Working};
use crate::rules::en_1997_1_2004::{annex_d, eccentric_base as base};
use crate::rules::mechanics::settlement;
use crate::source::Source;
use crate::stages::block::actions::Actions;
use crate::stages::block::outline::Outline;
use crate::stages::ground::Ground;
use crate::stages::ground::bearing_table::Strength;
use crate::units::{Pressure, kilonewton, kilopascal, metre, square_metre};

use super::bearing;

/// Share of the settlement that may come out as tilt.
const UNEVEN_RATIO: f64 = 0.2;

/// Writes them down.
pub(super) fn workings(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    notes: &mut Notes,
) {
    net(ground, outline, actions, notes);
    strength(brief, ground, outline, actions, notes);
    settles(ground, outline, actions, notes);
}

fn net(ground: &Ground, outline: &Outline, actions: &Actions, notes: &mut Notes) {
    Line::new(
        "block.net_pressure",
        "Net pressure on the part of the base that carries",
        "q_net = V / [(B − 2 M/V) L] − σ'",
        base::SOURCE,
    )
    .with("V", bearing::downwards(actions), Kilonewton)
    .with("M", actions.worst().moment, KilonewtonMetre)
    .with("B", outline.shorter(), Metre)
    .with("L", outline.longer(), Metre)
    .with("σ'", bearing::overburden(ground, outline), Kilopascal)
    .gives(
        "q_net",
        Kilopascal,
        |(down, moment, along, across, soil)| {
            // A force outside the base presses on nothing; the line is then left out.
            bearing::net_of(down, moment, [along, across], soil)
                .unwrap_or(kilopascal::new(f64::NAN))
        },
    )
    .note(notes);
}

fn strength(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    notes: &mut Notes,
) {
    let (Some(used), Some(strength)) = (
        bearing::worst_used(brief, ground, outline, actions, false),
        ground.strength,
    ) else {
        return;
    };
    let base = bearing::base_in(ground, outline, false);
    let (formula, symbol, value, unit, factor) = match strength {
        Strength::Undrained { low_kpa, .. } => (
            "R = A' [(π + 2) (c/γ_M) s_c i_c g_c − γ B' sin β + q g_q] / γ_R",
            "c",
            low_kpa,
            Unit::Kilopascal,
            used.approach.undrained_factor,
        ),
        Strength::Drained { low_deg, .. } => (
            "R = A' [q N_q s_q i_q g_q + ½ γ B' N_γ s_γ i_γ g_γ] / γ_R, N by tan φ/γ_M",
            "φ",
            low_deg,
            Unit::Degree,
            used.approach.friction_factor,
        ),
    };
    let slope = brief.site.stated.slope_deg.unwrap_or(0.0);
    notes.working(
        Working::new(
            "block.bearing_resistance",
            format!(
                "Bearing resistance, worst approach {}: {}",
                used.approach.name, used.case
            ),
            formula,
            annex_d::SOURCE,
        )
        .with("V", used.load.vertical, Kilonewton)
        .with("H", used.load.push, Kilonewton)
        .with("M", used.load.moment, KilonewtonMetre)
        .with("B", base.along, Metre)
        .with("L", base.across, Metre)
        .with("q", base.overburden, Kilopascal)
        .with("γ", base.unit_weight, KilonewtonPerCubicMetre)
        .with("β", slope, Degree)
        .with(symbol, value, unit)
        .with("γ_M", factor, One)
        .with("γ_R", used.approach.bearing_factor, One)
        .gives("R", used.resistance, Kilonewton),
    );
}

/// Net pressure at rest, with nobody near and no wind.
fn at_rest(ground: &Ground, outline: &Outline, actions: &Actions) -> Pressure {
    let gross = kilonewton::get(bearing::downwards(actions)) / square_metre::get(outline.plan());
    kilopascal::new(gross) - bearing::overburden(ground, outline)
}

/// Even settlement does no harm to a pier; a share of it may come out as tilt, in the first year.
fn settles(ground: &Ground, outline: &Outline, actions: &Actions, notes: &mut Notes) {
    let Some(modulus) = ground.shear_modulus else {
        return;
    };
    let settled = Line::new(
        "block.settlement",
        "Settlement under the pier at rest",
        "w = 0.88 q_net B (1 − ν²)/E, E = 2 (1 + ν) 0.3 G₀",
        settlement::SOURCE,
    )
    .with(
        "q_net",
        at_rest(ground, outline, actions).max(kilopascal::new(0.0)),
        Kilopascal,
    )
    .with("B", outline.shorter(), Metre)
    .with("ν", ground.poisson_ratio, One)
    .with("G₀", modulus.typical, Megapascal)
    .gives("w", Millimetre, |(net, side, poisson_ratio, modulus)| {
        settlement::settlement(net, side, modulus, poisson_ratio)
    })
    .noted(notes);
    Line::new(
        "block.settlement_tilt",
        "Tilt that may come of it in the first year: align on the pole again then",
        "θ = 0.2 w / B",
        Source::judgement("a fifth of the settlement may be uneven"),
    )
    .with("w", settled, Millimetre)
    .with("B", outline.shorter(), Metre)
    .gives("θ", Arcsecond, |(settled, side)| {
        let tilt = UNEVEN_RATIO * metre::get(settled) / metre::get(side);
        tilt.to_degrees() * 3600.0
    })
    .note(notes);
}
