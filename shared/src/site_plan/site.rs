//! Site and soil.

mod contradictions;

use crate::field::{Problem, choice, section};
use crate::rules::tree_reach;
use crate::site_plan::{SitePlan, TITLE_LENGTH, text_problem};
use crate::source::Source;

use crate::path;
pub use contradictions::contradictions;

choice! {
    /// The ground at the depth of the block, by what hands and a spade can tell.
    pub enum Soil {
        /// Oozes between the fingers, or is moulded by light pressure.
        SoftClay = "soft_clay", "Soft clay: oozes between the fingers, or a light press moulds it";
        /// Moulded by strong finger pressure.
        FirmClay = "firm_clay", "Firm clay: a strong press of the fingers moulds it";
        /// Indented by the thumb, not moulded.
        StiffClay = "stiff_clay", "Stiff clay: the thumb dents it but cannot mould it";
        /// Indented only by the thumbnail; glacial till among it.
        HardClay = "hard_clay", "Hard clay or boulder clay: only the thumbnail marks it";
        /// Silt: feels floury, dries to dust, shakes to a wet sheen.
        Silt = "silt", "Silt: floury, dries to dust, shines when shaken wet";
        /// A 50 mm peg is driven easily; the spade goes in.
        LooseSand = "loose_sand", "Loose sand: the spade sinks in, a peg goes in easily";
        /// Between loose and dense.
        MediumSand = "medium_sand", "Medium sand: between loose and dense";
        /// Needs a pick; a 50 mm peg is hard to drive.
        DenseSand = "dense_sand", "Dense sand: it takes a pick, a peg is hard to drive";
        /// Gravel, or sand and gravel.
        Gravel = "gravel", "Gravel, or sand and gravel";
        /// Rock that a pick or a breaker can loosen.
        WeatheredRock = "weathered_rock", "Weathered rock: a pick or a breaker loosens it";
        /// Sound rock.
        Rock = "rock", "Sound rock";
        /// Fill of unknown age and kind.
        MadeGround = "made_ground", "Made ground: fill, rubble, a filled pond; nobody knows what";
        /// Peat or black organic soil.
        Peat = "peat", "Peat, or black soil that smells of the bog";
        /// Clay that shrinks and swells, with trees near.
        ShrinkingClay = "shrinking_clay", "Clay that cracks in summer, with trees near it";
    }
}

choice! {
    /// Kind of rock, as far as it decides what is bonded into it and how stiff it is.
    pub enum RockKind {
        /// Granite, basalt and their like.
        Granite = "granite_or_basalt", "Granite, basalt or the like";
        /// Dolomite and hard limestone.
        Dolomite = "dolomite", "Dolomite or hard limestone";
        /// Soft limestone.
        SoftLimestone = "soft_limestone", "Soft limestone";
        /// Slate and hard shale.
        Slate = "slate_or_hard_shale", "Slate or hard shale";
        /// Sandstone.
        Sandstone = "sandstone", "Sandstone";
        /// Weathered sandstone.
        WeatheredSandstone = "weathered_sandstone", "Weathered sandstone";
        /// Soft shale.
        SoftShale = "soft_shale", "Soft shale";
        /// Chalk.
        Chalk = "chalk", "Chalk";
    }
}

impl RockKind {
    /// Whether it is as soft as weathered rock.
    pub const fn is_soft(self) -> bool {
        matches!(
            self,
            Self::WeatheredSandstone | Self::SoftShale | Self::Chalk
        )
    }
}

choice! {
    /// How open the site lies to the wind.
    pub enum Exposure {
        /// Open country, coast, hilltop.
        Open = "open", "Open country, a coast or a hilltop";
        /// Fields with hedges, scattered buildings.
        Country = "country", "Fields with hedges, scattered houses";
        /// Between houses or trees.
        Sheltered = "sheltered", "Between houses or trees";
    }
}

choice! {
    /// How a speed of shear waves was measured.
    pub enum WaveSpeedMethod {
        /// Surface waves, worked out by somebody who does so for a living, with a report.
        SurfaceWaves = "surface_waves", "Surface waves, with a report";
        /// Down a hole at the pier.
        Downhole = "downhole", "Down a hole at the pier";
        /// Between holes at the pier.
        Crosshole = "crosshole", "Between holes at the pier";
    }
}

