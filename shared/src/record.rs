//! The record of the work: what is looked at and measured for each task, what the plan expects of it, and what follows
//! from what was found.
//!
//! Entries come from people on the site, are only ever added, and are held against the plan as it stands now: a plan
//! that was changed to suit what was found judges the same entry anew. The record changes no design; it says which
//! tasks are done, which may be begun, and which a finding holds until somebody decides.

pub mod board;
pub mod entry;
mod faults;
pub mod gate;
mod item;
mod items;
mod reading;
pub mod taking;
mod verdict;
mod waits;

pub use crate::stages::schedule::MEASURE;
pub use board::{Board, State, TaskState, board};
pub use entry::{Entry, Kind, WALK};
pub use faults::Fault;
pub use gate::in_the_way;
pub use item::{Answer, Asks, Band, Item, Moment, Needed, item_of};
pub use items::items;
pub use reading::{Reading, readings};
pub use verdict::Verdict;

use crate::brief::Brief;
use crate::design::Design;

/// Holds a measurement against the plan. What is no measurement, and what the plan does not ask for, is not judged.
///
/// ```
/// use stillground::{brief::resolve, design::design, halfspace::NoShelf, record::{Entry, Verdict, judge}, site_plan::SitePlan};
/// let brief = resolve(&SitePlan::unknown()).expect("a plan in which nothing is known is a valid plan");
/// let design = design(&brief, &NoShelf);
/// let water = Entry::measured("a", "inspect", "water_depth", 0.6);
/// let Some(Verdict::Stop { why, .. }) = judge(&water, &brief, &design) else { panic!("water in the pit stops the pour") };
/// assert!(why.starts_with("Water at 0.6"));
/// ```
pub fn judge(entry: &Entry, brief: &Brief, design: &Design) -> Option<Verdict> {
    let items = items(brief, design);
    item_of(entry, &items)?.judge(entry, &[], brief.units)
}

#[cfg(test)]
mod tests;
