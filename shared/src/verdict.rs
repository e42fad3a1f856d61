//! The verdict: may it be built, does the star stay still when nobody is there, and the rule for people.
//!
//! Three questions that are never mixed. What people do is no failure of the pier and is answered by a rule.

use serde::Serialize;

use crate::notes::{Check, Question, Verdict as Found, exceeds};
use crate::stages::ground::tree::SEASONS;
use crate::stages::motion::growth::Cost;
use crate::stages::motion::{ALONE, Budget, Measure, Motion};
use crate::units::Outcome;

/// Answers to the three questions.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Verdict {
    /// May it be built.
    pub build: Build,
    /// Does the star stay still when nobody is there.
    pub still: Still,
    /// What people may do while the telescope exposes.
    pub conduct_rule: String,
}

/// Whether it may be built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Says {
    /// Every check of building holds.
    Yes,
    /// At least one fails.
    No,
    /// None fails, and at least one needs somebody to look.
    Ask,
}

/// May it be built.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Build {
    /// The answer.
    pub says: Says,
    /// Checks that fail; else those that somebody has to answer; else the one that is nearest its limit.
    pub because: Vec<&'static str>,
}

/// Whether the star grows by more than is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Within {
    /// At worst by no more than is asked.
    Within,
    /// At worst by more.
    Over,
}

/// How still the star stays when nobody is there.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Still {
    /// Growth of the star's width over one exposure; null when not known.
    pub star_growth_ratio: Option<Outcome<f64>>,
    /// Share of its peak that is left; null when not known.
    pub peak_left_ratio: Option<Outcome<f64>>,
    /// Growth that is asked for.
    pub asked_ratio: f64,
    /// What it is judged by: the star's width, blur within a frame, or for the eye the movement.
    pub measure: Measure,
    /// Largest movement at worst, arcsec; null when not known.
    pub movement_arcsec: Option<f64>,
    /// Movement that the eye bears, or the swing that widens the star by what is asked, arcsec.
    pub asked_arcsec: f64,
    /// Growth that the mount's own softness adds; no fault of the pier's.
    pub mount_adds_ratio: Option<Outcome<f64>>,
    /// The answer, by the worst; null when not known, and where the ground itself moves with the seasons.
    pub says: Option<Within>,
    /// What moves the star then, largest first, by the name of its check.
    pub because: Vec<&'static str>,
}

/// The verdict on a design's checks and motion.
pub fn find(checks: &[Check], motion: &Motion) -> Verdict {
    Verdict {
        build: build(checks),
        still: not_sure(still(motion), checks),
        conduct_rule: motion.where_to_stand.first().cloned().unwrap_or_else(|| {
            "Nobody near the pier while the telescope exposes: what a person does to this ground is not known.".to_owned()
        }),
    }
}

/// May it be built, by these checks.
pub fn build(checks: &[Check]) -> Build {
    let ours = || {
        checks
            .iter()
            .filter(|check| check.question == Question::Build)
    };
    let found = |verdict| -> Vec<&'static str> {
        ours()
            .filter(|check| check.verdict == verdict)
            .map(|check| check.id)
            .collect()
    };
    let (fails, asks) = (found(Found::Fails), found(Found::Unknown));
    if !fails.is_empty() {
        return Build {
            says: Says::No,
            because: fails,
        };
    }
    if !asks.is_empty() {
        return Build {
            says: Says::Ask,
            because: asks,
        };
    }
    let used = |check: &&Check| check.utilisation.unwrap_or(0.0);
    let nearest = ours().max_by(|a, b| used(a).total_cmp(&used(b)));
    Build {
        says: Says::Yes,
        because: nearest.map(|check| check.id).into_iter().collect(),
    }
}

/// Whether what the star comes to with nobody there is within what is asked.
pub fn judge(budget: &Budget, cost: &Cost, worst_arcsec: f64) -> Within {
    match exceeds(budget.used_ratio(cost, worst_arcsec), 1.0) {
        true => Within::Over,
        false => Within::Within,
    }
}

