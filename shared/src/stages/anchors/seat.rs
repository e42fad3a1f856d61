//! Where the preload goes: three ways in which a base plate can stand.

use serde::Serialize;

use crate::brief::Brief;
use crate::site_plan::anchors::LowerNuts;
use crate::site_plan::pier::Levelling;
use crate::units::millimetre;

/// Where the preload goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Seat {
    /// Upper and lower nut clamp the plate: the preload closes between them and the resin feels nothing of it.
    Nuts,
    /// The plate lies on grout or concrete: the preload is a lasting pull on the bond and keeps the joint closed.
    Bedded,
    /// The plate rests under the column alone, with a gap under the studs: tightening bends plate and wall.
    Dished,
}

impl Seat {
    /// Which of them a plan builds.
    pub fn of(brief: &Brief) -> Self {
        let open = brief.pier.levelling.value == Levelling::Nuts
            && millimetre::get(brief.pier.gap.value) > 0.0;
        match brief.anchors.lower_nuts.value {
            LowerNuts::Tight => Self::Nuts,
            LowerNuts::BackedOff | LowerNuts::None if open => Self::Dished,
            LowerNuts::BackedOff | LowerNuts::None => Self::Bedded,
        }
    }

    /// Whether grout goes under the plate before a nut is tightened.
    pub fn wants_grout(brief: &Brief) -> bool {
        brief.pier.levelling.value == Levelling::Grout || Self::of(brief) == Self::Dished
    }

    /// Whether the preload pulls on the bond.
    pub fn pulls_on_bond(self) -> bool {
        self != Self::Nuts
    }

    /// Which case is built, and what it means.
    pub fn words(self) -> &'static str {
        match self {
            Self::Nuts => {
                "Each stud carries a nut under the plate and one above it. The preload closes between these two nuts, inside the \
                 plate; the resin feels nothing of it, and more torque does not make the base joint stiffer. Hold the lower nut with a \
                 second spanner, or about half of the torque twists the stud in its resin."
            }
            Self::Bedded => {
                "The plate lies on grout or concrete. The preload is a lasting pull on the resin: it creeps and relaxes, and while \
                 it lasts it keeps the joint closed, which makes the base joint about ten times as stiff."
            }
            Self::Dished => {
                "The lower nuts are backed off or left out, and nothing is under the plate at the studs. Do not tighten it like that: it \
                 would only bend the plate and the foot of the column's wall. Grout under the plate first; then it stands as on grout."
            }
        }
    }
}
