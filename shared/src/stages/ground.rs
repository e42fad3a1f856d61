//! Ground: from the soil in the hand to stiffness, weight and bearing.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::units::{
    Length, Pressure, Spread, UnitWeight, Velocity, kilonewton_per_cubic_metre, kilopascal, megapascal, metre, metre_per_second,
};

/// What the ground is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ground {
    /// Small-strain shear modulus; none where the ground is not to be built on.
    #[serde(rename = "shear_modulus_mpa", serialize_with = "megapascal::spread::option::serialize")]
    pub shear_modulus: Option<Spread<Pressure>>,
    /// Speed of shear waves.
    #[serde(rename = "shear_wave_speed_m_s", serialize_with = "metre_per_second::spread::option::serialize")]
    pub shear_wave_speed: Option<Spread<Velocity>>,
    /// Unit weight.
    #[serde(rename = "unit_weight_kn_m3", serialize_with = "kilonewton_per_cubic_metre::serialize")]
    pub unit_weight: UnitWeight,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
    /// Presumed bearing pressure; none where a ground engineer has to say.
    #[serde(rename = "presumed_bearing_kpa", serialize_with = "kilopascal::option::serialize")]
    pub presumed_bearing: Option<Pressure>,
    /// Depth to which frost goes in a hard winter.
    #[serde(rename = "frost_depth_m", serialize_with = "metre::serialize")]
    pub frost_depth: Length,
    /// Highest groundwater below ground level; none when deep or not known.
    #[serde(rename = "groundwater_depth_m", serialize_with = "metre::option::serialize")]
    pub groundwater_depth: Option<Length>,
    /// Slope of the pit's sides that stands, degrees from level; 90 for rock.
    pub safe_slope_deg: f64,
    /// Whom to ask and why, where the ground is not to be built on by presumption.
    pub ask_an_engineer: Option<String>,
}

/// Finds the ground.
#[must_use]
pub fn stage(_brief: &Brief) -> Found<Ground> {
    let g = Spread { low: megapascal::new(22.0), typical: megapascal::new(42.0), high: megapascal::new(75.0) };
    let value = Ground {
        shear_modulus: Some(g),
        shear_wave_speed: Some(Spread {
            low: metre_per_second::new(110.0),
            typical: metre_per_second::new(150.0),
            high: metre_per_second::new(200.0),
        }),
        unit_weight: kilonewton_per_cubic_metre::new(18.5),
        poisson_ratio: 0.45,
        presumed_bearing: Some(kilopascal::new(75.0)),
        frost_depth: metre::new(0.6),
        groundwater_depth: None,
        safe_slope_deg: 45.0,
        ask_an_engineer: None,
    };
    Found { value, notes: Notes::default() }
}
