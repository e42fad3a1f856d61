//! Verdicts: each disturbance against the budget, by the unfavourable end of the ground.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes};
use crate::source::Source;
use crate::stages::motion::{Knock, Motion};
use crate::units::second;

const OURS: Source = Source::judgement("budget by use; no standard exists");

/// Writes the verdicts that need no influence of a weight on the floor.
pub fn write(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    frequency(brief, motion, notes);
    wind(brief, motion, notes);
    heat(brief, motion, notes);
    season(brief, motion, notes);
    settle(motion, notes);
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
    let Some(first) = motion.modes.iter().map(moving).reduce(f64::min) else {
        return unknown("motion.frequency", title, Unit::Hertz, notes);
    };
    let source = Source::derived(
        "a step's trace through one mode: from 12 Hz on it is amplified by no more than a fifth",
    );
    let mount = motion
        .modes
        .first()
        .is_some_and(|mode| mode.mount_share_ratio > 0.5);
    let soft = if mount {
        " Most of the bending is in the mount itself, which no pier can make stiffer."
    } else {
        ""
    };
    still(notes,
        Check::at_least("motion.frequency", title, first, FIRST_HZ, Unit::Hertz, source)
            .note(format!(
                "On the softest soil considered likely, with some soil moving with the block, the first natural frequency is {}. Below about \
                 {}, footsteps make the pier ring.{soft}",
                brief.units.say(first, Unit::Hertz),
                brief.units.say(FIRST_HZ, Unit::Hertz)
            ))
            .moved_by(&[
                "load.mount_stiffness_n_m_per_rad",
                "pier.levelling",
                "pier.gap_mm",
                "block.side_contact_to_m",
                "pier.outside_diameter_mm",
            ]),
    );
}

fn wind(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let title = "Does wind move the star less than the limit?";
    let Some(wind) = &motion.wind else {
        return unknown("motion.wind", title, Unit::Arcsecond, notes);
    };
    let say = |value| brief.units.say(value, Unit::Arcsecond);
    still(notes,
        Check::at_most("motion.wind", title, wind.worst_arcsec, motion.budget_arcsec, Unit::Arcsecond, OURS)
            .note(format!(
                "At the telescope the wind is {}. The fluctuating part of the wind is compared with the limit; the \
                 strongest gust in ten minutes moves the star by {}, and the steady wind by {}, which guiding removes.",
                brief.units.say(wind.speed_m_s, Unit::MetrePerSecond),
                say(wind.gust_arcsec),
                say(wind.mean_arcsec)
            ))
            .moved_by(&["load.enclosure", "load.wind_area_m2", "pier.outside_diameter_mm", "load.mount_stiffness_n_m_per_rad"]),
    );
}

fn heat(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let heat = &motion.heat;
    let guided = brief.load.guiding_interval.value < brief.load.exposure.value;
    let demand = if guided {
        heat.guided_arcsec
    } else {
        heat.unguided_arcsec
    };
    let say = |value| brief.units.say(value, Unit::Arcsecond);
    let how = if guided {
        format!(
            "Guided every {} it hardly shows; without a guider one exposure would drift by {}.",
            brief
                .units
                .say(second::get(brief.load.guiding_interval.value), Unit::Second),
            say(heat.unguided_arcsec)
        )
    } else {
        "Nothing corrects it within one exposure.".to_owned()
    };
    still(notes,
        Check::at_most(
            "motion.thermal",
            "Does uneven warming move the star less than the limit?",
            demand,
            motion.budget_arcsec,
            Unit::Arcsecond,
            OURS,
        )
        .note(format!(
            "{} across the column turns the top by {}, slowly. {how} Shade the column, wrap it, and paint all sides alike.",
            brief.units.say(motion.thermal_difference_k, Unit::Kelvin),
            say(heat.arcsec)
        ))
        .moved_by(&["load.thermal_difference_k", "pier.outside_diameter_mm", "pier.height_m", "load.guiding_interval_s"]),
    );
}

/// A year's lean as the drift that it makes until it is corrected: by the guider, or not within the exposure.
fn season(brief: &Brief, motion: &Motion, notes: &mut Notes) {
    let (id, title) = (
        "motion.season",
        "Is the drift within the limit a year after alignment?",
    );
    let fields = &[
        "site.soil",
        "block.depth_m",
        "load.guiding_interval_s",
        "load.exposure_s",
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
    let say = |value, unit| brief.units.say(value, unit);
    let drift = |seconds: f64| season.drift_arcsec_per_min * seconds / 60.0;
    let alone = if guiding < exposure {
        format!(
            " Guided every {} it hardly shows; without a guider one exposure would drift by {}.",
            say(guiding, Unit::Second),
            say(drift(exposure), Unit::Arcsecond)
        )
    } else {
        String::new()
    };
    still(notes,
        Check::at_most(id, title, drift(guiding.min(exposure)), motion.budget_arcsec, Unit::Arcsecond, super::season::SOURCE)
            .note(format!(
                "After a year without a new alignment the axis leans by {} and a star drifts by up to {} in a minute.{alone} Align the \
                 axis anew after the first winter and the first dry season.",
                say(season.arcmin_per_year, Unit::Arcminute),
                say(season.drift_arcsec_per_min, Unit::Arcsecond)
            ))
            .moved_by(fields),
    );
}

fn settle(motion: &Motion, notes: &mut Notes) {
    let says = "Sand in the column shortens it where the column bends; where the mount does, only a stiffer mount helps.";
    let fields: &[&str] = &[
        "load.mount_frequency_hz",
        "pier.fill",
        "load.damping_ratio",
        "pier.outside_diameter_mm",
        "load.settle_s",
    ];
    dies(
        "motion.settle",
        "Does the star settle soon enough after a bump?",
        motion.bump,
        says,
        fields,
        motion,
        notes,
    );
}

/// One knock against the time it may take to die.
fn dies(
    id: &'static str,
    title: &str,
    knock: Option<Knock>,
    says: &str,
    fields: &'static [&'static str],
    motion: &Motion,
    notes: &mut Notes,
) {
    let Some(knock) = knock else {
        return unknown(id, title, Unit::Second, notes);
    };
    let budget = &motion.budget;
    let check = match knock.worst_settle_s {
        Some(time) => Check::at_most(id, title, time, budget.settle_s, Unit::Second, budget.settle_source).note(format!(
            "{says} {} Damping is put together from the parts and uncertain by a factor of two; a tap on the finished pier, recorded, \
             settles it.",
            sentence(&budget.settle_why)
        )),
        None => Check::unknown(id, title, Unit::Second, budget.settle_source, "It takes more than ten minutes to settle, which is too long to use."),
    };
    still(notes, check.moved_by(fields));
}

/// A reason begun with a capital, as a sentence of its own.
fn sentence(reason: &str) -> String {
    let mut letters = reason.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
