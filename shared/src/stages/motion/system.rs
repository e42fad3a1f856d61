//! The rig's modes in both planes, and what steady forces and knocks do through them.

use crate::brief::Brief;
use crate::halfspace::Solved;
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::stages::ground_stiffness::{GroundStiffness, Stiffness};
use crate::stages::motion::modes::{self, Mode};
use crate::stages::motion::rig::{Axis, Rig};
use crate::stages::pier::Pier;
use crate::units::{
    ARCSEC_PER_RADIAN, RotationalStiffness, Spread, megapascal, newton_metre_per_radian,
};

/// What takes a force and a moment that come from even ground to those that do the same here.
pub type Carried = [[f64; 2]; 2];

fn carry(mut modes: Vec<Mode>, [[ff, fm], [mf, mm]]: Carried, hand: f64) -> Vec<Mode> {
    for mode in &mut modes {
        let (base, turn) = (mode.base, hand * mode.block_turn);
        (mode.base, mode.block_turn) = (base * ff + turn * mf, hand * (base * fm + turn * mm));
    }
    modes
}

/// So stiff a mount is rigid, N m/rad.
pub const RIGID_N_M_PER_RAD: f64 = 1e12;

/// Modes of both planes in one ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Planes {
    /// East and west.
    pub x: Vec<Mode>,
    /// North and south.
    pub y: Vec<Mode>,
    /// Speed of shear waves in this ground; none where it is not known, and then nothing comes as a wave.
    pub shear_speed_m_s: Option<f64>,
}

impl Planes {
    /// Solves both planes. `carried` says for each what loads from the ground amount to: the identity in even ground.
    pub fn solve([x, y]: &[Rig; 2], carried: [Carried; 2], stated_damping: Option<f64>) -> Self {
        let one = |rig: &Rig| modes::find(rig, stated_damping);
        // A square block's planes are one and the same.
        let x_modes = one(x);
        let y_modes = if x == y { x_modes.clone() } else { one(y) };
        // In the north plane a turn towards the north is the opposite of a right-handed turn about x.
        Self {
            x: carry(x_modes, carried[0], 1.0),
            y: carry(y_modes, carried[1], -1.0),
            shear_speed_m_s: x.radiation.map(|block| block.shear_speed),
        }
    }

    /// First circular frequency of both planes over the speed of shear waves: nought where that is not known.
    pub fn wave_number_per_m(&self) -> f64 {
        self.shear_speed_m_s
            .map_or(0.0, |speed| self.first_omega() / speed)
    }

    /// First circular frequency of both planes.
    pub fn first_omega(&self) -> f64 {
        let first = self
            .both()
            .into_iter()
            .filter_map(<[Mode]>::first)
            .map(|mode| mode.omega)
            .fold(f64::INFINITY, f64::min);
        if first.is_finite() { first } else { 0.0 }
    }

    /// Both planes.
    pub fn both(&self) -> [&[Mode]; 2] {
        [&self.x, &self.y]
    }

    /// The larger of a figure of either plane.
    pub fn worst(&self, figure: impl Fn(&[Mode]) -> f64) -> f64 {
        self.both().into_iter().map(figure).fold(0.0, f64::max)
    }
}

/// Both planes in low, typical and high ground.
pub type System = Spread<Planes>;

/// How the load sits on the pier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mounted {
    /// On the mount, which gives.
    Softly,
    /// As if bolted to the top plate: what the pier itself does.
    Rigidly,
    /// On a mount of another stiffness.
    On(RotationalStiffness),
}

/// The modes in low, typical and high ground; none where the ground is not known.
pub fn find(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    stiffness: &GroundStiffness,
    pier: &Pier,
    mounted: Mounted,
) -> Option<System> {
    let held = Held::find(brief, ground, block, stiffness, pier, mounted)?;
    let Spread { low, typical, high } = stiffness.uneven;
    Some(Spread {
        low: held.planes(&stiffness.low, &low, held.modulus.low)?,
        typical: held.planes(&stiffness.typical, &typical, held.modulus.typical)?,
        high: held.planes(&stiffness.high, &high, held.modulus.high)?,
    })
}

/// The modes in typical ground alone.
pub fn typical(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    stiffness: &GroundStiffness,
    pier: &Pier,
    mounted: Mounted,
) -> Option<Planes> {
    let held = Held::find(brief, ground, block, stiffness, pier, mounted)?;
    held.planes(
        &stiffness.typical,
        &stiffness.uneven.typical,
        held.modulus.typical,
    )
}

