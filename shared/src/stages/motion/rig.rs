//! The rig: block, joint, column, mount and load as one plane frame, from the stages before.
//!
//! The two upright planes do not know of each other: the column is round and the block's sides run along x and y. In
//! each plane a turn is positive that carries the top towards the positive axis.

use crate::brief::Brief;
use crate::rules::dobry_gazetas_1986::dashpot;
use crate::rules::pais_kausel_1988::dynamic;
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::{GroundStiffness, Stiffness};
use crate::stages::pier::Pier;
use crate::units::{
    STANDARD_GRAVITY_M_S2, kilogram, kilogram_square_metre, kilonewton_per_cubic_metre, megapascal,
    metre, metre_per_second, millimetre, newton, newton_metre_per_radian, newton_per_metre,
    newton_per_radian, newton_square_metre,
};

/// Which upright plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Axis {
    /// East and west.
    X,
    /// North and south.
    Y,
}

/// Damping of the parts as ratios of critical.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Losses {
    /// The ground's own material.
    pub ground: f64,
    /// Plate, studs and grout.
    pub joint: f64,
    /// Tube and fill.
    pub column: f64,
    /// Mount.
    pub mount: f64,
}

/// All of one plane, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rig {
    /// Ground about the base's centre: sway, coupling, rocking.
    pub ground: [f64; 3],
    /// Dashpots of the ground; none: no radiation.
    pub radiation: Option<dashpot::Block>,
    /// Mass of the block.
    pub block_mass: f64,
    /// Height of its centre over the base.
    pub block_centre: f64,
    /// Inertia about its centre.
    pub block_inertia: f64,
    /// Height of the column's foot over the base.
    pub foot: f64,
    /// Spring of the joint.
    pub joint: f64,
    /// Mass of the base plate.
    pub base_plate: f64,
    /// Height of the column.
    pub height: f64,
    /// E·I.
    pub bending: f64,
    /// κ·G·A.
    pub shear: f64,
    /// Mass of tube and fill.
    pub shaft: f64,
    /// Radius of gyration of the section.
    pub gyration: f64,
    /// Mass of the top plate.
    pub top_plate: f64,
    /// Spring of the mount.
    pub mount: f64,
    /// Mass of the load.
    pub load: f64,
    /// Height of its centre over the column.
    pub centre: f64,
    /// Its inertia about its own centre.
    pub inertia: f64,
    /// Damping of the parts.
    pub losses: Losses,
}

impl Rig {
    /// The rig in one plane; none where the ground is not known.
    pub fn new(
        axis: Axis,
        brief: &Brief,
        ground: &Ground,
        block: &Block,
        stiffness: &GroundStiffness,
        pier: &Pier,
    ) -> Option<Self> {
        let (along, across) = match axis {
            Axis::X => (block.length, block.width),
            Axis::Y => (block.width, block.length),
        };
        let tall = metre::get(block.depth + block.upstand);
        let (along, across) = (metre::get(along), metre::get(across));
        let mass = kilogram::get(block.mass);
        let depth = metre::get(block.depth);
        let load = &brief.load;
        let [shaft, top_plate, all] =
            [pier.shaft_mass, pier.top_plate_mass, pier.mass].map(kilogram::get);
        Some(Self {
            ground: springs(axis, &stiffness.typical)?,
            radiation: ground.shear_modulus.map(|g| {
                let density = kilonewton_per_cubic_metre::get(ground.unit_weight) * 1e3
                    / STANDARD_GRAVITY_M_S2;
                let speed = ground
                    .shear_wave_speed
                    .map_or((megapascal::get(g.typical) * 1e6 / density).sqrt(), |v| {
                        metre_per_second::get(v.typical)
                    });
                dashpot::Block {
                    density,
                    shear_speed: speed,
                    poisson_ratio: ground.poisson_ratio.min(0.45),
                    length: along,
                    width: across,
                    contact_from: (depth - metre::get(block.side_contact_to)).max(0.0),
                    contact_to: (depth - metre::get(block.side_contact_from)).max(0.0),
                }
            }),
            block_mass: mass,
            block_centre: tall / 2.0,
            block_inertia: mass * (tall * tall + along * along) / 12.0,
            foot: tall + millimetre::get(pier.gap) / 1e3,
            joint: newton_metre_per_radian::get(pier.base_joint_stiffness),
            base_plate: (all - shaft - top_plate).max(0.0),
            height: metre::get(pier.height),
            bending: newton_square_metre::get(pier.bending_stiffness),
            shear: newton::get(pier.shear_stiffness),
            shaft,
            gyration: gyration(metre::get(pier.outside_diameter), metre::get(pier.wall)),
            top_plate,
            mount: newton_metre_per_radian::get(load.mount_stiffness.value),
            load: kilogram::get(load.mass.value),
            centre: metre::get(load.centre_above_pier.value),
            inertia: kilogram_square_metre::get(load.inertia.value),
            losses: losses(brief),
        })
    }

