//! The cases: what is lost of the depth and of the grip, by what the plan says of the sides.

use crate::brief::Brief;
use crate::site_plan::excavation::Sides;
use crate::site_plan::site::Soil;
use crate::stages::block::Block;
use crate::stages::excavation::face::face;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::units::{Spread, metre};

/// One case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// In words.
    pub words: &'static str,
    /// Depth below ground whose grip is lost, m: `low` at the soft end, and so the deepest.
    pub lost_m: Spread<f64>,
    /// Quality of the grip below it: one is bonded.
    pub quality: Spread<f64>,
    /// Whether the person said between which depths the ground is hard against the sides.
    pub is_stated: bool,
}

const fn spread(low: f64, typical: f64, high: f64) -> Spread<f64> {
    Spread { low, typical, high }
}

/// Nothing known. Depths by judgement; the qualities are those with which a metre cube has the evidence's 0.50, 0.73 and 1.00.
const NOTHING_KNOWN: Case = Case {
    words: "cast against cut ground, nothing more known",
    lost_m: spread(0.35, 0.15, 0.0),
    quality: spread(0.70, 0.81, 1.0),
    is_stated: false,
};
/// Sound or loosened rock: nothing grows, dries or runs at its face.
const ROCK: Case = Case {
    words: "cast against rock",
    lost_m: spread(0.20, 0.05, 0.0),
    quality: spread(0.70, 0.90, 1.0),
    is_stated: false,
};
/// A face that does not stand: it ravels while the concrete comes, or is boarded and filled up behind the boards.
const RAVELS: Case = Case {
    words: "a face that ravels, or is boarded and filled up behind",
    lost_m: spread(0.60, 0.30, 0.10),
    quality: spread(0.30, 0.50, 0.80),
    is_stated: false,
};
/// Clay that shrinks away from the block in summer.
const SHRINKS: Case = Case {
    words: "clay that shrinks away in a dry summer",
    lost_m: spread(1.0, 0.5, 0.2),
    quality: spread(0.40, 0.70, 1.0),
    is_stated: false,
};
/// The person said where the ground is hard against the sides: that is the middle, as a stated speed is; how hard it is there
/// stays open.
const STATED: Case = Case {
    words: "between the stated depths",
    lost_m: spread(0.0, 0.0, 0.0),
    quality: spread(0.70, 1.0, 1.0),
    is_stated: true,
};
/// A battered pit, or a lining down to the base.
const FREE: Case = Case {
    words: "no side is held",
    lost_m: spread(0.0, 0.0, 0.0),
    quality: spread(1.0, 1.0, 1.0),
    is_stated: true,
};

/// The case of a plan.
pub fn of(brief: &Brief, ground: &Ground, block: &Block) -> Case {
    let said = &brief.block;
    if said.side_contact_from.is_some() || said.side_contact_to.is_some() {
        return STATED;
    }
    if brief.excavation.sides.value == Sides::Sloped {
        return FREE;
    }
    let case = match (ground.soil, ground.group) {
        (Soil::ShrinkingClay, _) => SHRINKS,
        (_, Group::Rock) => ROCK,
        _ if face(ground, block.depth).stands() => NOTHING_KNOWN,
        _ => RAVELS,
    };
    frost(case, brief, block)
}

/// Frost that is known to reach so deep loosens the ground beside the block each winter where it grows ice; boards that keep it
/// out, and that the block's own stage has in the plan, keep the contact.
fn frost(case: Case, brief: &Brief, block: &Block) -> Case {
    let stated = &brief.site.stated;
    if stated.frost_depth_m.is_none() && stated.freezing_index_c_days.is_none() {
        return case;
    }
    let depth = metre::get(block.side_frost.frozen_depth);
    let lost_m = Spread {
        low: case.lost_m.low.max(depth),
        typical: case.lost_m.typical.max(0.5 * depth),
        high: case.lost_m.high,
    };
    let words = if lost_m == case.lost_m {
        case.words
    } else {
        "cast against cut ground that frost loosens each winter"
    };
    Case {
        lost_m,
        words,
        ..case
    }
}
