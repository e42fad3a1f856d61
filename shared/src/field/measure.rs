//! What a number of the plan is measured in, as a type: the unit of its words and the quantity that a brief makes of it
//! stand in one line here, so that no number can be read in another unit than its own.

use crate::figure::Unit;
use crate::units::{
    self, Area, DisplacementFactor, Force, Frequency, Length, Mass, Moment, MomentOfInertia,
    Pressure, RotationalStiffness, Time, UnitWeight, Velocity, Volume,
};

/// A unit of the plan's numbers.
pub trait Measure: Copy {
    /// What so many units are.
    type Quantity;
    /// The unit in words.
    const UNIT: Unit;
    /// So many units as a quantity.
    fn quantity(value: f64) -> Self::Quantity;
}

macro_rules! measures {
    ($($unit:ident: $quantity:ty = $new:expr;)*) => {$(
        #[doc = concat!("[`Unit::", stringify!($unit), "`] as a type.")]
        #[derive(Debug, Clone, Copy)]
        pub struct $unit;

        impl Measure for $unit {
            type Quantity = $quantity;
            const UNIT: Unit = Unit::$unit;
            fn quantity(value: f64) -> $quantity {
                $new(value)
            }
        }
    )*};
}

measures! {
    CubicMetre: Volume = units::cubic_metre::new;
    Hertz: Frequency = units::hertz::new;
    Hour: Time = units::hour::new;
    Kilogram: Mass = units::kilogram::new;
    KilogramSquareMetre: MomentOfInertia = units::kilogram_square_metre::new;
    Kilonewton: Force = units::kilonewton::new;
    KilonewtonPerCubicMetre: UnitWeight = units::kilonewton_per_cubic_metre::new;
    Kilopascal: Pressure = units::kilopascal::new;
    Megapascal: Pressure = units::megapascal::new;
    Metre: Length = units::metre::new;
    MetrePerSecond: Velocity = units::metre_per_second::new;
    Micrometre: Length = units::micrometre::new;
    Millilitre: Volume = units::millilitre::new;
    Millimetre: Length = units::millimetre::new;
    MillimetrePerMegapascal: DisplacementFactor = units::millimetre_per_megapascal::new;
    NewtonMetre: Moment = units::newton_metre::new;
    NewtonMetrePerRadian: RotationalStiffness = units::newton_metre_per_radian::new;
    Second: Time = units::second::new;
    SquareMetre: Area = units::square_metre::new;
}

/// Where the engine calculates with the bare number, its field of the brief has the unit in its name.
const fn bare(value: f64) -> f64 {
    value
}

measures! {
    Arcsecond: f64 = bare;
    Celsius: f64 = bare;
    CelsiusDay: f64 = bare;
    Count: f64 = bare;
    Degree: f64 = bare;
    DegreePerSecondSquared: f64 = bare;
    Kelvin: f64 = bare;
    Minute: f64 = bare;
    One: f64 = bare;
}
