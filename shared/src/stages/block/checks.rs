//! The block's checks: what the ground carries, whether it stands, stays, freezes, floats, and takes the studs.

mod bearing;
mod carrying;
mod fit;
mod lines;
mod stand;

pub(super) use bearing::carries;
pub(super) use stand::{stands, stays_put};

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::ground::Ground;
use crate::stages::loads::Loads;
use crate::units::{Pressure, kilonewton, kilopascal, square_metre};

use super::actions::Actions;
use super::dowels::{self, Dowels};
use super::frost::{self, SideFrost};
use super::outline::Outline;

/// Makes every check; gives the largest and the resting pressure under the base.
pub(super) fn all(
    brief: &Brief,
    ground: &Ground,
    outline: &Outline,
    actions: &Actions,
    (side_frost, dowels): (&SideFrost, Option<&Dowels>),
    loads: &Loads,
    notes: &mut Notes,
) -> (Pressure, Pressure) {
    lines::workings(brief, outline, actions, loads, notes);
    carrying::workings(brief, ground, outline, actions, notes);
    let mut found = vec![bearing::net(brief, ground, outline, actions)];
    found.extend(bearing::resisted(brief, ground, outline, actions));
    found.extend([
        bearing::eccentric(outline, actions),
        stand::overturning(outline, actions),
        stand::sliding(brief, outline, actions),
        stand::buoyancy(brief, outline),
    ]);
    found.extend(fit::frost(brief, ground, outline));
    found.extend(frost::note(brief, ground, side_frost, notes));
    found.extend(dowels::checks(brief, ground, outline, actions, dowels));
    found.push(fit::plate(brief, outline));
    notes.checks.extend(found);
    (largest(outline, actions), resting(outline, actions))
}

/// Pressure when nothing pushes.
fn resting(outline: &Outline, actions: &Actions) -> Pressure {
    kilopascal::new(kilonewton::get(actions.weight) / square_metre::get(outline.plan()))
}

/// The largest pressure at the base's edge; where nothing balances the force, the whole weight on a hundredth of the base, to show
/// that it is far too much.
pub(super) fn largest(outline: &Outline, actions: &Actions) -> Pressure {
    stand::largest_pressure(outline, actions).unwrap_or_else(|| resting(outline, actions) * 100.0)
}
