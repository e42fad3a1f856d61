//! The ground's springs and the lean under a weight by how much of the sides is held, from a few solutions of the half-space
//! and a smooth curve between them.

use std::sync::Arc;

use crate::halfspace::{self, Shape, Shelf, Solved};
use crate::rules::monotone::Monotone;
use crate::stages::floor::{Floor, Footprint, footprints};
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::motion::rig::Axis;

/// Springs of one plane about the base's centre, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Springs {
    /// Sway.
    pub sway: f64,
    /// Coupling.
    pub coupling: f64,
    /// Rocking.
    pub rocking: f64,
    /// Depth of the base.
    pub depth: f64,
}

/// Shares of the sides that are solved.
const SOLVED: [f64; 5] = [0.0, 0.25, 0.5, 0.75, 1.0];

/// Springs and leans over the modulus by the share of the sides.
#[derive(Debug, Clone)]
pub struct Contact {
    planes: [[Monotone; 3]; 2],
    solved: Vec<Arc<Solved>>,
    shares: Vec<f64>,
    depth: f64,
    /// The share that the plan's typical contact comes to.
    pub typical: f64,
}

impl Contact {
    /// Solves the shape with its sides held to different heights, and sets it to the plan's own typical springs. None where
    /// there is no solution.
    pub fn find(
        stiffness: &GroundStiffness,
        springs: [[f64; 3]; 2],
        modulus: f64,
        shelf: &dyn Shelf,
    ) -> Option<Self> {
        let shape = stiffness.pure.as_deref()?.shape;
        let depth = shape.depth_m;
        let (mut solved, mut shares) = (Vec::new(), Vec::new());
        for share in SOLVED {
            // A block that stands on the ground has no sides in it.
            if depth <= 0.0 && share > 0.0 {
                continue;
            }
            let held = Shape {
                contact_from_m: depth * (1.0 - share),
                contact_to_m: depth,
                ..shape
            };
            solved.push(halfspace::solved(&held, shelf).ok()?);
            shares.push(share);
        }
        let entry = |solved: &Solved, plane: usize, which: usize| {
            let k = &solved.stiffness_over_g;
            match (plane, which) {
                (0, 0) => k[0][0],
                (0, 1) => k[0][4],
                (0, _) => k[4][4],
                (_, 0) => k[1][1],
                (_, 1) => -k[1][3],
                (..) => k[3][3],
            }
        };
        let typical = share_of(&solved, &shares, springs[0][2] / modulus, |solved| {
            entry(solved, 0, 2)
        });
        let planes = [0, 1].map(|plane| {
            [0, 1, 2].map(|which| {
                let points: Vec<(f64, f64)> = shares
                    .iter()
                    .zip(&solved)
                    .map(|(share, solved)| (*share, entry(solved, plane, which)))
                    .collect();
                let curve = Monotone::new(points.clone());
                // What layers and a part of the grip do at the typical contact, they do at another.
                let now = curve.at(typical) * modulus;
                let stated: f64 = springs[plane][which];
                let factor = if now.abs() > 1e-9 * springs[plane][0] && stated / now > 0.0 {
                    stated / now
                } else {
                    1.0
                };
                Monotone::new(
                    points
                        .into_iter()
                        .map(|(share, value)| (share, value * factor))
                        .collect(),
                )
            })
        });
        Some(Self {
            planes,
            solved,
            shares,
            depth,
            typical,
        })
    }

    /// Depth of the base.
    pub fn depth(&self) -> f64 {
        self.depth
    }

    /// What was solved.
    pub(super) fn solved(&self) -> &[Arc<Solved>] {
        &self.solved
    }

    /// Springs of a plane.
    pub fn springs(&self, axis: Axis, modulus: f64, share: f64) -> Springs {
        let plane = &self.planes[usize::from(axis == Axis::Y)];
        let at = |which: usize| plane[which].at(share) * modulus;
        let (sway, rocking) = (at(0), at(2));
        // A curve between two solutions keeps the ground's work positive.
        let most = 0.999 * (sway * rocking).max(0.0).sqrt();
        Springs {
            sway,
            coupling: at(1).clamp(-most, most),
            rocking,
            depth: self.depth,
        }
    }

    /// The block's turn times the modulus under a newton at a place on the floor, by the share: towards east and north.
    pub fn lean(&self, floor: &Floor, x_m: f64, y_m: f64, lean_ratio: f64) -> Lean {
        self.lean_of(&footprints(floor, x_m, y_m), lean_ratio)
    }

    /// The same where it reaches the ground in these places.
    pub fn lean_of(&self, feet: &[Footprint], lean_ratio: f64) -> Lean {
        let turn = |solved: &Solved| -> [f64; 2] {
            let mut sum = [0.0; 2];
            for foot in feet {
                let motion = solved.under_weight(foot.x_m, foot.y_m);
                sum[0] += foot.share_ratio * motion[4] * lean_ratio;
                sum[1] -= foot.share_ratio * motion[3] * lean_ratio;
            }
            sum
        };
        let turns: Vec<[f64; 2]> = self.solved.iter().map(|solved| turn(solved)).collect();
        let curve = |part: usize| {
            Monotone::new(
                self.shares
                    .iter()
                    .zip(&turns)
                    .map(|(share, turn)| (*share, turn[part]))
                    .collect(),
            )
        };
        Lean {
            east: curve(0),
            north: curve(1),
        }
    }
}

/// The lean under a newton, times the modulus.
#[derive(Debug, Clone)]
pub struct Lean {
    east: Monotone,
    north: Monotone,
}

impl Lean {
    /// Towards east and north.
    pub fn at(&self, share: f64) -> [f64; 2] {
        [self.east.at(share), self.north.at(share)]
    }
}

/// The share of the sides that gives this rocking stiffness over the modulus.
fn share_of(
    solved: &[Arc<Solved>],
    shares: &[f64],
    rocking: f64,
    of: impl Fn(&Solved) -> f64,
) -> f64 {
    let curve = Monotone::new(
        shares
            .iter()
            .zip(solved)
            .map(|(share, solved)| (*share, of(solved)))
            .collect(),
    );
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if curve.at(middle) < rocking {
            low = middle
        } else {
            high = middle
        }
    }
    (0.5_f64 * (low + high)).clamp(0.02, 0.98)
}
