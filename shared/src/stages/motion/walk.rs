//! A walk: one foot after the other, each at its own place on the drawn path.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::Notes;
use crate::rules::ccip_016_2006::walking;
use crate::rules::image_motion::{scale, width};
use crate::stages::floor::Floor;
use crate::stages::motion::footfall::Strength;
use crate::stages::motion::footsteps::{Detail, Held, Steps};
use crate::stages::motion::history::History;
use crate::stages::motion::influence::Influence;
use crate::stages::motion::pace::{self, Band, Paces, middle_and_unfavourable};
use crate::stages::motion::steps::{self, Pace, Trodden};
use crate::stages::motion::system::{Planes, System};
use crate::stages::motion::trail::{self, Drawn};
use crate::stages::motion::walked::{AtAllPaces, Peaks};
use crate::stages::motion::{people, walk_notes, walked};
use crate::units::{hertz, second};

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

/// Impulse of one step at the pier's first frequency, N s: the trace that is followed, and CCIP-016.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct StepImpulse {
    /// The pier's first frequency.
    pub mode_hz: f64,
    /// The step that is followed.
    pub step_n_s: f64,
    /// The same step with a design value's heel: so much harder few people tread.
    pub design_step_n_s: f64,
    /// Mean by CCIP-016 for this walker.
    pub guide_n_s: f64,
    /// Design value by CCIP-016 for this walker.
    pub design_guide_n_s: f64,
}

/// What the deck's own swing makes of the walk.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct DeckSwing {
    /// Frequency taken for the deck.
    pub deck_hz: f64,
    /// Largest movement with the swing over that without it.
    pub peak_ratio: f64,
    /// The frequency of a deck that suits the pier worst.
    pub tuned_hz: f64,
    /// The same ratio for that deck.
    pub tuned_peak_ratio: f64,
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

/// What everything said about a walk is taken from.
#[derive(Debug, Clone, PartialEq)]
pub struct Histories {
    /// The lean through time, towards east and north: typical ground, the pace whose largest movement nine tenths do not exceed.
    pub unfavourable: History,
    /// What it comes to at every pace of the band in typical ground and in soft.
    pub at_all_paces: [AtAllPaces; 2],
    /// The paces in typical ground.
    pub paces: Paces,
    /// The one in the middle, with its row of chance.
    pub middle_pace: Pace,
    /// Time until the last foot is up, s, of the unfavourable walk.
    pub lasts_s: f64,
    /// Number of steps.
    pub steps: usize,
    /// The foot nearest to the pier.
    pub nearest: Nearest,
}

impl Histories {
    /// Largest distance from rest in typical ground: in the middle of all paces, and what nine tenths of them do not exceed.
    pub fn peaks_arcsec(&self) -> [f64; 2] {
        self.at_all_paces[0].alone.peaks()
    }
}

/// The foot nearest to the pier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nearest {
    /// Its distance from the pier's axis.
    pub distance_m: f64,
    /// Phase ωr/V_s of the shear wave there at the pier's first frequency.
    pub phase_ratio: f64,
}

/// At every pace of the band, in typical ground and in the softest thought likely.
fn at_all_paces(brief: &Brief, system: &System, trodden: &Trodden, band: &Band) -> [AtAllPaces; 2] {
    [&system.typical, &system.low].map(|planes| AtAllPaces::find(brief, band, planes, trodden))
}

/// Follows the walk at the paces and in the grounds that matter; none without a path.
fn follow(brief: &Brief, system: &System, trodden: &Trodden) -> Option<Histories> {
    let (from_hz, to_hz) = pace::band_hz(brief);
    let band = Band::new((from_hz, to_hz), trodden);
    let at_all_paces = at_all_paces(brief, system, trodden, &band);
    let chosen = middle_and_unfavourable(&at_all_paces[0].alone.peaks_arcsec)?;
    let paces: Vec<Pace> = band.paces().collect();
    let [middle_pace, unfavourable_pace] = chosen.map(|(place, _)| paces[place]);
    let steps = Steps::at(trodden, unfavourable_pace, Detail::WHOLE);
    Some(Histories {
        unfavourable: Held::by(&system.typical, trodden, Detail::WHOLE).follow(&steps),
        at_all_paces,
        paces: Paces {
            from_hz,
            to_hz,
            middle_hz: middle_pace.hertz,
            unfavourable_hz: unfavourable_pace.hertz,
        },
        middle_pace,
        lasts_s: steps.lasts_s,
        steps: trodden.count(),
        nearest: Nearest {
            distance_m: trodden.nearest_m(),
            phase_ratio: trodden.nearest_m() * system.typical.wave_number_per_m(),
        },
    })
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

/// One step's impulse at the pier's first frequency, as it is followed and by the guide.
fn step_impulse(trodden: &Trodden, planes: &Planes, paces: &Paces) -> StepImpulse {
    let mode_hz = planes.first_omega() / (2.0 * std::f64::consts::PI);
    let (pace, mode) = (hertz::new(paces.middle_hz), hertz::new(mode_hz));
    let (weight, of_walker) = (trodden.weight_n(), trodden.weight_n() / walking::WALKER_N);
    let of = |strength| {
        trodden
            .footfall(paces.middle_hz, strength)
            .impulse_n_s(mode, weight)
    };
    StepImpulse {
        mode_hz,
        step_n_s: of(Strength::Mean),
        design_step_n_s: of(Strength::Design),
        guide_n_s: of_walker * walking::mean_impulse_n_s(pace, mode),
        design_guide_n_s: of_walker * walking::impulse_n_s(pace, mode),
    }
}

/// The walk at the middle pace on a deck that swings, over the same on one that does not.
fn deck_swing(trodden: &Trodden, planes: &Planes, found: &Histories) -> Option<DeckSwing> {
    let deck_hz = trodden.deck_hz()?;
    let peak = |deck_hz: Option<f64>| {
        let trodden = trodden.with_deck(deck_hz);
        let steps = Steps::at(&trodden, found.middle_pace, Detail::WHOLE);
        Held::by(planes, &trodden, Detail::WHOLE)
            .follow(&steps)
            .peak_arcsec()
    };
    let still = peak(None);
    let first = planes.first_omega() / (2.0 * std::f64::consts::PI);
    let tuned_hz = first.clamp(steps::DECK_BAND_HZ.0, steps::DECK_BAND_HZ.1);
    (still > 0.0).then(|| DeckSwing {
        deck_hz,
        peak_ratio: peak(Some(deck_hz)) / still,
        tuned_hz,
        tuned_peak_ratio: peak(Some(tuned_hz)) / still,
    })
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
