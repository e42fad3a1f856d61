//! The stud as the torque sees it: nut factor, scatter, proof load.

use crate::brief::Brief;
use crate::rules::threads::{self, StudSteel, Thread};
use crate::rules::vdi_2230_2015::{self as tightening, scatter};
use crate::units::{Force, Length, Moment, Spread};

/// The stud as the torque sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Screw {
    /// Diameter.
    pub diameter: Length,
    /// Nut factor.
    pub nut_factor: Spread<f64>,
    /// Share of the typical preload at either end.
    pub share: Spread<f64>,
    /// Proof load.
    pub proof: Force,
    /// Least breaking load.
    pub breaking: Force,
}

impl Screw {
    /// From the brief.
    pub fn of(brief: &Brief) -> Self {
        let anchors = &brief.anchors;
        let (thread, steel) = (
            anchors.thread(),
            threads::steel(anchors.strength_class.value, anchors.size.value),
        );
        let nut_factor = match anchors.frictions {
            Some((thread_friction, under_head)) => {
                Spread::exactly(tightening::nut_factor(&thread, thread_friction, under_head))
            }
            None => scatter::nut_factor(
                anchors.lubrication.value,
                anchors.coating.value,
                steel.stainless,
            ),
        };
        let tool = scatter::preload_share(scatter::tightening_factor(
            anchors.tool.value,
            anchors.frictions.is_some(),
        ));
        let share = Spread {
            low: tool.low.min(nut_factor.typical / nut_factor.high),
            typical: 1.0,
            high: tool.high.max(nut_factor.typical / nut_factor.low),
        };
        Self {
            share,
            ..Self::with(&thread, &steel, nut_factor)
        }
    }

    /// Any stud, its preload without scatter.
    pub fn with(thread: &Thread, steel: &StudSteel, nut_factor: Spread<f64>) -> Self {
        Self {
            diameter: thread.diameter,
            nut_factor,
            share: Spread::exactly(1.0),
            proof: thread.stress_area * steel.proof,
            breaking: thread.stress_area * steel.least_ultimate,
        }
    }

    /// Typical preload of a torque.
    pub fn typical(&self, torque: Moment) -> Force {
        tightening::preload(torque, self.nut_factor.typical, self.diameter)
    }

    /// Preload of a torque with its scatter.
    pub fn preload(&self, torque: Moment) -> Spread<Force> {
        let typical = self.typical(torque);
        self.share.map(|share| typical * share)
    }

    /// Torque for a typical preload.
    pub fn torque(&self, preload: Force) -> Moment {
        tightening::torque_by_nut_factor(preload, self.nut_factor.typical, self.diameter)
    }
}