    /// The same rig in ground of this stiffness, whose shear modulus is so many times the typical one.
    pub fn held(&self, axis: Axis, held: &Stiffness, modulus_ratio: f64) -> Option<Self> {
        Some(Self {
            ground: springs(axis, held)?,
            ..self.in_ground(modulus_ratio)
        })
    }

    /// The same rig in even ground whose shear modulus is so many times the typical one.
    pub fn in_ground(&self, modulus_ratio: f64) -> Self {
        let radiation = self.radiation.map(|block| dashpot::Block {
            shear_speed: block.shear_speed * modulus_ratio.sqrt(),
            ..block
        });
        Self {
            ground: self.ground.map(|k| k * modulus_ratio),
            radiation,
            ..*self
        }
    }
}

impl Rig {
    /// Stiffness of the ground against a swing of a circular frequency over that against a steady push: the ground's own
    /// mass goes along. That of rocking is taken for all of it; sway keeps its own.
    pub fn ground_dynamic_ratio(&self, omega: f64) -> f64 {
        let Some(block) = self.radiation else {
            return 1.0;
        };
        let (short, long) = (block.length.min(block.width), block.length.max(block.width));
        let a0 = (omega * 0.5 * short / block.shear_speed).min(HIGHEST_A0);
        if block.length <= block.width {
            dynamic::rocking_short_ratio(long / short, a0)
        } else {
            dynamic::rocking_long_ratio(long / short, a0)
        }
    }
}

impl Rig {
    /// Turn of a load that is bolted to the column, under a steady force at its centre and one at the column's middle:
    /// ground, joint and bending one after another, in closed form.
    ///
    /// It is what the modes of a rigid load add up to under the same forces; shear turns no section.
    pub fn steady_turn(&self, at_load_n: f64, at_middle_n: f64) -> f64 {
        let [sway, coupling, rocking] = self.ground;
        let (above_foot, middle) = (self.height + self.centre, 0.5 * self.height);
        let force = at_load_n + at_middle_n;
        let moment = at_load_n * (self.foot + above_foot) + at_middle_n * (self.foot + middle);
        let determinant = sway * rocking - coupling * coupling;
        let block = (sway * moment - coupling * force) / determinant;
        let joint = (at_load_n * above_foot + at_middle_n * middle) / self.joint;
        let column = (at_load_n * self.height * (0.5 * self.height + self.centre)
            + at_middle_n * 0.5 * middle * middle)
            / self.bending;
        block + joint + column
    }
}

/// Frequency up to which the ground's factors are given, as a₀.
const HIGHEST_A0: f64 = 1.5;

/// Springs of the ground in one plane: sway, coupling, rocking.
fn springs(axis: Axis, held: &Stiffness) -> Option<[f64; 3]> {
    let (sway, coupling, rocking) = match axis {
        Axis::X => (held.horizontal_x?, held.coupling_x_ry?, held.rocking_y?),
        // A right-handed turn about x carries the top towards −y; the plane's own turn is the opposite one.
        Axis::Y => (held.horizontal_y?, -held.coupling_y_rx?, held.rocking_x?),
    };
    Some([
        newton_per_metre::get(sway),
        newton_per_radian::get(coupling),
        newton_metre_per_radian::get(rocking),
    ])
}

/// Radius of gyration of a tube: √(D² + d²)/4.
fn gyration(outside: f64, wall: f64) -> f64 {
    let inside = (outside - 2.0 * wall).max(0.0);
    outside.hypot(inside) / 4.0
}

/// Damping of the parts: small-strain values at the still end of what is published for each.
fn losses(brief: &Brief) -> Losses {
    Losses {
        // Material damping of soil at strains below 10⁻⁵: 1 to 3 per cent.
        ground: 0.02,
        joint: match brief.pier.levelling.value {
            Levelling::Nuts => 0.005,
            Levelling::Grout => 0.01,
        },
        // Welded bare tube δ 0.012 to 0.015, tubes with sand 0.5 to 2 per cent, concrete δ 0.05.
        column: match brief.pier.fill.value {
            Fill::None => 0.002,
            Fill::Sand => 0.01,
            Fill::Concrete => 0.005,
        },
        mount: 0.01,
    }
}
