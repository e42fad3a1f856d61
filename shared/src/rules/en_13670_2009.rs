//! EN 13670:2009, execution of concrete structures: curing.

pub mod curing;
