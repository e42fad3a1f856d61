//! Wall thickness of hollow sections and pipe that calculations count with.

use crate::site_plan::pier::Steel;
use crate::source::Source;
use crate::stock::Stock;
use crate::units::Length;

/// Where the design wall comes from; that the manual's tables of pipe count it too was met in the same places.
pub const SOURCE: Source = Source::second_hand("ANSI/AISC 360", "16", "B4.2");
/// Share of the nominal wall that counts: mills work near the lower end of the tolerance.
pub const DESIGN_FACTOR: f64 = 0.93;

/// Design wall thickness, t = 0.93 t_nom.
///
/// # Source
/// ANSI/AISC 360-16, B4.2.
/// # Valid for
/// Electric resistance welded tube of ASTM A500, whose wall may be a tenth thinner than it is called, and pipe of ASTM A53, an eighth
/// thinner: the clause speaks of hollow sections, and a note to it lets pipe of A53 grade B be designed as round ones of them. Tube of
/// A1085 counts with its whole wall.
pub fn design(nominal: Length) -> Length {
    nominal * DESIGN_FACTOR
}

/// The wall that a tube's stiffness and strength count with: of European steels its own, of those of ASTM the design wall.
///
/// What is weighed, carried, drilled or bought goes by the nominal wall: masses, bore, ducts, drawings, and the thickness by which a
/// standard grades a yield strength.
///
/// # Source
/// ANSI/AISC 360-16, B4.2; EN 10210-2 and EN 10219-2 tabulate the nominal section.
pub fn counted(steel: Steel, nominal: Length) -> Length {
    match steel.stock() {
        Stock::Metric => nominal,
        Stock::Inch => design(nominal),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::en_10210_2_2006::section;
    use crate::units::{millimetre, millimetre_to_the_fourth, square_millimetre};

    /// AISC Manual, Table 1-14 (from memory): standard pipe of NPS 6, 8 and 10 has a design wall of 0.261, 0.300 and 0.340 in;
    /// 5.20, 7.85 and 11.1 sq in; 26.5, 68.1 and 151 in⁴.
    #[test]
    fn standard_pipe_has_the_properties_of_the_manual() {
        for (across, nominal, wall, area, moment) in [
            (6.625, 0.280, 0.261, 5.20, 26.5),
            (8.625, 0.322, 0.300, 7.85, 68.1),
            (10.75, 0.365, 0.340, 11.1, 151.0),
        ] {
            let inch = |value: f64| millimetre::new(25.4 * value);
            let counted = design(inch(nominal));
            assert!((millimetre::get(counted) / 25.4 - wall).abs() < 0.001);
            let found = square_millimetre::get(section::area(inch(across), counted)) / 645.16;
            assert!((found - area).abs() < 0.005 * area, "{across}: {found}");
            let found =
                millimetre_to_the_fourth::get(section::second_moment(inch(across), counted))
                    / 25.4f64.powi(4);
            assert!((found - moment).abs() < 0.005 * moment, "{across}: {found}");
        }
    }
}
