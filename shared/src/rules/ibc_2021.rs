//! International Building Code, 2021 edition.

pub mod presumptive;
