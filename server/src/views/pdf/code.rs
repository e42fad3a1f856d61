//! The square code that opens the plan's view link.

use fast_qr::{ECL, QRBuilder};

use crate::drawing::{Point, at};
use crate::views::pdf::page::Mark;

/// The code of a text, its upper left corner at a place, so wide with its quiet zone; none when the text is too long.
#[must_use]
pub fn code(text: &str, corner: Point, width: f64) -> Option<Mark> {
    let code = QRBuilder::new(text).ecl(ECL::M).build().ok()?;
    let side = width / (code.size + 2 * QUIET) as f64;
    let mut corners = Vec::new();
    for row in 0..code.size {
        for column in 0..code.size {
            if code[row][column].value() {
                corners.push(at(
                    corner.x + (column + QUIET) as f64 * side,
                    corner.y + (row + QUIET) as f64 * side,
                ));
            }
        }
    }
    Some(Mark::Squares { corners, side })
}

/// Modules left free round a code, ISO/IEC 18004.
const QUIET: usize = 4;
