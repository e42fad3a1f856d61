//! Anchors: the resin-bonded studs.

use crate::field::{Problem, choice, section};
use crate::site_plan::SitePlan;

choice! {
    /// Thread size, ISO metric coarse.
    pub enum Size {
        /// 10 mm.
        M10 = "M10",
        /// 12 mm.
        M12 = "M12",
        /// 16 mm.
        M16 = "M16",
        /// 20 mm.
        M20 = "M20",
        /// 24 mm.
        M24 = "M24",
    }
}

choice! {
    /// Strength class of the studs, ISO 898-1 and ISO 3506-1.
    pub enum StrengthClass {
        /// 500 MPa.
        C5_8 = "5.8",
        /// 800 MPa.
        C8_8 = "8.8",
        /// 1000 MPa.
        C10_9 = "10.9",
        /// Stainless, 700 MPa.
        A4_70 = "A4-70",
        /// Stainless, 800 MPa.
        A4_80 = "A4-80",
    }
}

choice! {
    /// State of the thread when tightened.
    pub enum Lubrication {
        /// As delivered, dry.
        Dry = "dry",
        /// Lightly oiled.
        Oiled = "oiled",
        /// Wax or assembly paste.
        Paste = "paste",
    }
}

choice! {
    /// What tightens the nuts.
    pub enum Tool {
        /// By feel, with a spanner.
        Feel = "feel",
        /// A torque wrench.
        TorqueWrench = "torque_wrench",
    }
}

choice! {
    /// Coating of carbon-steel studs.
    pub enum Coating {
        /// None, or oiled black.
        Plain = "plain",
        /// Electroplated zinc.
        Zinc = "zinc",
        /// Hot-dip galvanised.
        Galvanised = "galvanised",
    }
}

choice! {
    /// Whether a hole is wet when the resin goes in.
    pub enum Hole {
        /// Dry.
        Dry = "dry",
        /// Wet or damp.
        Wet = "wet",
    }
}

section! {
    /// Anchors.
    pub struct Anchors in anchors {
        numbers {
            /// Length of a stud.
            length_mm: Millimetre, 60.0..=800.0, "shorter cannot hold, longer is not sold";
            /// Embedment of a stud in the concrete.
            embedment_mm: Millimetre, 40.0..=500.0, "the bond model of the codes begins at four diameters and ends at twenty";
            /// Diameter of the circle on which the studs stand.
            circle_diameter_mm: Millimetre, 40.0..=1500.0, "smaller cannot be drilled, larger is no plate";
            /// Diameter of the hole.
            hole_diameter_mm: Millimetre, 11.0..=40.0, "a hole must be wider than its stud and narrow enough for resin";
            /// Characteristic bond strength in cracked concrete, from the product's approval.
            bond_strength_mpa: Megapascal, 0.5..=40.0, "the codes' least value is above 1 and no resin reaches 40";
            /// Characteristic bond strength in uncracked concrete, from the product's approval.
            bond_strength_uncracked_mpa: Megapascal, 0.5..=40.0, "the codes' least value is above 1 and no resin reaches 40";
            /// Largest installation torque that the product allows.
            max_torque_n_m: NewtonMetre, 1.0..=2000.0, "below 1 is finger tight, above 2000 no stud of this size stands it";
            /// Torque that is meant to be used.
            torque_n_m: NewtonMetre, 1.0..=5000.0, "below 1 is finger tight, above 5000 no spanner does it";
            /// Temperature of the concrete when the resin goes in.
            concrete_temperature_c: Celsius, -20.0..=50.0, "no resin is used colder or hotter";
            /// Installation factor γ_inst from the product's approval.
            installation_factor: One, 1.0..=1.6, "approvals give 1.0 to 1.4";
            /// Factor for sustained load ψ0_sus from the product's approval.
            sustained_factor: One, 0.2..=1.0, "a share of the short-term bond";
            /// Least edge distance from the product's approval.
            min_edge_mm: Millimetre, 20.0..=400.0, "smaller splits the concrete when drilled";
            /// Least spacing from the product's approval.
            min_spacing_mm: Millimetre, 20.0..=400.0, "smaller splits the concrete when drilled";
            /// Least thickness of the concrete from the product's approval.
            min_thickness_mm: Millimetre, 60.0..=800.0, "thinner breaks out behind the hole";
            /// Edge distance that rules out splitting, from the product's approval.
            splitting_edge_mm: Millimetre, 40.0..=1000.0, "approvals give one to two and a half embedments";
            /// Displacement for short load per bond stress, from the product's approval.
            displacement_short_mm_per_mpa: MillimetrePerMegapascal, 0.001..=2.0, "approvals give 0.01 to 0.2";
            /// Displacement for long load per bond stress, from the product's approval.
            displacement_long_mm_per_mpa: MillimetrePerMegapascal, 0.001..=5.0, "approvals give 0.03 to 0.5";
            /// Working time of the resin at the concrete's temperature, from the product's sheet.
            gel_time_min: Minute, 0.5..=600.0, "from half a minute in heat to hours in cold";
            /// Time before full load at the concrete's temperature, from the product's sheet.
            cure_time_h: Hour, 0.1..=240.0, "from minutes in heat to days in cold";
            /// Volume of one cartridge.
            cartridge_ml: Millilitre, 50.0..=2000.0, "cartridges are sold from about 150 to 1500 ml";
            /// Friction in the thread.
            thread_friction: One, 0.04..=0.5, "from the best paste to bare galling steel";
            /// Friction under the nut.
            under_head_friction: One, 0.04..=0.5, "from the best paste to bare galling steel";
        }
        counts {
            /// Number of studs.
            count: 3..=12, "two studs cannot level a plate and more than twelve leave no concrete between them";
        }
        others {
            /// Thread size.
            size: Option<Size>,
            /// Strength class.
            strength_class: Option<StrengthClass>,
            /// Whether the concrete may be cracked.
            cracked: Option<bool>,
            /// State of the thread.
            lubrication: Option<Lubrication>,
            /// What tightens the nuts.
            tool: Option<Tool>,
            /// Coating of the studs.
            coating: Option<Coating>,
            /// Whether the holes are wet.
            hole: Option<Hole>,
        }
    }
}

/// Answers about the studs that contradict each other, the plate or the block.
#[must_use]
pub fn contradictions(_plan: &SitePlan) -> Vec<Problem> {
    Vec::new()
}
