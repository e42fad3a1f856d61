//! Bearers on lines of posts, and joists across them: how a framed deck shares a weight.

use crate::site_plan::floor::Joists;
use crate::stages::floor::Footprint;

/// Posts within this distance of a line stand on it, m.
const ON_LINE_M: f64 = 0.02;

/// A beam on a line of posts.
#[derive(Debug, Clone, PartialEq)]
pub struct Bearer {
    /// Its place along the joists.
    pub at_m: f64,
    /// Places of its posts along it, in order.
    pub posts_m: Vec<f64>,
}

/// Bearers in order, and which way the joists run across them.
#[derive(Debug, Clone, PartialEq)]
pub struct Framing {
    /// The way of the joists.
    pub joists: Joists,
    /// Bearers.
    pub bearers: Vec<Bearer>,
}

impl Framing {
    /// Framing on these posts; none where a line has a single post, or the outer lines do not reach along the whole deck.
    pub fn of(posts: &[[f64; 2]], joists: Joists) -> Option<Self> {
        let (along, across) = match joists {
            Joists::X => (0, 1),
            Joists::Y => (1, 0),
        };
        let mut sorted: Vec<[f64; 2]> = posts
            .iter()
            .map(|post| [post[along], post[across]])
            .collect();
        sorted.sort_by(|a, b| a[0].total_cmp(&b[0]));
        let mut bearers: Vec<Bearer> = Vec::new();
        for [at, post] in sorted {
            match bearers.last_mut() {
                Some(last) if at - last.at_m <= ON_LINE_M => last.posts_m.push(post),
                _ => bearers.push(Bearer {
                    at_m: at,
                    posts_m: vec![post],
                }),
            }
        }
        for bearer in &mut bearers {
            bearer.posts_m.sort_by(f64::total_cmp);
        }
        let (from, to) = bearers
            .iter()
            .filter_map(Bearer::reach)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), (a, b)| {
                (low.min(a), high.max(b))
            });
        let whole = |bearer: &Bearer| {
            bearer
                .reach()
                .is_some_and(|(a, b)| a <= from + ON_LINE_M && b >= to - ON_LINE_M)
        };
        let [first, .., last] = bearers.as_slice() else {
            return None;
        };
        let stands =
            whole(first) && whole(last) && bearers.iter().all(|bearer| bearer.posts_m.len() > 1);
        stands.then_some(Self { joists, bearers })
    }

    /// Whether every bearer has its posts at the same places: joists either way then share alike.
    pub fn is_grid(&self, posts: &[[f64; 2]]) -> bool {
        let first = &self.bearers[0].posts_m;
        posts.len() == first.len() * self.bearers.len()
            && self.bearers.iter().all(|bearer| {
                bearer
                    .posts_m
                    .iter()
                    .zip(first)
                    .all(|(a, b)| (a - b).abs() <= ON_LINE_M)
            })
    }

    /// Shares of the posts: along the joists to the bearers on either side that reach there, along these to their posts. Beyond
    /// the outermost posts the nearest place between them carries.
    pub fn shares(&self, [x, y]: [f64; 2]) -> Vec<Footprint> {
        let (along, across) = match self.joists {
            Joists::X => (x, y),
            Joists::Y => (y, x),
        };
        let reaching: Vec<&Bearer> = self
            .bearers
            .iter()
            .enumerate()
            .filter(|(i, bearer)| {
                let outer = *i == 0 || *i == self.bearers.len() - 1;
                outer
                    || bearer
                        .reach()
                        .is_some_and(|(from, to)| (from..=to).contains(&across))
            })
            .map(|(_, bearer)| bearer)
            .collect();
        let places: Vec<f64> = reaching.iter().map(|bearer| bearer.at_m).collect();
        lever(&places, along)
            .into_iter()
            .flat_map(|(bearer, share)| {
                let bearer = reaching[bearer];
                lever(&bearer.posts_m, across)
                    .into_iter()
                    .map(move |(post, part)| self.footprint(bearer, post, share * part))
            })
            .filter(|footprint| footprint.share_ratio > 0.0)
            .collect()
    }

    fn footprint(&self, bearer: &Bearer, post: usize, share_ratio: f64) -> Footprint {
        let (along, across) = (bearer.at_m, bearer.posts_m[post]);
        let (x_m, y_m) = match self.joists {
            Joists::X => (along, across),
            Joists::Y => (across, along),
        };
        Footprint {
            x_m,
            y_m,
            share_ratio,
        }
    }
}

impl Bearer {
    /// From its first to its last post.
    pub fn reach(&self) -> Option<(f64, f64)> {
        Some((*self.posts_m.first()?, *self.posts_m.last()?))
    }
}

/// Lever rule between the two of some ordered places on either side; beyond the outermost that one takes all.
fn lever(places: &[f64], at: f64) -> [(usize, f64); 2] {
    let after = places
        .iter()
        .position(|place| *place >= at)
        .unwrap_or(places.len().saturating_sub(1));
    let before = after.saturating_sub(1);
    let span = places[after] - places[before];
    let t = if span > 0.0 {
        ((at - places[before]) / span).clamp(0.0, 1.0)
    } else {
        1.0
    };
    [(before, 1.0 - t), (after, t)]
}
