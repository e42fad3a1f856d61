//! Kelvin's kernels integrated over a rectangle in closed form, so that a patch's own `1/R` and its neighbours' are exact.
//!
//! With `s`, `t` along the rectangle's sides and `h` across it, all from the force, every integral is a function of the
//! corner's coordinates taken at the four corners with alternating signs. The basis is `∬1/R = s ln(t+R) + t ln(s+R) −
//! h atan(st/hR)`; those with `s²/R³` and the like follow by parts, those with `h/R⁵` as slopes of the former along `h`.

use super::kernel::{Kernel, scale};
use super::mesh::Patch;

/// What the corners add up to: `∬1/R`, `∬r_i r_j/R³`, `∬r_i/R³`, `∬3h r_i r_j/R⁵`, components along s, t, h.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    over: f64,
    second: [[f64; 3]; 3],
    first: [f64; 3],
    third: [[f64; 3]; 3],
}

impl Sums {
    fn add(&mut self, sign: f64, s: f64, t: f64, h: f64, slopes: bool) {
        let plane = h * h;
        let r = (s * s + t * t + plane).sqrt();
        let (log_t, log_s) = (
            log_of_sum(t, r, s * s + plane),
            log_of_sum(s, r, t * t + plane),
        );
        let angle = if h == 0.0 {
            0.0
        } else {
            (s * t / (h * r)).atan()
        };
        let tilted = h * angle;
        self.over += sign * (s * log_t + t * log_s - tilted);
        self.second[0][0] += sign * (t * log_s - tilted);
        self.second[1][1] += sign * (s * log_t - tilted);
        self.second[2][2] += sign * tilted;
        self.second[0][1] -= sign * r;
        self.second[0][2] -= sign * h * log_t;
        self.second[1][2] -= sign * h * log_s;
        if slopes {
            self.first[0] -= sign * log_t;
            self.first[1] -= sign * log_s;
            self.first[2] += sign * angle;
            if h != 0.0 {
                self.add_third(sign, [s, t, h], r, angle);
            }
        }
    }

    fn add_third(&mut self, sign: f64, [s, t, h]: [f64; 3], r: f64, angle: f64) {
        let plane = h * h;
        let (rise_s, rise_t) = (
            h * over_sum(s, r, t * t + plane) / r,
            h * over_sum(t, r, s * s + plane) / r,
        );
        let turned = -h * s * t * (r * r + plane) / (r * (plane + s * s) * (plane + t * t));
        self.third[0][0] += sign * (angle + turned - t * rise_s);
        self.third[1][1] += sign * (angle + turned - s * rise_t);
        self.third[2][2] += sign * (angle - turned);
        self.third[0][1] += sign * h / r;
        self.third[0][2] += sign * h * rise_t;
        self.third[1][2] += sign * h * rise_s;
    }
}

/// `ln(a + r)` with `r² = a² + rest`, also where `a` is nearly `−r`.
fn log_of_sum(a: f64, r: f64, rest: f64) -> f64 {
    if a >= 0.0 {
        (a + r).max(f64::MIN_POSITIVE).ln()
    } else {
        (rest.max(f64::MIN_POSITIVE) / (r - a)).ln()
    }
}

/// `1/(a + r)` likewise.
fn over_sum(a: f64, r: f64, rest: f64) -> f64 {
    if a >= 0.0 {
        1.0 / (a + r)
    } else {
        (r - a) / rest.max(f64::MIN_POSITIVE)
    }
}

fn sums(from: [f64; 3], patch: &Patch, slopes: bool) -> Sums {
    let (u, v) = patch.sides();
    let offset = |axis: usize| patch.centre[axis] - from[axis];
    let (s, t, h) = (offset(u), offset(v), offset(patch.axis));
    let mut sums = Sums::default();
    for (sign, su, sv) in [
        (1.0, 1.0, 1.0),
        (-1.0, -1.0, 1.0),
        (-1.0, 1.0, -1.0),
        (1.0, -1.0, -1.0),
    ] {
        sums.add(
            sign,
            s + su * patch.half[u],
            t + sv * patch.half[v],
            h,
            slopes,
        );
    }
    sums
}

