//! Site and soil, decided.

use crate::brief::{Ask, Given, Origin, Taken};
use crate::path;
use crate::rules::tree_reach;
use crate::site_plan::site::{Exposure, RockKind, Soil, WaterDemand};
use crate::site_plan::{self, Site as Said, SitePlan};
use crate::source::Source;
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
    let soil = ask.choice(
        Said::soil,
        Soil::FirmClay,
        Taken::new(
            "an average soil; feel it with your hands at the depth of the block",
            "stiffness of the ground and with it every tilt; bearing pressure; slope of the pit's \
             sides",
            Source::judgement("average soil"),
        ),
    );
    let exposure = ask.choice(
        Said::exposure,
        Exposure::Country,
        Taken::new(
            "most sites lie between open fields and gardens",
            "wind on the telescope and the column",
            Source::judgement("average exposure"),
        ),
    );
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
            Source::judgement("40 m/s inland, 50 m/s on a coast or a hill"),
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
pub const ASSUMED_FOOTING_M: f64 = 0.3;
/// Height taken for a tree of which only the distance is known.
pub const ASSUMED_TREE_HEIGHT_M: f64 = 15.0;

/// What is assumed of a tree, a building and a bank of which only the distance is known.
fn neighbours(stated: &site_plan::Site, ask: &mut Ask) {
    if stated.tree_distance_m.is_some() && stated.tree_water_demand.is_none() {
        ask.note_text(
            path!(site.tree_water_demand),
            WaterDemand::High.key().to_owned(),
            Taken::new(
                "a tree whose kind is not known counts as a thirsty one",
                "how far its roots dry the ground",
                tree_reach::SOURCE,
            ),
        );
    }
    if stated.bank_distance_m.is_some() && stated.bank_height_m.is_none() {
        ask.note_number(
            Said::bank_height_m.row,
            ASSUMED_BANK_M,
            Taken::new(
                "a garden terrace about as high as a person's chest",
                "how far behind its edge the pier has to stay",
                Source::judgement("bank of unknown height"),
            ),
        );
    }
    if stated.building_distance_m.is_some() && stated.building_footing_depth_m.is_none() {
        ask.note_number(
            Said::building_footing_depth_m.row,
            ASSUMED_FOOTING_M,
            Taken::new(
                "a shallow footing, such as an old wall or a shed has",
                "how near to it the pit may be dug",
                Source::judgement("footing of unknown depth"),
            ),
        );
    }
    if stated.tree_distance_m.is_some() && stated.tree_height_m.is_none() {
        let taken = Taken::new(
            "a grown garden tree",
            "how far its roots dry the ground",
            Source::judgement("garden tree"),
        );
        ask.note_number(Said::tree_height_m.row, ASSUMED_TREE_HEIGHT_M, taken);
    }
}

/// Writes down what was taken of the surroundings where nothing was said: nothing that would change the plan.
fn surroundings(ask: &mut Ask) {
    let source = Source::judgement("nothing near unless stated");
    for (row, value, why, effect) in [
        (
            Said::groundwater_depth_m.row,
            "deeper than the block",
            "most gardens are dry to the depth of a spade; a trial hole left open for a day shows",
            "water near the base softens sand and silt, lifts the block and makes the pit unsafe",
        ),
        (
            Said::slope_deg.row,
            "level",
            "a pier is seldom built on a slope",
            "a slope makes one side of the block stand out of the ground",
        ),
        (
            Said::tree_distance_m.row,
            "farther than the tree is high",
            "nothing was said of trees",
            "near a tree clay shrinks and swells, and the pier leans with the seasons",
        ),
        (
            Said::drain_distance_m.row,
            "clear of the pit",
            "nothing was said of drains and services; they must be looked for all the same",
            "a pipe or cable in the pit is a danger, and a leaking drain softens the ground",
        ),
        (
            Said::building_distance_m.row,
            "farther than the pit is deep",
            "nothing was said of buildings",
            "a pit near a footing can undermine it",
        ),
        (
            Said::topsoil_depth_m.row,
            "shallower than the block",
            "garden topsoil is thinner than most blocks are deep",
            "topsoil carries nothing and does not hold the block's sides",
        ),
        (
            Said::rock_depth_m.row,
            "deeper than the block",
            "nothing was said of rock",
            "rock stops the spade and is the best of bases",
        ),
    ] {
        if (row.get)(ask.plan).is_none() {
            ask.note_text(row.path, value.to_owned(), Taken::new(why, effect, source));
        }
    }
}
