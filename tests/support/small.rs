//! A plan of which only the block's depth and the seat are open, so that a search over it takes a second.

use serde_json::{Value, json};

/// The plan: five depths from 0.3 to 0.5 m, on nuts or on grout.
#[must_use]
pub fn small() -> Value {
    json!({
        "schema_version": 1,
        "site": { "soil": "firm_clay", "frost_depth_m": 0.4 },
        "excavation": { "max_depth_m": 0.5 },
        "block": { "length_m": 0.9, "width_m": 0.9 },
        "pier": { "height_m": 1.1, "outside_diameter_mm": 219.1, "wall_mm": 6.3, "fill": "none" },
        "load": { "mass_kg": 45.0 }
    })
}
