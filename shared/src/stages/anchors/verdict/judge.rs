//! One action in one direction, held against every way of failing.

use super::{Across, Borne, CodeInput, Judged, Verdict, checks};
use crate::figure::{Degree, Millimetre, One};
use crate::notes::{Notes, Working};
use crate::rules::aci_318_19::shear as aci_shear;
use crate::rules::en_1992_4_2018::{edge, interaction};
use crate::site_plan::Code;
use crate::stages::anchors::actions::{Action, Factored};
use crate::stages::anchors::areas::{ConeArea, EdgeArea};
use crate::stages::anchors::forces::Forces;
use crate::stages::anchors::strength::{Mode, Strength, Strengths};
use crate::units::{Force, newton};

/// Eighths of a turn, radians: a force that acts towards a corner of the block.
const TOWARDS_A_CORNER: f64 = std::f64::consts::FRAC_PI_4;

/// Judges.
pub(super) fn judge(
    input: &CodeInput,
    across: &Across,
    action: &Action,
    forces: Forces,
    pulled: &Strengths,
    cone: ConeArea,
) -> Verdict {
    let factored = action.factored(input.code);
    let modes = modes(input, across, action, &forces, pulled);
    let worst = |tension: bool, in_steel: bool| {
        let picked = modes
            .iter()
            .filter(|judged| judged.of.is_tension() == tension && judged.of.is_steel() == in_steel);
        picked
            .filter(|judged| judged.of != Mode::ShearLever)
            .map(|judged| judged.utilisation)
            .fold(0.0, f64::max)
    };
    let (steel_n, steel_v, concrete_n, concrete_v) = (
        worst(true, true),
        worst(false, true),
        worst(true, false),
        worst(false, false),
    );
    let (steel_interaction, concrete_interaction) = match input.code {
        Code::Eurocode => (
            interaction::steel_ratio(steel_n, steel_v),
            interaction::concrete_ratio(concrete_n, concrete_v),
        ),
        // The code takes the least strength of all in tension and the least in shear, be it the steel's or the concrete's.
        Code::Aci => {
            let whole =
                aci_shear::interaction_ratio(steel_n.max(concrete_n), steel_v.max(concrete_v));
            (whole, whole)
        }
    };
    Verdict {
        action: action.clone(),
        studs: forces.studs.clone(),
        each: borne(input, across, &factored, &forces),
        modes,
        steel_interaction,
        concrete_interaction,
        cone,
        edge: across.edge.clone(),
        forces,
        trials: Vec::new(),
    }
}

fn modes(
    input: &CodeInput,
    across: &Across,
    action: &Action,
    forces: &Forces,
    pulled: &Strengths,
) -> Vec<Judged> {
    let factored = action.factored(input.code);
    let (single, all) = (&input.single, &across.all);
    let (greatest, pull) = (forces.greatest(), forces.pull());
    // Every stud is taken to bear as much shear as the one that a twist loads most.
    let twisted = factored.twisted_shear(input.radius);
    let left = bending_left(single, forces);
    let off = eccentricity_factor(input.code, across.edge.as_ref(), &factored);
    let mut modes = Vec::new();
    let mut hold = |mode, demand, strength: Option<&Strength>, factor| {
        modes.extend(strength.map(|&strength| {
            judged(
                input.code,
                mode,
                (action.id, action.title),
                demand,
                (strength, factor),
            )
        }));
    };
    hold(Mode::Steel, greatest, single.of(Mode::Steel), 1.0);
    for mode in [Mode::Cone, Mode::Bond, Mode::Splitting] {
        hold(mode, pull, pulled.of(mode), 1.0);
    }
    hold(Mode::ShearSteel, twisted, all.of(Mode::ShearSteel), 1.0);
    hold(Mode::ShearLever, twisted, all.of(Mode::ShearLever), left);
    hold(Mode::PryOut, twisted, all.of(Mode::PryOut), 1.0);
    hold(Mode::Edge, factored.shear, all.of(Mode::Edge), off);
    modes
}

/// What a stud's pull leaves of its bending for the lever arm.
fn bending_left(single: &Strengths, forces: &Forces) -> f64 {
    1.0 - ratio(
        forces.greatest().max(forces.push()),
        single.design(Mode::Steel),
    )
    .min(1.0)
}

