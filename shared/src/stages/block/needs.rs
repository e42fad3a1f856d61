//! The sizes that plate, studs and the trade ask of the block: what it is sized for and checked against.

use crate::brief::Brief;
use crate::units::{Length, millimetre};

use super::outline::Outline;

/// The tonne of the trade's rule of thumb, kg.
pub const TONNE_KG: f64 = 1000.0;
/// Concrete left beside the base plate, mm.
const BESIDE_PLATE_MM: f64 = 50.0;
/// Concrete below a hole, mm, where it is small.
const BELOW_HOLE_MM: f64 = 30.0;

fn longer(a: Length, b: Length) -> Length {
    if a > b { a } else { b }
}

/// Least side that leaves concrete beside the base plate.
pub fn plate_needs(brief: &Brief) -> Length {
    brief.pier.plate_side.value + millimetre::new(2.0 * BESIDE_PLATE_MM)
}

/// Thickness that the holes ask for.
pub(super) fn holes_need(brief: &Brief) -> Length {
    let anchors = &brief.anchors;
    let below = longer(
        millimetre::new(BELOW_HOLE_MM),
        anchors.hole_diameter.value * 2.0,
    );
    longer(
        anchors.embedment.value + below,
        anchors.product.min_thickness.value,
    )
}

/// Distance of the outermost stud from the nearest face; with four studs they stand on the diagonals.
pub(super) fn edge_given(brief: &Brief, outline: &Outline) -> Length {
    let anchors = &brief.anchors;
    let reach = if anchors.count.value == 4.0 {
        std::f64::consts::FRAC_1_SQRT_2
    } else {
        1.0
    };
    outline.shorter() / 2.0 - anchors.circle_diameter.value / 2.0 * reach
}

/// Edge distance that sizing aims at: so far that the edge cuts no concrete cone, one and a half embedments.
pub(super) fn edge_wanted(brief: &Brief) -> Length {
    longer(
        brief.anchors.product.min_edge.value,
        brief.anchors.embedment.value * 1.5,
    )
}
