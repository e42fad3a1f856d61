//! The foot's turn: how stiffly the base plate holds the column upright, on nuts or on grout, closed or open.
//!
//! On nuts the bond of the studs, their free length and the plate between wall and studs give one behind the other,
//! whatever the torque. On grout the preload keeps plate and grout closed, and the joint turns like a rigid disc on the
//! concrete (ribs are not counted: they make it stiffer); when the preload is gone, or the moment is greater than what opens it, the studs have to stretch.

mod lines;

use serde::Serialize;

use crate::brief::Brief;
use crate::brief::anchors::Product;
use crate::rules::aisc_360_16::wall;
use crate::rules::annular_plate::{self, Plate};
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::en_1993_1_8_2005::{base_plate, t_stub};
use crate::rules::vdi_2230_2015::loss;
use crate::rules::{resin, stud_group};
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::tightening_is_known;
use crate::stages::block::Block;
use crate::stages::steel::Grade;
use crate::units::{
    Area, Length, LinearStiffness, Pressure, RotationalStiffness, Spread, megapascal, millimetre,
    newton, newton_metre_per_radian, newton_per_metre,
};

pub use lines::workings;

/// How much softer the bond may be than its short-term displacement factor says: cracked against uncracked concrete in
/// the same assessment, 0.037 against 0.020.
const SOFT_BOND_FACTOR: f64 = 1.85;
/// Poisson's ratio of concrete.
const CONCRETE_POISSON_RATIO: f64 = 0.2;
/// Stiffer than any foot: what stands for "gives nothing".
const RIGID_N_PER_M: f64 = 1e15;

/// The foot's turning stiffness and its parts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Joint {
    /// Where the preload goes.
    pub seat: Seat,
    /// Turning stiffness: low, expected, high.
    #[serde(
        rename = "stiffness_n_m_per_rad",
        with = "newton_metre_per_radian::spread"
    )]
    pub stiffness: Spread<RotationalStiffness>,
    /// The same with the joint open, studs alone.
    #[serde(rename = "open_n_m_per_rad", with = "newton_metre_per_radian")]
    pub open: RotationalStiffness,
    /// Bond of one stud.
    #[serde(rename = "bond_n_per_m", with = "newton_per_metre")]
    pub bond: LinearStiffness,
    /// Free length of one stud.
    #[serde(rename = "bar_n_per_m", with = "newton_per_metre")]
    pub bar: LinearStiffness,
    /// Plate between wall and one stud.
    #[serde(rename = "plate_n_per_m", with = "newton_per_metre")]
    pub plate: LinearStiffness,
    /// Radius of the disc that presses, where the joint is closed.
    #[serde(rename = "disc_radius_mm", with = "millimetre")]
    pub disc_radius: Length,
    /// What gives on grout once the joint opens; null on nuts.
    pub opened: Option<Opened>,
}

/// What gives on grout once the joint opens, as lengths of EN 1993-1-8.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Opened {
    /// From the pulled studs to the pressed wall.
    #[serde(rename = "lever_mm", with = "millimetre")]
    pub lever: Length,
    /// Studs and plate in tension, k_T.
    #[serde(rename = "pulled_mm", with = "millimetre")]
    pub pulled: Length,
    /// Concrete in compression, k_C.
    #[serde(rename = "pressed_mm", with = "millimetre")]
    pub pressed: Length,
}

/// Finds the foot's joint from the brief and the block's concrete.
pub fn base_joint(brief: &Brief, block: &Block) -> Joint {
    joint_on(brief, block, Seat::of(brief))
}

