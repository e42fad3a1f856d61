//! Footing: the block of concrete.

use crate::field::{Problem, choice, section};
use crate::figure::Unit;
use crate::halfspace::{MOST_DEPTH_RATIO, MOST_SIDE_RATIO};
use crate::site_plan::{HOUSE, SitePlan};
use crate::source::Source;
use crate::{path, paths};

choice! {
    /// Strength class of the concrete: of EN 206, cylinder over cube; or f'c in psi.
    pub enum Concrete {
        /// 20 MPa cylinder.
        C20 = "C20/25", "C20/25, about 3000 psi";
        /// 25 MPa cylinder.
        C25 = "C25/30", "C25/30, about 3500 psi";
        /// 28 MPa cylinder (about 4000 psi).
        C28 = "C28/35", "C28/35, about 4000 psi";
        /// 30 MPa cylinder.
        C30 = "C30/37", "C30/37, about 4500 psi";
        /// 35 MPa cylinder.
        C35 = "C35/45", "C35/45, about 5000 psi";
        /// 40 MPa cylinder.
        C40 = "C40/50", "C40/50, about 6000 psi";
        /// f'c of 2500 psi.
        Psi2500 = "2500 psi", "2,500 psi";
        /// f'c of 3000 psi.
        Psi3000 = "3000 psi", "3,000 psi";
        /// f'c of 3500 psi.
        Psi3500 = "3500 psi", "3,500 psi";
        /// f'c of 4000 psi.
        Psi4000 = "4000 psi", "4,000 psi";
        /// f'c of 4500 psi.
        Psi4500 = "4500 psi", "4,500 psi";
        /// f'c of 5000 psi.
        Psi5000 = "5000 psi", "5,000 psi";
    }
}

choice! {
    /// How fast the cement hardens, EN 1992-1-1 3.1.2(6).
    pub enum Cement {
        /// Class S.
        Slow = "slow", "Slowly: class S, or Type IV, V, IS or IP";
        /// Class N.
        Normal = "normal", "Normally: class N, or Type I, II or IL";
        /// Class R.
        Rapid = "rapid", "Rapidly: class R, or Type III";
    }
}

choice! {
    /// Where the concrete comes from.
    pub enum Mix {
        /// Delivered ready-mixed.
        Ready = "ready", "Ready-mixed, delivered";
        /// Mixed on site from cement, sand and gravel.
        Site = "site", "Mixed on site from cement, sand and gravel";
        /// Mixed on site from bags of dry concrete.
        Bagged = "bagged", "Bags of dry concrete";
    }
}

choice! {
    /// Steel in the block.
    pub enum Reinforcement {
        /// None: a plain block.
        Plain = "plain", "None";
        /// A mesh under the top face.
        TopMesh = "top_mesh", "A mesh under the top";
        /// Bars on all faces.
        Cage = "cage", "A cage on all faces";
    }
}

choice! {
    /// What lies between the block's base and the rock that it stands on.
    pub enum RockSurface {
        /// Brushed and washed: concrete on clean rock.
        Washed = "washed", "Brushed and washed clean";
        /// As the spade leaves it, with dirt in every hollow.
        AsDug = "as_dug", "As the spade leaves it";
    }
}

choice! {
    /// What is done against frozen ground that grips the block's sides.
    pub enum FrostRemedy {
        /// Nothing.
        None = "none", "Nothing";
        /// Boards of foam laid flat in the ground round the block.
        Insulation = "insulation", "Insulation boards laid flat round the block";
        /// A smooth sleeve of two greased layers down to the frost.
        Sleeve = "sleeve", "A smooth, greased sleeve of two layers";
        /// A trench of clean, drained gravel down to the frost.
        Gravel = "gravel", "A trench of clean gravel";
    }
}

