//! Stillground's engine: from a site to the design of a telescope pier that stays still.
//!
//! One direction of data: a [`site_plan::SitePlan`] is what the person said; [`brief::resolve`] decides what they did
//! not know; [`design::design`] runs the stages on the resulting [`brief::Brief`] and gives a [`design::Design`].
//! The engine is pure and deterministic: no clock, no network, no global state, no panic on any input.
//!
//! ```
//! use stillground::{decided::design_plan, halfspace::NoShelf, site_plan::SitePlan};
//! let design = design_plan(&SitePlan::unknown(), &NoShelf).expect("a plan in which nothing is known is a valid plan");
//! assert!(design.assumptions.iter().any(|assumption| assumption.field == "site.soil"));
//! ```

// Every function here is pure, so that a result which nobody takes is a slip; one lint says so for all of them.
#![cfg_attr(not(test), warn(unused_results))]

pub mod brief;
pub mod candidates;
pub mod cast;
pub mod changing;
pub mod decided;
pub mod design;
pub mod field;
pub mod figure;
pub mod halfspace;
pub mod improve;
pub mod notes;
pub mod options;
pub mod proof;
pub mod record;
pub mod rules;
pub mod site_plan;
pub mod sizing;
pub mod source;
pub mod stages;
pub mod stock;
pub mod table;
pub mod text;
pub mod trace;
pub mod units;
pub mod verdict;