choice! {
    /// In which season a speed of shear waves was measured.
    pub enum Season {
        /// In a dry summer, when clay and silt are stiffer than in a wet winter.
        DrySummer = "dry_summer", "In a dry summer";
        /// At another time of the year.
        Other = "other", "At another time of the year";
    }
}

choice! {
    /// How much water the nearest tree draws.
    pub enum WaterDemand {
        /// Oak, elm, poplar, willow, eucalyptus, hawthorn, cypress.
        High = "high", "Oak, elm, poplar, willow, eucalyptus, hawthorn or cypress";
        /// Ash, beech, cherry, lime, maple, pine, plane, spruce, sycamore.
        Moderate = "moderate", "Ash, beech, cherry, lime, maple, pine, plane, spruce or sycamore";
        /// Birch, hazel, holly, hornbeam.
        Low = "low", "Birch, hazel, holly or hornbeam";
    }
}

/// Nothing near is taken to be there unless it was said.
const NOTHING_NEAR: Source = Source::judgement("nothing near unless stated");

section! {
    /// Site and soil.
    pub struct Site in site {
        numbers {
            /// Speed of shear waves in the ground at about a metre's depth.
            shear_wave_speed_m_s: MetrePerSecond, 30.0..=3500.0, "peat is near 30 and sound granite near 3500",
                asks "Shear-wave speed of the ground",
                hint "From a seismic survey, about a metre (3 ft) down. A measured speed replaces the one usual for the soil.",
                unknown "Worked out from the soil.";
            /// Standard penetration blow count per 300 mm, corrected to 60 % energy.
            blow_count: One, 1.0..=100.0, "below one the rod sinks by itself, and above a hundred the test has refused",
                asks "Blow count of a standard penetration test",
                hint "Blows for 300 mm (12 in), corrected to 60 % energy, from a borehole log.",
                unknown "Worked out from the soil.";
            /// Poisson's ratio of the ground.
            poisson_ratio: One, 0.0..=0.49, "no soil is below zero, and at one half the ground cannot change its volume and the solution has no limit",
                asks "Poisson's ratio of the ground",
                hint "From a report; about 0.3 for sand and 0.5 for wet clay.",
                unknown "Worked out from the soil.";
            /// Unit weight of the ground.
            unit_weight_kn_m3: KilonewtonPerCubicMetre, 9.0..=30.0, "peat is near 10 and heavy rock near 28",
                asks "Unit weight of the ground",
                hint "From a report.",
                unknown "Worked out from the soil.";
            /// Presumed bearing pressure, from a report or a building office.
            presumed_bearing_kpa: Kilopascal, 10.0..=10000.0, "very soft mud carries about 10 and sound rock up to some thousands",
                asks "Allowable bearing pressure",
                hint "From a ground report, or from your local building control office.",
                unknown "A cautious value for the soil is assumed, or none where only a ground engineer can say.";
            /// Undrained shear strength of clay or silt at the block's base, measured.
            undrained_strength_kpa: Kilopascal, 5.0..=500.0, "below 5 it is mud, and above 500 it is rock",
                asks "Undrained strength of the clay or silt",
                hint "From a report, or measured with a hand vane at the depth of the block's base.",
                unknown "The least that is usual for the soil you chose.";
            /// Angle of friction of silt, sand or gravel at the block's base, measured.
            friction_angle_deg: Degree, 20.0..=45.0, "no grains lie flatter than 20 or steeper than 45",
                asks "Friction angle of the sand, gravel or silt",
                hint "From a report.",
                unknown "The least that is usual for the soil you chose.";
            /// Depth of the groundwater below ground level, at its highest in the year.
            groundwater_depth_m: Metre, 0.0..=100.0, "zero is water standing at the surface",
                asks "How far down is the water in a wet winter?",
                hint "The highest it stands in the year, below ground level; 0 is water at the surface.",
                because "most gardens are dry to the depth of a spade; a trial pit left open for a day shows",
                changes "water near the base softens sand and silt, lifts the block and makes the pit unsafe", from NOTHING_NEAR;
            /// Depth to which frost goes in a hard winter.
            frost_depth_m: Metre, 0.0..=4.0, "beyond four metres the ground is frozen all year",
                asks "How deep does the frost go in a hard winter?",
                hint "Where you live there may be a stated depth for water pipes or footings.",
                unknown "Worked out from the freezing index where that is known; otherwise a cautious depth is assumed.";
            /// Freezing index of the air in a hard winter: the sum of degrees below zero over days.
            freezing_index_c_days: CelsiusDay, 0.0..=7000.0, "zero where it never freezes, several thousand in the far north",
                asks "Freezing index of a hard winter",
                hint "The sum of the degrees below freezing over the days of the winter, from a weather office.",
                unknown "The stated frost depth is used, or a cautious one.";
            /// Gust speed for strength, three-second or peak, at the pier's height.
            design_gust_m_s: WindMetrePerSecond, 10.0..=100.0, "gusts below 10 are no storm, above 100 no building stands",
                asks "Design gust",
                hint "The gust a structure there is designed for, at the height of the pier.",
                unknown "40 m/s is assumed inland, 50 m/s on a coast or a hill.";
            /// Slope of the ground.
            slope_deg: Degree, 0.0..=60.0, "steeper than 60 degrees is a cliff",
                asks "Slope of the ground",
                hint "0 is level; at 45 it falls a metre in each metre.",
                because "a pier is seldom built on a slope",
                changes "a slope makes one side of the block stand out of the ground", from NOTHING_NEAR;
            /// Distance from the pier's axis to the nearest tree or large shrub.
            tree_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect",
                asks "How far away is the nearest tree or large shrub?",
                because "nothing was said of trees",
                changes "near a tree clay shrinks and swells, and the pier leans with the seasons", from NOTHING_NEAR;
            /// Height of that tree when grown.
            tree_height_m: Metre, 0.0..=120.0, "no tree is higher",
                asks "Height of that tree when grown",
                unknown "A full-grown garden tree is assumed.",
                because "a grown garden tree",
                changes "how far its roots dry the ground", from Source::judgement("garden tree");
            /// Distance from the pier's axis to the nearest drain or buried service.
            drain_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect",
                asks "How far away is the nearest drain, cable or pipe?",
                hint "Have the place traced before you dig; plans of buried services are often wrong.",
                because "nothing was said of drains and services; look for them in any case",
                changes "a pipe or cable in the pit is a danger, and a leaking drain softens the ground", from NOTHING_NEAR;
            /// Distance from the pier's axis to the nearest building's footing.
            building_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect",
                asks "How far away is the nearest building?",
                hint "Measured to its wall.",
                because "nothing was said of buildings",
                changes "a pit near a footing can undermine it", from NOTHING_NEAR;
            /// Depth of that building's footing below ground level.
            building_footing_depth_m: Metre, 0.0..=20.0, "deeper than 20 is a basement of several storeys, which no garden pit reaches",
                asks "How deep does that building’s footing go?",
                hint "Below ground level, to its underside.",
                unknown "A shallow footing is assumed.",
                because "a shallow footing, such as an old wall or a shed has",
                changes "how near to it the pit may be dug", from Source::judgement("footing of unknown depth");
            /// Distance from the pier's axis to the edge of the nearest bank or retaining wall below it.
            bank_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect",
                asks "How far away is the edge of a bank or retaining wall below the pier?",
                unknown "No bank is assumed to be near.";
            /// Height of that bank or wall.
            bank_height_m: Metre, 0.1..=50.0, "lower than a hand's breadth is no bank, higher than 50 is a cliff",
                asks "How high is that bank or wall?",
                unknown "About chest height is assumed.",
                because "a garden terrace about as high as a person's chest",
                changes "how far behind its edge the pier has to stay", from Source::judgement("bank of unknown height");
            /// Thickness of soft topsoil over the ground described.
            topsoil_depth_m: Metre, 0.0..=2.0, "more than two metres is no topsoil: describe that ground instead",
                asks "Depth of the topsoil",
                hint "Down to where the colour changes and the roots end.",
                because "garden topsoil is thinner than most blocks are deep",
                changes "topsoil carries nothing and does not hold the block's sides", from NOTHING_NEAR;
            /// Depth of rock below ground level.
            rock_depth_m: Metre, 0.0..=100.0, "deeper rock has no effect",
                asks "Depth of rock",
                hint "Where a steel bar, driven in, stops and rings.",
                because "nothing was said of rock",
                changes "rock stops the spade and is the best of bases", from NOTHING_NEAR;
            /// Mean air temperature over the year.
            mean_annual_temperature_c: Celsius, -30.0..=35.0, "from the coldest to the hottest places people live",
                asks "Mean temperature over the year",
                hint "It makes the frost depth more exact.",
                unknown "A temperate year is assumed.";
            /// Latitude, north positive.
            latitude_deg: Degree, -90.0..=90.0, "from pole to pole",
                asks "Latitude",
                hint "North positive; 52.2 or 33.9 S. With the longitude and the start day it gives true north for the plate.",
                unknown "True north by compass, sun and pole star is then not worked out.";
            /// Longitude, east positive.
            longitude_deg: Degree, -180.0..=180.0, "half a turn each way",
                asks "Longitude",
                hint "East positive; 0.1 or 2.4 W.",
                unknown "True north by compass, sun and pole star is then not worked out.";
            /// Height above the sea.
            altitude_m: Metre, -450.0..=9000.0, "from the lowest shore to the highest summit",
                asks "Height above the sea",
                hint "Thinner air pushes less.",
                unknown "Sea level is assumed, where the air is densest.";
        }
        counts {}
        others {
            /// The ground at the depth of the block.
            soil: Soil,
                asks "What is the soil at the bottom of a trial pit?",
                hint "Choose the nearest. Do not go into a pit deeper than your waist to find out.",
                takes Soil::FirmClay, because "an average soil; feel it with your hands at the depth of the block",
                changes "stiffness of the ground and with it every tilt; bearing pressure; slope of the pit's sides", from Source::judgement("average soil");
            /// How the speed of shear waves was measured.
            shear_wave_speed_method: WaveSpeedMethod,
                asks "How was that speed measured?",
                hint "It says how far the speed may be trusted.",
                unknown "The speed is assumed to be right to within a quarter either way.";
            /// In which season it was measured.
            shear_wave_speed_season: Season,
                asks "When was it measured?",
                hint "Clay and silt are stiffer in a dry summer than in a wet winter.",
                unknown "The speed is assumed to hold all the year.";
            /// How much water that tree draws.
            tree_water_demand: WaterDemand,
                asks "What kind of tree is it?",
                hint "Thirsty trees dry clay farther out than they are high.",
                unknown "Assumed: a thirsty one.",
                because "a tree whose kind is not known counts as a thirsty one",
                changes "how far its roots dry the ground", from tree_reach::SOURCE;
            /// How open the site is to the wind.
            exposure: Exposure,
                asks "How open is the site to the wind?",
                takes Exposure::Country, because "most sites lie between open fields and gardens",
                changes "wind on the telescope and the column", from Source::judgement("average exposure");
            /// Kind of the rock that `rock_depth_m` or `soil` speaks of.
            rock_kind: RockKind,
                asks "What kind of rock is it?",
                hint "A geological map of the district names it.",
                unknown "Assumed: sound rock, with the least grip on a dowel that any rock gives.";
            /// Where the figures of frost, temperature and gust come from.
            climate_source: String,
                asks "Where do these figures of frost, temperature and gust come from?",
                hint "The weather office, the code, the years. It stands on the site sheet; change it when you change a figure.",
                unknown "The sheet names no source.";
        }
    }
}

/// A source that is too long or cannot be printed.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    plan.site
        .climate_source
        .iter()
        .filter_map(|source| text_problem(&path!(site.climate_source), source, TITLE_LENGTH))
        .collect()
}
