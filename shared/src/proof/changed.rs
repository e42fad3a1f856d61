//! The same pier after something was done to it.

use crate::proof::pier::{Point, Standing, Unknown};
use crate::proof::reduced::{Mounted, Trial};
use crate::stages::motion::rig::Axis;

/// What is done to a pier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Changed {
    /// Joint, times as stiff.
    pub joint: f64,
    /// Joint, at least so stiff, N m/rad.
    pub joint_at_least: f64,
    /// Mount, times as stiff.
    pub mount: f64,
    /// Whether all of the sides are held.
    pub held: bool,
}

impl Changed {
    /// Nothing.
    pub const NOTHING: Self = Self {
        joint: 1.0,
        joint_at_least: 0.0,
        mount: 1.0,
        held: false,
    };
}

impl Standing {
    /// The first swings with the load on, after something was done to the pier.
    pub fn mounted_changed(&self, point: &Point, axis: Axis, changed: &Changed) -> Option<Mounted> {
        self.plane(axis)
            .mounted(&self.trial_changed(point, axis, changed))
    }

    /// Turn of the load in radians under a newton that pushes it at its centre, after something was done to the pier.
    pub fn pushed_changed(&self, point: &Point, axis: Axis, changed: &Changed) -> f64 {
        let trial = self.trial_changed(point, axis, changed);
        let height = self.top_m() + trial.centre;
        self.plane(axis).pulled(&trial, height, 1.0).abs()
    }

    fn trial_changed(&self, point: &Point, axis: Axis, changed: &Changed) -> Trial {
        let mut trial = self.trial(point, axis);
        trial.joint = (trial.joint * changed.joint).max(changed.joint_at_least);
        trial.mount *= changed.mount;
        if changed.held {
            let modulus = self.value(point, Unknown::Ground);
            trial.springs = self.contact.springs(axis, modulus, 1.0);
            trial.contact = 1.0;
        }
        trial
    }
}
