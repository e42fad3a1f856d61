//! What can hurt on the floor, and what spoils the image.

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::floor::Floor;

/// Lists the cautions.
pub fn cautions(_brief: &Brief, _floor: &Floor, _notes: &mut Notes) {}
