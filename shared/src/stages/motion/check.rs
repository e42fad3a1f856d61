//! Verdicts: what moves the star with nobody there, against what is asked, at the unfavourable twentieth.
//!
//! The pier is judged with a rigid load on it. What the mount's own softness adds is told and fails nothing.

use crate::brief::Brief;
use crate::field::Path;
use crate::figure::{Arcminute, Arcsecond, Kelvin, PerCent, Second, Unit};
use crate::notes::{Check, Notes};
use crate::paths;
use crate::source::Source;
use crate::stages::motion::{Knock, Measure, Motion};
use crate::units::second;

const OURS: Source = Source::judgement("growth of the star by use; no standard exists");

/// Writes the verdicts that need no influence of a weight on the floor.
pub fn write(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    frequency(brief, motion, notes);
    wind(brief, motion, notes);
    heat(brief, motion, notes);
    season(brief, motion, notes);
    settle(brief, motion, notes);
}

/// Adds a check of stillness.
fn still(notes: &mut Notes, check: Check) {
    notes.check(check.of_stillness());
}

fn unknown(id: &'static str, title: &str, unit: Unit, notes: &mut Notes) {
    still(
        notes,
        Check::unknown(
            id,
            title,
            unit,
            OURS,
            "The stiffness of this ground is not known, so that nothing can be said of what moves on it.",
        ),
    );
}

/// First frequency from which on a step is followed and hardly amplified, Hz.
pub const FIRST_HZ: f64 = 12.0;

fn frequency(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let title = "Is the first natural frequency above what footsteps excite?";
    let moving =
        |mode: &super::ModeShape| crate::units::hertz::get(mode.frequency_in_moving_ground.low);
    let lowest = |modes: &[super::ModeShape]| modes.iter().map(moving).reduce(f64::min);
    let (Some(first), Some(mounted)) = (lowest(&motion.rigid_load.modes), lowest(&motion.modes))
    else {
        return unknown("motion.frequency", title, Unit::Hertz, notes);
    };
    let source = Source::derived(
        "a step's trace through one mode: from 12 Hz on it is amplified by no more than a fifth",
    );
    let say = |hertz| brief.units.say(hertz, Unit::Hertz);
    let note = format!(
        "On the softest soil considered likely, with some soil moving with the block, the pier's first natural frequency is {}. Below about \
         {}, footsteps make it ring. It is judged with a rigid load; with the mount's own softness, which no pier cures, it is {}.",
        say(first),
        say(FIRST_HZ),
        say(mounted)
    );
    let fields: &[Path] = paths![
        pier.levelling,
        pier.gap_mm,
        block.side_contact_to_m,
        pier.outside_diameter_mm,
    ];
    let check = Check::at_least(
        "motion.frequency",
        title,
        first,
        FIRST_HZ,
        Unit::Hertz,
        source,
    );
    still(notes, check.note(note).moved_by(fields));
}

/// A disturbance that comes with nobody there against what is asked: by the star's growth, for the eye by its movement.
fn judged(
    motion: &Motion,
    disturbance: &str,
    id: &'static str,
    title: &'static str,
) -> Option<Check> {
    let one = motion
        .disturbances
        .iter()
        .find(|one| one.id == disturbance)?;
    let budget = &motion.budget;
    if budget.measure == Measure::EyeMovement {
        let (worst, most) = (one.worst_arcsec?, budget.arcsec);
        return Some(Check::at_most(id, title, worst, most, Arcsecond, OURS));
    }
    let (worst, most) = (one.star_growth_ratio?.worst, budget.asked_growth_ratio);
    let per_cent = Unit::PerCent;
    Some(Check::at_most(
        id,
        title,
        100.0 * worst,
        100.0 * most,
        per_cent,
        OURS,
    ))
}

/// What an unfavourable twentieth is, in a sentence that each note begins with.
fn measure(motion: &Motion) -> &'static str {
    match motion.budget.measure {
        Measure::StarWidth => {
            "Judged by how much wider one exposure records a star, at the unfavourable twentieth of ground and load."
        }
        Measure::FrameBlur => {
            "Judged by the blur within one frame against the disc that the aperture shows, at the unfavourable twentieth of ground and load."
        }
        Measure::EyeMovement => {
            "Judged by the movement that the eye sees at the power used, at the unfavourable twentieth of ground and load."
        }
    }
}

fn wind(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let title = "Does wind move the star less than the limit?";
    let (Some(wind), Some(check)) = (
        &motion.rigid_load.answers.wind,
        judged(motion, "wind", "motion.wind", title),
    ) else {
        return unknown("motion.wind", title, Unit::Arcsecond, notes);
    };
    let say = |value| brief.units.say(value, Arcsecond);
    let mount = motion.mount_adds_ratio.map_or_else(String::new, |adds| {
        format!(
            " The mount's own softness adds {} to the growth; that is no fault of the pier.",
            brief.units.say(100.0 * adds.expected, PerCent)
        )
    });
    let note = format!(
        "{} At the telescope the wind is {}. With a rigid load on the pier, the strongest gust in ten minutes moves the star by {}, and the \
         steady wind by {}, which guiding removes.{mount}",
        measure(motion),
        brief.units.say(wind.speed_m_s, Unit::WindMetrePerSecond),
        say(wind.gust_arcsec),
        say(wind.mean_arcsec)
    );
    let fields: &[Path] = paths![
        load.enclosure,
        load.wind_area_m2,
        pier.outside_diameter_mm,
        pier.height_m,
    ];
    still(notes, check.note(note).moved_by(fields));
}

