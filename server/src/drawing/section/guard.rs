//! What keeps frost off the block's sides: boards, a sleeve, or a trench of gravel.

use stillground::site_plan::block::FrostRemedy;

use super::layout::Guard;
use super::words::say_mm;
use super::{Layout, View};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Pen, rectangle};
use crate::drawing::{Line, Point};

/// Draws it on both sides of the block.
pub(super) fn draw(pen: &mut Pen, layout: &Layout, view: &View) {
    let Some(guard) = layout.guard else { return };
    for side in [-1.0, 1.0] {
        let (from, to) = (
            side * layout.half_length,
            side * (layout.half_length + guard.width),
        );
        let below = depth(layout, &guard);
        match guard.remedy {
            FrostRemedy::None => {}
            FrostRemedy::Insulation => {
                let boards = rectangle(
                    view.at(from, -guard.depth),
                    view.at(to, -(guard.depth + guard.thickness)),
                );
                pen.outline(Line::Thick, &boards);
            }
            FrostRemedy::Sleeve => {
                pen.line(Line::Heavy, &[view.at(from, 0.0), view.at(from, -below)]);
            }
            FrostRemedy::Gravel => {
                let trench = rectangle(view.at(from, 0.0), view.at(to, -below));
                pen.hatch(Hatch::Backfill, std::slice::from_ref(&trench));
                pen.outline(Line::Thin, &trench);
            }
        }
    }
}

/// Sleeve and gravel end at the base.
fn depth(layout: &Layout, guard: &Guard) -> f64 {
    guard.depth.min(layout.depth)
}

/// Where its note points, and what it says.
pub(super) fn note(layout: &Layout, view: &View) -> Option<(Point, String)> {
    let guard = layout.guard?;
    let say = |length_m: f64| say_mm(layout.units, length_m);
    let (x, words) = match guard.remedy {
        FrostRemedy::None => return None,
        FrostRemedy::Insulation => (
            0.5 * guard.width,
            format!(
                "Insulation {} thick, {} wide all round, {} down; clean gravel above",
                say(guard.thickness),
                say(guard.width),
                say(guard.depth)
            ),
        ),
        FrostRemedy::Sleeve => (
            0.0,
            format!(
                "Sleeve of two greased layers, {} down",
                say(depth(layout, &guard))
            ),
        ),
        FrostRemedy::Gravel => (
            0.5 * guard.width,
            format!(
                "Clean gravel {} wide, {} down",
                say(guard.width),
                say(depth(layout, &guard))
            ),
        ),
    };
    let y = if guard.remedy == FrostRemedy::Insulation {
        guard.depth
    } else {
        0.5 * depth(layout, &guard)
    };
    Some((view.at(layout.half_length + x, -y), words))
}
