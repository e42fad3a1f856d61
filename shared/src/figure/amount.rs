//! A quantity beside the unit in which it is shown. A unit is a type that fits its own dimension alone.

use super::Unit;
use crate::units::{
    self, BendingStiffness, CouplingStiffness, DisplacementFactor, Force, Frequency, Length,
    LinearMassDensity, LinearStiffness, Mass, MassDensity, Moment, MomentOfInertia, Pressure,
    SecondMoment, Time, UnitWeight, Velocity, Volume,
};
use uom::si::f64::Area;

/// A unit in which a quantity of the type `Q` can be shown.
///
/// # Example
/// ```
/// use stillground::figure::{Amount, Millimetre};
/// use stillground::units::metre;
///
/// let wall = Amount::of(metre::new(0.008), Millimetre);
/// assert_eq!(wall.value, 8.0);
/// ```
/// A length is no pressure, and a bare number is no length:
/// ```compile_fail,E0277
/// # use stillground::figure::{Amount, Kilopascal};
/// # use stillground::units::metre;
/// Amount::of(metre::new(0.008), Kilopascal);
/// ```
/// ```compile_fail,E0277
/// # use stillground::figure::{Amount, Millimetre};
/// Amount::of(8.0, Millimetre);
/// ```
pub trait UnitOf<Q>: Copy {
    /// The unit as a value.
    fn unit(self) -> Unit;

    /// How many of this unit the quantity is.
    fn count(self, quantity: Q) -> f64;
}

/// The unit of a number that a person gives, and the quantity that it is.
pub trait Measure: Copy {
    /// What so many of this unit are.
    type Quantity;
    /// The unit as a value.
    const UNIT: Unit;
    /// So many of this unit as a quantity.
    fn quantity(count: f64) -> Self::Quantity;
}

/// A number with its unit, made from a quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amount {
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}

impl Amount {
    /// A quantity in one of its units.
    pub fn of<Q>(quantity: Q, unit: impl UnitOf<Q>) -> Self {
        Self {
            value: unit.count(quantity),
            unit: unit.unit(),
        }
    }
}

/// A unit that is data (a field's, a check's, a price's) beside a number that is already in it.
impl UnitOf<f64> for Unit {
    fn unit(self) -> Unit {
        self
    }

    fn count(self, number: f64) -> f64 {
        number
    }
}

macro_rules! quantities {
    ($($unit:ident = $module:ident: $quantity:ty;)*) => {$(
        #[doc = concat!("Shows a quantity as [`Unit::", stringify!($unit), "`].")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub struct $unit;

        impl UnitOf<$quantity> for $unit {
            fn unit(self) -> Unit {
                Unit::$unit
            }

            fn count(self, quantity: $quantity) -> f64 {
                units::$module::get(quantity)
            }
        }

        impl Measure for $unit {
            type Quantity = $quantity;
            const UNIT: Unit = Unit::$unit;

            fn quantity(count: f64) -> $quantity {
                units::$module::new(count)
            }
        }
    )*};
}

quantities! {
    Metre = metre: Length;
    Millimetre = millimetre: Length;
    Micrometre = micrometre: Length;
    FocalMillimetre = millimetre: Length;
    SquareMetre = square_metre: Area;
    SquareMillimetre = square_millimetre: Area;
    CubicMetre = cubic_metre: Volume;
    CubicMillimetre = cubic_millimetre: Volume;
    BarrowCubicMetre = cubic_metre: Volume;
    Litre = litre: Volume;
    Millilitre = millilitre: Volume;
    MillimetreToTheFourth = millimetre_to_the_fourth: SecondMoment;
    Kilogram = kilogram: Mass;
    Tonne = tonne: Mass;
    KilogramPerMetre = kilogram_per_metre: LinearMassDensity;
    KilogramPerCubicMetre = kilogram_per_cubic_metre: MassDensity;
    KilogramSquareMetre = kilogram_square_metre: MomentOfInertia;
    Newton = newton: Force;
    Kilonewton = kilonewton: Force;
    NewtonPerRadian = newton_per_radian: CouplingStiffness;
    NewtonMetre = newton_metre: Moment;
    KilonewtonMetre = kilonewton_metre: Moment;
    NewtonMetrePerRadian = newton_metre_per_radian: Moment;
    MeganewtonMetrePerRadian = meganewton_metre_per_radian: Moment;
    NewtonPerMetre = newton_per_metre: LinearStiffness;
    NewtonPerMillimetre = newton_per_millimetre: LinearStiffness;
    KilonewtonPerMillimetre = kilonewton_per_millimetre: LinearStiffness;
    MeganewtonPerMetre = meganewton_per_metre: LinearStiffness;
    NewtonSquareMetre = newton_square_metre: BendingStiffness;
    KilonewtonPerCubicMetre = kilonewton_per_cubic_metre: UnitWeight;
    Kilopascal = kilopascal: Pressure;
    Megapascal = megapascal: Pressure;
    MillimetrePerMegapascal = millimetre_per_megapascal: DisplacementFactor;
    MetrePerSecond = metre_per_second: Velocity;
    WindMetrePerSecond = metre_per_second: Velocity;
    Hertz = hertz: Frequency;
    Second = second: Time;
    Minute = minute: Time;
    Hour = hour: Time;
    Day = day: Time;
}

macro_rules! numbers {
    ($($unit:ident)*) => {$(
        #[doc = concat!("Shows a number as [`Unit::", stringify!($unit), "`], for which there is no quantity's type.")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub struct $unit;

        impl UnitOf<f64> for $unit {
            fn unit(self) -> Unit {
                Unit::$unit
            }

            fn count(self, number: f64) -> f64 {
                number
            }
        }

        impl Measure for $unit {
            type Quantity = f64;
            const UNIT: Unit = Unit::$unit;

            fn quantity(count: f64) -> f64 {
                count
            }
        }
    )*};
}

numbers! {
    One Count PerCent Celsius Kelvin CelsiusDay Degree DegreePerSecondSquared Arcsecond Arcminute
    ArcsecondPerPixel Pixel Nanotesla NewtonSecond WattPerMetreKelvin KilojoulePerCubicMetre
}
