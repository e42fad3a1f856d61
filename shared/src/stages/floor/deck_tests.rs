//! A deck's sharing of a weight: symmetric, balanced, without jumps.

use super::*;
use crate::brief::resolve;
use crate::site_plan::SitePlan;
use crate::site_plan::floor::Joists;
use crate::stages::{block, ground, loads, pier, room};

fn deck(posts: &[[f64; 2]], joists: Option<Joists>) -> Floor {
    let mut plan = SitePlan::unknown();
    plan.floor.kind = Some(FloorKind::Deck);
    plan.floor.length_m = Some(6.0);
    plan.floor.width_m = Some(6.0);
    plan.floor.supports = Some(posts.to_vec());
    plan.floor.joists = joists;
    let brief = resolve(&plan).unwrap();
    let ground = ground::stage(&brief).value;
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room::room(&brief, &ground), &loads).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    stage(&brief, &ground, &block, &pier).value
}

/// Lean towards the posts by the slope of the free field, which falls with the square of the distance (Boussinesq): enough
/// to tell which way and how far, in units of its own.
fn lean(floor: &Floor, x: f64, y: f64) -> [f64; 2] {
    footprints(floor, x, y).iter().fold([0.0; 2], |sum, foot| {
        let far = foot.x_m.hypot(foot.y_m);
        let slope = foot.share_ratio / far.powi(3);
        [sum[0] + slope * foot.x_m, sum[1] + slope * foot.y_m]
    })
}

fn size(lean: [f64; 2]) -> f64 {
    lean[0].hypot(lean[1])
}

/// Basis: eight posts in symmetry, a person at (0, −1) and a hundredth beside it. Symmetry asks for 180° from north; by the
/// three posts of least perimeter it was 151.6° and 208.3°.
#[test]
fn eight_posts_in_symmetry_lean_the_pier_straight_towards_the_person() {
    let ring: Vec<[f64; 2]> = (0..8)
        .map(|i| (0.25 * std::f64::consts::PI * (f64::from(i) + 0.5)).sin_cos())
        .map(|(s, c)| [1.5 * s, 1.5 * c])
        .collect();
    let square = [
        [-1.5, -1.5],
        [0.0, -1.5],
        [1.5, -1.5],
        [-1.5, 0.0],
        [1.5, 0.0],
        [-1.5, 1.5],
        [0.0, 1.5],
        [1.5, 1.5],
    ];
    let kinds = [None, Some(Joists::X), Some(Joists::Y)];
    for (posts, joists) in kinds
        .iter()
        .flat_map(|joists| [(ring.as_slice(), *joists), (square.as_slice(), *joists)])
    {
        let floor = deck(posts, joists);
        let bearing = |x: f64| {
            let [east, north] = lean(&floor, x, -1.0);
            east.atan2(north).to_degrees().rem_euclid(360.0)
        };
        assert!(
            (bearing(0.0) - 180.0).abs() < 1e-6,
            "{joists:?} {}",
            bearing(0.0)
        );
        assert!(
            (bearing(0.01) - 180.0).abs() < 3.0,
            "{joists:?} {}",
            bearing(0.01)
        );
        assert!((bearing(0.01) + bearing(-0.01) - 360.0).abs() < 1e-6);
    }
}

/// A chain of numbers that looks like chance: the same at every run.
struct Chance(u64);

