//! Anchors: the resin-bonded studs.

mod against;
pub(crate) mod sources;
mod tables;

use crate::field::{choice, section};
use crate::site_plan::HOUSE;
use crate::stock::Stock;

use sources::{ACI_EDGE, DISPLACEMENT, EN_DEPTH, PLACEHOLDER};

pub use against::contradictions;
pub use tables::{BondRow, MOST_ROWS, TimeRow, problems};

choice! {
    /// Thread size, ISO metric coarse or ASME B1.1 UNC.
    pub enum Size {
        /// 10 mm.
        M10 = "M10", "M10, 10 mm";
        /// 12 mm.
        M12 = "M12", "M12, 12 mm";
        /// 16 mm.
        M16 = "M16", "M16, 16 mm";
        /// 20 mm.
        M20 = "M20", "M20, 20 mm";
        /// 24 mm.
        M24 = "M24", "M24, 24 mm";
        /// 3/8 inch.
        Unc3_8 = "3/8-16", "3/8″-16";
        /// 1/2 inch.
        Unc1_2 = "1/2-13", "1/2″-13";
        /// 5/8 inch.
        Unc5_8 = "5/8-11", "5/8″-11";
        /// 3/4 inch.
        Unc3_4 = "3/4-10", "3/4″-10";
        /// 7/8 inch.
        Unc7_8 = "7/8-9", "7/8″-9";
        /// 1 inch.
        Unc1 = "1-8", "1″-8";
    }
}

choice! {
    /// Strength class of the studs: ISO 898-1 and ISO 3506-1, ASTM F1554 and A193.
    pub enum StrengthClass {
        /// 500 MPa.
        C5_8 = "5.8", "5.8";
        /// 800 MPa.
        C8_8 = "8.8", "8.8";
        /// 1000 MPa.
        C10_9 = "10.9", "10.9";
        /// Stainless, 700 MPa.
        A4_70 = "A4-70", "A4-70, stainless";
        /// Stainless, 800 MPa.
        A4_80 = "A4-80", "A4-80, stainless";
        /// 58 ksi.
        F1554_36 = "F1554-36", "F1554 grade 36";
        /// 75 ksi.
        F1554_55 = "F1554-55", "F1554 grade 55";
        /// 125 ksi.
        F1554_105 = "F1554-105", "F1554 grade 105";
        /// 125 ksi.
        A193B7 = "A193-B7", "A193 B7";
        /// Stainless 304, 75 ksi.
        A193B8 = "A193-B8", "304 stainless, A193 B8";
        /// Stainless 316, 75 ksi.
        A193B8M = "A193-B8M", "316 stainless, A193 B8M";
    }
}

choice! {
    /// State of the thread when tightened.
    pub enum Lubrication {
        /// As delivered, dry.
        Dry = "dry", "Nothing: dry, as delivered";
        /// Lightly oiled.
        Oiled = "oiled", "A light oil";
        /// Wax or assembly paste.
        Paste = "paste", "Wax or assembly paste";
    }
}

choice! {
    /// What tightens the nuts.
    pub enum Tool {
        /// By feel, with a spanner.
        Feel = "feel", "A spanner, by feel";
        /// A torque wrench.
        TorqueWrench = "torque_wrench", "A torque wrench";
    }
}

choice! {
    /// Coating of carbon-steel studs.
    pub enum Coating {
        /// None, or oiled black.
        Plain = "plain", "None, or black";
        /// Electroplated zinc.
        Zinc = "zinc", "Electroplated zinc";
        /// Hot-dip galvanised.
        Galvanised = "galvanised", "Hot-dip galvanised";
    }
}

choice! {
    /// Whether a hole is wet when the resin goes in.
    pub enum Hole {
        /// Dry.
        Dry = "dry", "Dry";
        /// Wet or damp.
        Wet = "wet", "Wet or damp";
    }
}

choice! {
    /// Kind of the resin.
    pub enum Resin {
        /// Vinylester, or the older polyester.
        Vinylester = "vinylester", "Vinylester or polyester";
        /// Epoxy.
        Epoxy = "epoxy", "Epoxy";
    }
}

