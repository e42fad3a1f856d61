//! Views: each shows a design and computes nothing.

pub mod pages;
pub mod svg;
