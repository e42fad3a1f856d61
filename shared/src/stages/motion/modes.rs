//! Natural modes of a rig: frequencies, damping, shapes.
//!
//! Coordinates are the block's sway and turn, and each part's movement relative to the part below it, so that a spring
//! however stiff stands alone on the diagonal and takes no digits from the others. The eigenvalues wanted are the
//! largest of the flexibility, which are the most exact ones.

use nalgebra::{Cholesky, DMatrix, DVector, SymmetricEigen};

use crate::rules::mechanics::beam_element::Element;
use crate::stages::motion::rig::Rig;

/// Pieces of the column.
const ELEMENTS: usize = 4;
/// Nodes of the column, foot and top among them.
const NODES: usize = ELEMENTS + 1;
/// Relative coordinates: sway, turn, joint, two a node above the foot, mount.
const FREE: usize = 3 + 2 * ELEMENTS + 1;
/// Points that have mass: block, nodes, load; each moves and turns.
const BODIES: usize = 1 + NODES + 1;
/// Largest damping ratio that still swings.
const MOST_DAMPING: f64 = 0.9;

/// One natural mode; its shape is scaled to a modal mass of one.
#[derive(Debug, Clone, PartialEq)]
pub struct Mode {
    /// Circular frequency, rad/s.
    pub omega: f64,
    /// Damping over critical.
    pub damping_ratio: f64,
    /// Sway of the base: what a force that comes through the ground works on.
    pub base: f64,
    /// Turn of the block: what a moment that comes through the ground works on.
    pub block_turn: f64,
    /// Turn of the pier's top.
    pub top_turn: f64,
    /// Turn of the load.
    pub load_turn: f64,
    /// Sideways movement of the load's centre.
    pub load_move: f64,
    /// Sideways movement of the column's middle.
    pub middle_move: f64,
    /// Shares of the strain energy: ground, joint, column, mount.
    pub shares: [f64; 4],
    /// Dynamic over static stiffness of the ground at this frequency.
    pub ground_dynamic_ratio: f64,
    /// Height over the base and sideways movement, from the base up.
    pub shape: Vec<[f64; 2]>,
}

impl Mode {
    /// Circular frequency with the ground as stiff as it is at this frequency, by Rayleigh's quotient: its share of the
    /// strain energy shrinks by that factor.
    pub fn omega_in_moving_ground(&self) -> f64 {
        self.omega
            * (1.0 - self.shares[0] * (1.0 - self.ground_dynamic_ratio))
                .max(0.0)
                .sqrt()
    }
}

/// Modes of a rig, slowest first; empty only where a stiffness is not positive.
pub fn find(rig: &Rig, stated_damping: Option<f64>) -> Vec<Mode> {
    let stiffness = stiffness(rig);
    let carry = carry(rig);
    let mass = carry.transpose() * body_mass(rig) * &carry;
    let Some(cholesky) = Cholesky::new(stiffness.clone()) else {
        return Vec::new();
    };
    let lower = cholesky.l();
    let Some(half) = lower.solve_lower_triangular(&mass) else {
        return Vec::new();
    };
    let Some(flexible) = lower.solve_lower_triangular(&half.transpose()) else {
        return Vec::new();
    };
    let eigen = SymmetricEigen::new((&flexible + flexible.transpose()) * 0.5);
    let upper = lower.transpose();
    let mut order: Vec<usize> = (0..FREE)
        .filter(|&i| eigen.eigenvalues[i] > 1e-12 * eigen.eigenvalues.max())
        .collect();
    order.sort_by(|&a, &b| eigen.eigenvalues[b].total_cmp(&eigen.eigenvalues[a]));
    order
        .into_iter()
        .filter_map(|i| {
            let value = eigen.eigenvalues[i];
            let relative = upper
                .solve_upper_triangular(&eigen.eigenvectors.column(i).clone_owned())?
                / value.sqrt();
            Some(mode(
                rig,
                1.0 / value.sqrt(),
                &relative,
                &(&carry * &relative),
                stated_damping,
            ))
        })
        .collect()
}

/// Stiffness in relative coordinates: each part stands alone.
pub(crate) fn stiffness(rig: &Rig) -> DMatrix<f64> {
    let mut k = DMatrix::zeros(FREE, FREE);
    let [sway, coupling, rocking] = rig.ground;
    k[(0, 0)] = sway;
    k[(0, 1)] = coupling;
    k[(1, 0)] = coupling;
    k[(1, 1)] = rocking;
    k[(2, 2)] = rig.joint;
    let piece = element(rig).stiffness();
    for e in 0..ELEMENTS {
        for (i, row) in piece.iter().enumerate() {
            for (j, value) in row.iter().enumerate() {
                // The foot is held in its own frame: the first two rows of the lowest piece fall away.
                if let (Some(a), Some(b)) = (node_place(2 * e + i), node_place(2 * e + j)) {
                    k[(a, b)] += value;
                }
            }
        }
    }
    k[(FREE - 1, FREE - 1)] = rig.mount;
    k
}