/// The same as if the plate stood in a given way.
pub fn joint_on(brief: &Brief, block: &Block, seat: Seat) -> Joint {
    let springs = Springs::find(brief, seat);
    let ring = |bond: LinearStiffness| {
        let stud = loss::in_series(loss::in_series(bond, springs.bar), springs.plate);
        stud_group::ring_stiffness(brief.anchors.number(), springs.radius, stud)
    };
    let on_studs = Spread {
        low: ring(springs.bond / SOFT_BOND_FACTOR),
        typical: ring(springs.bond),
        high: ring(newton_per_metre::new(RIGID_N_PER_M)),
    };
    let radius = disc_radius(brief, block, seat);
    let closed = base_plate::closed(block.elastic_modulus, CONCRETE_POISSON_RATIO, radius);
    // A preload that nothing vouches for is not relied on.
    let held = |open| {
        if tightening_is_known(brief) {
            closed
        } else {
            least(open, closed)
        }
    };
    let opened = (seat == Seat::Bedded).then(|| open_on_grout(brief, block));
    let (stiffness, open) = match seat {
        Seat::Nuts => (on_studs, on_studs.typical),
        Seat::Bedded => {
            let open = opened.map_or(on_studs.typical, |parts| {
                base_plate::joint(steel(), parts.lever, parts.pulled, parts.pressed)
            });
            (
                Spread {
                    low: least(open, closed),
                    typical: held(open),
                    high: closed,
                },
                open,
            )
        }
        Seat::Dished => (
            Spread {
                low: least(on_studs.low, closed),
                typical: held(on_studs.typical),
                high: closed,
            },
            on_studs.typical,
        ),
    };
    Joint {
        seat,
        stiffness,
        open,
        bond: springs.bond,
        bar: springs.bar,
        plate: springs.plate,
        disc_radius: radius,
        opened,
    }
}

fn least(a: RotationalStiffness, b: RotationalStiffness) -> RotationalStiffness {
    if newton_metre_per_radian::get(a) < newton_metre_per_radian::get(b) {
        a
    } else {
        b
    }
}

/// Steel's modulus.
fn steel() -> Pressure {
    megapascal::new(material::E_MPA)
}

/// What gives at one stud.
struct Springs {
    bond: LinearStiffness,
    bar: LinearStiffness,
    plate: LinearStiffness,
    radius: Length,
}

impl Springs {
    fn find(brief: &Brief, seat: Seat) -> Self {
        let anchors = &brief.anchors;
        let thread = anchors.thread();
        let Product {
            displacement_short, ..
        } = &anchors.product;
        let rigid = newton_per_metre::new(RIGID_N_PER_M);
        Self {
            bond: resin::bond_stiffness(
                thread.diameter,
                anchors.embedment.value,
                displacement_short.value,
            ),
            bar: bar(steel(), thread.stress_area, bar_length(brief, seat)),
            plate: annular_plate::stiffness_per_stud(&plate(brief), anchors.number())
                .unwrap_or(rigid),
            radius: anchors.circle_diameter.value / 2.0,
        }
    }
}

/// Length of a stud that is free to stretch.
fn bar_length(brief: &Brief, seat: Seat) -> Length {
    let pier = &brief.pier;
    match seat {
        Seat::Nuts => pier.gap.value,
        Seat::Bedded | Seat::Dished => pier.gap.value + pier.plate_thickness.value,
    }
}

/// Stiffness of that length; where there is none it gives nothing.
fn bar(modulus: Pressure, area: Area, length: Length) -> LinearStiffness {
    if millimetre::get(length) > 0.0 {
        loss::bar_stiffness(modulus, area, length)
    } else {
        newton_per_metre::new(RIGID_N_PER_M)
    }
}

/// The wall that the joint's stiffness counts with, as the column's own does.
fn counted_wall(brief: &Brief) -> Length {
    wall::counted(brief.pier.steel.value, brief.pier.wall.value)
}

/// The base plate as a round one of half its side, under the wall that stiffness counts with.
pub fn plate(brief: &Brief) -> Plate {
    plate_under(brief, counted_wall(brief))
}

/// The same under a wall of a given thickness.
fn plate_under(brief: &Brief, wall: Length) -> Plate {
    let pier = &brief.pier;
    let wall_radius = (pier.outside_diameter.value - wall) / 2.0;
    let stud_radius = brief.anchors.circle_diameter.value / 2.0;
    // Four studs stand in the corners of a square plate, beyond the circle inside it.
    let rim = stud_radius + brief.anchors.thread().plate_hole;
    let half_side = pier.plate_side.value / 2.0;
    let outer_radius = if half_side > rim { half_side } else { rim };
    Plate {
        wall_radius,
        wall,
        stud_radius,
        outer_radius,
        thickness: pier.plate_thickness.value,
        modulus: steel(),
    }
}

