//! Ground stiffness: how the ground holds the block, about the centre of its base.

use serde::Serialize;

use crate::brief::Brief;
use crate::halfspace::Shelf;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::units::{CouplingStiffness, LinearStiffness, RotationalStiffness, newton_metre_per_radian, newton_per_metre, newton_per_radian};

/// Stiffness about the base's centre, in typical ground; none of it where the ground is not known.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GroundStiffness {
    /// Point about which the stiffness is given.
    pub about: &'static str,
    /// Vertical.
    #[serde(rename = "vertical_n_per_m", serialize_with = "newton_per_metre::option::serialize")]
    pub vertical: Option<LinearStiffness>,
    /// Horizontal along x.
    #[serde(rename = "horizontal_x_n_per_m", serialize_with = "newton_per_metre::option::serialize")]
    pub horizontal_x: Option<LinearStiffness>,
    /// Horizontal along y.
    #[serde(rename = "horizontal_y_n_per_m", serialize_with = "newton_per_metre::option::serialize")]
    pub horizontal_y: Option<LinearStiffness>,
    /// Rocking about x.
    #[serde(rename = "rocking_x_n_m_per_rad", serialize_with = "newton_metre_per_radian::option::serialize")]
    pub rocking_x: Option<RotationalStiffness>,
    /// Rocking about y: the motion in the x–z plane.
    #[serde(rename = "rocking_y_n_m_per_rad", serialize_with = "newton_metre_per_radian::option::serialize")]
    pub rocking_y: Option<RotationalStiffness>,
    /// Torsion about z.
    #[serde(rename = "torsion_n_m_per_rad", serialize_with = "newton_metre_per_radian::option::serialize")]
    pub torsion: Option<RotationalStiffness>,
    /// Force along x for a turn about y.
    #[serde(rename = "coupling_x_ry_n_per_rad", serialize_with = "newton_per_radian::option::serialize")]
    pub coupling_x_ry: Option<CouplingStiffness>,
    /// Force along y for a turn about x.
    #[serde(rename = "coupling_y_rx_n_per_rad", serialize_with = "newton_per_radian::option::serialize")]
    pub coupling_y_rx: Option<CouplingStiffness>,
}

/// Finds the ground's stiffness.
#[must_use]
pub fn stage(_brief: &Brief, _ground: &Ground, _block: &Block, _shelf: &dyn Shelf) -> Found<GroundStiffness> {
    let value = GroundStiffness {
        about: "base centre",
        vertical: None,
        horizontal_x: None,
        horizontal_y: None,
        rocking_x: None,
        rocking_y: None,
        torsion: None,
        coupling_x_ry: None,
        coupling_y_rx: None,
    };
    Found { value, notes: Notes::default() }
}
