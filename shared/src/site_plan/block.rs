//! Footing: the block of concrete.

use crate::field::{Problem, choice, section};
use crate::site_plan::SitePlan;

choice! {
    /// Strength class of the concrete, EN 206: cylinder over cube.
    pub enum Concrete {
        /// 20 MPa cylinder.
        C20 = "C20/25",
        /// 25 MPa cylinder.
        C25 = "C25/30",
        /// 28 MPa cylinder (about 4000 psi).
        C28 = "C28/35",
        /// 30 MPa cylinder.
        C30 = "C30/37",
        /// 35 MPa cylinder.
        C35 = "C35/45",
        /// 40 MPa cylinder.
        C40 = "C40/50",
    }
}

choice! {
    /// How fast the cement hardens, EN 1992-1-1 3.1.2(6).
    pub enum Cement {
        /// Class S.
        Slow = "slow",
        /// Class N.
        Normal = "normal",
        /// Class R.
        Rapid = "rapid",
    }
}

choice! {
    /// Where the concrete comes from.
    pub enum Mix {
        /// Delivered ready-mixed.
        Ready = "ready",
        /// Mixed on site from cement, sand and gravel.
        Site = "site",
        /// Mixed on site from bags of dry concrete.
        Bagged = "bagged",
    }
}

choice! {
    /// Steel in the block.
    pub enum Reinforcement {
        /// None: a plain block.
        Plain = "plain",
        /// A mesh under the top face.
        TopMesh = "top_mesh",
        /// Bars on all faces.
        Cage = "cage",
    }
}

section! {
    /// Footing.
    pub struct Block in block {
        numbers {
            /// Length along x (east).
            length_m: Metre, 0.2..=10.0, "a block shorter than 0.2 takes no studs, one longer than 10 bends and is no block";
            /// Width along y (north).
            width_m: Metre, 0.2..=10.0, "a block narrower than 0.2 takes no studs, one wider than 10 bends and is no block";
            /// Depth of its base below ground level.
            depth_m: Metre, 0.1..=6.0, "less than 0.1 is a paving slab, and deeper than 6 needs an engineer's shoring";
            /// Height of its top above ground level.
            upstand_m: Metre, 0.0..=1.5, "a block standing higher than 1.5 out of the ground is a wall";
            /// Depth below ground from which the soil is hard against its sides.
            side_contact_from_m: Metre, 0.0..=6.0, "between ground level and the deepest block";
            /// Depth below ground to which the soil is hard against its sides.
            side_contact_to_m: Metre, 0.0..=6.0, "between ground level and the deepest block";
            /// Inside diameter of each duct.
            duct_diameter_mm: Millimetre, 16.0..=160.0, "from a conduit to a drain pipe";
            /// Volume in one bag of dry concrete, when mixed.
            bag_mass_kg: Kilogram, 10.0..=50.0, "bags are sold from 10 to 50 kg";
        }
        counts {
            /// Ducts for power and data cast through it.
            duct_count: 0..=6, "none to six ducts; more leave no concrete between them";
        }
        others {
            /// Strength class of the concrete.
            concrete: Option<Concrete>,
            /// How fast the cement hardens.
            cement: Option<Cement>,
            /// Where the concrete comes from.
            mix: Option<Mix>,
            /// Steel in it.
            reinforcement: Option<Reinforcement>,
        }
    }
}

/// Answers about the block that contradict each other or the pit.
#[must_use]
pub fn contradictions(_plan: &SitePlan) -> Vec<Problem> {
    Vec::new()
}
