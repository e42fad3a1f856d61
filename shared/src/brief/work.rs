//! Work, decided.

use crate::brief::{Ask, Given, usual};
use crate::site_plan::{SitePlan, Work as Said};

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
        temperature_c: usual!(ask, Said::temperature_c),
        people: usual!(ask, Said::people),
        start_date: said.start_date.clone(),
        utc_offset_h: said.utc_offset_h,
    }
}
