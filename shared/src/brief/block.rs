//! Footing, decided.

use crate::brief::{Ask, Given, Taken, taken, usual};
use crate::path;
use crate::rules::aci_318_19::exposure as aci_exposure;
use crate::rules::en_206_1_2000::exposure;
use crate::site_plan::block::{Cement, Concrete, FrostRemedy, Mix, Reinforcement, RockSurface};
use crate::site_plan::site::Soil;
use crate::site_plan::{Block as Said, HOUSE, SitePlan};
use crate::stock::{Stock, goods};
use crate::units::{Force, Length, Mass};

/// Complete answers about the block. A size that is `None` is left to the block stage.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// Along x; none: size it.
    pub length: Option<Length>,
    /// Along y; none: size it.
    pub width: Option<Length>,
    /// Base below ground; none: size it.
    pub depth: Option<Length>,
    /// Top above ground.
    pub upstand: Given<Length>,
    /// Side contact from this depth; none: from the surface.
    pub side_contact_from: Option<Length>,
    /// Side contact to this depth; none: to the base.
    pub side_contact_to: Option<Length>,
    /// Concrete.
    pub concrete: Given<Concrete>,
    /// Cement.
    pub cement: Given<Cement>,
    /// Delivery.
    pub mix: Given<Mix>,
    /// Steel.
    pub reinforcement: Given<Reinforcement>,
    /// Whether rock under the base is washed clean before the pour.
    pub rock_washed: Given<bool>,
    /// What is done against frost at its sides; none: chosen where it is needed.
    pub frost_remedy: Option<FrostRemedy>,
    /// Dowels into rock, as far as they were said.
    pub dowels: SaidDowels,
    /// Number of ducts.
    pub duct_count: Given<f64>,
    /// Inside diameter of a duct.
    pub duct_diameter: Given<Length>,
    /// One bag of dry concrete.
    pub bag: Given<Mass>,
}

/// What was said of the dowels; the block stage decides the rest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SaidDowels {
    /// How many; none: chosen where they are needed.
    pub count: Option<u32>,
    /// Diameter of a bar.
    pub diameter: Option<Length>,
    /// Length in the rock.
    pub length: Option<Length>,
    /// Pull that every one of them held.
    pub proof: Option<Force>,
}

/// Height of the block above the ground, where none was said, m.
pub(super) fn upstand_m(stock: Stock) -> f64 {
    stock.either(0.05, 0.0508)
}

/// Decides the block's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Block {
    let (said, units) = (&plan.block, ask.units);
    Block {
        length: Said::length_m.said(plan),
        width: Said::width_m.said(plan),
        depth: Said::depth_m.said(plan),
        upstand: taken!(ask, Said::upstand_m, upstand_m(ask.stock)),
        side_contact_from: Said::side_contact_from_m.said(plan),
        side_contact_to: Said::side_contact_to_m.said(plan),
        concrete: concrete(plan, ask),
        cement: usual!(ask, Said::cement),
        mix: ask.choice(
            Said::mix,
            Mix::Ready,
            Taken::new(
                units.either(
                    "a cubic metre by hand is a hard day for two",
                    "a cubic yard by hand is a hard day for two",
                ),
                "what to order",
                HOUSE,
            ),
        ),
        reinforcement: usual!(ask, Said::reinforcement),
        rock_washed: rock_washed(plan, ask),
        frost_remedy: said.frost_remedy,
        dowels: SaidDowels {
            count: said.dowel_count,
            diameter: Said::dowel_diameter_mm.said(plan),
            length: Said::dowel_length_mm.said(plan),
            proof: Said::dowel_proof_kn.said(plan),
        },
        duct_count: usual!(ask, Said::duct_count),
        duct_diameter: taken!(
            ask,
            Said::duct_diameter_mm,
            goods::size("duct-bore", ask.stock)
        ),
        bag: taken!(ask, Said::bag_mass_kg, goods::size("bag", ask.stock)),
    }
}

/// Rock that nobody promised to wash is judged with dirt on it; noted where the plan speaks of rock.
fn rock_washed(plan: &SitePlan, ask: &mut Ask) -> Given<bool> {
    if let Some(surface) = plan.block.rock_surface {
        return Given::said(surface == RockSurface::Washed);
    }
    let is_rock = matches!(plan.site.soil, Some(Soil::Rock | Soil::WeatheredRock));
    if is_rock || plan.site.rock_depth_m.is_some() {
        ask.note_text(
            path!(block.rock_surface),
            RockSurface::AsDug.key().to_owned(),
            taken!(Said::rock_surface),
        );
    }
    Given::assumed(false)
}

/// A class left open is the one that the exposure table asks for, unless it is mixed where only a plainer one is reached.
fn concrete(plan: &SitePlan, ask: &mut Ask) -> Given<Concrete> {
    let delivered = plan.block.mix.is_none_or(|mix| mix == Mix::Ready);
    let (class, why, source) = if delivered {
        (
            ask.stock.either(Concrete::C30, Concrete::Psi4500),
            "what the exposure table asks of concrete that rain and frost reach",
            ask.stock.either(exposure::SOURCE, aci_exposure::SOURCE),
        )
    } else {
        (
            ask.stock.either(Concrete::C25, Concrete::Psi4000),
            "what a careful mix on site or good bags reach without tests",
            HOUSE,
        )
    };
    let taken = Taken::new(why, "resistance of the studs, day of drilling", source);
    ask.choice(Said::concrete, class, taken)
}
