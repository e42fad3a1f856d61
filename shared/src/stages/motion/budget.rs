//! Limit: how much wider a star may get, and how far it may then move, by what the telescope is for.
//!
//! No standard says it. Long exposures take all movement into the star's width, and a tenth more is a common limit; half
//! of that is left to the mount. Frames of a few milliseconds freeze a slow swing and feel only what moves within the
//! frame, held against the disc that the aperture shows. The eye follows what is slow, loses what stays within the seeing
//! disc at the power used, and wants a knock to die in a second or two. The arcseconds of which the trade speaks follow
//! from the growth that is asked; they judge nothing but the eye's view.

use serde::Serialize;

use crate::brief::{Brief, Origin};
use crate::figure::{Arcsecond, Millimetre, One, Unit};
use crate::notes::{Notes, Verdict, Working};
use crate::rules::image_motion::{scale, width};
use crate::site_plan::Use;
use crate::source::Source;
use crate::stages::motion::growth::Cost;
use crate::units::{millimetre, second};

/// Frequency at which a frame's blur is judged: that of a pier with its mount.
const FRAME_FREQUENCY_HZ: f64 = 10.0;
/// Angle that the eye tells apart, arcsec.
const EYE_ARCSEC: f64 = 60.0;
/// Share of the seeing disc within which the eye does not mind a movement.
const EYE_SEEING_RATIO: f64 = 0.5;

/// About a second for a good portable mount after a touch.
const EYE_SETTLES: Source = Source::read(
    "Covington, How to Use a Computerized Telescope",
    "2002",
    "steadiness of tripods and piers",
);
/// More than three seconds is inadequate.
const FRAMES_SETTLE: Source = Source::read(
    "McAnally, Jupiter and How to Observe It",
    "2008",
    "chapter 7, mounts",
);

/// What stillness is judged by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// Growth of the star's width over one exposure.
    StarWidth,
    /// Blur within one frame, against the disc that the aperture shows.
    FrameBlur,
    /// Movement that the eye sees at the power used.
    EyeMovement,
}

/// How much wider a star may get, how far it may move and how long a knock may take to die.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Budget {
    /// What stillness is judged by.
    pub measure: Measure,
    /// Growth of the star's width that is asked of the pier.
    pub asked_growth_ratio: f64,
    /// Largest movement from rest along one axis: a swing all through the exposure that widens the star so, or for the eye
    /// the movement that it bears.
    pub arcsec: f64,
    /// Longest time for a knock to die.
    pub settle_s: f64,
    /// Why so long.
    pub settle_why: String,
    /// Where that comes from.
    pub settle_source: Source,
    /// Why.
    pub why: String,
    /// Whether the person stated it.
    pub stated: bool,
    /// Where it comes from.
    pub source: Source,
}

impl Budget {
    /// What is used of that which is asked: by the star's width and its peak, for the eye by the movement.
    pub fn used_ratio(&self, cost: &Cost, worst_arcsec: f64) -> f64 {
        if self.measure == Measure::EyeMovement {
            return worst_arcsec / self.arcsec;
        }
        let wider = cost.star_growth_ratio.worst / self.asked_growth_ratio;
        // A star that is as much wider all over has lost so much of its peak.
        let fainter = 1.0 - (1.0 + self.asked_growth_ratio).powi(-2);
        wider.max((1.0 - cost.peak_left_ratio.worst) / fainter)
    }

    /// The same as a verdict.
    pub fn verdict(&self, cost: &Cost, worst_arcsec: f64) -> Verdict {
        Verdict::of(self.used_ratio(cost, worst_arcsec))
    }
}

/// Finds the limit.
pub fn find(brief: &Brief, notes: &mut Notes) -> Budget {
    let (settle_s, settle_why, settle_source) = settling(brief);
    let asked = asked(brief);
    let (measure, usual, why, source) = match brief.purpose.value {
        Use::DeepSky => deep_sky(brief, asked, notes),
        Use::Planetary => planetary(brief, asked, notes),
        Use::Visual => visual(brief, notes),
    };
    let (arcsec, why, source) = match brief.load.budget_arcsec {
        Some(stated) => (
            stated,
            format!(
                "You stated it. For this use it would have been {}: {why}",
                brief.units.say(usual, Arcsecond)
            ),
            Source::judgement("stated by the person"),
        ),
        None => (usual, why.to_owned(), source),
    };
    Budget {
        measure,
        asked_growth_ratio: asked,
        arcsec,
        settle_s,
        settle_why,
        settle_source,
        why,
        stated: brief.load.budget_arcsec.is_some(),
        source,
    }
}

