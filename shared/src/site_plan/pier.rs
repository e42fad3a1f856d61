//! Pier: the steel column and its plates.

use crate::field::{Problem, choice, section};
use crate::figure::{Unit, Units};
use crate::rules::tubes::{self, Tube};
use crate::site_plan::{HOUSE, SitePlan, text_problem};
use crate::source::Source;
use crate::{path, paths};

choice! {
    /// What the column is filled with.
    pub enum Fill {
        /// Nothing.
        None = "none", "Nothing";
        /// Dry sand.
        Sand = "sand", "Dry sand";
        /// Concrete.
        Concrete = "concrete", "Concrete";
    }
}

choice! {
    /// What the base plate stands on.
    pub enum Levelling {
        /// Nuts under the plate, open gap.
        Nuts = "nuts", "Nuts under the plate, with a gap";
        /// A bed of grout.
        Grout = "grout", "A bed of grout";
    }
}

choice! {
    /// Strength grade of the steel of column and plates: EN 10025-2, or ASTM A53 or A500 with A36.
    pub enum Steel {
        /// 235 MPa.
        S235 = "S235", "S235";
        /// 275 MPa.
        S275 = "S275", "S275";
        /// 355 MPa.
        S355 = "S355", "S355";
        /// 35 ksi pipe with 36 ksi plate.
        A53 = "A53-B", "A53 grade B pipe, A36 plate";
        /// 42 ksi round with 36 ksi plate.
        A500 = "A500-B", "A500 grade B round, A36 plate";
    }
}

section! {
    /// Pier.
    pub struct Pier in pier {
        numbers {
            /// Height of the column from the base plate's underside to the top plate's upper face.
            height_m: Metre, 0.15..=6.0, "shorter than 0.15 is a plate, taller than 6 is a mast",
                asks "Height of the column with its plates",
                hint "From the underside of the base plate to the top of the top plate.",
                unknown "Worked out from walls and eye height where those are known; otherwise a handy height is assumed.";
            /// Outside diameter of the column.
            outside_diameter_mm: Millimetre, 60.0..=1500.0, "thinner than 60 is a tripod leg, thicker than 1500 is a tank",
                asks "Outside diameter",
                unknown "A common tube for a mount of this kind is assumed.";
            /// Wall thickness of the column.
            wall_mm: Millimetre, 1.5..=60.0, "thinner than 1.5 cannot be welded to a plate, thicker than 60 is solid",
                asks "Thickness of its wall",
                unknown "A common wall for such a tube is assumed.";
            /// Side of the square base plate.
            plate_side_mm: Millimetre, 80.0..=1600.0, "smaller takes no studs, larger is a floor plate",
                asks "Side of the square base plate",
                because "the column with room for studs and a socket on either side",
                changes "the joint's stiffness", from HOUSE;
            /// Thickness of the base plate.
            plate_thickness_mm: Millimetre, 4.0..=120.0, "thinner than 4 is a sheet, thicker than 120 cannot be lifted",
                asks "Thickness of the base plate",
                because "thick enough not to dish much",
                changes "the joint's stiffness", from HOUSE;
            /// Clear gap under the plate, or thickness of the grout bed.
            gap_mm: Millimetre, 0.0..=150.0, "a gap of more than 150 is a column of its own",
                asks "Gap under the plate, or thickness of the grout",
                because "room for a nut, a washer and a spanner",
                changes "the joint's stiffness", from HOUSE;
            /// Throat or leg of the weld between column and plate, leg length.
            weld_leg_mm: Millimetre, 2.0..=30.0, "smaller welds crack, larger ones warp the plate",
                asks "Leg length of the weld at the base plate",
                because "a common fillet for such a wall",
                changes "strength at the foot", from HOUSE;
            /// Side of the top plate.
            top_plate_side_mm: Millimetre, 80.0..=1000.0, "from the smallest mount to the largest",
                asks "Side of the top plate",
                because "takes the column and the mount's bolts",
                changes "steel to order", from HOUSE;
            /// Thickness of the top plate.
            top_plate_thickness_mm: Millimetre, 4.0..=80.0, "thinner bends under the mount's bolts",
                asks "Thickness of the top plate",
                because "takes most mounts",
                changes "steel to order", from HOUSE;
            /// Diameter of the circle of the mount's bolts in the top plate.
            top_bolt_circle_mm: Millimetre, 30.0..=900.0, "from the smallest mount to the largest",
                asks "Bolt circle of the mount",
                hint "Measure it on the mount itself.",
                because "to be taken from the mount in hand",
                changes "holes in the top plate", from HOUSE;
            /// Height of the walls, or of the dome's edge, above the observing floor.
            wall_height_m: Metre, 0.0..=6.0, "zero is an open site; higher than 6 is a tower",
                asks "How high are the walls, or the dome's edge?",
                hint "Above the floor that people stand on.",
                unknown "It is left out of the height.";
            /// Distance from the pier's axis to the walls or the dome's edge.
            wall_distance_m: Metre, 0.3..=15.0, "nearer than 0.3 the telescope cannot turn",
                asks "How far are they from the pier?",
                hint "From the middle of the pier.",
                unknown "It is left out of the height.";
            /// Lowest altitude wanted to the north.
            lowest_altitude_north_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead",
                asks "Lowest altitude wanted to the north",
                hint "Degrees above the horizon.",
                unknown "A usual lowest altitude is assumed.";
            /// Lowest altitude wanted to the east.
            lowest_altitude_east_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead",
                asks "Lowest altitude wanted to the east",
                unknown "A usual lowest altitude is assumed.";
            /// Lowest altitude wanted to the south.
            lowest_altitude_south_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead",
                asks "Lowest altitude wanted to the south",
                unknown "A usual lowest altitude is assumed.";
            /// Lowest altitude wanted to the west.
            lowest_altitude_west_deg: Degree, 0.0..=80.0, "from the horizon to nearly overhead",
                asks "Lowest altitude wanted to the west",
                unknown "A usual lowest altitude is assumed.";
            /// Height of the observer's eye above the floor, standing.
            eye_height_m: Metre, 0.5..=2.2, "from a seated child to a very tall adult",
                asks "How high is your eye when you stand?",
                unknown "It is left out of the height.",
                because "a standing adult of average height",
                changes "height of the pier", from Source::judgement("eye of a standing adult");
            /// Radius that the telescope sweeps about the mount's axes.
            swing_radius_m: Metre, 0.1..=5.0, "from a spotting scope to a telescope of a metre",
                asks "How far does the telescope reach as it swings?",
                hint "From the crossing of the mount's axes to its farthest end.",
                unknown "It is left out of the height.";
        }
        counts {
            /// Stiffening ribs between column and base plate.
            stiffener_count: 0..=12, "none to twelve",
                asks "Stiffeners between column and base plate",
                takes 0.0, because "a thick plate does without",
                changes "the joint's stiffness", from HOUSE;
        }
        others {
            /// What the column is filled with.
            fill: Fill,
                asks "What is it filled with?",
                hint "Dry sand adds weight and deadens a ring; it adds no stiffness.",
                takes Fill::None, because "a fill can be added later",
                changes "mass and damping", from HOUSE;
            /// What the base plate stands on.
            levelling: Levelling,
                asks "What does the base plate stand on?",
                takes Levelling::Nuts, because "the usual way to level",
                changes "the joint's stiffness", from HOUSE;
            /// Strength grade of its steel.
            steel: Steel,
                asks "Steel grade",
                hint "It changes strength, not stiffness.",
                because "the least grade sold",
                changes "strength, not stiffness", from HOUSE;
            /// Name of a standard tube of the built-in table; its sizes are taken where none are stated.
            tube: String,
                asks "A standard tube by its name",
                hint "As the list of tubes names it; its sizes are used where you state none.",
                unknown "The sizes above are used.";
        }
    }
}

