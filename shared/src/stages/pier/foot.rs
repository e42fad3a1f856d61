//! The foot's turn on its studs, in closed form.
//!
//! Studs alone: each stretches over the open gap, the plate and a few diameters of its bond; the pairs on either side
//! of the axis make a couple. A bed of grout carries the compressed side, so that the plate turns on the grout's edge
//! and the studs pull over a longer arm and a shorter free length. The plate is taken as rigid.

use std::f64::consts::PI;

use crate::brief::Brief;
use crate::rules::en_1993_1_1_2005::material;
use crate::site_plan::anchors::Size;
use crate::site_plan::pier::Levelling;
use crate::source::Source;
use crate::units::{RotationalStiffness, metre, newton_metre_per_radian};

/// Where it comes from.
pub const SOURCE: Source = Source::derived("studs as springs E A_s/l on their circle; plate rigid; eight diameters of bond stretch");
/// Diameters of embedded stud that stretch.
const BOND_STRETCH_DIAMETERS: f64 = 8.0;

/// The foot's spring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foot {
    /// Moment for a turn.
    pub stiffness: RotationalStiffness,
    /// Length of stud that stretches, m.
    pub free_length_m: f64,
}

/// Finds the foot's spring.
#[must_use]
pub fn find(brief: &Brief) -> Foot {
    let diameter = nominal_diameter_m(brief.anchors.size.value);
    let area = 0.75 * PI * diameter * diameter / 4.0;
    let count = brief.anchors.count.value;
    let radius = metre::get(brief.anchors.circle_diameter.value) / 2.0;
    let gap = metre::get(brief.pier.gap.value);
    let plate = metre::get(brief.pier.plate_thickness.value);
    let bond = BOND_STRETCH_DIAMETERS * diameter;
    let (free_length_m, lever_factor) = match brief.pier.levelling.value {
        // On nuts the stud below the plate carries both pull and push.
        Levelling::Nuts => (gap + plate / 2.0 + bond, 1.0),
        // On grout the compressed side is far stiffer than the studs: turning about its edge doubles the couple.
        Levelling::Grout => (plate + bond, 2.0),
    };
    let stud = material::E_MPA * 1e6 * area / free_length_m;
    // Studs evenly on a circle: the sum of y² is n r²/2, whichever way the moment acts.
    let stiffness = stud * count * radius * radius / 2.0 * lever_factor;
    Foot { stiffness: newton_metre_per_radian::new(stiffness), free_length_m }
}

fn nominal_diameter_m(size: Size) -> f64 {
    match size {
        Size::M10 => 0.010,
        Size::M12 => 0.012,
        Size::M16 => 0.016,
        Size::M20 => 0.020,
        Size::M24 => 0.024,
    }
}
