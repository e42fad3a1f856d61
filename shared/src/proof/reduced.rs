//! One upright plane of the pier with few unknowns: block, joint, three shapes of the column, mount. The column's shapes are
//! how it bends under a force and under a moment at its top, and its slowest swing on a fixed foot, so that a fit can try
//! thousands of piers. Held against the whole model in the tests.
//!
//! # Source
//! R. R. Craig and M. C. C. Bampton (1968), coupling of substructures (from memory). A damped system's poles and residues:
//! textbook; that a knock on a bare pier is heard as a pole of the damped rig and not as its first undamped mode was
//! computed apart.

use std::f64::consts::TAU;

use nalgebra::{Complex, DMatrix, SMatrix, SVector, Schur, SymmetricEigen};

use crate::proof::ground::Springs;
use crate::rules::dobry_gazetas_1986::dashpot;
use crate::stages::motion::modes;
use crate::stages::motion::rig::Rig;

/// Unknowns with nothing on the pier.
const BARE: usize = 6;
/// Unknowns with the load.
const ALL: usize = 7;
/// Material damping of the bare pier's parts, over critical: the joint's and the column's of the whole model, between.
const MATERIAL: f64 = 0.004;
/// What lies on a bare pier's top: the telephone.
const TELEPHONE_KG: f64 = 0.5;
/// Swings that are heard, Hz.
const HEARD: std::ops::Range<f64> = 5.0..200.0;
/// A soft blow excites little above this frequency.
const SOFT_BLOW_HZ: f64 = 250.0;
/// Where the dashpots are first taken.
const FIRST_HZ: f64 = 54.0;
/// A second swing is heard beside the loudest when it has at least this share of its energy.
const BESIDE: f64 = 1.0 / 3.0;

/// What a trial changes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trial {
    /// The ground's springs in this plane.
    pub springs: Springs,
    /// Speed of shear waves over the plan's typical one.
    pub speed_ratio: f64,
    /// Share of the sides that is held, from the base up.
    pub contact: f64,
    /// Joint, N m/rad.
    pub joint: f64,
    /// E·I over the plan's.
    pub bending_ratio: f64,
    /// Mount, N m/rad.
    pub mount: f64,
    /// Mass of the load.
    pub load: f64,
    /// Height of its centre over the top.
    pub centre: f64,
    /// Its inertia about its centre.
    pub inertia: f64,
}

/// The undamped first swing with the load on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mounted {
    /// Frequencies, slowest first.
    pub hertz: [f64; 2],
    /// Shares of the first one's energy: ground, joint, column, mount.
    pub shares: [f64; 4],
}

/// A swing of the bare pier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pole {
    /// Frequency of the damped swing.
    pub hertz: f64,
    /// Damping over critical.
    pub ratio: f64,
    /// How loud it is beside the others.
    pub loudness: f64,
}

/// One plane, reduced.
#[derive(Debug, Clone)]
pub struct Reduced {
    /// The plan's own rig.
    pub rig: Rig,
    mass: SMatrix<f64, ALL, ALL>,
    column: SMatrix<f64, 3, 3>,
    top_move: SVector<f64, ALL>,
    top_turn: SVector<f64, ALL>,
}

impl Reduced {
    /// Reduces a rig. None where a stiffness is not positive.
    pub fn of(rig: &Rig) -> Option<Self> {
        let bare = Rig {
            load: 0.0,
            inertia: 0.0,
            ..*rig
        };
        let stiffness = modes::stiffness(&bare);
        let carry = modes::carry(&bare);
        let mass = carry.transpose() * modes::body_mass(&bare) * &carry;
        let free = stiffness.nrows();
        let (first, count) = (3, free - 4);
        let of_column = stiffness.view((first, first), (count, count)).into_owned();
        let mass_of_column = mass.view((first, first), (count, count)).into_owned();
        let held = of_column.clone().cholesky()?;
        let unit = |i: usize| DMatrix::from_fn(count, 1, |row, _| if row == i { 1.0 } else { 0.0 });
        // The top's movement and turn are the column's last two.
        let (force, moment) = (held.solve(&unit(count - 2)), held.solve(&unit(count - 1)));
        let mut slowest = force.clone();
        for _ in 0..12 {
            slowest = held.solve(&(&mass_of_column * &slowest));
            slowest /= slowest.norm();
        }
        let mut shapes = [force, moment, slowest];
        for i in 0..3 {
            for _ in 0..2 {
                for j in 0..i {
                    let part = (shapes[j].transpose() * &of_column * &shapes[i])[(0, 0)];
                    let other = shapes[j].clone();
                    shapes[i] -= other * part;
                }
            }
            let energy = (shapes[i].transpose() * &of_column * &shapes[i])[(0, 0)];
            if !(energy > 0.0 && energy.is_finite()) {
                return None;
            }
            shapes[i] /= energy.sqrt();
        }
        let mut basis = DMatrix::zeros(free, ALL);
        for i in 0..3 {
            basis[(i, i)] = 1.0;
            for row in 0..count {
                basis[(first + row, 3 + i)] = shapes[i][(row, 0)];
            }
        }
        basis[(free - 1, ALL - 1)] = 1.0;
        let small = basis.transpose() * mass * &basis;
        let stiff = basis.transpose() * stiffness * &basis;
        let bodies = carry * basis;
        let top = bodies.nrows() - 4;
        Some(Self {
            rig: *rig,
            mass: SMatrix::from_fn(|i, j| small[(i, j)]),
            column: SMatrix::from_fn(|i, j| stiff[(3 + i, 3 + j)]),
            top_move: SVector::from_fn(|i, _| bodies[(top, i)]),
            top_turn: SVector::from_fn(|i, _| bodies[(top + 1, i)]),
        })
    }

