//! The checks and lines of calculation of what tightening bends.

use crate::field::Path;
use crate::figure::{Kilonewton, KilonewtonPerMillimetre, Megapascal, Millimetre, One, Unit};
use crate::notes::{Check, Notes, Working};
use crate::paths;
use crate::rules::annular_plate;
use crate::stages::anchors::situation::Situation;
use crate::units::megapascal;

use super::{CREPT_MM, ELASTIC_SHARE_RATIO, Flexure, LOWEST_MM, PEAK_FACTOR, PRACTICE, bent};

pub(super) fn workings(situation: &Situation, found: &Flexure, notes: &mut Notes) {
    let plate = bent(situation);
    notes.working(
        Working::new(
            "anchors.nut_gap",
            "How far a lower nut may be off the plane of the others",
            "gap at which the wall's bending reaches half its yield strength",
            annular_plate::PLATE,
        )
        .with("f_y", found.yield_strength, Megapascal)
        .gives("δ", found.nut_gap, Millimetre),
    );
    let title = if found.acts {
        "Slope of plate and wall under the highest preload"
    } else {
        "Slope of plate and wall if nothing stood under the plate at the studs"
    };
    notes.working(
        Working::new(
            "anchors.flexure",
            title,
            "harmonic 0 of the plate on the edge of a long cylinder",
            annular_plate::WALL,
        )
        .with("F", found.pull, Kilonewton)
        .with("w", found.plate, Millimetre)
        .with("peaks", PEAK_FACTOR, One)
        .with("σ_wall", found.wall_stress, Megapascal)
        .with("σ_plate", found.plate_stress, Megapascal)
        .with("f_y", found.yield_strength, Megapascal)
        .gives("θ", found.slope_ratio, One),
    );
    notes.working(
        Working::new(
            "anchors.flexure_wall_height",
            "Height of wall that bends with the plate",
            "π/β, β = [3(1 − ν²)]^¼/√(a t)",
            annular_plate::WALL,
        )
        .with("a", plate.wall_radius, Millimetre)
        .with("t", plate.wall, Millimetre)
        .with("as builders say", LOWEST_MM, Unit::Millimetre)
        .gives("z", found.wall_height, Millimetre),
    );
    notes.working(
        Working::new(
            "anchors.flexure_kept",
            "Preload left when the resin has crept a little, over a bent plate",
            "1 − δ/[F (1/k_plate + 1/k_stud)]",
            PRACTICE,
        )
        .with("δ", CREPT_MM, Unit::Millimetre)
        .with("k_plate", found.spring, KilonewtonPerMillimetre)
        .with("under a stiff plate", found.kept_stiff_ratio, One)
        .gives("F/F₀", found.kept_ratio, One),
    );
}

pub(super) fn checks(situation: &Situation, found: &Flexure, notes: &mut Notes) {
    if !found.acts {
        return;
    }
    let units = situation.brief.units;
    let capacity = megapascal::get(found.yield_strength) * ELASTIC_SHARE_RATIO;
    let fields: &[Path] = paths![
        anchors.torque_n_m,
        pier.plate_thickness_mm,
        pier.wall_mm,
        anchors.circle_diameter_mm,
        anchors.lower_nuts,
    ];
    for (id, title, stress) in [
        (
            "anchors.flexure_wall",
            "Does the column wall stay elastic when the nuts are tightened?",
            found.wall_stress,
        ),
        (
            "anchors.flexure_plate",
            "Does the base plate stay elastic when the nuts are tightened?",
            found.plate_stress,
        ),
    ] {
        notes.check(
            Check::at_most(id, title, megapascal::get(stress), capacity, Unit::Megapascal, annular_plate::PLATE)
                .note(format!(
                    "A fifth of the yield strength must be left, so that it springs back. The studs draw the plate down by {}; the bending dies out \
                     within about {} of wall. A quarter is added for peaks near single studs.",
                    units.say( found.plate, Millimetre),
                    units.say( found.wall_height, Millimetre)
                ))
                .moved_by(fields),
        );
    }
}
