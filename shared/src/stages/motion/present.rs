//! Present: what people who are there do to the star, and from how far.

use crate::brief::Brief;
use crate::notes::Notes;
use crate::site_plan::floor::Stand;
use crate::stages::floor::Floor;
use crate::stages::motion::growth::Exposure;
use crate::stages::motion::influence::Influence;
use crate::stages::motion::quiet::{self, Gait, Loud, Quiet};
use crate::stages::motion::system::System;
use crate::stages::motion::{Answers, Budget, Conduct, StandTilt, Walk, card, people, walk};
use crate::units::Spread;

const NOT_SOLVED: &str = "What a weight on the ground does to the block asks for the three-dimensional solution, which is not there.";

/// What people do to the star.
pub struct Present {
    /// Tilt from each stand.
    pub stands: Vec<StandTilt>,
    /// The star during the walk.
    pub walk: Walk,
    /// Of somebody who stands, and of somebody who walks.
    pub quiet: [Option<Quiet>; 2],
    /// How many times as far as somebody who stands a step moves the star.
    pub step_ratio: Option<f64>,
    loud: Option<Loud>,
}

impl Present {
    /// Finds it.
    pub fn find(
        brief: &Brief,
        floor: &Floor,
        system: Option<&System>,
        influence: Option<&dyn Influence>,
        exposure: &Exposure,
        budget: &Budget,
        notes: &mut Notes,
    ) -> Self {
        let (Some(system), Some(influence)) = (system, influence) else {
            return Self {
                stands: brief.floor.stands.value.iter().map(unknown).collect(),
                walk: walk::unknown(NOT_SOLVED),
                quiet: [None; 2],
                step_ratio: None,
                loud: None,
            };
        };
        let ground = people::Ground { floor, influence };
        let step_ratio = walk::step_ratio(brief, floor, &system.low);
        let loud = Loud::find(exposure, budget);
        Self {
            stands: stands(brief, system, &ground, exposure),
            walk: walk::find(brief, floor, system, influence, notes),
            quiet: [Gait::Stands, Gait::Walks(step_ratio)]
                .map(|gait| quiet::find(brief, system, &ground, &loud, gait)),
            step_ratio: Some(step_ratio),
            loud: Some(loud),
        }
    }

    /// The card for the wall; empty where nothing is known. The longest of the telescope's own knocks says how long to wait.
    pub fn card(
        &self,
        brief: &Brief,
        system: Option<&System>,
        floor: &Floor,
        influence: Option<&dyn Influence>,
        conduct: &[Conduct],
        of_telescope: &Answers,
    ) -> Vec<String> {
        let (Some(system), Some(influence), Some(loud)) = (system, influence, self.loud) else {
            return Vec::new();
        };
        let knocks = [of_telescope.bump, of_telescope.slew, of_telescope.flip];
        card::words(&card::Parts {
            brief,
            system,
            ground: people::Ground { floor, influence },
            loud,
            quiet: self.quiet,
            wait_s: knocks.into_iter().try_fold(0.0_f64, |most, knock| {
                knock?.worst_settle_s.map(|s| most.max(s))
            }),
            conduct,
        })
    }
}

fn unknown(stand: &Stand) -> StandTilt {
    StandTilt {
        name: stand.name.clone(),
        tilt_arcsec: None,
        block_tilt_arcsec: None,
        block_tilt_by_ground_arcsec: None,
        star_growth_ratio: None,
        bearing_deg: None,
    }
}

fn stands(
    brief: &Brief,
    system: &System,
    ground: &people::Ground<'_>,
    exposure: &Exposure,
) -> Vec<StandTilt> {
    let tilt = |stand: &Stand| {
        let [x, y] = ground.under(&system.typical, stand.mass_kg, [stand.x_m, stand.y_m]);
        let tilt = x.hypot(y);
        let in_ground = |planes| {
            let [x, y] = ground.under(planes, stand.mass_kg, [stand.x_m, stand.y_m]);
            x.hypot(y)
        };
        // Nothing pushes the column: joint and column carry the block's turn up as it is.
        StandTilt {
            name: stand.name.clone(),
            tilt_arcsec: Some(tilt),
            block_tilt_arcsec: Some(tilt),
            block_tilt_by_ground_arcsec: Some(Spread {
                low: in_ground(&system.low),
                typical: tilt,
                high: in_ground(&system.high),
            }),
            star_growth_ratio: Some(exposure.step_growth_ratio([x, y])),
            bearing_deg: (tilt > 0.0).then(|| x.atan2(y).to_degrees().rem_euclid(360.0)),
        }
    };
    brief.floor.stands.value.iter().map(tilt).collect()
}
