//! A rigid block in an elastic half-space: stiffness, contact, and where standing tilts it.
//!
//! # The problem
//! A rigid rectangular block stands in ground that is elastic, homogeneous and goes on for ever below a level surface.
//! Its base is bonded to the ground; its four sides are bonded between two depths and elsewhere face a wall of the hole
//! that is free of traction: a lining of foam, or the gap that formwork leaves. What moves a pier by an arcsecond strains
//! the ground by a millionth, so that elasticity is no idealisation here; that the ground is the same everywhere is one,
//! and [`layers`](crate::stages::ground_stiffness) says what it costs.
//!
//! # Kernels
//! Mindlin (1936) found the displacement `U` under a point force inside a half-space with a free surface: Kelvin's solution
//! for a body without end, and terms in the distance `R₂` from the force's mirror image ([`kernel`]). Its stresses, and so
//! the traction `T` on a plane, follow by differentiation; [`gradient`] carries slopes along with values, so that there is
//! no second formula to be wrong.
//!
//! # Equations
//! Somigliana's identity for the ground outside the block, at a point of the interface where it is smooth, is
//! `½ u + T u = U t`, the normal pointing from the ground into the block, `t` the traction on the ground. The ground that
//! used to fill the block's outline could follow any rigid motion `R q` without stress; its own identity, with the same
//! normal, is `½ R q = T R q`. Where the wall is free it moves by `w` more than the block, `u = R q + w`, so
//!
//! `U t = R q + (½ + T) w`, `t` on base and bonded sides, `w` on free walls.
//!
//! The rigid part is exact, whatever the mesh; within a free patch it is `u` that is held constant, not `w`, since far up a
//! free wall the ground hardly follows a turn of the block. With full contact there is no `w` and this is a plain single layer of
//! tractions. To leave the free patches out of a single layer would be another problem: it fills the gap with soil.
//!
//! # Discretisation
//! A quarter of the block is cut into rectangles, finer towards every edge and every end of contact ([`mesh`]); each
//! carries one vector `t` or `w`; the equations hold at the middles. Kelvin's part over a near patch is integrated in closed
//! form ([`rectangle`]), which gives a patch its own `1/R` and, for `T`, its own principal value of nought; all else by
//! Gauss's rule with as many points as the distance asks ([`assembly`]). The two planes of symmetry split the equations
//! into four systems: vertical; along x and about y; along y and about x; torsion ([`motions`]). With full contact the
//! matrix weighted by areas is symmetric, and Cholesky's factors serve; else Gauss's with pivoting ([`solve`](mod@solve)). A
//! shape is solved on two meshes and the answers taken to the limit.
//!
//! # Stiffness and influence
//! Forces and moments are sums of `t`. Row and column follow x, y, z, about x, about y, about z, right-handed with z up,
//! about the base's centre: a block pushed by its walls as it turns about y by a positive angle, its top towards +x, resists
//! with a force along x, so that the coupling of x with y's turn is positive and that of y with x's turn negative. By
//! Betti's theorem the surface's displacement under a unit of each motion, `∫U t − ∫T w`, is the load that a unit force
//! there puts on the block ([`influence`]). Everything scales with G, which is one here.
//!
//! # What it cannot do
//! The block does not bend, the ground does not yield, open or slide, and layers enter only as estimates. It is static:
//! a weight that rests, and what a pace of 4 Hz does near the pier, are slow enough for that (at 150 m/s the shear wave is 37 m
//! long); what a step's blow excites at the pier's own 20 Hz and more is so only within a metre or two. `docs/ground-validation.md` holds it against other methods.

pub mod assembly;
mod blocks;
#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod checks;
mod diagonal;
pub mod gradient;
pub mod influence;
pub mod kernel;
pub mod mesh;
mod mirrored;
pub mod motions;
mod part;
mod places;
mod push;
pub mod rectangle;
mod seen;
mod shelf;
pub mod solve;
mod surface;
mod weight;

use std::sync::{Arc, OnceLock};

pub use influence::on_block;
pub use shelf::{Before, NoShelf, Shelf, SmallShelf};
pub use solve::solve;

/// Most that the longer side may be of the shorter: beyond it a block of concrete bends and is not rigid.
pub const MOST_SIDE_RATIO: f64 = 10.0;
/// Most that the depth may be of the shorter side, for the same reason.
pub const MOST_DEPTH_RATIO: f64 = 10.0;
/// Largest Poisson's ratio: at one half the ground keeps its volume and the kernels of traction have no limit.
pub const MOST_POISSON_RATIO: f64 = 0.49;

/// Shape of a block and its contact with the ground: all that a solution over the shear modulus depends on. SI, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Length along x.
    pub length_m: f64,
    /// Width along y.
    pub width_m: f64,
    /// Depth of the base below ground; nought is a footing on the surface.
    pub depth_m: f64,
    /// Depth below ground from which the soil is hard against the sides.
    pub contact_from_m: f64,
    /// Depth to which it is; the same as `contact_from_m`: nowhere.
    pub contact_to_m: f64,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
}

/// Why a shape has no solution.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum Unsolvable {
    /// Sides not positive, or too unequal.
    #[error(
        "the block's sides must be positive, the longer at most ten times the shorter: {0} m and {1} m"
    )]
    Sides(f64, f64),
    /// Above ground, or too deep for its sides.
    #[error(
        "the block's base must lie at or below ground level and at most ten times the shorter side deep: {0} m"
    )]
    Depth(f64),
    /// Reversed or outside the block.
    #[error(
        "contact must lie between ground level and the base, from the upper depth to the lower: {0} m to {1} m"
    )]
    Contact(f64, f64),
    /// Out of range.
    #[error("Poisson's ratio must lie between 0 and 0.49: {0}")]
    Poisson(f64),
    /// The system of equations failed.
    #[error("the equations of this shape could not be solved")]
    Numbers,
}

