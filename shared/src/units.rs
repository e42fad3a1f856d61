//! Quantities of the engine, and the one place where a bare number becomes a quantity or the other way round.
//!
//! Each unit is a small module: `metre::new(1.2)` makes a [`Length`], `metre::get(length)` reads it, and
//! `#[serde(rename = "length_m", with = "metre")]` writes it with its unit in the name.
//!
//! Traps of the quantity library that the aliases cure: a force times a length is typed as energy there, and a force
//! over a length as surface tension; the radian counts as one, so a rotational stiffness has the dimension of a moment.

pub mod customary;

use std::marker::PhantomData;
use uom::si::{ISQ, Quantity, SI};
use uom::typenum::{N1, N2, P1, P2, P3, P4, Z0};

pub use uom::si::f64::{
    Acceleration, Area, Force, Frequency, Length, LinearMassDensity, Mass, MassDensity,
    MomentOfInertia, Pressure, Time, Velocity, Volume,
};

/// A moment of force; also what a force times a length is typed as.
pub type Moment = uom::si::f64::Energy;
/// Moment for a turn of one radian.
pub type RotationalStiffness = Moment;
/// Force for a displacement of one metre; also force for a turn of one radian over a length squared.
pub type LinearStiffness = uom::si::f64::SurfaceTension;
/// Force for a turn of one radian, or moment for a displacement: the coupling terms of a stiffness matrix.
pub type CouplingStiffness = Force;
/// Weight of a unit of volume.
pub type UnitWeight = Quantity<ISQ<N2, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;
/// Second moment of area.
pub type SecondMoment = Quantity<ISQ<P4, Z0, Z0, Z0, Z0, Z0, Z0>, SI<f64>, f64>;
/// Section modulus.
pub type SectionModulus = Volume;
/// Displacement of a bonded stud for a unit of bond stress.
pub type DisplacementFactor = Quantity<ISQ<P2, N1, P2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;
/// Stiffness of a beam in bending, E·I.
pub type BendingStiffness = Quantity<ISQ<P3, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Acceleration of free fall, m/s² (ISO 80000-3, the conventional value).
pub const STANDARD_GRAVITY_M_S2: f64 = 9.806_65;
/// Seconds of arc in one radian, 180 × 3600 / π.
pub const ARCSEC_PER_RADIAN: f64 = 180.0 * 3600.0 / std::f64::consts::PI;

/// Acceleration of free fall.
pub fn gravity() -> Acceleration {
    metre_per_second_squared::new(STANDARD_GRAVITY_M_S2)
}

/// Three values of one uncertain quantity: `typical` is what is expected, `low` and `high` are the ends between
/// which the truth is thought to lie.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Spread<T> {
    /// The low end.
    pub low: T,
    /// What is expected.
    pub typical: T,
    /// The high end.
    pub high: T,
}

impl<T: Copy> Spread<T> {
    /// One value without doubt about it.
    pub fn exactly(value: T) -> Self {
        Self {
            low: value,
            typical: value,
            high: value,
        }
    }

    /// The same function of all three.
    pub fn map<U>(self, f: impl Fn(T) -> U) -> Spread<U> {
        Spread {
            low: f(self.low),
            typical: f(self.typical),
            high: f(self.high),
        }
    }
}

/// What is expected, and the unfavourable end of what is likely.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
pub struct Outcome<T> {
    /// The middle of everything uncertain.
    pub expected: T,
    /// The unfavourable end.
    pub worst: T,
}

impl<T: Copy> Outcome<T> {
    /// Nothing about it is uncertain.
    pub fn certain(value: T) -> Self {
        Self {
            expected: value,
            worst: value,
        }
    }
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident: $quantity:ty = $times:literal / $over:literal;)*) => {$(
        $(#[$doc])*
        pub mod $name {
            use super::*;

            /// The quantity of so many units.
            pub fn new(value: f64) -> $quantity {
                Quantity { dimension: PhantomData, units: PhantomData, value: value * $times / $over }
            }

            /// How many units the quantity has.
            pub fn get(quantity: $quantity) -> f64 {
                quantity.value * $over / $times
            }

            /// Writes the bare number of units.
            ///
            /// # Errors
            /// Those of the serializer.
            pub fn serialize<S: serde::Serializer>(quantity: &$quantity, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_f64(get(*quantity))
            }

            /// The same for a quantity that may be unknown.
            pub mod option {
                use super::*;

                /// Writes the bare number of units, or null.
                ///
                /// # Errors
                /// Those of the serializer.
                pub fn serialize<S: serde::Serializer>(quantity: &Option<$quantity>, serializer: S) -> Result<S::Ok, S::Error> {
                    match quantity {
                        Some(quantity) => serializer.serialize_some(&super::get(*quantity)),
                        None => serializer.serialize_none(),
                    }
                }
            }

            /// The same for a list.
            pub mod list {
                use super::*;

                /// Writes the bare numbers of units.
                ///
                /// # Errors
                /// Those of the serializer.
                pub fn serialize<S: serde::Serializer>(quantities: &[$quantity], serializer: S) -> Result<S::Ok, S::Error> {
                    serializer.collect_seq(quantities.iter().map(|quantity| super::get(*quantity)))
                }
            }

            /// The same for low, typical and high.
            pub mod spread {
                use super::*;

                /// Writes an object of three bare numbers.
                ///
                /// # Errors
                /// Those of the serializer.
                pub fn serialize<S: serde::Serializer>(spread: &Spread<$quantity>, serializer: S) -> Result<S::Ok, S::Error> {
                    serde::Serialize::serialize(&spread.map(super::get), serializer)
                }

                /// The same for three values that may be unknown.
                pub mod option {
                    use super::*;

                    /// Writes an object of three bare numbers, or null.
                    ///
                    /// # Errors
                    /// Those of the serializer.
                    pub fn serialize<S: serde::Serializer>(spread: &Option<Spread<$quantity>>, serializer: S) -> Result<S::Ok, S::Error> {
                        serde::Serialize::serialize(&spread.map(|spread| spread.map($crate::units::$name::get)), serializer)
                    }
                }
            }
        }
    )*};
}

