//! Ground: from the soil in the hand to stiffness, weight, bearing and frost.
//!
//! A stated speed of shear waves goes before a blow count, and that before the soil in words. Values are low, typical
//! and high: a verdict uses the unfavourable end, an expectation the typical one. Made ground, peat and shrinking clay
//! have no value by presumption; [`Ground::ask_an_engineer`] then says why and whom to ask.

pub mod bearing;
pub mod bearing_table;
pub mod figures;
pub mod frost;
pub mod frost_class;
pub mod slope;
pub mod soil_table;
pub mod stiffness;
pub mod strength;
pub mod tree;
pub mod unfit;
pub mod water;
pub mod weight;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Degree, One};
use crate::notes::{Found, Notes, Working};
use crate::rules::osha_1926_p_1989::slopes::{
    self, SlopeType, angle_deg, run_over_rise_ratio, when_wet,
};
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::ground::bearing_table::Strength;
use crate::stages::ground::frost_class::{FrostClass, frost_class};
use crate::stages::ground::soil_table::Group;
use crate::stages::ground::stiffness::StiffnessFrom;
use crate::stages::ground::weight::Layers;
use crate::units::{
    Length, Pressure, Spread, UnitWeight, Velocity, kilonewton_per_cubic_metre, kilopascal,
    megapascal, metre, metre_per_second,
};

/// Source of a figure that the person stated.
pub const STATED: Source = Source::read("The plan", "", "as stated");

/// What the ground is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ground {
    /// The soil in words, stated or taken.
    pub soil: Soil,
    /// Kind of ground: which formulas hold for it.
    pub group: Group,
    /// Where the stiffness comes from.
    pub stiffness_from: StiffnessFrom,
    /// Small-strain shear modulus; none where the ground is not to be built on.
    #[serde(rename = "shear_modulus_mpa", with = "megapascal::spread::option")]
    pub shear_modulus: Option<Spread<Pressure>>,
    /// Speed of shear waves.
    #[serde(
        rename = "shear_wave_speed_m_s",
        with = "metre_per_second::spread::option"
    )]
    pub shear_wave_speed: Option<Spread<Velocity>>,
    /// Unit weight.
    #[serde(rename = "unit_weight_kn_m3", with = "kilonewton_per_cubic_metre")]
    pub unit_weight: UnitWeight,
    /// Unit weight above and below the water, one and the same where a unit weight was stated.
    #[serde(skip)]
    pub layers: Layers,
    /// Unit weight, low, typical and high.
    #[serde(
        rename = "unit_weight_range_kn_m3",
        with = "kilonewton_per_cubic_metre::spread"
    )]
    pub unit_weight_range: Spread<UnitWeight>,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
    /// Poisson's ratio, low, typical and high.
    pub poisson_ratio_range: Spread<f64>,
    /// Presumed net bearing pressure by which the block is judged, the low end; none where a ground engineer has to say.
    #[serde(rename = "presumed_bearing_kpa", with = "kilopascal::option")]
    pub presumed_bearing: Option<Pressure>,
    /// Presumed bearing pressure, low, typical and high.
    #[serde(
        rename = "presumed_bearing_range_kpa",
        with = "kilopascal::spread::option"
    )]
    pub presumed_bearing_range: Option<Spread<Pressure>>,
    /// Where those three stand.
    #[serde(rename = "presumed_bearing_sources")]
    pub bearing_sources: Option<Spread<Source>>,
    /// Measured strength, or that of the soil word from its lowest to its highest; none for rock and where a ground engineer has to say.
    pub strength: Option<Strength>,
    /// Whether it was measured.
    pub strength_is_measured: bool,
    /// Why no figure of bearing or stillness is sure here, though it is shown; none where nothing speaks against them.
    pub unsure: Option<String>,
    /// Depth to which frost goes in a hard winter.
    #[serde(rename = "frost_depth_m", with = "metre")]
    pub frost_depth: Length,
    /// How readily this ground heaves when it freezes.
    pub frost_class: FrostClass,
    /// Least depth of the block's base on account of frost: the depth of frost, or nought on sound rock, which does not heave.
    #[serde(rename = "frost_base_depth_m", with = "metre")]
    pub frost_base_depth: Length,
    /// Highest groundwater below ground level; none when deep or not known.
    #[serde(rename = "groundwater_depth_m", with = "metre::option")]
    pub groundwater_depth: Option<Length>,
    /// Thickness of the topsoil; none when not known.
    #[serde(rename = "topsoil_depth_m", with = "metre::option")]
    pub topsoil_depth: Option<Length>,
    /// Depth of rock below ground level; none when deep or not known.
    #[serde(rename = "rock_depth_m", with = "metre::option")]
    pub rock_depth: Option<Length>,
    /// Whether the rock at that depth is sound: it is, unless the plan names a soft kind, or the ground is weathered rock itself.
    #[serde(skip)]
    pub rock_below_is_sound: bool,
    /// Type of soil for the slope of the pit's sides above the water.
    pub slope_type: SlopeType,
    /// Slope of the pit's sides that stands, degrees from level; 90 for rock.
    pub safe_slope_deg: f64,
    /// Volume dug over volume in the ground.
    pub bulking_ratio: f64,
    /// Whom to ask and why, where the ground is not to be built on by presumption.
    pub ask_an_engineer: Option<String>,
}

