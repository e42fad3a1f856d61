//! What a service answered, held for a while: what is taken of it is what it said, and not what a form says that it said.

use std::time::Duration;

use moka::sync::Cache;

use super::Climate;

/// How long somebody may think about a proposal.
const THINKING: Duration = Duration::from_secs(3600);
/// Most answers that are held.
const MOST: u64 = 256;

/// A plan, and a place to the accuracy that is asked about: hundredths of a degree north and east.
type Asked = (String, i32, i32);

/// Answers by plan and place.
#[derive(Clone)]
pub struct Held(Cache<Asked, Climate>);

impl Default for Held {
    fn default() -> Self {
        let answers = Cache::builder().max_capacity(MOST).time_to_live(THINKING);
        Self(answers.build())
    }
}

impl Held {
    /// Holds an answer.
    pub fn hold(&self, plan: &str, latitude_deg: f64, longitude_deg: f64, found: Climate) {
        self.0
            .insert(asked(plan, latitude_deg, longitude_deg), found);
    }

    /// The answer for a plan's place, where it is still held.
    #[must_use]
    pub fn find(&self, plan: &str, latitude_deg: f64, longitude_deg: f64) -> Option<Climate> {
        self.0.get(&asked(plan, latitude_deg, longitude_deg))
    }
}

fn asked(plan: &str, latitude_deg: f64, longitude_deg: f64) -> Asked {
    // Degrees within their bounds, in hundredths, are far from any limit of the type.
    #[allow(clippy::cast_possible_truncation, reason = "at most 18,000")]
    let hundredths = |degrees: f64| (degrees * 100.0).round() as i32;
    (
        plan.to_owned(),
        hundredths(latitude_deg),
        hundredths(longitude_deg),
    )
}
