//! What both codes ask about a stud and its concrete, gathered once.

use crate::brief::Brief;
use crate::rules::threads::{self, StudSteel, Thread};
use crate::site_plan::Code;
use crate::site_plan::block::Reinforcement;
use crate::source::Source;
use crate::stages::anchors::layout::Group;
use crate::stages::anchors::seat::Seat;
use crate::stages::block::{Block, specified};
use crate::units::{Length, Pressure, millimetre};

/// Share of the code's least bond that counts under a lasting pull, ACI 318-19 Table 17.6.5.2.5.
const LEAST_BOND_LASTING_FACTOR: f64 = 0.4;

/// Where the resistance to a preload that lasts comes from: the codes' clauses are written for sustained actions, and that a
/// preload, which fades, counts as one is a judgement on the safe side.
pub fn resistance_to_lasting(code: Code) -> Source {
    match code {
        Code::Eurocode => Source::from_memory(
            "EN 1992-4",
            "2018",
            "7.2.1.6 (2), written for sustained actions; that a preload counts as one is judgement",
        ),
        Code::Aci => Source::from_memory(
            "ACI 318",
            "19",
            "17.5.2.2, written for sustained tension; that a preload counts as one is judgement",
        ),
    }
}

/// A stud and its concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Situation<'a> {
    /// Complete inputs.
    pub brief: &'a Brief,
    /// Size.
    pub thread: Thread,
    /// Steel.
    pub steel: StudSteel,
    /// Where the preload goes.
    pub seat: Seat,
    /// Embedment.
    pub embedment: Length,
    /// Characteristic cylinder strength at 28 days.
    pub strength: Pressure,
    /// The strength that the concrete is specified by, f'_c.
    pub specified: Pressure,
    /// Whether the concrete may be cracked.
    pub cracked: bool,
    /// Bond strength in that state.
    pub bond: Pressure,
    /// Bond strength in uncracked concrete, for distances.
    pub bond_uncracked: Pressure,
    /// What is left of it under a lasting pull where only the code's least is known.
    pub lasting_factor: f64,
    /// Whether bars run through the block.
    pub reinforced: bool,
    /// Whether bars run along its sides, where an edge would break off.
    pub caged: bool,
    /// Elastic modulus of the concrete.
    pub concrete_modulus: Pressure,
}

impl<'a> Situation<'a> {
    /// From brief and block.
    pub fn of(brief: &'a Brief, block: &Block) -> Self {
        let anchors = &brief.anchors;
        let cracked = anchors.cracked.value;
        let product = &anchors.product;
        Self {
            brief,
            thread: anchors.thread(),
            steel: threads::steel(anchors.strength_class.value, anchors.size.value),
            seat: Seat::of(brief),
            embedment: anchors.embedment.value,
            strength: block.strength,
            specified: specified(brief.block.concrete.value),
            cracked,
            bond: if cracked {
                product.bond_cracked.value
            } else {
                product.bond_uncracked.value
            },
            bond_uncracked: product.bond_uncracked.value,
            lasting_factor: if product.known() {
                1.0
            } else {
                LEAST_BOND_LASTING_FACTOR
            },
            reinforced: brief.block.reinforcement.value != Reinforcement::Plain,
            caged: brief.block.reinforcement.value == Reinforcement::Cage,
            concrete_modulus: block.elastic_modulus,
        }
    }

    /// Whether anything says how far the nuts may be tightened where that pulls on the resin.
    pub fn may_be_tightened(&self) -> bool {
        tightening_is_known(self.brief)
    }

    /// Open gap under the plate: none where it lies on grout or concrete.
    pub fn open_gap(&self) -> Option<Length> {
        let gap = self.brief.pier.gap.value;
        (self.seat != Seat::Bedded && millimetre::get(gap) > 0.0).then_some(gap)
    }

    /// Length of stud that bends in shear by EN 1992-4: an open gap, or a bed of grout thicker than half a diameter. The
    /// rule that would spare a thicker bed excludes plates with a moment, and a pier has one.
    pub fn lever_gap(&self) -> Option<Length> {
        let gap = self.brief.pier.gap.value;
        let thick = millimetre::get(gap) > 0.5 * millimetre::get(self.thread.diameter);
        self.open_gap().or(thick.then_some(gap))
    }
}

/// Whether a product's bond strength, its largest torque, or a torque is known.
pub fn tightening_is_known(brief: &Brief) -> bool {
    brief.anchors.product.known()
        || brief.anchors.max_torque.is_some()
        || brief.anchors.torque.is_some()
}

/// Which studs a resistance is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// One stud at its place in the block.
    Single,
    /// All studs, pulled evenly.
    Group,
    /// The studs that the worst action pulls.
    Pulled,
}

impl Scope {
    /// In words, at the start of a title.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Single => "One stud",
            Self::Group => "All studs",
            Self::Pulled => "Pulled studs",
        }
    }
}

/// Studs that act together, and how far their resultant lies from their middle.
#[derive(Debug, Clone, PartialEq)]
pub struct Acting {
    /// Which.
    pub scope: Scope,
    /// The studs.
    pub group: Group,
    /// Distance of the resultant from the middle, along x and along y.
    pub eccentricity: [Length; 2],
    /// Lever between their pull and the plate's pressure on the concrete; none where it stands clear of it.
    pub lever: Option<Length>,
    /// How far beside their middle a shear acts.
    pub beside: Length,
}

impl Acting {
    /// Pulled and pushed evenly.
    pub fn evenly(scope: Scope, group: Group) -> Self {
        Self {
            scope,
            group,
            eccentricity: [millimetre::new(0.0); 2],
            lever: None,
            beside: millimetre::new(0.0),
        }
    }

    /// Pushed so far beside their middle.
    pub fn pushed(self, beside: Length) -> Self {
        Self { beside, ..self }
    }

    /// Number of studs.
    pub fn count(&self) -> usize {
        self.group.studs.len().max(1)
    }
}

/// The stable name of a working: code and quantity are fixed, the scope is not.
macro_rules! named {
    ($code:literal, $scope:expr, $name:literal) => {
        match $scope {
            $crate::stages::anchors::situation::Scope::Single => {
                concat!("anchors.", $code, ".single.", $name)
            }
            $crate::stages::anchors::situation::Scope::Group => {
                concat!("anchors.", $code, ".group.", $name)
            }
            $crate::stages::anchors::situation::Scope::Pulled => {
                concat!("anchors.", $code, ".pulled.", $name)
            }
        }
    };
}

pub(super) use named;