fn still(motion: &Motion) -> Still {
    let (cost, budget) = (motion.left_alone, &motion.budget);
    let alone = || {
        motion
            .disturbances
            .iter()
            .filter(|one| ALONE.contains(&one.id))
    };
    let movers = alone().filter(|one| one.arcsec.is_none_or(|arcsec| arcsec > 0.0));
    let worst_arcsec = alone()
        .filter_map(|one| one.worst_arcsec)
        .fold(0.0, f64::hypot);
    Still {
        measure: budget.measure,
        star_growth_ratio: cost.map(|cost| cost.star_growth_ratio),
        peak_left_ratio: cost.map(|cost| cost.peak_left_ratio),
        asked_ratio: budget.asked_growth_ratio,
        movement_arcsec: cost.map(|_| worst_arcsec),
        asked_arcsec: budget.arcsec,
        mount_adds_ratio: motion.mount_adds_ratio,
        says: cost.map(|cost| judge(budget, &cost, worst_arcsec)),
        because: movers.map(|one| check_of(one.id)).collect(),
    }
}

/// Where the ground itself moves with the seasons the figures stand, and nothing is said of them.
fn not_sure(mut still: Still, checks: &[Check]) -> Still {
    if checks
        .iter()
        .any(|check| check.id == SEASONS && check.verdict == Found::Unknown)
    {
        still.says = None;
        still.because.insert(0, SEASONS);
    }
    still
}

/// The check that judges a disturbance with nobody there.
fn check_of(disturbance: &str) -> &'static str {
    match disturbance {
        "wind" => "motion.wind",
        "season" => "motion.season",
        _ => "motion.thermal",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::decided::design_plan;
    use crate::figure::{One, Unit};
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;
    use crate::source::Source;

    const SOURCE: Source = Source::judgement("made up for a test");

    fn used(id: &'static str, ratio: f64) -> Check {
        Check::at_most(id, "?", ratio, 1.0, One, SOURCE)
    }

    fn unknown(id: &'static str) -> Check {
        Check::unknown(id, "?", Unit::One, SOURCE, "nobody knows")
    }

    #[test]
    fn a_failed_check_says_no_and_an_open_one_says_ask() {
        let says = |checks: &[Check]| {
            let found = build(checks);
            (found.says, found.because)
        };
        let all = [used("a", 0.5), used("b", 0.8), unknown("c"), used("d", 1.2)];
        assert_eq!(says(&all), (Says::No, vec!["d"]));
        assert_eq!(says(&all[..3]), (Says::Ask, vec!["c"]));
        assert_eq!(says(&all[..2]), (Says::Yes, vec!["b"]));
    }

    #[test]
    fn stillness_never_forbids_to_build() {
        let found = build(&[used("a", 0.5), used("b", 9.0).of_stillness()]);
        assert_eq!((found.says, found.because), (Says::Yes, vec!["a"]));
    }

    /// A gale in the open widens the star by more than is asked; the same in a dome with nothing asked of it does not.
    #[test]
    fn still_is_over_by_the_worst_and_names_what_moves_the_star() {
        let mut plan = SitePlan::unknown();
        plan.load.asked_growth_ratio = Some(0.001);
        plan.load.enclosure = Some(crate::site_plan::load::Enclosure::Open);
        plan.load.observing_wind_m_s = Some(20.0);
        let over = design_plan(&plan, &NoShelf).unwrap().verdict.still;
        assert_eq!(over.says, Some(Within::Over), "{over:?}");
        assert_eq!(over.because[0], "motion.wind");
        let growth = over.star_growth_ratio.unwrap();
        assert!(growth.worst > over.asked_ratio && growth.worst >= growth.expected);
        plan.load.asked_growth_ratio = Some(1.0);
        plan.load.observing_wind_m_s = Some(0.5);
        let within = design_plan(&plan, &NoShelf).unwrap().verdict.still;
        assert_eq!(within.says, Some(Within::Within), "{within:?}");
    }

    /// Conduct is told with its rule and stands in no check.
    #[test]
    fn what_people_do_is_no_check_and_has_a_rule() {
        let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
        let ids: Vec<&str> = design.motion.conduct.iter().map(|one| one.id).collect();
        for id in [
            "walk",
            "second_person",
            "standing",
            "shifting",
            "sitting",
            "door",
            "bump",
        ] {
            assert!(ids.contains(&id), "{ids:?}");
            let check = format!("motion.{id}");
            assert!(design.checks.iter().all(|one| one.id != check), "{check}");
        }
        assert!(design.motion.conduct.iter().all(|one| !one.rule.is_empty()));
        assert!(!design.verdict.conduct_rule.is_empty());
    }
}
