//! Loss of preload: stretch, settling, relaxation and creep, and when to tighten again.

use crate::field::Path;
use crate::paths;
use serde::Serialize;

use crate::figure::{
    Hour, Kilonewton, KilonewtonPerMillimetre, Megapascal, Millimetre, NewtonMetre, One,
    SquareMillimetre, Unit,
};
use crate::notes::{Check, Line, Notes};
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::en_1993_1_8_2005::base_plate;
use crate::rules::vdi_2230_2015::{self as tightening, loss};
use crate::source::Source;
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::{Situation, resistance_to_lasting};
use crate::stages::anchors::strength::Mode;
use crate::stages::anchors::torque::Torque;
use crate::stages::anchors::verdict::Verdict;
use crate::units::{
    Force, Length, LinearStiffness, Moment, Spread, Time, day, kilonewton, megapascal, metre,
    micrometre, millimetre, newton, newton_metre,
};

/// Settling of threads and faces on paint, zinc and grout, µm.
const SETTLING_UM: f64 = 8.0;
/// The same stiffness for what is clamped as for the stud, several times over: a plate is far stiffer than its studs.
const CLAMPED_FACTOR: f64 = 5.0;
/// Share of the embedment over which a bonded stud stretches.
const BONDED_STRETCH_RATIO: f64 = 0.5;
/// Loss of steel on steel in each tenfold of hours: next to nothing.
const STEEL_RELAXATION_RATIO: f64 = 0.005;
/// Ten years, days.
const TEN_YEARS_D: f64 = 3652.5;
/// Friction in the thread and under the nut.
const FRICTION: f64 = 0.12;
/// Times after which nuts are tightened again.
const AGAIN: Source = Source::common_practice("checked after a day, after a week, then yearly");

/// An observer who takes hold of the telescope, N.
const HAND_N: f64 = 100.0;
/// The same as a source.
const HAND: Source =
    Source::judgement("a hand that pushes with 100 N at the telescope; kern of a disc");

/// Loss of preload, and what is left of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PreloadLoss {
    /// Stretch of a stud under the typical preload.
    #[serde(rename = "stretch_mm", with = "millimetre")]
    pub stretch: Length,
    /// Length of stud that stretches.
    #[serde(rename = "stretched_length_mm", with = "millimetre")]
    pub stretched_length: Length,
    /// Lost when faces settle, before the first check.
    #[serde(rename = "settling_kn", with = "kilonewton")]
    pub settling: Force,
    /// Left after a day, typical.
    #[serde(rename = "after_a_day_kn", with = "kilonewton")]
    pub after_a_day: Force,
    /// Left after a week.
    #[serde(rename = "after_a_week_kn", with = "kilonewton")]
    pub after_a_week: Force,
    /// Left after ten years without tightening again.
    #[serde(rename = "after_ten_years_kn", with = "kilonewton")]
    pub after_ten_years: Force,
    /// Moment at which a closed joint opens, after ten years.
    #[serde(rename = "opening_moment_n_m", with = "newton_metre::option")]
    pub opening_moment: Option<Moment>,
    /// When to check the torque again, days after the full torque; then every year.
    pub check_again_d: [f64; 2],
}

/// Finds what is left, with its checks and lines of calculation.
pub fn find(
    situation: &Situation,
    preload: Spread<Force>,
    torque: &Torque,
    disc: Length,
    verdict: Option<&Verdict>,
    notes: &mut Notes,
) -> PreloadLoss {
    let length = stretched_length(situation);
    let stud = loss::bar_stiffness(
        megapascal::new(material::E_MPA),
        situation.thread.stress_area,
        length,
    );
    let relaxation = if situation.seat.pulls_on_bond() {
        situation.brief.anchors.relaxation_ratio.value
    } else {
        STEEL_RELAXATION_RATIO
    };
    let settled = loss::settling(
        preload.typical,
        micrometre::new(SETTLING_UM),
        stud,
        stud * CLAMPED_FACTOR,
    );
    let left = |after: Time| loss::after_creep(preload.typical - settled, relaxation, after);
    let after_ten_years = left(day::new(TEN_YEARS_D));
    let studs = situation.brief.anchors.count.value;
    let opening_moment = situation
        .seat
        .pulls_on_bond()
        .then(|| base_plate::opening_moment(after_ten_years * studs, disc));
    let preload_loss = PreloadLoss {
        stretch: loss::stretch(preload.typical, stud),
        stretched_length: length,
        settling: settled,
        after_a_day: left(day::new(1.0)),
        after_a_week: left(day::new(7.0)),
        after_ten_years,
        opening_moment,
        check_again_d: [1.0, 7.0],
    };
    lines(
        situation,
        preload,
        stud,
        relaxation,
        &preload_loss,
        torque,
        notes,
    );
    if let Some(verdict) = verdict {
        checks(situation, preload, &preload_loss, disc, verdict, notes);
    }
    preload_loss
}

