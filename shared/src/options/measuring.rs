//! What is worth measuring: of the answers that are assumed, those that move the star or the verdict most.
//!
//! The pier stays as it is planned; one answer after another goes from one end of what it may be to the other.

use crate::row;
use serde::Serialize;

use crate::brief::Brief;
use crate::candidates::examine::Examined;
use crate::candidates::lattice::{Column, Size, tried};
use crate::cast::Cast;
use crate::field::{NumberField, Path};
use crate::halfspace::Shelf;
use crate::site_plan::SitePlan;
use crate::units::{Spread, kilogram, metre, metre_per_second};
use crate::verdict::{Says, Within};

/// Most that are named.
const MOST: usize = 4;
/// Logarithm of the growth's change below which nothing is worth a walk to the site: a tenth.
const LEAST_LN: f64 = 0.1;

/// The two answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Verdicts {
    /// May it be built.
    pub build: Says,
    /// Is it still; null where it is not known.
    pub still: Option<Within>,
}

/// One answer that is worth finding out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Worth {
    /// The answer.
    pub field: Path,
    /// How to find it out on site with what is at hand.
    pub how: &'static str,
    /// From and to which value it was moved.
    pub value_from: f64,
    /// The other end.
    pub value_to: f64,
    /// Growth of the star at worst at the one end; null where it is not known.
    pub star_growth_ratio_from: Option<f64>,
    /// The same at the other.
    pub star_growth_ratio_to: Option<f64>,
    /// The verdict at the one end.
    pub verdict_from: Verdicts,
    /// The same at the other.
    pub verdict_to: Verdicts,
}

impl Worth {
    fn changes_verdict(&self) -> bool {
        self.verdict_from != self.verdict_to
    }

    fn apart_ln(&self) -> f64 {
        let both = self.star_growth_ratio_from.zip(self.star_growth_ratio_to);
        both.map_or(0.0, |(from, to)| (to / from).ln().abs())
    }
}

/// An answer and the range that it may have.
struct Range {
    field: NumberField,
    how: &'static str,
    ends: [f64; 2],
}

/// The answers of a plan that are worth finding out, those first that change a verdict, then by how much they move the star.
pub fn worth(plan: &SitePlan, brief: &Brief, shelf: &dyn Shelf) -> Vec<Worth> {
    let Some(planned) = as_planned(plan, brief) else {
        return Vec::new();
    };
    let mut all: Vec<Worth> = ranges(plan, brief)
        .into_iter()
        .filter_map(|range| moved(&planned, &range, shelf))
        .filter(|worth| worth.changes_verdict() || worth.apart_ln() > LEAST_LN)
        .collect();
    all.sort_by(|a, b| {
        let first = b.changes_verdict().cmp(&a.changes_verdict());
        first.then(b.apart_ln().total_cmp(&a.apart_ln()))
    });
    all.truncate(MOST);
    all
}

/// The plan with the sizes that it has, so that only the moved answer changes.
fn as_planned(plan: &SitePlan, brief: &Brief) -> Option<SitePlan> {
    let block = Cast::of(brief).block.value;
    let size = Size {
        metres: [block.length, block.width, block.depth].map(metre::get),
    };
    tried(plan, Some(&size), &Column::of(brief)).map(|(plan, _)| plan)
}

fn moved(planned: &SitePlan, range: &Range, shelf: &dyn Shelf) -> Option<Worth> {
    let number = range.field;
    let [from, to] = range.ends.map(|end| {
        let end = end.max(number.least).min(number.most);
        let mut plan = planned.clone();
        (number.set)(&mut plan, Some(end));
        (end, Examined::of(&plan, shelf))
    });
    let (from_found, to_found) = (from.1?, to.1?);
    let verdicts = |found: &Examined| Verdicts {
        build: found.build.says,
        still: found.still.map(|(_, within)| within),
    };
    Some(Worth {
        field: range.field.path,
        how: range.how,
        value_from: from.0,
        value_to: to.0,
        star_growth_ratio_from: from_found.growth(),
        star_growth_ratio_to: to_found.growth(),
        verdict_from: verdicts(&from_found),
        verdict_to: verdicts(&to_found),
    })
}

