//! A walk's lines of calculation.

use crate::brief::Brief;
use crate::figure::{
    Arcsecond, ArcsecondPerPixel, FocalMillimetre, Kilogram, MetrePerSecond, Micrometre, Newton,
    NewtonSecond, One, Second, Unit,
};
use crate::notes::{Notes, Working};
use crate::rules::ccip_016_2006::walking;
use crate::rules::image_motion::scale;
use crate::rules::lamb_1904::slope;
use crate::rules::li_2010::step;
use crate::stages::motion::followed::{DeckSwing, Histories, StepImpulse};
use crate::stages::motion::{feet, footfall, pace, steps};
use crate::units::{STANDARD_GRAVITY_M_S2, gravity, hertz, kilogram};

/// Writes them.
pub fn write(
    brief: &Brief,
    found: &Histories,
    impulse: &StepImpulse,
    deck: Option<&DeckSwing>,
    notes: &mut Notes,
) {
    step(brief, found, impulse, notes);
    wave(found, notes);
    walk(brief, found, notes);
    if let Some(deck) = deck {
        notes.working(
            Working::new(
                "motion.deck_swing",
                "What the deck's own swing makes of a walk",
                "peak with the deck's swing over peak without it",
                steps::DECK_SOURCE,
            )
            .with("f_deck", deck.deck_hz, Unit::Hertz)
            .with("at the worst frequency", deck.tuned_hz, Unit::Hertz)
            .with("ratio there", deck.tuned_peak_ratio, One)
            .gives("ratio", deck.peak_ratio, One),
        );
    }
    pixel(brief, notes);
}

/// One step: heel, time on the ground, impulse.
fn step(brief: &Brief, found: &Histories, impulse: &StepImpulse, notes: &mut Notes) {
    let weight = kilogram::get(brief.floor.walker_mass.value) * STANDARD_GRAVITY_M_S2;
    let pace_hz = found.paces.unfavourable_hz;
    let heel = footfall::heel_impulse_s(brief.floor.soles.value);
    notes.working(
        Working::new(
            "motion.heel",
            "Blow of the heel at each step",
            "J = G τ, τ the heights of the blow's half sines over the weight, each times 2 t/π, added",
            footfall::HEEL_SOURCE,
        )
        .with("G", weight, Unit::Newton)
        .with("τ", heel, Unit::Second)
        .gives("J", weight * heel, NewtonSecond),
    );
    notes.working(
        Working::new(
            "motion.walk_step",
            "Time for which one foot stands",
            "T_e = 1/(0.76 f)",
            step::SOURCE,
        )
        .with("f", pace_hz, Unit::Hertz)
        .gives("T_e", step::contact(hertz::new(pace_hz)), Second),
    );
    notes.working(
        Working::new(
            "motion.step_impulse",
            "Impulse of one step at the pier's first frequency, beside the guide's mean and design value",
            "peak speed of 1 kg on a spring of that frequency under one footfall; guide: 42 and 54 f^1.43/f_n^1.3, by weight",
            walking::IMPULSE_SOURCE,
        )
        .with("f_n", impulse.mode_hz, Unit::Hertz)
        .with("guide, mean", impulse.guide_n_s, NewtonSecond)
        .with("guide, design", impulse.design_guide_n_s, NewtonSecond)
        .with("this step, hard tread", impulse.design_step_n_s, NewtonSecond)
        .gives("this step", impulse.step_n_s, NewtonSecond),
    );
}

/// The quick part of a step at the foot nearest to the pier.
fn wave(found: &Histories, notes: &mut Notes) {
    let nearest = found.nearest;
    notes.working(
        Working::new(
            "motion.wave",
            "How much farther a heel tilts the ground than the same force at rest, at the nearest foot",
            "Lamb's integral at ωr/V_s, here for the pier's first frequency ω, in the walk for each mode's own",
            slope::SOURCE,
        )
        .with("r", nearest.distance_m, Unit::Metre)
        .with("ωr/V_s", nearest.phase_ratio, One)
        .gives("ratio", slope::ratio(nearest.phase_ratio), One),
    );
}

/// The walk as a whole.
fn walk(brief: &Brief, found: &Histories, notes: &mut Notes) {
    notes.working(
        Working::new(
            "motion.pace",
            "Pace that nine tenths of all do not exceed in what they do to the star",
            "each pace of the band with uneven steps, through every mode",
            pace::SOURCE,
        )
        .with("from", found.paces.from_hz, Unit::Hertz)
        .with("to", found.paces.to_hz, Unit::Hertz)
        .with("middle", found.paces.middle_hz, Unit::Hertz)
        .gives("f", found.paces.unfavourable_hz, Unit::Hertz),
    );
    notes.working(
        Working::new(
            "motion.walk_middle",
            "Largest movement of the star during the walk at a pace in the middle",
            "as the next line, at the middle pace; steps are 3 % uneven",
            feet::UNEVEN_SOURCE,
        )
        .with("f", found.paces.middle_hz, Unit::Hertz)
        .gives("peak", found.peaks_arcsec()[0], Arcsecond),
    );
    notes.working(
        Working::new(
            "motion.walk",
            "Largest movement of the star during the walk",
            "F(t)/G = Σ A_n sin(nπt/T_e), heel and fourth harmonic, at each foot's place, through every mode",
            step::SOURCE,
        )
        .with(
            "m", brief.floor.walker_mass.value, Kilogram,
        )
        .with("f", found.paces.unfavourable_hz, Unit::Hertz)
        .with(
            "v", brief.floor.walk_speed.value, MetrePerSecond,
        )
        .gives("peak", found.peaks_arcsec()[1], Arcsecond),
    );
    notes.working(
        Working::new(
            "motion.foot_push",
            "Push of a foot along the way",
            "H = 0.2 G, braking and then pushing off",
            footfall::SIDEWAYS_SOURCE,
        )
        .with("G", brief.floor.walker_mass.value * gravity(), Newton)
        .gives("H", brief.floor.walker_mass.value * 0.2 * gravity(), Newton),
    );
}

fn pixel(brief: &Brief, notes: &mut Notes) {
    let scale = scale::arcsec_per_pixel(brief.load.pixel.value, brief.load.focal_length.value);
    notes.working(
        Working::new(
            "motion.pixel",
            "Sky on one pixel",
            "s = 206 265 p/f",
            scale::SOURCE,
        )
        .with("p", brief.load.pixel.value, Micrometre)
        .with("f", brief.load.focal_length.value, FocalMillimetre)
        .gives("s", scale, ArcsecondPerPixel),
    );
}