/// The plate under the wall that pulls of the studs stress the most, wall or plate itself. A mill may deliver a wall anywhere from
/// the design wall to the nominal one: a slim wall is weaker, and a thick one draws more of the bending where a stiff plate turns it.
pub fn plate_stressed_most(brief: &Brief, count: usize) -> Plate {
    let stress = |plate: &Plate| {
        let dish = annular_plate::dish(plate, count, newton::new(1.0));
        dish.map_or(0.0, |dish| {
            megapascal::get(dish.wall_stress).max(megapascal::get(dish.plate_stress))
        })
    };
    let [slim, whole] =
        [counted_wall(brief), brief.pier.wall.value].map(|wall| plate_under(brief, wall));
    if stress(&whole) > stress(&slim) {
        whole
    } else {
        slim
    }
}

/// Radius of the disc that presses on the concrete: the column with the plate's effective width, at most half the plate.
fn disc_radius(brief: &Brief, block: &Block, seat: Seat) -> Length {
    let pier = &brief.pier;
    let column = pier.outside_diameter.value / 2.0;
    if seat == Seat::Dished {
        return column;
    }
    let width = base_plate::effective_width(
        pier.plate_thickness.value,
        Grade::of(pier.steel.value).yield_strength(pier.plate_thickness.value),
        base_plate::bearing(block.strength, 1.5),
    );
    millimetre::new(
        millimetre::get(column + width).min(millimetre::get(pier.plate_side.value) / 2.0),
    )
}

/// Turning stiffness with the grout open on the pulled side, from its parts: half the studs pull, a quarter of the wall
/// presses.
fn open_on_grout(brief: &Brief, block: &Block) -> Opened {
    let (pier, thread) = (&brief.pier, brief.anchors.thread());
    let (radius, column) = (
        brief.anchors.circle_diameter.value / 2.0,
        pier.outside_diameter.value / 2.0,
    );
    let lever = t_stub::lever(radius, pier.outside_diameter.value, pier.weld_leg.value);
    let lever = if millimetre::get(lever) > 1.0 {
        lever
    } else {
        millimetre::new(1.0)
    };
    let edge = pier.plate_side.value / 2.0 - radius * std::f64::consts::FRAC_1_SQRT_2;
    let length = t_stub::effective_length(lever, edge, millimetre::new(1e6));
    let stretched = t_stub::stretched_length(
        thread.diameter,
        pier.gap.value,
        pier.plate_thickness.value,
        thread.washer_thickness,
        thread.nut_height,
    );
    let prying = stretched
        <= t_stub::prying_limit(
            lever,
            thread.stress_area,
            length,
            pier.plate_thickness.value,
        );
    // The table's row has two studs, each with the effective length; a ring has half of its studs on the pulled side.
    let rows = brief.anchors.number() as f64 / 4.0;
    let plate = base_plate::plate_part(length, pier.plate_thickness.value, lever, prying) * rows;
    let stud = base_plate::stud_part(thread.stress_area, stretched, prying) * rows;
    let pulled =
        millimetre::new(1.0 / (1.0 / millimetre::get(plate) + 1.0 / millimetre::get(stud)));
    let width = base_plate::effective_width(
        pier.plate_thickness.value,
        Grade::of(pier.steel.value).yield_strength(pier.plate_thickness.value),
        base_plate::bearing(block.strength, 1.5),
    );
    let quarter = column * std::f64::consts::FRAC_PI_2;
    let pressed = base_plate::concrete_part(
        block.elastic_modulus,
        steel(),
        counted_wall(brief) + width * 2.0,
        quarter,
    );
    // A quarter ring's centre lies at 0.900 of its radius, that of half the studs at 0.637 of theirs (0.707 with four).
    let studs_ratio = if brief.anchors.number() == 4 {
        std::f64::consts::FRAC_1_SQRT_2
    } else {
        std::f64::consts::FRAC_2_PI
    };
    Opened {
        lever: column * 0.900 + radius * studs_ratio,
        pulled,
        pressed,
    }
}
