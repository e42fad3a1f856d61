//! Pier, decided.

use crate::brief::{Ask, Given, Taken};
use crate::figure::Unit;
use crate::site_plan::SitePlan;
use crate::site_plan::pier::{Fill, Levelling, Steel};
use crate::source::Source;
use crate::units::{Length, metre, millimetre};

/// Complete answers about the pier.
#[derive(Debug, Clone, PartialEq)]
pub struct Pier {
    /// Height of the column with its plates.
    pub height: Given<Length>,
    /// Outside diameter.
    pub outside_diameter: Given<Length>,
    /// Wall.
    pub wall: Given<Length>,
    /// Fill.
    pub fill: Given<Fill>,
    /// Side of the base plate.
    pub plate_side: Given<Length>,
    /// Thickness of the base plate.
    pub plate_thickness: Given<Length>,
    /// What the plate stands on.
    pub levelling: Given<Levelling>,
    /// Gap or grout under the plate.
    pub gap: Given<Length>,
    /// Leg of the weld at the foot.
    pub weld_leg: Given<Length>,
    /// Ribs at the foot.
    pub stiffener_count: Given<f64>,
    /// Side of the top plate.
    pub top_plate_side: Given<Length>,
    /// Thickness of the top plate.
    pub top_plate_thickness: Given<Length>,
    /// Circle of the mount's bolts.
    pub top_bolt_circle: Given<Length>,
    /// Steel.
    pub steel: Given<Steel>,
}

/// Decides the pier's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Pier {
    let said = &plan.pier;
    let house = Source::judgement("house default");
    let mut mm = |field, said, value, why: &str, effect: &str| {
        ask.number(field, Unit::Millimetre, said, millimetre::new, value, Taken::new(why, effect, house))
    };
    let outside_diameter = mm(
        "pier.outside_diameter_mm",
        said.outside_diameter_mm,
        219.1,
        "a common tube for a mount of this kind",
        "stiffness of the column",
    );
    let wall = mm("pier.wall_mm", said.wall_mm, 6.3, "a common wall for such a tube", "stiffness of the column");
    let plate_side =
        mm("pier.plate_side_mm", said.plate_side_mm, 400.0, "takes the studs' circle with an edge to spare", "the joint's stiffness");
    let plate_thickness =
        mm("pier.plate_thickness_mm", said.plate_thickness_mm, 20.0, "thick enough not to dish much", "the joint's stiffness");
    let gap = mm("pier.gap_mm", said.gap_mm, 25.0, "room for a nut, a washer and a spanner", "the joint's stiffness");
    let weld_leg = mm("pier.weld_leg_mm", said.weld_leg_mm, 6.0, "a common fillet for such a wall", "strength at the foot");
    let top_plate_side = mm("pier.top_plate_side_mm", said.top_plate_side_mm, 250.0, "takes most mounts", "steel to order");
    let top_plate_thickness = mm("pier.top_plate_thickness_mm", said.top_plate_thickness_mm, 15.0, "takes most mounts", "steel to order");
    let top_bolt_circle =
        mm("pier.top_bolt_circle_mm", said.top_bolt_circle_mm, 180.0, "to be taken from the mount in hand", "holes in the top plate");
    Pier {
        height: ask.number(
            "pier.height_m",
            Unit::Metre,
            said.height_m,
            metre::new,
            1.2,
            Taken::new("eyepiece and camera at a handy height for a standing observer", "bending of the column", house),
        ),
        outside_diameter,
        wall,
        plate_side,
        plate_thickness,
        gap,
        weld_leg,
        top_plate_side,
        top_plate_thickness,
        top_bolt_circle,
        fill: ask.choice("pier.fill", said.fill, Fill::None, Fill::key, Taken::new("a fill can be added later", "mass and damping", house)),
        levelling: ask.choice(
            "pier.levelling",
            said.levelling,
            Levelling::Nuts,
            Levelling::key,
            Taken::new("the usual way to level", "the joint's stiffness", house),
        ),
        stiffener_count: ask.number(
            "pier.stiffener_count",
            Unit::Count,
            said.stiffener_count.map(f64::from),
            |n| n,
            0.0,
            Taken::new("a thick plate does without", "the joint's stiffness", house),
        ),
        steel: ask.choice(
            "pier.steel",
            said.steel,
            Steel::S235,
            Steel::key,
            Taken::new("the least grade sold", "strength, not stiffness", house),
        ),
    }
}
