//! Unit weight of concrete.
//! EN 1991-1-1:2002, Annex A, Table A.1.

use crate::source::{Source, Standing};
use crate::units::{UnitWeight, kilonewton_per_cubic_metre};

/// Where this comes from.
pub const SOURCE: Source = Source::new(
    "EN 1991-1-1",
    "2002",
    "Annex A, Table A.1",
    Standing::FromMemory,
);

/// State of the concrete.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct State {
    /// With a usual amount of steel.
    pub reinforced: bool,
    /// Not yet hard.
    pub fresh: bool,
}

/// Nominal unit weight of normal concrete: 24 kN/m³, 1 more with steel, 1 more while fresh.
///
/// # Source
/// EN 1991-1-1:2002, Table A.1.
///
/// # Valid for
/// Normal-weight concrete.
///
/// # Example
/// ```
/// use stillground::{rules::en_1991_1_1_2002::density::{State, concrete}, units::kilonewton_per_cubic_metre};
/// assert_eq!(kilonewton_per_cubic_metre::get(concrete(State { reinforced: false, fresh: false })), 24.0);
/// ```
#[must_use]
pub fn concrete(state: State) -> UnitWeight {
    let steel = if state.reinforced { 1.0 } else { 0.0 };
    let water = if state.fresh { 1.0 } else { 0.0 };
    kilonewton_per_cubic_metre::new(24.0 + steel + water)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fresh_reinforced_concrete_is_the_heaviest() {
        assert_eq!(
            kilonewton_per_cubic_metre::get(concrete(State {
                reinforced: true,
                fresh: true
            })),
            26.0
        );
    }
}
