//! The one place where a number and its unit become words.
//!
//! Everything inside is metric; the reader's system of units is applied here and nowhere else.

mod amount;
pub mod inches;
mod tape;

pub use rust_decimal::Decimal;
pub use rust_decimal::prelude::ToPrimitive;
use serde::{Serialize, Serializer};

use crate::units::customary::{
    FOOT_M, INCH_MM, MILE_PER_HOUR_M_S, POUND_FORCE_FOOT_N_M, POUND_FORCE_N, POUND_KG, PSI_MPA,
    SHORT_TON_KG, US_FLUID_OUNCE_ML, US_GALLON_L, YARD_M,
};

pub use amount::*;

/// System of units that the reader asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Units {
    /// Metres, kilograms, newtons.
    #[default]
    Metric,
    /// Feet and inches, pounds.
    Imperial,
}

macro_rules! unit_table {
    ($($(#[$doc:meta])* $name:ident: $symbol:literal, $imperial:literal, $times:expr, $digits:literal;)*) => {
        /// The units in which numbers travel through a design: metric, each with its symbol and its imperial twin.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Unit { $($(#[$doc])* $name,)* }

        impl Unit {
            /// Every unit.
            pub const ALL: &[Self] = &[$(Self::$name,)*];

            /// The metric symbol; empty for a ratio.
            #[must_use]
            pub const fn symbol(self) -> &'static str {
                match self { $(Self::$name => $symbol,)* }
            }

            /// The imperial symbol.
            #[must_use]
            pub const fn imperial_symbol(self) -> &'static str {
                match self { $(Self::$name => $imperial,)* }
            }

            /// How many imperial units one metric unit is; a temperature also shifts by 32.
            #[must_use]
            pub const fn imperial_factor(self) -> f64 {
                match self { $(Self::$name => $times,)* }
            }

            /// Significant digits that a figure in this unit is shown with.
            #[must_use]
            pub const fn digits(self) -> i32 {
                match self { $(Self::$name => $digits,)* }
            }
        }
    };
}

