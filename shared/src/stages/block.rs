//! Footing: the block's size, weight, strength by day, and what is cast into it.

mod actions;
pub mod age;
mod checks;
mod chosen;
pub mod concrete;
pub(crate) mod dowels;
mod ducts;
pub mod exposure;
pub mod figures;
pub(crate) mod frost;
mod needs;
mod outline;
mod rules_of_thumb;
mod size;
mod steel;
pub mod weather;
mod wording;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes, Opinion};
use crate::rules::en_1992_1_1_2004::strength;
use crate::stages::ground::Ground;
use crate::stages::loads::Loads;
use crate::stages::room::Room;
use crate::units::{
    Length, Mass, Pressure, Time, Volume, cubic_metre, day, kilogram, kilopascal, megapascal, metre,
};

pub use age::{Age, Days, characteristic, days, specified};
pub use concrete::Order;
pub use dowels::{Dowels, FROM_FACE_M as DOWELS_FROM_FACE_M};
pub use ducts::Ducts;
pub use exposure::ExposureAdvice;
pub use frost::SideFrost;
pub use needs::{TONNE_KG, plate_needs};
pub use steel::SteelOption;

/// The footing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Block {
    /// Along x.
    #[serde(rename = "length_m", with = "metre")]
    pub length: Length,
    /// Along y.
    #[serde(rename = "width_m", with = "metre")]
    pub width: Length,
    /// Base below ground.
    #[serde(rename = "depth_m", with = "metre")]
    pub depth: Length,
    /// Top above ground.
    #[serde(rename = "upstand_m", with = "metre")]
    pub upstand: Length,
    /// Volume of concrete in place.
    #[serde(rename = "volume_m3", with = "cubic_metre")]
    pub volume: Volume,
    /// Volume to order, with waste.
    #[serde(rename = "order_volume_m3", with = "cubic_metre")]
    pub order_volume: Volume,
    /// Mass.
    #[serde(rename = "mass_kg", with = "kilogram")]
    pub mass: Mass,
    /// Largest pressure under the base, at its edge, in the worst of the cases looked at; where the force falls outside the base,
    /// a hundred times the resting pressure, and the check fails.
    #[serde(rename = "bearing_pressure_kpa", with = "kilopascal")]
    pub bearing_pressure: Pressure,
    /// Pressure under the base when nobody touches the pier and no wind blows.
    #[serde(rename = "resting_pressure_kpa", with = "kilopascal")]
    pub resting_pressure: Pressure,
    /// Characteristic cylinder strength at 28 days.
    #[serde(rename = "strength_mpa", with = "megapascal")]
    pub strength: Pressure,
    /// Mean modulus of elasticity at 28 days.
    #[serde(rename = "elastic_modulus_mpa", with = "megapascal")]
    pub elastic_modulus: Pressure,
    /// Depth from which the soil is hard against the sides.
    #[serde(rename = "side_contact_from_m", with = "metre")]
    pub side_contact_from: Length,
    /// Depth to which it is.
    #[serde(rename = "side_contact_to_m", with = "metre")]
    pub side_contact_to: Length,
    /// After how many days at the stated temperature holes may be drilled.
    #[serde(rename = "drill_after_d", with = "day")]
    pub drill_after: Time,
    /// After how many days it may be loaded fully.
    #[serde(rename = "load_after_d", with = "day")]
    pub load_after: Time,
    /// For how many days it is kept damp and covered.
    #[serde(rename = "curing_d", with = "day")]
    pub curing: Time,
    /// Strength at a row of days at the stated temperature.
    pub strength_by_day: Vec<Age>,
    /// The trade's rules of thumb beside the calculation.
    pub rules_of_thumb: Vec<Opinion>,
    /// What to order or mix.
    pub concrete: Order,
    /// The ways to reinforce it, the chosen one marked.
    pub reinforcement: Vec<SteelOption>,
    /// Ducts through it.
    pub ducts: Ducts,
    /// What surrounds the concrete, and what that asks of it.
    pub exposure: Vec<ExposureAdvice>,
    /// Frost at its sides, and what the plan does against it.
    pub side_frost: SideFrost,
    /// Dowels into the rock below; none where it stands on soil or needs none.
    pub dowels: Option<Dowels>,
    /// Where and how an earth is connected.
    pub earthing: String,
}

/// Sizes or checks the block.
pub fn stage(brief: &Brief, ground: &Ground, room: &Room, loads: &Loads) -> Found<Block> {
    let mut notes = Notes::default();
    let outline = size::choose(brief, ground, room, loads, &mut notes);
    let actions = actions::list(brief, &outline, loads);
    let side_frost = SideFrost::find(brief, ground, &outline, &actions);
    let dowels = dowels::find(brief, ground, &outline, &actions, &mut notes);
    let contact = side_frost.contact(outline::contact(brief, &outline, &mut notes));
    let (bearing_pressure, resting_pressure) = checks::all(
        brief,
        ground,
        &outline,
        &actions,
        (&side_frost, dowels.as_ref()),
        loads,
        &mut notes,
    );
    let ages = age::of(brief, &mut notes);
    weather::notes(brief, &mut notes);
    let order = concrete::order(brief, &outline, &mut notes);
    let rules_of_thumb = rules_of_thumb::beside(brief, ground, room, &outline, &actions);
    notes.opinions.extend(rules_of_thumb.iter().cloned());
    let class = characteristic(brief.block.concrete.value);
    let value = Block {
        length: outline.length,
        width: outline.width,
        depth: outline.depth,
        upstand: outline.upstand,
        volume: outline.volume(),
        order_volume: order.volume,
        mass: outline.mass(),
        bearing_pressure,
        resting_pressure,
        strength: class,
        elastic_modulus: strength::elastic_modulus(class),
        side_contact_from: contact.from,
        side_contact_to: contact.to,
        drill_after: ages.drill,
        load_after: ages.load,
        curing: ages.curing,
        strength_by_day: ages.table,
        rules_of_thumb,
        concrete: order,
        reinforcement: steel::options(brief, &outline, &mut notes),
        ducts: ducts::lay(brief, &outline, &mut notes),
        exposure: exposure::advise(brief, ground),
        side_frost,
        dowels,
        earthing: ducts::earthing(brief.units),
    };
    Found { value, notes }
}
