//! Anchors: layout, resistances, torque, resin.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::pier::Pier;
use crate::units::{Force, Length, Spread, Volume, kilonewton, millilitre, millimetre};

/// Place of a stud, from the pier's axis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Stud {
    /// East.
    #[serde(rename = "x_mm", serialize_with = "millimetre::serialize")]
    pub x: Length,
    /// North.
    #[serde(rename = "y_mm", serialize_with = "millimetre::serialize")]
    pub y: Length,
}

/// The studs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Anchors {
    /// Where they stand.
    pub studs: Vec<Stud>,
    /// Diameter of each hole.
    #[serde(rename = "hole_diameter_mm", serialize_with = "millimetre::serialize")]
    pub hole_diameter: Length,
    /// Depth of each hole.
    #[serde(rename = "hole_depth_mm", serialize_with = "millimetre::serialize")]
    pub hole_depth: Length,
    /// Embedment.
    #[serde(rename = "embedment_mm", serialize_with = "millimetre::serialize")]
    pub embedment: Length,
    /// Preload of a stud; none where no torque is stated or to be recommended.
    #[serde(rename = "preload_kn", serialize_with = "kilonewton::spread::option::serialize")]
    pub preload: Option<Spread<Force>>,
    /// Resin for all holes, with waste.
    #[serde(rename = "resin_volume_ml", serialize_with = "millilitre::serialize")]
    pub resin_volume: Volume,
    /// The way in which the group would fail first.
    pub governing: String,
}

/// Finds the studs.
#[must_use]
pub fn stage(brief: &Brief, _block: &Block, _pier: &Pier) -> Found<Anchors> {
    let value = Anchors {
        studs: Vec::new(),
        hole_diameter: brief.anchors.hole_diameter.value,
        hole_depth: brief.anchors.embedment.value,
        embedment: brief.anchors.embedment.value,
        preload: None,
        resin_volume: millilitre::new(120.0),
        governing: String::new(),
    };
    Found { value, notes: Notes::default() }
}
