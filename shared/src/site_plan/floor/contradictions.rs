//! Answers about the floor that contradict each other or the pier.

use crate::field::Problem;
use crate::site_plan::SitePlan;
use crate::site_plan::floor::{FloorKind, Wall};
use crate::{path, paths};

/// Nobody stands nearer to the axis than this whatever the column: the thinnest one has a radius of 30 mm.
const THINNEST_RADIUS_M: f64 = 0.03;
/// Bare ground is level with itself, give or take a trodden path.
const GROUND_LEVEL_M: f64 = 0.05;

/// Answers about the floor that contradict each other or the pier.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    let mut problems = inside_pier(plan);
    problems.extend(raised_ground(plan));
    problems.extend(posts_without_deck(plan));
    problems.extend(joists_without_deck(plan));
    problems.extend(door_beside_its_wall(plan));
    problems
}

/// Stands, posts and legs of the walk that are where the column is.
fn inside_pier(plan: &SitePlan) -> Vec<Problem> {
    let radius = plan
        .pier
        .outside_diameter_mm
        .map_or(THINNEST_RADIUS_M, |diameter| 0.5 * diameter / 1000.0);
    let floor = &plan.floor;
    let stands = floor
        .stands
        .iter()
        .flatten()
        .enumerate()
        .filter(|(_, stand)| stand.x_m.hypot(stand.y_m) < radius);
    let stands = stands.map(|(i, stand)| {
        let fields = [
            format!("floor.stands[{i}].x_m"),
            format!("floor.stands[{i}].y_m"),
            path!(pier.outside_diameter_mm).into(),
        ];
        problem(
            &fields,
            format!(
                "{} stands inside the column. Move the place, or make the column thinner.",
                name(&stand.name)
            ),
        )
    });
    let posts = floor
        .supports
        .iter()
        .flatten()
        .enumerate()
        .filter(|(_, post)| post[0].hypot(post[1]) < radius);
    let posts = posts.map(|(i, _)| {
        let fields = [
            format!("floor.supports[{i}]"),
            path!(pier.outside_diameter_mm).into(),
        ];
        problem(
            &fields,
            "A post of the deck stands inside the column.".to_owned(),
        )
    });
    let walk = floor.walk.as_deref().unwrap_or_default();
    let crosses = walk.windows(2).any(|leg| to_axis(leg[0], leg[1]) < radius)
        || walk.iter().any(|place| place[0].hypot(place[1]) < radius);
    let walk = crosses.then(|| {
        let fields = [
            path!(floor.walk).into(),
            path!(pier.outside_diameter_mm).into(),
        ];
        problem(
            &fields,
            "The route leads through the column. Lead it round the column.".to_owned(),
        )
    });
    stands.chain(posts).chain(walk).collect()
}

fn raised_ground(plan: &SitePlan) -> Option<Problem> {
    let level = plan.floor.level_m?;
    (plan.floor.kind == Some(FloorKind::Ground) && level.abs() > GROUND_LEVEL_M).then(|| {
        Problem::between(
            paths![floor.kind, floor.level_m],
            "Bare ground is at ground level: choose a slab or a deck for a floor at another level, or leave the level at zero.",
        )
    })
}

fn posts_without_deck(plan: &SitePlan) -> Option<Problem> {
    let has_posts = plan
        .floor
        .supports
        .as_ref()
        .is_some_and(|posts| !posts.is_empty());
    let other = plan.floor.kind.is_some_and(|kind| kind != FloorKind::Deck);
    (has_posts && other).then(|| {
        Problem::between(
            paths![floor.kind, floor.supports],
            "Only a deck stands on posts: choose a deck, or take the posts away.",
        )
    })
}

fn joists_without_deck(plan: &SitePlan) -> Option<Problem> {
    let other = plan.floor.kind.is_some_and(|kind| kind != FloorKind::Deck);
    (plan.floor.joists.is_some() && other).then(|| {
        Problem::between(
            paths![floor.kind, floor.joists],
            "Only a deck has joists: choose a deck, or take their direction away.",
        )
    })
}

/// A door farther along than its wall is long; the wall's length must have been said.
fn door_beside_its_wall(plan: &SitePlan) -> Option<Problem> {
    let floor = &plan.floor;
    let (field, wall) = match floor.door_wall? {
        Wall::North | Wall::South => (path!(floor.length_m), floor.length_m?),
        Wall::East | Wall::West => (path!(floor.width_m), floor.width_m?),
    };
    (floor.door_offset_m?.abs() > 0.5 * wall).then(|| {
        Problem::between(
            &[path!(floor.door_offset_m), field],
            "The door would be beside its wall: bring it nearer to the wall's middle, or make the floor longer there.",
        )
    })
}

fn problem(fields: &[String], said: String) -> Problem {
    Problem {
        fields: fields.to_vec(),
        value: None,
        said,
    }
}

fn name(name: &str) -> &str {
    if name.trim().is_empty() {
        "Somebody"
    } else {
        name
    }
}

/// Shortest distance from the axis to a leg of the walk.
fn to_axis(from: [f64; 2], to: [f64; 2]) -> f64 {
    let along = [to[0] - from[0], to[1] - from[1]];
    let length_squared = along[0] * along[0] + along[1] * along[1];
    let t = if length_squared > 0.0 {
        (-(from[0] * along[0] + from[1] * along[1]) / length_squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (from[0] + t * along[0]).hypot(from[1] + t * along[1])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::Stand;

    #[test]
    fn joists_ask_for_a_deck_and_a_door_for_its_wall() {
        use crate::site_plan::floor::Joists;
        let mut plan = SitePlan::unknown();
        plan.floor.kind = Some(FloorKind::Slab);
        plan.floor.joists = Some(Joists::X);
        plan.floor.door_wall = Some(Wall::East);
        plan.floor.door_offset_m = Some(1.4);
        plan.floor.width_m = Some(2.6);
        let found = contradictions(&plan);
        assert_eq!(found.len(), 2);
        assert!(found[1].fields.contains(&"floor.width_m".to_owned()));
        plan.floor.kind = Some(FloorKind::Deck);
        plan.floor.door_offset_m = Some(1.3);
        assert!(contradictions(&plan).is_empty());
    }

    #[test]
    fn a_stand_inside_the_column_is_named_at_every_field() {
        let mut plan = SitePlan::unknown();
        plan.pier.outside_diameter_mm = Some(300.0);
        plan.floor.stands = Some(vec![Stand {
            name: "Observer".into(),
            x_m: 0.1,
            y_m: 0.1,
            mass_kg: 80.0,
        }]);
        plan.floor.walk = Some(vec![[-1.0, -0.1], [1.0, -0.1]]);
        let fields: Vec<_> = contradictions(&plan)
            .into_iter()
            .map(|problem| problem.fields.join(" "))
            .collect();
        assert_eq!(
            fields,
            [
                "floor.stands[0].x_m floor.stands[0].y_m pier.outside_diameter_mm",
                "floor.walk pier.outside_diameter_mm"
            ]
        );
    }

    #[test]
    fn bare_ground_has_no_level_and_no_posts() {
        let mut plan = SitePlan::unknown();
        plan.floor.kind = Some(FloorKind::Ground);
        plan.floor.level_m = Some(0.4);
        plan.floor.supports = Some(vec![[1.0, 1.0]]);
        assert_eq!(contradictions(&plan).len(), 2);
    }
}
