//! Doubt: what the stiffness may be at worst and at best, when all that is uncertain is taken together.
//!
//! The logarithm of a stiffness is a sum: of the modulus, which goes with the square of the speed of shear waves, of the side
//! contact, of Poisson's ratio, of the method itself and of each layer. Independent causes add as squares, and worst is the
//! unfavourable twentieth of their sum, not the sum of their worst ends.

use serde::Serialize;

use super::contact::SideContact;
use super::layers::Layer;
use super::uneven::{Factors, together};
use crate::rules::scatter::TWENTIETH;
use crate::units::{Pressure, Spread};

/// Poisson's ratio from soil in words: the bonded cube's rocking from 30.4 to 34.7 for 0.25 to 0.45 (computed).
const POISSON_SD_LN: f64 = 0.08;
/// The method: mesh, even ground, a rigid block.
const MODEL_SD_LN: f64 = 0.10;

/// What is uncertain, as standard deviations of a stiffness's logarithm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Doubt {
    /// The modulus, towards soft ground: twice the speed's.
    pub modulus_sd_ln: f64,
    /// Side contact, in rocking.
    pub side_contact_sd_ln: f64,
    /// Poisson's ratio; nought where it is stated.
    pub poisson_sd_ln: f64,
    /// The method.
    pub model_sd_ln: f64,
    /// All of them, rocking about the softer axis, towards soft ground, layers left out.
    pub together_sd_ln: f64,
    /// Typical over worst rocking stiffness, layers left out.
    pub worst_ratio: f64,
}

/// Which end of the ground.
#[derive(Clone, Copy)]
enum End {
    Soft,
    Stiff,
}

/// What goes into it.
pub struct Causes<'a> {
    /// The layers.
    pub layers: &'a [Layer],
    /// The shear modulus.
    pub modulus: Spread<Pressure>,
    /// The contact, where its range is known.
    pub contact: Option<&'a SideContact>,
    /// Whether Poisson's ratio was stated.
    pub poisson_stated: bool,
}

impl Causes<'_> {
    /// The parts and the whole.
    pub fn doubt(&self) -> Doubt {
        let contact = self.contact.map_or(0.0, |contact| contact.sd_ln);
        let modulus = self.modulus_ln(End::Soft) / TWENTIETH;
        let together_sd_ln = modulus.hypot(self.others(contact) / TWENTIETH);
        Doubt {
            modulus_sd_ln: modulus,
            side_contact_sd_ln: contact,
            poisson_sd_ln: self.poisson(),
            model_sd_ln: MODEL_SD_LN,
            together_sd_ln,
            worst_ratio: (TWENTIETH * together_sd_ln).exp(),
        }
    }

    /// Factors on the solution, each to be taken with the modulus of its own ground.
    pub fn factors(&self) -> Spread<Factors> {
        let typical = together(self.layers).typical;
        Spread {
            low: self.at(End::Soft, &typical),
            typical,
            high: self.at(End::Stiff, &typical),
        }
    }

    fn at(&self, end: End, typical: &Factors) -> Factors {
        // Towards soft ground stiffness falls and lean rises.
        let sign = match end {
            End::Soft => -1.0,
            End::Stiff => 1.0,
        };
        let modulus = self.modulus_ln(end);
        let stiffness: [f64; 6] = std::array::from_fn(|axis| {
            let contact = self.contact.map_or(0.0, |contact| contact.axis_sd_ln[axis]);
            let layers = self
                .layers
                .iter()
                .map(|layer| apart(layer.stiffness[axis], end));
            sign * (self.away(end, contact, layers) - modulus)
        });
        let lean = {
            let contact = self.contact.map_or(0.0, |contact| contact.lean_sd_ln);
            let layers = self.layers.iter().map(|layer| -apart(layer.lean, end));
            -sign * (self.away(end, contact, layers) - modulus)
        };
        let root = |i: usize, j: usize| (0.5 * (stiffness[i] + stiffness[j])).exp();
        let [x, y] = typical.coupling_ratio;
        Factors {
            stiffness_ratio: std::array::from_fn(|axis| {
                typical.stiffness_ratio[axis] * stiffness[axis].exp()
            }),
            // With the roots of what they couple the matrix stays positive.
            coupling_ratio: [x * root(0, 4), y * root(1, 3)],
            lean_ratio: typical.lean_ratio * lean.exp(),
        }
    }

    /// How far the logarithm of a whole figure lies from the middle. A layer that makes up for soft ground, as rock does, has one
    /// cause with it and is taken off; the others are independent.
    fn away(&self, end: End, contact_sd_ln: f64, layers: impl Iterator<Item = f64>) -> f64 {
        let (mut ground, mut squares) = (self.modulus_ln(end), self.others(contact_sd_ln).powi(2));
        for ln in layers {
            if ln < 0.0 {
                ground += ln;
            } else {
                squares += ln * ln;
            }
        }
        ground.max(0.0).hypot(squares.sqrt())
    }

    fn modulus_ln(&self, end: End) -> f64 {
        let Spread { low, typical, high } = self.modulus;
        match end {
            End::Soft => (typical / low).value.ln(),
            End::Stiff => (high / typical).value.ln(),
        }
    }

    fn poisson(&self) -> f64 {
        if self.poisson_stated {
            0.0
        } else {
            POISSON_SD_LN
        }
    }

    /// Contact, Poisson's ratio and method, as a twentieth sees them.
    fn others(&self, contact_sd_ln: f64) -> f64 {
        TWENTIETH * contact_sd_ln.hypot(self.poisson().hypot(MODEL_SD_LN))
    }
}

/// How far a layer's end lies from its middle: positive where it is softer at the soft end and stiffer at the stiff one.
fn apart(factor: Spread<f64>, end: End) -> f64 {
    match end {
        End::Soft => (factor.typical / factor.low).ln(),
        End::Stiff => (factor.high / factor.typical).ln(),
    }
}
