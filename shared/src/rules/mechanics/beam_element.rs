//! Stiffness and consistent mass of a straight beam element with shear.
//!
//! Przemieniecki 1968, Theory of Matrix Structural Analysis, sections 5.6 and 11.5.

use crate::source::Source;

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory(
    "Przemieniecki, Theory of Matrix Structural Analysis",
    "1968",
    "5.6 and 11.5",
);

/// A matrix over deflection and turn at the lower and the upper end.
pub type Four = [[f64; 4]; 4];

/// A piece of a uniform beam, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Element {
    /// Length, m.
    pub length: f64,
    /// E·I, N m².
    pub bending: f64,
    /// κ·G·A, N.
    pub shear: f64,
    /// Mass of a metre, kg/m.
    pub mass: f64,
    /// Radius of gyration of the section, m.
    pub gyration: f64,
}

impl Element {
    /// Ratio of shear to bending flexibility, Φ = 12 EI/(κGA L²).
    ///
    /// # Source
    /// Przemieniecki 1968, 5.6.
    pub fn shear_ratio(&self) -> f64 {
        12.0 * self.bending / (self.shear * self.length * self.length)
    }

    /// Stiffness; exact for loads at the ends.
    ///
    /// # Source
    /// Przemieniecki 1968, 5.6.
    /// # Valid for
    /// Small turns; no axial force.
    pub fn stiffness(&self) -> Four {
        let (l, phi) = (self.length, self.shear_ratio());
        let c = self.bending / (l.powi(3) * (1.0 + phi));
        let (near, far) = ((4.0 + phi) * l * l, (2.0 - phi) * l * l);
        [
            [12.0, 6.0 * l, -12.0, 6.0 * l],
            [6.0 * l, near, -6.0 * l, far],
            [-12.0, -6.0 * l, 12.0, -6.0 * l],
            [6.0 * l, far, -6.0 * l, near],
        ]
        .map(|row| row.map(|value| c * value))
    }

    /// Consistent mass: translation and rotary inertia.
    ///
    /// # Source
    /// Przemieniecki 1968, 11.5.
    /// # Valid for
    /// Waves longer than some two elements.
    pub fn mass(&self) -> Four {
        let (l, p) = (self.length, self.shear_ratio());
        let round = (1.0 + p).powi(2);
        let m = self.mass * l / round;
        let r = self.mass * self.gyration.powi(2) / (l * round);
        let (p2, l2) = (p * p, l * l);
        let own = m * (13.0 / 35.0 + 0.7 * p + p2 / 3.0) + 1.2 * r;
        let other = m * (9.0 / 70.0 + 0.3 * p + p2 / 6.0) - 1.2 * r;
        let turn = r * (0.1 - 0.5 * p) * l;
        let own_turn = m * (11.0 / 210.0 + 11.0 * p / 120.0 + p2 / 24.0) * l + turn;
        let other_turn = m * (13.0 / 420.0 + 0.075 * p + p2 / 24.0) * l - turn;
        let near = m * (1.0 / 105.0 + p / 60.0 + p2 / 120.0) * l2
            + r * (2.0 / 15.0 + p / 6.0 + p2 / 3.0) * l2;
        let far = -m * (1.0 / 140.0 + p / 60.0 + p2 / 120.0) * l2
            + r * (-1.0 / 30.0 - p / 6.0 + p2 / 6.0) * l2;
        [
            [own, own_turn, other, -other_turn],
            [own_turn, near, other_turn, far],
            [other, other_turn, own, -own_turn],
            [-other_turn, far, -own_turn, near],
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn element() -> Element {
        Element {
            length: 0.7,
            bending: 5e6,
            shear: 2e8,
            mass: 40.0,
            gyration: 0.07,
        }
    }

    #[test]
    fn a_rigid_motion_meets_no_stiffness_and_its_own_mass() {
        let (k, m) = (element().stiffness(), element().mass());
        let turn = [0.0, 1.0, 0.7, 1.0];
        for row in k {
            let force: f64 = row.iter().zip(turn).map(|(a, b)| a * b).sum();
            assert!(force.abs() < 1e-6);
        }
        let along: f64 = (0..2)
            .flat_map(|i| (0..2).map(move |j| m[2 * i][2 * j]))
            .sum();
        assert!((along - 28.0).abs() < 1e-9);
        let energy: f64 = (0..4)
            .flat_map(|i| (0..4).map(move |j| turn[i] * m[i][j] * turn[j]))
            .sum();
        let exact = 40.0 * (0.7f64.powi(3) / 3.0 + 0.07 * 0.07 * 0.7);
        assert!((energy - exact).abs() < 1e-9, "{energy} {exact}");
    }

    #[test]
    fn an_end_force_bends_it_as_a_cantilever() {
        let k = element().stiffness();
        let det = k[2][2] * k[3][3] - k[2][3] * k[3][2];
        let flexibility = k[3][3] / det;
        assert!((flexibility - (0.343 / (3.0 * 5e6) + 0.7 / 2e8)).abs() < 1e-15);
    }
}
