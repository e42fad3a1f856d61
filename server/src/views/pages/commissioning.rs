//! The page of measurements: how each is made, what was found, and what they say of the pier.

mod made;
mod said;

use askama::Template;
use stillground::figure::significant;
use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::{Commissioning, Direction, State};
use stillground::trace::{Kind, Trace};

use super::frame::Frame;
use crate::forms::commissioning::Wrong;
use crate::forms::sheet::Sheet;
use crate::planned::Planned;
use made::{FormView, forms};
use said::{SaidView, told};

/// What a form brought.
#[derive(Default)]
pub struct Shown {
    /// What was typed, or found in a file.
    pub sheet: Sheet,
    /// What has to be put right.
    pub faults: Vec<Wrong>,
    /// What a file said.
    pub heard: Option<Heard>,
}

/// What a file said.
pub struct Heard {
    /// Whether it is a knock.
    pub is_knock: bool,
    /// What was found, as texts by box.
    pub found: Vec<(&'static str, String)>,
    /// How it was read.
    pub remarks: Vec<String>,
}

impl Heard {
    /// Of a record that was read.
    #[must_use]
    pub fn of(trace: &Trace) -> Self {
        let mut found = Vec::new();
        if let Some(mode) = trace.modes.first() {
            found.push(("frequency_hz", significant(mode.frequency_hz, 5)));
            found.push(("frequency_sd_hz", significant(mode.frequency_sd_hz, 2)));
            found.push(("damping_ratio", significant(mode.damping_ratio, 3)));
        }
        match trace.steps.as_slice() {
            [] => {}
            [one] => {
                found.push(("tilt_arcsec", significant(one.size.abs(), 3)));
                found.push(("tilt_sd_arcsec", significant(one.sd, 2)));
            }
            [x, y, ..] => {
                let size = x.size.hypot(y.size);
                let sd = (x.size * x.sd).hypot(y.size * y.sd) / size.max(1e-12);
                found.push(("tilt_arcsec", significant(size, 3)));
                found.push(("tilt_sd_arcsec", significant(sd, 2)));
            }
        }
        Self {
            is_knock: trace.kind == Kind::Knock,
            found,
            remarks: trace.remarks.clone(),
        }
    }

    /// Of one that was not.
    #[must_use]
    pub fn refused(kind: Kind, said: &str) -> Self {
        Self {
            is_knock: kind == Kind::Knock,
            found: Vec::new(),
            remarks: vec![format!("This record cannot be read: {said}.")],
        }
    }

    /// What was found as a form that may be corrected.
    #[must_use]
    pub fn sheet(&self) -> Sheet {
        let what = if self.is_knock { "knock" } else { "lean" };
        let mut pairs = vec![("what".to_owned(), what.to_owned())];
        pairs.extend(
            self.found
                .iter()
                .map(|(name, text)| ((*name).to_owned(), text.replace('−', "-"))),
        );
        Sheet::sent(pairs)
    }
}

/// A measurement of the plan.
pub struct RowView {
    /// In words.
    pub words: String,
    /// Its list.
    pub list: &'static str,
    /// Its place there.
    pub row: usize,
}

/// The page.
#[derive(Template)]
#[template(path = "pages/commissioning.html")]
pub struct CommissioningPage {
    /// The frame.
    pub frame: Frame,
    /// Where the plan's pages stand.
    pub root: String,
    /// Whether the reader may change it.
    pub may_edit: bool,
    /// The revision.
    pub base: u32,
    /// Whether the pier stands already, whoever built it.
    pub stands: bool,
    /// What has to be put right.
    pub faults: Vec<Wrong>,
    /// What a file said.
    pub remarks: Vec<String>,
    /// The ways to measure.
    pub forms: Vec<FormView>,
    /// What was measured.
    pub rows: Vec<RowView>,
    /// How it trembles: name, label, ticked.
    pub symptoms: Vec<(&'static str, &'static str, bool)>,
    /// How long and how far.
    pub lasts: String,
    /// How far the star moves.
    pub moves: String,
    /// What they say.
    pub said: Option<SaidView>,
}

impl CommissioningPage {
    /// The page of a plan.
    #[must_use]
    #[allow(clippy::too_many_arguments, reason = "a page shows all of it")]
    pub fn of(
        frame: Frame,
        root: String,
        may_edit: bool,
        base: u32,
        plan: &SitePlan,
        planned: Option<&Planned>,
        shown: &Shown,
        sheet: &Sheet,
    ) -> Self {
        let said = &plan.commissioning;
        let text =
            |value: Option<f64>| value.map_or_else(String::new, |value| significant(value, 4));
        Self {
            frame,
            may_edit,
            base,
            stands: plan.state == Some(State::Standing),
            faults: shown.faults.clone(),
            remarks: shown
                .heard
                .as_ref()
                .map(|heard| heard.remarks.clone())
                .unwrap_or_default(),
            forms: forms(sheet, &shown.faults),
            rows: rows(said),
            symptoms: vec![
                (
                    "in_wind",
                    "in the wind",
                    said.symptoms.in_wind == Some(true),
                ),
                (
                    "at_steps",
                    "when somebody steps near it",
                    said.symptoms.at_steps == Some(true),
                ),
                (
                    "at_touch",
                    "when it is touched",
                    said.symptoms.at_touch == Some(true),
                ),
                (
                    "at_slew",
                    "when the mount slews",
                    said.symptoms.at_slew == Some(true),
                ),
            ],
            lasts: text(said.symptoms.lasts_s),
            moves: text(said.symptoms.moves_arcsec),
            said: planned.and_then(|planned| {
                let fitted = planned.design.fitted.as_ref()?;
                Some(told(fitted, planned, &root))
            }),
            root,
        }
    }
}

fn rows(said: &Commissioning) -> Vec<RowView> {
    let way = |direction: Direction| match direction {
        Direction::X => "east and west",
        Direction::Y => "north and south",
    };
    let sd =
        |sd: Option<f64>| sd.map_or_else(String::new, |sd| format!(" ± {}", significant(sd, 2)));
    let knocks = said.knocks.iter().enumerate().map(|(row, knock)| RowView {
        words: format!(
            "Knock, {}, {}: {}{} Hz",
            way(knock.direction),
            if knock.with_mount {
                "mount and telescope on"
            } else {
                "nothing on the pier"
            },
            significant(knock.frequency_hz, 4),
            sd(knock.frequency_sd_hz)
        ),
        list: "knocks",
        row,
    });
    let leans = said.leans.iter().enumerate().map(|(row, lean)| RowView {
        words: format!(
            "Lean, {} kg at {} m east and {} m north: {}{} arcsec",
            significant(lean.mass_kg, 3),
            significant(lean.x_m, 3),
            significant(lean.y_m, 3),
            significant(lean.tilt_arcsec, 3),
            sd(lean.tilt_sd_arcsec)
        ),
        list: "leans",
        row,
    });
    let pulls = said.pulls.iter().enumerate().map(|(row, pull)| RowView {
        words: format!(
            "Pull, {}, {} N at {} m: {}{} arcsec",
            way(pull.direction),
            significant(pull.force_n, 3),
            significant(pull.height_m, 3),
            significant(pull.tilt_arcsec, 3),
            sd(pull.tilt_sd_arcsec)
        ),
        list: "pulls",
        row,
    });
    knocks.chain(leans).chain(pulls).collect()
}