choice! {
    /// The nuts under the plate.
    pub enum LowerNuts {
        /// Tight against the plate: upper and lower nut clamp it between them.
        Tight = "tight", "A nut, tight against the plate";
        /// Backed off once the grout is hard.
        BackedOff = "backed_off", "A nut, backed off when the grout is hard";
        /// None: the plate rests on the concrete, on a shim or on grout.
        None = "none", "No nut: the plate rests on concrete, shim or grout";
    }
}

impl Size {
    /// The family that sells it.
    pub const fn stock(self) -> Stock {
        match self {
            Self::M10 | Self::M12 | Self::M16 | Self::M20 | Self::M24 => Stock::Metric,
            Self::Unc3_8
            | Self::Unc1_2
            | Self::Unc5_8
            | Self::Unc3_4
            | Self::Unc7_8
            | Self::Unc1 => Stock::Inch,
        }
    }

    /// The sizes of a family, smallest first.
    pub fn of(stock: Stock) -> impl Iterator<Item = Self> {
        Self::ALL
            .iter()
            .copied()
            .filter(move |size| size.stock() == stock)
    }
}

impl StrengthClass {
    /// The family that sells it.
    pub const fn stock(self) -> Stock {
        match self {
            Self::C5_8 | Self::C8_8 | Self::C10_9 | Self::A4_70 | Self::A4_80 => Stock::Metric,
            Self::F1554_36
            | Self::F1554_55
            | Self::F1554_105
            | Self::A193B7
            | Self::A193B8
            | Self::A193B8M => Stock::Inch,
        }
    }
}

