//! What the engine says in words about a step's own subject, beside the figures.

use stillground::stages::motion::Motion;

use crate::forms::step::Step;
use crate::planned::Planned;

/// A heading and its sentences.
pub struct Remark {
    /// The heading.
    pub title: &'static str,
    /// The sentences.
    pub says: Vec<String>,
}

/// The remarks of a step; those with nothing to say are left out.
#[must_use]
pub fn of(step: Step, planned: &Planned) -> Vec<Remark> {
    let remarks = match step {
        Step::Anchors => torque(planned),
        Step::Pier => vec![Remark {
            title: "What moves the star most",
            says: planned.design.motion.summary.clone(),
        }],
        Step::Floor => floor(&planned.design.motion),
        Step::Site | Step::Excavation | Step::Footing | Step::Plan => Vec::new(),
    };
    remarks
        .into_iter()
        .filter(|remark| !remark.says.is_empty())
        .collect()
}

fn floor(motion: &Motion) -> Vec<Remark> {
    let ground = &motion.on_ground;
    vec![
        Remark {
            title: "Where to stand",
            says: motion.where_to_stand.clone(),
        },
        Remark {
            title: "Would a lining round the block help?",
            says: ground
                .isolation
                .iter()
                .flat_map(|lining| lining.words.clone())
                .collect(),
        },
        Remark {
            title: "What the trade says of a person beside it",
            says: ground
                .practice
                .iter()
                .map(|practice| practice.words.clone())
                .collect(),
        },
    ]
}

fn torque(planned: &Planned) -> Vec<Remark> {
    let torque = &planned.design.anchors.torque;
    // Without a stated torque the chapter about the common number says it already.
    let stated = planned.brief.anchors.torque.is_some();
    let readings = torque
        .kilos_readings
        .iter()
        .filter(|_| stated)
        .map(|reading| reading.says.clone())
        .collect();
    vec![
        Remark {
            title: "Too little torque, and too much",
            says: vec![torque.below.clone(), torque.above.clone()],
        },
        Remark {
            title: "A torque said in “kilos” has three readings",
            says: readings,
        },
    ]
}
