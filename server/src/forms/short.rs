//! The short way: the few answers with which piers can be looked for, on three pages.

use stillground::field::Path;
use stillground::path;
use stillground::site_plan::SitePlan;

use super::question::Question;
use super::questions;
use super::reading::{Fault, Outcome, read};
use super::sheet::Sheet;
use super::step::Step;

/// A page of the short way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// Which units are read, and what the ground is.
    Ground,
    /// What can be dug, and how heavy the telescope is.
    Telescope,
    /// What is watched, and what people stand on.
    People,
}

impl Part {
    /// Every page, in order.
    pub const ALL: [Self; 3] = [Self::Ground, Self::Telescope, Self::People];

    /// Its name in an address.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Ground => "ground",
            Self::Telescope => "telescope",
            Self::People => "people",
        }
    }

    /// What it asks.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Ground => "The ground",
            Self::Telescope => "The pit and the telescope",
            Self::People => "How you observe",
        }
    }

    /// Its place, from 1.
    #[must_use]
    pub fn number(self) -> usize {
        1 + Self::ALL
            .into_iter()
            .position(|part| part == self)
            .unwrap_or_default()
    }

    /// The page of that name.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|part| part.slug() == slug)
    }

    /// The page after it; after the last the ways to build it are shown.
    #[must_use]
    pub fn next(self) -> Option<Self> {
        Self::ALL.into_iter().nth(self.number())
    }

    /// The page before it.
    #[must_use]
    pub fn back(self) -> Option<Self> {
        Self::ALL.into_iter().nth(self.number().checked_sub(2)?)
    }

    /// Paths of what it asks.
    const fn asks(self) -> &'static [Path] {
        match self {
            // Units come before the first box that has one beside it.
            Self::Ground => &[path!(units), path!(site.soil)],
            Self::Telescope => &[
                path!(site.groundwater_depth_m),
                path!(excavation.max_depth_m),
                path!(excavation.max_length_m),
                path!(excavation.method),
                path!(load.mass_kg),
            ],
            Self::People => &[path!(use), path!(floor.kind)],
        }
    }

    /// Its questions, each the one of its step.
    pub fn questions(self) -> impl Iterator<Item = (Step, &'static Question)> {
        self.asks().iter().filter_map(|path| questions::about(path))
    }

    /// A plan's answers to them.
    #[must_use]
    pub fn sheet(self, plan: &SitePlan) -> Sheet {
        let mut all = Sheet::default();
        for (step, question) in self.questions() {
            let of_step = Sheet::of(step, plan);
            if let Some(text) = of_step.text(&question.path) {
                all.put(question.path, text);
            }
        }
        all
    }

    /// What was typed, read into a plan; what this page does not ask stays as it is.
    #[must_use]
    pub fn read(self, plan: &SitePlan, sheet: &Sheet) -> Outcome {
        let mut outcome = Outcome {
            plan: plan.clone(),
            faults: Vec::new(),
        };
        let mut read_already = Vec::new();
        for (step, _) in self.questions() {
            if read_already.contains(&step) {
                continue;
            }
            read_already.push(step);
            let of_step = read(step, &outcome.plan, sheet);
            outcome.plan = of_step.plan;
            let new = |fault: &Fault| !outcome.faults.iter().any(|one| one.fields == fault.fields);
            let faults: Vec<Fault> = of_step.faults.into_iter().filter(new).collect();
            outcome.faults.extend(faults);
        }
        outcome
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn everything_that_is_asked_has_a_question_and_nothing_is_asked_twice() {
        let mut paths: Vec<&Path> = Vec::new();
        for part in Part::ALL {
            assert_eq!(part.questions().count(), part.asks().len(), "{part:?}");
            paths.extend(part.asks());
        }
        assert_eq!(paths.len(), 9);
        paths.sort_unstable();
        paths.dedup();
        assert_eq!(paths.len(), 9);
    }

    #[test]
    fn the_pages_follow_each_other_and_lead_back() {
        assert_eq!(Part::Ground.next(), Some(Part::Telescope));
        assert_eq!(Part::People.next(), None);
        assert_eq!(Part::Ground.back(), None);
        assert_eq!(Part::People.back(), Some(Part::Telescope));
    }

    #[test]
    fn what_is_typed_on_one_page_leaves_the_rest_alone() {
        let mut plan = SitePlan::unknown();
        plan.site.frost_depth_m = Some(0.6);
        let mut sheet = Sheet::default();
        sheet.put("use", "visual");
        sheet.put("excavation.max_depth_m", "90 cm");
        let outcome = Part::Telescope.read(&plan, &sheet);
        assert!(outcome.faults.is_empty(), "{:?}", outcome.faults);
        assert_eq!(outcome.plan.excavation.max_depth_m, Some(0.9));
        assert_eq!(outcome.plan.site.frost_depth_m, Some(0.6));
        sheet.put("excavation.max_depth_m", "quite deep");
        let outcome = Part::Telescope.read(&plan, &sheet);
        assert_eq!(outcome.faults.len(), 1);
    }
}
