//! The same pier after something was done to it.

use crate::brief::Brief;
use crate::proof::Planned;
use crate::proof::pier::{Point, Standing, Unknown};
use crate::proof::reduced::{Mounted, Reduced};
use crate::stages::motion::rig::{Axis, Rig};
use crate::stages::pier::Pier;

/// What is done to a pier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Changed {
    /// Joint, times as stiff.
    pub joint: f64,
    /// Mount, times as stiff.
    pub mount: f64,
    /// Height of the load's centre, times as high.
    pub centre: f64,
    /// Whether all of the sides are held.
    pub held: bool,
}

impl Changed {
    /// Nothing.
    pub const NOTHING: Self = Self {
        joint: 1.0,
        mount: 1.0,
        centre: 1.0,
        held: false,
    };
}

impl Standing {
    /// The first swings with the load on, after something was done to the pier.
    #[must_use]
    pub fn mounted_changed(&self, point: &Point, axis: Axis, changed: &Changed) -> Option<Mounted> {
        let mut trial = self.trial(point, axis);
        trial.joint *= changed.joint;
        trial.mount *= changed.mount;
        trial.centre *= changed.centre;
        if changed.held {
            let modulus = self.value(point, Unknown::Ground);
            trial.springs = self.contact.springs(axis, modulus, 1.0);
            trial.contact = 1.0;
        }
        self.plane(axis).mounted(&trial)
    }

    /// The same pier with another column.
    #[must_use]
    pub fn rebuilt(&self, brief: &Brief, planned: &Planned, pier: &Pier) -> Option<Self> {
        let plane = |axis| {
            let rig = Rig::new(
                axis,
                brief,
                planned.ground,
                planned.block,
                planned.stiffness,
                pier,
            )?;
            Reduced::of(&rig)
        };
        let mut other = self.clone();
        other.planes = [plane(Axis::X)?, plane(Axis::Y)?];
        Some(other)
    }
}