/// Half as much and twice as much: an answer that nobody has looked at (judgement).
fn about(value: f64) -> [f64; 2] {
    [0.5 * value, 2.0 * value]
}

/// The answers that were not given, each with the range it may have. Ranges without another source are judgement.
fn ranges(plan: &SitePlan, brief: &Brief) -> Vec<Range> {
    let mut ranges = of_the_ground(plan, brief);
    ranges.extend(of_the_load(plan, brief));
    ranges
}

fn of_the_ground(plan: &SitePlan, brief: &Brief) -> Vec<Range> {
    let ground = Cast::of(brief).ground.value;
    let site = &plan.site;
    let mut ranges = Vec::new();
    if let (None, Some(Spread { low, high, .. })) =
        (site.shear_wave_speed_m_s, ground.shear_wave_speed)
    {
        ranges.push(Range {
            field: row!(site.shear_wave_speed_m_s).row,
            how: "Lay two telephones that record on the ground, 3 m and 8 m from a steel plate, and strike the plate sideways \
                  with a sledge: the speed is 5 m over the time between the two first shakes. Take the mean of ten blows, \
                  from both sides.",
            ends: [low, high].map(metre_per_second::get),
        });
    }
    if site.groundwater_depth_m.is_none() {
        ranges.push(Range {
            field: row!(site.groundwater_depth_m).row,
            how: "Dig or bore a hole as deep as the block, cover it, and look the next morning how high water stands; do it in \
                  the wettest month.",
            ends: [0.5, 3.0],
        });
    }
    if site.topsoil_depth_m.is_none() {
        ranges.push(Range {
            field: row!(site.topsoil_depth_m).row,
            how: "Cut one spit with a spade where the block comes: the dark soil with roots ends where the colour changes. \
                  Measure with a tape.",
            ends: [0.05, 0.4],
        });
    }
    if site.rock_depth_m.is_none() && !ground.is_stable_rock() {
        ranges.push(Range {
            field: row!(site.rock_depth_m).row,
            how: "Drive a steel bar at each corner of the block until it rings and goes no further; ask for buried services first.",
            ends: [1.5, 4.0],
        });
    }
    if site.frost_depth_m.is_none() && site.freezing_index_c_days.is_none() {
        ranges.push(Range {
            field: row!(site.frost_depth_m).row,
            how: "Ask the building office for the depth of frost; everyone who builds a wall there knows it.",
            ends: about(metre::get(ground.frost_depth)),
        });
    }
    let block = &plan.block;
    if block.side_contact_from_m.is_none() && block.side_contact_to_m.is_none() {
        ranges.push(Range {
            field: row!(block.side_contact_from_m).row,
            how: "Dig the pit and look at its sides: how far down from the top do they crumble, or has loose soil to be filled in?",
            ends: [0.0, 0.35],
        });
    }
    ranges
}

fn of_the_load(plan: &SitePlan, brief: &Brief) -> Vec<Range> {
    let (said, load) = (&plan.load, &brief.load);
    let lines = [
        (
            said.mass_kg,
            row!(load.mass_kg).row,
            "Weigh mount, telescope and counterweights part by part on bathroom scales.",
            kilogram::get(load.mass.value),
        ),
        (
            said.centre_above_pier_m,
            row!(load.centre_above_pier_m).row,
            "Balance the telescope on a bar, and measure with a tape from the pier's top to where the mount's axes cross.",
            metre::get(load.centre_above_pier.value),
        ),
        (
            said.wind_area_m2,
            row!(load.wind_area_m2).row,
            "Measure tube, dew shield and mount from the side with a tape, and add up length times width.",
            load.wind_area.value.value,
        ),
        (
            said.observing_wind_m_s,
            row!(load.observing_wind_m_s).row,
            "Hold a pocket anemometer at the telescope's height on three nights on which you would still observe.",
            metre_per_second::get(load.observing_wind.value),
        ),
        (
            said.thermal_difference_k,
            row!(load.thermal_difference_k).row,
            "Tape a thermometer to the east and to the west side of a steel post and read both for an hour after dusk.",
            load.thermal_difference_k.value,
        ),
    ];
    lines
        .into_iter()
        .filter(|(said, ..)| said.is_none())
        .map(|(_, field, how, value)| Range {
            field,
            how,
            ends: about(value),
        })
        .collect()
}
