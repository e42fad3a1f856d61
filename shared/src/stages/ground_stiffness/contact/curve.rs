//! Stiffness against the depth from which the sides are held: a monotone curve through the logarithms of four solutions.

use crate::rules::monotone::Monotone;

/// The curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve(Monotone);

/// Nearer than this share of the depth to the block's own solution the comparison's is left out.
const NEAR_RATIO: f64 = 0.08;

impl Curve {
    /// Through the comparison's solutions at the surface, at half the depth and at the base, and the block's own.
    pub fn through(comparison: [(f64, f64); 3], own: (f64, f64)) -> Self {
        let depth = comparison[2].0;
        let mut points: Vec<(f64, f64)> = comparison
            .into_iter()
            .filter(|(at, _)| (at - own.0).abs() > NEAR_RATIO * depth)
            .collect();
        points.push(own);
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        // The comparison is good to a few per cent: where it contradicts the law that less contact is less stiff, the law holds.
        let mut least = f64::INFINITY;
        for (_, stiffness) in &mut points {
            least = least.min(*stiffness);
            *stiffness = least.ln();
        }
        Self(Monotone::new(points))
    }

    /// Stiffness with contact from a depth down.
    pub fn at(&self, from_m: f64) -> f64 {
        self.0.at(from_m).exp()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Finite elements of a disc as deep as a metre cube, rocking over bonded for contact from so much of the depth (engineering
    // basis, section 2). The curve has four of the values to go by and meets the others within 4 %.
    #[test]
    fn the_metre_cube_between_the_solutions() {
        let elements = [
            (0.0, 1.0),
            (0.1, 0.920),
            (0.2, 0.807),
            (0.3, 0.690),
            (0.4, 0.582),
            (0.5, 0.484),
            (0.75, 0.299),
            (1.0, 0.170),
        ];
        let curve = Curve::through([elements[0], elements[5], elements[7]], (0.15, 0.864));
        for (at, expected) in elements {
            let found = curve.at(at);
            assert!(
                (found / expected - 1.0).abs() < 0.04,
                "{at}: {found} {expected}"
            );
        }
    }

    #[test]
    fn it_never_rises() {
        let curve = Curve::through([(0.0, 1.0), (0.5, 0.5), (1.0, 0.52)], (0.45, 0.48));
        let found: Vec<f64> = (0..=100).map(|i| curve.at(f64::from(i) / 100.0)).collect();
        assert!(
            found
                .windows(2)
                .all(|pair| pair[1] <= pair[0] * (1.0 + 1e-12))
        );
    }
}
