//! The lines of calculation behind the block's length, width and depth, where the person left them open.

use crate::brief::Brief;
use crate::figure::{Kilogram, Metre, One, Unit};
use crate::notes::{Notes, Working};
use crate::source::Source;
use crate::stock::Stock;
use crate::units::{Length, metre};

use super::needs::{TONNE_KG, edge_given, edge_wanted, plate_needs};
use super::outline::{Outline, contact_ratio};
use super::wording;

/// Where the way to size comes from; each need has its own source at its check.
const SIZED: Source = Source::judgement(
    "least size that meets every need; each need's own source stands at its check",
);

/// The depth: the largest of what the trade, frost and holes ask for, within the pit. `asked` holds these three and the pit's depth.
pub(super) fn depth(stock: Stock, asked: [Length; 4], found: Length, why: &str, notes: &mut Notes) {
    let [trade, frost, holes, pit] = asked.map(metre::get);
    let formula = "D = max(D_trade, D_frost, D_holes), up to the next step s, at most D_pit";
    notes.working(
        Working::new(
            "block.depth",
            format!("Depth of the block's base: {why}"),
            formula,
            SIZED,
        )
        .with("D_trade", trade, Unit::Metre)
        .with("D_frost", frost.max(0.0), Unit::Metre)
        .with("D_holes", holes.max(0.0), Unit::Metre)
        .with("D_pit", pit, Unit::Metre)
        .with("s", stock.step_m(), Unit::Metre)
        .gives("D", found, Metre),
    );
}

/// Length and width: both grow in steps until every need is met or the pit's edge is reached.
pub(super) fn sides(
    brief: &Brief,
    outline: &Outline,
    most: (Length, Length),
    governing: &[&str],
    notes: &mut Notes,
) {
    let needs = wording::listed(governing);
    if brief.block.length.is_none() {
        let title = format!("Block from east to west; the last need to be met: {needs}");
        notes.working(side("block.length", title, brief, outline, most.0).gives(
            "a",
            outline.length,
            Metre,
        ));
    }
    if brief.block.width.is_none() {
        let title = format!("Block from north to south; the last need to be met: {needs}");
        notes.working(side("block.width", title, brief, outline, most.1).gives(
            "a",
            outline.width,
            Metre,
        ));
    }
}

fn side(id: &'static str, title: String, brief: &Brief, outline: &Outline, pit: Length) -> Working {
    let formula = "a = the least step s, at most a_pit, with a ≥ a_plate, c ≥ c_cone, m ≥ m₀, K/K₁ ≥ 1, \
                   and pressure, tilting and sliding held";
    Working::new(id, title, formula, SIZED)
        .with("s", brief.stock.value.step_m(), Unit::Metre)
        .with("a_pit", pit, Metre)
        .with("a_plate", plate_needs(brief), Metre)
        .with("c", edge_given(brief, outline), Metre)
        .with("c_cone", edge_wanted(brief), Metre)
        .with("m", outline.mass(), Kilogram)
        .with("m₀", TONNE_KG, Unit::Kilogram)
        .with(
            "K/K₁",
            outline.rocking_ratio(contact_ratio(brief, outline.depth)),
            One,
        )
}

#[cfg(test)]
mod tests {
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;
    use crate::units::metre;

    #[test]
    fn a_size_that_was_chosen_can_be_followed() {
        let mut plan = SitePlan::unknown();
        let design = design_plan(&plan, &NoShelf).unwrap();
        let value = |id: &str| {
            design
                .workings
                .iter()
                .find(|working| working.id == id)
                .map(|working| working.value)
        };
        assert_eq!(value("block.length"), Some(metre::get(design.block.length)));
        assert_eq!(value("block.width"), Some(metre::get(design.block.width)));
        assert_eq!(value("block.depth"), Some(metre::get(design.block.depth)));
        plan.block.length_m = Some(1.4);
        let design = design_plan(&plan, &NoShelf).unwrap();
        assert!(
            design
                .workings
                .iter()
                .all(|working| working.id != "block.length")
        );
    }
}