/// Plate and washers between two nuts; on grout the gap as well and half the bonded length.
fn stretched_length(situation: &Situation) -> Length {
    let (pier, thread) = (&situation.brief.pier, &situation.thread);
    let clamped = pier.plate_thickness.value + thread.washer_thickness + thread.nut_height / 2.0;
    match situation.seat {
        Seat::Nuts => clamped + thread.washer_thickness + thread.nut_height / 2.0,
        Seat::Bedded | Seat::Dished => {
            clamped + pier.gap.value + situation.embedment * BONDED_STRETCH_RATIO
        }
    }
}

fn lines(
    situation: &Situation,
    preload: Spread<Force>,
    stud: LinearStiffness,
    relaxation: f64,
    preload_loss: &PreloadLoss,
    torque: &Torque,
    notes: &mut Notes,
) {
    Line::new(
        "anchors.stretch",
        "Stretch of a stud",
        "δ = F/k_b, k_b = E A_s/l",
        tightening::loss::SETTLING,
    )
    .with("F", preload.typical, Kilonewton)
    .with("E", megapascal::new(material::E_MPA), Megapascal)
    .with("A_s", situation.thread.stress_area, SquareMillimetre)
    .with("l", preload_loss.stretched_length, Millimetre)
    .gives("δ", Millimetre, |(force, modulus, area, length)| {
        loss::stretch(force, loss::bar_stiffness(modulus, area, length))
    })
    .note(notes);
    Line::new(
        "anchors.settling",
        "Preload lost when threads and faces settle",
        "ΔF = f_Z/(1/k_b + 1/k_p), at most F",
        loss::SETTLING,
    )
    .with("F", preload.typical, Kilonewton)
    .with("f_Z", micrometre::new(SETTLING_UM), Millimetre)
    .with("k_b", stud, KilonewtonPerMillimetre)
    .with("k_p", stud * CLAMPED_FACTOR, KilonewtonPerMillimetre)
    .gives("ΔF", Kilonewton, |(force, settles, stud, clamped)| {
        loss::settling(force, settles, stud, clamped)
    })
    .note(notes);
    Line::new(
        "anchors.kept",
        "Preload left after ten years without tightening again",
        "F(t) = (F − ΔF)(1 − r lg(t/1 h))",
        loss::CREEP,
    )
    .with("F", preload.typical, Kilonewton)
    .with("ΔF", preload_loss.settling, Kilonewton)
    .with("r", relaxation, One)
    .with("t", day::new(TEN_YEARS_D), Hour)
    .gives("F(t)", Kilonewton, |(force, lost, relaxation, after)| {
        loss::after_creep(force - lost, relaxation, after)
    })
    .note(notes);
    let [pitch, flank, _] = tightening::shares(&situation.thread, FRICTION, FRICTION);
    let share = (pitch + flank) / tightening::nut_factor(&situation.thread, FRICTION, FRICTION);
    Line::new(
        "anchors.twist",
        "Twist in the resin if the lower nut is not held",
        "τ = 2 s T/(π d² h_ef), s the thread's share of the torque",
        Source::derived("share of the thread in the torque at a friction of 0.12"),
    )
    .with("T", torque.set, NewtonMetre)
    .with("s", share, One)
    .with("d", situation.thread.diameter, Millimetre)
    .with("h_ef", situation.embedment, Millimetre)
    .gives("τ", Megapascal, |(torque, share, diameter, embedment)| {
        let surface =
            std::f64::consts::PI * metre::get(diameter).powi(2) * metre::get(embedment) / 2.0;
        megapascal::new(newton_metre::get(torque) * share / surface / 1e6)
    })
    .note(notes);
}

