//! A base plate on a round column, pulled by studs on a circle: the plate's bending solved in harmonics round the axis.
//!
//! Kirchhoff's plate of radius R_o, held along the wall's circle a by the wall, which lets it neither rise nor fall and
//! resists its slope like the edge of a long cylinder; the studs pull at the circle R_b. Each harmonic m has the closed
//! form A r^m + B r^(m+2) + C r^−m + D r^(2−m) (with logarithms for m of 0 and 1), inside the wall without the parts
//! that grow at the middle. Ten conditions at a, R_b and R_o give ten constants.

mod harmonic;

use nalgebra::{SMatrix, SVector};

use crate::source::Source;
use crate::units::{
    Force, Length, LinearStiffness, Pressure, kilopascal, metre, newton, newton_per_metre,
};
use harmonic::Shape;

/// The plate in harmonics.
pub const PLATE: Source = Source::from_memory(
    "Timoshenko & Woinowsky-Krieger, Theory of plates and shells",
    "1959",
    "art. 62 and 63",
);
/// Edge of a long cylinder.
pub const WALL: Source = Source::from_memory(
    "Timoshenko & Woinowsky-Krieger, Theory of plates and shells",
    "1959",
    "art. 114 and 115",
);

/// Harmonics that are summed; the last ones change the answer by less than a per mille.
const HARMONICS: usize = 24;
/// Poisson's ratio of steel.
const POISSON_RATIO: f64 = 0.3;

/// A base plate on a tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plate {
    /// Middle radius of the wall.
    pub wall_radius: Length,
    /// Thickness of the wall.
    pub wall: Length,
    /// Radius of the studs' circle.
    pub stud_radius: Length,
    /// Radius of the plate; half its side if it is square.
    pub outer_radius: Length,
    /// Thickness of the plate.
    pub thickness: Length,
    /// Modulus of elasticity.
    pub modulus: Pressure,
}

/// Bending stiffness of a plate per unit width, D = E t³/[12(1 − ν²)].
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 3.
pub fn rigidity(modulus: Pressure, thickness: Length) -> f64 {
    let modulus_pa = kilopascal::get(modulus) * 1000.0;
    modulus_pa * metre::get(thickness).powi(3) / (12.0 * (1.0 - POISSON_RATIO * POISSON_RATIO))
}

/// Decay of a disturbance along a cylinder, β = [3(1 − ν²)]^¼/√(a t), per metre.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 114.
pub fn wall_decay(radius: Length, wall: Length) -> f64 {
    (3.0 * (1.0 - POISSON_RATIO * POISSON_RATIO)).powf(0.25)
        / (metre::get(radius) * metre::get(wall)).sqrt()
}

/// Moment per length at the edge of a long cylinder for a slope of one, with the edge kept from moving sideways: 2 β D.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 115.
pub fn wall_stiffness(plate: &Plate) -> f64 {
    2.0 * wall_decay(plate.wall_radius, plate.wall) * rigidity(plate.modulus, plate.wall)
}

/// What one harmonic of the pull does, per newton for a metre of the studs' circle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Response {
    /// Movement at the studs, m.
    pub at_studs: f64,
    /// Slope at the wall, radians.
    pub wall_slope: f64,
    /// Moment per length in the plate just outside the wall, N.
    pub plate_moment: f64,
}

/// Solves one harmonic of a pull of 1 N/m on the studs' circle; none where the sizes leave nothing to solve.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 62 and 63.
///
/// # Valid for
/// Wall inside the studs, studs inside the plate; small slopes; the wall stiff along its own axis.
pub fn response(plate: &Plate, harmonic: usize) -> Option<Response> {
    let Solved {
        scale,
        studs,
        rigidity,
        shapes,
        constants,
        ..
    } = solve(plate, harmonic)?;
    let middle = |read: fn(&Shape, f64) -> f64, r: f64| -> f64 {
        (0..4).map(|i| constants[2 + i] * read(&shapes[i], r)).sum()
    };
    // A pull of 1 N/m has the unit D/a³ here: movements come out in a³/D, slopes in a²/D, moments in a.
    Some(Response {
        at_studs: middle(|shape, r| shape.value(r), studs) * scale.powi(3) / rigidity,
        wall_slope: middle(|shape, r| shape.slope(r), 1.0) * scale.powi(2) / rigidity,
        plate_moment: middle(harmonic::moment, 1.0) * scale,
    })
    .filter(|response| response.at_studs.is_finite())
}

