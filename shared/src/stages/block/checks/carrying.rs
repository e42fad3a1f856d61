//! The lines of calculation behind what the ground carries: net pressure, strength, settlement.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::en_1997_1_2004::{annex_d, eccentric_base as base};
use crate::rules::mechanics::settlement;
use crate::source::Source;
use crate::stages::block::actions::Actions;
use crate::stages::block::outline::Outline;
use crate::stages::ground::Ground;
use crate::stages::ground::bearing_table::Strength;
use crate::units::{
    Pressure, kilonewton, kilonewton_metre, kilonewton_per_cubic_metre, kilopascal, megapascal,
    metre, square_metre,
};

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
    let worst = actions.worst();
    let down = bearing::downwards(actions);
    let Some(net) = bearing::net_pressure(ground, outline, actions, &worst) else {
        return;
    };
    notes.working(
        Working::new(
            "block.net_pressure",
            "Net pressure on the part of the base that carries",
            "q_net = V / [(B − 2 M/V) L] − σ'",
            base::SOURCE,
        )
        .with("V", kilonewton::get(down), Unit::Kilonewton)
        .with(
            "M",
            kilonewton_metre::get(worst.moment),
            Unit::KilonewtonMetre,
        )
        .with("B", metre::get(outline.shorter()), Unit::Metre)
        .with("L", metre::get(outline.longer()), Unit::Metre)
        .with(
            "σ'",
            kilopascal::get(bearing::overburden(ground, outline)),
            Unit::Kilopascal,
        )
        .gives("q_net", kilopascal::get(net), Unit::Kilopascal),
    );
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
        .with("V", kilonewton::get(used.load.vertical), Unit::Kilonewton)
        .with("H", kilonewton::get(used.load.push), Unit::Kilonewton)
        .with(
            "M",
            kilonewton_metre::get(used.load.moment),
            Unit::KilonewtonMetre,
        )
        .with("B", metre::get(base.along), Unit::Metre)
        .with("L", metre::get(base.across), Unit::Metre)
        .with("q", kilopascal::get(base.overburden), Unit::Kilopascal)
        .with(
            "γ",
            kilonewton_per_cubic_metre::get(base.unit_weight),
            Unit::KilonewtonPerCubicMetre,
        )
        .with("β", slope, Unit::Degree)
        .with(symbol, value, unit)
        .with("γ_M", factor, Unit::One)
        .with("γ_R", used.approach.bearing_factor, Unit::One)
        .gives("R", kilonewton::get(used.resistance), Unit::Kilonewton),
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
    let net = at_rest(ground, outline, actions);
    let settled = settlement::settlement(
        net,
        outline.shorter(),
        modulus.typical,
        ground.poisson_ratio,
    );
    let settled_mm = 1000.0 * metre::get(settled);
    notes.working(
        Working::new(
            "block.settlement",
            "Settlement under the pier at rest",
            "w = 0.88 q_net B (1 − ν²)/E, E = 2 (1 + ν) 0.3 G₀",
            settlement::SOURCE,
        )
        .with("q_net", kilopascal::get(net).max(0.0), Unit::Kilopascal)
        .with("B", metre::get(outline.shorter()), Unit::Metre)
        .with("ν", ground.poisson_ratio, Unit::One)
        .with("G₀", megapascal::get(modulus.typical), Unit::Megapascal)
        .gives("w", settled_mm, Unit::Millimetre),
    );
    let tilt = UNEVEN_RATIO * metre::get(settled) / metre::get(outline.shorter());
    notes.working(
        Working::new(
            "block.settlement_tilt",
            "Tilt that may come of it in the first year: align on the pole again then",
            "θ = 0.2 w / B",
            Source::judgement("a fifth of the settlement may be uneven"),
        )
        .with("w", settled_mm, Unit::Millimetre)
        .with("B", metre::get(outline.shorter()), Unit::Metre)
        .gives("θ", tilt.to_degrees() * 3600.0, Unit::Arcsecond),
    );
}
