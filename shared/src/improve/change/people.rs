//! People farther out: where they stand and where they walk.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::path;
use crate::site_plan::floor::FARTHEST_M;
use crate::site_plan::{SitePlan, Stand};
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::units::metre;

use super::{Change, tidy};

/// How much farther out people are tried, m.
const OUT_M: f64 = 0.5;
/// Distance of a person's middle from a wall, m.
const FROM_WALL_M: f64 = 0.3;

pub(super) fn people(plan: &SitePlan, brief: &Brief) -> Vec<Change> {
    let mut changes = Vec::new();
    changes.extend(farther_stands(plan, brief));
    changes.extend(corner(plan, brief));
    changes.extend(farther_walk(plan, brief));
    changes
}

fn half_floor(brief: &Brief) -> [f64; 2] {
    [brief.floor.length.value, brief.floor.width.value]
        .map(|extent| (metre::get(extent) / 2.0 - FROM_WALL_M).max(0.0))
}

fn with_stands(plan: &SitePlan, words: String, stands: Vec<Stand>) -> Change {
    let mut change = Change::new(plan, words);
    change.fields.push(NewField {
        field: path!(floor.stands),
        value: NewValue::Stands(stands.clone()),
    });
    change.plan.floor.stands = Some(stands);
    change
}

/// Everybody a little farther out, where the floor goes on.
fn farther_stands(plan: &SitePlan, brief: &Brief) -> Option<Change> {
    let words = format!(
        "everybody stands {} farther from the pier, where the floor goes on",
        brief.units.about(OUT_M, Unit::Metre)
    );
    stands_farther_out(brief).map(|stands| with_stands(plan, words, stands))
}

/// Where everybody stands then; none where nobody can.
pub(crate) fn stands_farther_out(brief: &Brief) -> Option<Vec<Stand>> {
    let half = half_floor(brief);
    let stands: Vec<Stand> = brief
        .floor
        .stands
        .value
        .iter()
        .map(|stand| {
            let distance = stand.x_m.hypot(stand.y_m);
            let scale = if distance > 0.0 {
                (distance + OUT_M) / distance
            } else {
                1.0
            };
            let (x, y) = (stand.x_m * scale, stand.y_m * scale);
            let inside = x.abs() <= half[0] && y.abs() <= half[1];
            if inside {
                Stand {
                    x_m: tidy(x),
                    y_m: tidy(y),
                    ..stand.clone()
                }
            } else {
                stand.clone()
            }
        })
        .collect();
    (stands != brief.floor.stands.value).then_some(stands)
}

/// Everybody in the corner that is nearest to them.
fn corner(plan: &SitePlan, brief: &Brief) -> Option<Change> {
    let [half_x, half_y] = half_floor(brief);
    let side = |value: f64, half: f64| tidy(if value < 0.0 { -half } else { half });
    let stands: Vec<Stand> = brief
        .floor
        .stands
        .value
        .iter()
        .map(|stand| {
            let (x, y) = (side(stand.x_m, half_x), side(stand.y_m, half_y));
            if x.hypot(y) > stand.x_m.hypot(stand.y_m) {
                Stand {
                    x_m: x,
                    y_m: y,
                    ..stand.clone()
                }
            } else {
                stand.clone()
            }
        })
        .collect();
    let moved: Vec<&Stand> = stands
        .iter()
        .zip(&brief.floor.stands.value)
        .filter(|(new, old)| new != old)
        .map(|(new, _)| new)
        .collect();
    let words = match moved.as_slice() {
        [] => return None,
        [one] => {
            let names = [
                if one.y_m < 0.0 { "south" } else { "north" },
                if one.x_m < 0.0 { "west" } else { "east" },
            ];
            format!("stand in the {}-{} corner of the floor", names[0], names[1])
        }
        _ => "everybody stands in the nearest corner of the floor".to_owned(),
    };
    Some(with_stands(plan, words, stands))
}

/// The path farther out all along, so that its nearest corner is.
fn farther_walk(plan: &SitePlan, brief: &Brief) -> Option<Change> {
    let path = &brief.floor.walk.value;
    let nearest = path
        .windows(2)
        .map(|leg| from_axis(leg[0], leg[1]))
        .reduce(f64::min)?;
    if nearest < 0.05 {
        return None;
    }
    let scale = (nearest + OUT_M) / nearest;
    let path: Vec<[f64; 2]> = path
        .iter()
        .map(|corner| corner.map(|value| tidy(value * scale)))
        .collect();
    if path.iter().flatten().any(|value| value.abs() > FARTHEST_M) {
        return None;
    }
    let words = format!(
        "the path passes {} farther from the pier",
        brief.units.about(OUT_M, Unit::Metre)
    );
    let mut change = Change::new(plan, words);
    change.fields.push(NewField {
        field: path!(floor.walk),
        value: NewValue::Path(path.clone()),
    });
    change.plan.floor.walk = Some(path);
    Some(change)
}

/// Distance of a leg of the path from the pier's axis.
fn from_axis(from: [f64; 2], to: [f64; 2]) -> f64 {
    let way = [to[0] - from[0], to[1] - from[1]];
    let square = way[0].powi(2) + way[1].powi(2);
    let along = if square > 0.0 {
        (-(from[0] * way[0] + from[1] * way[1]) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (from[0] + along * way[0]).hypot(from[1] + along * way[1])
}
