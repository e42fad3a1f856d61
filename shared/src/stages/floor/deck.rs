//! A deck's posts: where they stand, and what lies on them.

mod framing;
mod neighbours;

use crate::brief::{Brief, Origin};
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption, Notes};
use crate::path;
use crate::site_plan::floor::{FloorKind, Joists};
use crate::source::Source;
use crate::stages::floor::places::to_block;
use crate::stages::floor::{Floor, Footprint};
use crate::units::metre;

pub use framing::{Bearer, Framing};

/// Posts stand at least so far from the block's sides, clear of the ground that holds it.
const CLEAR_OF_BLOCK_M: f64 = 0.3;
/// Posts stand so far inside the deck's edge.
const EDGE_M: f64 = 0.1;
/// Longest span of usual joists and beams between posts.
const LONGEST_SPAN_M: f64 = 1.8;
/// A line beside the block and one at the edge nearer together than this are one.
const NEAR_EDGE_M: f64 = 0.6;
/// Most lines of posts each way that are laid out.
const MOST_LINES: usize = 12;
/// Posts nearer together than this are one.
const SAME_POST_M: f64 = 0.02;

/// Posts and what lies on them.
#[derive(Debug, Clone, PartialEq)]
pub struct Posts {
    /// Places.
    pub places: Vec<[f64; 2]>,
    /// Stated or laid out here.
    pub origin: Origin,
    /// Bearers and joists, where the posts stand in lines.
    pub framing: Option<Framing>,
}

/// Finds the posts of a deck: the stated ones, or a layout clear of the block. None for other floors.
pub fn posts(brief: &Brief, block_half_m: [f64; 2], notes: &mut Notes) -> Posts {
    let floor = &brief.floor;
    if floor.kind.value != FloorKind::Deck {
        return Posts {
            places: Vec::new(),
            origin: Origin::Assumed,
            framing: None,
        };
    }
    if !floor.supports.is_empty() {
        let places = distinct(&floor.supports);
        return Posts {
            framing: framing(brief, &places, notes),
            places,
            origin: Origin::Said,
        };
    }
    let half = [floor.length.value, floor.width.value].map(|side| 0.5 * metre::get(side));
    let [xs, ys] = [
        lines(half[0], block_half_m[0]),
        lines(half[1], block_half_m[1]),
    ];
    let places: Vec<[f64; 2]> = ys
        .iter()
        .flat_map(|&y| xs.iter().map(move |&x| [x, y]))
        .collect();
    notes.assumptions.push(Assumption {
        field: path!(floor.supports),
        value: AssumedValue::Text(format!("{} posts in {} lines of {}", places.len(), ys.len(), xs.len())),
        unit: Unit::One,
        why: format!("laid out {} clear of the block, as joists usually span", brief.units.about(CLEAR_OF_BLOCK_M, Unit::Metre)),
        effect: "where each weight on the deck reaches the ground; posts farther from the block tilt it less".into(),
        source: Source::judgement("layout of posts"),
    });
    Posts {
        origin: Origin::Assumed,
        framing: framing(brief, &places, notes),
        places,
    }
}

/// Bearers and joists as they were said to run; posts that stand in a whole grid share alike either way.
fn framing(brief: &Brief, posts: &[[f64; 2]], notes: &mut Notes) -> Option<Framing> {
    let said = brief.floor.joists;
    let found = match said {
        Some(joists) => Framing::of(posts, joists),
        None => Framing::of(posts, Joists::X).filter(|framing| framing.is_grid(posts)),
    };
    let (value, why) = match (&found, said) {
        (Some(_), Some(_)) => return found,
        (Some(_), None) => (
            "either way",
            "in a full grid the posts share a weight equally, whichever way the joists run",
        ),
        (None, Some(_)) => (
            "shared by the posts round it",
            "the outer lines of posts do not reach along the whole deck, so that these joists have no bearers there",
        ),
        (None, None) => (
            "shared by the posts round it",
            "how the joists run is not said, and the posts do not form a full grid",
        ),
    };
    notes.assumptions.push(Assumption {
        field: path!(floor.joists),
        value: AssumedValue::Text(value.into()),
        unit: Unit::One,
        why: why.into(),
        effect: "which posts carry a weight that stands between them".into(),
        source: Source::judgement("natural neighbours where no joists are known"),
    });
    found
}

/// Lines of posts across one direction: at the edges, beside the block where that is far from the edge, and between where
/// the span would be long; to the next centimetre outwards.
fn lines(half: f64, block_half: f64) -> Vec<f64> {
    let beside = block_half + CLEAR_OF_BLOCK_M;
    let edge = (half - EDGE_M).max(beside);
    let outer = edge - beside;
    let right: Vec<f64> = if outer < NEAR_EDGE_M {
        vec![edge]
    } else {
        let spans = ((outer / LONGEST_SPAN_M).ceil() as usize).clamp(1, MOST_LINES / 2 - 1);
        (0..=spans)
            .map(|i| beside + outer * i as f64 / spans as f64)
            .collect()
    };
    let right: Vec<f64> = right
        .into_iter()
        .map(|x| (x * 100.0 - 1e-6).ceil() / 100.0)
        .collect();
    right
        .iter()
        .rev()
        .map(|x| -x)
        .chain(right.iter().copied())
        .collect()
}

fn distinct(posts: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut places: Vec<[f64; 2]> = Vec::new();
    for &post in posts {
        if places
            .iter()
            .all(|other| distance(*other, post) > SAME_POST_M)
        {
            places.push(post);
        }
    }
    places
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// Shares of the posts for a weight on the deck, or none on a block that the deck goes round: by joists and bearers, or by
/// the posts round the place.
pub fn footprints(floor: &Floor, x: f64, y: f64) -> Option<Vec<Footprint>> {
    if !floor.passes_over_block() && to_block(floor.block_half_m, [x, y]) <= 0.0 {
        return None;
    }
    match &floor.framing {
        _ if floor.supports.is_empty() => None,
        Some(framing) => Some(framing.shares([x, y])),
        None => Some(neighbours::shares(&floor.supports, [x, y])),
    }
}