section! {
    /// Footing.
    pub struct Block in block {
        numbers {
            /// Length along x (east).
            length_m: Metre, 0.2..=10.0, "a block shorter than 0.2 takes no studs, one longer than 10 bends and is no block",
                asks "Length, east to west",
                unknown "It is sized for you.";
            /// Width along y (north).
            width_m: Metre, 0.2..=10.0, "a block narrower than 0.2 takes no studs, one wider than 10 bends and is no block",
                asks "Width, north to south",
                unknown "It is sized for you.";
            /// Depth of its base below ground level.
            depth_m: Metre, 0.1..=6.0, "less than 0.1 is a paving slab, and deeper than 6 needs an engineer's shoring",
                asks "Depth of its base below the ground",
                unknown "It is sized for you.";
            /// Height of its top above ground level.
            upstand_m: Metre, 0.0..=1.5, "a block standing higher than 1.5 out of the ground is a wall",
                asks "How far does it stand out of the ground?",
                hint "A little keeps rain and leaves off the studs.",
                because "keeps rain and leaves off the studs",
                changes "height of the pier and bending at its foot", from HOUSE;
            /// Depth below ground from which the soil is hard against its sides.
            side_contact_from_m: Metre, 0.0..=6.0, "between ground level and the deepest block",
                asks "From what depth is the soil firm against its sides?",
                hint "0 is from the surface. Foam, shuttering left in place or loose fill does not count.",
                unknown "From the surface, or from below the loose fill where the pit is sloped.";
            /// Depth below ground to which the soil is hard against its sides.
            side_contact_to_m: Metre, 0.0..=6.0, "between ground level and the deepest block",
                asks "And down to what depth?",
                hint "If the sides are loose, enter the same depth twice.",
                unknown "Down to the base.";
            /// Inside diameter of each duct.
            duct_diameter_mm: Millimetre, 16.0..=160.0, "from a conduit to a drain pipe",
                asks "Inside diameter of a duct",
                hint "A plug has to pass through.",
                because "takes a plug and a data cable",
                changes "ducts to order and bend radius", from HOUSE;
            /// Diameter of the dowels that are grouted into rock below it.
            dowel_diameter_mm: Millimetre, 10.0..=32.0, "thinner bars are wire, thicker ones need a rig to drill for",
                asks "Diameter of a dowel",
                unknown "A usual bar is assumed.";
            /// Length of a dowel in the rock.
            dowel_length_mm: Millimetre, 300.0..=3000.0, "shorter than 300 holds in no rock, longer than 3000 is an anchor for an engineer",
                asks "Length of a dowel in the rock",
                unknown "Fifteen times its diameter is assumed in sound rock, twenty-five in weathered rock.";
            /// Tension that every dowel held in a test.
            dowel_proof_kn: Kilonewton, 0.0..=200.0, "zero is no test; a 32 mm bar yields at about 350",
                asks "Tension that every dowel held in a test",
                hint "Enter it when the test is done: until then their tension does not count.",
                unknown "They count as not tested.";
            /// Volume in one bag of dry concrete, when mixed.
            bag_mass_kg: Kilogram, 10.0..=50.0, "bags are sold from 10 to 50 kg",
                asks "What does one bag weigh?",
                because "a usual bag",
                changes "number of bags", from HOUSE;
        }
        counts {
            /// Dowels grouted into rock below it.
            dowel_count: 0..=24, "none to two dozen; fewer than four cannot hold every side",
                asks "Dowels into the rock",
                hint "Ribbed bars grouted into holes in the rock, near the corners. 0: none.",
                unknown "None, or four where a push would lift the block off the rock.";
            /// Ducts for power and data cast through it.
            duct_count: 0..=6, "none to six ducts; more leave no concrete between them",
                asks "How many ducts are cast through it?",
                hint "One for power and one for data at least; they do not share one.",
                takes 2.0, because "one for power, one for data",
                changes "ducts to order and where studs may stand", from HOUSE;
        }
        others {
            /// Strength class of the concrete.
            concrete: Concrete,
                asks "Which class of concrete?",
                hint "Of a class with a stroke the first figure is the strength of a cylinder in MPa, the second of a cube; in psi it is the specified strength.",
                unknown "The usual class for a footing is assumed.";
            /// How fast the cement hardens.
            cement: Cement,
                asks "How fast does the cement harden?",
                hint "It stands on the bag: the letter S, N or R, or the type.",
                takes Cement::Normal, because "the usual cement",
                changes "strength by day", from HOUSE;
            /// Where the concrete comes from.
            mix: Mix,
                asks "Where does it come from?",
                unknown "Ready-mixed concrete is assumed.";
            /// Steel in it.
            reinforcement: Reinforcement,
                asks "What steel goes into it?",
                takes Reinforcement::TopMesh, because "holds the top together while it cools and dries",
                changes "steel to order", from HOUSE;
            /// What lies between its base and the rock that it stands on.
            rock_surface: RockSurface,
                asks "If the base stands on rock, how clean is the rock?",
                hint "Brush it, wash it and mop it dry on the day of the pour: dirt left in the hollows makes the block softer.",
                unknown "Assumed: a thin film of dirt stays on it.",
                because "dirt stays in every hollow of a rock that is not brushed and washed",
                changes "even a thin film of soil under a base on rock takes half of its stiffness", from Source::judgement("5 mm of soil under a base on rock that nobody washed");
            /// What is done against frozen ground that grips its sides.
            frost_remedy: FrostRemedy,
                asks "What do you do against frost that grips its sides?",
                hint "Frozen clay, silt or fine sand freezes to the block and lifts it. Flat insulation costs no stiffness; a sleeve or gravel costs the side contact.",
                unknown "Insulation is planned where frost would lift the block.";
        }
    }
}