/// The rigs of both planes with what the ground is, before one of its stiffnesses is chosen.
struct Held<'a> {
    rigs: [Rig; 2],
    solved: &'a Solved,
    modulus: Spread<f64>,
    damping: Option<f64>,
}

impl<'a> Held<'a> {
    fn find(
        brief: &Brief,
        ground: &Ground,
        block: &Block,
        stiffness: &'a GroundStiffness,
        pier: &Pier,
        mounted: Mounted,
    ) -> Option<Self> {
        let rig = |axis| {
            let rig = Rig::new(axis, brief, ground, block, stiffness, pier)?;
            Some(match mounted {
                Mounted::Softly => rig,
                Mounted::Rigidly => Rig {
                    mount: RIGID_N_M_PER_RAD,
                    ..rig
                },
                Mounted::On(mount) => Rig {
                    mount: newton_metre_per_radian::get(mount),
                    ..rig
                },
            })
        };
        Some(Self {
            rigs: [rig(Axis::X)?, rig(Axis::Y)?],
            solved: stiffness.solved.as_deref()?,
            modulus: ground.shear_modulus?.map(megapascal::get),
            damping: brief.load.damping_ratio,
        })
    }

    fn planes(&self, held: &Stiffness, factors: &Factors, modulus: f64) -> Option<Planes> {
        let ratio = modulus / self.modulus.typical;
        let rigs = [
            self.rigs[0].held(Axis::X, held, ratio)?,
            self.rigs[1].held(Axis::Y, held, ratio)?,
        ];
        let carried = [[0, 4], [1, 3]].map(|plane| factors.carried(self.solved, plane));
        Some(Planes::solve(&rigs, carried, self.damping))
    }
}

/// Turn of the load in arcsec under a steady load that does `work` on a mode's shape.
pub fn steady_turn_arcsec(modes: &[Mode], work: impl Fn(&Mode) -> f64) -> f64 {
    ARCSEC_PER_RADIAN
        * modes
            .iter()
            .map(|mode| mode.load_turn * work(mode) / mode.omega.powi(2))
            .sum::<f64>()
}

/// Swings of the load's turn, arcsec, each with its rate of decay, 1/s.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Swings(Vec<[f64; 2]>);

impl Swings {
    /// After a push that does `work` on a mode's shape has come and gone: 2 sin(ωT/2) of the steady turn, which is at
    /// most ωT, the blow, and at most 2, the push that ends at the wrong moment.
    pub fn after_pulse(modes: &[Mode], lasts_s: f64, work: impl Fn(&Mode) -> f64) -> Self {
        Self::of(modes, |mode| {
            (mode.omega * lasts_s).min(2.0) * work(mode) / mode.omega.powi(2)
        })
    }

    /// After a steady load that does `work` on a mode's shape has gone at once.
    pub fn after_release(modes: &[Mode], work: impl Fn(&Mode) -> f64) -> Self {
        Self::of(modes, |mode| work(mode) / mode.omega.powi(2))
    }

    fn of(modes: &[Mode], amplitude: impl Fn(&Mode) -> f64) -> Self {
        Self(
            modes
                .iter()
                .map(|mode| {
                    [
                        (ARCSEC_PER_RADIAN * mode.load_turn * amplitude(mode)).abs(),
                        mode.damping_ratio * mode.omega,
                    ]
                })
                .collect(),
        )
    }

    /// Each swing as it begins, mode by mode.
    pub fn arcsec(&self) -> impl Iterator<Item = f64> + '_ {
        self.0.iter().map(|[amplitude, _]| *amplitude)
    }

    /// Bound of the swing after a time.
    pub fn bound_arcsec(&self, after_s: f64) -> f64 {
        self.0
            .iter()
            .map(|[amplitude, rate]| amplitude * (-rate * after_s).exp())
            .sum()
    }

    /// Time until the bound is below a budget; none when that takes more than ten minutes.
    pub fn settle_s(&self, budget_arcsec: f64) -> Option<f64> {
        const LONGEST_S: f64 = 600.0;
        if self.bound_arcsec(0.0) <= budget_arcsec {
            return Some(0.0);
        }
        if self.bound_arcsec(LONGEST_S) > budget_arcsec {
            return None;
        }
        let (mut early, mut late) = (0.0, LONGEST_S);
        for _ in 0..40 {
            let middle = 0.5 * (early + late);
            if self.bound_arcsec(middle) > budget_arcsec {
                early = middle;
            } else {
                late = middle;
            }
        }
        Some(late)
    }
}
