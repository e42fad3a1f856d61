//! The table of units: names without spaces, and the size in the base of its kind (SI, except degrees and Celsius). Lengths of
//! inch, foot and yard are quotients of whole numbers, so that what is typed is read to the last bit.

use stillground::units::STANDARD_GRAVITY_M_S2;
use stillground::units::customary::{
    FOOT_M, INCH_MM, MILE_PER_HOUR_M_S, POUND_FORCE_FOOT_N_M, POUND_FORCE_N, POUND_KG, PSI_MPA,
    SHORT_TON_KG, US_FLUID_OUNCE_ML, US_GALLON_L, YARD_M,
};

use super::{Kind, Measure, Row, m, row};

/// Units that may follow a figure, with all names of each.
pub const ROWS: &[Row] = &[
    row(
        Kind::Length,
        &["millimetres", "millimeters", "mm"],
        1.0,
        1000.0,
    ),
    row(
        Kind::Length,
        &["centimetres", "centimeters", "cm"],
        1.0,
        100.0,
    ),
    row(
        Kind::Length,
        &["metres", "meters", "metre", "meter", "m"],
        1.0,
        1.0,
    ),
    row(Kind::Length, &["microns", "micron", "um"], 1.0, 1e6),
    row(
        Kind::Length,
        &["inches", "inch", "in", "\""],
        254.0,
        10_000.0,
    ),
    row(Kind::Length, &["feet", "foot", "ft", "'"], 3048.0, 10_000.0),
    row(Kind::Length, &["yards", "yard", "yd"], 9144.0, 10_000.0),
    row(Kind::Area, &["mm2"], 1.0, 1e6),
    row(Kind::Area, &["cm2"], 1.0, 1e4),
    row(Kind::Area, &["m2", "sqm"], 1.0, 1.0),
    row(Kind::Area, &["sqft", "ft2"], FOOT_M * FOOT_M, 1.0),
    row(Kind::Area, &["in2"], INCH_MM * INCH_MM, 1e6),
    row(Kind::Volume, &["m3", "cum"], 1.0, 1.0),
    row(Kind::Volume, &["litres", "liters", "l"], 1.0, 1000.0),
    row(Kind::Volume, &["ml", "cm3"], 1.0, 1e6),
    row(
        Kind::Volume,
        &["yd3", "cuyd"],
        YARD_M * YARD_M * YARD_M,
        1.0,
    ),
    row(
        Kind::Volume,
        &["ft3", "cuft"],
        FOOT_M * FOOT_M * FOOT_M,
        1.0,
    ),
    row(Kind::Volume, &["usfloz"], US_FLUID_OUNCE_ML, 1e6),
    row(Kind::Volume, &["impfloz"], 28.413_062_5, 1e6),
    row(Kind::Volume, &["usgal"], US_GALLON_L, 1e3),
    row(Kind::Volume, &["impgal"], 4.546_09, 1e3),
    row(Kind::Mass, &["kilograms", "kilos", "kgs", "kg"], 1.0, 1.0),
    row(Kind::Mass, &["g"], 1.0, 1000.0),
    row(Kind::Mass, &["tonnes", "tonne", "t"], 1000.0, 1.0),
    row(Kind::Mass, &["shorttons"], SHORT_TON_KG, 1.0),
    row(Kind::Mass, &["longtons"], 2240.0 * POUND_KG, 1.0),
    row(Kind::Mass, &["pounds", "lbs", "lb"], POUND_KG, 1.0),
    row(Kind::Mass, &["ounces", "oz"], POUND_KG, 16.0),
    row(Kind::Mass, &["stone", "st"], 14.0 * POUND_KG, 1.0),
    row(Kind::Time, &["milliseconds", "ms"], 1.0, 1000.0),
    row(Kind::Time, &["seconds", "second", "sec", "s"], 1.0, 1.0),
    row(Kind::Time, &["minutes", "minute", "min"], 60.0, 1.0),
    row(Kind::Time, &["hours", "hour", "hrs", "h"], 3600.0, 1.0),
    row(Kind::Time, &["days", "d"], 86_400.0, 1.0),
    row(Kind::Speed, &["m/s"], 1.0, 1.0),
    row(Kind::Speed, &["km/h", "kph"], 1000.0, 3600.0),
    row(Kind::Speed, &["ft/s"], FOOT_M, 1.0),
    row(Kind::Speed, &["mph"], MILE_PER_HOUR_M_S, 1.0),
    row(Kind::Speed, &["knots", "kn"], 1852.0, 3600.0),
    row(Kind::Force, &["newtons", "n"], 1.0, 1.0),
    row(Kind::Force, &["kn"], 1000.0, 1.0),
    row(Kind::Force, &["kgf"], STANDARD_GRAVITY_M_S2, 1.0),
    // A scale that pulls shows a mass, and means its weight.
    row(Kind::Force, &["kg", "kilos"], STANDARD_GRAVITY_M_S2, 1.0),
    row(Kind::Force, &["lbf", "lbs", "lb"], POUND_FORCE_N, 1.0),
    row(Kind::Torque, &["nm", "newtonmetres"], 1.0, 1.0),
    row(Kind::Torque, &["kgfm"], STANDARD_GRAVITY_M_S2, 1.0),
    row(
        Kind::Torque,
        &["lbfft", "lbft", "ftlbf", "ftlb", "ftlbs"],
        POUND_FORCE_FOOT_N_M,
        1.0,
    ),
    row(Kind::Torque, &["lbfin", "inlb"], POUND_FORCE_FOOT_N_M, 12.0),
    row(Kind::Pressure, &["kpa", "kn/m2"], 1000.0, 1.0),
    row(Kind::Pressure, &["mpa", "n/mm2"], 1e6, 1.0),
    row(Kind::Pressure, &["bar"], 1e5, 1.0),
    row(Kind::Pressure, &["psi", "lbf/in2"], 1e6 * PSI_MPA, 1.0),
    row(
        Kind::Pressure,
        &["psf", "lbf/ft2"],
        POUND_FORCE_N / (FOOT_M * FOOT_M),
        1.0,
    ),
    row(Kind::UnitWeight, &["kn/m3"], 1000.0, 1.0),
    row(Kind::UnitWeight, &["kg/m3"], STANDARD_GRAVITY_M_S2, 1.0),
    row(
        Kind::UnitWeight,
        &["pcf", "lbf/ft3", "lb/ft3"],
        POUND_FORCE_N / (FOOT_M * FOOT_M * FOOT_M),
        1.0,
    ),
    row(Kind::Temperature, &["°c", "c", "celsius"], 1.0, 1.0),
    Row(
        &["°f", "f", "fahrenheit"],
        Measure {
            shift: -32.0,
            ..m(Kind::Temperature, "", 5.0, 9.0)
        },
    ),
    row(Kind::Difference, &["k", "°c", "c"], 1.0, 1.0),
    row(Kind::Difference, &["°f", "f"], 5.0, 9.0),
    row(Kind::FreezingIndex, &["°cdays", "°cd", "cdays"], 1.0, 1.0),
    row(Kind::FreezingIndex, &["°fdays", "°fd", "fdays"], 5.0, 9.0),
    row(Kind::Angle, &["degrees", "deg", "°"], 1.0, 1.0),
    row(Kind::Angle, &["arcmin", "'"], 1.0, 60.0),
    row(Kind::Angle, &["arcseconds", "arcsec", "\""], 1.0, 3600.0),
    row(Kind::AngularAcceleration, &["°/s2", "deg/s2"], 1.0, 1.0),
    row(Kind::Frequency, &["hz", "/s"], 1.0, 1.0),
    row(Kind::Stiffness, &["nm/rad"], 1.0, 1.0),
    row(Kind::Stiffness, &["knm/rad"], 1e3, 1.0),
    row(Kind::Stiffness, &["mnm/rad"], 1e6, 1.0),
    row(Kind::Stiffness, &["lbfft/rad"], POUND_FORCE_FOOT_N_M, 1.0),
    row(Kind::Inertia, &["kgm2"], 1.0, 1.0),
    row(Kind::Inertia, &["lbft2"], POUND_KG * FOOT_M * FOOT_M, 1.0),
    row(Kind::LengthPerPressure, &["mm/mpa", "mm/(n/mm2)"], 1.0, 1.0),
    row(
        Kind::LengthPerPressure,
        &["in/ksi"],
        INCH_MM,
        1000.0 * PSI_MPA,
    ),
    row(Kind::Ratio, &["%"], 1.0, 100.0),
];

/// A name, what it measures, and its readings: symbol and words.
type Doubt = (&'static str, Kind, &'static [(&'static str, &'static str)]);

/// Units whose name means different sizes in different countries.
pub const DOUBTS: &[Doubt] = &[
    ("tons", Kind::Mass, TONS),
    ("ton", Kind::Mass, TONS),
    (
        "floz",
        Kind::Volume,
        &[
            ("US fl oz", "United States fluid ounces"),
            ("imp fl oz", "imperial fluid ounces"),
        ],
    ),
    ("gallons", Kind::Volume, GALLONS),
    ("gal", Kind::Volume, GALLONS),
];
const TONS: &[(&str, &str)] = &[
    ("tonnes", "tonnes of 1000 kg"),
    ("short tons", "short tons of 2000 lb"),
    ("long tons", "long tons of 2240 lb"),
];
const GALLONS: &[(&str, &str)] = &[
    ("US gal", "United States gallons"),
    ("imp gal", "imperial gallons"),
];
