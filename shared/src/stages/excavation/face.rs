//! Whether a vertical face stands until the concrete is in: one answer, read by the pit's check and by the block's side contact.

use crate::field::Path;
use crate::figure::{Degree, KilonewtonPerCubicMetre, Kilopascal, Metre, Unit};
use crate::notes::{Check, Notes, Working, exceeds};
use crate::paths;
use crate::rules::terzaghi_1943::vertical_cut;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::excavation::Excavation;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::units::{Length, kilopascal, metre};

/// No face is left higher than this, however strong the clay.
const MOST_M: f64 = 1.2;
/// Deeper than this a face that does not stand is nothing to shutter from above by oneself.
pub const SHUTTERED_M: f64 = 0.6;
/// Drained strength of clay after a season: cohesion in kPa, friction in degrees.
const SEASON: (f64, f64) = (2.0, 25.0);
/// What moves the check.
const FIELDS: &[Path] = paths![site.soil, block.depth_m, excavation.sides];
/// Where the height of [`MOST_M`] comes from.
const MOST: Source = Source::second_hand(
    "DIN 4124",
    "2012",
    "upright to 1.25 m, and the 1.2 m of British site practice; read where other texts quote them",
);
/// Where [`SHUTTERED_M`] comes from.
const SHUTTERED: Source = Source::judgement(
    "a face that will not stand is shuttered or sloped back; beyond 0.6 m somebody looks",
);

/// What a vertical face in this ground does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Face {
    /// Sound rock stands.
    Rock,
    /// It may stand for the hours of digging and pouring, dry and without fissures, to this height; it never holds.
    MayStand {
        /// Height to which it may be left.
        height: Length,
    },
    /// It will not stand, at any height: shutter it or batter it. The block's sides are then held by backfill only.
    WillNotStand(Loose),
}

/// Why a face will not stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Loose {
    /// Sand and gravel: what holds them is damp.
    Grains,
    /// Groundwater above the foot of the face.
    Seepage,
    /// Fill, peat: dug or deposited loosely.
    Disturbed,
    /// Clay that dries and swells is full of fissures.
    Fissured,
}

impl Face {
    /// Whether concrete may be poured against it, so that the block's sides are held by undisturbed ground.
    pub const fn stands(&self) -> bool {
        !matches!(self, Self::WillNotStand(_))
    }

    /// Whether a face of this height is lined with boards and strutted.
    pub fn is_lined(&self, depth: Length) -> bool {
        match self {
            Self::Rock => false,
            Self::MayStand { height } => exceeds(metre::get(depth), metre::get(*height)),
            Self::WillNotStand(_) => true,
        }
    }
}

/// What a vertical face does down to a depth.
///
/// # Source
/// Sand, gravel, fill, seepage: no cohesion that lasts (DIN 4124 as quoted, 29 CFR 1926 Subpart P type C); clay by
/// [`vertical_cut::design_height`] at the word's lowest strength, at most 1.2 m; silt and weathered rock to 1.2 m by judgement.
pub fn face(ground: &Ground, depth: Length) -> Face {
    let seeps = ground.groundwater_depth.is_some_and(|water| water < depth);
    let most = metre::new(MOST_M);
    match ground.group {
        Group::Rock if ground.is_stable_rock() => Face::Rock,
        Group::Unfit if ground.soil == Soil::ShrinkingClay => Face::WillNotStand(Loose::Fissured),
        Group::Unfit => Face::WillNotStand(Loose::Disturbed),
        Group::Sand | Group::Gravel => Face::WillNotStand(Loose::Grains),
        Group::Clay | Group::Silt | Group::Rock if seeps => Face::WillNotStand(Loose::Seepage),
        Group::Clay => Face::MayStand {
            height: clay_height(ground).map_or(most, |height| height.min(most)),
        },
        Group::Silt | Group::Rock => Face::MayStand { height: most },
    }
}

/// Height of a face at the clay's measured strength, or the low end of its word.
fn clay_height(ground: &Ground) -> Option<Length> {
    let strength = ground.undrained_strength()?;
    Some(vertical_cut::design_height(strength, ground.unit_weight))
}

/// Adds the check; none for sound rock and battered sides.
pub fn check(ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    if !pit.cast_against_ground {
        return;
    }
    match face(ground, pit.depth) {
        Face::Rock => (),
        Face::MayStand { height } => may_stand(ground, pit, height, notes),
        Face::WillNotStand(why) => will_not_stand(why, pit, notes),
    }
}

fn may_stand(ground: &Ground, pit: &Excavation, height: Length, notes: &mut Notes) {
    workings(ground, height, notes);
    // Silt runs when it is shaken or wetted, and soft clay bulges: somebody looks before anyone relies on them.
    let weak = ground.group == Group::Silt || ground.soil == Soil::SoftClay;
    let note = if weak {
        "Soft clay and silt may stand for the hours of digging and pouring, if they are dry and nobody shakes the edge. Dig a trial pit and \
         look: where the face bulges or runs, shutter it or slope it back. Dig, look, pour the same day; do not climb in."
    } else {
        "It may stand for the hours of digging and pouring, if it is dry and without fissures; rain, frost, vibration and \
         time end that. \
         Above this height cut the side back or support it. Dig, look, pour the same day; do not climb in."
    };
    notes.check(
        Check::at_most(
            "excavation.face",
            "May a vertical face be left until the concrete is in?",
            pit.depth,
            height,
            Metre,
            MOST,
        )
        .ask_when(weak && metre::get(pit.depth) > SHUTTERED_M)
        .asks_beyond()
        .note(note)
        .moved_by(FIELDS),
    );
}

