//! The design approaches: which partial factors act together.
//! EN 1997-1:2004, 2.4.7.3.4 and Annex A, Tables A.3 to A.5.

use crate::source::Source;

/// Where the factors come from.
pub const SOURCE: Source = Source::from_memory(
    "EN 1997-1",
    "2004",
    "Annex A, Tables A.3 to A.5, and 2.4.7.3.4",
);

/// One set of partial factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Approach {
    /// Its name, for instance `DA1-2`.
    pub name: &'static str,
    /// On permanent weight, the more unfavourable of its two values being a set of its own.
    pub permanent_factor: f64,
    /// On gusts and people.
    pub variable_factor: f64,
    /// Under the tangent of the angle of friction.
    pub friction_factor: f64,
    /// Under the undrained strength.
    pub undrained_factor: f64,
    /// Under the bearing resistance.
    pub bearing_factor: f64,
}

const fn approach(
    name: &'static str,
    [permanent_factor, variable_factor]: [f64; 2],
    [friction_factor, undrained_factor]: [f64; 2],
    bearing_factor: f64,
) -> Approach {
    Approach {
        name,
        permanent_factor,
        variable_factor,
        friction_factor,
        undrained_factor,
        bearing_factor,
    }
}

/// Strength as it is.
const M1: [f64; 2] = [1.0, 1.0];
/// Strength reduced.
const M2: [f64; 2] = [1.25, 1.4];

/// Every approach, with the weight both unfavourable and favourable where the set has two values for it: which one a country
/// uses is its own choice, so all are run and the worst is shown.
///
/// # Source
/// EN 1997-1:2004, Tables A.3 (A1: 1.35 or 1.0, 1.5; A2: 1.0, 1.3), A.4 (M1: 1; M2: 1.25 on tan φ', 1.4 on c_u) and A.5
/// (R1: 1; R2: 1.4; R3: 1).
pub const ALL: [Approach; 8] = [
    approach("DA1-1", [1.35, 1.5], M1, 1.0),
    approach("DA1-1, weight favourable", [1.0, 1.5], M1, 1.0),
    approach("DA1-2", [1.0, 1.3], M2, 1.0),
    approach("DA2", [1.35, 1.5], M1, 1.4),
    approach("DA2, weight favourable", [1.0, 1.5], M1, 1.4),
    approach("DA3", [1.35, 1.5], M2, 1.0),
    approach("DA3, weight favourable", [1.0, 1.5], M2, 1.0),
    approach("DA3, actions of the ground", [1.0, 1.3], M2, 1.0),
];
