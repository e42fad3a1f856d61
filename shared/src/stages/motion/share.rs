//! Shares: who moves the star, each with its movement, what it costs the star's width and peak, its share, and its verdict.

mod movements;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Verdict;
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::growth::{Cost, Exposure, Likely, Movement};
use crate::stages::motion::influence::Influence;
use crate::stages::motion::system::System;
use crate::stages::motion::walked::Peaks;
use crate::stages::motion::{Budget, Heat, Season, Wind};
use crate::units::Outcome;

/// What moves the star with nobody there.
pub const ALONE: [&str; 3] = ["wind", "thermal", "season"];

/// One disturbance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Disturbance {
    /// Stable name.
    pub id: &'static str,
    /// What it is, in a customer's words.
    pub title: &'static str,
    /// Movement of the star, typical ground; null when unknown.
    pub arcsec: Option<f64>,
    /// Movement at the unfavourable twentieth of ground and load.
    pub worst_arcsec: Option<f64>,
    /// Share of the squares by which all of them together widen the star.
    pub share_ratio: Option<f64>,
    /// Root mean square along one axis, the mean of both, over one exposure in which it happens, typical ground.
    pub rms_arcsec: Option<f64>,
    /// Full width of the star in such an exposure, seeing and this movement alone.
    pub star_width_arcsec: Option<f64>,
    /// Growth of the star's round width over one exposure in which it happens; null when unknown.
    pub star_growth_ratio: Option<Outcome<f64>>,
    /// Share of its peak that is left.
    pub peak_left_ratio: Option<Outcome<f64>>,
    /// What it costs at worst held against what is asked.
    pub verdict: Verdict,
    /// Where its size comes from.
    pub source: Source,
    /// The movement itself, from which the sums are made.
    #[serde(skip)]
    pub likely: Option<Likely>,
}

/// What happens to the star with nobody there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alone {
    /// What it costs the star.
    pub cost: Cost,
    /// Largest movement at worst.
    pub worst_arcsec: f64,
}

/// Width of the star when everything happens within one exposure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StarWidth {
    /// Full width by the seeing alone.
    pub seeing_arcsec: f64,
    /// With every disturbance once in it; the second person left out.
    pub width_arcsec: f64,
    /// Growth over the seeing: 0.1 is a tenth.
    pub growth_ratio: f64,
    /// Share of the peak that is left.
    pub peak_left_ratio: f64,
}

/// All that shares are reckoned from.
pub struct Parts<'a> {
    /// Inputs.
    pub brief: &'a Brief,
    /// How the star is recorded.
    pub exposure: Exposure,
    /// Modes under a rigid load; none where the ground is not known.
    pub system: Option<&'a System>,
    /// Floor.
    pub floor: &'a Floor,
    /// Influence of a weight; none where it is not solved.
    pub influence: Option<&'a dyn Influence>,
    /// The walk in short, alone and with somebody who follows; none where it is not known.
    pub walk: Option<&'a [Peaks; 2]>,
    /// Wind.
    pub wind: Option<&'a Wind>,
    /// Warmth.
    pub heat: &'a Heat,
    /// Lean of the axis in a year.
    pub season: Option<Season>,
    /// What is asked.
    pub budget: &'a Budget,
}

/// What one thing does: its largest movement in typical ground, and the movement within one exposure.
#[derive(Debug, Clone)]
struct Moved {
    arcsec: f64,
    likely: Likely,
}

/// Lists the disturbances, those first that widen the star most.
pub fn find(parts: &Parts<'_>) -> Vec<Disturbance> {
    let mut all: Vec<Disturbance> = movements::all(parts)
        .into_iter()
        .map(|(id, title, moved, source)| line(parts, id, title, moved, source))
        .collect();
    // A second walker comes on top of the first one and is no disturbance of its own.
    let widened = |one: &Disturbance| {
        let grown = 1.0 + one.star_growth_ratio?.expected;
        is_own(one).then_some(grown * grown - 1.0)
    };
    let sum: f64 = all.iter().filter_map(widened).sum();
    for one in &mut all {
        one.share_ratio = widened(one).filter(|_| sum > 0.0).map(|a| a / sum);
    }
    let growth = |one: &Disturbance| one.star_growth_ratio.map_or(0.0, |ratio| ratio.expected);
    all.sort_by(|a, b| growth(b).total_cmp(&growth(a)));
    all
}