/// Answers about the pier that contradict each other.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    let pier = &plan.pier;
    let units = plan.units.unwrap_or_default();
    let tube = pier.tube.as_deref().and_then(tubes::by_name);
    let outside = pier
        .outside_diameter_mm
        .or(tube.map(|tube| tube.outside_mm));
    let wall = pier.wall_mm.or(tube.map(|tube| tube.wall_mm));
    let mut problems = unknown_tube(pier);
    problems.extend(tube.and_then(|tube| other_size(pier, &tube, units)));
    problems.extend(
        outside
            .zip(wall)
            .and_then(|(outside, wall)| thick_wall(outside, wall, units)),
    );
    problems.extend(
        outside
            .zip(pier.plate_side_mm)
            .and_then(|(outside, side)| wide_column(outside, side, units)),
    );
    problems.extend(wide_circle(pier, units));
    problems.extend(short_column(pier, units));
    problems
}

fn unknown_tube(pier: &Pier) -> Vec<Problem> {
    let Some(name) = &pier.tube else {
        return Vec::new();
    };
    if let Some(problem) = text_problem(&path!(pier.tube), name, 60) {
        return vec![problem];
    }
    if tubes::by_name(name).is_some() {
        return Vec::new();
    }
    let said = "There is no tube of this name in the table. Names read like CHS 219.1 x 6.3 or NPS 8 Sch 40; a tube that is not in it \
                is given by its outside diameter and wall.";
    vec![Problem::between(paths![pier.tube], said)]
}

/// Sizes that are stated beside a named tube and are not the tube's, mm.
const SAME_MM: f64 = 0.5;

