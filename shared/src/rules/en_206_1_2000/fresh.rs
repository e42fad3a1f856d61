//! Concrete as it comes off the lorry: how it flows, how warm it is.
//! EN 206-1:2000, 4.2.1 and 5.2.8.

use crate::source::Source;
use crate::units::{Length, millimetre};

/// Classes of slump.
pub const SLUMP: Source = Source::from_memory("EN 206-1", "2000", "4.2.1, Table 3, class S3");
/// Least temperature.
pub const TEMPERATURE: Source = Source::from_memory("EN 206-1", "2000", "5.2.8");

/// Slump of class S3, from and to.
///
/// # Source
/// EN 206-1:2000, Table 3: 100 to 150 mm.
pub fn slump_s3() -> (Length, Length) {
    (millimetre::new(100.0), millimetre::new(150.0))
}

/// Least temperature of fresh concrete when it is delivered, °C.
///
/// # Source
/// EN 206-1:2000, 5.2.8.
pub const fn least_temperature_c() -> f64 {
    5.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn s3_is_the_third_of_five_classes() {
        let (from, to) = slump_s3();
        assert_eq!(
            (
                millimetre::get(from),
                millimetre::get(to),
                least_temperature_c()
            ),
            (100.0, 150.0, 5.0)
        );
    }
}