fn is_own(one: &Disturbance) -> bool {
    one.id != "second_person"
}

/// Width of the star when all of them fall into one exposure; none where nothing is known.
pub fn star_width(exposure: &Exposure, disturbances: &[Disturbance]) -> Option<StarWidth> {
    let known = || {
        disturbances
            .iter()
            .filter(|one| is_own(one))
            .filter_map(|one| one.likely.as_ref())
    };
    let _ = known().next()?;
    let star = exposure.together(known().map(|likely| &likely.expected));
    let growth_ratio = star.growth_ratio();
    Some(StarWidth {
        seeing_arcsec: exposure.width_arcsec,
        width_arcsec: exposure.width_arcsec * (1.0 + growth_ratio),
        growth_ratio,
        peak_left_ratio: star.peak_left_ratio,
    })
}

/// What the star comes to with nobody there; none where wind or warmth is not known.
pub fn left_alone(parts: &Parts<'_>) -> Option<Cost> {
    add_up(&parts.exposure, movements::alone(parts)).map(|alone| alone.cost)
}

/// The same from the flutter in the wind, its rms in typical ground and in the worst ground as the amplitude of a swing.
pub fn alone(
    brief: &Brief,
    exposure: &Exposure,
    flutter: (f64, f64),
    heat: &Heat,
    season: Option<Season>,
) -> Option<Alone> {
    add_up(
        exposure,
        movements::with_nobody(brief, Some(flutter), heat, season),
    )
}

fn add_up(exposure: &Exposure, lines: [movements::Line; 3]) -> Option<Alone> {
    let [wind, warmth, season] = lines.map(|(.., moved, _)| moved);
    let moved = [Some(wind?), Some(warmth?), season];
    let worst_arcsec = moved
        .iter()
        .flatten()
        .map(|one| one.arcsec * one.likely.worst_ratio())
        .fold(0.0, f64::hypot);
    let all = moved.map(|one| one.map(|one| one.likely));
    let square = |likely: &Likely, axis: usize| {
        let expected = likely.expected.steady_arcsec[axis].powi(2);
        (expected, expected * (likely.worst_ratio().powi(2) - 1.0))
    };
    let sum = |axis: usize| {
        let squares = all.iter().flatten().map(|likely| square(likely, axis));
        squares.fold((0.0, 0.0), |(sum, beyond), (expected, more)| {
            (sum + expected, f64::hypot(beyond, more))
        })
    };
    // Wind, warmth and a leaning axis know nothing of each other: what each has beyond its middle adds as squares.
    let along = [sum(0), sum(1)];
    let star = |variance: [f64; 2]| exposure.star(&Movement::steady(variance.map(f64::sqrt)));
    let expected = star(along.map(|(middle, _)| middle));
    let worst = star(along.map(|(middle, beyond)| middle + beyond));
    Some(Alone {
        cost: Cost {
            star_growth_ratio: Outcome {
                expected: expected.growth_ratio(),
                worst: worst.growth_ratio(),
            },
            peak_left_ratio: Outcome {
                expected: expected.peak_left_ratio,
                worst: worst.peak_left_ratio,
            },
        },
        worst_arcsec,
    })
}

fn line(
    parts: &Parts<'_>,
    id: &'static str,
    title: &'static str,
    moved: Option<Moved>,
    source: Source,
) -> Disturbance {
    let cost = moved
        .as_ref()
        .map(|moved| parts.exposure.cost(&moved.likely));
    let worst_arcsec = moved
        .as_ref()
        .map(|moved| moved.arcsec * moved.likely.worst_ratio());
    let wide = parts.exposure.width_arcsec;
    Disturbance {
        id,
        title,
        arcsec: moved.as_ref().map(|moved| moved.arcsec),
        worst_arcsec,
        share_ratio: None,
        rms_arcsec: moved
            .as_ref()
            .map(|moved| moved.likely.expected.rms_arcsec()),
        star_width_arcsec: cost.map(|cost| wide * (1.0 + cost.star_growth_ratio.expected)),
        star_growth_ratio: cost.map(|cost| cost.star_growth_ratio),
        peak_left_ratio: cost.map(|cost| cost.peak_left_ratio),
        verdict: cost
            .zip(worst_arcsec)
            .map_or(Verdict::Unknown, |(cost, worst)| {
                parts.budget.verdict(&cost, worst)
            }),
        source,
        likely: moved.map(|moved| moved.likely),
    }
}
