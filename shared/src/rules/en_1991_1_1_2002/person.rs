//! The push of a person against something that stands.
//! EN 1991-1-1:2002, 6.4, Table 6.12 (horizontal load on a parapet, category A, upper recommended value).

use crate::source::{Source, Standing};
use crate::units::{Force, Length, Mass, Moment, gravity, kilonewton};

/// Where the push comes from.
pub const SOURCE: Source = Source::new("EN 1991-1-1", "2002", "6.4, Table 6.12", Standing::FromMemory);
/// Where the ladder comes from.
pub const LADDER_SOURCE: Source = Source::derived("a ladder at one in four under the climber's whole weight");

/// Push of one person who leans on the column's top, 0.5 kN.
///
/// # Source
/// EN 1991-1-1:2002, Table 6.12: 0.5 kN on a metre of parapet at a dwelling; one person is a metre wide.
///
/// # Valid for
/// One adult; a crowd is another matter.
///
/// # Example
/// ```
/// use stillground::{rules::en_1991_1_1_2002::person::leaning, units::kilonewton};
/// assert_eq!(kilonewton::get(leaning()), 0.5);
/// ```
#[must_use]
pub fn leaning() -> Force {
    kilonewton::new(0.5)
}

/// Push of a ladder that leans on the column: a quarter of the weight on it, at a slope of four up to one out.
///
/// # Source
/// Statics of a ladder with the climber at its top and a smooth rest there.
///
/// # Valid for
/// The climber at the top rung, which is the worst place.
#[must_use]
pub fn ladder_push(climber: Mass) -> Force {
    climber * gravity() / 4.0
}

/// Moment of a weight that hangs beside the axis, W a.
///
/// # Source
/// Statics.
///
/// # Valid for
/// A ladder or a tool bag that hangs from the column's top.
#[must_use]
pub fn hanging_moment(weight: Mass, arm: Length) -> Moment {
    weight * gravity() * arm
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilogram, metre, newton, newton_metre};

    #[test]
    fn a_climber_pushes_with_a_quarter_of_the_weight() {
        assert!((newton::get(ladder_push(kilogram::new(120.0))) - 294.2).abs() < 0.1);
        assert!((newton_metre::get(hanging_moment(kilogram::new(120.0), metre::new(0.5))) - 588.4).abs() < 0.1);
    }
}
