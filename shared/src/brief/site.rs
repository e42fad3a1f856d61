//! Site and soil, decided.

use crate::brief::{Ask, Given, Taken};
use crate::figure::Unit;
use crate::site_plan::site::{Exposure, Soil};
use crate::site_plan::{self, SitePlan};
use crate::source::Source;
use crate::units::{Length, Velocity, metre, metre_per_second};

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

/// Decides the site's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Site {
    let stated = plan.site.clone();
    let soil = ask.choice(
        "site.soil",
        stated.soil,
        Soil::FirmClay,
        Soil::key,
        Taken::new(
            "a middling soil; feel it with your hands at the depth of the block",
            "stiffness of the ground and with it every tilt; bearing pressure; slope of the pit's sides",
            Source::judgement("middling soil"),
        ),
    );
    let exposure = ask.choice(
        "site.exposure",
        stated.exposure,
        Exposure::Country,
        Exposure::key,
        Taken::new(
            "most sites lie between open fields and gardens",
            "wind on the telescope and the column",
            Source::judgement("middling exposure"),
        ),
    );
    let design_gust = ask.number(
        "site.design_gust_m_s",
        Unit::MetrePerSecond,
        stated.design_gust_m_s,
        metre_per_second::new,
        40.0,
        Taken::new("a strong winter storm inland", "overturning and the force on the studs", Source::judgement("inland storm")),
    );
    let groundwater_depth = Given {
        value: stated.groundwater_depth_m.map(metre::new),
        origin: if stated.groundwater_depth_m.is_some() { crate::brief::Origin::Said } else { crate::brief::Origin::Assumed },
    };
    Site { soil, exposure, design_gust, groundwater_depth, stated }
}