unit_table! {
    /// A ratio or factor.
    One: "", "", 1.0, 3;
    /// A whole number of things.
    Count: "", "", 1.0, 9;
    /// Per cent.
    PerCent: "%", "%", 1.0, 2;
    /// m
    Metre: "m", "ft", 1.0 / FOOT_M, 3;
    /// mm
    Millimetre: "mm", "in", 1.0 / INCH_MM, 4;
    /// µm
    Micrometre: "µm", "µm", 1.0, 3;
    /// mm of a focal length: lenses and telescopes are sold by them in either system
    FocalMillimetre: "mm", "mm", 1.0, 4;
    /// m²
    SquareMetre: "m²", "ft²", 1.0 / (FOOT_M * FOOT_M), 3;
    /// mm²
    SquareMillimetre: "mm²", "in²", 1.0 / (INCH_MM * INCH_MM), 4;
    /// mm³
    CubicMillimetre: "mm³", "in³", 1.0 / (INCH_MM * INCH_MM * INCH_MM), 4;
    /// mm⁴
    MillimetreToTheFourth: "mm⁴", "in⁴", 1.0 / (INCH_MM * INCH_MM * INCH_MM * INCH_MM), 4;
    /// m³
    CubicMetre: "m³", "yd³", 1.0 / (YARD_M * YARD_M * YARD_M), 3;
    /// m³ that somebody pushes or carries
    BarrowCubicMetre: "m³", "ft³", 1.0 / (FOOT_M * FOOT_M * FOOT_M), 3;
    /// l
    Litre: "l", "US gal", 1.0 / US_GALLON_L, 3;
    /// ml
    Millilitre: "ml", "US fl oz", 1.0 / US_FLUID_OUNCE_ML, 2;
    /// kg
    Kilogram: "kg", "lb", 1.0 / POUND_KG, 3;
    /// t
    Tonne: "t", "short ton", 1000.0 / SHORT_TON_KG, 3;
    /// kg/m
    KilogramPerMetre: "kg/m", "lb/ft", FOOT_M / POUND_KG, 3;
    /// kg/m³
    KilogramPerCubicMetre: "kg/m³", "lb/ft³", FOOT_M * FOOT_M * FOOT_M / POUND_KG, 3;
    /// kg m²
    KilogramSquareMetre: "kg m²", "lb ft²", 1.0 / (POUND_KG * FOOT_M * FOOT_M), 3;
    /// N
    Newton: "N", "lbf", 1.0 / POUND_FORCE_N, 3;
    /// kN
    Kilonewton: "kN", "kip", 1.0 / POUND_FORCE_N, 3;
    /// N m
    NewtonMetre: "N m", "lbf ft", 1.0 / POUND_FORCE_FOOT_N_M, 3;
    /// kN m
    KilonewtonMetre: "kN m", "kip ft", 1.0 / POUND_FORCE_FOOT_N_M, 3;
    /// MN m/rad
    MeganewtonMetrePerRadian: "MN m/rad", "kip ft/rad", 1000.0 / POUND_FORCE_FOOT_N_M, 3;
    /// N m/rad
    NewtonMetrePerRadian: "N m/rad", "lbf ft/rad", 1.0 / POUND_FORCE_FOOT_N_M, 3;
    /// N/m
    NewtonPerMetre: "N/m", "lbf/ft", FOOT_M / POUND_FORCE_N, 3;
    /// MN/m
    MeganewtonPerMetre: "MN/m", "kip/ft", 1000.0 * FOOT_M / POUND_FORCE_N, 3;
    /// kN/mm
    KilonewtonPerMillimetre: "kN/mm", "kip/in", INCH_MM / POUND_FORCE_N, 3;
    /// N/mm
    NewtonPerMillimetre: "N/mm", "lbf/in", INCH_MM / POUND_FORCE_N, 3;
    /// N/rad
    NewtonPerRadian: "N/rad", "lbf/rad", 1.0 / POUND_FORCE_N, 3;
    /// N m²
    NewtonSquareMetre: "N m²", "lbf ft²", 1.0 / (POUND_FORCE_N * FOOT_M * FOOT_M), 3;
    /// N s
    NewtonSecond: "N s", "lbf s", 1.0 / POUND_FORCE_N, 3;
    /// kN/m³
    KilonewtonPerCubicMetre: "kN/m³", "lbf/ft³", 1000.0 * FOOT_M * FOOT_M * FOOT_M / POUND_FORCE_N, 3;
    /// kPa
    Kilopascal: "kPa", "psf", 1000.0 * FOOT_M * FOOT_M / POUND_FORCE_N, 3;
    /// MPa
    Megapascal: "MPa", "psi", 1.0 / PSI_MPA, 3;
    /// mm/MPa
    MillimetrePerMegapascal: "mm/MPa", "in/ksi", 1000.0 * POUND_FORCE_N / (INCH_MM * INCH_MM * INCH_MM), 3;
    /// m/s
    MetrePerSecond: "m/s", "ft/s", 1.0 / FOOT_M, 3;
    /// m/s of wind, which a forecast gives in miles an hour where miles are driven
    WindMetrePerSecond: "m/s", "mph", 1.0 / MILE_PER_HOUR_M_S, 3;
    /// °/s²
    DegreePerSecondSquared: "°/s²", "°/s²", 1.0, 3;
    /// Hz
    Hertz: "Hz", "Hz", 1.0, 3;
    /// s
    Second: "s", "s", 1.0, 3;
    /// min
    Minute: "min", "min", 1.0, 3;
    /// h
    Hour: "h", "h", 1.0, 3;
    /// d
    Day: "d", "d", 1.0, 3;
    /// °C
    Celsius: "°C", "°F", 1.8, 3;
    /// K, a difference
    Kelvin: "K", "°F", 1.8, 3;
    /// °C d
    CelsiusDay: "°C d", "°F d", 1.8, 3;
    /// °
    Degree: "°", "°", 1.0, 3;
    /// nT
    Nanotesla: "nT", "nT", 1.0, 5;
    /// arcsec
    Arcsecond: "arcsec", "arcsec", 1.0, 2;
    /// arcmin
    Arcminute: "arcmin", "arcmin", 1.0, 2;
    /// arcsec per pixel
    ArcsecondPerPixel: "arcsec/px", "arcsec/px", 1.0, 3;
    /// px
    Pixel: "px", "px", 1.0, 2;
    /// W/(m K)
    WattPerMetreKelvin: "W/(m K)", "Btu/(h ft °F)", 0.577_789, 3;
    /// kJ/m³
    KilojoulePerCubicMetre: "kJ/m³", "Btu/ft³", 0.026_839_2, 3;
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.symbol())
    }
}

