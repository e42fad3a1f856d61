//! Stands: where a weight leans the pier, from the solved half-space: the floor as a map of arcseconds, what a lining of the
//! block buys, and for which ground the trade's own figure holds.

mod isolation;
mod map;
mod practice;

use serde::Serialize;

use crate::brief::Brief;
use crate::halfspace::Solved;
use crate::notes::Notes;
use crate::stages::block::Block;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::stages::motion::growth::Exposure;
use crate::stages::motion::influence::Influence;
use crate::stages::pier::Pier;
use crate::units::{ARCSEC_PER_RADIAN, Frequency, Pressure, Spread, pascal};

pub use isolation::{Isolation, IsolationRow};
pub use map::{LeanCost, TiltMap};
pub use practice::{Practice, PracticeRow};

/// Mass of the person in map, comparison and practice.
pub const PERSON_KG: f64 = 80.0;

impl Influence for Solved {
    /// The load that does to the block what a newton at a place does: `K q`, whatever the modulus.
    fn per_newton(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        let motion = self.under_weight(x_m, y_m);
        self.stiffness_over_g
            .map(|row| row.iter().zip(motion).map(|(k, q)| k * q).sum())
    }

    fn per_newton_sideways(&self, x_m: f64, y_m: f64) -> [[f64; 6]; 2] {
        self.under_pushes(x_m, y_m).map(|motion| {
            self.stiffness_over_g
                .map(|row| row.iter().zip(motion).map(|(k, q)| k * q).sum())
        })
    }
}

impl GroundStiffness {
    /// What a weight on the ground does to the block, where that is solved.
    pub fn influence(&self) -> Option<&dyn Influence> {
        self.solved.is_some().then_some(self as &dyn Influence)
    }
}

impl Influence for GroundStiffness {
    /// The load that in even ground does what a newton at a place does in typical ground, but for the lean's own factor,
    /// which the modes bring.
    fn per_newton(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        let Some(solved) = self.solved.as_deref() else {
            return [0.0; 6];
        };
        let motion = self.uneven.typical.under_weight(solved, x_m, y_m);
        solved.stiffness_over_g.map(|row| {
            row.iter()
                .zip(motion)
                .map(|(k, q)| k * q / self.uneven.typical.lean_ratio)
                .sum()
        })
    }

    /// As in even ground: what layers do to a sideways push is small beside what is not known of it.
    fn per_newton_sideways(&self, x_m: f64, y_m: f64) -> [[f64; 6]; 2] {
        self.solved
            .as_deref()
            .map_or([[0.0; 6]; 2], |solved| solved.per_newton_sideways(x_m, y_m))
    }
}

/// What the solved ground says of weights on the floor; each part is none where the ground is not known.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OnGround {
    /// Lean of the pier for a person anywhere on the floor.
    pub tilt_map: Option<TiltMap>,
    /// The same block bonded, lined to half its depth, lined fully.
    pub isolation: Option<Isolation>,
    /// The trade's figure held against this block.
    pub practice: Option<Practice>,
}

impl OnGround {
    /// Finds all three. `first_omega` is the pier's first circular frequency, nought where that is not known.
    #[allow(
        clippy::too_many_arguments,
        reason = "each part names all that it depends on"
    )]
    pub fn find(
        brief: &Brief,
        ground: &Ground,
        block: &Block,
        stiffness: &GroundStiffness,
        pier: &Pier,
        floor: &Floor,
        first: Option<Frequency>,
        notes: &mut Notes,
    ) -> Self {
        let (Some(solved), Some(g)) = (stiffness.solved.as_deref(), stiffness.shear_modulus) else {
            return Self {
                tilt_map: None,
                isolation: None,
                practice: None,
            };
        };
        Self {
            tilt_map: Some(map::find(
                solved,
                &Exposure::of(brief),
                ground,
                floor,
                g,
                stiffness.uneven,
                first,
                notes,
            )),
            isolation: isolation::find(brief, block, pier, solved, g, notes),
            practice: Some(practice::find(
                brief,
                ground,
                solved,
                stiffness.uneven,
                g,
                notes,
            )),
        }
    }
}

