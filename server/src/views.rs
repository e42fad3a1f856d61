//! Views: each shows a design and computes nothing.

pub mod pages;
pub mod csv;
pub mod ics;
pub mod svg;
