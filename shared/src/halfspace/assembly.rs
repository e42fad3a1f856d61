//! The equations of a quarter: kernels integrated over patches, mirror images added with the signs of each symmetry.

use nalgebra::DMatrix;

use super::kernel::{self, Kernel};
use super::mesh::Patch;
use super::rectangle;

/// The four ways in which a field can follow the two planes of symmetry: its sign when mirrored across x and across y.
pub const CLASSES: [[f64; 2]; 4] = [[1.0, 1.0], [-1.0, 1.0], [1.0, -1.0], [-1.0, -1.0]];
/// Mirrors of a place: the place itself, across x, across y, across both.
pub const MIRRORS: [[f64; 2]; 4] = CLASSES;

/// Abscissae on −1..1 and weights of Gauss's rules with one to six points.
const GAUSS: [&[(f64, f64)]; 6] = [
    &[(0.0, 2.0)],
    &[(-0.577_350_269_189_625_8, 1.0), (0.577_350_269_189_625_8, 1.0)],
    &[(-0.774_596_669_241_483_4, 5.0 / 9.0), (0.0, 8.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)],
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
fn rule(half: f64, distance: f64) -> &'static [(f64, f64)] {
    let ratio = half / distance;
    let points = match ratio {
        r if r < 0.1 => 0,
        r if r < 0.35 => 1,
        r if r < 0.6 => 2,
        r if r < 0.9 => 3,
        r if r < 1.4 => 4,
        _ => 5,
    };
    GAUSS[points]
}

fn distance(a: [f64; 3], b: [f64; 3]) -> f64 {
    ((a[0] - b[0]).powi(2) + (a[1] - b[1]).powi(2) + (a[2] - b[2]).powi(2)).sqrt()
}

/// Calls `each` with points and weights over the patch, fine enough for a singularity at `seen_from`.
fn over(patch: &Patch, seen_from: [f64; 3], mut each: impl FnMut([f64; 3], f64)) {
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

fn add(total: &mut Kernel<f64>, part: &Kernel<f64>, weight: f64) {
    for i in 0..3 {
        for j in 0..3 {
            total[i][j] += weight * part[i][j];
        }
    }
}

/// Kernel of a patch's unknown for a force at `from`: the displacement under its traction where it is in contact, less
/// the double layer of its movement where it is free.
pub fn patch_kernel(from: [f64; 3], patch: &Patch, nu: f64) -> Kernel<f64> {
    let mut total = [[0.0; 3]; 3];
    let near = distance(from, patch.centre) < 4.0 * patch.half.iter().fold(0.0, |a: f64, &b| a.max(b));
    let mirrored = [from[0], from[1], -from[2]];
    if patch.free {
        if near {
            add(&mut total, &rectangle::kelvin(from, patch, nu, true).1, -1.0);
        } else {
            over(patch, from, |at, weight| {
                let r = [at[0] - from[0], at[1] - from[1], at[2] - from[2]];
                add(&mut total, &kernel::kelvin_traction(r, nu, patch.axis), -weight);
            });
        }
        over(patch, mirrored, |at, weight| {
            let part = kernel::image_traction(at[0] - from[0], at[1] - from[1], at[2], from[2], nu, patch.axis);
            add(&mut total, &part, -weight);
        });
    } else {
        if near {
            add(&mut total, &rectangle::kelvin(from, patch, nu, false).0, 1.0);
        } else {
            over(patch, from, |at, weight| {
                add(&mut total, &kernel::kelvin([at[0] - from[0], at[1] - from[1], at[2] - from[2]], nu), weight);
            });
        }
        over(patch, mirrored, |at, weight| {
            add(&mut total, &kernel::image(at[0] - from[0], at[1] - from[1], at[2], from[2], nu), weight);
        });
    }
    total
}

/// The matrices of the four classes: rows are the rigid motion asked for at the patches' middles, columns the traction
/// of a patch in contact or the movement of a free one.
pub fn matrices(patches: &[Patch], nu: f64) -> [DMatrix<f64>; 4] {
    let size = 3 * patches.len();
    let mut matrices: [DMatrix<f64>; 4] = std::array::from_fn(|_| DMatrix::zeros(size, size));
    for (l, patch) in patches.iter().enumerate() {
        for (k, point) in patches.iter().enumerate() {
            for (m, mirror) in MIRRORS.iter().enumerate() {
                let from = [point.centre[0] * mirror[0], point.centre[1] * mirror[1], point.centre[2]];
                let mut block = patch_kernel(from, patch, nu);
                if patch.free && l == k && m == 0 {
                    for (i, row) in block.iter_mut().enumerate() {
                        row[i] -= 0.5;
                    }
                }
                let turned = [mirror[0], mirror[1], 1.0];
                for (class, matrix) in CLASSES.iter().zip(&mut matrices) {
                    // A field's mirror image has its class's sign for every plane that mirrors it.
                    let sign = if mirror[0] < 0.0 { class[0] } else { 1.0 } * if mirror[1] < 0.0 { class[1] } else { 1.0 };
                    for i in 0..3 {
                        for j in 0..3 {
                            matrix[(3 * k + i, 3 * l + j)] += sign * turned[i] * block[i][j];
                        }
                    }
                }
            }
        }
    }
    matrices
}