    fn stiffness(&self, trial: &Trial, ground: Springs) -> SMatrix<f64, ALL, ALL> {
        let mut k = SMatrix::zeros();
        let Springs {
            sway,
            coupling,
            rocking,
            ..
        } = ground;
        (k[(0, 0)], k[(0, 1)], k[(1, 0)], k[(1, 1)]) = (sway, coupling, coupling, rocking);
        k[(2, 2)] = trial.joint;
        for i in 0..3 {
            for j in 0..3 {
                k[(3 + i, 3 + j)] = trial.bending_ratio * self.column[(i, j)];
            }
        }
        k[(ALL - 1, ALL - 1)] = trial.mount;
        k
    }

    /// The first two undamped swings with the load on the mount.
    pub fn mounted(&self, trial: &Trial) -> Option<Mounted> {
        let k = self.stiffness(trial, trial.springs);
        let mut m = self.mass;
        let mut along = self.top_move + self.top_turn * trial.centre;
        along[ALL - 1] = trial.centre;
        let mut turn = self.top_turn;
        turn[ALL - 1] = 1.0;
        m += along * along.transpose() * trial.load + turn * turn.transpose() * trial.inertia;
        let lower = k.cholesky()?.l();
        let half = lower.solve_lower_triangular(&m)?;
        let flexible = lower.solve_lower_triangular(&half.transpose())?;
        let eigen = SymmetricEigen::try_new((flexible + flexible.transpose()) * 0.5, 1e-13, 200)?;
        let mut order: [usize; ALL] = std::array::from_fn(|i| i);
        order.sort_by(|a, b| eigen.eigenvalues[*b].total_cmp(&eigen.eigenvalues[*a]));
        let [first, second] = [eigen.eigenvalues[order[0]], eigen.eigenvalues[order[1]]];
        if !(first > 0.0 && second > 0.0) {
            return None;
        }
        let shape = lower
            .transpose()
            .solve_upper_triangular(&eigen.eigenvectors.column(order[0]).into_owned())?;
        // The shape's strain energy is one half: shares are its parts times two.
        let Springs {
            sway,
            coupling,
            rocking,
            ..
        } = trial.springs;
        let ground = sway * shape[0] * shape[0]
            + 2.0 * coupling * shape[0] * shape[1]
            + rocking * shape[1] * shape[1];
        let joint = trial.joint * shape[2] * shape[2];
        let mount = trial.mount * shape[ALL - 1] * shape[ALL - 1];
        let shares = [
            ground,
            joint,
            (1.0 - ground - joint - mount).max(0.0),
            mount,
        ];
        let hertz = [first, second].map(|value| 1.0 / (TAU * value.sqrt()));
        (hertz[0].is_finite() && shares.iter().all(|share| share.is_finite()))
            .then_some(Mounted { hertz, shares })
    }

    /// What is heard of the bare pier after a soft blow at its top: the loudest swing, and another that is nearly as loud.
    pub fn heard(&self, trial: &Trial, rounds: usize) -> Vec<Pole> {
        let mut hertz = FIRST_HZ;
        let mut found = Vec::new();
        for _ in 0..rounds.max(1) {
            found = self.poles(trial, hertz).unwrap_or_default();
            match found.first() {
                Some(loudest) => hertz = loudest.hertz,
                None => break,
            }
        }
        let most = found.first().map_or(0.0, |pole| pole.loudness);
        found.retain(|pole| pole.loudness >= BESIDE * most);
        found.truncate(2);
        found
    }

