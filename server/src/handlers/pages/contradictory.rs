//! A saved plan whose answers contradict each other: it has pages all the same, and no design.

use std::sync::Arc;

use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::error::Trouble;
use crate::forms::reading::Fault;
use crate::planned::Planned;

/// The plan's design; none when its answers contradict each other.
pub async fn planned(app: &App, plan: &SitePlan) -> Result<Option<Arc<Planned>>, Trouble> {
    unless_contradictory(app.planned(plan).await)
}

/// A design; none when the answers contradict each other.
pub fn unless_contradictory(
    found: Result<Arc<Planned>, Trouble>,
) -> Result<Option<Arc<Planned>>, Trouble> {
    match found {
        Ok(planned) => Ok(Some(planned)),
        Err(trouble) if !trouble.errors.is_empty() => Ok(None),
        Err(trouble) => Err(trouble),
    }
}

/// What contradicts itself in a saved plan.
pub fn contradictions(plan: &SitePlan) -> Vec<Fault> {
    let problems = plan
        .validate()
        .err()
        .map(|problems| problems.0)
        .unwrap_or_default();
    problems
        .into_iter()
        .map(|problem| Fault {
            fields: problem.fields,
            said: problem.said,
            readings: Vec::new(),
        })
        .collect()
}
