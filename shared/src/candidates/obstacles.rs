//! What stands in the way where nothing that fits is still enough, or may be built at all, and how much of each would do.

use crate::brief::Brief;
use crate::cast::Cast;
use crate::field::NumberField;
use crate::figure::Unit;
use crate::halfspace::Shelf;
use crate::notes::{Obstacle, Question, Verdict};
use crate::site_plan::SitePlan;
use crate::units::{metre, metre_per_second};
use crate::{path, row};

use super::examine::Examined;

/// Halvings of the way between what is there and the most that is tried.
const HALVINGS: usize = 5;
/// Deepest pit and longest side that are tried, m: beyond them it is another undertaking.
const DEEPEST_M: f64 = 3.0;
const LONGEST_M: f64 = 4.0;
/// Fastest shear waves that are tried, m/s: those of soft rock.
const FASTEST_M_S: f64 = 800.0;
/// Share of wind, load and height that is tried at least.
const LEAST_RATIO: f64 = 0.2;

/// What stands in the way of the nearest plan, whose answers are all there.
pub fn of(nearest: &SitePlan, brief: &Brief, shelf: &dyn Shelf) -> Vec<Obstacle> {
    let found = Examined::decided(brief, shelf);
    if found.still.is_none() {
        return vec![unknown_ground(brief)];
    }
    let mut all: Vec<Obstacle> = found
        .checks
        .iter()
        .filter(|check| check.question == Question::Build && check.verdict == Verdict::Fails)
        .map(|check| Obstacle {
            what: check.title.clone(),
            field: check.fields.first().copied(),
            now: check.demand,
            would_do: check.capacity,
            unit: check.unit,
            says: check.note.clone(),
        })
        .collect();
    if all.is_empty() {
        all = trials(nearest, brief)
            .into_iter()
            .map(|trial| trial.obstacle(nearest, brief, shelf))
            .collect();
        // What would do comes first.
        all.sort_by_key(|obstacle| obstacle.would_do.is_none());
    }
    all
}

fn unknown_ground(brief: &Brief) -> Obstacle {
    let ground = Cast::of(brief).ground.value;
    Obstacle {
        what: "the soil".to_owned(),
        field: Some(path!(site.shear_wave_speed_m_s)),
        now: None,
        would_do: None,
        unit: Unit::MetrePerSecond,
        says: ground.ask_an_engineer.unwrap_or_else(|| {
            "The stiffness of this ground is not known, so that nothing can be said of the star on it.".to_owned()
        }),
    }
}

/// An answer that is moved from what it is towards what might do.
struct Trial {
    what: &'static str,
    field: NumberField,
    now: f64,
    end: f64,
    set: fn(&mut SitePlan, f64),
}

impl Trial {
    /// Halves the way between what does not do and what does.
    fn obstacle(&self, nearest: &SitePlan, brief: &Brief, shelf: &dyn Shelf) -> Obstacle {
        let does = |value: f64| {
            let mut plan = nearest.clone();
            (self.set)(&mut plan, value);
            Examined::of(&plan, shelf).is_some_and(|found| found.does())
        };
        let would_do = does(self.end).then(|| {
            let (mut short, mut enough) = (self.now, self.end);
            for _ in 0..HALVINGS {
                let middle = 0.5 * (short + enough);
                if does(middle) {
                    enough = middle;
                } else {
                    short = middle;
                }
            }
            enough
        });
        let say = |value: f64| brief.units.say(value, self.field.unit);
        let says = match would_do {
            Some(value) => format!(
                "With everything else as it is, {} of {} instead of {} would do.",
                self.what,
                say(value),
                say(self.now)
            ),
            None => format!(
                "Not even {} of {} instead of {} would do by itself.",
                self.what,
                say(self.end),
                say(self.now)
            ),
        };
        Obstacle {
            what: self.what.to_owned(),
            field: Some(self.field.path),
            now: Some(self.now),
            would_do,
            unit: self.field.unit,
            says,
        }
    }
}

fn trials(nearest: &SitePlan, brief: &Brief) -> Vec<Trial> {
    let ground = Cast::of(brief).ground.value;
    let load = &brief.load;
    let deep = nearest.block.depth_m.unwrap_or(0.0);
    let long = nearest
        .block
        .length_m
        .unwrap_or(0.0)
        .max(nearest.block.width_m.unwrap_or(0.0));
    let wind = metre_per_second::get(load.observing_wind.value);
    let area = load.wind_area.value.value;
    let height = metre::get(brief.pier.height.value);
    let mut trials = vec![
        Trial {
            what: "a pit with a depth",
            field: row!(excavation.max_depth_m).row,
            now: deep,
            end: DEEPEST_M.max(deep),
            set: |plan, depth| {
                plan.block.depth_m = Some(depth);
                let most = plan.excavation.max_depth_m.unwrap_or(depth);
                plan.excavation.max_depth_m = Some(most.max(depth));
            },
        },
        Trial {
            what: "a block with sides",
            field: row!(excavation.max_length_m).row,
            now: long,
            end: LONGEST_M.max(long),
            set: |plan, side| {
                let room = 2.0 * side + 8.0;
                plan.block.length_m = Some(side);
                plan.block.width_m = Some(side);
                plan.excavation.max_length_m = Some(room.min(20.0));
                plan.excavation.max_width_m = Some(room.min(20.0));
            },
        },
        Trial {
            what: "an observing wind",
            field: row!(load.observing_wind_m_s).row,
            now: wind,
            end: LEAST_RATIO * wind,
            set: |plan, speed| plan.load.observing_wind_m_s = Some(speed),
        },
        Trial {
            what: "a telescope with an area to the wind",
            field: row!(load.wind_area_m2).row,
            now: area,
            end: LEAST_RATIO * area,
            set: |plan, area| plan.load.wind_area_m2 = Some(area),
        },
        Trial {
            what: "a pier with a height",
            field: row!(pier.height_m).row,
            now: height,
            end: (LEAST_RATIO * height).max(0.3).min(height),
            set: |plan, height| plan.pier.height_m = Some(height),
        },
    ];
    if let Some(speed) = ground.shear_wave_speed {
        let now = metre_per_second::get(speed.typical);
        trials.push(Trial {
            what: "soil with a shear-wave speed",
            field: row!(site.shear_wave_speed_m_s).row,
            now,
            end: FASTEST_M_S.max(now),
            set: |plan, speed| plan.site.shear_wave_speed_m_s = Some(speed),
        });
    }
    trials
}
