//! Blocks made up at random, and the laws that each must keep.

use stillground::halfspace::mesh::Fineness;
use stillground::halfspace::solve::{meshes, raw};
use stillground::halfspace::{Shape, Solved, solve};

/// A generator of numbers that gives the same ones every time.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) as f64 / u64::MAX as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    /// Evenly in proportion.
    fn scaled(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.next())
    }
}

/// Any block that the solver takes: sides up to one to ten, thin or deep, held all the way, nowhere, below, above or between.
fn block(numbers: &mut Numbers) -> Shape {
    let shorter = numbers.scaled(0.2, 3.0);
    let longer = shorter * numbers.scaled(1.0, 9.99);
    let (length_m, width_m) = if numbers.next() < 0.5 {
        (longer, shorter)
    } else {
        (shorter, longer)
    };
    let depth_m = shorter * numbers.scaled(0.05, 9.99);
    let (a, b) = (numbers.between(0.0, depth_m), numbers.between(0.0, depth_m));
    let (contact_from_m, contact_to_m) = match (5.0 * numbers.next()) as usize {
        0 => (0.0, depth_m),
        1 => (depth_m, depth_m),
        2 => (a, depth_m),
        3 => (0.0, a),
        _ => (a.min(b), a.max(b)),
    };
    let poisson_ratio = if numbers.next() < 0.2 {
        0.49
    } else {
        numbers.between(0.0, 0.49)
    };
    Shape {
        length_m,
        width_m,
        depth_m,
        contact_from_m,
        contact_to_m,
        poisson_ratio,
    }
}

/// Tries so many blocks and says which laws were broken, each with its block.
#[must_use]
pub fn tried(seed: u64, count: usize) -> Vec<String> {
    let mut numbers = Numbers(seed);
    (0..count)
        .flat_map(|_| broken(&block(&mut numbers)))
        .collect()
}

fn broken(shape: &Shape) -> Vec<String> {
    let Some(solved) = solve(shape) else {
        return vec![format!("{shape:?}: not solved")];
    };
    let laws = [
        symmetric(shape),
        positive(&solved),
        contact(&solved),
        deeper(&solved),
        weights(&solved),
        far(&solved),
    ];
    laws.into_iter()
        .flatten()
        .map(|law| format!("{shape:?}: {law}"))
        .collect()
}

/// Reciprocity: before its halves are averaged the finer mesh's matrix is nearly symmetric.
fn symmetric(shape: &Shape) -> Option<String> {
    let [_, fine]: [Fineness; 2] = meshes(shape, 140);
    let apart = raw(shape, fine).map_or(f64::NAN, |raw| raw.asymmetry_ratio);
    (apart.is_nan() || apart > MOST_ASYMMETRY).then(|| format!("asymmetry {apart}"))
}

const MOST_ASYMMETRY: f64 = 0.05;

/// The stiffness has a Cholesky factor, and takes work to move in every way.
fn positive(solved: &Solved) -> Option<String> {
    let k = &solved.stiffness_over_g;
    let mut lower = [[0.0; 6]; 6];
    for i in 0..6 {
        for j in 0..=i {
            let rest: f64 = k[i][j] - (0..j).map(|m| lower[i][m] * lower[j][m]).sum::<f64>();
            if i == j && (rest.is_nan() || rest <= 0.0) {
                return Some(format!("not positive definite: {k:?}"));
            }
            lower[i][j] = if i == j {
                rest.sqrt()
            } else {
                rest / lower[j][j]
            };
        }
    }
    (0..6)
        .any(|i| (0..6).any(|j| k[i][j] != k[j][i]))
        .then(|| format!("not symmetric: {k:?}"))
}

fn diagonal(solved: &Solved) -> [f64; 6] {
    std::array::from_fn(|axis| solved.stiffness_over_g[axis][axis])
}

/// More contact is never less stiff, but for the method's own error of two per cent.
fn contact(solved: &Solved) -> Option<String> {
    let shape = &solved.shape;
    let (held, free) = (
        solve(&shape.bonded())?,
        solve(&shape.lined_to(shape.depth_m))?,
    );
    let rows = diagonal(&free)
        .into_iter()
        .zip(diagonal(solved))
        .zip(diagonal(&held));
    let wrong =
        |((least, found), most): &((f64, f64), f64)| !(0.97 * least..=1.03 * most).contains(found);
    rows.enumerate()
        .find(|(_, row)| wrong(row))
        .map(|(axis, row)| format!("contact, axis {axis}: {row:?}"))
}

/// A bonded block that reaches deeper holds a shallower one within it: in pushes and in torsion it is stiffer.
fn deeper(solved: &Solved) -> Option<String> {
    let shape = solved.shape.bonded();
    let shallow = Shape {
        depth_m: 0.8 * shape.depth_m,
        ..shape
    }
    .bonded();
    let (deep, shallow) = (diagonal(&solve(&shape)?), diagonal(&solve(&shallow)?));
    [0, 1, 2, 5]
        .into_iter()
        .find(|&axis| deep[axis] < 0.995 * shallow[axis])
        .map(|axis| format!("depth, axis {axis}: {deep:?} {shallow:?}"))
}

/// Places on the block, at its edge, beside it and far off give numbers, and mirrored places mirrored ones.
fn weights(solved: &Solved) -> Option<String> {
    let (length, width) = (solved.shape.length_m, solved.shape.width_m);
    let places = [
        (0.0, 0.0),
        (length / 2.0, 0.0),
        (length / 2.0 + 1e-6, 0.0),
        (length, width),
        (0.1, width),
        (40.0, 25.0),
    ];
    let odd = |(x, y): &(f64, f64)| {
        let (here, across) = (solved.under_weight(*x, *y), solved.under_weight(-x, *y));
        let finite = here.iter().all(|value| value.is_finite());
        !(finite && (here[4] + across[4]).abs() <= 1e-9 * here[4].abs().max(1e-30) && here[2] < 0.0)
    };
    places
        .iter()
        .find(|place| odd(place))
        .map(|(x, y)| format!("weight at {x}, {y}: {:?}", solved.under_weight(*x, *y)))
}

/// Far off a weight slopes the block as it slopes the ground.
fn far(solved: &Solved) -> Option<String> {
    let shape = &solved.shape;
    let r = 200.0 * shape.length_m.max(shape.width_m).max(shape.depth_m);
    let slope = (1.0 - shape.poisson_ratio) / (2.0 * std::f64::consts::PI * r * r);
    let found = [
        solved.under_weight(r, 0.0)[4],
        -solved.under_weight(0.0, r)[3],
    ];
    found
        .into_iter()
        .any(|lean| (lean / slope - 1.0).abs() > 0.05)
        .then(|| format!("far off: {found:?} {slope}"))
}
