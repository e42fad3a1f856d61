//! Site and soil.

use crate::field::{Problem, choice, section};
use crate::rules::yearly_wave::season;
use crate::site_plan::{SitePlan, TITLE_LENGTH, text_problem};
use crate::{path, paths};

choice! {
    /// The ground at the depth of the block, by what hands and a spade can tell.
    pub enum Soil {
        /// Oozes between the fingers, or is moulded by light pressure.
        SoftClay = "soft_clay",
        /// Moulded by strong finger pressure.
        FirmClay = "firm_clay",
        /// Indented by the thumb, not moulded.
        StiffClay = "stiff_clay",
        /// Indented only by the thumbnail; glacial till among it.
        HardClay = "hard_clay",
        /// Silt: feels floury, dries to dust, shakes to a wet sheen.
        Silt = "silt",
        /// A 50 mm peg is driven easily; the spade goes in.
        LooseSand = "loose_sand",
        /// Between loose and dense.
        MediumSand = "medium_sand",
        /// Needs a pick; a 50 mm peg is hard to drive.
        DenseSand = "dense_sand",
        /// Gravel, or sand and gravel.
        Gravel = "gravel",
        /// Rock that a pick or a breaker can loosen.
        WeatheredRock = "weathered_rock",
        /// Sound rock.
        Rock = "rock",
        /// Fill of unknown age and kind.
        MadeGround = "made_ground",
        /// Peat or black organic soil.
        Peat = "peat",
        /// Clay that shrinks and swells, with trees near.
        ShrinkingClay = "shrinking_clay",
    }
}

choice! {
    /// Kind of rock, as far as it decides what is bonded into it and how stiff it is.
    pub enum RockKind {
        /// Granite, basalt and their like.
        Granite = "granite_or_basalt",
        /// Dolomite and hard limestone.
        Dolomite = "dolomite",
        /// Soft limestone.
        SoftLimestone = "soft_limestone",
        /// Slate and hard shale.
        Slate = "slate_or_hard_shale",
        /// Sandstone.
        Sandstone = "sandstone",
        /// Weathered sandstone.
        WeatheredSandstone = "weathered_sandstone",
        /// Soft shale.
        SoftShale = "soft_shale",
        /// Chalk.
        Chalk = "chalk",
    }
}

impl RockKind {
    /// Whether it is as soft as weathered rock.
    #[must_use]
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
        Open = "open",
        /// Fields with hedges, scattered buildings.
        Country = "country",
        /// Between houses or trees.
        Sheltered = "sheltered",
    }
}

choice! {
    /// How a speed of shear waves was measured.
    pub enum WaveSpeedMethod {
        /// Surface waves, worked out by somebody who does so for a living, with a report.
        SurfaceWaves = "surface_waves",
        /// Down a hole at the pier.
        Downhole = "downhole",
        /// Between holes at the pier.
        Crosshole = "crosshole",
    }
}

choice! {
    /// In which season a speed of shear waves was measured.
    pub enum Season {
        /// In a dry summer, when clay and silt are stiffer than in a wet winter.
        DrySummer = "dry_summer",
        /// At another time of the year.
        Other = "other",
    }
}

choice! {
    /// How much water the nearest tree draws.
    pub enum WaterDemand {
        /// Oak, elm, poplar, willow, eucalyptus, hawthorn, cypress.
        High = "high",
        /// Ash, beech, cherry, lime, maple, pine, plane, spruce, sycamore.
        Moderate = "moderate",
        /// Birch, hazel, holly, hornbeam.
        Low = "low",
    }
}

