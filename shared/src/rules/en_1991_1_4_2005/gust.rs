//! Force of a gust of stated speed.
//! EN 1991-1-4:2005, expression (4.10) for the pressure and (5.3) for the force.

use crate::source::Source;
use crate::units::{Area, Force, Pressure, Velocity, metre_per_second, pascal};

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory("EN 1991-1-4", "2005", "expressions (4.10), (5.3)");

/// Density of air, kg/m³, the recommended value.
pub const AIR_DENSITY: f64 = 1.25;

/// Pressure of a gust, ½ ρ v².
///
/// # Source
/// EN 1991-1-4:2005, expression (4.10), with the gust's own speed in place of the mean.
///
/// # Valid for
/// A peak speed that already holds the gust: no further factor for turbulence.
///
/// # Example
/// ```
/// use stillground::{rules::en_1991_1_4_2005::gust::pressure, units::{metre_per_second, pascal}};
/// assert_eq!(pascal::get(pressure(metre_per_second::new(40.0))), 1000.0);
/// ```
pub fn pressure(gust: Velocity) -> Pressure {
    let speed = metre_per_second::get(gust);
    pascal::new(0.5 * AIR_DENSITY * speed * speed)
}

/// Force of a gust, c_f q A.
///
/// # Source
/// EN 1991-1-4:2005, expression (5.3), structural factor 1.
///
/// # Valid for
/// Small bodies that the gust takes whole.
pub fn force(gust: Velocity, area: Area, force_factor: f64) -> Force {
    pressure(gust) * area * force_factor
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{newton, square_metre};

    #[test]
    fn a_storm_on_a_square_metre() {
        assert!(
            (newton::get(force(
                metre_per_second::new(40.0),
                square_metre::new(0.5),
                1.2
            )) - 600.0)
                .abs()
                < 1e-9
        );
    }
}
