//! A deck's posts, and how they share a weight.

use crate::brief::{Brief, Origin};
use crate::figure::Unit;
use crate::notes::{AssumedValue, Assumption, Notes};
use crate::site_plan::floor::FloorKind;
use crate::source::Source;
use crate::stages::floor::places::to_block;
use crate::stages::floor::{Floor, Footprint};
use crate::units::metre;

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
/// Two posts within this distance stand on one line.
const SAME_LINE_M: f64 = 0.02;
/// So many of the nearest posts are looked at where no four make a rectangle.
const NEAREST: usize = 8;

/// Four posts at the corners of a rectangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bay {
    /// West and east.
    pub x_m: [f64; 2],
    /// South and north.
    pub y_m: [f64; 2],
}

/// Posts and the bays between them.
#[derive(Debug, Clone, PartialEq)]
pub struct Posts {
    /// Places.
    pub places: Vec<[f64; 2]>,
    /// Stated or laid out here.
    pub origin: Origin,
    /// Rectangles of four posts.
    pub bays: Vec<Bay>,
}

/// Finds the posts of a deck: the stated ones, or a layout clear of the block. None for other floors.
pub fn posts(brief: &Brief, block_half_m: [f64; 2], notes: &mut Notes) -> Posts {
    let floor = &brief.floor;
    if floor.kind.value != FloorKind::Deck {
        return Posts {
            places: Vec::new(),
            origin: Origin::Assumed,
            bays: Vec::new(),
        };
    }
    if !floor.supports.is_empty() {
        let places = distinct(&floor.supports);
        return Posts {
            bays: bays(&places),
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
    let bays = ys
        .windows(2)
        .flat_map(|y| {
            xs.windows(2).map(|x| Bay {
                x_m: [x[0], x[1]],
                y_m: [y[0], y[1]],
            })
        })
        .collect();
    notes.assumptions.push(Assumption {
        field: "floor.supports",
        value: AssumedValue::Text(format!("{} posts in {} lines of {}", places.len(), ys.len(), xs.len())),
        unit: Unit::One,
        why: format!("laid out {} clear of the block, as joists usually span", brief.units.say(CLEAR_OF_BLOCK_M, Unit::Metre)),
        effect: "where each weight on the deck reaches the ground; posts farther from the block tilt it less".into(),
        source: Source::judgement("layout of posts"),
    });
    Posts {
        places,
        origin: Origin::Assumed,
        bays,
    }
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
            .all(|other| distance(*other, post) > SAME_LINE_M)
        {
            places.push(post);
        }
    }
    places
}

/// Rectangles of four posts with no other post inside or on their sides, the smallest first.
fn bays(posts: &[[f64; 2]]) -> Vec<Bay> {
    let stands = |x: f64, y: f64| {
        posts
            .iter()
            .any(|post| same(post[0], x) && same(post[1], y))
    };
    let mut found: Vec<Bay> = Vec::new();
    for low in posts {
        for high in posts
            .iter()
            .filter(|high| high[0] > low[0] + SAME_LINE_M && high[1] > low[1] + SAME_LINE_M)
        {
            let bay = Bay {
                x_m: [low[0], high[0]],
                y_m: [low[1], high[1]],
            };
            if stands(low[0], high[1])
                && stands(high[0], low[1])
                && !posts.iter().any(|post| bay.holds_inside(*post))
            {
                found.push(bay);
            }
        }
    }
    found.sort_by(|a, b| a.area().total_cmp(&b.area()));
    found
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME_LINE_M
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

impl Bay {
    fn area(&self) -> f64 {
        (self.x_m[1] - self.x_m[0]) * (self.y_m[1] - self.y_m[0])
    }

    fn contains(&self, x: f64, y: f64) -> bool {
        (self.x_m[0]..=self.x_m[1]).contains(&x) && (self.y_m[0]..=self.y_m[1]).contains(&y)
    }

    /// Whether a post stands in the bay or on its sides without being one of its corners.
    fn holds_inside(&self, post: [f64; 2]) -> bool {
        let corner = self.x_m.iter().any(|x| same(*x, post[0]))
            && self.y_m.iter().any(|y| same(*y, post[1]));
        self.contains(post[0], post[1]) && !corner
    }

    /// Lever rule along x and along y.
    fn shares(&self, x: f64, y: f64) -> Vec<Footprint> {
        let u = (x - self.x_m[0]) / (self.x_m[1] - self.x_m[0]);
        let v = (y - self.y_m[0]) / (self.y_m[1] - self.y_m[0]);
        let share = |i: usize, j: usize| if i == 0 { 1.0 - u } else { u } * if j == 0 { 1.0 - v } else { v };
        [(0, 0), (1, 0), (0, 1), (1, 1)]
            .into_iter()
            .map(|(i, j)| Footprint {
                x_m: self.x_m[i],
                y_m: self.y_m[j],
                share_ratio: share(i, j),
            })
            .filter(|footprint| footprint.share_ratio > 0.0)
            .collect()
    }
}

/// Shares of the posts, or none on a block that the deck goes round: four by the lever rule both ways, else three round the place, else two or one beside it.
pub fn footprints(floor: &Floor, x: f64, y: f64) -> Option<Vec<Footprint>> {
    if !floor.passes_over_block() && to_block(floor.block_half_m, [x, y]) <= 0.0 {
        return None;
    }
    if let Some(bay) = floor.bays.iter().find(|bay| bay.contains(x, y)) {
        return Some(bay.shares(x, y));
    }
    let mut posts = floor.supports.clone();
    posts.sort_by(|a, b| distance(*a, [x, y]).total_cmp(&distance(*b, [x, y])));
    posts.truncate(NEAREST);
    three(&posts, [x, y])
        .or_else(|| two(&posts, [x, y]))
        .or_else(|| {
            posts.first().map(|post| {
                vec![Footprint {
                    x_m: post[0],
                    y_m: post[1],
                    share_ratio: 1.0,
                }]
            })
        })
}

/// The three nearest posts that have the place between them, each with its barycentric share.
fn three(posts: &[[f64; 2]], place: [f64; 2]) -> Option<Vec<Footprint>> {
    let mut best: Option<(f64, Vec<Footprint>)> = None;
    for (i, a) in posts.iter().enumerate() {
        for (j, b) in posts.iter().enumerate().skip(i + 1) {
            for c in posts.iter().skip(j + 1) {
                let Some(shares) = barycentric([*a, *b, *c], place) else {
                    continue;
                };
                let span = distance(*a, *b) + distance(*b, *c) + distance(*c, *a);
                if best.as_ref().is_none_or(|(least, _)| span < *least) {
                    let footprint = |post: &[f64; 2], share_ratio| Footprint {
                        x_m: post[0],
                        y_m: post[1],
                        share_ratio,
                    };
                    best = Some((
                        span,
                        vec![
                            footprint(a, shares[0]),
                            footprint(b, shares[1]),
                            footprint(c, shares[2]),
                        ],
                    ));
                }
            }
        }
    }
    best.map(|(_, footprints)| footprints)
}

/// Shares of three corners of a triangle; none when the place is outside or the three stand in one line.
fn barycentric([a, b, c]: [[f64; 2]; 3], p: [f64; 2]) -> Option<[f64; 3]> {
    let cross = |o: [f64; 2], u: [f64; 2], v: [f64; 2]| {
        (u[0] - o[0]) * (v[1] - o[1]) - (u[1] - o[1]) * (v[0] - o[0])
    };
    let whole = cross(a, b, c);
    if whole.abs() < SAME_LINE_M * SAME_LINE_M {
        return None;
    }
    let shares = [
        cross(b, c, p) / whole,
        cross(c, a, p) / whole,
        cross(a, b, p) / whole,
    ];
    shares
        .iter()
        .all(|share| *share >= -1e-9)
        .then(|| shares.map(|share| share.max(0.0)))
}

/// The two nearest posts by the lever rule along the line between them; beyond it the nearer one takes all.
fn two(posts: &[[f64; 2]], p: [f64; 2]) -> Option<Vec<Footprint>> {
    let [a, b, ..] = posts else { return None };
    let (along, length) = ([b[0] - a[0], b[1] - a[1]], distance(*a, *b));
    let t =
        (((p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1]) / (length * length)).clamp(0.0, 1.0);
    let shares = [
        Footprint {
            x_m: a[0],
            y_m: a[1],
            share_ratio: 1.0 - t,
        },
        Footprint {
            x_m: b[0],
            y_m: b[1],
            share_ratio: t,
        },
    ];
    Some(
        shares
            .into_iter()
            .filter(|footprint| footprint.share_ratio > 0.0)
            .collect(),
    )
}
