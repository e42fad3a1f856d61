//! Pier: the steel column and its plates.

use crate::field::{Problem, choice, section};
use crate::site_plan::SitePlan;

choice! {
    /// What the column is filled with.
    pub enum Fill {
        /// Nothing.
        None = "none",
        /// Dry sand.
        Sand = "sand",
        /// Concrete.
        Concrete = "concrete",
    }
}

choice! {
    /// What the base plate stands on.
    pub enum Levelling {
        /// Nuts under the plate, open gap.
        Nuts = "nuts",
        /// A bed of grout.
        Grout = "grout",
    }
}

choice! {
    /// Strength grade of the steel of column and plates, EN 10025-2.
    pub enum Steel {
        /// 235 MPa.
        S235 = "S235",
        /// 275 MPa.
        S275 = "S275",
        /// 355 MPa.
        S355 = "S355",
    }
}

section! {
    /// Pier.
    pub struct Pier in pier {
        numbers {
            /// Height of the column from the base plate's underside to the top plate's upper face.
            height_m: Metre, 0.15..=6.0, "shorter than 0.15 is a plate, taller than 6 is a mast";
            /// Outside diameter of the column.
            outside_diameter_mm: Millimetre, 60.0..=1500.0, "thinner than 60 is a tripod leg, thicker than 1500 is a tank";
            /// Wall thickness of the column.
            wall_mm: Millimetre, 1.5..=60.0, "thinner than 1.5 cannot be welded to a plate, thicker than 60 is solid";
            /// Side of the square base plate.
            plate_side_mm: Millimetre, 80.0..=1600.0, "smaller takes no studs, larger is a floor plate";
            /// Thickness of the base plate.
            plate_thickness_mm: Millimetre, 4.0..=120.0, "thinner than 4 is a sheet, thicker than 120 cannot be lifted";
            /// Clear gap under the plate, or thickness of the grout bed.
            gap_mm: Millimetre, 0.0..=150.0, "a gap of more than 150 is a column of its own";
            /// Throat or leg of the weld between column and plate, leg length.
            weld_leg_mm: Millimetre, 2.0..=30.0, "smaller welds crack, larger ones warp the plate";
            /// Side of the top plate.
            top_plate_side_mm: Millimetre, 80.0..=1000.0, "from the smallest mount to the largest";
            /// Thickness of the top plate.
            top_plate_thickness_mm: Millimetre, 4.0..=80.0, "thinner bends under the mount's bolts";
            /// Diameter of the circle of the mount's bolts in the top plate.
            top_bolt_circle_mm: Millimetre, 30.0..=900.0, "from the smallest mount to the largest";
            /// Height of the walls, or of the dome's edge, above the observing floor.
            wall_height_m: Metre, 0.0..=6.0, "nought is an open site; higher than 6 is a tower";
            /// Distance from the pier's axis to the walls or the dome's edge.
            wall_distance_m: Metre, 0.3..=15.0, "nearer than 0.3 the telescope cannot turn";
            /// Lowest altitude wanted to the north.
            lowest_altitude_north_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead";
            /// Lowest altitude wanted to the east.
            lowest_altitude_east_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead";
            /// Lowest altitude wanted to the south.
            lowest_altitude_south_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead";
            /// Lowest altitude wanted to the west.
            lowest_altitude_west_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead";
            /// Height of the observer's eye above the floor, standing.
            eye_height_m: Metre, 0.5..=2.2, "from a seated child to a very tall adult";
            /// Radius that the telescope sweeps about the mount's axes.
            swing_radius_m: Metre, 0.1..=5.0, "from a spotting scope to a telescope of a metre";
        }
        counts {
            /// Stiffening ribs between column and base plate.
            stiffener_count: 0..=12, "none to twelve";
        }
        others {
            /// What the column is filled with.
            fill: Option<Fill>,
            /// What the base plate stands on.
            levelling: Option<Levelling>,
            /// Strength grade of its steel.
            steel: Option<Steel>,
            /// Name of a standard tube of the built-in table; its sizes are taken where none are stated.
            tube: Option<String>,
        }
    }
}

/// Answers about the pier that contradict each other.
#[must_use]
pub fn contradictions(_plan: &SitePlan) -> Vec<Problem> {
    Vec::new()
}
