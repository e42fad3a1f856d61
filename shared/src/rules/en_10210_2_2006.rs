//! EN 10210-2:2006: hot finished structural hollow sections, sectional properties.

pub mod section;