/// Concrete that stays below a hole, mm.
const BELOW_HOLE_MM: f64 = 30.0;
/// Upstand where none is stated, m.
const UPSTAND_M: f64 = 0.05;

/// Answers about the block that contradict each other, the plate or the studs. The pit's own section compares it with the block.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    let mut problems: Vec<Problem> = [contact_reversed(plan), hole_through(plan)]
        .into_iter()
        .flatten()
        .collect();
    problems.extend(contact_too_deep(plan));
    problems.extend(wider_than_block(plan));
    problems.extend(too_slender(plan));
    problems
}

fn contact_reversed(plan: &SitePlan) -> Option<Problem> {
    let (from, to) = (
        plan.block.side_contact_from_m?,
        plan.block.side_contact_to_m?,
    );
    (from > to).then(|| {
        Problem::between(
            paths![block.side_contact_from_m, block.side_contact_to_m],
            "The side contact ends above where it begins; both are depths below ground. For no contact make both equal \
             to the block's depth.",
        )
    })
}

fn contact_too_deep(plan: &SitePlan) -> Vec<Problem> {
    let Some(depth) = plan.block.depth_m else {
        return Vec::new();
    };
    [
        (
            path!(block.side_contact_from_m),
            plan.block.side_contact_from_m,
        ),
        (path!(block.side_contact_to_m), plan.block.side_contact_to_m),
    ]
    .into_iter()
    .filter(|(_, contact)| contact.is_some_and(|contact| contact > depth))
    .map(|(field, _)| {
        Problem::between(
            &[field, path!(block.depth_m)],
            "The soil cannot touch the block's sides below its base.",
        )
    })
    .collect()
}

fn hole_through(plan: &SitePlan) -> Option<Problem> {
    let (depth, embedment) = (plan.block.depth_m?, plan.anchors.embedment_mm?);
    let thickness = depth + plan.block.upstand_m.unwrap_or(UPSTAND_M);
    ((embedment + BELOW_HOLE_MM) / 1000.0 > thickness).then(|| {
        let say = |mm: f64| plan.units.unwrap_or_default().say(mm, Unit::Millimetre);
        Problem::between(
            paths![anchors.embedment_mm, block.depth_m],
            format!(
                "The studs' holes would go through the block: {} of embedment with {} of concrete below it is more than the block's {}. At \
                 most {} fits.",
                say(embedment),
                say(BELOW_HOLE_MM),
                say(thickness * 1000.0),
                say((thickness * 1000.0 - BELOW_HOLE_MM).max(0.0))
            ),
        )
    })
}

