//! Anchors: layout, resistances, torque, resin.

pub mod layout;
pub mod seat;
pub mod setting;
pub mod strength;
pub mod torque;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::rules::en_1992_4_2018 as en;
use crate::stages::block::Block;
use crate::stages::pier::Pier;
use crate::units::{Force, Length, Spread, Volume, kilonewton, millilitre, millimetre};

pub use layout::Stud;
pub use seat::Seat;
pub use setting::Setting;
pub use strength::{Mode, Resistances};
pub use torque::Torque;

/// The studs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Anchors {
    /// Where they stand.
    pub studs: Vec<Stud>,
    /// Diameter of each hole.
    #[serde(rename = "hole_diameter_mm", serialize_with = "millimetre::serialize")]
    pub hole_diameter: Length,
    /// Depth of each hole.
    #[serde(rename = "hole_depth_mm", serialize_with = "millimetre::serialize")]
    pub hole_depth: Length,
    /// Embedment.
    #[serde(rename = "embedment_mm", serialize_with = "millimetre::serialize")]
    pub embedment: Length,
    /// Preload of a stud.
    #[serde(rename = "preload_kn", serialize_with = "kilonewton::spread::option::serialize")]
    pub preload: Option<Spread<Force>>,
    /// Resin for all holes, with waste, without what the nozzles throw away.
    #[serde(rename = "resin_volume_ml", serialize_with = "millilitre::serialize")]
    pub resin_volume: Volume,
    /// The way in which the group would fail first.
    pub governing: String,
    /// Where the preload goes.
    pub seat: Seat,
    /// How they are set.
    #[serde(flatten)]
    pub setting: Setting,
    /// How the nuts are tightened.
    pub torque: Torque,
    /// What they resist.
    pub resistances: Resistances,
}

/// Finds the studs.
#[must_use]
pub fn stage(brief: &Brief, block: &Block, _pier: &Pier) -> Found<Anchors> {
    let mut notes = Notes::default();
    let anchors = &brief.anchors;
    let seat = Seat::of(brief);
    let group = layout::group(brief, block);
    let setting = setting::find(brief);
    setting::notes(brief, &setting, &mut notes);
    let thread = anchors.thread();
    let bond = if anchors.cracked.value { anchors.product.bond_cracked.value } else { anchors.product.bond_uncracked.value };
    let lasting = en::bond::single(anchors.product.sustained_factor.value, bond, thread.diameter, anchors.embedment.value)
        / en::factors::concrete_factor(anchors.product.installation_factor.value);
    let screw = torque::Screw::of(brief);
    let torque = torque::find(brief, seat, &screw, lasting);
    torque::notes(brief, &torque, &screw, &mut notes);
    let value = Anchors {
        studs: group.studs,
        hole_diameter: anchors.hole_diameter.value,
        hole_depth: setting::hole_depth(brief),
        resin_volume: setting.resin_per_hole * anchors.count.value,
        embedment: anchors.embedment.value,
        preload: Some(screw.preload(torque.used)),
        governing: String::new(),
        seat,
        setting,
        torque,
        resistances: Resistances::default(),
    };
    Found { value, notes }
}