/// A figure in words: the digits, and the unit apart from them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// The digits, with a decimal point and a true minus sign.
    pub digits: String,
    /// The unit's symbol; empty for a ratio.
    pub unit: &'static str,
}

impl std::fmt::Display for Figure {
    /// Digits and unit joined by a no-break space, so that no line parts them.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.digits)?;
        match self.unit {
            "" => Ok(()),
            "°" | "%" => f.write_str(self.unit),
            unit => write!(f, "\u{a0}{}", unit.replace(' ', "\u{a0}")),
        }
    }
}

impl Units {
    /// The quantity in this system, with its unit's symbol.
    #[must_use]
    pub fn convert<Q>(self, quantity: Q, unit: impl UnitOf<Q>) -> (f64, &'static str) {
        let Amount { value, unit } = Amount::of(quantity, unit);
        match self {
            Self::Metric => (value, unit.symbol()),
            Self::Imperial => {
                let shift = if unit == Unit::Celsius { 32.0 } else { 0.0 };
                (
                    value * unit.imperial_factor() + shift,
                    unit.imperial_symbol(),
                )
            }
        }
    }

    /// The figure to show for a quantity: as many significant digits as its unit bears.
    #[must_use]
    pub fn figure<Q>(self, quantity: Q, unit: impl UnitOf<Q>) -> Figure {
        let unit_of = unit.unit();
        let amount = unit.count(quantity);
        if let Some(figure) = self.as_on_a_tape(amount, unit_of) {
            return figure;
        }
        let (value, symbol) = self.convert(amount, unit_of);
        let (value, symbol) = millions(value, symbol);
        Figure {
            digits: significant(value, unit_of.digits()),
            unit: symbol,
        }
    }

    /// The digits with which a quantity fills a box again: all of them in metric, enough to read the same in imperial.
    #[must_use]
    pub fn entry<Q>(self, quantity: Q, unit: impl UnitOf<Q>) -> String {
        let (of, amount) = (unit.unit(), unit.count(quantity));
        if let (Self::Imperial, Some(entry)) = (self, inches::entry(amount, of)) {
            return entry;
        }
        let (converted, _) = self.convert(amount, of);
        match self {
            Self::Metric => digits(converted),
            Self::Imperial => digits(format!("{converted:.5e}").parse().unwrap_or(converted)),
        }
    }

    /// The other system.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Metric => Self::Imperial,
            Self::Imperial => Self::Metric,
        }
    }

    /// Of two ways to say a thing the one for this system, for words that hold no figure of the plan's.
    #[must_use]
    pub const fn either(self, metric: &'static str, imperial: &'static str) -> &'static str {
        match self {
            Self::Metric => metric,
            Self::Imperial => imperial,
        }
    }

    /// The figure as one run of text.
    #[must_use]
    pub fn say<Q>(self, quantity: Q, unit: impl UnitOf<Q>) -> String {
        self.figure(quantity, unit).to_string()
    }
}