fn heat(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let title = "Does uneven warming move the star less than the limit?";
    let Some(check) = judged(motion, "thermal", "motion.thermal", title) else {
        return unknown("motion.thermal", title, Unit::Arcsecond, notes);
    };
    let heat = &motion.heat;
    let guided = brief.load.guiding_interval.value < brief.load.exposure.value;
    let say = |value| brief.units.say(value, Arcsecond);
    let how = if guided {
        format!(
            "Guided every {} it hardly shows; without a guider one exposure would drift by {}.",
            brief.units.say(brief.load.guiding_interval.value, Second),
            say(heat.unguided_arcsec)
        )
    } else {
        "Nothing corrects it within one exposure.".to_owned()
    };
    let note = format!(
        "{} {} across the column turns the top by {}, slowly. {how} Shade the column, wrap it, and paint all sides alike.",
        measure(motion),
        brief.units.say(motion.thermal_difference_k, Kelvin),
        say(heat.arcsec)
    );
    let fields: &[Path] = paths![
        load.thermal_difference_k,
        pier.outside_diameter_mm,
        pier.height_m,
        load.guiding_interval_s,
    ];
    still(notes, check.note(note).moved_by(fields));
}

/// A year's lean as the drift that it makes until it is corrected: by the guider, or not within the exposure.
fn season(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let (id, title) = (
        "motion.season",
        "Is the drift within the limit a year after alignment?",
    );
    let fields = paths![
        site.soil,
        block.depth_m,
        load.guiding_interval_s,
        load.exposure_s,
    ];
    let Some(season) = motion.season else {
        let why = "Nobody can presume how this ground moves through a year; the alignment has to be measured again and again.";
        return still(
            notes,
            Check::unknown(id, title, Unit::Arcsecond, super::season::SOURCE, why).moved_by(fields),
        );
    };
    let [guiding, exposure] =
        [brief.load.guiding_interval.value, brief.load.exposure.value].map(second::get);
    let units = brief.units;
    let drift = |seconds: f64| season.drift_arcsec_per_min * seconds / 60.0;
    let alone = if guiding < exposure {
        format!(
            " Guided every {} it hardly shows; without a guider one exposure would drift by {}.",
            units.say(guiding, Unit::Second),
            units.say(drift(exposure), Arcsecond)
        )
    } else {
        String::new()
    };
    let Some(check) = judged(motion, "season", id, title) else {
        return unknown(id, title, Unit::Arcsecond, notes);
    };
    let note = format!(
        "After a year without a new alignment the axis leans by {} and a star drifts by up to {} in a minute.{alone} Align the \
         axis anew after the first winter and the first dry season.",
        units.say(season.arcmin_per_year, Arcminute),
        units.say(season.drift_arcsec_per_min, Arcsecond)
    );
    still(notes, check.note(note).moved_by(fields));
}

fn settle(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let says = "Sand in the column shortens it where the column bends; where the mount does, only a stiffer mount helps.";
    let fields: &[Path] = paths![
        load.mount_frequency_hz,
        pier.fill,
        load.damping_ratio,
        pier.outside_diameter_mm,
        load.settle_s,
    ];
    dies(
        "motion.settle",
        "Does the star settle soon enough after a bump?",
        [motion.rigid_load.answers.bump, motion.bump],
        says,
        fields,
        (brief, motion),
        notes,
    );
}

/// One knock against the time it may take to die.
fn dies(
    id: &'static str,
    title: &str,
    [knock, mounted]: [Option<Knock>; 2],
    says: &str,
    fields: &'static [Path],
    (brief, motion): (&Brief, &Motion),
    notes: &mut Notes,
) {
    let Some(knock) = knock else {
        return unknown(id, title, Unit::Second, notes);
    };
    let budget = &motion.budget;
    let check = match knock.worst_settle_s {
        Some(time) => Check::at_most(id, title, time, budget.settle_s, Unit::Second, budget.settle_source).note(format!(
            "Judged with a rigid load on the pier; {}. {says} {} Damping is put together from the parts and uncertain by a factor of \
             two; a tap on the finished pier, recorded, settles it.",
            with_mount(brief, mounted),
            sentence(&budget.settle_why)
        )),
        None => Check::unknown(id, title, Unit::Second, budget.settle_source, "It takes more than ten minutes to settle, which is too long to use."),
    };
    still(notes, check.moved_by(fields));
}

/// What the mount's own softness makes of it.
fn with_mount(brief: &Brief, knock: Option<Knock>) -> String {
    match knock.and_then(|knock| knock.worst_settle_s) {
        Some(time) => format!(
            "with the mount's own softness it takes {} at most",
            brief.units.say(time, Unit::Second)
        ),
        None => "with the mount's own softness it takes more than ten minutes".to_owned(),
    }
}

/// A reason begun with a capital, as a sentence of its own.
fn sentence(reason: &str) -> String {
    let mut letters = reason.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
