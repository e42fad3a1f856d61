//! Whether a vertical face stands until the concrete is in.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes, Working};
use crate::rules::osha_1926_p_1989::slopes;
use crate::rules::terzaghi_1943::vertical_cut;
use crate::stages::excavation::Excavation;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table;
use crate::units::{kilonewton_per_cubic_metre, kilopascal, metre};

/// On the height at which the face would fall.
const SAFETY_FACTOR: f64 = 2.0;
/// What the check asks.
const TITLE: &str = "A vertical face stands until the concrete is in";
/// What moves it.
const FIELDS: &[&str] = &["site.soil", "block.depth_m", "excavation.sides"];

/// Adds the check: a height for clay, unknown for other ground; none for sound rock and battered sides.
pub fn check(brief: &Brief, ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    if !pit.cast_against_ground || ground.is_stable_rock() {
        return;
    }
    let Some(strength) = soil_table::row(brief.site.soil.value)
        .undrained_strength_kpa
        .filter(|_| !pit.dewatering)
    else {
        let why = "Soil without cohesion, loosened rock, disturbed soil and soil under water have no height at which they can be relied on to stand. Dig a \
                   trial hole; where its face runs, line the pit with boards that stay, or batter it.";
        notes.check(
            Check::unknown("excavation.face", TITLE, Unit::Metre, slopes::TYPES, why)
                .moved_by(FIELDS),
        );
        return;
    };
    let falls = vertical_cut::cracked(kilopascal::new(strength), ground.unit_weight);
    let stands = falls / SAFETY_FACTOR;
    notes.working(
        Working::new(
            "excavation.face",
            "Height to which a face in this clay may be left",
            "H = 2.67 c / (γ F)",
            vertical_cut::SOURCE,
        )
        .with("c", strength, Unit::Kilopascal)
        .with(
            "γ",
            kilonewton_per_cubic_metre::get(ground.unit_weight),
            Unit::KilonewtonPerCubicMetre,
        )
        .with("F", SAFETY_FACTOR, Unit::One)
        .gives("H", metre::get(stands), Unit::Metre),
    );
    notes.check(
        Check::at_most("excavation.face", TITLE, metre::get(pit.depth), metre::get(stands), Unit::Metre, vertical_cut::SOURCE)
            .note(
                "Half of the height at which cracked clay of this strength would fall: enough to pour against, not to stand below. Rain, \
                 frost, vibration and days take it away.",
            )
            .moved_by(FIELDS),
    );
}
