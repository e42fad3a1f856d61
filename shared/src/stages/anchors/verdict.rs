//! The studs held against what acts: the worst action and direction, mode by mode, and what governs.

mod checks;
mod judge;
mod worst;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Notes;
use crate::site_plan::Code;
use crate::source::Source;
use crate::stages::anchors::actions::{self, Action};
use crate::stages::anchors::areas::{ConeArea, EdgeArea};
use crate::stages::anchors::forces::Forces;
use crate::stages::anchors::layout::{Group, Stud};
use crate::stages::anchors::situation::{Acting, Scope, Situation};
use crate::stages::anchors::strength::{CodeResistances, Mode, Resistances, Strengths};
use crate::stages::anchors::{aci, eurocode};
use crate::units::{Force, Length, kilonewton, millimetre};

pub use checks::put as put_checks;
pub use worst::Trial;

/// One way of failing, held against the action that is worst for it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judged {
    /// Which way.
    pub mode: &'static str,
    /// In words.
    pub words: &'static str,
    /// Name of the action that asks most of it.
    pub action: &'static str,
    /// That action in words.
    pub under: &'static str,
    /// What is asked.
    #[serde(rename = "demand_kn", with = "kilonewton")]
    pub demand: Force,
    /// Characteristic (EN) or nominal (ACI) value.
    #[serde(rename = "characteristic_kn", with = "kilonewton")]
    pub characteristic: Force,
    /// Design value over it: 1/γ or φ.
    pub reduction_factor: f64,
    /// What it can give.
    #[serde(rename = "capacity_kn", with = "kilonewton")]
    pub capacity: Force,
    /// Demand over capacity.
    pub utilisation: f64,
    /// Whether it fails first.
    pub governs: bool,
    /// What would raise it.
    pub raised_by: &'static str,
    /// Its clause.
    pub source: Source,
    #[serde(skip)]
    pub(super) of: Mode,
}

impl Judged {
    /// Its clause, with its document where that is not the code's own.
    pub fn clause(&self, code: Code) -> String {
        let own = if code == Code::Aci { "ACI" } else { "EN" };
        if self.source.document.starts_with(own) {
            self.source.clause.to_owned()
        } else {
            format!("{}, {}", self.source.document, self.source.clause)
        }
    }
}

/// What one stud bears under the worst action.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Borne {
    /// Pull; negative where it is pushed.
    #[serde(rename = "pull_kn", with = "kilonewton")]
    pub pull: Force,
    /// Shear.
    #[serde(rename = "shear_kn", with = "kilonewton")]
    pub shear: Force,
    /// Share of what this stud can bear alone, by its steel or its bond, whichever is greater.
    pub utilisation: f64,
}

/// What one code finds.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Verdict {
    /// Action that is worst of all.
    pub action: Action,
    /// Pull in each stud under it, kN.
    #[serde(rename = "stud_forces_kn", with = "kilonewton::list")]
    pub studs: Vec<Force>,
    /// What each stud bears.
    pub each: Vec<Borne>,
    /// Every way of failing.
    pub modes: Vec<Judged>,
    /// Pull and shear together, by the action that is worst for them: in the steel by EN 1992-4; by ACI 318-19, which does not part
    /// steel from concrete, of whichever way of failing is worst in either, and then the same as the next.
    pub steel_interaction: f64,
    /// The same in the concrete by EN 1992-4; by ACI 318-19 as above.
    pub concrete_interaction: f64,
    /// The cone of the pulled studs.
    pub cone: ConeArea,
    /// The side of the block that breaks off first; null where every side is far.
    pub edge: Option<EdgeArea>,
    #[serde(skip)]
    pub(super) forces: Forces,
    /// Every action in every direction.
    #[serde(skip)]
    pub(super) trials: Vec<Trial>,
}

impl Verdict {
    /// The way in which the group fails first.
    pub fn governing(&self) -> Option<&Judged> {
        self.modes
            .iter()
            .max_by(|a, b| a.utilisation.total_cmp(&b.utilisation))
    }

    /// What was found about one way of failing; none where it cannot happen here.
    pub fn of(&self, mode: Mode) -> Option<&Judged> {
        self.modes.iter().find(|judged| judged.of == mode)
    }

    fn worst_ratio(&self) -> f64 {
        let modes = self
            .modes
            .iter()
            .map(|judged| judged.utilisation)
            .fold(0.0, f64::max);
        modes
            .max(self.steel_interaction)
            .max(self.concrete_interaction)
    }

    /// Marks what fails first.
    fn mark(&mut self) {
        let first = self.governing().map(|judged| judged.of);
        for judged in &mut self.modes {
            judged.governs = Some(judged.of) == first;
        }
    }
}

/// What lasts: name and words.
const PRELOAD: (&str, &str) = ("preload", "the preload");

/// What all verdicts of one code have in common.
pub(super) struct CodeInput<'a> {
    pub(super) situation: &'a Situation<'a>,
    pub(super) group: &'a Group,
    pub(super) code: Code,
    pub(super) single: Strengths,
    pub(super) radius: Length,
}

/// What bears a shear.
pub(super) struct Across {
    pub(super) all: Strengths,
    pub(super) edge: Option<EdgeArea>,
}

