//! What pushes a pier over: a person, a ladder, a gust. The cases are looked at one by one, never together.

use crate::brief::Brief;
use crate::rules::en_1991_1_1_2002::person;
use crate::rules::en_1991_1_4_2005::gust;
use crate::rules::en_1997_1_2004::uplift;
use crate::site_plan::pier::Fill;
use crate::units::{Area, Force, Length, Mass, Moment, gravity, kilogram, kilonewton_metre, metre};

use super::outline::Outline;

/// Force factor of a telescope on its mount, a rough body.
const TELESCOPE_FORCE_FACTOR: f64 = 1.3;
/// Force factor of a round column below its critical speed.
const COLUMN_FORCE_FACTOR: f64 = 1.2;
/// Steel, kg/m³.
const STEEL_KG_M3: f64 = 7850.0;

/// One case.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Case {
    /// In a sentence: "a person who leans on the telescope".
    pub(super) name: &'static str,
    /// Push along the ground.
    pub(super) push: Force,
    /// Its moment about the centre of the base, with whatever hangs beside the axis.
    pub(super) moment: Moment,
}

/// Weights and cases.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Actions {
    /// Block, column and load.
    pub(super) weight: Force,
    /// Lift of the groundwater on the block.
    pub(super) lift: Force,
    /// The cases.
    pub(super) cases: Vec<Case>,
}

impl Actions {
    /// The case with the largest moment.
    pub(super) fn worst(&self) -> Case {
        let calm = Case {
            name: "calm",
            push: kilogram::new(0.0) * gravity(),
            moment: kilonewton_metre::new(0.0),
        };
        self.cases.iter().fold(calm, |worst, case| {
            if case.moment > worst.moment {
                case.clone()
            } else {
                worst
            }
        })
    }

    /// The largest push along the ground.
    pub(super) fn push(&self) -> Force {
        self.cases
            .iter()
            .map(|case| case.push)
            .fold(
                kilogram::new(0.0) * gravity(),
                |a, b| if b > a { b } else { a },
            )
    }
}

/// Height of the column's top above the block's base.
pub(super) fn top_above_base(brief: &Brief, outline: &Outline) -> Length {
    outline.height() + brief.pier.gap.value + brief.pier.height.value
}

/// The weights and the cases for an outline.
pub(super) fn list(brief: &Brief, outline: &Outline) -> Actions {
    let weight = outline.weight() + (column_mass(brief) + brief.load.mass.value) * gravity();
    let water = brief.site.groundwater_depth.value.unwrap_or(outline.depth);
    let lift = uplift::lift(outline.plan(), outline.depth, water);
    Actions {
        weight,
        lift,
        cases: vec![
            leaning(brief, outline),
            ladder(brief, outline),
            wind(brief, outline),
        ],
    }
}

fn leaning(brief: &Brief, outline: &Outline) -> Case {
    let push = person::leaning();
    let height = top_above_base(brief, outline) + brief.load.centre_above_pier.value;
    Case {
        name: "a person who leans on the telescope",
        push,
        moment: push * height,
    }
}

/// A ladder hung from the column, which pushes and hangs.
pub(super) fn ladder(brief: &Brief, outline: &Outline) -> Case {
    let climber = person::climber();
    let push = person::ladder_push(climber);
    let hanging = person::hanging_moment(
        climber,
        person::ladder_arm(brief.pier.outside_diameter.value),
    );
    let moment = push * top_above_base(brief, outline) + hanging;
    Case {
        name: "a ladder with a person on it, hung from the column",
        push,
        moment,
    }
}

/// The storm's gust on telescope and column.
pub(super) fn wind(brief: &Brief, outline: &Outline) -> Case {
    let (pier, load, speed) = (&brief.pier, &brief.load, brief.site.design_gust.value);
    let column: Area = pier.height.value * pier.outside_diameter.value;
    let on_column = gust::force(speed, column, COLUMN_FORCE_FACTOR);
    let on_load = gust::force(speed, load.wind_area.value, TELESCOPE_FORCE_FACTOR);
    let top = top_above_base(brief, outline);
    let moment = on_load * (top + load.centre_above_pier.value)
        + on_column * (top - pier.height.value / 2.0);
    Case {
        name: "the storm's gust",
        push: on_column + on_load,
        moment,
    }
}

/// Column, fill and plates, from their stated or assumed sizes: the pier stage comes later and knows it better.
fn column_mass(brief: &Brief) -> Mass {
    let pier = &brief.pier;
    let (outside, wall, height) = (
        metre::get(pier.outside_diameter.value),
        metre::get(pier.wall.value),
        metre::get(pier.height.value),
    );
    let inside = (outside - 2.0 * wall).max(0.0);
    let ring = std::f64::consts::FRAC_PI_4 * (outside * outside - inside * inside);
    let fill = std::f64::consts::FRAC_PI_4 * inside * inside * filling(pier.fill.value);
    let plate = metre::get(pier.plate_side.value).powi(2) * metre::get(pier.plate_thickness.value);
    kilogram::new((ring * STEEL_KG_M3 + fill) * height + plate * STEEL_KG_M3)
}

fn filling(fill: Fill) -> f64 {
    match fill {
        Fill::None => 0.0,
        Fill::Sand => 1600.0,
        Fill::Concrete => 2400.0,
    }
}