impl Chance {
    fn next(&mut self, from: f64, to: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        from + (to - from) * (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Posts at least so far apart and so far from the axis.
    fn posts(&mut self) -> Vec<[f64; 2]> {
        let count = self.next(4.0, 14.0) as usize;
        let mut posts: Vec<[f64; 2]> = Vec::new();
        for _ in 0..400 {
            let post = [self.next(-2.6, 2.6), self.next(-2.6, 2.6)];
            let clear = posts
                .iter()
                .all(|other| (post[0] - other[0]).hypot(post[1] - other[1]) > 0.7);
            if clear && post[0].hypot(post[1]) > 1.0 && posts.len() < count {
                posts.push(post);
            }
        }
        posts
    }
}

/// A thousand decks with posts anywhere: moving a person by 10 mm turns the lean by no more than 5° and changes it by no
/// more than 5 %. Where opposite posts all but cancel, so that the lean is below half of what the nearest post alone would
/// do, the change is held against that half; over the block nobody stands.
#[test]
fn a_thousand_decks_lean_without_a_jump() {
    let (mut chance, mut seen, mut farthest) = (Chance(20_261_128), 0, [0.0_f64; 2]);
    for _ in 0..1000 {
        let floor = deck(&chance.posts(), None);
        let most = floor
            .supports
            .iter()
            .map(|post| 1.0 / (post[0] * post[0] + post[1] * post[1]))
            .fold(0.0, f64::max);
        for _ in 0..8 {
            let [x, y] = [chance.next(-2.7, 2.7), chance.next(-2.7, 2.7)];
            let (sin, cos) = chance.next(0.0, std::f64::consts::TAU).sin_cos();
            let beside = [x + 0.01 * cos, y + 0.01 * sin];
            if places::to_block(floor.block_half_m, [x, y]) < 0.05 {
                continue;
            }
            let (one, other) = (lean(&floor, x, y), lean(&floor, beside[0], beside[1]));
            let held = size(one).max(0.5 * most);
            let moved = size([other[0] - one[0], other[1] - one[1]]);
            farthest = [
                farthest[0].max((size(other) - size(one)).abs() / held),
                farthest[1].max((moved / held).to_degrees()),
            ];
            seen += 1;
        }
    }
    assert!(seen > 6000, "{seen}");
    assert!(farthest[0] <= 0.05 && farthest[1] <= 5.0, "{farthest:?}");
}

/// Shares add to one, are never negative, and their centre is the place wherever that is among the posts: to a millimetre,
/// or to a few centimetres where a post all but on the outermost line counts as on it.
#[test]
fn a_weight_among_posts_that_stand_anywhere_is_in_balance() {
    let (mut chance, mut seen, mut balanced) = (Chance(7), 0, 0);
    for _ in 0..200 {
        let posts = chance.posts();
        let floor = deck(&posts, None);
        // A place among the posts: a mean of all of them with weights by chance.
        let weights: Vec<f64> = posts.iter().map(|_| chance.next(0.1, 1.0)).collect();
        let whole: f64 = weights.iter().sum();
        let mean = |axis: usize| {
            posts
                .iter()
                .zip(&weights)
                .map(|(post, weight)| post[axis] * weight / whole)
                .sum::<f64>()
        };
        let place = [0, 1].map(mean);
        // Boards spread the weight; all of it must be among the posts.
        let square = [[-0.15, -0.15], [0.15, -0.15], [-0.15, 0.15], [0.15, 0.15]];
        if square
            .iter()
            .any(|[dx, dy]| !among(&posts, [place[0] + dx, place[1] + dy]))
        {
            continue;
        }
        seen += 1;
        let shares = footprints(&floor, place[0], place[1]);
        let sum = |value: fn(&Footprint) -> f64| {
            shares
                .iter()
                .map(|share| share.share_ratio * value(share))
                .sum::<f64>()
        };
        assert!(shares.iter().all(|share| share.share_ratio >= 0.0));
        assert!((sum(|_| 1.0) - 1.0).abs() < 1e-9);
        let off = (sum(|s| s.x_m) - place[0]).hypot(sum(|s| s.y_m) - place[1]);
        assert!(off < 0.1, "{place:?} {shares:?}");
        balanced += usize::from(off < 1e-3);
    }
    assert!(seen > 120 && balanced > 2 * seen / 3, "{seen} {balanced}");
}

/// Whether a place is among posts: no line through it has all of them on one side.
fn among(posts: &[[f64; 2]], [x, y]: [f64; 2]) -> bool {
    (0..360).all(|degree| {
        let (sin, cos) = f64::from(degree).to_radians().sin_cos();
        posts
            .iter()
            .any(|post| (post[0] - x) * cos + (post[1] - y) * sin > 0.01)
    })
}

/// Lever rule by hand: joists along x carry (0.5, 0) half to the middle bearer and half to the eastern one.
#[test]
fn joists_carry_to_bearers_and_bearers_to_posts() {
    let posts = [
        [-1.0, -1.0],
        [0.0, -1.0],
        [1.0, -1.0],
        [-1.0, 0.0],
        [1.0, 0.0],
        [-1.0, 1.0],
        [0.0, 1.0],
        [1.0, 1.0],
    ];
    let share = |floor: &Floor, [x, y]: [f64; 2]| -> f64 {
        footprints(floor, 0.5, 0.0)
            .iter()
            .filter(|one| one.x_m == x && one.y_m == y)
            .map(|one| one.share_ratio)
            .sum()
    };
    let along_x = deck(&posts, Some(Joists::X));
    assert_eq!(
        [[1.0, 0.0], [0.0, 1.0], [0.0, -1.0]].map(|post| share(&along_x, post)),
        [0.5, 0.25, 0.25]
    );
    // Along y the place lies on the bearer through the middle, which spans from west to east.
    let along_y = deck(&posts, Some(Joists::Y));
    assert_eq!(
        [[1.0, 0.0], [-1.0, 0.0]].map(|post| share(&along_y, post)),
        [0.75, 0.25]
    );
}
