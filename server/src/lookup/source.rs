//! Where the figures of a climate come from, and who says so.
//!
//! A source that the planner wrote itself begins with a word of its own. Nobody else can write that word: a plan that is
//! sent with it has to hold the same source, and the same figures under it, as the plan that stands.

use stillground::field::{Problem, Problems};
use stillground::path;
use stillground::site_plan::SitePlan;

/// What a source begins with that the planner wrote after it had asked a service.
const LOOKED_UP: &str = "Looked up: ";

/// A source as the planner writes it: the service, the place and years that it was asked for, and what was taken.
#[must_use]
pub fn written(service: &str, of: &str, taken: &[&str]) -> String {
    format!("{LOOKED_UP}{service} for {of}: {}", taken.join(", "))
}

/// Whether a plan says that its figures were looked up.
#[must_use]
pub fn is_claimed(plan: &SitePlan) -> bool {
    plan.site
        .climate_source
        .as_deref()
        .is_some_and(|source| begins_alike(source.trim_start()))
}

/// In any case of letters, since a reader would not tell the difference.
fn begins_alike(source: &str) -> bool {
    let word = LOOKED_UP.trim_end_matches([':', ' ']);
    source
        .get(..word.len())
        .is_some_and(|begin| begin.eq_ignore_ascii_case(word))
}

/// What is wrong with the source of a plan that somebody sent, on top of the plan that stands.
#[must_use]
pub fn forged(standing: Option<&SitePlan>, sent: &SitePlan) -> Option<Problem> {
    let figures = |plan: &SitePlan| {
        let site = &plan.site;
        (
            site.climate_source.clone(),
            site.freezing_index_c_days,
            site.mean_annual_temperature_c,
            site.design_gust_m_s,
        )
    };
    let stands = standing.is_some_and(|standing| figures(standing) == figures(sent));
    (is_claimed(sent) && !stands).then(|| Problem {
        fields: vec![path!(site.climate_source).into()],
        said: "The planner writes “Looked up” itself, for the figures that a service gave it. These figures were written by \
               somebody: say in other words where they come from, or leave it empty."
            .to_owned(),
        value: None,
    })
}

/// The same as a refusal of the plan.
///
/// # Errors
/// A source that the planner did not write.
pub fn check(standing: Option<&SitePlan>, sent: &SitePlan) -> Result<(), Problems> {
    forged(standing, sent).map_or(Ok(()), |problem| Err(Problems(vec![problem])))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    fn plan(source: Option<&str>, index: f64) -> SitePlan {
        let mut plan = SitePlan::unknown();
        plan.site.climate_source = source.map(str::to_owned);
        plan.site.freezing_index_c_days = Some(index);
        plan
    }

    #[test]
    fn only_what_stands_may_say_that_it_was_looked_up() {
        let source = written(
            "Open Archive",
            "52° north, 1995 to 2024",
            &["freezing index"],
        );
        let standing = plan(Some(&source), 290.0);
        assert!(check(Some(&standing), &plan(Some(&source), 290.0)).is_ok());
        assert!(
            check(Some(&standing), &plan(Some(&source), 291.0)).is_err(),
            "a figure that was changed by hand under it"
        );
        assert!(check(None, &standing).is_err());
        assert!(check(Some(&plan(None, 290.0)), &standing).is_err());
        for forged in ["looked up by me", "  LOOKED UP: x", "Looked up"] {
            assert!(check(None, &plan(Some(forged), 1.0)).is_err(), "{forged}");
        }
        for own in ["The weather office, 1991 to 2020", "I looked it up", ""] {
            assert!(check(None, &plan(Some(own), 1.0)).is_ok(), "{own}");
        }
    }
}
