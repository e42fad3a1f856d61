//! Excavation, decided.

use crate::brief::{Ask, Given, Taken, taken, usual};
use crate::site_plan::excavation::{Method, Sides};
use crate::site_plan::{Excavation as Said, SitePlan};
use crate::source::Source;
use crate::units::{Length, Volume};

/// Complete answers about the pit.
#[derive(Debug, Clone, PartialEq)]
pub struct Excavation {
    /// Deepest that can be dug.
    pub max_depth: Given<Length>,
    /// Longest pit there is room for.
    pub max_length: Given<Length>,
    /// Widest pit there is room for.
    pub max_width: Given<Length>,
    /// Room to work round a shuttered block.
    pub working_space: Given<Length>,
    /// Volume of a barrow load.
    pub barrow: Given<Volume>,
    /// Volume of a skip.
    pub skip: Given<Volume>,
    /// Who digs.
    pub method: Given<Method>,
    /// Sides of the pit.
    pub sides: Given<Sides>,
}

/// Decides the pit's unknowns.
pub fn resolve(plan: &SitePlan, ask: &mut Ask) -> Excavation {
    let [max_length, max_width] = room(plan, ask);
    Excavation {
        max_depth: max_depth(plan, ask),
        max_length,
        max_width,
        working_space: working_space(ask),
        barrow: barrow(ask),
        skip: skip(ask),
        method: method(ask),
        sides: sides(ask),
    }
}

fn max_depth(plan: &SitePlan, ask: &mut Ask) -> Given<Length> {
    let usual = ask.stock.either(1.2, 1.2192);
    taken!(
        ask,
        Said::max_depth_m,
        plan.block.depth_m.map_or(usual, |block| block.max(usual))
    )
}

/// Battered sides take several metres at ground level; vertical ones no more than the block.
fn room(plan: &SitePlan, ask: &mut Ask) -> [Given<Length>; 2] {
    let said = &plan.excavation;
    let (value, why): (f64, _) = match said.sides {
        Some(Sides::Sloped) => (
            ask.stock.either(5.0, 4.8768),
            "sloped sides need a clearing of several strides",
        ),
        _ => (ask.stock.either(2.0, 1.9812), "room in most gardens"),
    };
    let source = Source::judgement("room on the site");
    // A block that was stated larger has its room: nobody states one that does not fit.
    let around = if said.sides == Some(Sides::Sloped) {
        4.0
    } else {
        0.0
    };
    let mut side = |row, block: Option<f64>, effect: &str| {
        let value = block.map_or(value, |block| value.max(block + around));
        ask.number(row, value, Taken::new(why, effect, source))
    };
    [
        side(
            Said::max_length_m,
            plan.block.length_m,
            "how long the block may be",
        ),
        side(
            Said::max_width_m,
            plan.block.width_m,
            "how wide the block may be",
        ),
    ]
}

fn working_space(ask: &mut Ask) -> Given<Length> {
    usual!(ask, Said::working_space_m)
}

fn barrow(ask: &mut Ask) -> Given<Volume> {
    // 65 litres, or two cubic feet.
    let load = ask.stock.either(0.065, 0.056_633_693_184);
    taken!(ask, Said::barrow_m3, load)
}

fn skip(ask: &mut Ask) -> Given<Volume> {
    // 4.5 cubic metres, or six cubic yards.
    let size = ask.stock.either(4.5, 4.587_329_147_9);
    taken!(ask, Said::skip_m3, size)
}

fn method(ask: &mut Ask) -> Given<Method> {
    usual!(ask, Said::method)
}

fn sides(ask: &mut Ask) -> Given<Sides> {
    usual!(ask, Said::sides)
}