section! {
    /// Site and soil.
    pub struct Site in site {
        numbers {
            /// Speed of shear waves in the ground at about a metre's depth.
            shear_wave_speed_m_s: MetrePerSecond, 30.0..=3500.0, "peat is near 30 and sound granite near 3500";
            /// Standard penetration blow count per 300 mm, corrected to 60 % energy.
            blow_count: One, 1.0..=100.0, "below one the rod sinks by itself, and above a hundred the test has refused";
            /// Poisson's ratio of the ground.
            poisson_ratio: One, 0.0..=0.49, "no soil is below zero, and at one half the ground cannot change its volume and the solution has no limit";
            /// Unit weight of the ground.
            unit_weight_kn_m3: KilonewtonPerCubicMetre, 9.0..=30.0, "peat is near 10 and heavy rock near 28";
            /// Presumed bearing pressure, from a report or a building office.
            presumed_bearing_kpa: Kilopascal, 10.0..=10000.0, "very soft mud carries about 10 and sound rock up to some thousands";
            /// Undrained shear strength of clay or silt at the block's base, measured.
            undrained_strength_kpa: Kilopascal, 5.0..=500.0, "below 5 it is mud, and above 500 it is rock";
            /// Angle of friction of silt, sand or gravel at the block's base, measured.
            friction_angle_deg: Degree, 20.0..=45.0, "no grains lie flatter than 20 or steeper than 45";
            /// Depth of the groundwater below ground level, at its highest in the year.
            groundwater_depth_m: Metre, 0.0..=100.0, "nought is water standing at the surface";
            /// Depth to which frost goes in a hard winter.
            frost_depth_m: Metre, 0.0..=4.0, "beyond four metres the ground is frozen all year";
            /// Freezing index of the air in a hard winter: the sum of degrees below zero over days.
            freezing_index_c_days: CelsiusDay, 0.0..=7000.0, "nought where it never freezes, some thousands in the far north";
            /// Gust speed for strength, three-second or peak, at the pier's height.
            design_gust_m_s: MetrePerSecond, 10.0..=100.0, "gusts below 10 are no storm, above 100 no building stands";
            /// Slope of the ground.
            slope_deg: Degree, 0.0..=60.0, "steeper than 60 degrees is a cliff";
            /// Distance from the pier's axis to the nearest tree or large shrub.
            tree_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect";
            /// Height of that tree when grown.
            tree_height_m: Metre, 0.0..=120.0, "no tree is higher";
            /// Distance from the pier's axis to the nearest drain or buried service.
            drain_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect";
            /// Distance from the pier's axis to the nearest building's footing.
            building_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect";
            /// Depth of that building's footing below ground level.
            building_footing_depth_m: Metre, 0.0..=20.0, "deeper than 20 is a basement of several storeys, which no garden pit reaches";
            /// Distance from the pier's axis to the edge of the nearest bank or retaining wall below it.
            bank_distance_m: Metre, 0.0..=200.0, "farther than 200 it has no effect";
            /// Height of that bank or wall.
            bank_height_m: Metre, 0.1..=50.0, "lower than a hand's breadth is no bank, higher than 50 is a cliff";
            /// Thickness of soft topsoil over the ground described.
            topsoil_depth_m: Metre, 0.0..=2.0, "more than two metres is no topsoil: describe that ground instead";
            /// Depth of rock below ground level.
            rock_depth_m: Metre, 0.0..=100.0, "deeper rock has no effect";
            /// Mean air temperature over the year.
            mean_annual_temperature_c: Celsius, -30.0..=35.0, "from the coldest to the hottest places people live";
            /// Latitude, north positive.
            latitude_deg: Degree, -90.0..=90.0, "from pole to pole";
            /// Longitude, east positive.
            longitude_deg: Degree, -180.0..=180.0, "half a turn each way";
            /// Height above the sea.
            altitude_m: Metre, -450.0..=9000.0, "from the lowest shore to the highest summit";
        }
        counts {}
        others {
            /// The ground at the depth of the block.
            soil: Soil,
            /// How the speed of shear waves was measured.
            shear_wave_speed_method: WaveSpeedMethod,
            /// In which season it was measured.
            shear_wave_speed_season: Season,
            /// How much water that tree draws.
            tree_water_demand: WaterDemand,
            /// How open the site is to the wind.
            exposure: Exposure,
            /// Kind of the rock that `rock_depth_m` or `soil` speaks of.
            rock_kind: RockKind,
            /// Where the figures of frost, temperature and gust come from.
            climate_source: String,
        }
    }
}

/// Rock nearer to the surface than this is the ground itself.
const ROCK_AT_SURFACE_M: f64 = 0.1;
/// No place on Earth has a larger half-range between its seasons, K.
const LARGEST_AMPLITUDE_K: f64 = 45.0;

/// A source that is too long or cannot be printed.
#[must_use]
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    plan.site
        .climate_source
        .iter()
        .filter_map(|source| text_problem(&path!(site.climate_source), source, TITLE_LENGTH))
        .collect()
}

