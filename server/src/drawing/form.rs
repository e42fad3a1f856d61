//! What a drawing is laid out for: a sheet, or a telephone's screen.

use crate::drawing::Drawing;
use crate::drawing::pen::MARGIN;
use crate::drawing::scale::{fitting, smaller};

/// For what a drawing is laid out.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A sheet of A4, or a wide screen: labels stand beside what they name.
    #[default]
    Sheet,
    /// A sheet on which it shares the side with words: so many steps of scale smaller, its lettering of the usual size.
    Smaller(u8),
    /// A telephone: numbers on the drawing and a list below it, no wider than [`PHONE_WIDTH`].
    Phone,
    /// A telephone at the work: as much of it as is looked at with the tool in the other hand, and no more.
    Glance,
}

/// Width of a drawing for a telephone, mm. A page on a screen 320 pixels wide leaves 286 of them to it, some four to the
/// millimetre, and the smallest lettering, 3 mm, is twelve pixels high.
pub const PHONE_WIDTH: f64 = 71.0;
/// Width of its lines of words, and of a picture without dimensions, mm: less the margins and the thickness of lines.
pub const PHONE_ROOM: f64 = PHONE_WIDTH - 2.0 * MARGIN - 1.0;
/// Greatest height of a view on it, mm: most of a screen.
const PHONE_HEIGHT: f64 = 90.0;
/// The same where boxes to fill in stand below it, mm.
const GLANCE_HEIGHT: f64 = 54.0;
/// Least width that is left to a view, mm.
const LEAST_ROOM: f64 = 12.0;
/// How often a view is made smaller, at most.
const ROUNDS: usize = 40;

impl Form {
    /// Whether it is for a telephone’s screen.
    #[must_use]
    pub const fn is_phone(self) -> bool {
        matches!(self, Self::Phone | Self::Glance)
    }

    /// The denominator of the scale at which a thing of so many metres fits into so many millimetres. A sheet has one of the
    /// recommended scales; on a screen nobody measures, and the largest that fits is taken.
    #[must_use]
    pub fn scale(self, width_m: f64, height_m: f64, room: (f64, f64)) -> u32 {
        match self {
            Self::Sheet => fitting(width_m, height_m, room.0, room.1),
            Self::Smaller(steps) => smaller(fitting(width_m, height_m, room.0, room.1), steps),
            Self::Phone | Self::Glance => {
                let least = (width_m / room.0).max(height_m / room.1) * 1000.0;
                least.ceil().clamp(1.0, f64::from(u32::MAX)) as u32
            }
        }
    }

    /// Draws into the room that a view has on a sheet, or for a telephone into as much as leaves place for what stands
    /// beside the view: it is drawn smaller until all of it fits.
    #[must_use]
    pub fn fitted(self, room: (f64, f64), draw: impl Fn((f64, f64)) -> Drawing) -> Drawing {
        if !self.is_phone() {
            return draw(room);
        }
        let most = if self == Self::Glance {
            GLANCE_HEIGHT
        } else {
            PHONE_HEIGHT
        };
        let (mut width, mut height) = (PHONE_ROOM, most);
        let mut drawing = draw((width, height));
        for _ in 0..ROUNDS {
            let excess = drawing.width - PHONE_WIDTH;
            if excess <= 0.0 {
                break;
            }
            // What stands beside the view keeps its size, so that the view gives way by somewhat more.
            let smaller = (1.0 - 1.2 * excess / drawing.width).min(0.97);
            width = (width * smaller).min(width - 0.5 * excess).max(LEAST_ROOM);
            height *= smaller;
            drawing = draw((width, height));
        }
        drawing
    }
}
