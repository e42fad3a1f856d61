//! What tightening bends: the base plate and the lowest part of the column's wall, where the plate rests under the column
//! alone and nothing stands under it at the studs. Builders do it on purpose, so that the plate pulls like a spring.

mod lines;

use serde::Serialize;

use crate::figure::{Kilonewton, MeganewtonMetrePerRadian, Megapascal, NewtonMetre};
use crate::notes::Notes;
use crate::rules::annular_plate::{self, Dish, Plate};
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::vdi_2230_2015::loss;
use crate::source::Source;
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::Situation;
use crate::stages::anchors::torque::{Screw, Way};
use crate::stages::block::Block;
use crate::stages::joint;
use crate::stages::steel::Grade;
use crate::units::{
    Force, Length, LinearStiffness, Moment, Pressure, RotationalStiffness, kilonewton, megapascal,
    metre, millimetre, newton, newton_metre, newton_metre_per_radian, newton_per_metre,
};

/// Peaks near a single stud against the mean round the wall, and what a thick plate adds beyond thin-plate theory: the
/// theory met finite elements within 20 % between 12 and 30 mm.
const PEAK_FACTOR: f64 = 1.25;
/// Share of the yield strength that deliberate bending may use.
const ELASTIC_SHARE_RATIO: f64 = 0.8;
/// What the resin creeps, to say how much of the preload a spring keeps, mm.
const CREPT_MM: f64 = 0.1;
/// The lowest part of the wall that common practice speaks of, mm.
pub const LOWEST_MM: f64 = 200.0;
/// Places along plate and wall in the section.
const POINTS: usize = 61;
/// What builders say.
const PRACTICE: Source = Source::common_practice(
    "the lowest 200 mm of the wall bend with the plate when the nuts are tightened",
);

/// What tightening bends, or would.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Flexure {
    /// Whether this plan bends it; else what the same torque would do were nothing under the plate at the studs.
    pub acts: bool,
    /// Pull of each stud, at its highest.
    #[serde(rename = "pull_kn", with = "kilonewton")]
    pub pull: Force,
    /// Movement of the plate at the studs.
    #[serde(rename = "plate_mm", with = "millimetre")]
    pub plate: Length,
    /// Slope where plate and wall meet, radians.
    pub slope_ratio: f64,
    /// Bending stress in the wall.
    #[serde(rename = "wall_stress_mpa", with = "megapascal")]
    pub wall_stress: Pressure,
    /// Bending stress in the plate.
    #[serde(rename = "plate_stress_mpa", with = "megapascal")]
    pub plate_stress: Pressure,
    /// Yield strength of both.
    #[serde(rename = "yield_mpa", with = "megapascal")]
    pub yield_strength: Pressure,
    /// The greater stress over the yield strength.
    pub yield_ratio: f64,
    /// Whether a fifth of the yield strength stays in hand.
    pub elastic: bool,
    /// Height of wall that takes part: half a wave of its decay.
    #[serde(rename = "wall_height_mm", with = "millimetre")]
    pub wall_height: Length,
    /// How far the lower nuts may be off a plane before the wall reaches half its yield strength.
    #[serde(rename = "nut_gap_mm", with = "millimetre")]
    pub nut_gap: Length,
    /// Torque at which a fifth of the yield strength is just still in hand.
    #[serde(rename = "most_torque_n_m", with = "newton_metre")]
    pub most_torque: Moment,
    /// Stiffness of the bent plate at one stud.
    #[serde(rename = "spring_n_per_m", with = "newton_per_metre")]
    pub spring: LinearStiffness,
    /// Share of the preload left when the resin has crept by a tenth of a millimetre.
    pub kept_ratio: f64,
    /// The same under a plate that does not give.
    pub kept_stiff_ratio: f64,
    /// Turning stiffness of the foot while the bent plate holds the column's edge down.
    #[serde(rename = "closed_n_m_per_rad", with = "newton_metre_per_radian")]
    pub closed: RotationalStiffness,
    /// The same once the edge lifts.
    #[serde(rename = "lifted_n_m_per_rad", with = "newton_metre_per_radian")]
    pub lifted: RotationalStiffness,
    /// The same with tight nuts above and below the plate.
    #[serde(rename = "on_nuts_n_m_per_rad", with = "newton_metre_per_radian")]
    pub on_nuts: RotationalStiffness,
    /// Section of the plate: radius and movement towards the concrete.
    #[serde(skip)]
    pub plate_section: Vec<(Length, Length)>,
    /// Section of the wall: height, movement outwards, and bending stress over that at the root.
    #[serde(skip)]
    pub wall_section: Vec<(Length, Length, f64)>,
    /// What it means, in sentences.
    pub says: Vec<String>,
}