/// Answers about the site that contradict each other.
#[must_use]
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    [
        soil_over_rock(plan),
        rock_too_deep(plan),
        topsoil_over_rock(plan),
        climate(plan),
        two_strengths(plan),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn is_rock(soil: Soil) -> bool {
    matches!(soil, Soil::Rock | Soil::WeatheredRock)
}

fn soil_over_rock(plan: &SitePlan) -> Option<Problem> {
    let (soil, rock) = (plan.site.soil?, plan.site.rock_depth_m?);
    (!is_rock(soil) && rock < ROCK_AT_SURFACE_M).then(|| {
        Problem::between(
            paths![site.soil, site.rock_depth_m],
            "Rock lies at the surface, so the ground at the depth of the block is rock: choose rock as the soil, or give the depth at which \
             the rock begins.",
        )
    })
}

fn rock_too_deep(plan: &SitePlan) -> Option<Problem> {
    let (soil, rock) = (plan.site.soil?, plan.site.rock_depth_m?);
    let (field, deepest) = match (plan.block.depth_m, plan.excavation.max_depth_m) {
        (Some(depth), _) => (path!(block.depth_m), depth),
        (None, Some(depth)) => (path!(excavation.max_depth_m), depth),
        (None, None) => return None,
    };
    (is_rock(soil) && rock > deepest).then(|| {
        Problem::between(
            &[path!(site.soil), path!(site.rock_depth_m), field],
            "The rock begins below the base of the block, so the soil at the block's depth is not rock: choose the soil above it.",
        )
    })
}

fn topsoil_over_rock(plan: &SitePlan) -> Option<Problem> {
    let (topsoil, rock) = (plan.site.topsoil_depth_m?, plan.site.rock_depth_m?);
    (topsoil > rock).then(|| {
        Problem::between(
            paths![site.topsoil_depth_m, site.rock_depth_m],
            "The topsoil would reach below the surface of the rock; one of the two depths is mistaken.",
        )
    })
}

/// A freezing index that no year with that mean can have.
fn climate(plan: &SitePlan) -> Option<Problem> {
    let (index, mean) = (
        plan.site.freezing_index_c_days?,
        plan.site.mean_annual_temperature_c?,
    );
    let too_mild = index < -365.0 * mean;
    let too_harsh = season(mean, index).amplitude_k > LARGEST_AMPLITUDE_K;
    (too_mild || too_harsh).then(|| {
        Problem::between(
            paths![site.freezing_index_c_days, site.mean_annual_temperature_c],
            if too_mild {
                "A year with this mean temperature has more frost than this freezing index."
            } else {
                "No place with this mean temperature over the year has so hard a winter."
            },
        )
    })
}

/// Silt that is loaded fast has the one strength and slowly the other; the plan judges it by one.
fn two_strengths(plan: &SitePlan) -> Option<Problem> {
    plan.site
        .undrained_strength_kpa
        .zip(plan.site.friction_angle_deg)
        .map(|_| {
            Problem::between(
                paths![site.undrained_strength_kpa, site.friction_angle_deg],
                "Both say how strong the ground is: keep the undrained strength in clay, the angle of friction in sand and gravel, and in \
                 silt the one that the report judges by.",
            )
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(change: impl FnOnce(&mut SitePlan)) -> Vec<Vec<String>> {
        let mut plan = SitePlan::unknown();
        change(&mut plan);
        contradictions(&plan)
            .into_iter()
            .map(|problem| problem.fields)
            .collect()
    }

    #[test]
    fn contradictions_name_every_field_in_them() {
        let found = fields(|plan| {
            plan.site.soil = Some(Soil::Silt);
            plan.site.rock_depth_m = Some(0.0);
            plan.site.topsoil_depth_m = Some(0.3);
            plan.site.freezing_index_c_days = Some(3000.0);
            plan.site.mean_annual_temperature_c = Some(25.0);
            plan.site.undrained_strength_kpa = Some(40.0);
            plan.site.friction_angle_deg = Some(30.0);
        });
        assert_eq!(
            found,
            [
                vec!["site.soil", "site.rock_depth_m"],
                vec!["site.topsoil_depth_m", "site.rock_depth_m"],
                vec![
                    "site.freezing_index_c_days",
                    "site.mean_annual_temperature_c"
                ],
                vec!["site.undrained_strength_kpa", "site.friction_angle_deg"],
            ]
        );
        let found = fields(|plan| {
            plan.site.soil = Some(Soil::Rock);
            plan.site.rock_depth_m = Some(1.5);
            plan.block.depth_m = Some(1.0);
        });
        assert_eq!(
            found,
            [vec!["site.soil", "site.rock_depth_m", "block.depth_m"]]
        );
    }

    #[test]
    fn sensible_answers_do_not_contradict() {
        assert!(
            fields(|plan| {
                plan.site.soil = Some(Soil::WeatheredRock);
                plan.site.rock_depth_m = Some(0.3);
                plan.block.depth_m = Some(0.5);
                plan.site.freezing_index_c_days = Some(150.0);
                plan.site.mean_annual_temperature_c = Some(9.5);
            })
            .is_empty()
        );
    }
}
