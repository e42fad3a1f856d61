//! A rigid block on, above or in rock: factors over the whole range of a layer's thickness, from none to the half-space.
//!
//! The classic factors of a stratum (Kausel 1974 in Elsabee & Morray 1977) hold for layers at least twice as thick as the
//! disc's radius and grow without bound below that. These grow into the exact answer for a thin layer between a rigid disc
//! and rigid rock, and rock that is not rigid then stands in series ([`base_over_rock`]), so that a layer of no thickness
//! gives the footing on rock.

pub mod factors;
pub mod socket;

use crate::source::{Source, Standing};

/// Factors of a layer, and the series with rock.
pub const SOURCE: Source = Source::new(
    "Disc on a layer over rock",
    "",
    "closed forms fitted to axisymmetric finite elements, layers from 4 radii to none; docs/ground-validation.md",
    Standing::Derived,
);

/// Stiffness of a footing on a layer over elastic rock, one component, in whatever unit both are given:
/// `1/[1/(f K_b) + (1 − 1/f)/K_rock]`.
///
/// # Source
/// Steinbrenner 1934, superposition; exact for no rock, for equal moduli, for rigid rock and for a layer of no thickness.
///
/// # Valid for
/// Rock at least as stiff as the soil; `f` at least one, of [`factors`].
pub fn base_over_rock(layer_factor: f64, on_soil: f64, on_rock: f64) -> f64 {
    let share = 1.0 / layer_factor;
    1.0 / (share / on_soil + (1.0 - share) / on_rock)
}

/// How near the rock is, between nought and one: `min(1, 4 R/h)`.
///
/// # Source
/// Judgement: what rock adds beyond the sum fades with it.
///
/// # Valid for
/// A layer of any thickness `h` between base and rock.
pub fn nearness(radius_over_layer_ratio: f64) -> f64 {
    (4.0 * radius_over_layer_ratio).min(1.0)
}

/// By how much a block over rock exceeds the sum of base and sides: typical and in the stiffest ground considered likely,
/// `√(d_w/D)` of 0.12 and of 0.35, and in the stiffest 0.10 more, all times [`nearness`].
///
/// # Source
/// Read off finite elements of a block of 1.77 radii, its sides held over `d_w` of its depth `D`, and of blocks with free
/// sides, which exceed the sum by up to 8 %; judgement elsewhere.
///
/// # Valid for
/// Rocking and vertical. Torsion takes none in typical ground, since its elements exceed the sum by 5 % at most; sway has
/// [`sides_gain`] instead.
pub fn excess(held_ratio: f64, nearness: f64) -> [f64; 2] {
    let held = held_ratio.clamp(0.0, 1.0).sqrt();
    [0.12 * held * nearness, (0.10 + 0.35 * held) * nearness]
}

/// How much more the held sides resist sway over rock than in even ground, as a share of what they add to a block with free
/// sides there: `min(1.08 √(K_base/K_b − 1), 0.54 ln (G_rock/G_soil))`. The soil between the walls and the rock is sheared as a
/// layer is, which the sum of base and sides leaves out.
///
/// # Source
/// Read off finite elements of a metre cube with bonded sides over rock of 10 and 50 times the modulus, from 0.18 to 3.5 radii
/// below its base (`reference/halfspace_block.py`): met within 6 %. What it was not read off: half held, and 1.2 × 0.8 × 1 m at
/// ν 0.45, within 6 %; rock of three times the modulus, 4 to 7 % too stiff.
///
/// # Valid for
/// Rock at least as stiff as the soil; nought where there is none, no jump where the layer ends.
///
/// # Example
/// ```
/// use stillground::rules::layer_on_rock::sides_gain;
/// assert!((sides_gain(1.602, 50.0) - 0.838).abs() < 1e-3);
/// ```
pub fn sides_gain(base_over_soil_ratio: f64, modulus_ratio: f64) -> f64 {
    let by_base = 1.08 * (base_over_soil_ratio - 1.0).max(0.0).sqrt();
    by_base.min(0.54 * modulus_ratio.max(1.0).ln())
}

/// By how much a block over rock may exceed base, sides and [`sides_gain`] in the stiffest ground considered likely, times
/// [`nearness`]: judgement, as much as free sides exceed the sum.
pub const SWAY_EXCESS_RATIO: f64 = 0.10;