/// The plate that is bent, under the wall that makes the most of it.
fn bent(situation: &Situation) -> Plate {
    let brief = situation.brief;
    joint::plate_stressed_most(brief, brief.anchors.number())
}

/// The plate dished by a pull of each stud.
fn dished(situation: &Situation, plate: &Plate, pull: Force) -> Option<Dish> {
    annular_plate::dish(plate, situation.brief.anchors.number(), pull)
}

fn yields(situation: &Situation) -> Pressure {
    let pier = &situation.brief.pier;
    Grade::of(pier.steel.value).yield_strength(pier.plate_thickness.value)
}

/// Finds what the torque bends, or would bend.
pub fn find(
    situation: &Situation,
    block: &Block,
    screw: &Screw,
    torque: Moment,
    notes: &mut Notes,
) -> Option<Flexure> {
    let brief = situation.brief;
    let plate = bent(situation);
    let pull = screw.preload(torque).high;
    let dish = dished(situation, &plate, pull)?;
    let peak = |stress: Pressure| stress * PEAK_FACTOR;
    let yield_strength = yields(situation);
    // A nut that is off by δ bends the wall as if the whole ring were: the stress grows with δ.
    let per_mm = megapascal::get(peak(dish.wall_stress)) / millimetre::get(dish.at_studs);
    if !(per_mm > 0.0 && per_mm.is_finite()) {
        return None;
    }
    let worst =
        megapascal::get(peak(dish.wall_stress)).max(megapascal::get(peak(dish.plate_stress)));
    let yield_ratio = worst / megapascal::get(yield_strength);
    let spring = newton_per_metre::new(newton::get(pull) / metre::get(dish.at_studs));
    let [kept_ratio, kept_stiff_ratio] = kept(situation, pull, spring);
    let [dished_foot, nuts] =
        [Seat::Dished, Seat::Nuts].map(|seat| joint::joint_on(brief, block, seat));
    let mut found = Flexure {
        acts: Way::of(brief, situation.seat) == Way::Straight,
        pull,
        plate: dish.at_studs,
        slope_ratio: dish.slope_ratio,
        wall_stress: peak(dish.wall_stress),
        plate_stress: peak(dish.plate_stress),
        yield_strength,
        yield_ratio,
        elastic: yield_ratio <= ELASTIC_SHARE_RATIO,
        wall_height: metre::new(
            std::f64::consts::PI / annular_plate::wall_decay(plate.wall_radius, plate.wall),
        ),
        nut_gap: millimetre::new(0.5 * megapascal::get(yield_strength) / per_mm),
        most_torque: torque * (ELASTIC_SHARE_RATIO / yield_ratio),
        spring,
        kept_ratio,
        kept_stiff_ratio,
        closed: dished_foot.stiffness.high,
        lifted: dished_foot.open,
        on_nuts: nuts.stiffness.typical,
        plate_section: annular_plate::dish_section(&plate, brief.anchors.number(), pull, POINTS),
        wall_section: annular_plate::wall_section(
            &plate,
            dish.slope_ratio,
            millimetre::new(LOWEST_MM),
            POINTS,
        ),
        says: Vec::new(),
    };
    found.says = says(situation, &found);
    lines::workings(situation, &found, notes);
    lines::checks(situation, &found, notes);
    Some(found)
}

/// Shares of the preload left when the resin has crept a little: over the bent plate and the stud, and over the stud alone.
fn kept(situation: &Situation, pull: Force, spring: LinearStiffness) -> [f64; 2] {
    let pier = &situation.brief.pier;
    let length = pier.gap.value + pier.plate_thickness.value + situation.embedment / 2.0;
    let stud = loss::bar_stiffness(
        megapascal::new(material::E_MPA),
        situation.thread.stress_area,
        length,
    );
    let lost = |stiffness: LinearStiffness| {
        newton_per_metre::get(stiffness) * CREPT_MM / 1000.0 / newton::get(pull)
    };
    [loss::in_series(spring, stud), stud].map(|stiffness| (1.0 - lost(stiffness)).max(0.0))
}

