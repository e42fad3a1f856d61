//! Forces in a group of studs under a stiff plate: statics, with the plate's contact on grout where it has any.

use crate::source::Source;
use crate::units::{
    Force, Length, LinearStiffness, Moment, Pressure, RotationalStiffness, megapascal, millimetre,
    newton, newton_metre, newton_metre_per_radian, newton_per_metre, square_millimetre,
};

/// Neutral axis under a grouted plate.
pub const NEUTRAL_AXIS: Source =
    Source::from_memory("Blodgett, Design of welded structures", "1966", "3.3");
/// Turning stiffness of a ring.
pub const RING: Source = Source::derived("springs on a circle");

/// Force in a stud at a lever y_i from the axis of turning: N/n + M y_i/Σy², tension positive; levers are taken from the
/// studs' own middle.
///
/// # Source
/// EN 1992-4:2018, 6.2.1: linear distribution under a rigid plate, all studs alike.
pub fn stud_forces(axial: Force, moment: Moment, levers: &[Length]) -> Vec<Force> {
    let count = levers.len() as f64;
    let middle = levers
        .iter()
        .map(|&lever| millimetre::get(lever))
        .sum::<f64>()
        / count;
    let from_middle = |lever: &Length| millimetre::get(*lever) - middle;
    let squares: f64 = levers.iter().map(|lever| from_middle(lever).powi(2)).sum();
    let turning = newton_metre::get(moment) * 1000.0 / squares.max(f64::MIN_POSITIVE);
    levers
        .iter()
        .map(|lever| newton::new(newton::get(axial) / count + turning * from_middle(lever)))
        .collect()
}

/// Turning stiffness of a ring of equal springs K = n k R²/2.
///
/// # Source
/// Mechanics; three studs or more, even on the circle.
pub fn ring_stiffness(count: usize, radius: Length, stud: LinearStiffness) -> RotationalStiffness {
    let radius = millimetre::get(radius) / 1000.0;
    newton_metre_per_radian::new(count as f64 * newton_per_metre::get(stud) * radius.powi(2) / 2.0)
}

/// A plate on grout under moment and pressing force.
#[derive(Debug, Clone, PartialEq)]
pub struct GroutedPlate {
    /// Side along the moment's lever.
    pub length: Length,
    /// Side across it.
    pub width: Length,
    /// Distances of the studs from the plate's centre, the pulled side positive.
    pub levers: Vec<Length>,
    /// Stress area of one stud.
    pub stud_area: crate::units::Area,
    /// Elastic modulus of steel over that of concrete.
    pub modular_ratio: f64,
}

/// What a grouted plate does under moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Contact {
    /// Length of plate that presses on the grout.
    pub pressed: Length,
    /// Pull in each stud; nothing where it stands in the pressed part.
    pub tensions: Vec<Force>,
    /// Largest pressure.
    pub pressure: Pressure,
}

/// Neutral axis of a plate on grout: the plate stays plane, concrete bears pressure alone, studs bear pull alone; the
/// pressed length x is where Σ forces and Σ moments agree with N and M. For one row it is the cubic
/// x³ + 3(e − L/2)x² + (6nA/B)(f + e)(x − L/2 − f) = 0.
///
/// # Source
/// Blodgett, Design of welded structures, 1966, 3.3, for one row; the same equilibrium for any rows.
///
/// # Valid for
/// A pressing force above nought and e = M/N beyond the plate's kern; else none, the plate presses all over.
pub fn grouted(plate: &GroutedPlate, pressing: Force, moment: Moment) -> Option<Contact> {
    let (force, turning) = (newton::get(pressing), newton_metre::get(moment) * 1000.0);
    let length = millimetre::get(plate.length);
    if !(force > 0.0 && turning > force * length / 6.0 && turning.is_finite()) {
        return None;
    }
    let pressed = root(
        |x| {
            let (push, turn) = plate.sums(x);
            turning * push - force * turn
        },
        0.0,
        length,
    );
    let pressure = turning / plate.sums(pressed).1;
    let tension =
        |&lever: &Length| newton::new(pressure * plate.pull(pressed, millimetre::get(lever)));
    Some(Contact {
        pressed: millimetre::new(pressed),
        tensions: plate.levers.iter().map(tension).collect(),
        pressure: megapascal::new(pressure),
    })
}