fn other_size(pier: &Pier, tube: &Tube, units: Units) -> Option<Problem> {
    let differs =
        |stated: Option<f64>, own: f64| stated.is_some_and(|stated| (stated - own).abs() > SAME_MM);
    let outside = differs(pier.outside_diameter_mm, tube.outside_mm);
    let wall = differs(pier.wall_mm, tube.wall_mm);
    (outside || wall).then(|| {
        let field = if outside { path!(pier.outside_diameter_mm) } else { path!(pier.wall_mm) };
        let said = format!(
            "The tube named is {} wide with a wall of {}; the sizes stated beside it differ. Keep the name or the sizes.",
            units.say(tube.outside_mm, Unit::Millimetre),
            units.say(tube.wall_mm, Unit::Millimetre)
        );
        Problem::between(&[path!(pier.tube), field], said)
    })
}

fn thick_wall(outside_mm: f64, wall_mm: f64, units: Units) -> Option<Problem> {
    (wall_mm >= outside_mm / 2.0).then(|| {
        let said = format!(
            "A wall of {} leaves no bore in a column of {}: it must be thinner than half the diameter.",
            units.say(wall_mm, Unit::Millimetre),
            units.say(outside_mm, Unit::Millimetre)
        );
        Problem::between(paths![pier.wall_mm, pier.outside_diameter_mm], said)
    })
}

fn wide_column(outside_mm: f64, side_mm: f64, units: Units) -> Option<Problem> {
    (outside_mm > side_mm).then(|| {
        let said = format!(
            "A column of {} does not stand on a plate of {}: the plate must be wider.",
            units.say(outside_mm, Unit::Millimetre),
            units.say(side_mm, Unit::Millimetre)
        );
        Problem::between(paths![pier.plate_side_mm, pier.outside_diameter_mm], said)
    })
}

fn wide_circle(pier: &Pier, units: Units) -> Option<Problem> {
    let (circle, side) = pier.top_bolt_circle_mm.zip(pier.top_plate_side_mm)?;
    (circle >= side).then(|| {
        let said = format!(
            "A bolt circle of {} does not fit a top plate of {}: the plate must be wider.",
            units.say(circle, Unit::Millimetre),
            units.say(side, Unit::Millimetre)
        );
        Problem::between(
            paths![pier.top_bolt_circle_mm, pier.top_plate_side_mm],
            said,
        )
    })
}

fn short_column(pier: &Pier, units: Units) -> Option<Problem> {
    let height = pier.height_m?;
    let plates =
        (pier.plate_thickness_mm.unwrap_or(0.0) + pier.top_plate_thickness_mm.unwrap_or(0.0)) / 1e3;
    (plates >= height).then(|| {
        let said = format!(
            "Plates of {} together leave no column in a pier of {}.",
            units.say(plates * 1e3, Unit::Millimetre),
            units.say(height, Unit::Metre)
        );
        Problem::between(
            paths![
                pier.height_m,
                pier.plate_thickness_mm,
                pier.top_plate_thickness_mm,
            ],
            said,
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(change: impl FnOnce(&mut Pier)) -> Vec<String> {
        let mut plan = SitePlan::unknown();
        change(&mut plan.pier);
        contradictions(&plan)
            .into_iter()
            .flat_map(|problem| problem.fields)
            .collect()
    }

    #[test]
    fn what_cannot_be_built_is_named_at_all_its_fields() {
        assert!(fields(|_| ()).is_empty());
        assert_eq!(
            fields(|pier| pier.tube = Some("a drainpipe".into())),
            ["pier.tube"]
        );
        assert!(fields(|pier| pier.tube = Some("CHS 219.1 x 8".into())).is_empty());
        assert_eq!(
            fields(|pier| (pier.outside_diameter_mm, pier.wall_mm) = (Some(100.0), Some(50.0))),
            ["pier.wall_mm", "pier.outside_diameter_mm"]
        );
        assert_eq!(
            fields(|pier| (pier.tube, pier.wall_mm) = (Some("CHS 219.1 x 8".into()), Some(6.3))),
            ["pier.tube", "pier.wall_mm"]
        );
        assert_eq!(
            fields(
                |pier| (pier.outside_diameter_mm, pier.plate_side_mm) = (Some(300.0), Some(250.0))
            )
            .len(),
            2
        );
        assert_eq!(
            fields(|pier| (pier.top_bolt_circle_mm, pier.top_plate_side_mm) =
                (Some(300.0), Some(250.0)))
            .len(),
            2
        );
        assert_eq!(
            fields(|pier| (
                pier.height_m,
                pier.plate_thickness_mm,
                pier.top_plate_thickness_mm
            ) = (Some(0.15), Some(120.0), Some(80.0)))
            .len(),
            3
        );
    }
}
