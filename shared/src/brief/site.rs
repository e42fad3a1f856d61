//! Site and soil, decided.

use crate::brief::{Ask, Given, Origin, Taken, taken, usual};
use crate::path;
use crate::site_plan::site::{Exposure, RockKind, Soil, WaterDemand};
use crate::site_plan::{self, Site as Said, SitePlan};
use crate::source::Source;
use crate::stock::Stock;
use crate::units::{Length, Velocity, metre};

/// Complete answers about the site. What the ground stage derives from the soil stays as the person stated it.
#[derive(Debug, Clone, PartialEq)]
pub struct Site {
    /// The ground at the depth of the block.
    pub soil: Given<Soil>,
    /// How open the site is.
    pub exposure: Given<Exposure>,
    /// Gust for strength.
    pub design_gust: Given<Velocity>,
    /// Highest groundwater below ground level; none when it is deep.
    pub groundwater_depth: Given<Option<Length>>,
    /// The person's own figures, out of which the ground stage takes what is there.
    pub stated: site_plan::Site,
}

impl Site {
    /// The word of the rock below softer ground, by its kind; sound where no kind is named, since a bar that rings has met
    /// sound rock.
    pub fn rock_below(&self) -> Soil {
        if self.stated.rock_kind.is_some_and(RockKind::is_soft) {
            Soil::WeatheredRock
        } else {
            Soil::Rock
        }
    }
}

/// Decides the site's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Site {
    let stated = plan.site.clone();
    let soil = usual!(ask, Said::soil);
    let exposure = usual!(ask, Said::exposure);
    let (assumed_gust, storm) = if exposure.value == Exposure::Open {
        (50.0, "a strong winter storm on a coast or a hill")
    } else {
        (40.0, "a strong winter storm inland")
    };
    let design_gust = ask.number(
        Said::design_gust_m_s,
        assumed_gust,
        Taken::new(
            storm,
            "overturning, the column and the force on the studs",
            Source::judgement("a gust inland, and one a quarter faster on a coast or a hill"),
        ),
    );
    let groundwater_depth = Given {
        value: stated.groundwater_depth_m.map(metre::new),
        origin: if stated.groundwater_depth_m.is_some() {
            Origin::Said
        } else {
            Origin::Assumed
        },
    };
    surroundings(ask);
    neighbours(&stated, ask);
    Site {
        soil,
        exposure,
        design_gust,
        groundwater_depth,
        stated,
    }
}

/// Height assumed for a bank that nobody measured, m.
pub const ASSUMED_BANK_M: f64 = 1.5;
/// Depth taken for a footing that nobody dug to, m.
pub fn assumed_footing_m(stock: Stock) -> f64 {
    // 11 3/4 in: no deeper than 300 mm.
    stock.either(0.3, 0.298_45)
}
/// Height taken for a tree of which only the distance is known.
pub const ASSUMED_TREE_HEIGHT_M: f64 = 15.0;

/// What is assumed of a tree, a building and a bank of which only the distance is known.
fn neighbours(stated: &site_plan::Site, ask: &mut Ask) {
    if stated.tree_distance_m.is_some() && stated.tree_water_demand.is_none() {
        ask.note_text(
            path!(site.tree_water_demand),
            WaterDemand::High.key().to_owned(),
            taken!(Said::tree_water_demand),
        );
    }
    if stated.bank_distance_m.is_some() && stated.bank_height_m.is_none() {
        ask.note_number(
            Said::bank_height_m.row,
            ASSUMED_BANK_M,
            taken!(Said::bank_height_m),
        );
    }
    if stated.building_distance_m.is_some() && stated.building_footing_depth_m.is_none() {
        ask.note_number(
            Said::building_footing_depth_m.row,
            assumed_footing_m(ask.stock),
            taken!(Said::building_footing_depth_m),
        );
    }
    if stated.tree_distance_m.is_some() && stated.tree_height_m.is_none() {
        ask.note_number(
            Said::tree_height_m.row,
            ASSUMED_TREE_HEIGHT_M,
            taken!(Said::tree_height_m),
        );
    }
}

/// Writes down what was taken of the surroundings where nothing was said: nothing that would change the plan.
fn surroundings(ask: &mut Ask) {
    for (row, value, taken) in [
        (
            Said::groundwater_depth_m.row,
            "deeper than the block",
            taken!(Said::groundwater_depth_m),
        ),
        (Said::slope_deg.row, "level", taken!(Said::slope_deg)),
        (
            Said::tree_distance_m.row,
            "farther than the tree is high",
            taken!(Said::tree_distance_m),
        ),
        (
            Said::drain_distance_m.row,
            "clear of the pit",
            taken!(Said::drain_distance_m),
        ),
        (
            Said::building_distance_m.row,
            "farther than the pit is deep",
            taken!(Said::building_distance_m),
        ),
        (
            Said::topsoil_depth_m.row,
            "shallower than the block",
            taken!(Said::topsoil_depth_m),
        ),
        (
            Said::rock_depth_m.row,
            "deeper than the block",
            taken!(Said::rock_depth_m),
        ),
    ] {
        if (row.get)(ask.plan).is_none() {
            ask.note_text(row.path, value.to_owned(), taken);
        }
    }
}
