//! The studs held against what acts: the worst action and direction, mode by mode, and what governs.

mod checks;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Notes;
use crate::rules::aci_318_19::shear as aci_shear;
use crate::rules::en_1992_4_2018::interaction;
use crate::site_plan::Code;
use crate::stages::anchors::actions::{self, Action, Factored};
use crate::stages::anchors::forces::{self, Forces};
use crate::stages::anchors::layout::Group;
use crate::stages::anchors::situation::{Acting, Scope, Situation};
use crate::stages::anchors::strength::{CodeResistances, Mode, Resistances, Strengths};
use crate::stages::anchors::{aci, eurocode};
use crate::units::{Force, kilonewton, newton};

pub use checks::put as put_checks;

/// One way of failing, held against the worst action.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judged {
    /// Which way.
    pub mode: &'static str,
    /// In words.
    pub words: &'static str,
    /// What is asked.
    #[serde(rename = "demand_kn", serialize_with = "kilonewton::serialize")]
    pub demand: Force,
    /// What it can give.
    #[serde(rename = "capacity_kn", serialize_with = "kilonewton::serialize")]
    pub capacity: Force,
    /// Demand over capacity.
    pub utilisation: f64,
    #[serde(skip)]
    pub(super) of: Mode,
}

/// What one code finds.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Verdict {
    /// Action that is worst.
    pub action: Action,
    /// Pull in each stud under it, kN.
    #[serde(rename = "stud_forces_kn", serialize_with = "kilonewton::list::serialize")]
    pub studs: Vec<Force>,
    /// Every way of failing.
    pub modes: Vec<Judged>,
    /// Steel under pull and shear together.
    pub steel_interaction: f64,
    /// Concrete under pull and shear together.
    pub concrete_interaction: f64,
    #[serde(skip)]
    pub(super) forces: Forces,
    #[serde(skip)]
    pub(super) factored: Factored,
}

impl Verdict {
    /// The way in which the group fails first.
    #[must_use]
    pub fn governing(&self) -> Option<&Judged> {
        self.modes.iter().max_by(|a, b| a.utilisation.total_cmp(&b.utilisation))
    }

    fn worst_ratio(&self) -> f64 {
        let modes = self.modes.iter().map(|judged| judged.utilisation).fold(0.0, f64::max);
        modes.max(self.steel_interaction).max(self.concrete_interaction)
    }
}

/// Resistances and verdict by one code.
fn by_code(situation: &Situation, group: &Group, actions: &[Action], code: Code, notes: &mut Notes) -> (CodeResistances, Option<Verdict>) {
    let strengths = |acting: &Acting, notes: &mut Notes| match code {
        Code::Eurocode => eurocode::strengths(situation, acting, notes),
        Code::Aci => aci::strengths(situation, acting, notes),
    };
    let nearest = Group { studs: nearest_stud(group), concrete: group.concrete };
    let single = strengths(&Acting::evenly(Scope::Single, nearest), notes);
    let all = strengths(&Acting::evenly(Scope::Group, group.clone()), notes);
    let mut worst: Option<(f64, Verdict, Acting)> = None;
    for action in actions {
        let factored = action.factored(code);
        for direction in directions(group) {
            let forces = forces::forces(situation, group, &factored, direction);
            let acting = forces.pulled(group).unwrap_or_else(|| Acting::evenly(Scope::Pulled, group.clone()));
            let pulled = strengths(&acting, &mut Notes::default());
            let verdict = judge(code, action, factored, forces, [&single, &all, &pulled]);
            let ratio = verdict.worst_ratio();
            if worst.as_ref().is_none_or(|(most, ..)| ratio > *most) {
                worst = Some((ratio, verdict, acting));
            }
        }
    }
    let Some((_, verdict, acting)) = worst else { return (CodeResistances { single, group: all, pulled: Strengths::default() }, None) };
    let pulled = strengths(&acting, notes);
    (CodeResistances { single, group: all, pulled }, Some(verdict))
}

/// The stud nearest to an edge.
fn nearest_stud(group: &Group) -> Vec<crate::stages::anchors::layout::Stud> {
    let edge = |stud: &&crate::stages::anchors::layout::Stud| {
        group.concrete.edges(**stud).iter().map(|&edge| crate::units::millimetre::get(edge)).fold(f64::INFINITY, f64::min)
    };
    group.studs.iter().min_by(|a, b| edge(a).total_cmp(&edge(b))).copied().into_iter().collect()
}

