//! Sentences about the block's size.

use crate::brief::Brief;
use crate::figure::{Metre, PerCent, Unit};
use crate::units::metre;

use super::outline::{METRE_CUBE_M, Outline, contact_ratio};

/// Why a side is as long as it is, and by how much the block had to grow where it cannot go deep.
pub(super) fn side(brief: &Brief, outline: &Outline, governing: &[&str], left: &[&str]) -> String {
    if !left.is_empty() {
        return format!(
            "Sized as far as it helps within the pit's limits and the stated sides; that is not enough for {}.",
            listed(left)
        );
    }
    let mut said = format!("Sized: the least that gives {}.", listed(governing));
    let wider = metre::get(outline.shorter()) - METRE_CUBE_M;
    if metre::get(outline.depth) < METRE_CUBE_M
        && wider > 0.0
        && governing.iter().any(|need| need.contains("rocking"))
    {
        said.push_str(&format!(
            " The base lies only {} deep; to rock no more than a metre cube would in the same ground, the block is {} wider than \
             {} (closed form of Pais and Kausel, contact over {} of the depth).",
            brief.units.say( outline.depth, Metre),
            brief.units.say(wider, Unit::Metre),
            brief.units.either("a metre", "that"),
            brief.units.say( 100.0 * contact_ratio(brief, outline.depth), PerCent),
        ));
    }
    said
}

/// Words joined as a person joins them.
pub(super) fn listed(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
