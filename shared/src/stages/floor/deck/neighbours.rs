//! Shares of posts that stand in no order: natural neighbours.
//!
//! Sibson 1981: each post takes the part of the plane that the place would take from it, were the place a post too. The
//! shares change without a jump, follow whatever symmetry the posts have, and balance the weight; along the outermost posts
//! they are the lever rule.

use crate::stages::floor::Footprint;

/// Half the side of the square over which boards spread a person's weight, m.
const SPREAD_M: f64 = 0.15;
/// A post nearer than this to the line between two outermost ones counts as on it, m.
const NEAR_LINE_M: f64 = 0.1;
/// Nearer than this to the outermost line a place is on it, m; nearer to a post it is the post.
const ON_LINE_M: f64 = 1e-3;
const ON_POST_M: f64 = 1e-6;
/// The plane is so large, m: more than a cell inside reaches.
const FAR_M: f64 = 1e6;

type Place = [f64; 2];

/// Shares of the posts for a weight that boards and joists of unknown direction spread over a square about its place; what
/// lies beyond the outermost posts is carried by the nearest place between them.
pub fn shares(posts: &[Place], [x, y]: Place) -> Vec<Footprint> {
    let lined = lined(posts);
    let mut all: Vec<Footprint> = Vec::with_capacity(8);
    for (i, j) in [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)] {
        for one in of_point(&lined, [x + SPREAD_M * i, y + SPREAD_M * j]) {
            let share_ratio = 0.25 * one.share_ratio;
            let post = lined
                .iter()
                .zip(posts)
                .find(|(line, _)| **line == [one.x_m, one.y_m])
                .map_or([one.x_m, one.y_m], |(_, post)| *post);
            let one = footprint(post, share_ratio);
            match all
                .iter_mut()
                .find(|other| other.x_m == one.x_m && other.y_m == one.y_m)
            {
                Some(other) => other.share_ratio += share_ratio,
                None => all.push(one),
            }
        }
    }
    all
}

/// The posts with those on the outermost line that all but stand there, as a beam along it would pass over them.
fn lined(posts: &[Place]) -> Vec<Place> {
    let hull = hull(posts);
    let to_line = |post: &Place| {
        if hull.contains(post) {
            return *post;
        }
        let (_, near) = nearest_edge(&hull, *post);
        if distance(near, *post) < NEAR_LINE_M {
            near
        } else {
            *post
        }
    };
    posts.iter().map(to_line).collect()
}

/// Shares of the posts for a single point.
fn of_point(posts: &[Place], place: Place) -> Vec<Footprint> {
    let hull = hull(posts);
    let (edge, near) = nearest_edge(&hull, place);
    let inside = hull.len() > 2 && edges(&hull).all(|[a, b]| cross(a, b, place) >= 0.0);
    if !inside || distance(near, place) < ON_LINE_M {
        return along(posts, edge, near);
    }
    if let Some(post) = posts
        .iter()
        .find(|post| distance(**post, place) < ON_POST_M)
    {
        return vec![footprint(*post, 1.0)];
    }
    let far = [
        [-FAR_M, -FAR_M],
        [FAR_M, -FAR_M],
        [FAR_M, FAR_M],
        [-FAR_M, FAR_M],
    ];
    let mut cell = far.to_vec();
    for post in posts {
        cell = nearer(&cell, place, *post);
    }
    let neighbours: Vec<Place> = posts
        .iter()
        .copied()
        .filter(|post| {
            cell.iter().any(|corner| {
                let (to_place, to_post) = (distance(*corner, place), distance(*corner, *post));
                (to_place - to_post).abs() <= 1e-7 * to_place.max(1.0)
            })
        })
        .collect();
    let areas: Vec<f64> = neighbours
        .iter()
        .map(|post| {
            let others = neighbours.iter().filter(|other| *other != post);
            area(&others.fold(cell.clone(), |part, other| nearer(&part, *post, *other)))
        })
        .collect();
    let whole: f64 = areas.iter().sum();
    if whole <= 0.0 {
        return along(posts, edge, near);
    }
    neighbours
        .into_iter()
        .zip(areas)
        .filter(|(_, area)| *area > 0.0)
        .map(|(post, area)| footprint(post, area / whole))
        .collect()
}

fn footprint([x_m, y_m]: Place, share_ratio: f64) -> Footprint {
    Footprint {
        x_m,
        y_m,
        share_ratio,
    }
}

fn distance(a: Place, b: Place) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn cross(o: Place, a: Place, b: Place) -> f64 {
    (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
}

/// The outermost posts, anticlockwise, without those between two corners.
fn hull(posts: &[Place]) -> Vec<Place> {
    let mut sorted = posts.to_vec();
    sorted.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    let chain = |places: &mut dyn Iterator<Item = Place>| {
        let mut chain: Vec<Place> = Vec::new();
        for place in places {
            while let [.., a, b] = chain[..] {
                if cross(a, b, place) > 1e-12 {
                    break;
                }
                let _ = chain.pop();
            }
            chain.push(place);
        }
        chain
    };
    let mut lower = chain(&mut sorted.iter().copied());
    let upper = chain(&mut sorted.iter().rev().copied());
    if sorted.len() > 1 {
        let _ = lower.pop();
        lower.extend(&upper[..upper.len() - 1]);
    }
    lower
}

fn edges(hull: &[Place]) -> impl Iterator<Item = [Place; 2]> + '_ {
    hull.iter()
        .enumerate()
        .map(|(i, a)| [*a, hull[(i + 1) % hull.len()]])
}

