//! The four ways in which a plate can stand when its nuts are to be tightened, and what must be there before.

use serde::Serialize;

use crate::brief::Brief;
use crate::site_plan::pier::Levelling;
use crate::stages::anchors::seat::Seat;

/// How the plate stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// A nut below and one above it on each stud.
    Nuts,
    /// On grout.
    Grouted,
    /// Straight on the concrete.
    Straight,
    /// Lower nuts backed off or left out, and nothing under it at the studs yet.
    Ungrouted,
}

impl Way {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Nuts, Self::Grouted, Self::Straight, Self::Ungrouted];

    /// Which of them a plan builds.
    pub fn of(brief: &Brief, seat: Seat) -> Self {
        match (seat, brief.pier.levelling.value) {
            (Seat::Nuts, _) => Self::Nuts,
            (Seat::Bedded, Levelling::Grout) => Self::Grouted,
            (Seat::Bedded, Levelling::Nuts) => Self::Straight,
            (Seat::Dished, _) => Self::Ungrouted,
        }
    }

    /// Where the preload goes.
    pub const fn seat(self) -> Seat {
        match self {
            Self::Nuts => Seat::Nuts,
            Self::Grouted | Self::Straight => Seat::Bedded,
            Self::Ungrouted => Seat::Dished,
        }
    }

    /// Whether the preload pulls on the bond, once it is there.
    pub const fn pulls_on_bond(self) -> bool {
        !matches!(self, Self::Nuts)
    }

    /// In a few words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Nuts => "Between two nuts on each stud",
            Self::Grouted => "On grout",
            Self::Straight => "Straight on the concrete",
            Self::Ungrouted => "Lower nuts backed off, no grout yet",
        }
    }

    /// What it means.
    pub fn words(self) -> &'static str {
        match self {
            Self::Straight => {
                "The plate lies straight on the concrete. The preload is a lasting pull on the resin, and where the plate is not flat to \
                 the thickness of a sheet of paper it also bends the plate and the foot of the column's wall."
            }
            Self::Nuts | Self::Grouted | Self::Ungrouted => self.seat().words(),
        }
    }
}

/// What must be there before a nut is tightened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WaitsFor {
    /// Nothing.
    Nothing,
    /// The largest torque on the product's sheet.
    Sheet,
    /// Grout under the plate.
    Grout,
}

impl WaitsFor {
    /// What a plan waits for.
    pub fn of(brief: &Brief, way: Way) -> Self {
        match (way, brief.anchors.max_torque) {
            (Way::Ungrouted, _) => Self::Grout,
            (_, None) => Self::Sheet,
            (_, Some(_)) => Self::Nothing,
        }
    }
}
