//! A movement within one exposure, and how sure it is.

use crate::rules::image_motion::places::Places;

/// A movement within one exposure.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Movement {
    /// Root mean square along each axis of what goes on all the time, arcsec.
    pub steady_arcsec: [f64; 2],
    /// Places of what happens once, with their shares of the exposure.
    pub places: Places,
}

/// The same in the ground that is expected and in the softest thought likely, and how sure the load itself is.
#[derive(Debug, Clone, PartialEq)]
pub struct Likely {
    /// In the ground that is expected, under the load that is expected.
    pub expected: Movement,
    /// In the softest ground thought likely, under the same load.
    pub soft: Movement,
    /// Load at its unfavourable twentieth over the one that is expected; one where the load is known.
    pub load_ratio: f64,
}

impl Movement {
    /// Something that goes on all the time.
    pub fn steady(rms_arcsec: [f64; 2]) -> Self {
        Self {
            steady_arcsec: rms_arcsec,
            places: Places::default(),
        }
    }

    /// Something that happens once.
    pub fn once(places: Places) -> Self {
        Self {
            steady_arcsec: [0.0; 2],
            places,
        }
    }

    /// The same so many times as large.
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            steady_arcsec: self.steady_arcsec.map(|rms| rms * factor),
            places: self.places.scaled(factor),
        }
    }

    /// Root mean square over the exposure along one axis, the mean of both.
    pub fn rms_arcsec(&self) -> f64 {
        let [[_, x], [_, y]] = self.places.moments();
        let [u, v] = self.steady_arcsec;
        (0.5 * (x + y + u * u + v * v)).sqrt()
    }
}

impl Likely {
    /// A movement that is the same in every ground.
    pub fn in_any_ground(movement: Movement, load_ratio: f64) -> Self {
        Self {
            expected: movement.clone(),
            soft: movement,
            load_ratio,
        }
    }

    /// The unfavourable twentieth over the expected one: 1 + √(d_g² + d_l²), of ground and load.
    pub fn worst_ratio(&self) -> f64 {
        1.0 + (self.ground_ratio() - 1.0).hypot(self.load_ratio - 1.0)
    }

    fn ground_ratio(&self) -> f64 {
        let (expected, soft) = (self.expected.rms_arcsec(), self.soft.rms_arcsec());
        if expected > 0.0 {
            (soft / expected).max(1.0)
        } else {
            1.0
        }
    }

    /// The unfavourable twentieth over what the soft ground alone makes of it.
    pub(super) fn beyond_soft_ratio(&self) -> f64 {
        self.worst_ratio() / self.ground_ratio()
    }
}
