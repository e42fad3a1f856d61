//! The block's size where the person left it open: as small as every need allows, in steps of 50 mm or 2 in, within the pit.

use crate::brief::Brief;
use crate::field::Path;
use crate::figure::{Metre, One, Unit};
use crate::notes::{AssumedValue, Assumption, Notes, Working};
use crate::path;
use crate::rules::pais_kausel_1988;
use crate::source::Source;
use crate::stages::ground::Ground;
use crate::stages::loads::Loads;
use crate::stages::room::{DepthLimit, Room};
use crate::stock::Stock;
use crate::units::customary::INCH_MM;
use crate::units::{Length, kilogram, metre, millimetre};

use super::checks;
use super::chosen;
use super::needs::{TONNE_KG, edge_given, edge_wanted, holes_need, plate_needs};
use super::outline::{METRE_CUBE_M, Outline, contact_ratio};
use super::{actions, wording};

/// Most steps looked at: from nothing to the longest block that a plan may hold.
const MOST_STEPS: usize = 200;
/// Longest side that a plan may hold, m.
const LONGEST_M: f64 = 10.0;

/// Two needs in words.
const PLATE: &str = "room for the base plate";
const EDGE: &str = "the studs' distance from the block's edge";

/// Sizes the block, or takes it as stated.
pub(super) fn choose(
    brief: &Brief,
    ground: &Ground,
    room: &Room,
    loads: &Loads,
    notes: &mut Notes,
) -> Outline {
    let depth = brief
        .block
        .depth
        .unwrap_or_else(|| depth(brief, ground, room, notes));
    let [most_long, most_wide] = room.at(depth);
    let stock = brief.stock.value;
    let most = (down(stock, most_long), down(stock, most_wide));
    let start = start(brief);
    let mut outline = Outline {
        length: brief.block.length.unwrap_or(less(start, most.0)),
        width: brief.block.width.unwrap_or(less(start, most.1)),
        depth,
        upstand: brief.block.upstand.value,
    };
    let beyond_reach = beyond_reach(brief, ground, loads, outline, most);
    let mut governing = vec![PLATE];
    for _ in 0..MOST_STEPS {
        let mut unmet = unmet(brief, ground, loads, &outline);
        unmet.retain(|need| !beyond_reach.contains(need));
        if unmet.is_empty() || !grow(brief, &mut outline, most) {
            break;
        }
        governing = unmet;
    }
    say_sides(brief, ground, loads, &outline, &governing, notes);
    chosen::sides(brief, &outline, most, &governing, notes);
    outline
}

/// What fits on the block or not, and is not helped by length where the width is short: not chased where even the largest block
/// does not give it.
fn beyond_reach(
    brief: &Brief,
    ground: &Ground,
    loads: &Loads,
    start: Outline,
    most: (Length, Length),
) -> Vec<&'static str> {
    let largest = Outline {
        length: brief.block.length.unwrap_or(most.0),
        width: brief.block.width.unwrap_or(most.1),
        ..start
    };
    unmet(brief, ground, loads, &largest)
        .into_iter()
        .filter(|need| [PLATE, EDGE].contains(need))
        .collect()
}

/// Makes every open side that is not yet at the pit's edge one step larger.
fn grow(brief: &Brief, outline: &mut Outline, most: (Length, Length)) -> bool {
    let stock = brief.stock.value;
    let step = metre::new(stock.step_m());
    let slack = metre::new(1e-6);
    let mut grown = false;
    if brief.block.length.is_none() && outline.length + step <= most.0 + slack {
        outline.length = up(stock, outline.length + step);
        grown = true;
    }
    if brief.block.width.is_none() && outline.width + step <= most.1 + slack {
        outline.width = up(stock, outline.width + step);
        grown = true;
    }
    grown
}

/// What this outline does not yet give, each in words.
fn unmet(brief: &Brief, ground: &Ground, loads: &Loads, outline: &Outline) -> Vec<&'static str> {
    let actions = actions::list(brief, outline, loads);
    let small = 1.0 - 1e-9;
    let mut unmet = Vec::new();
    let mut need = |met: bool, what| {
        if !met {
            unmet.push(what);
        }
    };
    need(
        kilogram::get(outline.mass()) >= TONNE_KG,
        "a tonne of concrete",
    );
    need(
        outline.rocking_ratio(contact_ratio(brief, outline.depth)) >= small,
        "the rocking stiffness of a metre cube",
    );
    need(edge_given(brief, outline) >= edge_wanted(brief), EDGE);
    need(outline.shorter() >= plate_needs(brief), PLATE);
    need(
        checks::carries(brief, ground, outline, &actions),
        "bearing of the ground, by the lowest value in the tables",
    );
    need(
        checks::stands(outline, &actions),
        "resisting a person, a ladder and the storm's gust",
    );
    need(
        checks::stays_put(brief, outline, &actions),
        "staying put when pushed sideways",
    );
    unmet
}

