//! The changes that are tried.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::rules::tubes::{self, Tube};
use crate::site_plan::floor::{FARTHEST_M, FloorKind, Soles};
use crate::site_plan::load::Enclosure;
use crate::site_plan::pier::{Fill, Levelling};
use crate::site_plan::{SitePlan, Stand};
use crate::stages::block::Block;
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::units::{metre, millimetre, newton_metre_per_radian};

/// How much wider or deeper a block is tried, m.
const MORE_M: f64 = 0.2;
/// How much farther out people are tried, m.
const OUT_M: f64 = 0.5;
/// From here on a mount is as good as rigid, N m/rad.
const RIGID_N_M_PER_RAD: f64 = 1e8;
/// Distance of a person's middle from a wall, m.
const FROM_WALL_M: f64 = 0.3;

/// A changed plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What is changed, in words.
    pub words: String,
    /// Its fields.
    pub fields: Vec<NewField>,
    /// The plan with them.
    pub plan: SitePlan,
}

impl Change {
    fn new(plan: &SitePlan, words: String) -> Self {
        Self {
            words,
            fields: Vec::new(),
            plan: plan.clone(),
        }
    }

    /// Sets a number; the path is one of the plan's catalogue.
    fn number(mut self, field: &'static str, value: f64) -> Self {
        if let Some(number) = SitePlan::numbers().find(|number| number.path == field) {
            (number.set)(&mut self.plan, Some(value));
            self.fields.push(NewField {
                field,
                value: NewValue::Number(value),
            });
        }
        self
    }

    fn text(mut self, field: &'static str, value: &str, set: impl FnOnce(&mut SitePlan)) -> Self {
        set(&mut self.plan);
        self.fields.push(NewField {
            field,
            value: NewValue::Text(value.to_owned()),
        });
        self
    }
}

/// All that is worth trying in this plan.
#[must_use]
pub fn all(plan: &SitePlan, brief: &Brief, built: &Block) -> Vec<Change> {
    let mut changes = column(plan, brief);
    changes.extend(block(plan, brief, built));
    changes.extend(people(plan, brief));
    changes.extend(choices(plan, brief));
    changes
}

fn column(plan: &SitePlan, brief: &Brief) -> Vec<Change> {
    let (outside, wall) = (
        millimetre::get(brief.pier.outside_diameter.value),
        millimetre::get(brief.pier.wall.value),
    );
    let say = |value| brief.units.say(value, Unit::Millimetre);
    let mut changes = Vec::new();
    if let Some(tube) = tubes::thicker(outside, wall) {
        let words = format!("the column's wall {} → {}", say(wall), say(tube.wall_mm));
        changes.push(with_tube(
            plan,
            brief,
            &Tube {
                outside_mm: outside,
                ..tube
            },
            words,
        ));
    }
    if let Some(tube) = tubes::larger(outside, wall) {
        let words = format!(
            "the column {} → {}, wall {}",
            say(outside),
            say(tube.outside_mm),
            say(tube.wall_mm)
        );
        changes.push(with_tube(plan, brief, &tube, words));
    }
    changes
}

fn with_tube(plan: &SitePlan, brief: &Brief, tube: &Tube, words: String) -> Change {
    let mut change = Change::new(plan, words);
    if change.plan.pier.tube.take().is_some() {
        change.fields.push(NewField {
            field: "pier.tube",
            value: NewValue::Nothing,
        });
    }
    let change = change
        .number("pier.outside_diameter_mm", tube.outside_mm)
        .number("pier.wall_mm", tube.wall_mm);
    // The base plate keeps its margin round a larger column.
    let more = tube.outside_mm - millimetre::get(brief.pier.outside_diameter.value);
    match plan.pier.plate_side_mm {
        Some(side) if more > 0.0 => change.number("pier.plate_side_mm", (side + more).ceil()),
        _ => change,
    }
}

