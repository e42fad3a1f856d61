//! Anchors: the resin-bonded studs.

mod against;

use crate::path;
use serde::{Deserialize, Serialize};

use crate::field::{Answer, Cell, Kind, Problem, choice, section};
use crate::site_plan::SitePlan;

pub use against::contradictions;

/// Most rows of a product's table.
pub const MOST_ROWS: usize = 24;

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

choice! {
    /// Kind of the resin.
    pub enum Resin {
        /// Vinylester, or the older polyester.
        Vinylester = "vinylester",
        /// Epoxy.
        Epoxy = "epoxy",
    }
}

choice! {
    /// The nuts under the plate.
    pub enum LowerNuts {
        /// Tight against the plate: upper and lower nut clamp it between them.
        Tight = "tight",
        /// Backed off once the grout is hard.
        BackedOff = "backed_off",
        /// None: the plate rests on the concrete, on a shim or on grout.
        None = "none",
    }
}

/// Bond strengths of a product up to a temperature of the concrete in use, a row of its approval.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BondRow {
    /// Warmest that the concrete may become, °C.
    pub up_to_c: f64,
    /// Characteristic bond strength in cracked concrete, MPa.
    pub cracked_mpa: f64,
    /// Characteristic bond strength in uncracked concrete, MPa.
    pub uncracked_mpa: f64,
}

/// Times of a product at a temperature of the concrete, a row of its sheet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TimeRow {
    /// Temperature of the concrete, °C.
    pub concrete_c: f64,
    /// Working time, minutes.
    pub working_min: f64,
    /// Time before full load, hours.
    pub cure_h: f64,
}

impl Answer for Vec<BondRow> {
    const KIND: Kind = Kind::Rows(
        &[
            Cell::number("up_to_c", "Warmest that the concrete may become, °C."),
            Cell::number(
                "cracked_mpa",
                "Characteristic bond strength in cracked concrete, MPa.",
            ),
            Cell::number(
                "uncracked_mpa",
                "Characteristic bond strength in uncracked concrete, MPa.",
            ),
        ],
        MOST_ROWS,
    );
}

impl Answer for Vec<TimeRow> {
    const KIND: Kind = Kind::Rows(
        &[
            Cell::number("concrete_c", "Temperature of the concrete, °C."),
            Cell::number("working_min", "Working time, minutes."),
            Cell::number("cure_h", "Time before full load, hours."),
        ],
        MOST_ROWS,
    );
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
            /// Least embedment from the product's approval.
            min_embedment_mm: Millimetre, 40.0..=500.0, "approvals begin at four to six diameters";
            /// Greatest embedment from the product's approval.
            max_embedment_mm: Millimetre, 40.0..=500.0, "approvals end at twelve to twenty diameters";
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
            /// Warmest that the concrete round the studs becomes in use.
            service_temperature_c: Celsius, 0.0..=80.0, "shaded ground is near 20, a sunlit slab near 50";
            /// Resin thrown away at the start of each nozzle.
            purge_ml: Millilitre, 0.0..=60.0, "nought with a pre-mixed capsule, a few strokes with a nozzle";
            /// Share of its preload that a stud loses in each tenfold of hours.
            relaxation_factor: One, 0.0..=0.3, "steel alone loses almost nothing, a soft resin a tenth and more";
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
            size: Size,
            /// Strength class.
            strength_class: StrengthClass,
            /// Whether the concrete may be cracked.
            cracked: bool,
            /// State of the thread.
            lubrication: Lubrication,
            /// What tightens the nuts.
            tool: Tool,
            /// Coating of the studs.
            coating: Coating,
            /// Whether the holes are wet.
            hole: Hole,
            /// Kind of the resin.
            resin: Resin,
            /// The nuts under the plate.
            lower_nuts: LowerNuts,
            /// Bond strengths by temperature in use, from the product's approval; coolest first.
            bond_by_temperature: Vec<BondRow>,
            /// Working and hardening times by temperature of the concrete, from the product's sheet; coldest first.
            times_by_temperature: Vec<TimeRow>,
        }
    }
}

/// Rows of a product's tables that are out of range or out of order.
#[must_use]
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let anchors = &plan.anchors;
    let bonds = anchors.bond_by_temperature.as_deref().unwrap_or_default();
    let times = anchors.times_by_temperature.as_deref().unwrap_or_default();
    let mut problems = rows(
        &path!(anchors.bond_by_temperature),
        &bonds
            .iter()
            .map(|row| [row.up_to_c, row.cracked_mpa, row.uncracked_mpa])
            .collect::<Vec<_>>(),
        [0.0..=120.0, 0.5..=40.0, 0.5..=40.0],
        ["up_to_c", "cracked_mpa", "uncracked_mpa"],
    );
    problems.extend(rows(
        &path!(anchors.times_by_temperature),
        &times
            .iter()
            .map(|row| [row.concrete_c, row.working_min, row.cure_h])
            .collect::<Vec<_>>(),
        [-30.0..=60.0, 0.2..=1000.0, 0.05..=500.0],
        ["concrete_c", "working_min", "cure_h"],
    ));
    problems
}

/// Problems of one table: too long, a cell out of range, temperatures that do not rise.
fn rows(
    field: &str,
    table: &[[f64; 3]],
    ranges: [std::ops::RangeInclusive<f64>; 3],
    names: [&str; 3],
) -> Vec<Problem> {
    let mut problems = Vec::new();
    let whole = |said: String| Problem {
        fields: vec![field.to_owned()],
        value: None,
        said,
    };
    if table.len() > MOST_ROWS {
        problems.push(whole(format!(
            "There are {} rows; {MOST_ROWS} is more than any sheet has.",
            table.len()
        )));
    }
    for (i, row) in table.iter().enumerate() {
        for ((&value, range), name) in row.iter().zip(&ranges).zip(names) {
            if !(value.is_finite() && range.contains(&value)) {
                problems.push(Problem {
                    fields: vec![format!("{field}[{i}].{name}")],
                    value: value.is_finite().then_some(value),
                    said: format!(
                        "{value} is outside the range of {} to {}.",
                        range.start(),
                        range.end()
                    ),
                });
            }
        }
    }
    if table.windows(2).any(|pair| pair[0][0] >= pair[1][0]) {
        problems.push(whole(
            "The temperatures of the rows must rise from row to row.".to_owned(),
        ));
    }
    problems
}
