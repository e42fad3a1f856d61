//! Pier: the column, its plates, and how it bends.

mod chosen;
pub mod figures;
mod plates;
pub mod section;
mod sight;
mod storm;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{
    Kilogram, Metre, Millimetre, Newton, NewtonMetrePerRadian, NewtonPerMetre, NewtonSquareMetre,
    One, Unit,
};
use crate::notes::{Found, Notes, Working};
use crate::rules::aisc_360_16::wall;
use crate::rules::en_1994_1_1_2004::filled_tube;
use crate::rules::en_10210_2_2006::section as tube;
use crate::rules::mechanics::cantilever;
use crate::stages::block::Block;
use crate::stages::joint;
use crate::stages::loads::Loads;
use crate::units::{
    BendingStiffness, Force, Length, LinearStiffness, Mass, Moment, RotationalStiffness, kilogram,
    metre, millimetre, newton, newton_metre, newton_metre_per_radian, newton_per_metre,
    newton_square_metre,
};

/// The column.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Pier {
    /// Height of the column with its plates.
    #[serde(rename = "height_m", with = "metre")]
    pub height: Length,
    /// Outside diameter.
    #[serde(rename = "outside_diameter_mm", with = "millimetre")]
    pub outside_diameter: Length,
    /// Wall.
    #[serde(rename = "wall_mm", with = "millimetre")]
    pub wall: Length,
    /// Side of the base plate.
    #[serde(rename = "plate_side_mm", with = "millimetre")]
    pub plate_side: Length,
    /// Thickness of the base plate.
    #[serde(rename = "plate_thickness_mm", with = "millimetre")]
    pub plate_thickness: Length,
    /// Gap or grout under the plate.
    #[serde(rename = "gap_mm", with = "millimetre")]
    pub gap: Length,
    /// Column, fill and plates.
    #[serde(rename = "mass_kg", with = "kilogram")]
    pub mass: Mass,
    /// What is lifted over the studs: column and plates, not yet filled.
    #[serde(rename = "lifted_mass_kg", with = "kilogram")]
    pub lifted_mass: Mass,
    /// Of which tube and fill, spread over the height.
    #[serde(rename = "shaft_mass_kg", with = "kilogram")]
    pub shaft_mass: Mass,
    /// Of which the plate at the top.
    #[serde(rename = "top_plate_mass_kg", with = "kilogram")]
    pub top_plate_mass: Mass,
    /// E·I of column and fill.
    #[serde(rename = "bending_stiffness_n_m2", with = "newton_square_metre")]
    pub bending_stiffness: BendingStiffness,
    /// κ·G·A of the tube.
    #[serde(rename = "shear_stiffness_n", with = "newton")]
    pub shear_stiffness: Force,
    /// Turn of the plate on studs, resin, nuts or grout.
    #[serde(
        rename = "base_joint_stiffness_n_m_per_rad",
        with = "newton_metre_per_radian"
    )]
    pub base_joint_stiffness: RotationalStiffness,
    /// Force at the top for a movement of the top, on a block that stands still.
    #[serde(rename = "top_stiffness_n_per_m", with = "newton_per_metre")]
    pub top_stiffness: LinearStiffness,
    /// Largest force across the foot, characteristic.
    #[serde(rename = "foot_shear_n", with = "newton")]
    pub foot_shear: Force,
    /// Largest moment at the foot, characteristic.
    #[serde(rename = "foot_moment_n_m", with = "newton_metre")]
    pub foot_moment: Moment,
}

/// Finds the column.
pub fn stage(brief: &Brief, block: &Block, loads: &Loads) -> Found<Pier> {
    let mut notes = Notes::default();
    let pier = &brief.pier;
    let section = section::find(brief);
    let joint = joint::base_joint(brief, block);
    let forces = storm::foot_forces(loads);
    let value = Pier {
        height: pier.height.value,
        outside_diameter: pier.outside_diameter.value,
        wall: pier.wall.value,
        plate_side: pier.plate_side.value,
        plate_thickness: pier.plate_thickness.value,
        gap: pier.gap.value,
        mass: section.mass(),
        lifted_mass: section.mass() - section.fill * section.tube_length,
        shaft_mass: section.shaft(),
        top_plate_mass: section.top_plate,
        bending_stiffness: section.bending,
        shear_stiffness: section.shear,
        base_joint_stiffness: joint.stiffness.typical,
        top_stiffness: cantilever::top_stiffness(
            pier.height.value,
            section.bending,
            section.shear,
            joint.stiffness.typical,
        ),
        foot_shear: forces.shear,
        foot_moment: forces.moment,
    };
    sight::checks(brief, &mut notes);
    plates::checks(brief, &mut notes);
    storm::checks(brief, &section, loads, &mut notes);
    chosen::workings(brief, &mut notes);
    workings(&section, &value, &mut notes);
    joint::workings(brief, &joint, &mut notes);
    Found { value, notes }
}

fn workings(section: &section::Section, pier: &Pier, notes: &mut Notes) {
    notes.working(
        Working::new(
            "pier.mass",
            "Mass of column, fill and plates",
            "m = (μ_tube + μ_fill) L + m_base + m_top",
            tube::SOURCE,
        )
        .with("μ_tube", section.tube.value, Unit::KilogramPerMetre)
        .with("μ_fill", section.fill.value, Unit::KilogramPerMetre)
        .with("L", section.tube_length, Metre)
        .with("m_base", section.base_plate, Kilogram)
        .with("m_top", section.top_plate, Kilogram)
        .gives("m", pier.mass, Kilogram),
    );
    if section.counted_wall < pier.wall {
        notes.working(
            Working::new(
                "pier.design_wall",
                "Wall that stiffness and strength of the column count with",
                "t = 0.93 t_nom",
                wall::SOURCE,
            )
            .with("t_nom", pier.wall, Millimetre)
            .gives("t", section.counted_wall, Millimetre),
        );
    }
    notes.working(
        Working::new(
            "pier.bending_stiffness",
            "Bending stiffness of the column",
            "EI = E_a I_a + K_e E_cm I_c",
            filled_tube::SOURCE,
        )
        .with(
            "E_a",
            crate::rules::en_1993_1_1_2005::material::E_MPA,
            Unit::Megapascal,
        )
        .with(
            "I_a",
            section.second_moment.value * 1e12,
            Unit::MillimetreToTheFourth,
        )
        .with("K_e", filled_tube::CONCRETE_FACTOR, One)
        .with("E_cm", section::FILL_E_MPA, Unit::Megapascal)
        .with(
            "I_c",
            section.fill_moment.value * 1e12,
            Unit::MillimetreToTheFourth,
        )
        .gives("EI", pier.bending_stiffness, NewtonSquareMetre),
    );
    notes.working(
        Working::new(
            "pier.top_stiffness",
            "Stiffness of the top on a block that stands still",
            "1/k = h³/(3EI) + h/(κGA) + h²/K",
            cantilever::SOURCE,
        )
        .with("h", pier.height, Metre)
        .with("EI", pier.bending_stiffness, NewtonSquareMetre)
        .with("κGA", pier.shear_stiffness, Newton)
        .with("K", pier.base_joint_stiffness, NewtonMetrePerRadian)
        .gives("k", pier.top_stiffness, NewtonPerMetre),
    );
}

/// Mass that guidance allows one person at best, kg.
pub const ONE_PERSON_KG: f64 = 25.0;
/// Mass above which two people should not lift, kg.
pub const TWO_PEOPLE_KG: f64 = 2.0 * ONE_PERSON_KG;
