//! A walk that was followed: its histories, one step's impulse, and what the deck's own swing makes of it.

use serde::Serialize;

use crate::brief::Brief;
use crate::rules::ccip_016_2006::walking;
use crate::stages::motion::footfall::Strength;
use crate::stages::motion::footsteps::{Detail, Held, Steps};
use crate::stages::motion::history::History;
use crate::stages::motion::pace::{self, Band, Paces, middle_and_unfavourable};
use crate::stages::motion::steps::{self, Pace, Trodden};
use crate::stages::motion::system::{Planes, System};
use crate::stages::motion::walked::AtAllPaces;
use crate::units::hertz;

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
pub fn at_all_paces(
    brief: &Brief,
    system: &System,
    trodden: &Trodden,
    band: &Band,
) -> [AtAllPaces; 2] {
    [&system.typical, &system.low].map(|planes| AtAllPaces::find(brief, band, planes, trodden))
}

/// Follows the walk at the paces and in the grounds that matter; none without a path.
pub fn follow(brief: &Brief, system: &System, trodden: &Trodden) -> Option<Histories> {
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

/// One step's impulse at the pier's first frequency, as it is followed and by the guide.
pub fn step_impulse(trodden: &Trodden, planes: &Planes, paces: &Paces) -> StepImpulse {
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
pub fn deck_swing(trodden: &Trodden, planes: &Planes, found: &Histories) -> Option<DeckSwing> {
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
