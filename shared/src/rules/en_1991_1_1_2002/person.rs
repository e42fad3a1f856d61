//! The push of a person against something that stands.
//! EN 1991-1-1:2002, 6.4, Table 6.12 (horizontal load on a parapet, category A, upper recommended value).

use crate::source::Source;
use crate::units::{Force, Length, Mass, Moment, gravity, kilogram, kilonewton};

/// Where the push comes from.
pub const SOURCE: Source = Source::from_memory("EN 1991-1-1", "2002", "6.4, Table 6.12");
/// Where the ladder comes from.
pub const LADDER_SOURCE: Source =
    Source::derived("a ladder at one in four under the climber's whole weight");

/// How far outside the column a hung ladder's weight acts, m: common hooks and a climber's middle.
pub const LADDER_STANDOFF_M: f64 = 0.4;

/// A person with tools and the ladder, 120 kg.
///
/// # Source
/// Judgement.
pub fn climber() -> Mass {
    kilogram::new(120.0)
}

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
pub fn ladder_push(climber: Mass) -> Force {
    climber * gravity() / 4.0
}

/// Moment at the column's foot of a ladder that hangs from its top: W h/4 + W (d/2 + a), its lean on the column and its weight
/// outside it.
///
/// # Source
/// Statics, with the push of [`ladder_push`].
///
/// # Valid for
/// A ladder that hangs from the column, not one that stands on the ground.
///
/// # Example
/// ```
/// use stillground::{rules::en_1991_1_1_2002::person::ladder_moment, units::{metre, newton, newton_metre}};
/// let moment = ladder_moment(newton::new(1000.0), metre::new(2.0), metre::new(0.2), metre::new(0.4));
/// assert_eq!(newton_metre::get(moment), 1000.0);
/// ```
pub fn ladder_moment(weight: Force, height: Length, column: Length, standoff: Length) -> Moment {
    let hanging: Moment = weight * (column / 2.0 + standoff);
    hanging + weight / 4.0 * height
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{metre, newton, newton_metre};

    #[test]
    fn a_climber_pushes_with_a_quarter_of_the_weight() {
        assert!((newton::get(ladder_push(climber())) - 294.2).abs() < 0.1);
        // Computed apart: 1176.8 N half a metre beside the axis, with no height to lean over.
        let hung = ladder_moment(
            climber() * gravity(),
            metre::new(0.0),
            metre::new(0.2),
            metre::new(LADDER_STANDOFF_M),
        );
        assert!((newton_metre::get(hung) - 588.4).abs() < 0.1);
    }
}