section! {
    /// Anchors.
    pub struct Anchors in anchors {
        numbers {
            /// Length of a stud.
            length_mm: Millimetre, 60.0..=800.0, "shorter cannot hold, longer is not sold",
                asks "Length of a stud",
                because "embedment, gap, plate, washer, nut and two threads, rounded up",
                changes "how deep it can go", from HOUSE;
            /// Embedment of a stud in the concrete.
            embedment_mm: Millimetre, 40.0..=500.0, "the bond model of the codes begins at four diameters and ends at twenty",
                asks "Embedment depth: how deep does it sit in the concrete?",
                because "a usual depth for this size",
                changes "resistance of bond and cone", from HOUSE;
            /// Diameter of the circle on which the studs stand.
            circle_diameter_mm: Millimetre, 40.0..=1500.0, "smaller cannot be drilled, larger is no plate",
                asks "Diameter of the stud circle",
                hint "Outside the column, inside the plate.",
                because "clear of the column for a socket, inside the plate",
                changes "force in each stud", from HOUSE;
            /// Diameter of the hole.
            hole_diameter_mm: Millimetre, 11.0..=40.0, "a hole must be wider than its stud and narrow enough for resin",
                asks "Diameter of the drilled hole",
                hint "From the resin's sheet, for this thread.",
                because "the usual hole for this size",
                changes "resin in each hole", from HOUSE;
            /// Characteristic bond strength in cracked concrete, from the product's approval.
            bond_strength_mpa: Megapascal, 0.5..=40.0, "the codes' least value is above 1 and no resin reaches 40",
                asks "Bond strength in cracked concrete",
                hint "Characteristic value, from the product's approval.",
                unknown "The least value that a code allows.";
            /// Characteristic bond strength in uncracked concrete, from the product's approval.
            bond_strength_uncracked_mpa: Megapascal, 0.5..=40.0, "the codes' least value is above 1 and no resin reaches 40",
                asks "Bond strength in uncracked concrete",
                hint "Characteristic value, from the product's approval.",
                unknown "The least value that a code allows.";
            /// Largest installation torque that the product allows.
            max_torque_n_m: NewtonMetre, 1.0..=2000.0, "below 1 is finger tight, above 2000 no stud of this size stands it",
                asks "Maximum torque on the resin's sheet",
                hint "The installation torque for this thread. It is the limit, whatever else is calculated.",
                unknown "No limit is known. Look it up before you tighten.";
            /// Torque that is meant to be used.
            torque_n_m: NewtonMetre, 1.0..=5000.0, "below 1 is finger tight, above 5000 no spanner does it",
                asks "To what torque will you tighten?",
                hint "Type the unit too, for instance 80 N m or 60 lbf ft.",
                unknown "A torque is recommended.";
            /// Temperature of the concrete when the resin goes in.
            concrete_temperature_c: Celsius, -20.0..=50.0, "no resin is used colder or hotter",
                asks "How warm is the concrete when the resin goes in?",
                hint "The concrete, not the air.",
                unknown "The temperature of the work counts.";
            /// Installation factor γ_inst from the product's approval.
            installation_factor: One, 1.0..=1.6, "approvals give 1.0 to 1.4",
                asks "Installation factor",
                hint "Written γ inst; 1.0 to 1.4.",
                takes 1.2, because "an average product",
                changes "design resistance of the concrete", from PLACEHOLDER;
            /// Factor for sustained load ψ0_sus from the product's approval.
            sustained_factor: One, 0.2..=1.0, "a share of the short-term bond",
                asks "Factor for sustained load",
                hint "Written ψ sus, with a small zero.",
                because "the code's value where a product states none",
                changes "bond under lasting load", from PLACEHOLDER;
            /// Least embedment from the product's approval.
            min_embedment_mm: Millimetre, 40.0..=500.0, "approvals begin at four to six diameters",
                asks "Least embedment",
                hint "Written h ef,min.",
                unknown "Where the code's model begins.";
            /// Greatest embedment from the product's approval.
            max_embedment_mm: Millimetre, 40.0..=500.0, "approvals end at twelve to twenty diameters",
                asks "Greatest embedment",
                hint "Written h ef,max.",
                because "twenty diameters, where both codes end",
                changes "how deep a stud may be", from EN_DEPTH;
            /// Least edge distance from the product's approval.
            min_edge_mm: Millimetre, 20.0..=400.0, "smaller splits the concrete when drilled",
                asks "Least edge distance",
                hint "Written c min.",
                because "six diameters, without tests",
                changes "how near an edge a stud may stand", from ACI_EDGE;
            /// Least spacing from the product's approval.
            min_spacing_mm: Millimetre, 20.0..=400.0, "smaller splits the concrete when drilled",
                asks "Least spacing",
                hint "Written s min.",
                because "six diameters, without tests",
                changes "how near each other studs may stand", from ACI_EDGE;
            /// Least thickness of the concrete from the product's approval.
            min_thickness_mm: Millimetre, 60.0..=800.0, "thinner breaks out behind the hole",
                asks "Least thickness of the concrete",
                unknown "Worked out from the embedment.";
            /// Edge distance that rules out splitting, from the product's approval.
            splitting_edge_mm: Millimetre, 40.0..=1000.0, "approvals give one to two and a half embedments",
                asks "Edge distance that rules out splitting",
                hint "Written c cr,sp.",
                because "twice the embedment, without tests",
                changes "splitting of the block", from PLACEHOLDER;
            /// Displacement for short load per bond stress, from the product's approval.
            displacement_short_mm_per_mpa: MillimetrePerMegapascal, 0.001..=2.0, "approvals give 0.01 to 0.2",
                asks "Displacement for a short load",
                hint "Per stress of bond.",
                takes 0.020, because "a published value in uncracked concrete",
                changes "turn of a plate on nuts", from DISPLACEMENT;
            /// Displacement for long load per bond stress, from the product's approval.
            displacement_long_mm_per_mpa: MillimetrePerMegapascal, 0.001..=5.0, "approvals give 0.03 to 0.5",
                asks "Displacement for a long load",
                hint "Per stress of bond.",
                takes 0.21, because "a published value in cracked concrete",
                changes "slow creep of the studs", from DISPLACEMENT;
            /// Working time of the resin at the concrete's temperature, from the product's sheet.
            gel_time_min: Minute, 0.5..=600.0, "from half a minute in heat to hours in cold",
                asks "Working time of the resin",
                hint "At that temperature, from the product's sheet.",
                unknown "A cautious time for the temperature.";
            /// Curing time of the resin at the concrete's temperature, from the product's sheet.
            cure_time_h: Hour, 0.1..=240.0, "from minutes in heat to days in cold",
                asks "Curing time of the resin",
                hint "At that temperature, from the product's sheet.",
                unknown "A cautious time for the temperature.";
            /// Volume of one cartridge.
            cartridge_ml: Millilitre, 50.0..=2000.0, "cartridges are sold from about 150 to 1500 ml",
                asks "What one cartridge holds",
                because "a size that fits a common gun",
                changes "how many to buy", from PLACEHOLDER;
            /// Warmest that the concrete round the studs becomes in use.
            service_temperature_c: Celsius, 0.0..=80.0, "shaded ground is near 20, a sunlit slab near 50",
                asks "How warm does the concrete become in use?",
                hint "In the sun on the hottest day.",
                takes 40.0, because "the top of a block in the summer sun",
                changes "which row of a product's bond strengths counts", from PLACEHOLDER;
            /// Resin thrown away at the start of each nozzle.
            purge_ml: Millilitre, 0.0..=60.0, "zero with a pre-mixed capsule, a few strokes with a nozzle",
                asks "Resin thrown away at the start of each nozzle",
                takes 15.0, because "three strokes until the colour is even",
                changes "how many cartridges to buy", from PLACEHOLDER;
            /// Share of its preload that a stud loses in each tenfold of hours.
            relaxation_factor: One, 0.0..=0.3, "steel alone loses almost nothing, a soft resin a tenth and more",
                asks "Share of the preload lost in each tenfold of hours",
                hint "From long tests of the product.",
                takes 0.05, because "no general law for resin was found; 3 to 10 % a decade of hours is considered likely",
                changes "when to tighten again", from HOUSE;
            /// Friction in the thread.
            thread_friction: One, 0.04..=0.5, "from the best paste to bare galling steel",
                asks "Friction in the thread",
                hint "From a friction test.",
                unknown "Worked out from what is on the threads.";
            /// Friction under the nut.
            under_head_friction: One, 0.04..=0.5, "from the best paste to bare galling steel",
                asks "Friction under the nut",
                hint "From a friction test.",
                unknown "Worked out from what is on the threads.";
        }
        counts {
            /// Number of studs.
            count: 3..=12, "two studs cannot level a plate and more than twelve leave no concrete between them",
                asks "How many studs?",
                hint "Four stand square and level easily.",
                takes 4.0, because "four stand square and level easily",
                changes "force in each stud", from HOUSE;
        }
        others {
            /// Thread size.
            size: Size,
                asks "Which thread?",
                because "the usual stud of a pier, or the nearest that fits the stated hole and depth",
                changes "stiffness and resistance", from HOUSE;
            /// Strength class.
            strength_class: StrengthClass,
                asks "Strength class",
                hint "Stamped on the end of the rod.",
                because "the usual class",
                changes "proof load", from HOUSE;
            /// Whether the concrete may be cracked.
            cracked: bool,
                asks "May the concrete be cracked?",
                takes true, because "a block in the ground may crack as it dries",
                changes "resistance of cone and bond", from HOUSE;
            /// State of the thread.
            lubrication: Lubrication,
                asks "What is on the threads?",
                takes Lubrication::Oiled, because "as most studs come",
                changes "preload from torque", from HOUSE;
            /// What tightens the nuts.
            tool: Tool,
                asks "What do you tighten with?",
                takes Tool::TorqueWrench, because "a wrench is on the list of materials",
                changes "scatter of the preload", from HOUSE;
            /// Coating of the studs.
            coating: Coating,
                asks "Coating",
                takes Coating::Zinc, because "the usual finish",
                changes "corrosion out of doors", from HOUSE;
            /// Whether the holes are wet.
            hole: Hole,
                asks "Are the holes wet?",
                takes Hole::Dry, because "drilled in dry weather",
                changes "bond and curing time", from HOUSE;
            /// Kind of the resin.
            resin: Resin,
                asks "What kind of resin is it?",
                hint "It stands on the cartridge.",
                unknown "The slower of both kinds counts, and no bonding in the cold.";
            /// The nuts under the plate.
            lower_nuts: LowerNuts,
                asks "What is under the plate at each stud?",
                hint "It decides whether tightening pulls on the resin.",
                unknown "Tight nuts under a plate on nuts; backed off once grout is hard.";
            /// Bond strengths by temperature in use, from the product's approval; coolest first.
            bond_by_temperature: Vec<BondRow>,
                asks "Bond strengths by temperature in use",
                hint "Rows like 40: 7 / 10; 60: 5.5 / 8: up to so many °C, cracked and uncracked in MPa.",
                unknown "The single values above are used.";
            /// Working and curing times by temperature of the concrete, from the product's sheet; coldest first.
            times_by_temperature: Vec<TimeRow>,
                asks "Working and curing times by temperature",
                hint "Rows like 10: 50 / 48; 20: 25 / 24: at so many °C, minutes of working time and hours of curing.",
                unknown "The single values above are used, or cautious ones.";
        }
    }
}