/// The preload as a lasting pull on the bond of one stud.
pub fn sustained(
    situation: &Situation,
    preload: Spread<Force>,
    capacity: Force,
    notes: &mut Notes,
) {
    if !situation.seat.pulls_on_bond() {
        return;
    }
    let source = resistance_to_lasting(situation.brief.code.value);
    let title = "Does the resin bond resist the preload over the years?";
    if !situation.brief.anchors.product.known() {
        let why = "The resin's bond strength was not given, so it is not known what it holds in the long term. Enter it from the \
                   product's sheet.";
        notes.check(
            Check::unknown(
                "anchors.bond_sustained",
                title,
                Unit::Kilonewton,
                source,
                why,
            )
            .moved_by(paths![anchors.bond_strength_mpa, anchors.lower_nuts]),
        );
        return;
    }
    notes.check(
        Check::at_most(
            "anchors.bond_sustained",
            title,
            preload.high,
            capacity,
            Kilonewton,
            source,
        )
        .note(format!(
            "Compared with the high end of the preload, held for good. To make it stronger: {}.",
            Mode::BondSustained.raised_by()
        ))
        .moved_by(paths![
            anchors.torque_n_m,
            anchors.bond_strength_mpa,
            anchors.sustained_factor,
            anchors.lower_nuts,
        ]),
    );
}

fn checks(
    situation: &Situation,
    preload: Spread<Force>,
    preload_loss: &PreloadLoss,
    disc: Length,
    verdict: &Verdict,
    notes: &mut Notes,
) {
    if situation.seat == Seat::Nuts {
        let Some(worst) = verdict.worst_by(|trial| kilonewton::get(trial.forces.greatest())) else {
            return;
        };
        let pull = worst.forces.greatest();
        notes.check(
            Check::at_most(
                "anchors.nuts_stay_tight",
                format!(
                    "Is the lowest preload above the tension from {}?",
                    worst.action.title
                ),
                kilonewton::get(pull),
                kilonewton::get(preload.low - preload_loss.settling).max(0.0),
                Unit::Kilonewton,
                Source::derived("a joint between two nuts works loose only when the pull exceeds its preload"),
            )
            // Without the product's sheet the torque is a ceiling until it comes, and says little of what it will be.
            .ask_when(!situation.may_be_tightened())
            .note("Check the nuts after a day, after a week and then yearly, with the lower nut held.")
            .moved_by(paths![anchors.torque_n_m, anchors.tool, anchors.lubrication]),
        );
        return;
    }
    let Some(opening) = preload_loss.opening_moment else {
        return;
    };
    let title = "Does the base joint stay closed when a hand pushes the telescope?";
    let fields: &[Path] = paths![
        anchors.torque_n_m,
        anchors.count,
        anchors.bond_strength_mpa,
        pier.plate_thickness_mm,
    ];
    let hand = newton::new(HAND_N)
        * (situation.brief.pier.height.value + situation.brief.load.centre_above_pier.value);
    if !situation.may_be_tightened() {
        let why = unvouched(situation, hand, disc);
        notes.check(
            Check::unknown("anchors.joint_closed", title, Unit::NewtonMetre, HAND, why)
                .moved_by(fields),
        );
        return;
    }
    notes.check(
        Check::at_most(
            "anchors.joint_closed",
            title, hand, opening, NewtonMetre,
            HAND,
        )
        .note(format!(
            "Counted with the preload left after ten years. While it stays closed, the base joint is about ten times as \
             stiff. The torque is {}.",
            AGAIN.clause
        ))
        .moved_by(fields),
    );
}

/// Why it is not said whether the joint stays closed, and what would close it.
fn unvouched(situation: &Situation, hand: Moment, disc: Length) -> String {
    let studs = situation.brief.anchors.count.value;
    let needed =
        hand / (base_plate::opening_moment(newton::new(1.0) * studs, disc) / newton::new(1.0));
    let units = situation.brief.units;
    format!(
        "It is not known yet how far nuts may be tightened on this resin. Until a product's bond strength or a torque is \
         given, the base joint is assumed to be open, its studs stretching. A hand tilts it by {}; with {studs} studs it would stay closed if each kept {} for good.",
        units.say(hand, NewtonMetre),
        units.say(needed, Kilonewton),
    )
}