/// One harmonic solved: its shapes and their constants, lengths in wall radii.
struct Solved {
    scale: f64,
    studs: f64,
    outer: f64,
    rigidity: f64,
    shapes: [Shape; 4],
    constants: SVector<f64, 10>,
}

fn solve(plate: &Plate, harmonic: usize) -> Option<Solved> {
    // Lengths in wall radii keep the system well scaled.
    let scale = metre::get(plate.wall_radius);
    let (studs, outer) = (
        metre::get(plate.stud_radius) / scale,
        metre::get(plate.outer_radius) / scale,
    );
    if !(studs > 1.0 && outer > studs && outer.is_finite()) {
        return None;
    }
    let rigidity = rigidity(plate.modulus, plate.thickness);
    // Slope stiffness of the wall in units of D/a.
    let wall = wall_stiffness(plate) * scale / rigidity;
    let shapes = harmonic::shapes(harmonic);
    let (matrix, load) = system(&shapes, studs, outer, wall);
    let constants = matrix.lu().solve(&load)?;
    Some(Solved {
        scale,
        studs,
        outer,
        rigidity,
        shapes,
        constants,
    })
}

impl Solved {
    /// Movement at a radius in wall radii, for the unit pull.
    fn movement(&self, r: f64) -> f64 {
        let (first, count) = match r {
            r if r < 1.0 => (0, 2),
            r if r <= self.studs => (2, 4),
            _ => (6, 4),
        };
        // The form without the logarithm is finite in the middle.
        let r = r.max(1e-9);
        (0..count)
            .map(|i| self.constants[first + i] * self.shapes[i].value(r))
            .sum::<f64>()
            * self.scale.powi(3)
            / self.rigidity
    }
}

/// The ten conditions: columns 0–1 inside the wall, 2–5 between wall and studs, 6–9 outside the studs.
fn system(
    shapes: &[Shape; 4],
    studs: f64,
    outer: f64,
    wall: f64,
) -> (SMatrix<f64, 10, 10>, SVector<f64, 10>) {
    let mut matrix = SMatrix::<f64, 10, 10>::zeros();
    for i in 0..4 {
        let shape = &shapes[i];
        if i < 2 {
            matrix[(0, i)] = shape.value(1.0);
            matrix[(2, i)] = shape.slope(1.0);
            matrix[(3, i)] = harmonic::moment(shape, 1.0) - wall * shape.slope(1.0);
        }
        let (middle, outside) = (2 + i, 6 + i);
        matrix[(1, middle)] = shape.value(1.0);
        matrix[(2, middle)] = -shape.slope(1.0);
        matrix[(3, middle)] = -harmonic::moment(shape, 1.0);
        let at_studs = [
            shape.value(studs),
            shape.slope(studs),
            harmonic::moment(shape, studs),
            harmonic::shear(shape, studs),
        ];
        for (row, value) in at_studs.into_iter().enumerate() {
            matrix[(4 + row, middle)] = value;
            matrix[(4 + row, outside)] = -value;
        }
        matrix[(8, outside)] = harmonic::moment(shape, outer);
        matrix[(9, outside)] = harmonic::shear(shape, outer);
    }
    let mut load = SVector::<f64, 10>::zeros();
    load[7] = 1.0;
    (matrix, load)
}

