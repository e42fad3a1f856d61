//! The column's section: mass, bending and shear stiffness of tube, fill and plates.

use crate::brief::Brief;
use crate::rules::aisc_360_16::wall;
use crate::rules::en_1991_1_1_2002::concrete;
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::en_1994_1_1_2004::filled_tube;
use crate::rules::en_10210_2_2006::section;
use crate::rules::mechanics::cantilever;
use crate::site_plan::pier::Fill;
use crate::units::{
    Area, BendingStiffness, Force, Length, LinearMassDensity, Mass, Pressure, SecondMoment,
    kilogram, kilogram_per_cubic_metre, kilogram_per_metre, megapascal, millimetre, square_metre,
};

/// Density of dry sand poured into a tube, kg/m³.
pub const SAND_KG_M3: f64 = 1600.0;
/// Modulus of a plain concrete fill, MPa: EN 1992-1-1 Table 3.1, C25/30.
pub const FILL_E_MPA: f64 = 31_000.0;

/// The column's section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    /// Wall that counts.
    pub counted_wall: Length,
    /// Steel area that counts.
    pub area: Area,
    /// Second moment of the steel that counts.
    pub second_moment: SecondMoment,
    /// Second moment of the fill.
    pub fill_moment: SecondMoment,
    /// Mass of a metre of tube.
    pub tube: LinearMassDensity,
    /// Mass of a metre of fill.
    pub fill: LinearMassDensity,
    /// E·I.
    pub bending: BendingStiffness,
    /// κ·G·A.
    pub shear: Force,
    /// Length of tube between the plates.
    pub tube_length: Length,
    /// Base plate.
    pub base_plate: Mass,
    /// Top plate.
    pub top_plate: Mass,
}

impl Section {
    /// Mass of tube and fill.
    pub fn shaft(&self) -> Mass {
        (self.tube + self.fill) * self.tube_length
    }

    /// Mass of column, fill and plates.
    pub fn mass(&self) -> Mass {
        self.shaft() + self.base_plate + self.top_plate
    }
}

/// Finds the section.
pub fn find(brief: &Brief) -> Section {
    let pier = &brief.pier;
    let (outside, nominal) = (pier.outside_diameter.value, pier.wall.value);
    let inside = outside - 2.0 * nominal;
    let counted_wall = wall::counted(pier.steel.value, nominal);
    let bore: Area = section::area(inside, inside / 2.0);
    let density = match pier.fill.value {
        Fill::None => 0.0,
        Fill::Sand => SAND_KG_M3,
        Fill::Concrete => kilogram_per_cubic_metre::get(concrete::density()),
    };
    let fill: LinearMassDensity = kilogram_per_metre::new(density * square_metre::get(bore));
    let area = section::area(outside, counted_wall);
    let second_moment = section::second_moment(outside, counted_wall);
    let fill_moment = section::second_moment(inside, inside / 2.0);
    let counted = if pier.fill.value == Fill::Concrete {
        fill_moment
    } else {
        0.0 * fill_moment
    };
    let bending = filled_tube::bending_stiffness(
        steel(),
        second_moment,
        megapascal::new(FILL_E_MPA),
        counted,
    );
    let counted_inside = outside - 2.0 * counted_wall;
    let factor =
        cantilever::shear_factor((counted_inside / outside).value, material::POISSON_RATIO);
    let plates = pier.plate_thickness.value + pier.top_plate_thickness.value;
    Section {
        counted_wall,
        area,
        second_moment,
        fill_moment: counted,
        tube: section::mass_per_length(outside, nominal),
        fill,
        bending,
        shear: cantilever::shear_stiffness(factor, material::shear_modulus(), area),
        tube_length: (pier.height.value - plates).max(millimetre::new(1.0)),
        base_plate: plate(pier.plate_side.value, pier.plate_thickness.value),
        top_plate: plate(pier.top_plate_side.value, pier.top_plate_thickness.value),
    }
}

/// Modulus of elasticity of steel.
pub fn steel() -> Pressure {
    megapascal::new(material::E_MPA)
}

fn plate(side: Length, thickness: Length) -> Mass {
    let density = kilogram_per_cubic_metre::new(section::STEEL_KG_M3);
    let mass: Mass = density * (side * side * thickness);
    kilogram::new(kilogram::get(mass))
}
