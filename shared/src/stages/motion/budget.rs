//! Budget: how far a star may move, by what the telescope is for.
//!
//! No standard says it. Long exposures take all movement into the star's width, and a tenth more is a common limit; half
//! of that is left to the mount. Frames of a few milliseconds freeze a slow swing and feel only what moves within the
//! frame. The eye follows what is slow, loses what stays within the seeing disc, and wants a knock to die in a second or two.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, Working};
use crate::rules::image_motion::{scale, width};
use crate::site_plan::Use;
use crate::source::{Source, Standing};
use crate::units::{millimetre, second};

/// Growth of a star's width that long exposures bear.
const GROWTH_RATIO: f64 = 0.1;
/// Share of that which the pier may use; the mount has the rest.
const PIER_SHARE_RATIO: f64 = 0.5;
/// Share of an aperture's limit that may blur one frame.
const FRAME_BLUR_RATIO: f64 = 0.1;
/// Frequency at which a frame's blur is judged: that of a pier with its mount.
const FRAME_FREQUENCY_HZ: f64 = 10.0;
/// Angle that the eye tells apart, arcsec.
const EYE_ARCSEC: f64 = 60.0;
/// Share of the seeing disc within which the eye does not mind a movement.
const EYE_SEEING_RATIO: f64 = 0.5;

/// About a second for a good portable mount after a touch.
const EYE_SETTLES: Source = Source::new(
    "Covington, How to Use a Computerized Telescope",
    "2002",
    "steadiness of tripods and piers",
    Standing::Read,
);
/// More than three seconds is inadequate.
const FRAMES_SETTLE: Source = Source::new(
    "McAnally, Jupiter and How to Observe It",
    "2008",
    "chapter 7, mounts",
    Standing::Read,
);

/// How far a star may move and how long a knock may take to die.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Budget {
    /// Largest movement from rest along one axis.
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

/// Finds the budget.
#[must_use]
pub fn find(brief: &Brief, notes: &mut Notes) -> Budget {
    let purpose = brief.purpose.value;
    let (settle_s, settle_why, settle_source) = settling(brief);
    let (arcsec, why, source) = match purpose {
        Use::DeepSky => deep_sky(brief, notes),
        Use::Planetary => planetary(brief, notes),
        Use::Visual => visual(brief, notes),
    };
    match brief.load.budget_arcsec {
        Some(stated) => Budget {
            arcsec: stated,
            settle_s,
            settle_why,
            settle_source,
            why: format!(
                "You stated it. For this use the planner would have taken {}: {why}",
                brief.units.say(arcsec, Unit::Arcsecond)
            ),
            stated: true,
            source: Source::judgement("stated by the person"),
        },
        None => Budget {
            arcsec,
            settle_s,
            settle_why,
            settle_source,
            why,
            stated: false,
            source,
        },
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
                "You stated it. For this use the planner would have taken {}: {why}",
                brief.units.say(usual, Unit::Second)
            ),
            Source::judgement("stated by the person"),
        ),
        None => (usual, why.to_owned(), source),
    }
}

fn deep_sky(brief: &Brief, notes: &mut Notes) -> (f64, String, Source) {
    let seeing = brief.load.seeing_arcsec.value;
    let budget = PIER_SHARE_RATIO * width::amplitude_for_growth_arcsec(seeing, GROWTH_RATIO);
    notes.working(
        Working::new(
            "motion.budget",
            "Movement that long exposures bear",
            "A = p √2 w √((1 + s)² − 1)/2.355",
            width::SOURCE,
        )
        .with("w", seeing, Unit::Arcsecond)
        .with("s", GROWTH_RATIO, Unit::One)
        .with("p", PIER_SHARE_RATIO, Unit::One)
        .gives("A", budget, Unit::Arcsecond),
    );
    let why = "a long exposure adds every movement to the star's width; a tenth more is a common limit, and half of that is left to the mount.";
    (
        budget,
        why.into(),
        Source::judgement(
            "growth of the star by a tenth, half of it the mount's; no standard exists",
        ),
    )
}

fn planetary(brief: &Brief, notes: &mut Notes) -> (f64, String, Source) {
    let aperture = brief.load.aperture.value;
    let limit = scale::rayleigh_arcsec(aperture);
    let blur = width::blur_ratio(FRAME_FREQUENCY_HZ, second::get(brief.load.exposure.value));
    // A frame so short that it freezes everything still has to be centred: never more than the aperture's limit itself.
    let budget = (2f64.sqrt() * FRAME_BLUR_RATIO * limit / blur.max(1e-6)).min(limit);
    notes.working(
        Working::new(
            "motion.budget",
            "Movement that short frames bear",
            "A = min(√2 · 0.1 ρ/√(1 − sinc²(f t)), ρ), ρ = 1.22 λ/D",
            scale::RAYLEIGH_SOURCE,
        )
        .with("D", millimetre::get(aperture), Unit::Millimetre)
        .with("f", FRAME_FREQUENCY_HZ, Unit::Hertz)
        .with("t", second::get(brief.load.exposure.value), Unit::Second)
        .gives("A", budget, Unit::Arcsecond),
    );
    let why = "a short frame freezes a slow swing; within one frame the image may move by a tenth of what the aperture resolves.";
    (
        budget,
        why.into(),
        Source::judgement(
            "blur within a frame of a tenth of the aperture's limit; no standard exists",
        ),
    )
}

fn visual(brief: &Brief, notes: &mut Notes) -> (f64, String, Source) {
    let seeing = brief.load.seeing_arcsec.value;
    // One power for every millimetre of aperture is a high but usual magnification.
    let power = millimetre::get(brief.load.aperture.value).clamp(30.0, 300.0);
    let budget = (EYE_ARCSEC / power).max(EYE_SEEING_RATIO * seeing);
    notes.working(
        Working::new(
            "motion.budget",
            "Movement that the eye bears",
            "A = max(60″/V, w/2)",
            Source::judgement("eye and seeing disc"),
        )
        .with("V", power, Unit::One)
        .with("w", seeing, Unit::Arcsecond)
        .gives("A", budget, Unit::Arcsecond),
    );
    let why = "the eye follows what is slow and loses what stays within half the seeing disc; what matters is that a knock dies soon.";
    (
        budget,
        why.into(),
        Source::judgement(
            "half the seeing disc, or what the eye tells apart at a power of one for each millimetre",
        ),
    )
}