/// Stiffness of the plate at a stud when the column leans: the pull of a moment falls on the studs in proportion to
/// their levers, and the plate's answer is summed over the harmonics of those single pulls.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 62 and 63, with the studs as points.
///
/// # Valid for
/// Three studs or more, even on the circle; the stiffness is the mean over the studs, weighted with their pulls.
pub fn stiffness_per_stud(plate: &Plate, count: usize) -> Option<LinearStiffness> {
    let radius = metre::get(plate.stud_radius);
    let mut work = 0.0;
    // Pulls cos θ_i at even angles have the harmonics 1, n − 1, n + 1, 2n − 1, …, each of strength n/(2πR).
    for m in (0..HARMONICS).filter(|m| m % count == 1 || (m + 1) % count == 0) {
        let strength = count as f64 / (std::f64::consts::TAU * radius);
        work += strength * response(plate, m)?.at_studs;
    }
    (work > 0.0).then(|| newton_per_metre::new(1.0 / work))
}

/// Dishing of the plate and bending of the wall when every stud pulls alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dish {
    /// Movement of the plate at the studs.
    pub at_studs: Length,
    /// Slope of plate and wall where they meet, radians.
    pub slope_ratio: f64,
    /// Bending stress at the wall's root.
    pub wall_stress: Pressure,
    /// Bending stress in the plate just outside the wall.
    pub plate_stress: Pressure,
}

/// Dishes the plate: the mean of the pulls, n F/(2πR), as harmonic 0.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 62 and 115; surface stress 6 M/t².
///
/// # Valid for
/// A plate that bears under the wall only, with nothing under the studs; single studs peak higher near by.
pub fn dish(plate: &Plate, count: usize, pull: Force) -> Option<Dish> {
    let line =
        count as f64 * newton::get(pull) / (std::f64::consts::TAU * metre::get(plate.stud_radius));
    let response = response(plate, 0)?;
    let slope = response.wall_slope * line;
    let surface = |moment: f64, thickness: Length| {
        kilopascal::new((6.0 * moment / metre::get(thickness).powi(2)).abs() / 1000.0)
    };
    Some(Dish {
        at_studs: metre::new(response.at_studs * line),
        slope_ratio: slope,
        wall_stress: surface(wall_stiffness(plate) * slope, plate.wall),
        plate_stress: surface(response.plate_moment * line, plate.thickness),
    })
}

/// The dished plate in section: from the middle to the rim, each radius with its movement towards the pull.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 62: the shapes of [`dish`].
///
/// # Valid for
/// As [`dish`].
pub fn dish_section(
    plate: &Plate,
    count: usize,
    pull: Force,
    points: usize,
) -> Vec<(Length, Length)> {
    let line =
        count as f64 * newton::get(pull) / (std::f64::consts::TAU * metre::get(plate.stud_radius));
    let Some(solved) = solve(plate, 0) else {
        return Vec::new();
    };
    let steps = points.max(2) - 1;
    (0..=steps)
        .map(|i| solved.outer * i as f64 / steps as f64)
        .map(|r| {
            (
                metre::new(r * solved.scale),
                metre::new(solved.movement(r) * line),
            )
        })
        .collect()
}

/// The wall in section above the plate: each height with its movement outwards and its bending stress over that at the root,
/// w = θ/β e^(−βz) sin βz and σ/σ₀ = e^(−βz) cos βz.
///
/// # Source
/// Timoshenko & Woinowsky-Krieger 1959, art. 115, edge kept from moving sideways and turned by θ.
///
/// # Valid for
/// A wall longer than half a wave of its decay, π/β.
pub fn wall_section(
    plate: &Plate,
    slope_ratio: f64,
    height: Length,
    points: usize,
) -> Vec<(Length, Length, f64)> {
    let beta = wall_decay(plate.wall_radius, plate.wall);
    let steps = points.max(2) - 1;
    (0..=steps)
        .map(|i| metre::get(height) * i as f64 / steps as f64)
        .map(|z| {
            let (sine, cosine) = (beta * z).sin_cos();
            let dies = (-beta * z).exp();
            (
                metre::new(z),
                metre::new(slope_ratio / beta * dies * sine),
                dies * cosine,
            )
        })
        .collect()
}

#[cfg(test)]
mod tests;
