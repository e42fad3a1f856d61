//! Resin: how much goes into the holes, how long it works and hardens.

pub mod generic;

use crate::source::Source;
use crate::units::{
    Area, DisplacementFactor, Length, LinearStiffness, Time, Volume, hour, millilitre, millimetre,
    millimetre_per_megapascal, newton_per_metre,
};

/// Volume in the holes.
pub const VOLUME: Source = Source::derived("ring between hole and stud");
/// Two thirds of the hole.
pub const TWO_THIRDS: Source =
    Source::common_practice("hole filled to about two thirds from the bottom");
/// Working and curing times of a resin of which only the kind is known.
pub const TIMES: Source = Source::judgement(
    "between published sheets of polyester and epoxy resins; no vinylester sheet could be read",
);
/// Wet holes.
pub const WET: Source = Source::read(
    "Published data sheet of an epoxy",
    "",
    "hardening time in wet holes twice that in dry",
);
/// Stiffness of the bond.
pub const BOND_STIFFNESS: Source = Source::second_hand(
    "Assessments of bonded anchors",
    "",
    "displacement = factor × bond stress",
);

/// Volume of the drilled hole π/4 d₀² h.
///
/// # Source
/// Geometry.
pub fn hole_volume(hole: Length, depth: Length) -> Volume {
    hole * hole * depth * std::f64::consts::FRAC_PI_4
}

/// Resin that stays in the hole, (π/4 d₀² − A_s) h: the thread's flanks are filled too.
///
/// # Source
/// Geometry.
pub fn ring_volume(hole: Length, stress_area: Area, depth: Length) -> Volume {
    hole_volume(hole, depth) - stress_area * depth
}

/// Resin to inject in one hole: two thirds of it, or the ring with half as much again for waste if that is more.
///
/// # Source
/// Common practice; the surplus must show at the mouth of the hole.
pub fn volume_to_inject(hole: Length, stress_area: Area, depth: Length) -> Volume {
    let two_thirds = millilitre::get(hole_volume(hole, depth)) * 2.0 / 3.0;
    let with_waste = millilitre::get(ring_volume(hole, stress_area, depth)) * 1.5;
    millilitre::new(two_thirds.max(with_waste))
}

/// A row of a resin's times.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Times {
    /// Temperature of the concrete, °C.
    pub temperature_c: f64,
    /// Working time.
    pub working: Time,
    /// Time before full load.
    pub cure: Time,
}

/// Times at a temperature by a product's own sheet: the logarithm runs straight between two rows; outside it there is no answer.
///
/// # Source
/// Common practice: reaction rates double for a fixed step of temperature.
pub fn times_at(table: &[Times], temperature_c: f64) -> Option<Times> {
    let pair = table.windows(2).find(|pair| {
        pair[0].temperature_c <= temperature_c && temperature_c <= pair[1].temperature_c
    })?;
    let share =
        (temperature_c - pair[0].temperature_c) / (pair[1].temperature_c - pair[0].temperature_c);
    let between = |a: Time, b: Time| {
        hour::new((hour::get(a).ln() * (1.0 - share) + hour::get(b).ln() * share).exp())
    };
    Some(Times {
        temperature_c,
        working: between(pair[0].working, pair[1].working),
        cure: between(pair[0].cure, pair[1].cure),
    })
}

/// Stiffness of the bond k = π d h_ef/f, with the displacement factor f in mm per MPa.
///
/// # Source
/// Assessments of bonded anchors: displacement = factor × bond stress, bond stress = N/(π d h_ef).
pub fn bond_stiffness(
    diameter: Length,
    embedment: Length,
    displacement: DisplacementFactor,
) -> LinearStiffness {
    let surface = std::f64::consts::PI * millimetre::get(diameter) * millimetre::get(embedment);
    newton_per_metre::new(1000.0 * surface / millimetre_per_megapascal::get(displacement))
}

/// Cartridges for a volume: the resin with what is thrown away at the start of each nozzle.
///
/// # Source
/// Common practice.
pub fn cartridges(volume: Volume, nozzles: u32, purge: Volume, cartridge: Volume) -> u32 {
    let needed = millilitre::get(volume) + f64::from(nozzles) * millilitre::get(purge);
    let cartridge = millilitre::get(cartridge);
    if cartridge > 0.0 && needed.is_finite() {
        (needed / cartridge).ceil().clamp(1.0, 1e6) as u32
    } else {
        1
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::square_millimetre;

    /// Computed for M16 in 18: hole 31.8 and 40.7 ml, ring 12.2 and 15.6 ml at 125 and 160 mm; two thirds 21.2 and 27.1.
    #[test]
    fn resin_of_the_usual_hole() {
        let (hole, stud) = (millimetre::new(18.0), square_millimetre::new(157.0));
        for (depth, full, ring, inject) in [(125.0, 31.8, 12.2, 21.2), (160.0, 40.7, 15.6, 27.1)] {
            let depth = millimetre::new(depth);
            assert!((millilitre::get(hole_volume(hole, depth)) - full).abs() < 0.05);
            assert!((millilitre::get(ring_volume(hole, stud, depth)) - ring).abs() < 0.05);
            assert!((millilitre::get(volume_to_inject(hole, stud, depth)) - inject).abs() < 0.05);
        }
    }

    #[test]
    fn times_of_a_sheet_are_interpolated_and_never_extrapolated() {
        let row = |temperature_c, cure| Times {
            temperature_c,
            working: hour::new(0.5),
            cure: hour::new(cure),
        };
        let table = [row(5.0, 68.0), row(10.0, 48.0), row(35.0, 8.5)];
        let between = hour::get(times_at(&table, 7.5).unwrap().cure);
        assert!((between - (68.0f64 * 48.0).sqrt()).abs() < 1e-9);
        assert!(times_at(&table, 4.9).is_none() && times_at(&table, 35.1).is_none());
    }

    /// Computed: M16, 160 mm at 0.020 mm/MPa: 402 kN/mm.
    #[test]
    fn bond_gives_by_microns() {
        let found = bond_stiffness(
            millimetre::new(16.0),
            millimetre::new(160.0),
            millimetre_per_megapascal::new(0.020),
        );
        assert!((newton_per_metre::get(found) / 1e6 - 402.0).abs() < 0.2);
    }

    #[test]
    fn one_cartridge_for_four_usual_holes() {
        assert_eq!(
            cartridges(
                millilitre::new(108.4),
                1,
                millilitre::new(15.0),
                millilitre::new(300.0)
            ),
            1
        );
        assert_eq!(
            cartridges(
                millilitre::new(300.0),
                2,
                millilitre::new(15.0),
                millilitre::new(300.0)
            ),
            2
        );
    }
}