fn node_place(along: usize) -> Option<usize> {
    (along >= 2).then(|| 1 + along)
}

/// From relative coordinates to the movement and turn of each body.
pub(crate) fn carry(rig: &Rig) -> DMatrix<f64> {
    let mut t = DMatrix::zeros(2 * BODIES, FREE);
    t[(0, 0)] = 1.0;
    t[(0, 1)] = rig.block_centre;
    t[(1, 1)] = 1.0;
    for node in 0..NODES {
        let (row, x) = (2 + 2 * node, rig.height * node as f64 / ELEMENTS as f64);
        t[(row, 0)] = 1.0;
        t[(row, 1)] = rig.foot + x;
        t[(row, 2)] = x;
        t[(row + 1, 1)] = 1.0;
        t[(row + 1, 2)] = 1.0;
        if let Some(own) = node_place(2 * node) {
            t[(row, own)] = 1.0;
            t[(row + 1, own + 1)] = 1.0;
        }
    }
    let (top, load) = (2 * NODES, 2 * NODES + 2);
    for column in 0..FREE {
        t[(load + 1, column)] = t[(top + 1, column)];
        t[(load, column)] = t[(top, column)] + rig.centre * t[(top + 1, column)];
    }
    t[(load, FREE - 1)] = rig.centre;
    t[(load + 1, FREE - 1)] = 1.0;
    t
}

/// Mass of the bodies, the column's consistent.
pub(crate) fn body_mass(rig: &Rig) -> DMatrix<f64> {
    let mut m = DMatrix::zeros(2 * BODIES, 2 * BODIES);
    m[(0, 0)] = rig.block_mass;
    m[(1, 1)] = rig.block_inertia;
    let piece = element(rig).mass();
    for e in 0..ELEMENTS {
        for (i, row) in piece.iter().enumerate() {
            for (j, value) in row.iter().enumerate() {
                m[(2 + 2 * e + i, 2 + 2 * e + j)] += value;
            }
        }
    }
    m[(2, 2)] += rig.base_plate;
    m[(2 * NODES, 2 * NODES)] += rig.top_plate;
    m[(2 * NODES + 2, 2 * NODES + 2)] = rig.load;
    m[(2 * NODES + 3, 2 * NODES + 3)] = rig.inertia;
    m
}

fn element(rig: &Rig) -> Element {
    Element {
        length: rig.height / ELEMENTS as f64,
        bending: rig.bending,
        shear: rig.shear,
        mass: rig.shaft / rig.height,
        gyration: rig.gyration,
    }
}

fn mode(
    rig: &Rig,
    omega: f64,
    relative: &DVector<f64>,
    bodies: &DVector<f64>,
    stated: Option<f64>,
) -> Mode {
    let shares = shares(rig, omega, relative);
    let middle = 2 + ELEMENTS;
    let mut shape = vec![[0.0, relative[0]]];
    shape.extend((0..NODES).map(|n| {
        [
            rig.foot + rig.height * n as f64 / ELEMENTS as f64,
            bodies[2 + 2 * n],
        ]
    }));
    shape.push([rig.foot + rig.height + rig.centre, bodies[2 * NODES + 2]]);
    Mode {
        omega,
        damping_ratio: stated
            .unwrap_or_else(|| damping(rig, omega, relative, shares))
            .min(MOST_DAMPING),
        base: relative[0],
        block_turn: relative[1],
        top_turn: bodies[2 * NODES + 1],
        load_turn: bodies[2 * NODES + 3],
        load_move: bodies[2 * NODES + 2],
        middle_move: bodies[middle],
        shares,
        ground_dynamic_ratio: rig.ground_dynamic_ratio(omega),
        shape,
    }
}

/// Where the strain energy sits: ground, joint, column, mount.
fn shares(rig: &Rig, omega: f64, relative: &DVector<f64>) -> [f64; 4] {
    let (u, turn) = (relative[0], relative[1]);
    let [sway, coupling, rocking] = rig.ground;
    // The shape has a modal mass of one, so twice its strain energy is ω².
    let all = omega * omega;
    let ground = (sway * u * u + 2.0 * coupling * u * turn + rocking * turn * turn) / all;
    let joint = rig.joint * relative[2].powi(2) / all;
    let mount = rig.mount * relative[FREE - 1].powi(2) / all;
    [
        ground,
        joint,
        (1.0 - ground - joint - mount).max(0.0),
        mount,
    ]
}