units! {
    /// m
    metre: Length = 1.0 / 1.0;
    /// mm
    millimetre: Length = 1.0 / 1000.0;
    /// µm
    micrometre: Length = 1.0 / 1e6;
    /// m²
    square_metre: Area = 1.0 / 1.0;
    /// mm²
    square_millimetre: Area = 1.0 / 1e6;
    /// m³
    cubic_metre: Volume = 1.0 / 1.0;
    /// cm³
    cubic_centimetre: Volume = 1.0 / 1e6;
    /// l
    litre: Volume = 1.0 / 1000.0;
    /// ml
    millilitre: Volume = 1.0 / 1e6;
    /// mm⁴
    millimetre_to_the_fourth: SecondMoment = 1.0 / 1e12;
    /// mm³
    cubic_millimetre: Volume = 1.0 / 1e9;
    /// kg
    kilogram: Mass = 1.0 / 1.0;
    /// t
    tonne: Mass = 1000.0 / 1.0;
    /// kg/m
    kilogram_per_metre: LinearMassDensity = 1.0 / 1.0;
    /// kg/m³
    kilogram_per_cubic_metre: MassDensity = 1.0 / 1.0;
    /// kg m²
    kilogram_square_metre: MomentOfInertia = 1.0 / 1.0;
    /// N
    newton: Force = 1.0 / 1.0;
    /// kN
    kilonewton: Force = 1000.0 / 1.0;
    /// N m
    newton_metre: Moment = 1.0 / 1.0;
    /// kN m
    kilonewton_metre: Moment = 1000.0 / 1.0;
    /// N m/rad
    newton_metre_per_radian: RotationalStiffness = 1.0 / 1.0;
    /// MN m/rad
    meganewton_metre_per_radian: RotationalStiffness = 1e6 / 1.0;
    /// N/m
    newton_per_metre: LinearStiffness = 1.0 / 1.0;
    /// N/mm
    newton_per_millimetre: LinearStiffness = 1000.0 / 1.0;
    /// kN/mm
    kilonewton_per_millimetre: LinearStiffness = 1e6 / 1.0;
    /// MN/m
    meganewton_per_metre: LinearStiffness = 1e6 / 1.0;
    /// N/rad
    newton_per_radian: CouplingStiffness = 1.0 / 1.0;
    /// N m²
    newton_square_metre: BendingStiffness = 1.0 / 1.0;
    /// kN/m³
    kilonewton_per_cubic_metre: UnitWeight = 1000.0 / 1.0;
    /// Pa
    pascal: Pressure = 1.0 / 1.0;
    /// kPa
    kilopascal: Pressure = 1000.0 / 1.0;
    /// MPa
    megapascal: Pressure = 1e6 / 1.0;
    /// mm/MPa
    millimetre_per_megapascal: DisplacementFactor = 1.0 / 1e9;
    /// m/s
    metre_per_second: Velocity = 1.0 / 1.0;
    /// m/s²
    metre_per_second_squared: Acceleration = 1.0 / 1.0;
    /// Hz
    hertz: Frequency = 1.0 / 1.0;
    /// s
    second: Time = 1.0 / 1.0;
    /// min
    minute: Time = 60.0 / 1.0;
    /// h
    hour: Time = 3600.0 / 1.0;
    /// d
    day: Time = 86400.0 / 1.0;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_survives_the_way_in_and_out() {
        assert_eq!(millimetre::get(millimetre::new(219.1)), 219.1);
        assert_eq!(metre::get(millimetre::new(200.0)), 0.2);
        assert_eq!(megapascal::get(kilopascal::new(30_000.0)), 30.0);
    }

    #[test]
    fn dimensions_meet() {
        let moment: Moment = newton::new(100.0) * metre::new(2.0);
        assert_eq!(newton_metre::get(moment), 200.0);
        let weight: Force = kilonewton_per_cubic_metre::new(24.0) * cubic_metre::new(1.0);
        assert_eq!(kilonewton::get(weight), 24.0);
        let bending: BendingStiffness =
            megapascal::new(210_000.0) * millimetre_to_the_fourth::new(1e6);
        assert!((newton_square_metre::get(bending) - 210_000.0).abs() < 1e-6);
    }
}
