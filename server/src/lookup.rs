//! A question put to another service: the air's temperature and gusts of past years at a place. It is asked only where the
//! host named a service, and only when a person presses the button; what comes back is a proposal.

mod fetch;
mod held;
pub mod source;
mod years;

use std::time::Duration;

use jiff::Timestamp;

pub use held::Held;
pub use years::Climate;

use crate::config::ClimateService;

/// Longest time for the whole question.
const LONGEST: Duration = Duration::from_secs(20);
/// Years that are asked for.
const YEARS: i16 = 30;

/// Why nothing was found out. The other service's own words are not repeated.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Failure {
    /// It cannot be reached, or broke off.
    #[error("the service does not answer: {0}")]
    Away(String),
    /// It names an address within a private network, where nothing of ours is to be asked.
    #[error("the service’s name leads to an address that is not public")]
    Private,
    /// It answered, and with something else.
    #[error("the service answered with status {0}")]
    Status(u16),
    /// Its answer is too long.
    #[error("the service’s answer is longer than is read")]
    TooLong,
    /// Its answer is not what was asked for.
    #[error("the service’s answer cannot be read: {0}")]
    Unread(String),
    /// There are too few years in it.
    #[error("the service has too few whole years for this place")]
    TooFew,
}

/// Asks for the past years at a place, degrees north and east.
///
/// # Errors
/// Why nothing was found out.
pub async fn climate(
    service: &ClimateService,
    latitude_deg: f64,
    longitude_deg: f64,
) -> Result<Climate, Failure> {
    let last = jiff::tz::Offset::UTC.to_datetime(Timestamp::now()).year() - 1;
    let target = service.target(latitude_deg, longitude_deg, last - YEARS + 1, last);
    let text = tokio::time::timeout(LONGEST, fetch::fetch(service, &target))
        .await
        .map_err(|_| Failure::Away("it took too long".to_owned()))??;
    years::read(&text, latitude_deg)
}
