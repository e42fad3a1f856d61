//! Resistances as a list of ways to fail, each with its characteristic and its design value.

use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

use crate::site_plan::Code;
use crate::units::{Force, kilonewton, newton};

/// A way in which a stud or a group fails.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mode {
    /// The steel tears.
    Steel,
    /// A cone of concrete comes out.
    Cone,
    /// The bond lets go, with some concrete.
    Bond,
    /// The same under a pull that lasts.
    BondSustained,
    /// The block splits.
    Splitting,
    /// The steel shears off.
    ShearSteel,
    /// The steel bends over its free length.
    ShearLever,
    /// The stud pries concrete out behind it.
    PryOut,
    /// The block's edge breaks off.
    Edge,
}

impl Mode {
    /// Every way, those in tension first.
    pub const ALL: [Self; 9] = [
        Self::Steel,
        Self::Cone,
        Self::Bond,
        Self::BondSustained,
        Self::Splitting,
        Self::ShearSteel,
        Self::ShearLever,
        Self::PryOut,
        Self::Edge,
    ];

    /// Name in the JSON interface.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::Cone => "cone",
            Self::Bond => "bond",
            Self::BondSustained => "bond_sustained",
            Self::Splitting => "splitting",
            Self::ShearSteel => "shear_steel",
            Self::ShearLever => "shear_lever_arm",
            Self::PryOut => "pry_out",
            Self::Edge => "edge",
        }
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Steel => "steel of the stud in tension",
            Self::Cone => "cone of concrete",
            Self::Bond => "bond of the resin",
            Self::BondSustained => "bond of the resin under a lasting pull",
            Self::Splitting => "splitting of the block",
            Self::ShearSteel => "steel of the stud in shear",
            Self::ShearLever => "bending of the stud over its free length",
            Self::PryOut => "concrete prised out behind the studs",
            Self::Edge => "edge of the block",
        }
    }

    /// What a way of failing asks, as a question.
    pub const fn question(self) -> &'static str {
        match self {
            Self::Steel => "Are the studs strong enough in tension?",
            Self::Cone => "Does the concrete resist cone failure?",
            Self::Bond => "Does the resin bond resist the tension?",
            Self::BondSustained => "Does the resin bond resist tension that lasts?",
            Self::Splitting => "Does the block resist splitting?",
            Self::ShearSteel => "Are the studs strong enough in shear?",
            Self::ShearLever => "Are the studs strong enough in bending across the gap?",
            Self::PryOut => "Does the concrete resist pry-out?",
            Self::Edge => "Does the concrete edge resist the shear?",
        }
    }

    /// What would raise it.
    pub const fn raised_by(self) -> &'static str {
        match self {
            Self::Steel | Self::ShearSteel => {
                "a larger size or a higher strength class, or more studs"
            }
            Self::Cone => "deeper studs, a wider circle, a wider block or stronger concrete",
            Self::Bond => {
                "a product whose approval states a stronger bond, deeper or thicker studs, or more of them"
            }
            Self::BondSustained => {
                "a product with a stated factor for lasting load, less torque, or lower nuts that keep the preload off the resin"
            }
            Self::Splitting => "a wider block, or a product with a smaller splitting distance",
            Self::ShearLever => "a smaller gap under the plate, grout, or thicker studs",
            Self::PryOut => "deeper studs or a stronger bond",
            Self::Edge => "a wider block or a smaller circle",
        }
    }

    /// Why it need not be looked at by a code, where it is not.
    pub const fn spared(self, code: Code) -> &'static str {
        match (self, code) {
            (Self::BondSustained, _) => "not here: the preload closes between two nuts",
            (Self::Splitting, Code::Eurocode) => "not here: edges are far, or the bars bear it",
            (Self::Splitting, Code::Aci) => {
                "no strength of its own: 17.9 keeps distances, ψ_cp,N and ψ_cp,Na lower what is near an edge"
            }
            (Self::ShearLever, Code::Eurocode) => "not here: no free length",
            (Self::ShearLever, Code::Aci) => {
                "not here: no free length, or grout, for which 17.7.1.2.1 takes 0.8 of the steel"
            }
            (Self::Edge, _) => "not here: every edge is far",
            _ => "not here",
        }
    }

    /// Whether it is a failure of steel.
    pub const fn is_steel(self) -> bool {
        matches!(self, Self::Steel | Self::ShearSteel | Self::ShearLever)
    }

    /// Whether it is a failure in tension.
    pub const fn is_tension(self) -> bool {
        matches!(
            self,
            Self::Steel | Self::Cone | Self::Bond | Self::BondSustained | Self::Splitting
        )
    }
}

/// Resistance against one way of failing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    /// The way.
    pub mode: Mode,
    /// Characteristic (EN) or nominal (ACI) value.
    pub characteristic: Force,
    /// Design value.
    pub design: Force,
}

/// Resistances, written as `{mode}_characteristic_kn` and `{mode}_design_kn`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Strengths(pub Vec<Strength>);

impl Strengths {
    /// The resistance against one way of failing.
    pub fn of(&self, mode: Mode) -> Option<&Strength> {
        self.0.iter().find(|strength| strength.mode == mode)
    }

    /// Design value against one way of failing; nothing where it does not apply.
    pub fn design(&self, mode: Mode) -> Force {
        self.of(mode)
            .map_or(newton::new(0.0), |strength| strength.design)
    }

    /// Adds one with a divisor of the characteristic value.
    pub fn put(&mut self, mode: Mode, characteristic: Force, partial_factor: f64) {
        self.0.push(Strength {
            mode,
            characteristic,
            design: characteristic / partial_factor,
        });
    }
}

impl Serialize for Strengths {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(2 * self.0.len()))?;
        for strength in &self.0 {
            map.serialize_entry(
                &format!("{}_characteristic_kn", strength.mode.key()),
                &kilonewton::get(strength.characteristic),
            )?;
            map.serialize_entry(
                &format!("{}_design_kn", strength.mode.key()),
                &kilonewton::get(strength.design),
            )?;
        }
        map.end()
    }
}

/// Resistances by one code.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct CodeResistances {
    /// One stud at its place in the block.
    pub single: Strengths,
    /// All studs together, pulled evenly.
    pub group: Strengths,
    /// The studs that the worst action pulls, with its eccentricity.
    pub pulled: Strengths,
}

/// Resistances by both codes; those of the chosen one stand in front.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Resistances {
    /// One stud at its place in the block, by the chosen code.
    pub single: Strengths,
    /// All studs together, pulled evenly, by the chosen code.
    pub group: Strengths,
    /// By EN 1992-4.
    pub eurocode: CodeResistances,
    /// By ACI 318-19; characteristic is the nominal strength there.
    pub aci: CodeResistances,
}