impl GroutedPlate {
    /// Pull of a stud at a lever for an edge pressure of 1 MPa and a pressed length x, N.
    fn pull(&self, x: f64, lever: f64) -> f64 {
        let beyond = lever + millimetre::get(self.length) / 2.0 - x;
        let area = square_millimetre::get(self.stud_area);
        (self.modular_ratio * beyond / x * area).max(0.0)
    }

    /// Sum of pressure less pulls, and of their moments about the centre, for an edge pressure of 1 MPa.
    fn sums(&self, x: f64) -> (f64, f64) {
        let push = x * millimetre::get(self.width) / 2.0;
        let arm = millimetre::get(self.length) / 2.0 - x / 3.0;
        self.levers
            .iter()
            .map(|&lever| millimetre::get(lever))
            .fold((push, push * arm), |(force, turn), lever| {
                let pull = self.pull(x, lever);
                (force - pull, turn + pull * lever)
            })
    }
}

/// Root by halving the interval; sixty steps leave nothing to find.
fn root(f: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if f(middle) < 0.0 {
            low = middle
        } else {
            high = middle
        }
    }
    (low + high) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed: ring of 160 mm, 6 kN m, 3 kN pressing, n 3 to 8: 24.0, 18.0, 14.4, 12.0, 10.29, 9.0 kN.
    #[test]
    fn worst_stud_of_a_ring() {
        for (count, expected) in [
            (3_u32, 24.0),
            (4, 18.0),
            (5, 14.4),
            (6, 12.0),
            (7, 10.29),
            (8, 9.0),
        ] {
            let lever = |i: u32| {
                millimetre::new(
                    160.0 * (std::f64::consts::TAU * f64::from(i) / f64::from(count)).cos(),
                )
            };
            let levers: Vec<Length> = (0..count).map(lever).collect();
            let found = stud_forces(kilonewton::new(-3.0), newton_metre::new(6000.0), &levers);
            assert!(
                (kilonewton::get(found[0]) - expected).abs() < 0.01,
                "{count}"
            );
        }
    }

    /// Computed, agreed by fibre integration: x 57.59 mm, T 20.06 kN, 2.288 MPa; x 66.82, T 16.40, 2.258; x 65.39, 5.638, 0.755.
    #[test]
    fn neutral_axis_under_grout() {
        let plate = GroutedPlate {
            length: millimetre::new(350.0),
            width: millimetre::new(350.0),
            levers: [120.0, 120.0, -120.0, -120.0].map(millimetre::new).to_vec(),
            stud_area: square_millimetre::new(157.0),
            modular_ratio: 6.774,
        };
        for (moment, force, x, tension, pressure) in [
            (6000.0, 3.0, 57.59, 20.06, 2.288),
            (6000.0, 10.0, 66.82, 16.40, 2.258),
            (2000.0, 3.0, 65.39, 5.638, 0.755),
        ] {
            let found = grouted(&plate, kilonewton::new(force), newton_metre::new(moment)).unwrap();
            assert!((millimetre::get(found.pressed) - x).abs() < 0.005 * x);
            assert!(
                (kilonewton::get(found.tensions[0] + found.tensions[1]) - tension).abs()
                    < 0.005 * tension
            );
            assert!((megapascal::get(found.pressure) - pressure).abs() < 0.005 * pressure);
        }
        assert!(grouted(&plate, kilonewton::new(100.0), newton_metre::new(100.0)).is_none());
    }

    /// Computed: M16 over 40 mm on a ring of 160: 42.2 MN m/rad.
    #[test]
    fn stiffness_of_bare_studs() {
        let k = newton_per_metre::new(210e9 * 157e-6 / 0.040);
        assert!(
            (newton_metre_per_radian::get(ring_stiffness(4, millimetre::new(160.0), k)) / 1e6
                - 42.2)
                .abs()
                < 0.05
        );
    }
}