fn will_not_stand(why: Loose, pit: &Excavation, notes: &mut Notes) {
    let why = match why {
        Loose::Grains => {
            "A vertical face in sand or gravel will not stand: what seems to hold it is damp, which sun, rain or a footstep takes away."
        }
        Loose::Seepage => "A vertical face that water seeps from will not stand.",
        Loose::Disturbed => {
            "A vertical face in ground that was dug or filled before will not stand."
        }
        Loose::Fissured => {
            "Clay that shrinks is full of fissures, along which a vertical face gives way: it will not stand."
        }
    };
    let note = format!(
        "{why} Shutter it from the edge as you dig, or slope it back; the block's sides are then counted as backfilled. \
         Nobody goes in deeper than the knee. Deeper than this, have somebody look who shores pits for a living."
    );
    notes.check(
        Check::at_most(
            "excavation.face",
            "Is the pit shallow enough to shutter a face that will not stand?",
            pit.depth,
            metre::new(SHUTTERED_M),
            Metre,
            SHUTTERED,
        )
        .asks_beyond()
        .note(note)
        .moved_by(FIELDS),
    );
}

fn workings(ground: &Ground, height: Length, notes: &mut Notes) {
    let Some(strength) = ground
        .undrained_strength()
        .filter(|_| ground.group == Group::Clay)
    else {
        return;
    };
    let weight = ground.unit_weight;
    let line = |id, title, formula, source| {
        Working::new(id, title, formula, source).with("γ", weight, KilonewtonPerCubicMetre)
    };
    notes.working(
        line(
            "excavation.face",
            "Height to which a face in this clay may be left for hours",
            "H = min(1.2 m, (2.67 c/1.5 − 5 kPa)/γ)",
            vertical_cut::DESIGN,
        )
        .with("c", strength, Kilopascal)
        .gives("H", height, Metre),
    );
    let (cohesion, friction) = SEASON;
    let later = vertical_cut::season_later(kilopascal::new(cohesion), friction, weight);
    notes.working(
        line(
            "excavation.face_later",
            "Height at which the same clay falls a season later",
            "H = 2.67 c' tan(45° + φ/2)/γ",
            vertical_cut::SOURCE,
        )
        .with("c'", cohesion, Unit::Kilopascal)
        .with("φ", friction, Degree)
        .gives("H", later, Metre),
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief::resolve;
    use crate::notes::Verdict;
    use crate::site_plan::SitePlan;
    use crate::stages::{block, excavation, ground, room};

    fn found(soil: Soil, depth_m: f64, water_m: Option<f64>) -> (Face, Check) {
        let mut plan = SitePlan::unknown();
        plan.site.soil = Some(soil);
        plan.site.groundwater_depth_m = water_m;
        plan.block.depth_m = Some(depth_m);
        plan.excavation.sides = Some(crate::site_plan::excavation::Sides::Vertical);
        let brief = resolve(&plan).unwrap();
        let ground = ground::stage(&brief).value;
        let room = room::room(&brief, &ground);
        let loads = crate::stages::loads::stage(&brief).value;
        let block = block::stage(&brief, &ground, &room, &loads).value;
        let pit = excavation::stage(&brief, &ground, &room, &block);
        let mut check = pit.notes.checks.into_iter();
        let check = check.rfind(|check| check.id == "excavation.face");
        (face(&ground, metre::new(depth_m)), check.unwrap())
    }

    /// Basis of 29 CFR 1926 Subpart P and DIN 4124 as quoted: no cut in sand, gravel, fill or seepage is relied on.
    #[test]
    fn sand_gravel_fill_and_seepage_never_stand() {
        for (soil, water) in [
            (Soil::LooseSand, None),
            (Soil::DenseSand, None),
            (Soil::Gravel, None),
            (Soil::MadeGround, None),
            (Soil::ShrinkingClay, None),
            (Soil::FirmClay, Some(0.5)),
        ] {
            let (face, check) = found(soil, 1.0, water);
            assert!(!face.stands(), "{soil:?}");
            assert_eq!(check.verdict, Verdict::Unknown, "{soil:?}");
            assert_eq!((check.demand, check.capacity), (Some(1.0), Some(0.6)));
        }
    }

    #[test]
    fn firm_clay_may_stand_to_a_metre_and_a_fifth() {
        let (face, check) = found(Soil::FirmClay, 1.2, None);
        assert!(face.stands() && matches!(check.verdict, Verdict::Holds | Verdict::Close));
        assert_eq!(
            found(Soil::FirmClay, 1.25, None).1.verdict,
            Verdict::Unknown
        );
        assert_eq!(found(Soil::SoftClay, 1.0, None).1.verdict, Verdict::Unknown);
        assert_eq!(found(Soil::Silt, 1.0, None).1.verdict, Verdict::Unknown);
    }
}
