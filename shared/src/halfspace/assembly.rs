//! The equations of a quarter: kernels integrated over patches, mirror images added with the signs of each symmetry.

use nalgebra::DMatrix;

use super::diagonal;
use super::kernel::{self, Kernel};
use super::mesh::Patch;
use super::rectangle;
use super::seen::Seen;

/// The four ways in which a field can follow the two planes of symmetry: its sign when mirrored across x and across y.
pub const CLASSES: [[f64; 2]; 4] = [[1.0, 1.0], [-1.0, 1.0], [1.0, -1.0], [-1.0, -1.0]];
/// Mirrors of a place: the place itself, across x, across y, across both.
pub const MIRRORS: [[f64; 2]; 4] = CLASSES;

/// Abscissae on −1..1 and weights of Gauss's rules with one to six points.
const GAUSS: [&[(f64, f64)]; 6] = [
    &[(0.0, 2.0)],
    &[
        (-0.577_350_269_189_625_8, 1.0),
        (0.577_350_269_189_625_8, 1.0),
    ],
    &[
        (-0.774_596_669_241_483_4, 5.0 / 9.0),
        (0.0, 8.0 / 9.0),
        (0.774_596_669_241_483_4, 5.0 / 9.0),
    ],
    &[
        (-0.861_136_311_594_052_6, 0.347_854_845_137_453_9),
        (-0.339_981_043_584_856_3, 0.652_145_154_862_546_1),
        (0.339_981_043_584_856_3, 0.652_145_154_862_546_1),
        (0.861_136_311_594_052_6, 0.347_854_845_137_453_9),
    ],
    &[
        (-0.906_179_845_938_664, 0.236_926_885_056_189_1),
        (-0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
        (0.0, 0.568_888_888_888_888_9),
        (0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
        (0.906_179_845_938_664, 0.236_926_885_056_189_1),
    ],
    &[
        (-0.932_469_514_203_152, 0.171_324_492_379_170_4),
        (-0.661_209_386_466_264_5, 0.360_761_573_048_138_6),
        (-0.238_619_186_083_196_9, 0.467_913_934_572_691),
        (0.238_619_186_083_196_9, 0.467_913_934_572_691),
        (0.661_209_386_466_264_5, 0.360_761_573_048_138_6),
        (0.932_469_514_203_152, 0.171_324_492_379_170_4),
    ],
];

/// Points of Gauss's rule along a side of half-length `half`, seen from `distance`.
pub fn rule(half: f64, distance: f64) -> &'static [(f64, f64)] {
    let below = |ratio: f64| half < ratio * distance;
    let points = if below(0.1) {
        0
    } else if below(0.35) {
        1
    } else if below(0.6) {
        2
    } else if below(0.9) {
        3
    } else if below(1.4) {
        4
    } else {
        5
    };
    GAUSS[points]
}

fn distance(a: [f64; 3], b: [f64; 3]) -> f64 {
    ((a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2) + (a[2] - b[2]).powi(2)).sqrt()
}

/// Calls `each` with points and weights over the patch, fine enough for a singularity at `seen_from`.
pub fn over(patch: &Patch, seen_from: [f64; 3], mut each: impl FnMut([f64; 3], f64)) {
    let (u, v) = patch.sides();
    let far = distance(seen_from, patch.centre);
    for &(s, ws) in rule(patch.half[u], far) {
        for &(t, wt) in rule(patch.half[v], far) {
            let mut at = patch.centre;
            at[u] += s * patch.half[u];
            at[v] += t * patch.half[v];
            each(at, ws * wt * patch.half[u] * patch.half[v]);
        }
    }
}

/// A patch's kernel, and what the block's turns about x, y and z add to it: a free wall's movement is one vector a patch
/// less the rigid motion, and a turn's motion is not the same all over a patch.
#[derive(Debug, Clone, Copy, Default)]
pub struct Block {
    /// `[direction of the force][component of the unknown]`.
    pub kernel: Kernel<f64>,
    /// `[turn][direction of the force]`, nought for a patch in contact.
    pub turning: Kernel<f64>,
}

impl Block {
    fn add(&mut self, part: &Kernel<f64>, weight: f64) {
        add(&mut self.kernel, part, weight);
    }

    /// Adds a piece of the same patch, its middle at `offset` from the patch's; the turns matter to a free one only.
    pub fn join(&mut self, piece: &Self, offset: [f64; 3], free: bool) {
        self.add(&piece.kernel, 1.0);
        if free {
            self.turn(&piece.kernel, offset, 1.0);
        }
        add(&mut self.turning, &piece.turning, 1.0);
    }

    /// Adds the kernel of traction at `offset` from the patch's middle to what the turns do.
    fn turn(&mut self, part: &Kernel<f64>, [x, y, z]: [f64; 3], weight: f64) {
        let [about_x, about_y, about_z] = &mut self.turning;
        for (i, row) in part.iter().enumerate() {
            about_x[i] += weight * (z * row[1] - y * row[2]);
            about_y[i] += weight * (x * row[2] - z * row[0]);
            about_z[i] += weight * (x * row[1] - y * row[0]);
        }
    }
}

fn add(total: &mut Kernel<f64>, part: &Kernel<f64>, weight: f64) {
    for (sum, value) in total.as_flattened_mut().iter_mut().zip(part.as_flattened()) {
        *sum += weight * value;
    }
}

/// From the second place to the first.
pub fn offset(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

/// Kernel of a patch's unknown for a force at `from`: the displacement under its traction where it is in contact, less
/// the double layer of its movement where it is free.
pub fn block(from: [f64; 3], patch: &Patch, nu: f64) -> Block {
    let mut block = Block::default();
    let mirrored = [from[0], from[1], -from[2]];
    if far(patch, from) && far(patch, mirrored) {
        add_middle(from, patch, nu, &mut block);
        return block;
    }
    let near =
        distance(from, patch.centre) < 4.0 * patch.half.iter().fold(0.0, |a: f64, &b| a.max(b));
    match (patch.free, near) {
        (true, true) => near_traction(from, patch, nu, &mut block),
        (true, false) => add_traction(from, patch, patch, nu, true, &mut block),
        (false, true) => block.add(&rectangle::kelvin(from, patch, nu), 1.0),
        (false, false) => over(patch, from, |at, weight| {
            block.add(&kernel::kelvin(offset(at, from), nu), weight)
        }),
    }
    // Close below the surface the force's mirror image is as near to a long patch as the force itself.
    split(patch, mirrored, IMAGE_REACH, 0, &mut |piece| {
        add_image(from, mirrored, piece, patch, nu, &mut block)
    });
    block
}

/// Whether one point stands for a patch that is seen from a place: [`split`] would leave it whole and [`rule`] take its middle.
pub fn far(patch: &Patch, from: [f64; 3]) -> bool {
    let [dx, dy, dz] = offset(patch.centre, from);
    let half = patch.half[0].max(patch.half[1]).max(patch.half[2]);
    100.0 * half * half < dx * dx + dy * dy + dz * dz
}

/// The whole of a patch that is far off, as its middle has it.
fn add_middle(from: [f64; 3], patch: &Patch, nu: f64, block: &mut Block) {
    let [x, y, z] = offset(patch.centre, from);
    let depth = patch.centre[2];
    if patch.free {
        let area = -patch.area();
        let part = kernel::kelvin_traction([x, y, z], nu, patch.axis);
        block.add(&part, area);
        let part = kernel::image_traction(x, y, depth, from[2], nu, patch.axis);
        block.add(&part, area);
    } else {
        block.add(&kernel::kelvin([x, y, z], nu), patch.area());
        block.add(&kernel::image(x, y, depth, from[2], nu), patch.area());
    }
}

/// The surface's part, for a piece of a patch.
fn add_image(
    from: [f64; 3],
    mirrored: [f64; 3],
    piece: &Patch,
    patch: &Patch,
    nu: f64,
    block: &mut Block,
) {
    over(piece, mirrored, |at, weight| {
        let (x, y) = (at[0] - from[0], at[1] - from[1]);
        if patch.free {
            let part = kernel::image_traction(x, y, at[2], from[2], nu, patch.axis);
            block.add(&part, -weight);
            block.turn(&part, offset(at, patch.centre), -weight);
        } else {
            block.add(&kernel::image(x, y, at[2], from[2], nu), weight);
        }
    });
}

fn add_traction(
    from: [f64; 3],
    part_of: &Patch,
    patch: &Patch,
    nu: f64,
    kernel_too: bool,
    block: &mut Block,
) {
    over(part_of, from, |at, weight| {
        let part = kernel::kelvin_traction(offset(at, from), nu, patch.axis);
        if kernel_too {
            block.add(&part, -weight);
        }
        block.turn(&part, offset(at, patch.centre), -weight);
    });
}

/// Kelvin's part near by: in closed form, and for the turns by ever smaller pieces, or in closed form again in its plane.
fn near_traction(from: [f64; 3], patch: &Patch, nu: f64, block: &mut Block) {
    block.add(&rectangle::kelvin_traction(from, patch, nu), -1.0);
    if from[patch.axis] == patch.centre[patch.axis] {
        let slopes = rectangle::plane_moments(from, patch, nu);
        let (u, v) = patch.sides();
        for (side, moment) in [(u, slopes[0]), (v, slopes[1])] {
            let mut along = [0.0; 3];
            along[side] = 1.0;
            block.turn(&moment, along, -1.0);
        }
    } else {
        split(patch, from, TURN_REACH, 0, &mut |piece| {
            add_traction(from, piece, patch, nu, false, block)
        });
    }
}

/// Half a patch's side over its distance from a place, above which the patch is cut for that place; what the turns add
/// within a patch is a correction, and bears larger pieces.
pub const REACH: f64 = 0.4;
const TURN_REACH: f64 = 1.6;
const IMAGE_REACH: f64 = 1.6;

/// Cuts a patch in pieces as long as it is large for its distance from a place: a place close to it sees it rightly.
pub fn split(patch: &Patch, from: [f64; 3], reach: f64, depth: u32, each: &mut impl FnMut(&Patch)) {
    let (u, v) = patch.sides();
    let gap = |axis: usize| ((from[axis] - patch.centre[axis]).abs() - patch.half[axis]).max(0.0);
    let nearest = (gap(0).powi(2) + gap(1).powi(2) + gap(2).powi(2)).sqrt();
    let (wide, tall) = (
        patch.half[u] > reach * nearest,
        patch.half[v] > reach * nearest,
    );
    if depth >= 8 || !(wide || tall) {
        each(patch);
        return;
    }
    let cuts = |cut: bool| if cut { &[-0.5, 0.5][..] } else { &[0.0][..] };
    for &s in cuts(wide) {
        for &t in cuts(tall) {
            let mut part = *patch;
            part.centre[u] += s * patch.half[u];
            part.centre[v] += t * patch.half[v];
            part.half[u] *= if wide { 0.5 } else { 1.0 };
            part.half[v] *= if tall { 0.5 } else { 1.0 };
            split(&part, from, reach, depth + 1, each);
        }
    }
}

/// Sign of a class's field in a mirror.
pub fn sign(class: [f64; 2], mirror: [f64; 2]) -> f64 {
    (if mirror[0] < 0.0 { class[0] } else { 1.0 }) * (if mirror[1] < 0.0 { class[1] } else { 1.0 })
}

/// The equations of the four classes.
pub struct Equations {
    /// Rows are displacements at the patches' middles, columns the traction of a patch in contact or the movement of a
    /// free one.
    pub matrices: [DMatrix<f64>; 4],
    /// What the turns add to the rigid motion asked for at the patches' middles, `[patch][turn]`.
    pub turning: Vec<Kernel<f64>>,
}

/// Assembles them, with each patch's mirror across the diagonal where there is one: a square block looks the same across its
/// diagonal, and half of its equations are the other half's.
pub fn with_partners(patches: &[Patch], nu: f64, partners: Option<&[usize]>) -> Equations {
    let size = 3 * patches.len();
    let mut equations = Equations {
        matrices: std::array::from_fn(|_| DMatrix::zeros(size, size)),
        turning: vec![[[0.0; 3]; 3]; patches.len()],
    };
    for (l, patch) in patches.iter().enumerate() {
        let partner = partners.map_or(l, |partners| partners[l]);
        if partner < l {
            continue;
        }
        for (k, point) in patches.iter().enumerate() {
            let seen = seen(point, patch, nu, l == k);
            equations.put(k, l, &seen);
            if let Some(partners) = partners.filter(|_| partner > l) {
                equations.put(partners[k], partner, &diagonal::across(&seen));
            }
        }
    }
    equations
}

impl Equations {
    fn put(&mut self, k: usize, l: usize, seen: &Seen) {
        for (matrix, sum) in self.matrices.iter_mut().zip(&seen.classes) {
            for (i, row) in sum.iter().enumerate() {
                for (j, value) in row.iter().enumerate() {
                    matrix[(3 * k + i, 3 * l + j)] = *value;
                }
            }
        }
        for (total, part) in self.turning[k].iter_mut().zip(&seen.turning) {
            (0..3).for_each(|i| total[i] += part[i]);
        }
    }
}

fn seen(point: &Patch, patch: &Patch, nu: f64, own: bool) -> Seen {
    let mut seen = Seen {
        classes: [[[0.0; 3]; 3]; 4],
        turning: [[0.0; 3]; 3],
    };
    for (m, mirror) in MIRRORS.into_iter().enumerate() {
        let from = [
            point.centre[0] * mirror[0],
            point.centre[1] * mirror[1],
            point.centre[2],
        ];
        let mut block = block(from, patch, nu);
        if patch.free && own && m == 0 {
            (0..3).for_each(|i| block.kernel[i][i] -= 0.5);
        }
        let turned = [mirror[0], mirror[1], 1.0];
        for (class, sum) in CLASSES.into_iter().zip(&mut seen.classes) {
            let sign = sign(class, mirror);
            for ((row, part), turned) in sum.iter_mut().zip(&block.kernel).zip(turned) {
                row.iter_mut()
                    .zip(part)
                    .for_each(|(total, value)| *total += sign * turned * value);
            }
        }
        if patch.free {
            add_turning(&mut seen.turning, &block, mirror, turned);
        }
    }
    seen
}

fn add_turning(total: &mut Kernel<f64>, block: &Block, mirror: [f64; 2], turned: [f64; 3]) {
    // The turns about x, y and z follow the third, second and fourth class.
    for (turn, class) in [CLASSES[2], CLASSES[1], CLASSES[3]].into_iter().enumerate() {
        for i in 0..3 {
            total[turn][i] += sign(class, mirror) * turned[i] * block.turning[turn][i];
        }
    }
}
