//! Answers: what wind, a bump and the telescope's own stops do, on one set of modes.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::motion::system::System;
use crate::stages::motion::{Budget, Knock, ModeShape, Wind, knock, wind};
use crate::stages::pier::Pier;
use crate::units::{Frequency, Length, hertz};

/// What the pier does when nobody walks about.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answers {
    /// Wind.
    pub wind: Option<Wind>,
    /// A bump by hand.
    pub bump: Option<Knock>,
    /// The stop of a slew.
    pub slew: Option<Knock>,
    /// The end of a flip across the meridian.
    pub flip: Option<Knock>,
}

/// The pier with its load bolted to it, so that nothing of it is the mount's.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RigidLoad {
    /// First frequencies in typical ground.
    #[serde(rename = "frequencies_hz", with = "hertz::list")]
    pub frequencies: Vec<Frequency>,
    /// Natural swings, slowest first.
    pub modes: Vec<ModeShape>,
    /// What it does.
    #[serde(flatten)]
    pub answers: Answers,
}

impl Answers {
    /// Finds them; each is none where the ground is not known.
    pub fn find(
        brief: &Brief,
        pier: &Pier,
        foot_above_ground: Length,
        system: Option<&System>,
        budget: &Budget,
        notes: &mut Notes,
    ) -> Self {
        let Some(system) = system else {
            return Self {
                wind: None,
                bump: None,
                slew: None,
                flip: None,
            };
        };
        Self {
            bump: Some(knock::bump(system, budget.arcsec, notes)),
            wind: Some(wind::find(brief, pier, foot_above_ground, system, notes)),
            slew: Some(knock::slew(brief, system, budget.arcsec, notes)),
            flip: Some(knock::flip(brief, system, budget.arcsec)),
        }
    }
}
