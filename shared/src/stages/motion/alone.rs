//! Alone: what the star comes to with nobody there, and nothing else, for designs that are only compared.
//!
//! The same sums as the stage's own, from the same functions; and a bound from below that needs no modes.

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::{GroundStiffness, Stiffness};
use crate::stages::motion::growth::Exposure;
use crate::stages::motion::rig::{Axis, Rig};
use crate::stages::motion::share::{self, Alone};
use crate::stages::motion::system::{self, Mounted};
use crate::stages::motion::wind::{self, SlowPart};
use crate::stages::motion::{Budget, Heat, Season, budget, heat, season};
use crate::stages::pier::Pier;
use crate::units::{ARCSEC_PER_RADIAN, Length};

/// A column and what it carries, as far as the star depends on nothing in the ground.
#[derive(Debug, Clone)]
pub struct Standing {
    budget: Budget,
    exposure: Exposure,
    heat: Heat,
    slow: SlowPart,
    foot_above_ground: Length,
}

/// A little less than the closed form gives: the modes leave out what is too stiff to be told from rounding.
const LESS_RATIO: f64 = 1.0 - 1e-6;

impl Standing {
    /// Of a plan and its column, on a block of this upstand.
    pub fn of(brief: &Brief, pier: &Pier) -> Self {
        let mut unsaid = Notes::default();
        let foot_above_ground = brief.block.upstand.value + pier.gap;
        Self {
            budget: budget::find(brief, &mut unsaid),
            exposure: Exposure::of(brief),
            heat: heat::find(brief, pier, &mut unsaid),
            slow: wind::slow_part(brief, pier, foot_above_ground),
            foot_above_ground,
        }
    }

    /// What is asked of the star.
    pub const fn budget(&self) -> &Budget {
        &self.budget
    }

    /// What the star comes to; none where the ground is not known.
    pub fn found(
        &self,
        brief: &Brief,
        ground: &Ground,
        block: &Block,
        stiffness: &GroundStiffness,
        pier: &Pier,
        season: Option<Season>,
    ) -> Option<Alone> {
        let rigid = system::find(brief, ground, block, stiffness, pier, Mounted::Rigidly)?;
        let (guided, worst) = wind::left(brief, pier, self.foot_above_ground, &rigid);
        share::alone(brief, &self.exposure, (guided, worst), &self.heat, season)
    }

    /// The least that it can come to, without modes: the wind's slow part alone.
    ///
    /// The variance of the flutter is that of the slow part, which the pier follows as under a steady force, and of each
    /// mode's resonance, which is never negative, being a sum of squares times a spectrum and times what a guider leaves,
    /// 1 + s² − 2 s² cos φ ≥ (1 − s)². So the flutter is never less than that of the slow part, in typical ground `e` and in soft
    /// ground `s ≥ e` alike. At worst the flutter is `e + √((s − e)² + (l − 1)² e²)`, l the load's ratio; it grows with s, and
    /// with e since its slope there is 1 + ((l − 1)² e − (s − e))/√… ≥ 0. Put together with warmth and season the variance
    /// is `Σ e² + √Σ b²` with b the square at worst less e²; it grows with the square at worst, and with e² since
    /// 1 − b/√Σ b² ≥ 0. Growth follows from the variance and grows with it.
    pub fn at_least(
        &self,
        brief: &Brief,
        ground: &Ground,
        block: &Block,
        stiffness: &GroundStiffness,
        pier: &Pier,
        season: Option<Season>,
    ) -> Option<Alone> {
        let rigs = [
            Rig::new(Axis::X, brief, ground, block, stiffness, pier)?,
            Rig::new(Axis::Y, brief, ground, block, stiffness, pier)?,
        ];
        let slow = &self.slow;
        let flutter = |held: &Stiffness| {
            let turn = |axis, rig: &Rig| {
                let rig = rig.held(axis, held, 1.0)?;
                Some(rig.steady_turn(slow.telescope_n, slow.column_n).abs())
            };
            let worse = turn(Axis::X, &rigs[0])?.max(turn(Axis::Y, &rigs[1])?);
            Some(LESS_RATIO * ARCSEC_PER_RADIAN * worse * slow.per_turn_ratio)
        };
        let (typical, soft) = (flutter(&stiffness.typical)?, flutter(&stiffness.low)?);
        let worst = 2f64.sqrt() * typical.max(soft);
        share::alone(brief, &self.exposure, (typical, worst), &self.heat, season)
    }
}

/// Lean of the axis in a year, which depends on the ground and on the block alone.
pub fn season(brief: &Brief, ground: &Ground, block: &Block) -> Option<Season> {
    season::find(brief, ground, block, &mut Notes::default())
}
