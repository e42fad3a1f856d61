//! The checks and lines of calculation of the torque.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes, Working};
use crate::paths;
use crate::rules::threads;
use crate::rules::vdi_2230_2015::{self as tightening, scatter};
use crate::source::Source;
use crate::units::{
    Force, Spread, kilonewton, millimetre, newton, newton_metre, square_millimetre,
};

use super::{Screw, Torque, WaitsFor, kilos};

/// The band below the limit in which the nuts are tightened.
const BAND: Source = Source::judgement("from 80 % of the lowest limit up to it, aiming at 90 %");

/// The checks and lines of calculation of the torque.
pub fn notes(brief: &Brief, torque: &Torque, screw: &Screw, notes: &mut Notes) {
    let preload = screw.preload(torque.used);
    notes.check(of_the_nuts(torque));
    notes.check(
        Check::at_most(
            "anchors.proof",
            "Is the preload below the stud's proof load?",
            kilonewton::get(preload.high),
            kilonewton::get(screw.proof),
            Unit::Kilonewton,
            threads::THREADS,
        )
        .note("The high end of the scattered preload: beyond the proof load a stud stretches for good.")
        .moved_by(paths![anchors.torque_n_m, anchors.size, anchors.strength_class, anchors.lubrication]),
    );
    workings(brief, torque, screw, preload, notes);
    kilos::workings(&torque.lesson, notes);
}

/// The torque against its limit; nobody can say before the product's sheet is at hand, or before grout is under the plate.
fn of_the_nuts(torque: &Torque) -> Check {
    let source = torque
        .limits
        .iter()
        .find(|limit| limit.governs)
        .map_or(tightening::SHORT_FORM, |limit| limit.source);
    let over = newton_metre::get(torque.used) > newton_metre::get(torque.high);
    Check::at_most(
        "anchors.torque",
        "Is the torque within its limit?",
        newton_metre::get(torque.used),
        newton_metre::get(torque.high),
        Unit::NewtonMetre,
        source,
    )
    .ask_when(!over && torque.waits_for != WaitsFor::Nothing)
    .note(format!(
            "{} A torque said in \"kilos\" must be understood first: newton metres, kilogram-force metres and pound-force feet differ up \
             to tenfold.",
            torque.says
        ))
        .moved_by(paths![
            anchors.max_torque_n_m,
            anchors.torque_n_m,
            anchors.strength_class,
            anchors.bond_strength_mpa,
            anchors.lower_nuts,
            pier.levelling,
        ])
}

fn workings(
    brief: &Brief,
    torque: &Torque,
    screw: &Screw,
    preload: Spread<Force>,
    notes: &mut Notes,
) {
    let thread = brief.anchors.thread();
    let (source, formula) = match brief.anchors.frictions {
        Some(_) => (
            tightening::LONG_FORM,
            "K = [P/(2π) + μ_t d₂/(2 cos 30°) + μ_b D_b/2]/d",
        ),
        None => (scatter::NUT_FACTOR, "K by the state of the thread"),
    };
    let mut factor = Working::new("anchors.nut_factor", "Nut factor", formula, source);
    if let Some((thread_friction, under_head)) = brief.anchors.frictions {
        factor = factor
            .with("P", millimetre::get(thread.pitch), Unit::Millimetre)
            .with("μ_t", thread_friction, Unit::One)
            .with("μ_b", under_head, Unit::One);
    }
    notes.working(
        factor
            .with("K_low", torque.nut_factor.low, Unit::One)
            .with("K_high", torque.nut_factor.high, Unit::One)
            .gives("K", torque.nut_factor.typical, Unit::One),
    );
    notes.working(
        Working::new(
            "anchors.preload",
            "Preload of one stud",
            "F = T/(K d), with its scatter",
            tightening::SHORT_FORM,
        )
        .with("T", newton_metre::get(torque.used), Unit::NewtonMetre)
        .with("K", torque.nut_factor.typical, Unit::One)
        .with("d", millimetre::get(thread.diameter), Unit::Millimetre)
        .with("F_low", kilonewton::get(preload.low), Unit::Kilonewton)
        .with("F_high", kilonewton::get(preload.high), Unit::Kilonewton)
        .gives("F", kilonewton::get(preload.typical), Unit::Kilonewton),
    );
    notes.working(
        Working::new(
            "anchors.proof_load",
            "Proof load of one stud",
            "F_p = A_s S_p",
            threads::THREADS,
        )
        .with(
            "A_s",
            square_millimetre::get(thread.stress_area),
            Unit::SquareMillimetre,
        )
        .with(
            "S_p",
            newton::get(screw.proof) / square_millimetre::get(thread.stress_area),
            Unit::Megapascal,
        )
        .gives("F_p", kilonewton::get(screw.proof), Unit::Kilonewton),
    );
    notes.working(
        Working::new(
            "anchors.torque_band",
            "Band of the torque",
            "from 0.8 of the lowest limit up to it, aiming at 0.9",
            BAND,
        )
        .with("T_low", newton_metre::get(torque.low), Unit::NewtonMetre)
        .with("T_high", newton_metre::get(torque.high), Unit::NewtonMetre)
        .gives(
            "T",
            newton_metre::get(torque.recommended),
            Unit::NewtonMetre,
        ),
    );
}
