//! The units of inch, pound and gallon in SI, each exact by definition or made of such.
//!
//! Yard and pound by the agreement of 1959, the gallon as 231 cubic inches: NIST SP 811 (2008), Appendix B.

use crate::units::STANDARD_GRAVITY_M_S2;

/// An inch, mm.
pub const INCH_MM: f64 = 25.4;
/// A foot, m.
pub const FOOT_M: f64 = 0.3048;
/// A yard, m.
pub const YARD_M: f64 = 0.9144;
/// A gallon of the United States, l.
pub const US_GALLON_L: f64 = 3.785_411_784;
/// A fluid ounce of the United States, ml: the 128th part of its gallon.
pub const US_FLUID_OUNCE_ML: f64 = 29.573_529_562_5;
/// A pound, kg.
pub const POUND_KG: f64 = 0.453_592_37;
/// A short ton, kg: 2000 pounds.
pub const SHORT_TON_KG: f64 = 907.184_74;
/// A pound-force, N.
pub const POUND_FORCE_N: f64 = 4.448_221_615_260_5;
/// A pound-force foot, N m.
pub const POUND_FORCE_FOOT_N_M: f64 = 1.355_817_948_331_400_4;
/// A pound-force on a square inch, MPa.
pub const PSI_MPA: f64 = POUND_FORCE_N / (INCH_MM * INCH_MM);
/// A mile an hour, m/s: 5280 feet in 3600 seconds.
pub const MILE_PER_HOUR_M_S: f64 = 0.447_04;

// Each of the others is what those before it make it, to the last digits that a number keeps.
const _: () = {
    assert!(near(FOOT_M, 12.0 * INCH_MM / 1000.0));
    assert!(near(YARD_M, 3.0 * FOOT_M));
    assert!(near(US_GALLON_L, 231.0 * INCH_MM * INCH_MM * INCH_MM / 1e6));
    assert!(near(US_FLUID_OUNCE_ML, 1000.0 * US_GALLON_L / 128.0));
    assert!(near(SHORT_TON_KG, 2000.0 * POUND_KG));
    assert!(near(POUND_FORCE_N, POUND_KG * STANDARD_GRAVITY_M_S2));
    assert!(near(POUND_FORCE_FOOT_N_M, POUND_FORCE_N * FOOT_M));
    assert!(near(MILE_PER_HOUR_M_S, 5280.0 * FOOT_M / 3600.0));
};

const fn near(found: f64, expected: f64) -> bool {
    (found / expected - 1.0).abs() < 1e-15
}
