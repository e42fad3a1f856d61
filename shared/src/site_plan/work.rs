//! Work: when it is done, in what weather, and by how many.

use crate::field::{Problem, section};
use crate::path;
use crate::rules::calendar::is_date;
use crate::site_plan::{HOUSE, SitePlan};
use crate::source::Source;

section! {
    /// Work.
    pub struct Work in work {
        numbers {
            /// Mean temperature of air and ground while the concrete hardens.
            temperature_c: Celsius, -20.0..=45.0, "below -20 and above 45 nobody pours",
                asks "How warm is it while the concrete hardens?",
                hint "The mean of days and nights. In the cold, everything waits longer.",
                takes 10.0, because "a cool spring or autumn",
                changes "days before drilling and loading", from Source::judgement("cool season");
            /// Hours by which the clocks of the place are ahead of universal time (UTC) on the start day, summer time included.
            utc_offset_h: Hour, -12.0..=14.0, "clocks anywhere are between 12 hours behind and 14 hours ahead of universal time",
                asks "Hours that your clocks are ahead of universal time (UTC)",
                hint "On the start day, summer time included; behind is negative, for instance -5. For north by the sun and the pole star.",
                unknown "Times for finding north are given in universal time alone.";
        }
        counts {
            /// People at work.
            people: 1..=20, "from one person to a large gang",
                asks "How many of you are there?",
                hint "It sets how long the digging and pouring take.",
                takes 2.0, because "lifting and pouring ask for two",
                changes "how long the work takes", from HOUSE;
        }
        others {
            /// Day on which digging starts, year-month-day.
            start_date: String,
                asks "On which day do you start digging?",
                hint "Write year-month-day, for instance 2027-04-19. The schedule then shows dates.",
                unknown "The schedule counts days from the first.";
        }
    }
}

/// A start day that is no date.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let Some(date) = &plan.work.start_date else {
        return Vec::new();
    };
    if is_date(date) {
        return Vec::new();
    }
    vec![Problem {
        fields: vec![path!(work.start_date).into()],
        value: None,
        said: "This is no day of the calendar; write year-month-day, for instance 2027-04-19."
            .into(),
    }]
}
