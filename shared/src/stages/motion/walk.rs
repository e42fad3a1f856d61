//! A walk: one foot after the other, each at its own place on the drawn path.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Notes;
use crate::rules::image_motion::{scale, width};
use crate::stages::floor::Floor;
use crate::stages::motion::followed::{
    DeckSwing, Histories, StepImpulse, at_all_paces, deck_swing, follow, step_impulse,
};
use crate::stages::motion::influence::Influence;
use crate::stages::motion::pace::{self, Band, Paces, middle_and_unfavourable};
use crate::stages::motion::steps::Trodden;
use crate::stages::motion::system::{Planes, System};
use crate::stages::motion::trail::{self, Drawn};
use crate::stages::motion::walked::Peaks;
use crate::stages::motion::{people, walk_notes, walked};
use crate::units::second;

/// Steps until a swing has built up.
const STEPS_ON_THE_SPOT: usize = 8;
/// Multiples of the pace that have a line of their own in the spectrum.
const HARMONICS: u32 = 20;

/// The star during the walk. Each figure is one that nine tenths of all paces do not exceed unless it is said otherwise; the trail
/// and what is guided are those of one walk, at the pace whose largest movement they do not exceed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Walk {
    /// Root mean square of the star's distance from its mean place.
    pub rms_arcsec: Option<f64>,
    /// Largest distance from rest.
    pub peak_arcsec: Option<f64>,
    /// Length of the star's trail from end to end, within one exposure.
    pub trail_arcsec: Option<f64>,
    /// The same on the sensor.
    pub trail_pixels: Option<f64>,
    /// The peak in the softest ground thought likely.
    pub worst_peak_arcsec: Option<f64>,
    /// Largest distance from rest at a pace in the middle of all.
    pub middle_peak_arcsec: Option<f64>,
    /// Root mean square in the middle of all paces.
    pub middle_rms_arcsec: Option<f64>,
    /// The paces.
    pub paces: Option<Paces>,
    /// Impulse of one step at the pier's own frequency, beside the guide's.
    pub step_impulse: Option<StepImpulse>,
    /// What the deck's own swing makes of the walk; none on other floors.
    pub deck_swing: Option<DeckSwing>,
    /// Root mean square with a guider, which nine tenths of the paces do not exceed.
    pub guided_rms_arcsec: Option<f64>,
    /// Width of the star when somebody walks all through the exposure, not guided.
    pub star_width_arcsec: Option<f64>,
    /// Time of the walk that was followed.
    pub lasts_s: f64,
    /// Number of steps in it.
    pub steps: usize,
    /// Points for drawings.
    pub drawn: Option<Drawn>,
    /// Why there are no figures, where there are none.
    pub unknown_because: Option<String>,
    /// The walk in short, alone and with somebody who follows.
    #[serde(skip)]
    pub in_short: Option<[Peaks; 2]>,
}

/// A walk of which nothing can be said.
pub fn unknown(why: impl Into<String>) -> Walk {
    Walk {
        rms_arcsec: None,
        peak_arcsec: None,
        trail_arcsec: None,
        trail_pixels: None,
        worst_peak_arcsec: None,
        middle_peak_arcsec: None,
        middle_rms_arcsec: None,
        paces: None,
        step_impulse: None,
        deck_swing: None,
        guided_rms_arcsec: None,
        star_width_arcsec: None,
        lasts_s: 0.0,
        steps: 0,
        drawn: None,
        unknown_because: Some(why.into()),
        in_short: None,
    }
}

/// Follows the walk.
pub fn find(
    brief: &Brief,
    floor: &Floor,
    system: &System,
    influence: &dyn Influence,
    notes: &mut Notes,
) -> Walk {
    let trodden = Trodden::take(brief, floor, influence);
    let followed = trodden.and_then(|trodden| Some((follow(brief, system, &trodden)?, trodden)));
    let Some((found, trodden)) = followed else {
        return unknown("No path is drawn.");
    };
    let impulse = step_impulse(&trodden, &system.typical, &found.paces);
    let deck = deck_swing(&trodden, &system.typical, &found);
    walk_notes::write(brief, &found, &impulse, deck.as_ref(), notes);
    tell(brief, system, &found, impulse, deck)
}

/// The walk in short, alone and with somebody who follows; none without a path.
pub fn peaks(
    brief: &Brief,
    floor: &Floor,
    system: &System,
    influence: &dyn Influence,
) -> Option<[Peaks; 2]> {
    let trodden = Trodden::take(brief, floor, influence)?;
    let band = Band::new(pace::band_hz(brief), &trodden);
    Some(walked::in_short(&at_all_paces(
        brief, system, &trodden, &band,
    )))
}

/// How many times as far as somebody who stands a step moves the star: both feet carry for a while, and the pier swings.
pub fn step_ratio(brief: &Brief, floor: &Floor, planes: &Planes) -> f64 {
    let across = [0.0, 0.0, 0.0, -1.0, 1.0, 0.0];
    let trodden = Trodden::on_the_spot(brief, floor, STEPS_ON_THE_SPOT, across);
    let [x, y] = people::steady(planes, &across);
    let still = trodden.weight_n() * x.hypot(y);
    let band = Band::new(pace::band_hz(brief), &trodden);
    let mut peaks = Vec::new();
    band.walk(planes, &trodden, |_, history| {
        peaks.push(history.peak_arcsec());
    });
    match middle_and_unfavourable(&peaks) {
        Some([_, (_, peak)]) if still > 0.0 => (peak / still).max(1.0),
        _ => 1.0,
    }
}

fn tell(
    brief: &Brief,
    system: &System,
    found: &Histories,
    impulse: StepImpulse,
    deck_swing: Option<DeckSwing>,
) -> Walk {
    let load = &brief.load;
    let typical = &found.unfavourable;
    let trail = trail::length_arcsec(typical, second::get(load.exposure.value));
    let [in_typical, in_soft] = &found.at_all_paces;
    let [middle_peak, peak] = in_typical.alone.peaks();
    let [middle_rms, rms] = in_typical.alone.rms();
    Walk {
        rms_arcsec: Some(rms),
        peak_arcsec: Some(peak),
        trail_arcsec: Some(trail),
        trail_pixels: Some(
            trail / scale::arcsec_per_pixel(load.pixel.value, load.focal_length.value),
        ),
        worst_peak_arcsec: Some(in_soft.alone.peaks()[1]),
        middle_peak_arcsec: Some(middle_peak),
        middle_rms_arcsec: Some(middle_rms),
        paces: Some(found.paces),
        step_impulse: Some(impulse),
        deck_swing,
        guided_rms_arcsec: Some(
            typical
                .guided(second::get(load.guiding_interval.value))
                .rms_arcsec(),
        ),
        star_width_arcsec: Some(width::grown_arcsec(
            load.seeing_arcsec.value,
            rms / 2f64.sqrt(),
        )),
        lasts_s: found.lasts_s,
        steps: found.steps,
        drawn: Some(trail::drawn(
            typical,
            &marks_hz(found.paces.unfavourable_hz, system),
        )),
        unknown_because: None,
        in_short: Some(walked::in_short(&found.at_all_paces)),
    }
}

/// Frequencies worth a line of their own in the spectrum: those of the steps and of the pier.
fn marks_hz(pace: f64, system: &System) -> Vec<f64> {
    let modes = system
        .typical
        .both()
        .into_iter()
        .flatten()
        .map(|mode| mode.omega / (2.0 * std::f64::consts::PI));
    (1..=HARMONICS)
        .map(|n| f64::from(n) * pace)
        .chain(modes)
        .collect()
}
