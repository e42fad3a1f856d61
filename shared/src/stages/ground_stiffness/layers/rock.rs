//! Rock below the base, at it, or higher up: the sum of what the soil holds at the sides and what carries the base.
//!
//! `K = K_emb + (K_base − K_b)` for rock at or below the base, `K = K_emb(D) − K_emb(s) + (η − 1) K_rock + K_base` for a
//! block let into it by `s`; the two meet at the rock's surface. Soil that is left under the base counts as
//! [`FILM_M`] thick at least, unless the plan says that the rock is washed clean.

use super::{Input, Layer};
use crate::figure::Unit;
use crate::halfspace::{self, Shape, Shelf, Solved};
use crate::rules::layer_on_rock::{self as rule, LOW_SHARE, factors, socket};
use crate::rules::pais_kausel_1988::Footing;
use crate::source::Source;
use crate::units::{Spread, megapascal, metre};

/// In words.
pub const NAME: &str = "rock below";
/// In words, where the ground itself is rock.
pub const FILM_NAME: &str = "a film of soil on the rock";
/// Factors of the layer between base and rock.
pub const SOURCE: Source = rule::SOURCE;
/// How the two are put together.
pub const FORM: &str = "f = (K + K_base − K_b)/K, K_base = 1/[1/(f_r K_b) + (1 − 1/f_r)/K_rock], f_r of R/h; K_b and K_rock on the surface of soil and of rock";
/// The same for a film on rock.
pub const FILM_FORM: &str =
    "f = (K − K_rock + K_base)/K, K_base = 1/[1/(f_r K_b) + (1 − 1/f_r)/K_rock], f_r of R/h";
/// What rock does to the lean under a weight on the ground.
pub const LEAN_FORM: &str = "f = min(e^(−(r/H)²), 1/f_K), r to the block's side and a quarter of a metre, H to the rock; soft ground: 1/f_K";
/// Thinnest soil or dirt that is left under a base on rock which nobody has washed: judgement. A millimetre costs a base on
/// hard rock a seventh of its stiffness, ten of them two thirds.
pub const FILM_M: f64 = 0.005;
/// So far from the block's side the lean's factor is taken, for every distance: farther off the rock spares more.
const NEAR_M: f64 = 0.25;

/// Least factor on the lean: the rock itself gives way by some such share of what soil does, and a factor of nought has no
/// logarithm to add doubts to. Judgement.
const LEAST_LEAN: f64 = 1e-3;

/// One kind of ground in this calculation, in the units of the formula.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Modulus {
    /// Shear modulus, MPa.
    pub mpa: Spread<f64>,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
}

/// Rock under softer ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rock {
    /// Depth of its surface below ground.
    pub depth_m: f64,
    /// Whether it is washed clean before the pour.
    pub washed: bool,
    /// The soil round the block.
    pub soil: Modulus,
    /// The rock.
    pub rock: Modulus,
}

/// Rock at a depth below ground; none where the shapes that it takes cannot be solved.
pub fn layer(rock: &Rock, solved: &Solved, shelf: &dyn Shelf) -> Option<Layer> {
    let shape = &solved.shape;
    let found = Parts::find(rock, solved, shelf)?;
    let held = (shape.contact_to_m - shape.contact_from_m) / shape.depth_m.max(f64::MIN_POSITIVE);
    let near = rule::nearness(area_radius(shape) / found.film_m);
    let [typical, high] = rule::excess(held, near);
    let (soil, stone) = (rock.soil.mpa, rock.rock.mpa);
    let sum = |axis: usize, soil: f64, stone: f64| {
        let embedded = solved.stiffness_over_g[axis][axis] * soil;
        found.sum(axis, embedded, soil, stone) / embedded
    };
    let gain = |axis: usize, soil: f64, stone: f64| {
        let embedded = solved.stiffness_over_g[axis][axis];
        found.sides_gain(axis, embedded, soil, stone) / embedded
    };
    let sums: [Spread<f64>; 6] = std::array::from_fn(|axis| Spread {
        low: LOW_SHARE * sum(axis, soil.low, stone.low),
        typical: sum(axis, soil.typical, stone.typical) + gain(axis, soil.typical, stone.typical),
        high: sum(axis, soil.high, stone.high) + gain(axis, soil.high, stone.high),
    });
    let stiffness = std::array::from_fn(|axis| {
        // The elements' torsion exceeds the sum by no more than other components do with free sides; in sway the sum holds what
        // the sides gain by the rock.
        let [typical, high] = match axis {
            0 | 1 => [0.0, rule::SWAY_EXCESS_RATIO * near],
            5 => [0.0, 0.10 * near],
            _ => [typical, high],
        };
        Spread {
            low: sums[axis].low.max(1.0),
            typical: ((1.0 + typical) * sums[axis].typical).max(1.0),
            high: ((1.0 + high) * sums[axis].high).max(1.0),
        }
    });
    let inputs = found.inputs(&soil, &stone);
    Some(Layer::with_roots(NAME, stiffness, lean(rock.depth_m, shape, &sums)).told(inputs))
}

