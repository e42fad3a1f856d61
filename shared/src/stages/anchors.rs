//! Anchors: layout, resistances, torque, resin.

mod aci;
pub mod actions;
pub mod advice;
pub mod areas;
mod eurocode;
pub mod figures;
pub mod flexure;
mod foot;
mod forces;
pub mod layout;
pub mod preload_loss;
pub mod seat;
pub mod setting;
pub mod situation;
pub mod strength;
pub mod torque;
pub mod verdict;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::joint::{self, Joint};
use crate::stages::loads::Loads;
use crate::units::{Force, Length, Spread, Volume, kilonewton, millilitre, millimetre};

pub use actions::Action;
pub use advice::Step;
pub use flexure::Flexure;
pub use layout::Stud;
pub use preload_loss::PreloadLoss;
pub use seat::Seat;
pub use setting::Setting;
pub use strength::{Mode, Resistances};
pub use torque::Torque;
pub use verdict::{Borne, Verdict};

use situation::Situation;

/// The studs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Anchors {
    /// Where they stand.
    pub studs: Vec<Stud>,
    /// Diameter of each hole.
    #[serde(rename = "hole_diameter_mm", with = "millimetre")]
    pub hole_diameter: Length,
    /// Depth of each hole.
    #[serde(rename = "hole_depth_mm", with = "millimetre")]
    pub hole_depth: Length,
    /// Embedment.
    #[serde(rename = "embedment_mm", with = "millimetre")]
    pub embedment: Length,
    /// Preload of a stud.
    #[serde(rename = "preload_kn", with = "kilonewton::spread::option")]
    pub preload: Option<Spread<Force>>,
    /// Resin for all holes, with waste, without what the nozzles throw away.
    #[serde(rename = "resin_volume_ml", with = "millilitre")]
    pub resin_volume: Volume,
    /// The way in which the group would fail first.
    pub governing: String,
    /// Where the preload goes.
    pub seat: Seat,
    /// How the foot turns on them.
    pub joint: Joint,
    /// How they are set.
    #[serde(flatten)]
    pub setting: Setting,
    /// How the nuts are tightened.
    pub torque: Torque,
    /// What they resist.
    pub resistances: Resistances,
    /// How EN 1992-4 judges them.
    pub eurocode: Option<Verdict>,
    /// How ACI 318-19 judges them.
    pub aci: Option<Verdict>,
    /// What tightening bends; null where the sizes leave nothing to bend.
    pub flexure: Option<Flexure>,
    /// What the studs keep of their preload.
    #[serde(rename = "keeping")]
    pub preload_loss: PreloadLoss,
    /// What to do, from the hole to the last check.
    pub steps: Vec<Step>,
    /// What acts at the foot.
    pub actions: Vec<Action>,
}

/// Finds the studs.
pub fn stage(brief: &Brief, block: &Block, loads: &Loads) -> Found<Anchors> {
    let mut notes = Notes::default();
    let anchors = &brief.anchors;
    let situation = Situation::of(brief, block);
    let group = layout::group(brief, block);
    let actions = actions::all(loads);
    let mut both = verdict::find(&situation, &group, &actions, &mut notes);
    if let Some(verdict) = both.chosen(brief) {
        verdict::put_checks(&situation, &group, verdict, &both.resistances, &mut notes);
    }
    let setting = setting::find(brief);
    setting::notes(brief, &setting, &mut notes);
    let screw = torque::Screw::of(brief);
    let torque = torque::find(
        brief,
        situation.seat,
        &screw,
        group.nearest_edge(),
        torque::Bears {
            lasting: both.resistances.single.design(Mode::BondSustained),
            bending: flexure::most_preload(&situation),
        },
    );
    torque::notes(brief, &torque, &screw, &mut notes);
    let preload = screw.preload(torque.used);
    preload_loss::sustained(
        &situation,
        preload,
        both.resistances.single.design(Mode::BondSustained),
        &mut notes,
    );
    both.sustain(&situation, preload.high);
    foot::checks(&situation, both.chosen(brief), &mut notes);
    let flexure = flexure::find(&situation, block, &screw, torque.set, &mut notes);
    let joint = joint::base_joint(brief, block);
    let preload_loss = preload_loss::find(
        &situation,
        preload,
        &torque,
        joint.disc_radius,
        both.chosen(brief),
        &mut notes,
    );
    let steps = advice::steps(
        brief,
        &setting,
        &torque,
        situation.seat,
        flexure.as_ref().map(|flexure| flexure.nut_gap),
    );
    let value = Anchors {
        studs: group.studs,
        hole_diameter: anchors.hole_diameter.value,
        hole_depth: setting::hole_depth(brief),
        resin_volume: setting.resin_per_hole * anchors.count.value,
        embedment: anchors.embedment.value,
        preload: Some(preload),
        governing: governing(&both, brief),
        seat: situation.seat,
        joint,
        setting,
        torque,
        resistances: both.resistances,
        eurocode: both.eurocode,
        aci: both.aci,
        flexure,
        preload_loss,
        steps,
        actions,
    };
    Found { value, notes }
}

/// The way in which the group would fail first, and what would raise it.
fn governing(both: &verdict::Both, brief: &Brief) -> String {
    let Some(verdict) = both.chosen(brief) else {
        return String::new();
    };
    let Some(judged) = verdict.governing() else {
        return String::new();
    };
    format!(
        "{}, {:.0} % used under {}; it would be raised by {}",
        judged.words,
        100.0 * judged.utilisation,
        judged.under,
        judged.raised_by
    )
}

#[cfg(test)]
mod any_plan;
