//! How readily ground heaves when it freezes, by the word for the soil.
//!
//! Classes F1 to F3 of the German road builders' rules (ZTVE-StB by the groups of DIN 18196, read in a reproduction): clean
//! gravel F1; sand that nobody called clean, hard or plastic clay and weathered rock with silt in its joints F2; silt and lean
//! clay F3. Fill and organic soil count as the worst.

use serde::Serialize;

use crate::site_plan::site::Soil;
use crate::source::Source;

/// Where the classes come from.
pub const SOURCE: Source = Source::second_hand(
    "ZTVE-StB",
    "2017",
    "classes of frost susceptibility by the groups of DIN 18196",
);

/// Class of frost susceptibility.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub enum FrostClass {
    /// Does not heave.
    F1,
    /// Heaves a little to moderately.
    F2,
    /// Heaves strongly.
    F3,
}

/// The class of a soil's word; sound rock does not heave.
pub const fn frost_class(soil: Soil) -> FrostClass {
    match soil {
        Soil::Gravel | Soil::Rock => FrostClass::F1,
        Soil::LooseSand
        | Soil::MediumSand
        | Soil::DenseSand
        | Soil::HardClay
        | Soil::ShrinkingClay
        | Soil::WeatheredRock => FrostClass::F2,
        Soil::SoftClay
        | Soil::FirmClay
        | Soil::StiffClay
        | Soil::Silt
        | Soil::MadeGround
        | Soil::Peat => FrostClass::F3,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // ZTVE-StB's groups, second-hand: GW GI GE F1; TA and mixed soils with some fines F2; TL TM UL UM F3.
    #[test]
    fn fines_make_the_class() {
        assert!(frost_class(Soil::Gravel) < frost_class(Soil::MediumSand));
        assert!(frost_class(Soil::MediumSand) < frost_class(Soil::Silt));
        assert_eq!(frost_class(Soil::WeatheredRock), FrostClass::F2);
    }
}
