//! Site and soil.

use super::super::question::{Kind, Question, Topic, choice, number};
use stillground::figure::Units;
use stillground::site_plan::site::{
    Exposure, RockKind, Season, Soil, WaterDemand, WaveSpeedMethod,
};

const METRIC: &str = "metric";
const IMPERIAL: &str = "imperial";

pub(super) const TOPICS: &[Topic] = &[
    Topic {
        heading: "This plan",
        intro: "What shall it be called, and in which units do you read a tape measure? You may type any unit in any box; the figures that come back are in these.",
        common: &[
            Question {
                path: "title",
                label: "What is the plan called?",
                hint: "It stands in the title block of every drawing: the club, the garden, the pier.",
                not_known: "The sheets will say “Untitled pier”.",
                kind: Kind::Text {
                    input: "text",
                    get: |plan| plan.title.as_deref(),
                    set: |plan, text| plan.title = text,
                },
            },
            Question {
                path: "units",
                label: "Which units do you read?",
                hint: "A figure may be typed in any unit, with its unit behind it. A point is always the decimal mark: 1.250 means one and a quarter.",
                not_known: "Metric units are shown.",
                kind: Kind::Choice {
                    answers: &[
                        (METRIC, "Metres, kilograms, newton metres"),
                        (IMPERIAL, "Feet and inches, pounds, pound-force feet"),
                    ],
                    get: |plan| {
                        plan.units.map(|units| match units {
                            Units::Metric => METRIC,
                            Units::Imperial => IMPERIAL,
                        })
                    },
                    set: |plan, key| {
                        plan.units = match key {
                            Some(METRIC) => Some(Units::Metric),
                            Some(IMPERIAL) => Some(Units::Imperial),
                            _ => None,
                        };
                    },
                },
            },
        ],
        rare: &[],
    },
    Topic {
        heading: "What does the soil feel like?",
        intro: "Dig a small hole to about the depth of your knee, take a lump from the bottom, and press it. What you feel there decides more about this pier than anything else.",
        common: &[choice!(
            "site.soil",
            Soil,
            site.soil,
            "What is the ground at the bottom of the hole?",
            "Choose the nearest. Do not go into a hole deeper than your waist to find out.",
            "An average soil is assumed, and the range of stillness is wide.",
            {
                SoftClay: "Soft clay: oozes between the fingers, or a light press moulds it",
                FirmClay: "Firm clay: a strong press of the fingers moulds it",
                StiffClay: "Stiff clay: the thumb dents it but cannot mould it",
                HardClay: "Hard clay or boulder clay: only the thumbnail marks it",
                Silt: "Silt: floury, dries to dust, shines when shaken wet",
                LooseSand: "Loose sand: the spade sinks in, a peg goes in easily",
                MediumSand: "Medium sand: between loose and dense",
                DenseSand: "Dense sand: it takes a pick, a peg is hard to drive",
                Gravel: "Gravel, or sand and gravel",
                WeatheredRock: "Weathered rock: a pick or a breaker loosens it",
                Rock: "Sound rock",
                MadeGround: "Made ground: fill, rubble, a filled pond; nobody knows what",
                Peat: "Peat, or black soil that smells of the bog",
                ShrinkingClay: "Clay that cracks in summer, with trees near it",
            }
        )],
        rare: &[
            number(
                "site.shear_wave_speed_m_s",
                "Speed of shear waves in the ground",
                "From a seismic survey, at about a metre's depth. A measured speed replaces the word for the soil.",
                "It follows from the soil.",
            ),
            choice!(
                "site.shear_wave_speed_method",
                WaveSpeedMethod,
                site.shear_wave_speed_method,
                "How was that speed measured?",
                "It says how far the speed may be trusted.",
                "The speed is taken as good to within a quarter either way.",
                {
                    SurfaceWaves: "Surface waves, with a report",
                    Downhole: "Down a hole at the pier",
                    Crosshole: "Between holes at the pier",
                }
            ),
            choice!(
                "site.shear_wave_speed_season",
                Season,
                site.shear_wave_speed_season,
                "When was it measured?",
                "Clay and silt are stiffer in a dry summer than in a wet winter.",
                "The speed is assumed to hold all the year.",
                {
                    DrySummer: "In a dry summer",
                    Other: "At another time of the year",
                }
            ),
            number(
                "site.blow_count",
                "Blow count of a standard penetration test",
                "Blows for 300 mm (12 in), corrected to 60 % energy, from a borehole log.",
                "It follows from the soil.",
            ),
            number(
                "site.poisson_ratio",
                "Poisson's ratio of the ground",
                "From a report; near 0.3 in sand and near 0.5 in wet clay.",
                "It follows from the soil.",
            ),
            number(
                "site.unit_weight_kn_m3",
                "Unit weight of the ground",
                "From a report.",
                "It follows from the soil.",
            ),
            number(
                "site.undrained_strength_kpa",
                "Undrained strength of the clay or silt",
                "From a report, or measured with a hand vane at the depth of the block's base.",
                "The least that the word for the soil allows.",
            ),
            number(
                "site.friction_angle_deg",
                "Angle of friction of the sand, gravel or silt",
                "From a report.",
                "The least that the word for the soil allows.",
            ),
            number(
                "site.presumed_bearing_kpa",
                "Bearing pressure that may be presumed",
                "From a ground report, or from your local building control office.",
                "A cautious value for the soil is assumed, or none where only a ground engineer can say.",
            ),
            number(
                "site.topsoil_depth_m",
                "Depth of the soft topsoil",
                "Down to where the colour changes and the roots end.",
                "A usual depth of topsoil is assumed.",
            ),
            number(
                "site.rock_depth_m",
                "Depth of rock",
                "Where the bar rings.",
                "No rock is expected within the depth that matters.",
            ),
            choice!(
                "site.rock_kind",
                RockKind,
                site.rock_kind,
                "What kind of rock is it?",
                "A geological map of the district names it.",
                "Assumed: sound rock, with the least grip on a dowel that any rock gives.",
                {
                    Granite: "Granite, basalt or the like",
                    Dolomite: "Dolomite or hard limestone",
                    SoftLimestone: "Soft limestone",
                    Slate: "Slate or hard shale",
                    Sandstone: "Sandstone",
                    WeatheredSandstone: "Weathered sandstone",
                    SoftShale: "Soft shale",
                    Chalk: "Chalk",
                }
            ),
        ],
    },
    Topic {
        heading: "Water, frost and weather",
        intro: "Water lifts a block and frost heaves it. Ask a neighbour how high the ditch stands in a wet winter and how deep the pipes are laid.",
        common: &[
            number(
                "site.groundwater_depth_m",
                "How far down is the water in a wet winter?",
                "The highest it stands in the year, below ground level; 0 is water at the surface.",
                "The water is assumed to lie below the block. If the hole fills, come back here.",
            ),
            number(
                "site.frost_depth_m",
                "How deep does the frost go in a hard winter?",
                "Where you live there may be a stated depth for water pipes or footings.",
                "It follows from the freezing index, where that is known, or a cautious depth is assumed.",
            ),
            choice!(
                "site.exposure",
                Exposure,
                site.exposure,
                "How open is the site to the wind?",
                "",
                "Something between open fields and gardens is assumed.",
                {
                    Open: "Open country, a coast or a hilltop",
                    Country: "Fields with hedges, scattered houses",
                    Sheltered: "Between houses or trees",
                }
            ),
        ],
        rare: &[
            number(
                "site.freezing_index_c_days",
                "Freezing index of a hard winter",
                "The sum of the degrees below freezing over the days of the winter, from a weather office.",
                "The stated frost depth is used, or a cautious one.",
            ),
            number(
                "site.design_gust_m_s",
                "Gust for strength",
                "The gust a structure there is designed for, at the height of the pier.",
                "40 m/s is assumed inland, 50 m/s on a coast or a hill.",
            ),
            number(
                "site.mean_annual_temperature_c",
                "Mean temperature over the year",
                "It refines the depth of frost.",
                "A temperate year is assumed.",
            ),
            Question {
                path: "site.climate_source",
                label: "Where do these figures of frost, temperature and gust come from?",
                hint: "The weather office, the code, the years. It stands on the site sheet; change it when you change a figure.",
                not_known: "The sheet names no source.",
                kind: Kind::Text {
                    input: "text",
                    get: |plan| plan.site.climate_source.as_deref(),
                    set: |plan, text| plan.site.climate_source = text,
                },
            },
        ],
    },
    Topic {
        heading: "What stands near?",
        intro: "Roots dry out clay, a leaking drain washes soil away, and a pit beside a house can undermine its footing. Ask what is buried before a spade goes in.",
        common: &[
            number(
                "site.tree_distance_m",
                "How far away is the nearest tree or large shrub?",
                "",
                "No tree is assumed to be near. Look again if the ground is clay.",
            ),
            number(
                "site.building_distance_m",
                "How far away is the nearest building?",
                "Measured to its wall.",
                "No building is assumed to be near.",
            ),
            number(
                "site.drain_distance_m",
                "How far away is the nearest drain, cable or pipe?",
                "Have the place traced before you dig; plans of buried services are often wrong.",
                "Assumed: none nearby. Have the ground scanned before you dig.",
            ),
        ],
        rare: &[
            number(
                "site.tree_height_m",
                "Height of that tree when grown",
                "",
                "A full-grown garden tree is assumed.",
            ),
            choice!(
                "site.tree_water_demand",
                WaterDemand,
                site.tree_water_demand,
                "What kind of tree is it?",
                "Thirsty trees dry clay farther out than they are high.",
                "It counts as a thirsty one.",
                {
                    High: "Oak, elm, poplar, willow, eucalyptus, hawthorn or cypress",
                    Moderate: "Ash, beech, cherry, lime, maple, pine, plane, spruce or sycamore",
                    Low: "Birch, hazel, holly or hornbeam",
                }
            ),
            number(
                "site.building_footing_depth_m",
                "How deep does that building’s footing go?",
                "Below ground level, to its underside.",
                "A shallow footing is assumed.",
            ),
            number(
                "site.bank_distance_m",
                "How far away is the edge of a bank or retaining wall below the pier?",
                "",
                "No bank is assumed to be near.",
            ),
            number(
                "site.bank_height_m",
                "How high is that bank or wall?",
                "",
                "About chest height is assumed.",
            ),
            number(
                "site.slope_deg",
                "Slope of the ground",
                "0 is level; 45 falls as far as it runs.",
                "Level ground is assumed.",
            ),
            number(
                "site.latitude_deg",
                "Latitude",
                "North positive; 52.2 or 33.9 S. With the longitude and the start day it gives true north for the plate.",
                "True north by compass, sun and pole star is then not worked out.",
            ),
            number(
                "site.longitude_deg",
                "Longitude",
                "East positive; 0.1 or 2.4 W.",
                "True north by compass, sun and pole star is then not worked out.",
            ),
            number(
                "site.altitude_m",
                "Height above the sea",
                "Thinner air pushes less.",
                "Sea level is assumed, where the air is densest.",
            ),
        ],
    },
];
