//! A block let into rock: what its depth in the rock makes of the footing on the rock's surface.

use super::super::pais_kausel_1988::{self as pais_kausel, Footing};

/// Depth in rock over the radius, and the factors that finite elements gave at ν 0.25: sway, rocking.
const ELEMENTS: [[f64; 3]; 5] = [
    [0.0, 1.0, 1.0],
    [0.1, 1.18, 1.19],
    [0.25, 1.37, 1.48],
    [0.5, 1.63, 2.05],
    [1.0, 2.07, 3.70],
];

/// Sway of a block let into rock over that of a footing on it.
///
/// # Source
/// Own axisymmetric finite elements, ν 0.25, cast against rock all round; straight between their depths.
///
/// # Valid for
/// Any depth; below one radius it stays at the last value, which is the softer side.
pub fn sway_factor(depth_over_radius_ratio: f64) -> f64 {
    between(depth_over_radius_ratio, 1)
}

/// Rocking of a block let into rock over that of a footing on it.
///
/// # Source
/// Own axisymmetric finite elements, ν 0.25, cast against rock all round; straight between their depths.
///
/// # Valid for
/// Any depth; below one radius it stays at the last value, which is the softer side.
pub fn rocking_factor(depth_over_radius_ratio: f64) -> f64 {
    between(depth_over_radius_ratio, 2)
}

/// Vertical stiffness of a block let into rock over that of a footing on it.
///
/// # Source
/// Pais & Kausel 1988, the factor of an embedded rectangle: no elements were run for it.
///
/// # Valid for
/// Depths up to the shorter side; a deeper one is taken as that, which is the softer side.
pub fn vertical_factor(footing: &Footing) -> f64 {
    pais_kausel::vertical_factor(&within(footing))
}

/// Torsion of a block let into rock over that of a footing on it.
///
/// # Source
/// Pais & Kausel 1988, the factor of an embedded rectangle: no elements were run for it.
///
/// # Valid for
/// Depths up to the shorter side; a deeper one is taken as that, which is the softer side.
pub fn torsion_factor(footing: &Footing) -> f64 {
    pais_kausel::torsion_factor(&within(footing))
}

fn within(footing: &Footing) -> Footing {
    Footing {
        depth: footing.depth.min(footing.half_width * 2.0),
        ..*footing
    }
}

fn between(depth_ratio: f64, column: usize) -> f64 {
    let last = ELEMENTS[ELEMENTS.len() - 1];
    ELEMENTS
        .windows(2)
        .find(|pair| depth_ratio <= pair[1][0])
        .map_or(last[column], |pair| {
            let share = (depth_ratio - pair[0][0]).max(0.0) / (pair[1][0] - pair[0][0]);
            pair[0][column] + share * (pair[1][column] - pair[0][column])
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    // Own finite elements, ν 0.25: s/R 0.1, 0.25, 0.5, 1.
    #[test]
    fn the_elements_own_depths() {
        for (depth, sway, rocking) in [
            (0.0, 1.0, 1.0),
            (0.1, 1.18, 1.19),
            (0.25, 1.37, 1.48),
            (0.5, 1.63, 2.05),
            (1.0, 2.07, 3.70),
            (2.0, 2.07, 3.70),
        ] {
            assert!((sway_factor(depth) - sway).abs() < 1e-12);
            assert!((rocking_factor(depth) - rocking).abs() < 1e-12);
        }
    }
}
