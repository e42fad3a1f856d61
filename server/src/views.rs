//! Views: each shows a design and computes nothing.

pub mod svg;
