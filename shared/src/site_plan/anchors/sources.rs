//! Where the figures of a product come from that are taken until its sheet is at hand.

use crate::rules::en_1992_4_2018::bond;
use crate::source::Source;

/// A figure that holds its place until the product's sheet is at hand.
pub const PLACEHOLDER: Source =
    Source::judgement("placeholder until the product's sheet is at hand");
/// The codes' range of the bond model.
pub const EN_DEPTH: Source = bond::BOND;
/// Least edge and spacing of a stud that nobody tested.
pub const ACI_EDGE: Source = Source::from_memory("ACI 318", "19", "17.9.2");
/// How far a stud comes out under a load.
pub const DISPLACEMENT: Source = Source::second_hand(
    "A published assessment of a bonded anchor",
    "2011",
    "displacement factors",
);