/// The edge nearest to a place, and the place on it.
fn nearest_edge(hull: &[Place], place: Place) -> ([Place; 2], Place) {
    let on = |[a, b]: [Place; 2]| {
        let along = [b[0] - a[0], b[1] - a[1]];
        let square = along[0] * along[0] + along[1] * along[1];
        let t = if square > 0.0 {
            (((place[0] - a[0]) * along[0] + (place[1] - a[1]) * along[1]) / square).clamp(0.0, 1.0)
        } else {
            0.0
        };
        [a[0] + t * along[0], a[1] + t * along[1]]
    };
    edges(hull)
        .map(|edge| (edge, on(edge)))
        .min_by(|a, b| distance(a.1, place).total_cmp(&distance(b.1, place)))
        .unwrap_or(([place; 2], place))
}

/// Lever rule between the two posts on either side of a place on an edge.
fn along(posts: &[Place], [a, b]: [Place; 2], place: Place) -> Vec<Footprint> {
    let length = distance(a, b);
    let at = |post: Place| {
        if length > 0.0 {
            ((post[0] - a[0]) * (b[0] - a[0]) + (post[1] - a[1]) * (b[1] - a[1])) / length
        } else {
            0.0
        }
    };
    let here = at(place);
    let on_edge = || {
        posts
            .iter()
            .copied()
            .filter(|post| cross(a, b, *post).abs() <= 1e-9 + ON_POST_M * length)
    };
    let before = on_edge()
        .filter(|post| at(*post) <= here + 1e-9)
        .max_by(|p, q| at(*p).total_cmp(&at(*q)));
    let after = on_edge()
        .filter(|post| at(*post) > here + 1e-9)
        .min_by(|p, q| at(*p).total_cmp(&at(*q)));
    match (before, after) {
        (Some(p), Some(q)) => {
            let t = ((here - at(p)) / (at(q) - at(p))).clamp(0.0, 1.0);
            vec![footprint(p, 1.0 - t), footprint(q, t)]
        }
        (Some(only), None) | (None, Some(only)) => vec![footprint(only, 1.0)],
        (None, None) => vec![footprint(place, 1.0)],
    }
}

/// The part of a convex area that is nearer to one place than to another.
fn nearer(area: &[Place], one: Place, other: Place) -> Vec<Place> {
    let middle = [0.5 * (one[0] + other[0]), 0.5 * (one[1] + other[1])];
    let beyond = |place: Place| {
        (place[0] - middle[0]) * (other[0] - one[0]) + (place[1] - middle[1]) * (other[1] - one[1])
    };
    let mut kept = Vec::with_capacity(area.len() + 1);
    for [a, b] in edges(area) {
        let (at_a, at_b) = (beyond(a), beyond(b));
        if at_a <= 0.0 {
            kept.push(a);
        }
        if (at_a < 0.0 && at_b > 0.0) || (at_a > 0.0 && at_b < 0.0) {
            let t = at_a / (at_a - at_b);
            kept.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
        }
    }
    kept
}

fn area(corners: &[Place]) -> f64 {
    if corners.len() < 3 {
        return 0.0;
    }
    let first = corners[0];
    0.5 * corners
        .windows(2)
        .map(|pair| cross(first, pair[0], pair[1]))
        .sum::<f64>()
        .abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn share_of(shares: &[Footprint], [x, y]: Place) -> f64 {
        shares
            .iter()
            .filter(|one| one.x_m == x && one.y_m == y)
            .map(|one| one.share_ratio)
            .sum()
    }

    const SQUARE: [Place; 4] = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];

    /// By symmetry a quarter each in the middle. At (½, ¼) the cell is the square's quarter turned: two by two alike, and
    /// in balance, so that the lower two take three quarters.
    #[test]
    fn four_posts_share_by_symmetry_and_balance() {
        let middle = of_point(&SQUARE, [0.5, 0.5]);
        assert!(
            middle
                .iter()
                .all(|one| (one.share_ratio - 0.25).abs() < 1e-8)
                && middle.len() == 4
        );
        let low = of_point(&SQUARE, [0.5, 0.25]);
        assert!((share_of(&low, [0.0, 0.0]) - 0.375).abs() < 1e-8);
        assert!((share_of(&low, [1.0, 1.0]) - 0.125).abs() < 1e-8);
    }

    #[test]
    fn along_the_outermost_posts_it_is_the_lever_rule_and_beyond_them_the_nearest_place() {
        let posts = [[0.0, 0.0], [0.4, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
        for y in [0.0, -0.3] {
            let found = of_point(&posts, [0.1, y]);
            assert!(
                (share_of(&found, [0.4, 0.0]) - 0.25).abs() < 1e-9,
                "{found:?}"
            );
        }
        assert_eq!(share_of(&of_point(&posts, [-1.0, -1.0]), [0.0, 0.0]), 1.0);
    }

    #[test]
    fn posts_in_one_line_and_single_posts_carry_too() {
        let line = [[-1.0, 0.0], [1.0, 0.0], [0.0, 0.0]];
        let found = of_point(&line, [0.5, 2.0]);
        assert!((share_of(&found, [1.0, 0.0]) - 0.5).abs() < 1e-12);
        assert_eq!(
            of_point(&[[0.3, 0.4]], [5.0, 5.0]),
            vec![footprint([0.3, 0.4], 1.0)]
        );
    }
}