impl Shape {
    /// Whether the shape is one that the method can solve.
    ///
    /// # Errors
    /// The first of its measures that is impossible or out of range.
    pub fn check(&self) -> Result<(), Unsolvable> {
        let (longer, shorter) = (
            self.length_m.max(self.width_m),
            self.length_m.min(self.width_m),
        );
        let finite = self.length_m.is_finite() && self.width_m.is_finite();
        if !(finite && shorter > 0.0 && longer <= MOST_SIDE_RATIO * shorter) {
            return Err(Unsolvable::Sides(self.length_m, self.width_m));
        }
        if !(self.depth_m >= 0.0 && self.depth_m <= MOST_DEPTH_RATIO * shorter) {
            return Err(Unsolvable::Depth(self.depth_m));
        }
        if !(self.contact_from_m >= 0.0
            && self.contact_from_m <= self.contact_to_m
            && self.contact_to_m <= self.depth_m)
        {
            return Err(Unsolvable::Contact(self.contact_from_m, self.contact_to_m));
        }
        if !(0.0..=MOST_POISSON_RATIO).contains(&self.poisson_ratio) {
            return Err(Unsolvable::Poisson(self.poisson_ratio));
        }
        Ok(())
    }

    /// The same block with soil hard against its sides from top to base.
    pub fn bonded(self) -> Self {
        Self {
            contact_from_m: 0.0,
            contact_to_m: self.depth_m,
            ..self
        }
    }

    /// The same block lined from the surface down to a depth, bonded below.
    pub fn lined_to(self, depth_m: f64) -> Self {
        Self {
            contact_from_m: depth_m.min(self.depth_m),
            contact_to_m: self.depth_m,
            ..self
        }
    }
}

/// A solved block: stiffness over G and what is needed for the influence of loads on the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Solved {
    /// The shape that was solved.
    pub shape: Shape,
    /// Stiffness about the base's centre over G, rows and columns in the order x, y, z, about x, about y, about z.
    pub stiffness_over_g: [[f64; 6]; 6],
    /// Its inverse.
    pub flexibility_times_g: [[f64; 6]; 6],
    surfaces: Vec<surface::Surface>,
    linings: OnceLock<Option<Linings>>,
    places: places::Places<[f64; 6]>,
    pushed: places::Places<[[f64; 6]; 2]>,
    part: part::Part,
}

/// The same block with other contact, for comparison: quickly solved, within a few per cent.
#[derive(Debug, Clone, PartialEq)]
pub struct Linings {
    /// Soil hard against the sides all the way.
    pub bonded: Arc<Solved>,
    /// Lined from the surface to half the depth.
    pub half: Arc<Solved>,
    /// Lined to the base.
    pub full: Arc<Solved>,
}

impl Solved {
    /// The same block bonded, half lined and fully lined; solved when first asked for and kept with this solution.
    pub fn linings(&self) -> Option<&Linings> {
        let depth_m = self.shape.depth_m;
        let quick = |shape: Shape| {
            if shape == self.shape {
                // Without its own comparison, which nobody asks of it.
                return Some(Arc::new(Self {
                    linings: OnceLock::new(),
                    ..self.clone()
                }));
            }
            solve::quick(&shape).map(Arc::new)
        };
        let find = || {
            let bonded = quick(self.shape.bonded())?;
            Some(Linings {
                bonded,
                half: quick(self.shape.lined_to(depth_m / 2.0))?,
                full: quick(self.shape.lined_to(depth_m))?,
            })
        };
        self.linings.get_or_init(find).as_ref()
    }
}

fn inverse(stiffness: &[[f64; 6]; 6]) -> Option<[[f64; 6]; 6]> {
    let inverse = nalgebra::Matrix6::from_fn(|i, j| stiffness[i][j]).try_inverse()?;
    Some(std::array::from_fn(|i| {
        std::array::from_fn(|j| inverse[(i, j)])
    }))
}

fn apply_to_matrix(left: &[[f64; 6]; 6], right: &[[f64; 6]; 6]) -> [[f64; 6]; 6] {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..6).map(|k| left[i][k] * right[k][j]).sum()))
}

/// The solution of a shape, from the shelf where it is kept, else solved and kept there.
///
/// # Errors
/// A shape that the method cannot solve.
///
/// # Example
/// ```
/// use stillground::halfspace::{NoShelf, Shape, solved};
/// let cube = Shape { length_m: 1.0, width_m: 1.0, depth_m: 1.0, contact_from_m: 0.0, contact_to_m: 1.0, poisson_ratio: 0.35 };
/// let rocking_over_g = solved(&cube, &NoShelf)?.stiffness_over_g[4][4];
/// assert!((rocking_over_g - 6.1).abs() < 0.1);
/// # Ok::<(), stillground::halfspace::Unsolvable>(())
/// ```
pub fn solved(shape: &Shape, shelf: &dyn Shelf) -> Result<Arc<Solved>, Unsolvable> {
    shape.check()?;
    if let Some(kept) = shelf.get(shape) {
        return Ok(kept);
    }
    let solved = Arc::new(solve(shape).ok_or(Unsolvable::Numbers)?);
    shelf.put(shape, Arc::clone(&solved));
    Ok(solved)
}