/// The least side to begin with.
fn start(brief: &Brief) -> Length {
    up(brief.stock.value, plate_needs(brief))
}

fn depth(brief: &Brief, ground: &Ground, room: &Room, notes: &mut Notes) -> Length {
    let frost = ground.frost_base_depth;
    let holes = holes_need(brief) - brief.block.upstand.value;
    let needs = [
        (
            metre::new(METRE_CUBE_M),
            brief.units.either(
                "the trade digs at least a metre where it can",
                "the trade digs at least that deep where it can",
            ),
        ),
        (frost, "the base goes below the frost"),
        (holes, "the studs' holes need the thickness"),
    ];
    let (wanted, mut why) =
        needs.into_iter().fold(
            needs[0],
            |most, need| if need.0 > most.0 { need } else { most },
        );
    let stock = brief.stock.value;
    let mut found = up(stock, wanted);
    if found > room.depth {
        found = more(
            down(stock, room.depth),
            less(
                room.depth,
                stock.either(metre::new(0.1), millimetre::new(4.0 * INCH_MM)),
            ),
        );
        why = limit(room.limited_by);
    }
    chosen::depth(
        stock,
        [needs[0].0, frost, holes, room.depth],
        found,
        why,
        notes,
    );
    notes.assumptions.push(sized(
        path!(block.depth_m),
        found,
        format!("Sized: {why}."),
        "stiffness, mass, frost, and how wide the block has to be: the shallower, the wider",
    ));
    found
}

/// Why it goes no deeper.
fn limit(limited_by: DepthLimit) -> &'static str {
    match limited_by {
        DepthLimit::Stated => "this is as deep as can be dug here",
        DepthLimit::Assumed => "this is as deep as one person is assumed to dig",
        DepthLimit::Water => {
            "the base stays above the groundwater, since a pit under water cannot be dug dry by hand"
        }
        DepthLimit::Rock => "the base rests on the rock",
        DepthLimit::Batter => "deeper, the sloped sides would run out of room",
    }
}

fn say_sides(
    brief: &Brief,
    ground: &Ground,
    loads: &Loads,
    outline: &Outline,
    governing: &[&str],
    notes: &mut Notes,
) {
    let ratio = outline.rocking_ratio(contact_ratio(brief, outline.depth));
    notes.working(
        Working::new(
            "block.rocking_ratio",
            "Rocking stiffness over that of a metre cube in the same ground",
            "K/K₁ = [B³ (3.2 L/B + 0.8) η(D/B, L/B)] / the same for B = L = 0.5 m, D = 1 m",
            pais_kausel_1988::SOURCE,
        )
        .with("2B", outline.shorter(), Metre)
        .with("2L", outline.longer(), Metre)
        .with("D", outline.depth, Metre)
        .gives("K/K₁", ratio, One),
    );
    let left = unmet(brief, ground, loads, outline);
    for (field, given, value) in [
        (path!(block.length_m), brief.block.length, outline.length),
        (path!(block.width_m), brief.block.width, outline.width),
    ] {
        if given.is_none() {
            let why = wording::side(brief, outline, governing, &left);
            notes.assumptions.push(sized(
                field,
                value,
                why,
                "stiffness, mass, and concrete to order",
            ));
        }
    }
}

fn sized(field: Path, value: Length, why: String, effect: &str) -> Assumption {
    Assumption {
        field,
        value: AssumedValue::Number((metre::get(value) * 1e7).round() / 1e7),
        unit: Unit::Metre,
        why,
        effect: effect.into(),
        source: Source::judgement("least size that meets every need, in round steps of a tape"),
    }
}

/// Rounded up to the step.
fn up(stock: Stock, value: Length) -> Length {
    steps(stock, (metre::get(value) / stock.step_m() - 1e-6).ceil())
}

/// Rounded down to the step.
fn down(stock: Stock, value: Length) -> Length {
    steps(stock, (metre::get(value) / stock.step_m() + 1e-6).floor())
}

/// So many steps as a length, without the dust that adding leaves.
fn steps(stock: Stock, number: f64) -> Length {
    let most = (LONGEST_M / stock.step_m() + 1e-6).floor();
    metre::new(stock.steps_m(number.clamp(1.0, most)))
}

fn less(a: Length, b: Length) -> Length {
    if a < b { a } else { b }
}

fn more(a: Length, b: Length) -> Length {
    if a > b { a } else { b }
}