/// Dirt under a block in ground that is rock all the way up: the film on it is taken as soil of the modulus given.
pub fn film(dirt: &Modulus, rock: &Modulus, solved: &Solved, shelf: &dyn Shelf) -> Option<Layer> {
    let shape = &solved.shape;
    let parts = Parts {
        film_m: FILM_M,
        on_soil: surface(shape, dirt.poisson_ratio, shelf)?,
        on_rock: surface(shape, rock.poisson_ratio, shelf)?,
        free: [f64::INFINITY; 6],
        socket: None,
        radii: radii(shape),
        poisson_ratio: dirt.poisson_ratio,
    };
    let at = |axis: usize, dirt: f64, stone: f64| {
        let embedded = solved.stiffness_over_g[axis][axis] * stone;
        let lost = parts.on_rock[axis] * stone - parts.base(axis, dirt, stone);
        (1.0 - lost.max(0.0) / embedded).clamp(0.0, 1.0)
    };
    let (dirt, stone) = (dirt.mpa, rock.mpa);
    let stiffness: [Spread<f64>; 6] = std::array::from_fn(|axis| Spread {
        low: at(axis, dirt.low, stone.low),
        typical: at(axis, dirt.typical, stone.typical),
        high: at(axis, dirt.high, stone.high),
    });
    let inputs = parts.inputs(&dirt, &stone);
    Some(Layer::with_roots(FILM_NAME, stiffness, Spread::exactly(1.0)).told(inputs))
}

/// What the sum is made of, over the modulus of each.
struct Parts {
    film_m: f64,
    on_soil: [f64; 6],
    on_rock: [f64; 6],
    /// The block with free sides in even ground.
    free: [f64; 6],
    socket: Option<Socket>,
    radii: [f64; 6],
    poisson_ratio: f64,
}

/// The part of the block that is let into the rock.
struct Socket {
    /// A block of that depth in soil.
    in_soil: [f64; 6],
    /// Over the footing on the rock's surface.
    factors: [f64; 6],
}

impl Parts {
    fn find(rock: &Rock, solved: &Solved, shelf: &dyn Shelf) -> Option<Self> {
        let shape = &solved.shape;
        let free = solved.linings()?.full.stiffness_over_g;
        let below = rock.depth_m - shape.depth_m;
        let least = if rock.washed { 0.0 } else { FILM_M };
        Some(Self {
            film_m: below.max(least),
            on_soil: surface(shape, rock.soil.poisson_ratio, shelf)?,
            on_rock: surface(shape, rock.rock.poisson_ratio, shelf)?,
            free: std::array::from_fn(|axis| free[axis][axis]),
            socket: if below < 0.0 {
                Some(Socket::find(-below, rock, shape, shelf)?)
            } else {
                None
            },
            radii: radii(shape),
            poisson_ratio: rock.soil.poisson_ratio,
        })
    }

    /// The base on what soil lies between it and the rock.
    fn base(&self, axis: usize, soil: f64, stone: f64) -> f64 {
        let (on_soil, on_rock) = (self.on_soil[axis] * soil, self.on_rock[axis] * stone);
        if self.film_m <= 0.0 || on_rock <= on_soil {
            return on_rock.max(on_soil);
        }
        let (t, v) = (self.radii[axis] / self.film_m, self.poisson_ratio);
        let factor = match axis {
            0 | 1 => factors::sway_factor(t, v),
            2 => factors::vertical_factor(t, v),
            3 | 4 => factors::rocking_factor(t, v),
            _ => factors::torsion_factor(t),
        };
        rule::base_over_rock(factor, on_soil, on_rock)
    }

    /// The whole block's.
    fn sum(&self, axis: usize, embedded: f64, soil: f64, stone: f64) -> f64 {
        let (on_soil, on_rock) = (self.on_soil[axis] * soil, self.on_rock[axis] * stone);
        let base = self.base(axis, soil, stone);
        match &self.socket {
            // Rock that is no stiffer than the soil is left out.
            _ if on_rock <= on_soil => embedded,
            None => embedded + base - on_soil,
            Some(socket) => {
                let above = (embedded - socket.in_soil[axis] * soil).max(0.0);
                above + (socket.factors[axis] - 1.0) * on_rock + base
            }
        }
    }

