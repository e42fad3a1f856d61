//! Work, decided.

use crate::brief::{Ask, Given, Taken};
use crate::site_plan::{SitePlan, Work as Said};
use crate::source::Source;

/// Complete answers about the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Work {
    /// Mean temperature while the concrete hardens, °C.
    pub temperature_c: Given<f64>,
    /// People at work.
    pub people: Given<f64>,
    /// Day on which digging starts, year-month-day; none: not fixed yet.
    pub start_date: Option<String>,
    /// Hours by which the clocks of the place are ahead of universal time; none: not said.
    pub utc_offset_h: Option<f64>,
}

/// Decides the work's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Work {
    let said = &plan.work;
    Work {
        temperature_c: ask.number(
            Said::temperature_c,
            10.0,
            Taken::new(
                "a cool spring or autumn",
                "days before drilling and loading",
                Source::judgement("cool season"),
            ),
        ),
        people: ask.number(
            Said::people,
            2.0,
            Taken::new(
                "lifting and pouring ask for two",
                "how long the work takes",
                Source::judgement("house default"),
            ),
        ),
        start_date: said.start_date.clone(),
        utc_offset_h: said.utc_offset_h,
    }
}