/// A length to two significant digits: thin-plate theory gives no more.
pub fn rounded(length_mm: f64) -> f64 {
    let step = 10f64.powf(length_mm.abs().max(1e-9).log10().floor() - 1.0);
    (length_mm / step).round() * step
}

/// What it means.
fn says(situation: &Situation, found: &Flexure) -> Vec<String> {
    let units = situation.brief.units;
    let mm = |length| units.to_feel(millimetre::get(length)).to_string();
    let mpa = |stress| units.say(stress, Megapascal);
    let turn = |stiffness| units.say(stiffness, MeganewtonMetrePerRadian);
    let pull = units.say(found.pull, Kilonewton);
    let torque = units.say(found.most_torque, NewtonMetre);
    let first = match Way::of(situation.brief, situation.seat) {
        Way::Ungrouted => format!(
            "Nothing stands under the plate at the studs yet, so the nuts are not tightened. If they were, studs that pull \
             {pull} each would draw the plate down by {} at the studs",
            mm(found.plate)
        ),
        Way::Straight => format!(
            "The plate lies straight on the concrete and is assumed to bear under the column's wall alone, as one that is not flat to a tenth \
             of a millimetre does. Studs that pull {pull} each draw it down by {} at the studs",
            mm(found.plate)
        ),
        Way::Nuts => format!(
            "With tight nuts under the plate nothing bends. If they were slack or left out, the same torque would pull {pull} at each \
             stud and draw the plate down by {}",
            mm(found.plate)
        ),
        Way::Grouted => format!(
            "On grout the plate stays flat. Before grout is under it, the same torque would pull {pull} at each stud and draw the plate \
             down by {}",
            mm(found.plate)
        ),
    };
    let margin = if found.elastic {
        format!(
            "it springs back, with {:.0} % of the yield strength in hand",
            100.0 * (1.0 - found.yield_ratio)
        )
    } else if found.yield_ratio <= 1.0 {
        format!(
            "it springs back, yet only {:.0} % of the yield strength stays in hand, less than a fifth",
            100.0 * (1.0 - found.yield_ratio)
        )
    } else {
        "it would stay bent".to_owned()
    };
    vec![
        format!(
            "{first}; the foot of the wall turns outwards with it, and the bending dies away within {} of wall.",
            units.to_measure(rounded(millimetre::get(found.wall_height)))
        ),
        format!(
            "The stress is {} in the wall and {} in the plate, a quarter added for peaks near single studs, against a yield strength of {}: \
             {margin}. A fifth stays in hand up to a torque of {torque}.",
            mpa(found.wall_stress),
            mpa(found.plate_stress),
            mpa(found.yield_strength)
        ),
        format!(
            "What it does to stiffness: while the bent plate holds the column's edge down the foot turns with {}; once the edge lifts, with \
             {}; on tight nuts above and below, with {}. More torque moves the lifting further off and changes none of the three.",
            turn(found.closed),
            turn(found.lifted),
            turn(found.on_nuts)
        ),
        format!(
            "What the spring is for: when the resin creeps by {}, a bent plate leaves {:.0} % of the preload, a plate that does not give {:.0} %.",
            units.to_feel(CREPT_MM),
            100.0 * found.kept_ratio,
            100.0 * found.kept_stiff_ratio
        ),
    ]
}

/// Preload at which plate or wall is bent as far as deliberate bending may go; where the plate rests under the column alone.
pub fn most_preload(situation: &Situation) -> Option<Force> {
    let one = newton::new(1000.0);
    let dish = dished(situation, &bent(situation), one)?;
    let capacity = yields(situation) * ELASTIC_SHARE_RATIO;
    let worst =
        megapascal::get(dish.wall_stress).max(megapascal::get(dish.plate_stress)) * PEAK_FACTOR;
    (worst > 0.0).then(|| one * (megapascal::get(capacity) / worst))
}