/// What a shear that acts beside the studs' middle leaves of the edge.
fn eccentricity_factor(code: Code, edge: Option<&EdgeArea>, factored: &Factored) -> f64 {
    let Some(&EdgeArea { counted, .. }) = edge else {
        return 1.0;
    };
    match code {
        Code::Eurocode => edge::eccentricity_factor(factored.eccentricity(), counted),
        Code::Aci => aci_shear::eccentricity_factor(factored.eccentricity(), counted),
    }
}

/// A way of failing held against the demand of an action (name and words), with a factor on its strength.
pub(super) fn judged(
    code: Code,
    mode: Mode,
    (action, under): (&'static str, &'static str),
    demand: Force,
    (strength, factor): (Strength, f64),
) -> Judged {
    let (characteristic, capacity) = (strength.characteristic * factor, strength.design * factor);
    Judged {
        mode: mode.key(),
        words: mode.words(),
        action,
        under,
        demand,
        characteristic,
        reduction_factor: if newton::get(strength.characteristic) > 0.0 {
            (strength.design / strength.characteristic).value
        } else {
            0.0
        },
        capacity,
        utilisation: ratio(demand, capacity),
        governs: false,
        raised_by: mode.raised_by(),
        source: checks::source(mode, code),
        of: mode,
    }
}

/// What each stud bears by itself: shear alike in all, as the most loaded one has it.
fn borne(input: &CodeInput, across: &Across, factored: &Factored, forces: &Forces) -> Vec<Borne> {
    let count = forces.studs.len().max(1) as f64;
    let shear = factored.twisted_shear(input.radius) / count;
    let steel = [Mode::ShearSteel, Mode::ShearLever]
        .into_iter()
        .filter_map(|mode| across.all.of(mode));
    let sideways = steel
        .map(|strength| ratio(shear, strength.design / count))
        .fold(0.0, f64::max);
    // Pressed concrete does not crack: the uncracked bond bears a push.
    let closed_factor = (input.situation.bond_uncracked / input.situation.bond)
        .value
        .max(1.0);
    let bond = input.single.design(Mode::Bond);
    let one = |&pull: &Force| {
        let along = if pull > newton::new(0.0) {
            ratio(pull, input.single.design(Mode::Steel)).max(ratio(pull, bond))
        } else {
            ratio(-pull, bond * closed_factor)
        };
        Borne {
            pull,
            shear,
            utilisation: along.max(sideways),
        }
    };
    forces.studs.iter().map(one).collect()
}

/// The lines of calculation of what the direction and the eccentricity of the shear do to the edge.
pub(super) fn workings(input: &CodeInput, verdict: &Verdict, notes: &mut Notes) {
    let Some(area) = &verdict.edge else { return };
    let factored = verdict.action_for(Mode::Edge).factored(input.code);
    let (id, formula, source) = match input.code {
        Code::Eurocode => (
            "anchors.eurocode.edge_eccentricity",
            "ψ_ec,V = 1/(1 + 2 e_V/(3 c₁)), e_V = T_Ed/V_Ed",
            edge::EDGE,
        ),
        Code::Aci => (
            "anchors.aci.edge_eccentricity",
            "ψ_ec,V = 1/(1 + e'_V/(1.5 c_a1)), e'_V = T/V",
            aci_shear::BREAKOUT,
        ),
    };
    notes.working(
        Working::new(
            id,
            "Shear beside the studs' middle, at the block's edge",
            formula,
            source,
        )
        .with("e_V", factored.eccentricity(), Millimetre)
        .with("c₁", area.counted, Millimetre)
        .gives(
            "ψ_ec,V",
            eccentricity_factor(input.code, Some(area), &factored),
            One,
        ),
    );
    if input.code == Code::Eurocode {
        notes.working(
            Working::new(
                "anchors.eurocode.edge_direction",
                "Shear towards a corner of the block instead of straight at its edge; straight is worst and is taken",
                "ψ_α,V = √(1/(cos²α + (0.5 sin α)²))",
                edge::EDGE,
            )
            .with("α", TOWARDS_A_CORNER.to_degrees(), Degree)
            .with("ψ_α,V straight", edge::direction_factor(0.0), One)
            .gives("ψ_α,V", edge::direction_factor(TOWARDS_A_CORNER), One),
        );
    }
}

/// Demand over capacity; a capacity of nothing is used up by any demand.
pub(super) fn ratio(demand: Force, capacity: Force) -> f64 {
    let (demand, capacity) = (newton::get(demand), newton::get(capacity));
    if demand <= 0.0 {
        0.0
    } else if capacity > 0.0 {
        demand / capacity
    } else {
        1e6
    }
}