/// A block so thin that it bends: no rigid block, and no solution for one.
fn too_slender(plan: &SitePlan) -> Vec<Problem> {
    let block = &plan.block;
    let sides = [
        (path!(block.length_m), block.length_m),
        (path!(block.width_m), block.width_m),
        (path!(block.depth_m), block.depth_m),
    ];
    let pairs = [
        (0, 1, MOST_SIDE_RATIO),
        (1, 0, MOST_SIDE_RATIO),
        (2, 0, MOST_DEPTH_RATIO),
        (2, 1, MOST_DEPTH_RATIO),
    ];
    let slender = |(long, short, most): (usize, usize, f64)| {
        let ((long_field, long), (short_field, short)) = (sides[long], sides[short]);
        (long? > most * short?).then(|| {
            Problem::between(
                &[long_field, short_field],
                "One side of the block is more than ten times another: such a wall or pile bends, and the planner calculates a rigid block.",
            )
        })
    };
    pairs.into_iter().filter_map(slender).collect()
}

/// A base plate that is wider than the block it stands on.
fn wider_than_block(plan: &SitePlan) -> Vec<Problem> {
    let Some(plate) = plan.pier.plate_side_mm else {
        return Vec::new();
    };
    [
        (path!(block.length_m), plan.block.length_m),
        (path!(block.width_m), plan.block.width_m),
    ]
    .into_iter()
    .filter_map(|(field, side)| Some((field, side? * 1000.0)))
    .filter(|&(_, side)| plate > side)
    .map(|(field, side)| {
        let say = |mm: f64| plan.units.unwrap_or_default().say(mm, Unit::Millimetre);
        let said = format!(
            "The base plate of {} is wider than the block, which is {}; at most as wide fits.",
            say(plate),
            say(side)
        );
        Problem::between(&[path!(pier.plate_side_mm), field], said)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(change: impl Fn(&mut SitePlan)) -> Vec<Vec<String>> {
        let mut plan = SitePlan::unknown();
        change(&mut plan);
        contradictions(&plan)
            .into_iter()
            .map(|problem| problem.fields)
            .collect()
    }

    #[test]
    fn contradictions_are_named_at_both_fields() {
        let found = fields(|plan| {
            plan.block.depth_m = Some(0.3);
            plan.block.side_contact_from_m = Some(0.5);
            plan.block.side_contact_to_m = Some(0.2);
            plan.anchors.embedment_mm = Some(400.0);
            plan.block.length_m = Some(0.4);
            plan.pier.plate_side_mm = Some(500.0);
            plan.anchors.circle_diameter_mm = Some(450.0);
        });
        let named: Vec<Vec<&str>> = found
            .iter()
            .map(|fields| fields.iter().map(String::as_str).collect())
            .collect();
        assert_eq!(
            named,
            [
                ["block.side_contact_from_m", "block.side_contact_to_m"],
                ["anchors.embedment_mm", "block.depth_m"],
                ["block.side_contact_from_m", "block.depth_m"],
                ["pier.plate_side_mm", "block.length_m"],
            ]
        );
    }

    #[test]
    fn a_wall_or_a_pile_is_no_block() {
        let found = fields(|plan| {
            plan.block.length_m = Some(10.0);
            plan.block.width_m = Some(0.5);
            plan.block.depth_m = Some(5.5);
        });
        assert_eq!(
            found,
            [
                ["block.length_m", "block.width_m"],
                ["block.depth_m", "block.width_m"]
            ]
        );
    }

    #[test]
    fn contact_nowhere_is_no_contradiction() {
        assert!(
            fields(|plan| {
                plan.block.depth_m = Some(1.0);
                plan.block.side_contact_from_m = Some(1.0);
                plan.block.side_contact_to_m = Some(1.0);
            })
            .is_empty()
        );
    }
}
