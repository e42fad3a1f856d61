//! Ground that is not even: factors on the solution for even ground, the same for stiffness, modes, stands and map.
//!
//! Each entry of the matrix has its factor, and a weight on the ground leans the block `t` times as far as in even ground.

use super::layers::Layer;
use crate::halfspace::{Solved, on_block};
use crate::units::Spread;

/// Factors of one ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factors {
    /// On the diagonal of the stiffness, in the order of the axes.
    pub stiffness_ratio: [f64; 6],
    /// On the coupling of x with the turn about y, and of y with the turn about x.
    pub coupling_ratio: [f64; 2],
    /// On the lean under a weight on the ground.
    pub lean_ratio: f64,
}

impl Factors {
    /// Even ground.
    pub const EVEN: Self = Self {
        stiffness_ratio: [1.0; 6],
        coupling_ratio: [1.0; 2],
        lean_ratio: 1.0,
    };

    /// Factor on an entry of the matrix.
    pub fn entry_ratio(&self, row: usize, column: usize) -> f64 {
        match (row, column) {
            (0, 4) | (4, 0) => self.coupling_ratio[0],
            (1, 3) | (3, 1) => self.coupling_ratio[1],
            (i, j) if i == j => self.stiffness_ratio[i],
            _ => 1.0,
        }
    }

    /// What takes a load that moves the block in even ground to the one that moves it here, in the plane of a
    /// translation and a turn: `t K' F`.
    pub fn carried(&self, solved: &Solved, [i, j]: [usize; 2]) -> [[f64; 2]; 2] {
        if *self == Self::EVEN {
            return [[1.0, 0.0], [0.0, 1.0]];
        }
        let (k, f) = (&solved.stiffness_over_g, &solved.flexibility_times_g);
        [i, j].map(|row| {
            [i, j].map(|column| {
                let sum: f64 = [i, j]
                    .into_iter()
                    .map(|m| self.entry_ratio(row, m) * k[row][m] * f[m][column])
                    .sum();
                self.lean_ratio * sum
            })
        })
    }

    /// The block's six motions times G under a unit weight at a place, on the ground or on the block.
    pub fn under_weight(&self, solved: &Solved, x_m: f64, y_m: f64) -> [f64; 6] {
        let even = solved.under_weight(x_m, y_m);
        if *self == Self::EVEN {
            return even;
        }
        if !on_block(&solved.shape, x_m, y_m) {
            return even.map(|motion| self.lean_ratio * motion);
        }
        // On the block no ground lies between the weight and it: the moments turn it against the stiffness as it is here.
        let k = |row: usize, column: usize| {
            self.entry_ratio(row, column) * solved.stiffness_over_g[row][column]
        };
        let turned = |i: usize, j: usize, moment: f64| {
            let determinant = k(i, i) * k(j, j) - k(i, j) * k(i, j);
            [
                -k(i, j) * moment / determinant,
                k(i, i) * moment / determinant,
            ]
        };
        let ([x, about_y], [y, about_x]) = (turned(0, 4, x_m), turned(1, 3, -y_m));
        [x, y, -1.0 / k(2, 2), about_x, about_y, 0.0]
    }

    fn and(self, other: Self) -> Self {
        Self {
            stiffness_ratio: std::array::from_fn(|axis| {
                self.stiffness_ratio[axis] * other.stiffness_ratio[axis]
            }),
            coupling_ratio: std::array::from_fn(|plane| {
                self.coupling_ratio[plane] * other.coupling_ratio[plane]
            }),
            lean_ratio: self.lean_ratio * other.lean_ratio,
        }
    }
}

/// All layers together, in the softest ground thought likely, in typical ground and in the stiffest.
pub fn together(layers: &[Layer]) -> Spread<Factors> {
    let one = |pick: fn(Spread<f64>) -> f64| {
        layers.iter().fold(Factors::EVEN, |all, layer| {
            all.and(Factors {
                stiffness_ratio: layer.stiffness.map(pick),
                coupling_ratio: layer.coupling.map(pick),
                lean_ratio: pick(layer.lean),
            })
        })
    };
    Spread {
        low: one(|s| s.low),
        typical: one(|s| s.typical),
        high: one(|s| s.high),
    }
}
