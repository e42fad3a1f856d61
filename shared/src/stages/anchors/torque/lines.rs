//! The checks and lines of calculation of the torque.

use crate::brief::Brief;
use crate::figure::{Kilonewton, Megapascal, Millimetre, NewtonMetre, One, SquareMillimetre};
use crate::notes::{Check, Line, Notes, Working};
use crate::paths;
use crate::rules::threads;
use crate::rules::vdi_2230_2015::{self as tightening, scatter};
use crate::source::Source;
use crate::units::{Force, Spread, newton_metre};

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
            "Is the preload below the stud's proof load?", preload.high, screw.proof, Kilonewton,
            threads::THREADS,
        )
        .note("The high end of the scattered preload: beyond the proof load a stud stretches for good.")
        .moved_by(paths![anchors.torque_n_m, anchors.size, anchors.strength_class, anchors.lubrication]),
    );
    workings(brief, torque, preload, notes);
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
        "Is the torque within its limit?", torque.used, torque.high, NewtonMetre,
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

fn workings(brief: &Brief, torque: &Torque, preload: Spread<Force>, notes: &mut Notes) {
    let thread = brief.anchors.thread();
    let steel = threads::steel(brief.anchors.strength_class.value, brief.anchors.size.value);
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
            .with("P", thread.pitch, Millimetre)
            .with("μ_t", thread_friction, One)
            .with("μ_b", under_head, One);
    }
    notes.working(
        factor
            .with("K_low", torque.nut_factor.low, One)
            .with("K_high", torque.nut_factor.high, One)
            .gives("K", torque.nut_factor.typical, One),
    );
    Line::new(
        "anchors.preload",
        "Preload of one stud",
        "F = T/(K d), with its scatter",
        tightening::SHORT_FORM,
    )
    .with("T", torque.used, NewtonMetre)
    .with("K", torque.nut_factor.typical, One)
    .with("d", thread.diameter, Millimetre)
    .with("F_low", preload.low, Kilonewton)
    .with("F_high", preload.high, Kilonewton)
    .gives("F", Kilonewton, |(torque, factor, diameter, ..)| {
        tightening::preload(torque, factor, diameter)
    })
    .note(notes);
    Line::new(
        "anchors.proof_load",
        "Proof load of one stud",
        "F_p = A_s S_p",
        threads::THREADS,
    )
    .with("A_s", thread.stress_area, SquareMillimetre)
    .with("S_p", steel.proof, Megapascal)
    .gives("F_p", Kilonewton, |(area, proof)| area * proof)
    .note(notes);
    notes.working(
        Working::new(
            "anchors.torque_band",
            "Band of the torque",
            "from 0.8 of the lowest limit up to it, aiming at 0.9",
            BAND,
        )
        .with("T_low", torque.low, NewtonMetre)
        .with("T_high", torque.high, NewtonMetre)
        .gives("T", torque.recommended, NewtonMetre),
    );
}