/// The growth that is asked: what the person said, or what the movement that they said amounts to.
fn asked(brief: &Brief) -> f64 {
    let load = &brief.load;
    let usual = load.asked_growth_ratio.value;
    let said = load.asked_growth_ratio.origin == Origin::Said;
    match load.budget_arcsec {
        Some(arcsec) if !said && brief.purpose.value == Use::DeepSky => {
            width::growth_of_swing_ratio(load.seeing_arcsec.value, arcsec)
        }
        _ => usual,
    }
}

/// How long a knock may take to die, by use: two readings of what observers bear, and a share of an exposure.
fn settling(brief: &Brief) -> (f64, String, Source) {
    let (usual, why, source) = match brief.purpose.value {
        Use::Visual => (
            2.0,
            "a good portable mount shakes for about a second after a touch, one that needs three is called inadequate; a pier should be nearer the first.",
            EYE_SETTLES,
        ),
        Use::Planetary => (
            3.0,
            "a mount that needs more than three seconds to come to rest after a touch is called inadequate for the planets.",
            FRAMES_SETTLE,
        ),
        Use::DeepSky => (
            5.0,
            "nobody touches the telescope during an exposure; five seconds after a slew cost less than two per cent of one of five minutes.",
            Source::judgement("five seconds of an exposure of five minutes"),
        ),
    };
    match brief.load.settle_s {
        Some(stated) => (
            second::get(stated),
            format!(
                "You stated it. For this use it would have been {}: {why}",
                brief.units.say(usual, Unit::Second)
            ),
            Source::judgement("stated by the person"),
        ),
        None => (usual, why.to_owned(), source),
    }
}

type Found = (Measure, f64, &'static str, Source);

fn deep_sky(brief: &Brief, asked: f64, notes: &mut Notes) -> Found {
    let seeing = brief.load.seeing_arcsec.value;
    let swing = width::swing_for_growth_arcsec(seeing, asked);
    notes.working(
        Working::new(
            "motion.budget",
            "Swing all through an exposure that widens the star by what is asked",
            "A = √2 w √((1 + s)⁴ − 1)/2.355",
            width::SOURCE,
        )
        .with("w", seeing, Arcsecond)
        .with("s", asked, One)
        .gives("A", swing, Arcsecond),
    );
    (
        Measure::StarWidth,
        swing,
        "a long exposure adds every movement to the star's width; a tenth more is a common limit, and half of that is left to the mount.",
        Source::judgement(
            "growth of the star by a tenth, half of it the mount's; no standard exists",
        ),
    )
}

fn planetary(brief: &Brief, asked: f64, notes: &mut Notes) -> Found {
    let aperture = brief.load.aperture.value;
    let (disc, limit) = (
        scale::disc_arcsec(aperture),
        scale::rayleigh_arcsec(aperture),
    );
    let frame_s = second::get(brief.load.exposure.value);
    let blur = width::blur_ratio(FRAME_FREQUENCY_HZ, frame_s);
    // A frame so short that it freezes everything still has to be centred: never more than the aperture's limit itself.
    let swing = (width::swing_for_growth_arcsec(disc, asked) / blur.max(1e-6)).min(limit);
    notes.working(
        Working::new(
            "motion.budget",
            "Swing that blurs a short frame by what is asked",
            "A = min(√2 w √((1 + s)⁴ − 1)/(2.355 √(1 − sinc²(f t))), ρ), w = 1.029 λ/D, ρ = 1.22 λ/D",
            scale::RAYLEIGH_SOURCE,
        )
        .with("D", aperture, Millimetre)
        .with("s", asked, One)
        .with("f", FRAME_FREQUENCY_HZ, Unit::Hertz)
        .with("t", frame_s, Unit::Second)
        .gives("A", swing, Arcsecond),
    );
    (
        Measure::FrameBlur,
        swing,
        "a short frame freezes a slow swing; within one frame the disc that the aperture shows may widen by the share that is asked.",
        Source::judgement(
            "blur within a frame held against the aperture's disc; no standard exists",
        ),
    )
}

fn visual(brief: &Brief, notes: &mut Notes) -> Found {
    let seeing = brief.load.seeing_arcsec.value;
    // One power for every millimetre of aperture is a high but usual magnification.
    let power = millimetre::get(brief.load.aperture.value).clamp(30.0, 300.0);
    let most = (EYE_ARCSEC / power).max(EYE_SEEING_RATIO * seeing);
    notes.working(
        Working::new(
            "motion.budget",
            "Movement that the eye bears",
            "A = max(60″/V, w/2)",
            Source::judgement("eye and seeing disc"),
        )
        .with("V", power, One)
        .with("w", seeing, Arcsecond)
        .gives("A", most, Arcsecond),
    );
    (
        Measure::EyeMovement,
        most,
        "the eye follows slow movement and does not see what stays within half the seeing disc; what matters is that a bump \
         settles soon.",
        Source::judgement(
            "half the seeing disc, or what the eye tells apart at a power of one for each millimetre",
        ),
    )
}