impl Ground {
    /// Undrained strength at its low end; none where the ground has another strength or none.
    pub fn undrained_strength(&self) -> Option<Pressure> {
        match self.strength? {
            Strength::Undrained { low_kpa, .. } => Some(kilopascal::new(low_kpa)),
            Strength::Drained { .. } => None,
        }
    }

    /// Whether it is rock that stands by itself: sound rock, not the weathered kind.
    pub fn is_stable_rock(&self) -> bool {
        self.slope_type == SlopeType::StableRock
    }

    /// Vertical effective stress at a depth: moist soil above the water, buoyant soil below it.
    pub fn effective_stress(&self, depth: Length) -> Pressure {
        let dry = self
            .groundwater_depth
            .map_or(depth, |water| water.min(depth));
        self.layers.moist * dry + self.layers.buoyant() * (depth - dry)
    }

    /// Whether a base at this depth stands on sound rock, be it the ground itself or rock below softer ground.
    pub fn is_sound_rock_at(&self, depth: Length) -> bool {
        let slack = metre::new(1e-6);
        let reached = self.rock_depth.is_some_and(|rock| depth + slack >= rock);
        self.is_stable_rock() || (self.rock_below_is_sound && reached)
    }
}

/// Finds the ground.
pub fn stage(brief: &Brief) -> Found<Ground> {
    let mut notes = Notes::default();
    let soil = brief.site.soil.value;
    let row = soil_table::row(soil);
    let groundwater = brief.site.groundwater_depth.value;
    let water = water::water(&row, groundwater, water::depth(brief));
    let unit_weight_range = weight::unit_weight(brief, &row, &water, &mut notes);
    let poisson_ratio_range = weight::poisson_ratio(brief, &row, &water, &mut notes);
    let stiffness =
        stiffness::stiffness(brief, &row, unit_weight_range.typical, &water, &mut notes);
    let bearing = bearing::bearing(brief, &row, &mut notes);
    let frost_depth = frost::depth(brief, &row, &mut notes);
    let slope = if water.wet {
        when_wet(row.slope_type)
    } else {
        row.slope_type
    };
    let value = Ground {
        soil,
        group: row.group,
        stiffness_from: stiffness.from,
        shear_modulus: stiffness.modulus,
        shear_wave_speed: stiffness.speed,
        unit_weight: unit_weight_range.typical,
        layers: weight::layers(brief, &row),
        unit_weight_range,
        poisson_ratio: poisson_ratio_range.typical,
        poisson_ratio_range,
        presumed_bearing: bearing.map(|bearing| bearing.pressure.low),
        presumed_bearing_range: bearing.map(|bearing| bearing.pressure),
        bearing_sources: bearing.map(|bearing| bearing.sources),
        strength: strength::find(brief, row.group),
        strength_is_measured: strength::measured(&brief.site.stated, row.group).is_some(),
        unsure: tree::unsure(brief, soil, row.group),
        frost_depth,
        frost_class: frost_class(soil),
        frost_base_depth: if soil == Soil::Rock {
            metre::new(0.0)
        } else {
            frost_depth
        },
        groundwater_depth: groundwater,
        topsoil_depth: brief.site.stated.topsoil_depth_m.map(metre::new),
        rock_depth: brief.site.stated.rock_depth_m.map(metre::new),
        rock_below_is_sound: row.group != Group::Rock && brief.site.rock_below() == Soil::Rock,
        slope_type: row.slope_type,
        safe_slope_deg: angle_deg(slope),
        bulking_ratio: row.bulking_ratio,
        ask_an_engineer: unfit::ask(brief),
    };
    notes.working(
        Working::new(
            "ground.safe_slope",
            "Steepest slope of a pit's side in this soil",
            "β = arctan(1/s)",
            slopes::SOURCE,
        )
        .with("s", run_over_rise_ratio(slope), One)
        .gives("β", value.safe_slope_deg, Degree),
    );
    unfit::checks(brief, &value, &mut notes);
    strength::notes(brief, &value, &mut notes);
    slope::notes(brief, &value, &mut notes);
    tree::notes(brief, &value, &mut notes);
    Found { value, notes }
}

#[cfg(test)]
mod tests;