    /// All swings of the bare pier with the ground's dashpots at a frequency, the loudest first.
    fn poles(&self, trial: &Trial, at_hz: f64) -> Option<Vec<Pole>> {
        let omega = TAU * at_hz;
        let block = self.rig.radiation?;
        let block = dashpot::Block {
            shear_speed: block.shear_speed * trial.speed_ratio,
            contact_from: 0.0,
            contact_to: trial.contact * (block.contact_to.max(trial.springs.depth)),
            ..block
        };
        let moving = Rig {
            radiation: Some(block),
            ..self.rig
        }
        .ground_dynamic_ratio(omega)
        .max(0.05);
        let Springs {
            sway,
            coupling,
            rocking,
            depth,
        } = trial.springs;
        let ground = Springs {
            sway,
            coupling,
            rocking: rocking * moving,
            depth,
        };
        let full = self.stiffness(trial, ground);
        let k: SMatrix<f64, BARE, BARE> = full.fixed_view::<BARE, BARE>(0, 0).into_owned();
        let mut m: SMatrix<f64, BARE, BARE> = self.mass.fixed_view::<BARE, BARE>(0, 0).into_owned();
        let top: SVector<f64, BARE> = self.top_move.fixed_rows::<BARE>(0).into_owned();
        m += top * top.transpose() * TELEPHONE_KG;
        let pots = block.dashpots(omega);
        let mut c = k * (2.0 * MATERIAL / omega);
        c[(0, 0)] += pots.sway;
        c[(0, 1)] += pots.coupling;
        c[(1, 0)] += pots.coupling;
        c[(1, 1)] += pots.rocking;
        let inverse = m.try_inverse()?;
        let (by_place, by_speed) = (inverse * k, inverse * c);
        let mut state = DMatrix::zeros(2 * BARE, 2 * BARE);
        for i in 0..BARE {
            state[(i, BARE + i)] = 1.0;
            for j in 0..BARE {
                state[(BARE + i, j)] = -by_place[(i, j)];
                state[(BARE + i, BARE + j)] = -by_speed[(i, j)];
            }
        }
        if state.iter().any(|value| !value.is_finite()) {
            return None;
        }
        let values = Schur::try_new(state, 1e-12, 600)?.complex_eigenvalues();
        let complex =
            |matrix: &SMatrix<f64, BARE, BARE>| matrix.map(|value| Complex::new(value, 0.0));
        let (k, c, m) = (complex(&k), complex(&c), complex(&m));
        let blow = top.map(|value| Complex::new(value, 0.0));
        let mut found: Vec<Pole> = values
            .iter()
            .filter(|value| value.im > 0.0 && value.re < 0.0 && HEARD.contains(&(value.im / TAU)))
            .filter_map(|value| {
                let away = Complex::new(1e-6 * value.norm(), 0.0);
                let near = value + away;
                let moved = (m * (near * near) + c * near + k).lu().solve(&blow)?;
                let residue = *value * *value * blow.dot(&moved) * away;
                let hertz = value.im / TAU;
                let loudness = residue.norm_sqr() / (2.0 * value.re.abs())
                    * (-(hertz / SOFT_BLOW_HZ).powi(2)).exp();
                loudness.is_finite().then_some(Pole {
                    hertz,
                    ratio: -value.re / value.norm(),
                    loudness,
                })
            })
            .collect();
        found.sort_by(|a, b| b.loudness.total_cmp(&a.loudness));
        Some(found)
    }

    /// Turn of the load in radians under a steady force at a height above ground, whose column's foot stands at `foot` over
    /// the base and the base at `depth` below ground.
    pub fn pulled(&self, trial: &Trial, height: f64, force: f64) -> f64 {
        let Springs {
            sway,
            coupling,
            rocking,
            depth,
        } = trial.springs;
        let rig = &self.rig;
        let over_base = height + depth;
        let over_foot = (over_base - rig.foot).max(0.0);
        let over_top = (over_foot - rig.height).max(0.0);
        let along = over_foot.min(rig.height);
        let bending = rig.bending * trial.bending_ratio;
        let determinant = sway * rocking - coupling * coupling;
        let block = force * (sway * over_base - coupling) / determinant;
        let joint = force * over_foot / trial.joint;
        let column = force * (0.5 * along * along + over_top * along) / bending;
        let mount = force * over_top / trial.mount;
        block + joint + column + mount
    }
}
