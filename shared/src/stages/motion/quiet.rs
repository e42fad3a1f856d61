//! Quiet distance: how far from the pier's axis a person costs the star less than is asked.
//!
//! It is counted from the axis, in the softest ground thought likely, and never less than the place where a person's feet
//! can first be off the block or off the hole in the floor. Somebody who stands comes once and shifts from foot to foot all
//! through the exposure; somebody who walks does so for a part of it.

use serde::Serialize;

use crate::brief::Brief;
use crate::site_plan::floor::Stand;
use crate::stages::floor::Floor;
use crate::stages::motion::budget::{Budget, Measure};
use crate::stages::motion::growth::{Cost, Exposure, Movement};
use crate::stages::motion::people::Ground;
use crate::stages::motion::system::{Planes, System};
use crate::units::{Outcome, kilogram, metre};

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
/// Movements that are tried, in widths of the star: from far below what shows to what no pier does.
const TRIED: (f64, f64) = (0.01, 8.0);
/// Sizes tried between them, before the least loud one is narrowed down.
const SIZES: usize = 16;

/// A distance from the pier's axis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Quiet {
    /// From here on, whichever way from the pier, the star is widened by less than is asked.
    pub distance_m: f64,
    /// Whether that is so wherever a person can stand off the block, or off the hole in the floor.
    pub anywhere: bool,
}

/// What somebody does at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Gait {
    /// Comes, stands there, and leaves.
    Stands,
    /// Walks about; a step moves the star so many times as far as somebody who stands there.
    Walks(f64),
}

/// The least movements that cost the star more than is asked, arcsec; none where no movement of that kind does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loud {
    step: Option<f64>,
    shift: Option<f64>,
    walk: Option<f64>,
}

impl Loud {
    /// For this exposure and what is asked of it.
    pub fn find(exposure: &Exposure, budget: &Budget) -> Self {
        if budget.measure == Measure::EyeMovement {
            let seen = Some(budget.arcsec);
            return Self {
                step: seen,
                shift: seen,
                walk: seen,
            };
        }
        let least = |movement: &dyn Fn([f64; 2]) -> Movement| least(exposure, budget, movement);
        Self {
            step: least(&|turn| Movement::once(exposure.of_step(turn))),
            shift: least(&|turn| Movement::once(exposure.of_shift(turn))),
            walk: least(&|turn| exposure.of_walking(turn)),
        }
    }

    /// Whether a person of this mass at a place costs more than is asked.
    pub fn is_loud(
        &self,
        planes: &Planes,
        ground: &Ground<'_>,
        mass_kg: f64,
        [x_m, y_m]: [f64; 2],
        gait: Gait,
    ) -> bool {
        let beyond =
            |[x, y]: [f64; 2], least: Option<f64>| least.is_some_and(|most| x.hypot(y) > most);
        let turn = ground.under(planes, mass_kg, [x_m, y_m]);
        let stand = Stand {
            name: String::new(),
            x_m,
            y_m,
            mass_kg,
        };
        match gait {
            Gait::Stands => {
                beyond(turn, self.step)
                    || self.shift.is_some() && beyond(ground.shifting(planes, &stand), self.shift)
            }
            Gait::Walks(times) => beyond(turn.map(|value| times * value), self.walk),
        }
    }
}

/// The least size of a movement along one axis that uses more than is asked.
fn least(
    exposure: &Exposure,
    budget: &Budget,
    movement: &dyn Fn([f64; 2]) -> Movement,
) -> Option<f64> {
    let loud = |size: f64| {
        let star = exposure.star(&movement([size, 0.0]));
        let cost = Cost {
            star_growth_ratio: Outcome::certain(star.growth_ratio()),
            peak_left_ratio: Outcome::certain(star.peak_left_ratio),
        };
        budget.used_ratio(&cost, size) > 1.0
    };
    let [low, high] = [TRIED.0, TRIED.1].map(|widths| widths * exposure.width_arcsec);
    let size = |i: usize| low * (high / low).powf(i as f64 / (SIZES - 1) as f64);
    let first = (0..SIZES).find(|&i| loud(size(i)))?;
    let (mut quiet, mut found) = (if first == 0 { 0.0 } else { size(first - 1) }, size(first));
    for _ in 0..HALVINGS {
        let middle = 0.5 * (quiet + found);
        if loud(middle) {
            found = middle;
        } else {
            quiet = middle;
        }
    }
    Some(found)
}

/// From which distance on a person costs less than is asked; none within 20 m.
pub fn find(
    brief: &Brief,
    system: &System,
    ground: &Ground<'_>,
    loud: &Loud,
    gait: Gait,
) -> Option<Quiet> {
    let mass_kg = person_kg(brief);
    let loud_at = |[x, y]: [f64; 2], distance: f64| {
        loud.is_loud(
            &system.low,
            ground,
            mass_kg,
            [x * distance, y * distance],
            gait,
        )
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
        match last_loud(edge, |distance| loud_at(way, distance)) {
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
pub fn person_kg(brief: &Brief) -> f64 {
    kilogram::get(brief.floor.walker_mass.value)
}

/// Turn of the star under a mass at a place, arcsec.
pub fn turn(planes: &Planes, ground: &Ground<'_>, mass_kg: f64, place: [f64; 2]) -> f64 {
    let [x, y] = ground.under(planes, mass_kg, place);
    x.hypot(y)
}

#[cfg(test)]
mod tests {
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;
    use crate::site_plan::floor::Stand;
    use crate::site_plan::site::Soil;

    /// Soft ground, a small block, and nothing that corrects within the exposure.
    fn plan() -> SitePlan {
        let mut plan = SitePlan::unknown();
        plan.site.soil = Some(Soil::SoftClay);
        plan.block.length_m = Some(0.8);
        plan.block.width_m = Some(0.8);
        plan.block.depth_m = Some(0.8);
        plan.load.guiding_interval_s = Some(600.0);
        plan.load.exposure_s = Some(300.0);
        plan
    }

    fn growth_at(plan: &mut SitePlan, distance: f64) -> f64 {
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
        let soft = design
            .motion
            .stands
            .iter()
            .map(|stand| stand.block_tilt_by_ground_arcsec.unwrap().low)
            .fold(0.0, f64::max);
        // By hand: half the exposure here and half there is a variance of a quarter of the square, one axis alone.
        let seeing = 2.0_f64;
        (1.0 + 5.545 * soft * soft / 4.0 / (seeing * seeing)).powf(0.25) - 1.0
    }

    /// The distance means what it says: just beyond it the star grows by less than is asked, just within by more.
    #[test]
    fn beyond_the_quiet_distance_the_growth_holds_and_within_it_does_not() {
        let mut plan = plan();
        let motion = design_plan(&plan, &NoShelf).unwrap().motion;
        let quiet = motion.quiet.unwrap();
        assert!(!quiet.anywhere && Some(quiet.distance_m) == motion.quiet_distance_m);
        let asked = motion.budget.asked_growth_ratio;
        assert!(growth_at(&mut plan, quiet.distance_m * 1.05) < asked);
        assert!(growth_at(&mut plan, quiet.distance_m * 0.9) > asked);
    }

    #[test]
    fn where_even_beside_the_block_nobody_is_felt_it_is_anywhere() {
        let mut plan = SitePlan::unknown();
        plan.load.asked_growth_ratio = Some(0.5);
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
