//! What keeps frost off the block's sides.

use crate::figure::Unit;
use crate::site_plan::block::FrostRemedy;
use crate::units::{metre, millimetre};

use super::{Job, List, up};

/// Waste of boards, sheet and gravel.
const WASTE_RATIO: f64 = 1.1;
/// Grease on a square metre of sleeve, kg: a millimetre, half of it lost.
const GREASE_KG_M2: f64 = 1.0;

pub(super) fn list(job: &Job, list: &mut List) {
    let frost = &job.block.side_frost;
    let (depth, width) = (metre::get(frost.depth), metre::get(frost.width));
    let around = 2.0 * metre::get(job.block.length + job.block.width);
    let beside = around * width + 4.0 * width * width;
    let square = |area: f64| (up(area * WASTE_RATIO, 0.5), Unit::SquareMetre);
    let cubic = |volume: f64| (up(volume * WASTE_RATIO, 0.05), Unit::CubicMetre);
    match frost.remedy {
        FrostRemedy::None => {}
        FrostRemedy::Insulation => {
            list.buy(
                "frost-boards",
                format!(
                    "Extruded polystyrene boards {}, fit for use in the ground",
                    job.mm(millimetre::get(frost.thickness))
                ),
                square(beside),
                "flat in the ground round the block, so that frost does not reach its sides",
                format!(
                    "{} wide all round, {} down, joints staggered; a tenth for waste",
                    job.m(width),
                    job.m(depth)
                ),
            );
            list.buy(
                "frost-gravel",
                "Clean gravel that drains",
                cubic(beside * depth),
                "over the boards up to ground level: it does not heave",
                "a tenth for waste; the turf may lie on it",
            );
        }
        FrostRemedy::Sleeve => {
            list.buy(
                "frost-sheet",
                "Smooth plastic sheet, thick as a pond liner",
                square(2.0 * around * depth),
                "a sleeve of two layers round the block",
                format!("two layers, {} down; a tenth for waste", job.m(depth)),
            );
            list.buy(
                "frost-grease",
                "Grease that stays soft in the cold",
                (up(GREASE_KG_M2 * around * depth, 0.5), Unit::Kilogram),
                "between the two layers of the sleeve",
                "of a kind that may be used in the ground",
            );
        }
        FrostRemedy::Gravel => list.buy(
            "frost-gravel",
            "Clean gravel that drains",
            cubic(beside * depth),
            "a trench round the block down to the frost",
            format!(
                "{} wide, {} down; a tenth for waste",
                job.m(width),
                job.m(depth)
            ),
        ),
    }
}