fn block(plan: &SitePlan, brief: &Brief, block: &Block) -> Vec<Change> {
    let [length, width, depth] = [block.length, block.width, block.depth].map(metre::get);
    let say = |value| brief.units.say(value, Unit::Metre);
    let pit = &brief.excavation;
    let sized = |words: String, length: f64, width: f64, depth: f64| {
        let to = plan.block.side_contact_to_m;
        let change = Change::new(plan, words)
            .number("block.length_m", length)
            .number("block.width_m", width)
            .number("block.depth_m", depth);
        // A contact that ended at the base still does.
        if to.is_some_and(|to| (to - metre::get(block.depth)).abs() < 1e-9) {
            change.number("block.side_contact_to_m", depth)
        } else {
            change
        }
    };
    let mut changes = Vec::new();
    let (from, to) = (
        metre::get(block.side_contact_from),
        metre::get(block.side_contact_to),
    );
    if from > 0.0 || to < depth {
        changes.push(
            sized(
                "the block hard against the soil to its full depth".into(),
                length,
                width,
                depth,
            )
            .number("block.side_contact_from_m", 0.0)
            .number("block.side_contact_to_m", depth),
        );
    }
    let (wider, broader) = (tidy(length + MORE_M), tidy(width + MORE_M));
    if wider <= metre::get(pit.max_length.value) && broader <= metre::get(pit.max_width.value) {
        changes.push(sized(
            format!(
                "the block {} by {} instead of {} by {}",
                say(wider),
                say(broader),
                say(length),
                say(width)
            ),
            wider,
            broader,
            depth,
        ));
    }
    let deeper = tidy(depth + MORE_M);
    if deeper <= metre::get(pit.max_depth.value) {
        changes.push(sized(
            format!("the block {} deep instead of {}", say(deeper), say(depth)),
            length,
            width,
            deeper,
        ));
    }
    changes
}

fn tidy(value: f64) -> f64 {
    (value * 1e3).round() / 1e3
}

fn people(plan: &SitePlan, brief: &Brief) -> Vec<Change> {
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
        field: "floor.stands",
        value: NewValue::Stands(stands.clone()),
    });
    change.plan.floor.stands = Some(stands);
    change
}

/// Everybody a little farther out, where the floor goes on.
fn farther_stands(plan: &SitePlan, brief: &Brief) -> Option<Change> {
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
    let words = format!(
        "everybody stands {} farther from the pier, where the floor goes on",
        brief.units.say(OUT_M, Unit::Metre)
    );
    (stands != brief.floor.stands.value).then(|| with_stands(plan, words, stands))
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
        brief.units.say(OUT_M, Unit::Metre)
    );
    let mut change = Change::new(plan, words);
    change.fields.push(NewField {
        field: "floor.walk",
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

/// A mount twice as stiff, unless it is rigid as it is.
fn mount(plan: &SitePlan, brief: &Brief) -> Option<Change> {
    let stiffness = newton_metre_per_radian::get(brief.load.mount_stiffness.value);
    let words = "a mount twice as stiff, on the same pier".to_owned();
    (stiffness < RIGID_N_M_PER_RAD).then(|| {
        Change::new(plan, words).number("load.mount_stiffness_n_m_per_rad", 2.0 * stiffness)
    })
}

fn choices(plan: &SitePlan, brief: &Brief) -> Vec<Change> {
    let mut changes = Vec::new();
    if brief.pier.levelling.value == Levelling::Nuts {
        changes.push(
            Change::new(
                plan,
                "a bed of grout under the base plate instead of an open gap on nuts".into(),
            )
            .text("pier.levelling", Levelling::Grout.key(), |plan| {
                plan.pier.levelling = Some(Levelling::Grout)
            }),
        );
    }
    if brief.pier.fill.value == Fill::None {
        changes.push(Change::new(plan, "dry sand in the column".into()).text(
            "pier.fill",
            Fill::Sand.key(),
            |plan| plan.pier.fill = Some(Fill::Sand),
        ));
    }
    if brief.floor.soles.value == Soles::Hard {
        changes.push(Change::new(plan, "soft soles".into()).text(
            "floor.soles",
            Soles::Soft.key(),
            |plan| plan.floor.soles = Some(Soles::Soft),
        ));
    }
    changes.extend(mount(plan, brief));
    if brief.floor.kind.value != FloorKind::Deck {
        changes.push(
            Change::new(
                plan,
                "a deck on posts along the walls instead of feet on the ground beside the block"
                    .into(),
            )
            .text("floor.kind", FloorKind::Deck.key(), |plan| {
                plan.floor.kind = Some(FloorKind::Deck)
            }),
        );
    }
    if brief.load.enclosure.value == Enclosure::RollOff {
        changes.push(
            Change::new(
                plan,
                "a dome with a slit instead of walls with a roof that rolls away".into(),
            )
            .text("load.enclosure", Enclosure::Dome.key(), |plan| {
                plan.load.enclosure = Some(Enclosure::Dome)
            }),
        );
    }
    if brief.load.enclosure.value == Enclosure::Open {
        changes.push(
            Change::new(
                plan,
                "walls round the telescope, with a roof that rolls away".into(),
            )
            .text("load.enclosure", Enclosure::RollOff.key(), |plan| {
                plan.load.enclosure = Some(Enclosure::RollOff)
            }),
        );
    }
    let shaded = tidy(brief.load.thermal_difference_k.value / 2.0);
    changes.push(
        Change::new(
            plan,
            "the column shaded and wrapped, so that its sides differ by half as much".into(),
        )
        .number("load.thermal_difference_k", shaded),
    );
    changes
}
