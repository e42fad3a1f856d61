//! Pier: the column, its plates, and how it bends.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::units::{
    BendingStiffness, Length, LinearStiffness, Mass, RotationalStiffness, kilogram, metre, millimetre, newton_metre_per_radian,
    newton_per_metre, newton_square_metre,
};

/// The column.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Pier {
    /// Height of the column with its plates.
    #[serde(rename = "height_m", serialize_with = "metre::serialize")]
    pub height: Length,
    /// Outside diameter.
    #[serde(rename = "outside_diameter_mm", serialize_with = "millimetre::serialize")]
    pub outside_diameter: Length,
    /// Wall.
    #[serde(rename = "wall_mm", serialize_with = "millimetre::serialize")]
    pub wall: Length,
    /// Side of the base plate.
    #[serde(rename = "plate_side_mm", serialize_with = "millimetre::serialize")]
    pub plate_side: Length,
    /// Thickness of the base plate.
    #[serde(rename = "plate_thickness_mm", serialize_with = "millimetre::serialize")]
    pub plate_thickness: Length,
    /// Gap or grout under the plate.
    #[serde(rename = "gap_mm", serialize_with = "millimetre::serialize")]
    pub gap: Length,
    /// Column, fill and plates.
    #[serde(rename = "mass_kg", serialize_with = "kilogram::serialize")]
    pub mass: Mass,
    /// E·I of column and fill.
    #[serde(rename = "bending_stiffness_n_m2", serialize_with = "newton_square_metre::serialize")]
    pub bending_stiffness: BendingStiffness,
    /// Turn of the plate on studs, resin, nuts or grout.
    #[serde(rename = "base_joint_stiffness_n_m_per_rad", serialize_with = "newton_metre_per_radian::serialize")]
    pub base_joint_stiffness: RotationalStiffness,
    /// Force at the top for a movement of the top, on a block that stands still.
    #[serde(rename = "top_stiffness_n_per_m", serialize_with = "newton_per_metre::serialize")]
    pub top_stiffness: LinearStiffness,
}

/// Finds the column.
#[must_use]
pub fn stage(brief: &Brief, _block: &Block) -> Found<Pier> {
    let pier = &brief.pier;
    let value = Pier {
        height: pier.height.value,
        outside_diameter: pier.outside_diameter.value,
        wall: pier.wall.value,
        plate_side: pier.plate_side.value,
        plate_thickness: pier.plate_thickness.value,
        gap: pier.gap.value,
        mass: kilogram::new(75.0),
        bending_stiffness: newton_square_metre::new(5.0e6),
        base_joint_stiffness: newton_metre_per_radian::new(1.2e7),
        top_stiffness: newton_per_metre::new(5.0e6),
    };
    Found { value, notes: Notes::default() }
}
