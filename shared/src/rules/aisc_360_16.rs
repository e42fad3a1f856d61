//! ANSI/AISC 360-16, specification for structural steel buildings.

pub mod weld;
