//! Every action in every direction, and for each way of failing the one that is worst for it.

use super::{CodeInput, Judged, Verdict, directions, judge};
use crate::notes::Notes;
use crate::site_plan::Code;
use crate::stages::anchors::actions::{Action, Factored};
use crate::stages::anchors::areas;
use crate::stages::anchors::forces::{self, Forces};
use crate::stages::anchors::situation::{Acting, Scope};
use crate::stages::anchors::strength::Mode;

/// One action in one direction.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    /// The action.
    pub action: Action,
    /// With its partial factors.
    pub factored: Factored,
    /// What it does to the studs.
    pub forces: Forces,
}

/// One action in one direction, judged, with the studs that it pulls.
pub(super) struct Tried {
    pub(super) verdict: Verdict,
    pub(super) acting: Acting,
}

/// Judges every action in every direction.
pub(super) fn tried(input: &CodeInput, actions: &[Action]) -> Vec<Tried> {
    let mut tried = Vec::new();
    for action in actions {
        let factored = action.factored(input.code);
        let across = input.across(factored.eccentricity(), &mut Notes::default());
        for direction in directions(input.group) {
            let forces = forces::forces(input.situation, input.group, &factored, direction);
            let acting = forces
                .pulled(input.group)
                .unwrap_or_else(|| Acting::evenly(Scope::Pulled, input.group.clone()));
            let pulled = input.strengths(&acting, &mut Notes::default());
            let cone = areas::cone(input.situation, input.group, &acting);
            tried.push(Tried {
                verdict: judge::judge(input, &across, action, forces, &pulled, cone),
                acting,
            });
        }
    }
    tried
}

/// Index of the greatest; the first of equals.
fn greatest(values: impl Iterator<Item = f64>) -> Option<usize> {
    let mut most: Option<(usize, f64)> = None;
    for (i, value) in values.enumerate() {
        if most.is_none_or(|(_, so_far)| value > so_far * (1.0 + 1e-9)) {
            most = Some((i, value));
        }
    }
    most.map(|(i, _)| i)
}

/// The verdict under the action that is worst of all, in which each way of failing stands under the one that is worst for it.
pub(super) fn verdict(
    input: &CodeInput,
    tried: &[Tried],
    notes: &mut Notes,
) -> Option<(Verdict, Acting)> {
    let most = greatest(tried.iter().map(|one| one.verdict.worst_ratio()))?;
    let base = tried.get(most)?;
    let mut verdict = base.verdict.clone();
    verdict.modes.clear();
    for mode in Mode::ALL {
        let Some((judged, one)) = worst_of(mode, base, tried) else {
            continue;
        };
        if one.acting != base.acting {
            beside(input, judged, &one.acting, notes);
        }
        if mode == Mode::Edge {
            verdict.edge.clone_from(&one.verdict.edge);
        }
        verdict.modes.push(judged.clone());
    }
    for one in tried {
        verdict.steel_interaction = verdict.steel_interaction.max(one.verdict.steel_interaction);
        verdict.concrete_interaction = verdict
            .concrete_interaction
            .max(one.verdict.concrete_interaction);
    }
    let trial = |one: &Tried| Trial {
        action: one.verdict.action.clone(),
        factored: one.verdict.action.factored(input.code),
        forces: one.verdict.forces.clone(),
    };
    verdict.trials = tried.iter().map(trial).collect();
    Some((verdict, base.acting.clone()))
}

/// A way of failing under the action that asks most of it; the worst of all counts first among equals.
fn worst_of<'a>(
    mode: Mode,
    base: &'a Tried,
    tried: &'a [Tried],
) -> Option<(&'a Judged, &'a Tried)> {
    let found: Vec<_> = std::iter::once(base)
        .chain(tried)
        .filter_map(|one| Some((one.verdict.of(mode)?, one)))
        .collect();
    let most = greatest(found.iter().map(|(judged, _)| judged.utilisation))?;
    found.get(most).copied()
}

/// The line of calculation of a resistance whose worst action is not the worst of all: other studs are pulled, or otherwise.
fn beside(input: &CodeInput, judged: &Judged, acting: &Acting, notes: &mut Notes) {
    let Some((of, id)) = line(input.code, judged.of) else {
        return;
    };
    let mut scratch = Notes::default();
    let _ = input.strengths(acting, &mut scratch);
    if let Some(mut working) = scratch
        .workings
        .into_iter()
        .find(|working| working.id == of)
    {
        working.id = id;
        working.title = format!(
            "{} (under {}, which is worst for it)",
            working.title, judged.under
        );
        notes.working(working);
    }
}

/// The line of calculation that depends on which studs are pulled, and its name beside the one of the worst action of all.
fn line(code: Code, mode: Mode) -> Option<(&'static str, &'static str)> {
    match (code, mode) {
        (Code::Eurocode, Mode::Cone) => Some((
            "anchors.eurocode.pulled.cone",
            "anchors.eurocode.beside.cone",
        )),
        (Code::Eurocode, Mode::Bond) => Some((
            "anchors.eurocode.pulled.bond",
            "anchors.eurocode.beside.bond",
        )),
        (Code::Eurocode, Mode::Splitting) => Some((
            "anchors.eurocode.pulled.splitting",
            "anchors.eurocode.beside.splitting",
        )),
        (Code::Aci, Mode::Cone) => {
            Some(("anchors.aci.pulled.breakout", "anchors.aci.beside.breakout"))
        }
        (Code::Aci, Mode::Bond) => Some(("anchors.aci.pulled.bond", "anchors.aci.beside.bond")),
        _ => None,
    }
}

impl Verdict {
    /// The trial that is worst by some measure; none where nothing acts.
    pub fn worst_by(&self, measure: impl Fn(&Trial) -> f64) -> Option<&Trial> {
        greatest(self.trials.iter().map(measure)).and_then(|i| self.trials.get(i))
    }

    /// The action under which a way of failing is worst.
    pub(super) fn action_for(&self, mode: Mode) -> &Action {
        let named = self.of(mode).and_then(|judged| {
            self.trials
                .iter()
                .find(|trial| trial.action.id == judged.action)
        });
        named.map_or(&self.action, |trial| &trial.action)
    }
}
