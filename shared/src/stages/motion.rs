//! Motion: what the star does.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::pier::Pier;
use crate::units::{Frequency, hertz};

/// Tilt from somebody standing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StandTilt {
    /// Where.
    pub name: String,
    /// Turn of the pier's top; null when unknown.
    pub tilt_arcsec: Option<f64>,
    /// The block's share.
    pub block_tilt_arcsec: Option<f64>,
    /// Direction in which the top leans, clockwise from north.
    pub bearing_deg: Option<f64>,
}

/// The star during a walk.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Walk {
    /// Root mean square of the turn.
    pub rms_arcsec: Option<f64>,
    /// Largest turn.
    pub peak_arcsec: Option<f64>,
    /// Length of the star's trail from end to end.
    pub trail_arcsec: Option<f64>,
    /// The same on the chip.
    pub trail_pixels: Option<f64>,
}

/// What the star does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Motion {
    /// First frequencies in typical ground.
    #[serde(rename = "frequencies_hz", serialize_with = "hertz::list::serialize")]
    pub frequencies: Vec<Frequency>,
    /// Tilt from each stand.
    pub stands: Vec<StandTilt>,
    /// The star during the walk.
    pub walk: Walk,
    /// Wind.
    pub wind_arcsec: Option<f64>,
    /// Temperature difference across the column.
    pub thermal_arcsec: Option<f64>,
    /// The difference it is for.
    pub thermal_difference_k: f64,
    /// Time for a tap to die to the budget.
    pub settle_s: Option<f64>,
    /// Largest movement that is acceptable.
    pub budget_arcsec: f64,
    /// Distance from which a person's weight tilts the pier less than the budget.
    pub quiet_distance_m: Option<f64>,
}

/// Finds what the star does.
#[must_use]
#[allow(clippy::too_many_arguments, reason = "each stage names all that it depends on")]
pub fn stage(
    brief: &Brief,
    _ground: &Ground,
    _block: &Block,
    _stiffness: &GroundStiffness,
    _pier: &Pier,
    _anchors: &Anchors,
    _floor: &Floor,
) -> Found<Motion> {
    let value = Motion {
        frequencies: Vec::new(),
        stands: Vec::new(),
        walk: Walk { rms_arcsec: None, peak_arcsec: None, trail_arcsec: None, trail_pixels: None },
        wind_arcsec: None,
        thermal_arcsec: None,
        thermal_difference_k: brief.load.thermal_difference_k.value,
        settle_s: None,
        budget_arcsec: 0.25,
        quiet_distance_m: None,
    };
    Found { value, notes: Notes::default() }
}