/// What soft ground keeps of the sum at least.
pub const LOW_SHARE: f64 = 0.9;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::pais_kausel_1988::{self as pais_kausel, Footing};
    use crate::units::{kilopascal, metre, newton_metre_per_radian, newton_per_metre};

    /// G = ρ V², kPa.
    fn modulus_kpa(speed_m_s: f64, density_kg_m3: f64) -> f64 {
        density_kg_m3 * speed_m_s * speed_m_s / 1000.0
    }

    fn footing(modulus_kpa: f64, poisson_ratio: f64, depth_m: f64) -> Footing {
        Footing {
            shear_modulus: kilopascal::new(modulus_kpa),
            poisson_ratio,
            half_length: metre::new(0.5),
            half_width: metre::new(0.5),
            depth: metre::new(depth_m),
        }
    }

    /// Rocking in MN m/rad of a block 1 × 1 m over rock, the layer `h` thick.
    fn rocking(depth_m: f64, rock: Footing, layer_m: f64) -> f64 {
        let surface = |footing: &Footing| {
            newton_metre_per_radian::get(pais_kausel::surface_rocking_short(footing)) / 1e6
        };
        let soil = footing(modulus_kpa(150.0, 1850.0), 0.35, depth_m);
        let (on_soil, on_rock) = (surface(&soil), surface(&rock));
        let embedded = on_soil * pais_kausel::rocking_short_factor(&soil);
        let radius = (16.0 / (3.0 * std::f64::consts::PI)).powf(0.25) * 0.5;
        let base = if layer_m > 0.0 {
            base_over_rock(
                factors::rocking_factor(radius / layer_m, 0.35),
                on_soil,
                on_rock,
            )
        } else {
            on_rock
        };
        embedded + base - on_soil
    }

    fn hard() -> Footing {
        footing(modulus_kpa(1300.0, 2500.0), 0.25, 0.0)
    }

    // Computed apart (the same formulas in Python): soil at 150 m/s, 1850 kg/m³, ν 0.35; rock at 1300 m/s, 2500 kg/m³, ν 0.25.
    #[test]
    fn the_block_over_rock_as_computed_apart() {
        let layers = [5.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.01, 0.001, 0.0];
        for (depth, expected) in [
            (
                0.4,
                [
                    82.0, 84.3, 93.0, 132.4, 202.1, 332.7, 1046.0, 2430.0, 2867.0,
                ],
            ),
            (
                1.0,
                [
                    248.0, 250.0, 259.0, 298.0, 368.0, 499.0, 1212.0, 2596.0, 3033.0,
                ],
            ),
        ] {
            for (layer, expected) in layers.into_iter().zip(expected) {
                let found = rocking(depth, hard(), layer);
                assert!(
                    (found / expected - 1.0).abs() < 0.003,
                    "D {depth}, h {layer}: {found} {expected}"
                );
            }
        }
        // Weathered rock at 500 m/s, 2200 kg/m³, ν 0.27.
        let weathered = footing(modulus_kpa(500.0, 2200.0), 0.27, 0.0);
        for (layer, expected) in layers
            .into_iter()
            .zip([81.9, 84.2, 91.9, 123.7, 168.8, 228.5, 357.0, 418.0, 427.0])
        {
            let found = rocking(0.4, weathered, layer);
            assert!(
                (found / expected - 1.0).abs() < 0.003,
                "weathered, h {layer}: {found} {expected}"
            );
        }
    }

    // Axisymmetric finite elements, computed apart: rocking at D 0.4 over layers of 0.5, 0.1, 0.01, 0.001 m and none. The sum is
    // up to 31 % low and never more than 11 % high, over all cases that were looked at.
    #[test]
    fn finite_elements_lie_within_the_stated_band() {
        for (layer, elements) in [0.5, 0.1, 0.01, 0.001, 0.0]
            .into_iter()
            .zip([106.0, 243.0, 1043.0, 2340.0, 2992.0])
        {
            let ratio = rocking(0.4, hard(), layer) / elements;
            assert!((0.69..1.11).contains(&ratio), "h {layer}: {ratio}");
        }
    }

    // Computed apart as above: sway at 0.1, 0.01 m and none 600, 3240, 11 203; vertical 1764, 7881, 13 301 MN/m.
    #[test]
    fn sway_and_vertical_as_computed_apart() {
        let soil = footing(modulus_kpa(150.0, 1850.0), 0.35, 0.4);
        let radius = (1.0 / std::f64::consts::PI).sqrt();
        let get = |stiffness| newton_per_metre::get(stiffness) / 1e6;
        let sum = |on_soil: f64, on_rock: f64, embedding: f64, factor: fn(f64, f64) -> f64| {
            [0.1, 0.01, 0.0].map(|layer| {
                let base = if layer > 0.0 {
                    base_over_rock(factor(radius / layer, 0.35), on_soil, on_rock)
                } else {
                    on_rock
                };
                on_soil * embedding + base - on_soil
            })
        };
        let sway = sum(
            get(pais_kausel::surface_along(&soil)),
            get(pais_kausel::surface_along(&hard())),
            pais_kausel::horizontal_factor(&soil),
            factors::sway_factor,
        );
        let vertical = sum(
            get(pais_kausel::surface_vertical(&soil)),
            get(pais_kausel::surface_vertical(&hard())),
            pais_kausel::vertical_factor(&soil),
            factors::vertical_factor,
        );
        for (found, expected) in sway
            .into_iter()
            .chain(vertical)
            .zip([600.0, 3240.0, 11_203.0, 1764.0, 7881.0, 13_301.0])
        {
            assert!((found / expected - 1.0).abs() < 0.005, "{found} {expected}");
        }
    }

    #[test]
    fn what_the_rock_adds_fades_with_it() {
        assert!((nearness(1.0) - 1.0).abs() < 1e-12 && (nearness(0.025) - 0.1).abs() < 1e-12);
        let near = |found: [f64; 2], expected: [f64; 2]| {
            found
                .into_iter()
                .zip(expected)
                .all(|(found, expected)| (found - expected).abs() < 1e-12)
        };
        assert!(near(excess(1.0, 1.0), [0.12, 0.45]));
        assert!(near(excess(0.0, 1.0), [0.0, 0.10]));
        assert!(near(excess(0.25, 0.1), [0.006, 0.0275]));
    }
}
