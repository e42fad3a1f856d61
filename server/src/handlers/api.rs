//! The HTTP interface for programs.

pub mod body;
pub mod describe;
pub mod design;
pub mod entries;
pub mod holder;
pub mod links;
pub mod photos;
pub mod plans;
pub mod precondition;
pub mod recovery;
pub mod trace;
