//! A walk at every pace of its band: figures that do not jump where one pace takes another's place.

use crate::brief::Brief;
use crate::rules::image_motion::places::Places;
use crate::stages::motion::growth::{Exposure, Likely, Movement, Seen};
use crate::stages::motion::pace::{Band, middle_and_unfavourable};
use crate::stages::motion::steps::Trodden;
use crate::stages::motion::system::Planes;
use crate::units::{hertz, metre_per_second};

/// Distance at which a second person follows, m: to the next whole step.
const FOLLOWS_M: f64 = 1.0;

/// What a walk comes to at every pace of a band in one ground.
#[derive(Debug, Clone, PartialEq)]
pub struct AtAllPaces {
    /// Alone.
    pub alone: Walked,
    /// With somebody who follows in step.
    pub followed: Walked,
}

/// Figures of a walk pace by pace, and the star of all of them.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Walked {
    /// Largest distance from rest.
    pub peaks_arcsec: Vec<f64>,
    /// Root mean square of the distance from the mean place.
    pub rms_arcsec: Vec<f64>,
    /// The star's places within one exposure, every pace as likely as the others.
    pub places: Places,
}

/// The walk in short: how far it moves the star, and what of it one exposure sees.
#[derive(Debug, Clone, PartialEq)]
pub struct Peaks {
    /// Largest distance from rest, typical ground, a pace in the middle.
    pub typical: f64,
    /// The same in the softest ground thought likely, at a pace that nine tenths do not exceed.
    pub worst: f64,
    /// What one exposure sees of it.
    pub likely: Likely,
}

impl AtAllPaces {
    /// Follows the walk at every pace.
    pub fn find(brief: &Brief, band: &Band, planes: &Planes, trodden: &Trodden) -> Self {
        let exposure = Exposure::of(brief);
        let behind = steps_behind(brief);
        let mut all: [(Walked, Seen); 2] = Default::default();
        band.walk(planes, trodden, |pace, history| {
            let followed = history.with_follower(behind / pace.hertz);
            for ((walked, seen), history) in all.iter_mut().zip([&history, &followed]) {
                walked.peaks_arcsec.push(history.peak_arcsec());
                walked.rms_arcsec.push(history.rms_arcsec());
                exposure.sees_in_part(history, seen);
            }
        });
        let [alone, followed] = all.map(|(walked, seen)| Walked {
            places: exposure.places(&seen),
            ..walked
        });
        Self { alone, followed }
    }
}

/// Alone, and with somebody who follows in step, from the walk in typical ground and in soft.
pub fn in_short([typical, soft]: &[AtAllPaces; 2]) -> [Peaks; 2] {
    [
        peaks_of(&typical.alone, &soft.alone),
        peaks_of(&typical.followed, &soft.followed),
    ]
}

/// Nobody knows which pace it will be, so that the star is that of all of them together; pace and ground know nothing of each
/// other, and the pace that nine tenths do not exceed counts apart.
fn peaks_of(typical: &Walked, soft: &Walked) -> Peaks {
    let squares = typical.rms_arcsec.iter().map(|rms| rms * rms);
    let all = (squares.sum::<f64>() / typical.rms_arcsec.len().max(1) as f64).sqrt();
    let [_, unfavourable] = typical.rms();
    let seen = |walked: &Walked| Movement::once(walked.places.clone());
    Peaks {
        typical: typical.peaks()[0],
        worst: soft.peaks()[1],
        likely: Likely {
            expected: seen(typical),
            soft: seen(soft),
            load_ratio: if all > 0.0 {
                (unfavourable / all).max(1.0)
            } else {
                1.0
            },
        },
    }
}

impl Walked {
    /// The largest distance in the middle of all paces, and the one that nine tenths of them do not exceed.
    pub fn peaks(&self) -> [f64; 2] {
        figures(&self.peaks_arcsec)
    }

    /// The same of the root mean square.
    pub fn rms(&self) -> [f64; 2] {
        figures(&self.rms_arcsec)
    }
}

fn figures(all: &[f64]) -> [f64; 2] {
    middle_and_unfavourable(all).map_or([0.0; 2], |both| both.map(|(_, figure)| figure))
}

/// Steps after which a second person treads where the first one trod: whole ones, so that both tread at once.
fn steps_behind(brief: &Brief) -> f64 {
    let pace = hertz::get(brief.floor.pace.value);
    let stride = metre_per_second::get(brief.floor.walk_speed.value) / pace;
    if stride > 0.0 {
        (FOLLOWS_M / stride).ceil().clamp(1.0, 100.0)
    } else {
        1.0
    }
}
