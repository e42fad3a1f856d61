//! Back to practice: "80 kg beside a metre cube: about 1.5 arcsec", held against this block, with what could make the difference.

use serde::Serialize;

use super::{PERSON_KG, arcsec, lean};
use crate::brief::Brief;
use crate::figure::{Arcsecond, Megapascal, Unit};
use crate::halfspace::Solved;
use crate::notes::{Notes, Opinion, Working};
use crate::rules::fhwa_gec5_2017::shear_modulus as waves;
use crate::source::Source;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::SOURCE;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::units::{Pressure, STANDARD_GRAVITY_M_S2, Spread, megapascal, metre_per_second};

/// The trade's figure.
pub const PRACTICE_ARCSEC: f64 = 1.5;
/// Where it comes from.
pub const PRACTICE_SOURCE: Source =
    Source::common_practice("80 kg beside a pier move it about 1.5 arcsec");
/// Within so much the two figures are the same for all that anybody knows.
const NEAR_FACTOR: f64 = 1.25;
/// On the block: so far in from its side.
const INSIDE_M: f64 = 0.1;
/// Beside it: so far off its side.
const BESIDE_M: f64 = 0.2;
/// How far from its side the third one stands, a long step.
const AWAY_M: f64 = 1.0;

/// One place.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PracticeRow {
    /// In words.
    pub place: &'static str,
    /// Distance from the axis, along the softer way.
    pub at_m: f64,
    /// Lean, by ground: low is the softest.
    pub tilt_arcsec: Spread<f64>,
    /// Shear modulus for which the trade's figure holds there.
    pub holds_at_shear_modulus_mpa: f64,
    /// The same as a speed of shear waves, in ground of this weight.
    pub holds_at_shear_wave_speed_m_s: f64,
}

/// The figure and three places.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Practice {
    /// The person.
    pub mass_kg: f64,
    /// What the trade says.
    pub said_arcsec: f64,
    /// On the block, beside it, a metre from its side.
    pub rows: Vec<PracticeRow>,
    /// What that means, in words.
    pub words: String,
    /// Where the figure comes from.
    pub source: Source,
}

pub fn find(
    brief: &Brief,
    ground: &Ground,
    solved: &Solved,
    uneven: Spread<Factors>,
    g: Spread<Pressure>,
    notes: &mut Notes,
) -> Practice {
    let shape = &solved.shape;
    let along_x = shape.length_m <= shape.width_m;
    let half = 0.5 * shape.length_m.min(shape.width_m);
    let row = |(place, at_m): (&'static str, f64)| {
        let [x_m, y_m] = if along_x { [at_m, 0.0] } else { [0.0, at_m] };
        let newtons = PERSON_KG * STANDARD_GRAVITY_M_S2;
        let tilt =
            |uneven: &Factors, g: Pressure| arcsec(lean(solved, uneven, x_m, y_m), newtons, g);
        let tilt_arcsec = Spread {
            low: tilt(&uneven.low, g.low),
            typical: tilt(&uneven.typical, g.typical),
            high: tilt(&uneven.high, g.high),
        };
        let needed = g.typical * (tilt_arcsec.typical / PRACTICE_ARCSEC);
        PracticeRow {
            place,
            at_m,
            tilt_arcsec,
            holds_at_shear_modulus_mpa: megapascal::get(needed),
            holds_at_shear_wave_speed_m_s: metre_per_second::get(waves::shear_wave_speed(
                ground.unit_weight,
                needed,
            )),
        }
    };
    let rows: Vec<PracticeRow> = [
        (
            "on the block, near its edge",
            (half - INSIDE_M).max(0.5 * half),
        ),
        ("beside the block", half + BESIDE_M),
        ("a long step from its side", half + AWAY_M),
    ]
    .into_iter()
    .map(row)
    .collect();
    let opinion = opinion(brief, &rows, g);
    let words = opinion.as_ref().map_or_else(String::new, Opinion::sentence);
    notes.opinions.extend(opinion);
    note(&rows, g, notes);
    Practice {
        mass_kg: PERSON_KG,
        said_arcsec: PRACTICE_ARCSEC,
        rows,
        words,
        source: PRACTICE_SOURCE,
    }
}

fn opinion(brief: &Brief, rows: &[PracticeRow], g: Spread<Pressure>) -> Option<Opinion> {
    let [on, beside, away] = rows else {
        return None;
    };
    let units = brief.units;
    let modulus = |row: &PracticeRow| units.say(row.holds_at_shear_modulus_mpa, Unit::Megapascal);
    let arcsec = |value: f64| units.say(value, Arcsecond);
    let person = units.say(PERSON_KG, Unit::Kilogram);
    let difference = if beside.tilt_arcsec.typical < PRACTICE_ARCSEC / NEAR_FACTOR {
        "Sides that the ground does not hold, disturbed or drained ground, a floor that touches the pier, and the column and mount \
         themselves could make the difference. "
    } else {
        ""
    };
    let says = format!(
        "The trade's experience is that {person} beside a metre cube tilt the pier about {}.",
        arcsec(PRACTICE_ARCSEC)
    );
    let calculation = format!(
        "Here the plan finds {} beside the block and {} at worst: {}.",
        arcsec(beside.tilt_arcsec.typical),
        arcsec(beside.tilt_arcsec.low),
        against(beside.tilt_arcsec),
    );
    let together = format!(
        "{difference}The trade's figure holds for ground of {} when the person stands on the block, of {} beside it and of {} {} from its \
         side; here the ground is assumed to have {}. The lean test decides.",
        modulus(on),
        modulus(beside),
        modulus(away),
        units.about(AWAY_M, Unit::Metre),
        units.say(g.typical, Megapascal),
    );
    let title = "A person beside the block";
    Some(
        Opinion::new("motion.practice", title, says, PRACTICE_SOURCE)
            .beside(calculation)
            .together(together),
    )
}

/// The plan's figure over the trade's, in words.
fn against(found: Spread<f64>) -> String {
    let times = |found: f64| {
        let factor = (PRACTICE_ARCSEC / found).max(found / PRACTICE_ARCSEC);
        if factor < NEAR_FACTOR {
            "about the trade's figure".to_owned()
        } else if found < PRACTICE_ARCSEC {
            format!("1/{factor:.1} of the trade's figure")
        } else {
            format!("{factor:.1} times the trade's figure")
        }
    };
    format!(
        "typically {}, at worst {}",
        times(found.typical),
        times(found.low)
    )
}

fn note(rows: &[PracticeRow], g: Spread<Pressure>, notes: &mut Notes) {
    let [_, beside, _] = rows else { return };
    notes.working(
        Working::new(
            "motion.practice",
            "Shear modulus for which 1.5 arcsec beside the block is right",
            "G' = G θ/1.5″",
            SOURCE,
        )
        .with("G", g.typical, Megapascal)
        .with("θ", beside.tilt_arcsec.typical, Arcsecond)
        .gives("G'", beside.holds_at_shear_modulus_mpa, Unit::Megapascal),
    );
}