/// Directions in which an action may act: along both axes of the block, and through a stud.
fn directions(group: &Group) -> Vec<[f64; 2]> {
    let through = group.studs.first().map(|stud| {
        let (x, y) = (crate::units::millimetre::get(stud.x), crate::units::millimetre::get(stud.y));
        let length = x.hypot(y).max(1e-9);
        [x / length, y / length]
    });
    let mut directions = vec![[1.0, 0.0], [0.0, 1.0]];
    directions.extend(through);
    directions
}

fn judge(code: Code, action: &Action, factored: Factored, forces: Forces, strengths: [&Strengths; 3]) -> Verdict {
    let [single, all, pulled] = strengths;
    let (greatest, pull, shear) = (forces.greatest(), forces.pull(), factored.shear);
    let mut modes = Vec::new();
    let mut judge = |mode: Mode, demand: Force, capacity: Option<Force>| {
        let Some(capacity) = capacity else { return };
        modes.push(Judged { mode: mode.key(), words: mode.words(), demand, capacity, utilisation: ratio(demand, capacity), of: mode });
    };
    let of = |strengths: &Strengths, mode| strengths.of(mode).map(|strength| strength.design);
    judge(Mode::Steel, greatest, of(single, Mode::Steel));
    for mode in [Mode::Cone, Mode::Bond, Mode::Splitting] {
        judge(mode, pull, of(pulled, mode));
    }
    judge(Mode::ShearSteel, shear, of(all, Mode::ShearSteel));
    // What a stud's pull uses of its bending is gone for the lever arm.
    let left = 1.0 - ratio(greatest.max(forces.push()), single.design(Mode::Steel)).min(1.0);
    judge(Mode::ShearLever, shear, of(all, Mode::ShearLever).map(|capacity| capacity * left));
    judge(Mode::PryOut, shear, of(all, Mode::PryOut));
    judge(Mode::Edge, shear, of(all, Mode::Edge));
    let worst = |tension: bool, in_steel: bool| {
        let picked = modes.iter().filter(|judged| judged.of.is_tension() == tension && judged.of.is_steel() == in_steel);
        picked.filter(|judged| judged.of != Mode::ShearLever).map(|judged| judged.utilisation).fold(0.0, f64::max)
    };
    let (steel_n, steel_v, concrete_n, concrete_v) = (worst(true, true), worst(false, true), worst(true, false), worst(false, false));
    let (steel_interaction, concrete_interaction) = match code {
        Code::Eurocode => (interaction::steel_ratio(steel_n, steel_v), interaction::concrete_ratio(concrete_n, concrete_v)),
        Code::Aci => (aci_shear::interaction_ratio(steel_n, steel_v), aci_shear::interaction_ratio(concrete_n, concrete_v)),
    };
    Verdict { action: action.clone(), studs: forces.studs.clone(), modes, steel_interaction, concrete_interaction, forces, factored }
}

/// Demand over capacity; a capacity of nothing is used up by any demand.
fn ratio(demand: Force, capacity: Force) -> f64 {
    let (demand, capacity) = (newton::get(demand), newton::get(capacity));
    if demand <= 0.0 {
        0.0
    } else if capacity > 0.0 {
        demand / capacity
    } else {
        1e6
    }
}

/// Both codes' verdicts; that of the chosen one first.
#[derive(Debug, Clone, PartialEq)]
pub struct Both {
    /// Resistances by both.
    pub resistances: Resistances,
    /// By EN 1992-4.
    pub eurocode: Option<Verdict>,
    /// By ACI 318-19.
    pub aci: Option<Verdict>,
}

impl Both {
    /// The chosen code's verdict.
    #[must_use]
    pub fn chosen(&self, brief: &Brief) -> Option<&Verdict> {
        match brief.code.value {
            Code::Eurocode => self.eurocode.as_ref(),
            Code::Aci => self.aci.as_ref(),
        }
    }
}

/// Finds resistances and verdicts by both codes.
#[must_use]
pub fn find(situation: &Situation, group: &Group, actions: &[Action], notes: &mut Notes) -> Both {
    let (eurocode, by_eurocode) = by_code(situation, group, actions, Code::Eurocode, notes);
    let (aci, by_aci) = by_code(situation, group, actions, Code::Aci, notes);
    let chosen = if situation.brief.code.value == Code::Aci { &aci } else { &eurocode };
    let resistances =
        Resistances { single: chosen.single.clone(), group: chosen.group.clone(), eurocode: eurocode.clone(), aci: aci.clone() };
    let both = Both { resistances, eurocode: by_eurocode, aci: by_aci };
    if let Some(verdict) = both.chosen(situation.brief) {
        actions::working(&verdict.action, situation.brief.code.value, notes);
    }
    both
}
