//! Answers that the planner found and the person took with one press: they stand in the plan like any other, and count as
//! open where piers are looked for again.

use crate::field::{Path, Problem};
use crate::path;
use crate::site_plan::SitePlan;

/// The answers that can be taken so, by path: block, tube, fill and seat.
pub const FIELDS: [Path; 7] = [
    path!(block.length_m),
    path!(block.width_m),
    path!(block.depth_m),
    path!(pier.outside_diameter_mm),
    path!(pier.wall_mm),
    path!(pier.fill),
    path!(pier.levelling),
];

impl SitePlan {
    /// The plan without what was taken: as the person left it open.
    pub fn left_open(&self) -> Self {
        let mut open = self.clone();
        for field in &self.chosen {
            open.forget(field);
        }
        open.chosen.clear();
        open
    }

    /// Whether an answer of [`FIELDS`] stands in the plan and is the same in another.
    fn agrees(&self, other: &Self, field: &str) -> bool {
        let answer = |plan: &Self| {
            let number = Self::number(field).and_then(|number| (number.get)(plan));
            let key = Self::other(field).and_then(|other| (other.key)(plan));
            (number, key)
        };
        answer(self) != (None, None) && answer(self) == answer(other)
    }

    /// What is still as it was taken in an earlier state of the plan: whoever changes an answer has said it.
    pub fn keep_chosen(&mut self, before: &Self) {
        let mut kept = before.chosen.clone();
        kept.retain(|field| before.agrees(self, field));
        self.chosen = kept;
    }

    /// Marks what differs from another state of the plan as taken, beside what was taken there.
    pub fn mark_chosen(&mut self, before: &Self) {
        let taken = FIELDS.into_iter().filter(|field| {
            before.chosen.iter().any(|one| field == one.as_str()) || !before.agrees(self, field)
        });
        let taken: Vec<String> = taken
            .filter(|field| self.agrees(self, field))
            .map(String::from)
            .collect();
        self.chosen = taken;
    }

    fn forget(&mut self, field: &str) {
        if let Some(number) = Self::number(field) {
            (number.set)(self, None);
        }
        if let Some(other) = Self::other(field) {
            let _ = (other.set_key)(self, None);
        }
    }
}

/// Names that are none of [`FIELDS`], or that stand there twice.
pub(super) fn problems(plan: &SitePlan) -> Vec<Problem> {
    let said = |at: usize, field: &str| {
        if !FIELDS.iter().any(|known| known == field) {
            Some(format!("“{field}” is no answer that the planner chooses."))
        } else if plan.chosen[..at].iter().any(|one| one == field) {
            Some(format!("“{field}” stands here twice."))
        } else {
            None
        }
    };
    let all = plan.chosen.iter().enumerate();
    all.filter_map(|(at, field)| {
        Some(Problem {
            fields: vec![format!("chosen[{at}]")],
            value: None,
            said: said(at, field)?,
        })
    })
    .take(FIELDS.len())
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::pier::Fill;

    fn taken() -> (SitePlan, SitePlan) {
        let mut said = SitePlan::unknown();
        said.block.depth_m = Some(0.9);
        let mut plan = said.clone();
        plan.block.length_m = Some(1.2);
        plan.block.width_m = Some(1.2);
        plan.pier.fill = Some(Fill::Sand);
        plan.mark_chosen(&said);
        (said, plan)
    }

    #[test]
    fn what_was_taken_is_marked_and_comes_out_again() {
        let (said, plan) = taken();
        assert_eq!(
            plan.chosen,
            ["block.length_m", "block.width_m", "pier.fill"]
        );
        assert_eq!(plan.left_open(), said);
        assert!(plan.validate().is_ok());
    }

    #[test]
    fn whoever_changes_an_answer_has_said_it() {
        let (_, plan) = taken();
        let mut changed = plan.clone();
        changed.block.length_m = Some(1.3);
        changed.pier.fill = None;
        changed.keep_chosen(&plan);
        assert_eq!(changed.chosen, ["block.width_m"]);
        assert_eq!(changed.left_open().block.length_m, Some(1.3));
    }

    #[test]
    fn another_way_taken_later_leaves_what_was_said_alone() {
        let (said, mut plan) = taken();
        let before = plan.clone();
        plan.block.length_m = Some(1.5);
        plan.block.width_m = Some(1.5);
        plan.mark_chosen(&before);
        assert_eq!(plan.left_open(), said);
    }

    #[test]
    fn a_name_that_is_no_such_answer_is_refused() {
        let mut plan = SitePlan::unknown();
        plan.chosen = vec![
            "site.soil".to_owned(),
            "pier.fill".into(),
            "pier.fill".into(),
        ];
        let problems = plan.validate().unwrap_err().0;
        assert_eq!(problems.len(), 2);
        assert_eq!(problems[0].fields, ["chosen[0]"]);
    }
}
