//! Ground stiffness: how the ground holds the block, about the centre of its base.

pub mod published;

use serde::Serialize;

use crate::brief::Brief;
use crate::halfspace::{Shape, Shelf};
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::units::{
    CouplingStiffness, LinearStiffness, RotationalStiffness, metre, newton_metre_per_radian, newton_per_metre, newton_per_radian,
};

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
    /// Force along y for a turn about x; negative, since a right-handed turn about x carries the upper soil towards −y.
    #[serde(rename = "coupling_y_rx_n_per_rad", serialize_with = "newton_per_radian::option::serialize")]
    pub coupling_y_rx: Option<CouplingStiffness>,
}

/// Finds the ground's stiffness.
#[must_use]
pub fn stage(_brief: &Brief, ground: &Ground, block: &Block, _shelf: &dyn Shelf) -> Found<GroundStiffness> {
    let shape = shape(ground, block);
    let mut notes = Notes::default();
    let six = ground.shear_modulus.map(|g| {
        let six = published::pais_kausel(&shape, g.typical);
        published::note(&shape, g.typical, &six, &mut notes);
        six
    });
    Found { value: GroundStiffness::of(six, shape.depth_m), notes }
}

/// The block and its contact, as the half-space sees them.
#[must_use]
pub fn shape(ground: &Ground, block: &Block) -> Shape {
    Shape {
        length_m: metre::get(block.length),
        width_m: metre::get(block.width),
        depth_m: metre::get(block.depth),
        contact_from_m: metre::get(block.side_contact_from),
        contact_to_m: metre::get(block.side_contact_to),
        poisson_ratio: ground.poisson_ratio,
    }
}

impl GroundStiffness {
    fn of(six: Option<[f64; 6]>, depth_m: f64) -> Self {
        let linear = |axis: usize| six.map(|six| newton_per_metre::new(six[axis]));
        let turning = |axis: usize| six.map(|six| newton_metre_per_radian::new(six[axis]));
        Self {
            about: "base centre",
            vertical: linear(2),
            horizontal_x: linear(0),
            horizontal_y: linear(1),
            rocking_x: turning(3),
            rocking_y: turning(4),
            torsion: turning(5),
            coupling_x_ry: six.map(|six| newton_per_radian::new(six[0] * depth_m / 3.0)),
            coupling_y_rx: six.map(|six| newton_per_radian::new(-six[1] * depth_m / 3.0)),
        }
    }
}