/// Lean of the block times G under a newton at a place: towards east and towards north.
pub fn lean(solved: &Solved, uneven: &Factors, x_m: f64, y_m: f64) -> [f64; 2] {
    let motion = uneven.under_weight(solved, x_m, y_m);
    // A right-handed turn about x carries the top towards south.
    [motion[4], -motion[3]]
}

/// Arcseconds from a lean times G.
fn arcsec(lean: [f64; 2], newtons: f64, g: Pressure) -> f64 {
    lean[0].hypot(lean[1]) * newtons / pascal::get(g) * ARCSEC_PER_RADIAN
}

/// The same in low, typical and high ground.
fn arcsec_band(lean: [f64; 2], newtons: f64, g: Spread<Pressure>) -> Spread<f64> {
    g.map(|g| arcsec(lean, newtons, g))
}

/// To four significant digits: more would only lengthen the document.
fn rounded(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return 0.0;
    }
    let scale = 10f64.powi(3 - value.abs().log10().floor() as i32);
    (value * scale).round() / scale
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::{SitePlan, Stand};

    fn cube() -> SitePlan {
        let mut plan = SitePlan::unknown();
        plan.site.shear_wave_speed_m_s = Some(130.0);
        plan.site.unit_weight_kn_m3 = Some(17.41);
        plan.site.poisson_ratio = Some(0.35);
        plan.block.length_m = Some(1.0);
        plan.block.width_m = Some(1.0);
        plan.block.depth_m = Some(1.0);
        plan.floor.stands = Some(vec![Stand {
            name: "East".into(),
            x_m: 1.0,
            y_m: 0.0,
            mass_kg: PERSON_KG,
        }]);
        plan
    }

    #[test]
    fn the_map_holds_what_the_stand_feels() {
        let design = design_plan(&cube(), &NoShelf).unwrap();
        let map = design.motion.on_ground.tilt_map.unwrap();
        let middle = map.y_m.len() / 2;
        assert!(map.y_m[middle].abs() < 1e-9);
        let at = map
            .x_m
            .iter()
            .position(|x| (x - 1.05).abs() < 0.04)
            .unwrap();
        let stand = design.motion.stands[0].block_tilt_arcsec.unwrap();
        assert!(
            (map.tilt_arcsec[middle][at] / stand - 1.0).abs() < 0.1,
            "{} {stand}",
            map.tilt_arcsec[middle][at]
        );
        assert_eq!(
            map.tilt_arcsec[0][0],
            map.tilt_arcsec[map.y_m.len() - 1][map.x_m.len() - 1]
        );
    }

    #[test]
    fn a_lining_makes_the_block_softer_and_a_person_at_a_metre_no_quieter() {
        let design = design_plan(&cube(), &NoShelf).unwrap();
        let isolation = design.motion.on_ground.isolation.unwrap();
        let [bonded, half, full] = isolation.rows.as_slice() else {
            panic!("three rows")
        };
        assert!(
            bonded.rocking_n_m_per_rad > 1.8 * half.rocking_n_m_per_rad
                && half.rocking_n_m_per_rad > 2.0 * full.rocking_n_m_per_rad
        );
        assert!(full.person_arcsec.typical > 1.3 * bonded.person_arcsec.typical);
        assert!(full.push_arcsec.typical > 3.0 * bonded.push_arcsec.typical);
    }

    #[test]
    fn the_trades_figure_asks_for_soft_ground() {
        let design = design_plan(&cube(), &NoShelf).unwrap();
        let practice = design.motion.on_ground.practice.unwrap();
        for row in practice.rows {
            assert!(
                (row.tilt_arcsec.typical * row.holds_at_shear_modulus_mpa.recip() * 30.0 / 1.5
                    - 1.0)
                    .abs()
                    < 0.01
            );
            assert!(
                row.tilt_arcsec.low > row.tilt_arcsec.typical
                    && row.tilt_arcsec.typical > row.tilt_arcsec.high
            );
        }
    }
}
