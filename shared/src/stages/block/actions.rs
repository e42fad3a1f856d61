//! What pushes the block over: the loads at the column's foot, carried down to the centre of the base.

use crate::brief::Brief;
use crate::rules::en_1997_1_2004::uplift;
use crate::site_plan::Code;
use crate::stages::loads::{self, Loads};
use crate::units::{Force, Length, Moment, newton, newton_metre};

use super::outline::Outline;

/// One case.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Case {
    /// In a sentence: "a person who leans on the telescope".
    pub(super) name: &'static str,
    /// Push along the ground.
    pub(super) push: Force,
    /// Its moment about the centre of the base, with whatever hangs beside the axis.
    pub(super) moment: Moment,
    /// Partial factor on both in what must not tip or slide: an accident has none.
    pub(super) factor: f64,
    /// Whether it is over before the ground can give way, so that it is not held against what the ground carries.
    pub(super) passing: bool,
}

/// Weights and cases.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Actions {
    /// Block, column and load.
    pub(super) weight: Force,
    /// Lift of the groundwater on the block.
    pub(super) lift: Force,
    /// The cases.
    pub(super) cases: Vec<Case>,
}

impl Actions {
    /// Nobody touches it and no wind blows.
    pub(super) fn calm(&self) -> Case {
        Case {
            name: "calm",
            push: newton::new(0.0),
            moment: newton_metre::new(0.0),
            factor: 1.0,
            passing: false,
        }
    }

    /// The case with the largest moment, of those that last long enough for the ground to feel them.
    pub(super) fn worst(&self) -> Case {
        self.most(|case| {
            if case.passing {
                0.0
            } else {
                newton_metre::get(case.moment)
            }
        })
    }

    /// The case that tips most, with its factor.
    pub(super) fn overturns_most(&self) -> Case {
        self.most(|case| newton_metre::get(case.moment) * case.factor)
    }

    /// The largest push along the ground, with its factor.
    pub(super) fn push(&self) -> Force {
        let most = self.most(|case| newton::get(case.push) * case.factor);
        most.push * most.factor
    }

    fn most(&self, measure: impl Fn(&Case) -> f64) -> Case {
        self.cases.iter().fold(self.calm(), |most, case| {
            if measure(case) > measure(&most) {
                case.clone()
            } else {
                most
            }
        })
    }
}

/// From the block's base up to the column's foot.
pub(super) fn foot_above_base(brief: &Brief, outline: &Outline) -> Length {
    outline.height() + brief.pier.gap.value
}

/// A load's moment about the centre of the base.
pub(super) fn at_base(moment: Moment, push: Force, foot: Length) -> Moment {
    moment + push * foot
}

/// The weights and the cases for an outline.
pub(super) fn list(brief: &Brief, outline: &Outline, loads: &Loads) -> Actions {
    let foot = foot_above_base(brief, outline);
    let water = brief.site.groundwater_depth.value.unwrap_or(outline.depth);
    Actions {
        weight: outline.weight() + loads.weight(),
        lift: uplift::lift(outline.plan(), outline.depth, water),
        cases: loads
            .all
            .iter()
            .map(|load| Case {
                name: load.title,
                push: load.shear,
                moment: at_base(load.moment, load.shear, foot),
                factor: loads::factor(Code::Eurocode, load.accidental),
                passing: load.id == "knock",
            })
            .collect(),
    }
}
