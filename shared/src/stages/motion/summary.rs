//! What moves the star, in the person's words and with their own figures.

use crate::brief::Brief;
use crate::figure::{Arcminute, Arcsecond, Hertz, Kelvin, PerCent, Unit};
use crate::site_plan::pier::Fill;
use crate::stages::motion::check::FIRST_HZ;
use crate::stages::motion::{Budget, Disturbance, Heat, ModeShape, Season};
use crate::text::lower;
use crate::units::hertz;

/// Share of the bending from which on a part is named as the soft one.
const SOFT_RATIO: f64 = 0.35;

/// All that is told.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// Disturbances, largest first.
    pub disturbances: &'a [Disturbance],
    /// Modes, slowest first.
    pub modes: &'a [ModeShape],
    /// Warmth.
    pub heat: &'a Heat,
    /// Seasons.
    pub season: Option<Season>,
    /// What is asked.
    pub budget: &'a Budget,
    /// How many times as far as somebody who stands a step moves the star.
    pub step_ratio: Option<f64>,
}

/// The sentences, the largest mover first.
pub fn sentences(parts: &Parts<'_>) -> Vec<String> {
    [
        largest(parts),
        people(parts),
        softest(parts),
        fill(parts),
        warmth(parts),
        season(parts),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn largest(parts: &Parts<'_>) -> Option<String> {
    let first = parts
        .disturbances
        .iter()
        .find(|one| one.share_ratio.is_some())?;
    let units = parts.brief.units;
    let say = |value| units.say(value, Arcsecond);
    let wider = |ratio: f64| units.say(100.0 * ratio, PerCent);
    let (arcsec, growth) = (first.arcsec?, first.star_growth_ratio?);
    Some(format!(
        "What widens the star most: {}. It moves the star by {}, which makes it {} wider over an exposure in which it happens, at worst {}.",
        lower(first.title),
        say(arcsec),
        wider(growth.expected),
        wider(growth.worst)
    ))
}

/// What a person does is the ground's dent, not the pier's ringing, unless the pier is slow.
fn people(parts: &Parts<'_>) -> Option<String> {
    let still = parts
        .disturbances
        .iter()
        .find(|one| one.id == "standing")?
        .arcsec
        .filter(|arcsec| *arcsec > 0.0)?;
    let first = hertz::get(parts.modes.first()?.frequency.low);
    let times = format!("{:.1}", parts.step_ratio?);
    let rings = if first < FIRST_HZ {
        ", since this pier swings so slowly that it rings with the steps"
    } else {
        ""
    };
    Some(format!(
        "Someone standing still moves the star by up to {}: the weight dents the ground, and the block tilts into the dent. \
         Walking there moves it {times} times as much{rings}.",
        parts.brief.units.say(still, Arcsecond)
    ))
}

fn softest(parts: &Parts<'_>) -> Option<String> {
    let first = parts.modes.first()?;
    let shares = [
        (
            first.mount_share_ratio,
            "the mount; no pier makes up for a soft mount",
        ),
        (
            first.joint_share_ratio,
            "the foot on its studs; a shorter gap or a bed of grout stiffens it",
        ),
        (
            first.ground_share_ratio,
            "the ground; soil hard against the block's sides stiffens it most",
        ),
        (
            first.column_share_ratio,
            "the column; a wider tube stiffens it most",
        ),
    ];
    let (share, part) = shares.into_iter().max_by(|(a, _), (b, _)| a.total_cmp(b))?;
    (share >= SOFT_RATIO).then(|| {
        format!(
            "Knocked, the telescope swings at {}, and {} of the bending is in {part}.",
            parts.brief.units.say(first.frequency.typical, Hertz),
            parts.brief.units.say(100.0 * share, PerCent)
        )
    })
}

fn fill(parts: &Parts<'_>) -> Option<String> {
    (parts.brief.pier.fill.value == Fill::None)
        .then(|| "Sand in the column makes a swing die sooner; it hardly changes how fast the pier swings.".to_owned())
}

fn warmth(parts: &Parts<'_>) -> Option<String> {
    let heat = parts.heat;
    let say = |value| parts.brief.units.say(value, Arcsecond);
    let slowly = if heat.unguided_arcsec < 0.001 * parts.budget.arcsec {
        "so slowly that no single exposure shows it".to_owned()
    } else {
        format!(
            "slowly, {} within one exposure that is not guided",
            say(heat.unguided_arcsec)
        )
    };
    (heat.arcsec > 0.0).then(|| {
        format!(
            "A column {} warmer on one side leans its top by {}; it comes {slowly}.",
            parts
                .brief
                .units
                .say(parts.brief.load.thermal_difference_k.value, Kelvin),
            say(heat.arcsec)
        )
    })
}

fn season(parts: &Parts<'_>) -> Option<String> {
    let season = parts.season.filter(|season| season.difference_mm > 0.0)?;
    Some(format!(
        "If one side of the block rises or sinks by {} more than the other in a year, the polar axis leans by {}.",
        parts
            .brief
            .units
            .say(season.difference_mm, Unit::Millimetre),
        parts.brief.units.say(season.arcmin_per_year, Arcminute)
    ))
}
