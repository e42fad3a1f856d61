//! Quiet distance: how far from the pier's axis a person moves the star by less than the budget.
//!
//! It is counted from the axis, in the softest ground thought likely, and never less than the place where a person's feet
//! can first be off the block or off the hole in the floor.

use serde::Serialize;

use crate::brief::Brief;
use crate::stages::floor::Floor;
use crate::stages::motion::people::Ground;
use crate::stages::motion::system::{Planes, System};
use crate::units::{kilogram, metre};

/// The eight directions, clockwise from north.
pub const DIRECTIONS: [(&str, f64, f64); 8] = [
    ("north", 0.0, 1.0),
    ("north-east", 1.0, 1.0),
    ("east", 1.0, 0.0),
    ("south-east", 1.0, -1.0),
    ("south", 0.0, -1.0),
    ("south-west", -1.0, -1.0),
    ("west", -1.0, 0.0),
    ("north-west", -1.0, 1.0),
];
/// Farthest that is looked at, m.
const FARTHEST_M: f64 = 20.0;
/// Places looked at in each direction, before the last loud one is narrowed down.
const PLACES: usize = 12;
/// Halvings of the way between the last loud place and the next.
const HALVINGS: usize = 12;

/// A distance from the pier's axis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Quiet {
    /// From here on, whichever way from the pier, the movement is within the budget.
    pub distance_m: f64,
    /// Whether that is so wherever a person can stand off the block, or off the hole in the floor.
    pub anywhere: bool,
}

/// From which distance on a person is not felt who moves the star so many times as far as one who stands; none within 20 m.
#[must_use]
pub fn find(
    brief: &Brief,
    system: &System,
    ground: &Ground<'_>,
    budget_arcsec: f64,
    times: f64,
) -> Option<Quiet> {
    let loud = |[x, y]: [f64; 2], distance: f64| {
        times
            * turn(
                &system.low,
                ground,
                person_kg(brief),
                [x * distance, y * distance],
            )
            > budget_arcsec
    };
    // Without posts the block's two planes of symmetry make one quarter stand for all.
    let asked = if ground.floor.supports.is_empty() {
        3
    } else {
        DIRECTIONS.len()
    };
    let mut found = Quiet {
        distance_m: 0.0,
        anywhere: true,
    };
    for (_, x, y) in DIRECTIONS.iter().take(asked) {
        let way = [x / x.hypot(*y), y / x.hypot(*y)];
        let edge = edge_m(ground.floor, way);
        match last_loud(edge, |distance| loud(way, distance)) {
            Last::Nowhere => found.distance_m = found.distance_m.max(edge),
            Last::At(distance) => {
                found = Quiet {
                    distance_m: found.distance_m.max(distance),
                    anywhere: false,
                }
            }
            Last::Everywhere => return None,
        }
    }
    Some(found)
}

/// How far out it is loud.
enum Last {
    /// Not even at the edge.
    Nowhere,
    /// Up to this distance.
    At(f64),
    /// As far as is looked.
    Everywhere,
}

/// The farthest place that is loud, from the outside in: between posts the movement need not fall with the distance.
fn last_loud(edge: f64, loud: impl Fn(f64) -> bool) -> Last {
    let ratio = (FARTHEST_M / edge).max(1.0).powf(1.0 / (PLACES - 1) as f64);
    let place = |i: usize| edge * ratio.powi(i as i32);
    let Some(last) = (0..PLACES).rev().find(|&i| loud(place(i))) else {
        return Last::Nowhere;
    };
    if last == PLACES - 1 {
        return Last::Everywhere;
    }
    let (mut near, mut far) = (place(last), place(last + 1));
    for _ in 0..HALVINGS {
        let middle = 0.5 * (near + far);
        if loud(middle) {
            near = middle;
        } else {
            far = middle;
        }
    }
    Last::At(far)
}

/// Distance from the axis at which the floor begins: beside the hole for pier or block, or beside the block.
fn edge_m(floor: &Floor, [x, y]: [f64; 2]) -> f64 {
    let half = match floor.opening {
        Some(opening) if opening.is_circle => return 0.5 * metre::get(opening.length),
        Some(opening) => [opening.length, opening.width].map(|side| 0.5 * metre::get(side)),
        None => floor.block_half_m,
    };
    let along = |half: f64, part: f64| {
        if part.abs() > 1e-9 {
            half / part.abs()
        } else {
            f64::INFINITY
        }
    };
    along(half[0], x)
        .min(along(half[1], y))
        .clamp(0.01, FARTHEST_M / 2.0)
}

/// Mass of the person for whom the distance holds.
#[must_use]
pub fn person_kg(brief: &Brief) -> f64 {
    kilogram::get(brief.floor.walker_mass.value)
}

/// Turn of the star under a mass at a place, arcsec.
#[must_use]
pub fn turn(planes: &Planes, ground: &Ground<'_>, mass_kg: f64, place: [f64; 2]) -> f64 {
    let [x, y] = ground.under(planes, mass_kg, place);
    x.hypot(y)
}

#[cfg(test)]
mod tests {
    use crate::design::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;
    use crate::site_plan::floor::Stand;

    fn from(plan: &mut SitePlan, distance: f64) -> f64 {
        let place = |name: &str, x, y| Stand {
            name: name.into(),
            x_m: x * distance,
            y_m: y * distance,
            mass_kg: 80.0,
        };
        plan.floor.stands = Some(vec![
            place("S", 0.0, -1.0),
            place("E", 1.0, 0.0),
            place("NE", 0.5f64.sqrt(), 0.5f64.sqrt()),
        ]);
        let design = design_plan(plan, &NoShelf).unwrap();
        design
            .motion
            .stands
            .iter()
            .map(|stand| stand.block_tilt_by_ground_arcsec.unwrap().low)
            .fold(0.0, f64::max)
    }

    /// The distance means what it says: just beyond it the star moves by less than the budget, just within by more.
    #[test]
    fn beyond_the_quiet_distance_the_budget_holds_and_within_it_does_not() {
        let mut plan = SitePlan::unknown();
        let motion = design_plan(&plan, &NoShelf).unwrap().motion;
        let quiet = motion.quiet.unwrap();
        assert!(!quiet.anywhere && Some(quiet.distance_m) == motion.quiet_distance_m);
        assert!(from(&mut plan, quiet.distance_m * 1.01) < motion.budget_arcsec);
        assert!(from(&mut plan, quiet.distance_m * 0.98) > motion.budget_arcsec);
    }

    #[test]
    fn where_even_beside_the_block_nobody_is_felt_it_is_anywhere() {
        let mut plan = SitePlan::unknown();
        plan.load.budget_arcsec = Some(5.0);
        let design = design_plan(&plan, &NoShelf).unwrap();
        let quiet = design.motion.quiet.unwrap();
        let half = design.floor.block_half_m;
        assert!(
            quiet.anywhere && (quiet.distance_m - half[0].hypot(half[1])).abs() < 1e-9,
            "{quiet:?}"
        );
        assert!(
            design.motion.where_to_stand[0].contains("anywhere"),
            "{}",
            design.motion.where_to_stand[0]
        );
    }
}