/// Millions of newtons are written as meganewtons, so that a stiffness reads the same wherever it stands.
fn millions(value: f64, symbol: &'static str) -> (f64, &'static str) {
    if !(value.abs() >= 1e6 && value.is_finite()) {
        return (value, symbol);
    }
    let mega = match symbol {
        "N" => "MN",
        "N/m" => "MN/m",
        "N/rad" => "MN/rad",
        "N m/rad" => "MN m/rad",
        "N m²" => "MN m²",
        _ => return (value, symbol),
    };
    (value / 1e6, mega)
}

/// Digits of the largest number that is written out; nothing in a plan comes near it, and nobody counts its noughts.
const MOST_DIGITS: i32 = 15;

/// A number with so many significant digits, never in powers of ten, thousands set apart by thin spaces.
#[must_use]
pub fn significant(value: f64, digits: i32) -> String {
    if !value.is_finite() {
        return "not known".to_owned();
    }
    if value == 0.0 {
        return "0".to_owned();
    }
    let magnitude = value.abs().log10().floor() as i32;
    if magnitude >= MOST_DIGITS {
        let (side, sign) = if value < 0.0 {
            ("less", "\u{2212}")
        } else {
            ("more", "")
        };
        return format!(
            "{side} than {sign}{}",
            grouped(&format!("1{}", "0".repeat(MOST_DIGITS as usize)))
        );
    }
    let decimals = (digits - 1 - magnitude).clamp(0, 6) as usize;
    let scale = 10f64.powi((magnitude + 1 - digits).max(0));
    let rounded = (value / scale).round() * scale;
    let text = format!(
        "{:.*}",
        decimals,
        if decimals > 0 { value } else { rounded }.abs()
    );
    let sign = if value < 0.0 && text.bytes().any(|b| (b'1'..=b'9').contains(&b)) {
        "\u{2212}"
    } else {
        ""
    };
    let (whole, fraction) = match text.split_once('.') {
        Some((whole, fraction)) => (whole, fraction.trim_end_matches('0')),
        None => (text.as_str(), ""),
    };
    let point = if fraction.is_empty() { "" } else { "." };
    format!("{sign}{}{point}{fraction}", grouped(whole))
}

/// A number as a person would type it: every digit it has up to twelve, a decimal point, no marks between thousands.
#[must_use]
pub fn digits(value: f64) -> String {
    let tidy: f64 = format!("{value:.11e}").parse().unwrap_or(value);
    format!("{tidy}")
}

/// An amount of money: always two decimals, or as many more as it has, thousands set apart by thin spaces.
#[must_use]
pub fn money(amount: Decimal) -> String {
    decimal(amount, 2)
}

/// An amount that is ordered: every digit it has, so that it can be multiplied again by hand.
#[must_use]
pub fn ordered(amount: Decimal) -> String {
    decimal(amount, 0)
}

fn decimal(amount: Decimal, least: usize) -> String {
    let sign = if amount < Decimal::ZERO {
        "\u{2212}"
    } else {
        ""
    };
    let text = plain_decimal(amount.abs(), least);
    match text.split_once('.') {
        Some((whole, part)) => format!("{sign}{}.{part}", grouped(whole)),
        None => format!("{sign}{}", grouped(&text)),
    }
}

/// A decimal number as a program reads it: a point, no marks between thousands, at least so many decimals.
#[must_use]
pub fn plain_decimal(amount: Decimal, least: usize) -> String {
    let amount = amount.normalize();
    let decimals = least.max(amount.scale() as usize);
    format!("{amount:.decimals$}")
}

/// Thousands apart by a narrow space at which no line breaks (ISO 80000-1, 7.3.1, asks for a small space).
fn grouped(whole: &str) -> String {
    if whole.len() < 5 {
        return whole.to_owned();
    }
    let mut out = String::with_capacity(whole.len() + whole.len() / 3 * 3);
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i).is_multiple_of(3) {
            out.push('\u{202f}');
        }
        out.push(digit);
    }
    out
}

#[cfg(test)]
mod tests;
