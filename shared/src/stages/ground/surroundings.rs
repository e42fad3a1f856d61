//! Warnings from what lies round the pier.

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::ground::Ground;

/// Lists the warnings.
pub fn cautions(_brief: &Brief, _ground: &Ground, _notes: &mut Notes) {}
