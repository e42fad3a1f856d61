//! Laws that hold between a plan and its neighbour, whatever the plan: one answer is moved, and what must not get better
//! by it does not; or it is moved by very little, and nothing jumps.
#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use stillground::brief::resolve;
use stillground::design::{Design, design};
use stillground::halfspace::Shelf;
use stillground::notes::Verdict;
use stillground::site_plan::SitePlan;
use stillground::units::{metre, millimetre};

/// What an answer that gets worse may not make better.
#[derive(Clone, Copy)]
pub enum Watched {
    /// How much of a check's capacity is used.
    Use(&'static str),
    /// Hours until a task is done.
    Done(&'static str),
    /// How little a stiffness of the ground is.
    Softness,
    /// Use of every check of a stage whose verdict can hold the plan up.
    UsesOf(&'static str),
}

/// As the answer moves in the direction that is worse, what is watched gets no better.
pub struct Law {
    /// The law in words.
    pub name: &'static str,
    /// Path of the answer.
    pub field: &'static str,
    /// Whether more of it is worse.
    pub more_is_worse: bool,
    /// What is watched.
    pub watched: &'static [Watched],
}

/// The laws.
pub const LAWS: [Law; 7] = [
    Law {
        name: "colder work is never quicker",
        field: "work.temperature_c",
        more_is_worse: false,
        watched: &[Watched::Done("load")],
    },
    Law {
        name: "colder concrete is never quicker",
        field: "anchors.concrete_temperature_c",
        more_is_worse: false,
        watched: &[Watched::Done("load")],
    },
    Law {
        name: "lower bearing is never better",
        field: "site.presumed_bearing_kpa",
        more_is_worse: false,
        watched: &[
            Watched::Use("block.bearing"),
            Watched::Use("block.effective_bearing"),
        ],
    },
    Law {
        name: "less contact is never stiffer",
        field: "block.side_contact_from_m",
        more_is_worse: true,
        watched: &[Watched::Softness],
    },
    Law {
        name: "softer ground is never stiffer",
        field: "site.shear_wave_speed_m_s",
        more_is_worse: false,
        watched: &[Watched::Softness],
    },
    Law {
        name: "a bigger gust is never kinder",
        field: "site.design_gust_m_s",
        more_is_worse: true,
        watched: &[
            Watched::Use("block.overturning"),
            Watched::Use("block.sliding"),
            Watched::Use("block.bearing"),
            Watched::Use("pier.strength"),
            Watched::UsesOf("anchors."),
        ],
    },
    Law {
        name: "a closer edge is never stronger",
        field: "block.width_m",
        more_is_worse: false,
        watched: &[
            Watched::UsesOf("anchors."),
            Watched::Use("block.overturning"),
        ],
    },
];

/// A plan whose sizes are all said, so that a neighbour differs in the one answer alone.
#[must_use]
pub fn pinned(plan: &SitePlan, found: &Design) -> SitePlan {
    let mut plan = plan.clone();
    for (path, value) in [
        ("block.length_m", metre::get(found.block.length)),
        ("block.width_m", metre::get(found.block.width)),
        ("block.depth_m", metre::get(found.block.depth)),
        ("block.upstand_m", metre::get(found.block.upstand)),
        ("block.side_contact_from_m", 0.0),
        ("block.side_contact_to_m", metre::get(found.block.depth)),
        (
            "pier.outside_diameter_mm",
            millimetre::get(found.pier.outside_diameter),
        ),
        ("pier.wall_mm", millimetre::get(found.pier.wall)),
    ] {
        let field = field(path);
        if (field.get)(&plan).is_none() {
            (field.set)(&mut plan, Some(value.clamp(field.least, field.most)));
        }
    }
    plan
}

fn field(path: &str) -> &'static stillground::field::NumberField {
    SitePlan::numbers()
        .find(|field| field.path == path)
        .expect("a field of that path")
}

/// What is watched, larger is worse: each with its name. What could not be found is left out.
fn watched(design: &Design, what: Watched) -> Vec<(String, f64)> {
    let uses = |id: &dyn Fn(&str) -> bool| {
        design
            .checks
            .iter()
            .filter(|check| id(check.id))
            .filter_map(|check| Some((check.id.to_owned(), check.utilisation?)))
            .collect()
    };
    match what {
        Watched::Use(id) => uses(&|found| found == id),
        Watched::UsesOf(stage) => uses(&|found| found.starts_with(stage)),
        Watched::Done(task) => design
            .schedule
            .iter()
            .filter(|found| found.id == task)
            .map(|found| (task.to_owned(), found.done_h))
            .collect(),
        Watched::Softness => {
            let held = &design.ground_stiffness.typical;
            [
                ("rocking_x", held.rocking_x.map(|k| k.value)),
                ("rocking_y", held.rocking_y.map(|k| k.value)),
                ("horizontal_x", held.horizontal_x.map(|k| k.value)),
                ("vertical", held.vertical.map(|k| k.value)),
            ]
            .into_iter()
            .filter_map(|(name, k)| Some((name.to_owned(), 1.0 / k?)))
            .collect()
        }
    }
}

/// How far a figure may get better by rounding and by the mesh of the solved ground.
const ROUNDING_RATIO: f64 = 2e-3;

/// What a plan says against the laws; `step` is how far an answer is moved, as a share of its way to the end of its range.
#[must_use]
pub fn broken(plan: &SitePlan, base: &Design, step: f64, shelf: &dyn Shelf) -> Vec<String> {
    LAWS.iter()
        .filter_map(|law| {
            let field = field(law.field);
            let now = (field.get)(plan)?;
            let end = if law.more_is_worse {
                field.most
            } else {
                field.least
            };
            let mut other = plan.clone();
            (field.set)(&mut other, Some(now + step * (end - now)));
            let worse = design(&resolve(&other).ok()?, shelf);
            Some(law.watched.iter().flat_map(move |&what| {
                let (before, after) = (watched(base, what), watched(&worse, what));
                before
                    .into_iter()
                    .filter_map(|(name, was)| {
                        let is = after.iter().find(|(other, _)| *other == name)?.1;
                        (is < was * (1.0 - ROUNDING_RATIO) - 1e-9).then(|| {
                            format!(
                                "{}: {} from {now} to {}: {name} {was} became {is}",
                                law.name,
                                law.field,
                                now + step * (end - now)
                            )
                        })
                    })
                    .collect::<Vec<_>>()
            }))
        })
        .flatten()
        .collect()
}

/// Answers that are moved by very little, and the rules whose step each may meet: ids that begin so may jump.
pub const SMOOTH: [(&str, &[&str]); 16] = [
    ("site.shear_wave_speed_m_s", &[]),
    ("site.presumed_bearing_kpa", &[]),
    ("site.groundwater_depth_m", &[]),
    ("site.frost_depth_m", &[]),
    ("site.design_gust_m_s", &[]),
    ("site.slope_deg", &[]),
    ("site.tree_distance_m", &[]),
    ("site.building_distance_m", &[]),
    ("site.rock_depth_m", &[]),
    ("block.width_m", &[]),
    ("block.depth_m", &[]),
    ("block.side_contact_from_m", &[]),
    ("load.mass_kg", &[]),
    ("load.wind_area_m2", &[]),
    ("pier.height_m", &[]),
    ("floor.gap_mm", &[]),
];

/// Most that a figure may move between neighbours.
const JUMP_RATIO: f64 = 0.1;
/// Neighbours differ by this share of the answer.
const NEAR_RATIO: f64 = 1e-3;
/// Below this use nobody looks.
const IDLE: f64 = 0.05;

/// Where a plan and its near neighbour differ by more than a tenth: the answer, what jumped, from and to.
#[must_use]
pub fn jumps(plan: &SitePlan, base: &Design, shelf: &dyn Shelf) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (path, steps) in SMOOTH {
        let field = field(path);
        let Some(now) = (field.get)(plan) else {
            continue;
        };
        let near = (now * (1.0 + NEAR_RATIO)).max(now + 1e-6).min(field.most);
        let mut other = plan.clone();
        (field.set)(&mut other, Some(near));
        let Ok(brief) = resolve(&other) else { continue };
        let next = design(&brief, shelf);
        let pairs = base.checks.iter().filter_map(|was| {
            let is = next.checks.iter().find(|check| check.id == was.id)?;
            Some((was, is))
        });
        for (was, is) in pairs {
            if steps.iter().any(|step| was.id.starts_with(step)) {
                continue;
            }
            let jumped = match (was.utilisation, is.utilisation) {
                (Some(a), Some(b)) => (a - b).abs() > JUMP_RATIO * a.max(b).max(IDLE),
                (None, None) => false,
                // A use appears where a demand or a capacity passes nought.
                _ => {
                    was.verdict != is.verdict
                        && was.verdict != Verdict::Unknown
                        && is.verdict != Verdict::Unknown
                }
            };
            if jumped {
                found.push((
                    format!("{path}: {}", was.id),
                    format!(
                        "{now} → {near}: {:?} → {:?}",
                        was.utilisation, is.utilisation
                    ),
                ));
            }
        }
        for (name, a, b) in stiffnesses(base, &next) {
            if (a - b).abs() > JUMP_RATIO * a.max(b) {
                found.push((
                    format!("{path}: {name}"),
                    format!("{now} → {near}: {a} → {b}"),
                ));
            }
        }
    }
    found
}

fn stiffnesses(base: &Design, next: &Design) -> Vec<(&'static str, f64, f64)> {
    let of = |design: &Design| {
        let held = &design.ground_stiffness.typical;
        [
            held.rocking_x.map(|k| k.value),
            held.rocking_y.map(|k| k.value),
        ]
    };
    let ([ax, ay], [bx, by]) = (of(base), of(next));
    [("rocking_x", ax, bx), ("rocking_y", ay, by)]
        .into_iter()
        .filter_map(|(name, a, b)| Some((name, a?, b?)))
        .collect()
}
