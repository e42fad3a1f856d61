//! Views: each shows a design and computes nothing.

pub mod caution_lines;
pub mod csv;
pub mod dxf;
pub mod engineer;
pub mod ics;
pub mod money;
pub mod north;
pub mod pages;
pub mod pdf;
pub mod proof;
pub mod svg;
pub mod verdict;
pub mod words;