/// Material damping by the parts' shares of the energy, and what the ground carries off.
fn damping(
    rig: &Rig,
    omega: f64,
    relative: &DVector<f64>,
    [ground, joint, column, mount]: [f64; 4],
) -> f64 {
    let losses = rig.losses;
    let material = losses.ground * ground
        + losses.joint * joint
        + losses.column * column
        + losses.mount * mount;
    let radiated = rig.radiation.map_or(0.0, |block| {
        let pots = block.dashpots(omega);
        let (u, turn) = (relative[0], relative[1]);
        (pots.sway * u * u + 2.0 * pots.coupling * u * turn + pots.rocking * turn * turn)
            / (2.0 * omega)
    });
    material + radiated
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::stages::motion::rig::Losses;

    /// The basis' metre cube with CHS 219.1×8, 1.2 m: everything below the column held.
    fn held() -> Rig {
        Rig {
            ground: [1e15, 0.0, 1e15],
            radiation: None,
            block_mass: 2400.0,
            block_centre: 0.5,
            block_inertia: 400.0,
            foot: 1.0,
            joint: 1e15,
            base_plate: 0.0,
            height: 1.2,
            bending: 6.215e6,
            shear: 1e14,
            shaft: 41.65 * 1.2,
            gyration: 0.0,
            top_plate: 0.0,
            mount: 1e15,
            load: 60.0,
            centre: 0.25,
            inertia: 4.0,
            losses: Losses {
                ground: 0.02,
                joint: 0.005,
                column: 0.002,
                mount: 0.01,
            },
        }
    }

    fn hertz(rig: &Rig, mode: usize) -> f64 {
        find(rig, None)[mode].omega / (2.0 * PI)
    }

    /// βL = 1.8751: 150.119 Hz for the bare cantilever.
    #[test]
    fn a_bare_cantilever_has_its_exact_frequency() {
        let bare = Rig {
            load: 0.0,
            inertia: 0.0,
            centre: 0.0,
            ..held()
        };
        assert!(
            (hertz(&bare, 0) - 150.119).abs() < 0.02,
            "{}",
            hertz(&bare, 0)
        );
    }

    /// Basis, computed from the exact roots: 61.68 Hz with a point mass; 47.03, 344.7 and 1182 Hz with offset and inertia.
    #[test]
    fn a_tip_mass_has_its_exact_frequencies() {
        assert!(
            (hertz(
                &Rig {
                    centre: 0.0,
                    inertia: 0.0,
                    ..held()
                },
                0
            ) - 61.68)
                .abs()
                < 0.01
        );
        for (mode, expected, tolerance) in [(0, 47.03, 0.01), (1, 344.7, 0.3), (2, 1182.0, 6.0)] {
            assert!(
                (hertz(&held(), mode) - expected).abs() < tolerance,
                "{mode}: {}",
                hertz(&held(), mode)
            );
        }
    }

    /// Basis, computed: 39.42, 52.2 and 107 Hz on the embedded block by Pais & Kausel; 17.05, 41.8, 72.5 without side contact.
    #[test]
    fn the_block_on_its_ground_has_the_frequencies_of_the_basis() {
        let embedded = Rig {
            ground: [229.3e6, 229.3e6 / 3.0, 178.6e6],
            ..held()
        };
        for (mode, expected) in [(0, 39.42), (1, 52.2), (2, 107.0)] {
            assert!(
                (hertz(&embedded, mode) / expected - 1.0).abs() < 0.005,
                "{mode}: {}",
                hertz(&embedded, mode)
            );
        }
        let bare = Rig {
            ground: [83.64e6, 0.0, 23.08e6],
            ..held()
        };
        assert!(
            (hertz(&bare, 0) / 17.05 - 1.0).abs() < 0.05,
            "{}",
            hertz(&bare, 0)
        );
    }

    /// A rigid body on a rocking spring alone: ω² = K/(I + m h²).
    #[test]
    fn a_rigid_pier_rocks_as_one_body() {
        let rig = Rig {
            ground: [1e15, 0.0, 30e6],
            bending: 1e13,
            ..held()
        };
        let about_base = 400.0
            + 2400.0 * 0.25
            + 41.65 * 1.2 * (1.6f64.powi(2) + 1.2f64.powi(2) / 12.0)
            + 4.0
            + 60.0 * 2.45f64.powi(2);
        assert!((hertz(&rig, 0) - (30e6 / about_base).sqrt() / (2.0 * PI)).abs() < 1e-3);
    }

    #[test]
    fn shares_of_the_energy_are_whole_and_shapes_scaled() {
        let rig = Rig {
            ground: [229.3e6, 229.3e6 / 3.0, 178.6e6],
            joint: 2e7,
            mount: 2e5,
            ..held()
        };
        let modes = find(&rig, None);
        // Sway and rocking of the block, and the column with the mount.
        assert!(modes.len() >= 3, "{}", modes.len());
        for mode in modes {
            assert!((mode.shares.iter().sum::<f64>() - 1.0).abs() < 1e-6);
            assert!(mode.damping_ratio > 0.0 && mode.damping_ratio < 1.0);
        }
    }
}
