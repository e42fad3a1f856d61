//! Excavation, decided.

use crate::brief::{Ask, Given, Taken};
use crate::figure::Unit;
use crate::site_plan::SitePlan;
use crate::site_plan::excavation::{Method, Sides};
use crate::source::Source;
use crate::units::{Length, Volume, cubic_metre, metre};

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
    let said = &plan.excavation;
    let mut length = |field, said, value, why: &str, effect: &str| {
        ask.number(field, Unit::Metre, said, metre::new, value, Taken::new(why, effect, Source::judgement("house default")))
    };
    let max_depth = length(
        "excavation.max_depth_m",
        said.max_depth_m,
        1.2,
        "what one person digs in a day without shoring",
        "how deep the block may go",
    );
    let max_length = length("excavation.max_length_m", said.max_length_m, 2.0, "room in most gardens", "how long the block may be");
    let max_width = length("excavation.max_width_m", said.max_width_m, 2.0, "room in most gardens", "how wide the block may be");
    let working_space = length(
        "excavation.working_space_m",
        said.working_space_m,
        0.3,
        "room for a form and a person's hands",
        "size of a battered pit and its spoil",
    );
    let barrow = ask.number(
        "excavation.barrow_m3",
        Unit::CubicMetre,
        said.barrow_m3,
        cubic_metre::new,
        0.065,
        Taken::new("a builder's barrow heaped to what one person pushes", "number of loads", Source::common_practice("builder's barrow")),
    );
    let skip = ask.number(
        "excavation.skip_m3",
        Unit::CubicMetre,
        said.skip_m3,
        cubic_metre::new,
        4.5,
        Taken::new("a common size of builder's skip", "number of skips", Source::common_practice("builder's skip")),
    );
    let method = ask.choice(
        "excavation.method",
        said.method,
        Method::Hand,
        Method::key,
        Taken::new("a digger reaches few gardens", "time to dig", Source::judgement("house default")),
    );
    let sides = ask.choice(
        "excavation.sides",
        said.sides,
        Sides::Vertical,
        Sides::key,
        Taken::new(
            "concrete hard against undisturbed ground is stiffest",
            "contact of the ground with the block's sides, and the size of the pit",
            Source::common_practice("poured against undisturbed ground"),
        ),
    );
    Excavation { max_depth, max_length, max_width, working_space, barrow, skip, method, sides }
}
