//! When the remedy against frost at the block's sides is carried out.

use crate::figure::Metre;
use crate::notes::When;
use crate::site_plan::block::FrostRemedy;
use crate::units::metre;

use super::{Job, Plan};

/// Name of the task.
pub(crate) const TASK: &str = "frost_guard";
/// Person-hours to strip, lay and fill a square metre of boards, or to dig and fill a metre of trench one metre deep.
const HOURS_PER_M2: f64 = 0.6;

/// The sleeve is set in the pit, before the pour.
pub(super) fn before_the_pour(job: &Job, plan: &mut Plan) {
    let frost = &job.block.side_frost;
    if frost.remedy == FrostRemedy::Sleeve {
        let why = format!(
            "Two layers of smooth sheet with grease between them, from the top down to {}, free of folds: frozen ground slides along them.",
            job.brief.units.say(frost.depth, Metre)
        );
        plan.work(
            When::Pouring,
            TASK,
            "Hang the sleeve against frost",
            &["inspect", "blinding_sets", "form"],
            job.shared(2.0),
            why,
        );
    }
}

/// Boards and gravel follow when the block has hardened and its shuttering is off.
pub(super) fn after_the_pour(job: &Job, plan: &mut Plan) {
    let frost = &job.block.side_frost;
    let say = |length| job.brief.units.say(length, Metre);
    let around = 2.0 * metre::get(job.block.length + job.block.width);
    let width = metre::get(frost.width);
    let area = around * width + 4.0 * width * width;
    let (title, hours, why) = match frost.remedy {
        FrostRemedy::None | FrostRemedy::Sleeve => return,
        FrostRemedy::Insulation => (
            "Lay the insulation against frost",
            HOURS_PER_M2 * area,
            format!(
                "Before the first winter: strip the ground {} wide all round to {} and the boards' thickness, lay the boards close against \
                 the block on a level bed, joints staggered, and fill with clean gravel. Do not cut into the ground that holds the block's \
                 sides any deeper.",
                say(frost.width),
                say(frost.depth)
            ),
        ),
        FrostRemedy::Gravel => (
            "Fill the trench of gravel against frost",
            2.0 * HOURS_PER_M2 * around * metre::get(frost.depth),
            format!(
                "A trench {} wide round the block down to {}, filled with clean gravel that drains to a lower place: water that stands in it \
                 freezes to the block.",
                say(frost.width),
                say(frost.depth)
            ),
        ),
    };
    plan.work(
        When::Digging,
        TASK,
        title,
        &["cure", "strike", "backfill"],
        job.shared(hours),
        why,
    );
}