impl CodeInput<'_> {
    fn strengths(&self, acting: &Acting, notes: &mut Notes) -> Strengths {
        by(self.code, self.situation, acting, notes)
    }

    /// All studs against a shear that acts so far beside their middle.
    fn across(&self, beside: Length, notes: &mut Notes) -> Across {
        let evenly = Acting::evenly(Scope::Group, self.group.clone()).pushed(beside);
        let edge = match self.code {
            Code::Eurocode => eurocode::worst_edge(self.situation, &evenly),
            Code::Aci => aci::worst_edge(self.situation, &evenly),
        };
        Across {
            all: self.strengths(&evenly, notes),
            edge,
        }
    }
}

fn by(code: Code, situation: &Situation, acting: &Acting, notes: &mut Notes) -> Strengths {
    match code {
        Code::Eurocode => eurocode::strengths(situation, acting, notes),
        Code::Aci => aci::strengths(situation, acting, notes),
    }
}

/// Resistances and verdict by one code.
fn by_code(
    situation: &Situation,
    group: &Group,
    actions: &[Action],
    code: Code,
    notes: &mut Notes,
) -> (CodeResistances, Option<Verdict>) {
    let nearest = Group {
        studs: nearest_stud(group),
        concrete: group.concrete,
    };
    let input = CodeInput {
        situation,
        group,
        code,
        single: by(
            code,
            situation,
            &Acting::evenly(Scope::Single, nearest),
            notes,
        ),
        radius: situation.brief.anchors.circle_diameter.value / 2.0,
    };
    let mut beside = Notes::default();
    let worst = worst::verdict(&input, &worst::tried(&input, actions), &mut beside);
    let eccentricity = worst.as_ref().map_or(millimetre::new(0.0), |(verdict, _)| {
        verdict.action_for(Mode::Edge).factored(code).eccentricity()
    });
    let (single, all) = (input.single.clone(), input.across(eccentricity, notes).all);
    let Some((mut verdict, acting)) = worst else {
        return (
            CodeResistances {
                single,
                group: all,
                pulled: Strengths::default(),
            },
            None,
        );
    };
    let pulled = input.strengths(&acting, notes);
    beside
        .workings
        .into_iter()
        .for_each(|working| notes.working(working));
    judge::workings(&input, &verdict, notes);
    verdict.mark();
    (
        CodeResistances {
            single,
            group: all,
            pulled,
        },
        Some(verdict),
    )
}

/// The stud nearest to an edge.
fn nearest_stud(group: &Group) -> Vec<Stud> {
    let edge = |stud: &&Stud| {
        group
            .concrete
            .edges(**stud)
            .iter()
            .map(|&edge| millimetre::get(edge))
            .fold(f64::INFINITY, f64::min)
    };
    group
        .studs
        .iter()
        .min_by(|a, b| edge(a).total_cmp(&edge(b)))
        .copied()
        .into_iter()
        .collect()
}

/// Directions in which an action may act: along both axes of the block, and through a stud; both ways where the ring has no
/// stud opposite to each.
fn directions(group: &Group) -> Vec<[f64; 2]> {
    let through = group.studs.first().map(|stud| {
        let (x, y) = (millimetre::get(stud.x), millimetre::get(stud.y));
        let length = x.hypot(y).max(1e-9);
        [x / length, y / length]
    });
    let mut directions = vec![[1.0, 0.0], [0.0, 1.0]];
    directions.extend(through);
    if group.studs.len() % 2 == 1 {
        directions.extend(directions.clone().into_iter().map(|[x, y]| [-x, -y]));
    }
    directions
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
    pub fn chosen(&self, brief: &Brief) -> Option<&Verdict> {
        match brief.code.value {
            Code::Eurocode => self.eurocode.as_ref(),
            Code::Aci => self.aci.as_ref(),
        }
    }

    /// Holds the preload against the bond as a pull that lasts, where it hangs in the bond.
    pub fn sustain(&mut self, situation: &Situation, preload: Force) {
        if !situation.seat.pulls_on_bond() || !situation.brief.anchors.product.known() {
            return;
        }
        for (code, verdict, of) in [
            (
                Code::Eurocode,
                &mut self.eurocode,
                &self.resistances.eurocode,
            ),
            (Code::Aci, &mut self.aci, &self.resistances.aci),
        ] {
            let (Some(verdict), Some(strength)) =
                (verdict.as_mut(), of.single.of(Mode::BondSustained))
            else {
                continue;
            };
            verdict.modes.push(judge::judged(
                code,
                Mode::BondSustained,
                PRELOAD,
                preload,
                (*strength, 1.0),
            ));
            verdict.mark();
        }
    }
}

/// Finds resistances and verdicts by both codes.
pub fn find(situation: &Situation, group: &Group, actions: &[Action], notes: &mut Notes) -> Both {
    let (eurocode, by_eurocode) = by_code(situation, group, actions, Code::Eurocode, notes);
    let (aci, by_aci) = by_code(situation, group, actions, Code::Aci, notes);
    let chosen = if situation.brief.code.value == Code::Aci {
        &aci
    } else {
        &eurocode
    };
    let resistances = Resistances {
        single: chosen.single.clone(),
        group: chosen.group.clone(),
        eurocode: eurocode.clone(),
        aci: aci.clone(),
    };
    let both = Both {
        resistances,
        eurocode: by_eurocode,
        aci: by_aci,
    };
    if let Some(verdict) = both.chosen(situation.brief) {
        let code = situation.brief.code.value;
        actions::working(&verdict.action, code, notes);
        actions::twist(
            verdict.action_for(Mode::ShearSteel),
            code,
            group.studs.len(),
            situation.brief.anchors.circle_diameter.value / 2.0,
            notes,
        );
    }
    both
}