    /// What the sides in the soil gain in sway by the rock, over the soil's modulus.
    fn sides_gain(&self, axis: usize, embedded: f64, soil: f64, stone: f64) -> f64 {
        let held = embedded - self.free[axis];
        if axis > 1 || held <= 0.0 {
            return 0.0;
        }
        // Of a block that is let into the rock only the part above it has soil at its sides.
        let beside = embedded - self.on_soil[axis];
        let above = self.socket.as_ref().map_or(1.0, |socket| {
            ((embedded - socket.in_soil[axis]) / beside).clamp(0.0, 1.0)
        });
        let base = self.base(axis, soil, stone) / (self.on_soil[axis] * soil);
        above * held * rule::sides_gain(base, stone / soil)
    }

    /// The inputs of the line of calculation: rocking about y in typical ground.
    fn inputs(&self, soil: &Spread<f64>, stone: &Spread<f64>) -> [Option<Input>; 4] {
        let unit = Unit::MeganewtonMetrePerRadian;
        [
            Some(("h", self.film_m, Unit::Metre)),
            Some(("R", self.radii[4], Unit::Metre)),
            Some(("K_b", self.on_soil[4] * soil.typical, unit)),
            Some(("K_rock", self.on_rock[4] * stone.typical, unit)),
        ]
    }
}

impl Socket {
    fn find(depth_m: f64, rock: &Rock, shape: &Shape, shelf: &dyn Shelf) -> Option<Self> {
        let raised = |contact: f64| (contact - rock.depth_m).clamp(0.0, depth_m);
        let (from, to) = (raised(shape.contact_from_m), raised(shape.contact_to_m));
        let part = Shape {
            depth_m,
            contact_from_m: from,
            contact_to_m: to,
            ..*shape
        };
        // Only where concrete is hard against the rock does it hold the block's sides.
        let held = to - from;
        let (longer, shorter) = (
            shape.length_m.max(shape.width_m),
            shape.length_m.min(shape.width_m),
        );
        let footing = Footing {
            shear_modulus: megapascal::new(rock.rock.mpa.typical),
            poisson_ratio: rock.rock.poisson_ratio,
            half_length: metre::new(longer / 2.0),
            half_width: metre::new(shorter / 2.0),
            depth: metre::new(held),
        };
        let radii = radii(shape);
        Some(Self {
            in_soil: diagonal(&part, shelf)?,
            factors: std::array::from_fn(|axis| match axis {
                0 | 1 => socket::sway_factor(held / radii[axis]),
                2 => socket::vertical_factor(&footing),
                3 | 4 => socket::rocking_factor(held / radii[axis]),
                _ => socket::torsion_factor(&footing),
            }),
        })
    }
}

/// Finite elements: a weight's dish is shallower by exp(−(r/H)²) at a distance r from the axis. Rock that carries the base
/// leans it no more than the same push would lean the stiffer block; what it may add beyond the sum is not counted on.
fn lean(rock_depth_m: f64, shape: &Shape, sums: &[Spread<f64>; 6]) -> Spread<f64> {
    let near = 0.5 * shape.length_m.min(shape.width_m) + NEAR_M;
    let dish = (-(near / rock_depth_m.max(1e-3)).powi(2))
        .exp()
        .max(LEAST_LEAN);
    let [x, y] = [sums[3], sums[4]];
    let over = |sum: f64| 1.0 / sum.max(1.0);
    Spread {
        low: over(x.low.min(y.low)),
        typical: dish.min(over(x.typical.min(y.typical))),
        high: dish.min(over(x.high.min(y.high))),
    }
}

/// The same plan on the surface.
fn surface(shape: &Shape, poisson_ratio: f64, shelf: &dyn Shelf) -> Option<[f64; 6]> {
    diagonal(
        &Shape {
            depth_m: 0.0,
            contact_from_m: 0.0,
            contact_to_m: 0.0,
            poisson_ratio,
            ..*shape
        },
        shelf,
    )
}

fn diagonal(shape: &Shape, shelf: &dyn Shelf) -> Option<[f64; 6]> {
    let k = halfspace::solved(shape, shelf).ok()?.stiffness_over_g;
    Some(std::array::from_fn(|axis| k[axis][axis]))
}

fn area_radius(shape: &Shape) -> f64 {
    (shape.length_m * shape.width_m / std::f64::consts::PI).sqrt()
}

/// The disc that each component feels: of equal area, of equal second moment, of equal polar moment.
fn radii(shape: &Shape) -> [f64; 6] {
    let (l, w) = (shape.length_m, shape.width_m);
    let area = area_radius(shape);
    let fourth = |moment: f64| (4.0 * moment / std::f64::consts::PI).powf(0.25);
    let (about_x, about_y) = (l * w.powi(3) / 12.0, w * l.powi(3) / 12.0);
    [
        area,
        area,
        area,
        fourth(about_x),
        fourth(about_y),
        fourth((about_x + about_y) / 2.0),
    ]
}