/// Kelvin's displacement over a patch: the force at `from`, the answer integrated over the patch.
pub fn kelvin(from: [f64; 3], patch: &Patch, nu: f64) -> Kernel<f64> {
    let sums = sums(from, patch, false);
    let local = local(patch);
    let (k, k3) = (scale(nu), 3.0 - 4.0 * nu);
    let mut single = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in i..3 {
            let value = k * sums.second[i][j] + if i == j { k * k3 * sums.over } else { 0.0 };
            single[local[i]][local[j]] = value;
            single[local[j]][local[i]] = value;
        }
    }
    single
}

/// Axes along the patch's sides and across it.
fn local(patch: &Patch) -> [usize; 3] {
    let (u, v) = patch.sides();
    [u, v, patch.axis]
}

/// Kelvin's traction over a patch, its normal against its axis.
pub fn kelvin_traction(from: [f64; 3], patch: &Patch, nu: f64) -> Kernel<f64> {
    traction(&sums(from, patch, true), local(patch), nu)
}

/// Kelvin's traction over a patch in whose plane the force lies, times the distance along either side from its middle.
pub fn plane_moments(from: [f64; 3], patch: &Patch, nu: f64) -> [Kernel<f64>; 2] {
    let sums = sums(from, patch, true);
    let local = local(patch);
    let k = 2.0 * scale(nu) * (1.0 - 2.0 * nu);
    let second = |i: usize, j: usize| sums.second[i.min(j)][i.max(j)];
    std::array::from_fn(|side| {
        let middle = patch.centre[local[side]] - from[local[side]];
        let mut moments = [[0.0; 3]; 3];
        for i in 0..2 {
            let moment = k * (second(i, side) - middle * sums.first[i]);
            moments[local[i]][local[2]] = -moment;
            moments[local[2]][local[i]] = moment;
        }
        moments
    })
}

fn traction(sums: &Sums, local: [usize; 3], nu: f64) -> Kernel<f64> {
    let (k, slack) = (2.0 * scale(nu), 1.0 - 2.0 * nu);
    let mut double = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in i..3 {
            double[local[i]][local[j]] = k * sums.third[i][j];
            double[local[j]][local[i]] = k * sums.third[i][j];
        }
    }
    for i in 0..3 {
        double[local[i]][local[i]] += k * slack * sums.first[2];
        double[local[i]][local[2]] -= k * slack * sums.first[i];
        double[local[2]][local[i]] += k * slack * sums.first[i];
    }
    double
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::halfspace::kernel;

    /// The same integrals by brute force.
    fn by_points(from: [f64; 3], patch: &Patch, nu: f64, traction: bool) -> Kernel<f64> {
        let (u, v) = patch.sides();
        let n = 400;
        let mut total = [[0.0; 3]; 3];
        for a in 0..n * n {
            let mut r = [0, 1, 2].map(|axis| patch.centre[axis] - from[axis]);
            r[u] += patch.half[u] * (2.0 * (f64::from(a / n) + 0.5) / f64::from(n) - 1.0);
            r[v] += patch.half[v] * (2.0 * (f64::from(a % n) + 0.5) / f64::from(n) - 1.0);
            let k = if traction {
                kernel::kelvin_traction(r, nu, patch.axis)
            } else {
                kernel::kelvin(r, nu)
            };
            for i in 0..3 {
                for j in 0..3 {
                    total[i][j] += k[i][j] * patch.area() / f64::from(n * n);
                }
            }
        }
        total
    }

    #[test]
    fn closed_forms_agree_with_many_points() {
        for axis in 0..3 {
            let mut half = [0.3, 0.2, 0.25];
            half[axis] = 0.0;
            let patch = Patch {
                centre: [0.5, 0.4, 0.9],
                half,
                axis,
                free: true,
            };
            for from in [
                [0.1, 0.2, 0.4],
                [0.5, 0.4, 0.2],
                [1.4, 0.35, 0.9],
                [0.5, 1.0, 1.9],
            ] {
                let (single, double) = (
                    kelvin(from, &patch, 0.3),
                    kelvin_traction(from, &patch, 0.3),
                );
                let (s, d) = (
                    by_points(from, &patch, 0.3, false),
                    by_points(from, &patch, 0.3, true),
                );
                for i in 0..3 {
                    for j in 0..3 {
                        assert!(
                            (single[i][j] - s[i][j]).abs() < 2e-5 * s[0][0].abs(),
                            "{axis} {from:?} {single:?} {s:?}"
                        );
                        assert!(
                            (double[i][j] - d[i][j]).abs() < 2e-4 * d[axis][axis].abs().max(0.01),
                            "{axis} {from:?} {double:?} {d:?}"
                        );
                    }
                }
            }
        }
    }
}
