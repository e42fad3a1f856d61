//! The modes in words and figures: frequencies in low, typical and high ground, shapes, and where each mode bends.

use std::f64::consts::PI;

use serde::Serialize;

use crate::stages::motion::modes::Mode;
use crate::stages::motion::rig::Axis;
use crate::stages::motion::system::{Planes, System};
use crate::units::{Frequency, Spread, hertz};

/// Frequencies that are listed.
const MOST_FREQUENCIES: usize = 6;
/// Modes of each plane that are described.
const MODES_OF_A_PLANE: usize = 3;

/// One natural swing, in words and figures.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ModeShape {
    /// Upright plane in which it swings.
    pub plane: Axis,
    /// Frequency in low, typical and high ground.
    #[serde(rename = "frequency_hz", with = "hertz::spread")]
    pub frequency: Spread<Frequency>,
    /// The same with the ground as stiff as it is at that frequency, where its own mass goes along: a bound from below.
    #[serde(rename = "frequency_in_moving_ground_hz", with = "hertz::spread")]
    pub frequency_in_moving_ground: Spread<Frequency>,
    /// Stiffness of the ground at the mode's frequency over that against a steady push, typical ground.
    pub ground_dynamic_ratio: f64,
    /// Damping over critical, typical ground.
    pub damping_ratio: f64,
    /// Share of the bending that is in the ground.
    pub ground_share_ratio: f64,
    /// Share in the joint.
    pub joint_share_ratio: f64,
    /// Share in the column.
    pub column_share_ratio: f64,
    /// Share in the mount.
    pub mount_share_ratio: f64,
    /// Height over the block's base in metres and sideways movement, the largest movement one.
    pub shape: Vec<[f64; 2]>,
}

/// Frequencies of both planes, slowest first, equal ones once.
pub fn frequencies(planes: Option<&Planes>) -> Vec<Frequency> {
    let mut all: Vec<f64> = planes
        .iter()
        .flat_map(|planes| planes.both())
        .flatten()
        .map(|mode| mode.omega / (2.0 * PI))
        .collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() <= 1e-3 * *b);
    all.into_iter()
        .take(MOST_FREQUENCIES)
        .map(hertz::new)
        .collect()
}

/// The first modes of each plane, slowest first.
pub fn shapes(system: &System) -> Vec<ModeShape> {
    let plane = |axis, low: &[Mode], typical: &[Mode], high: &[Mode]| -> Vec<ModeShape> {
        low.iter()
            .zip(typical)
            .zip(high)
            .take(MODES_OF_A_PLANE)
            .map(|((low, typical), high)| shape(axis, low, typical, high))
            .collect()
    };
    let mut all = plane(Axis::X, &system.low.x, &system.typical.x, &system.high.x);
    all.extend(plane(
        Axis::Y,
        &system.low.y,
        &system.typical.y,
        &system.high.y,
    ));
    all.sort_by(|a, b| {
        a.frequency
            .typical
            .value
            .total_cmp(&b.frequency.typical.value)
    });
    all
}

fn shape(plane: Axis, low: &Mode, typical: &Mode, high: &Mode) -> ModeShape {
    let largest = typical
        .shape
        .iter()
        .map(|[_, moved]| *moved)
        .fold(
            0.0,
            |most: f64, one| if one.abs() > most.abs() { one } else { most },
        );
    let [ground, joint, column, mount] = typical.shares;
    ModeShape {
        plane,
        frequency: Spread { low, typical, high }
            .map(|mode: &Mode| hertz::new(mode.omega / (2.0 * PI))),
        frequency_in_moving_ground: Spread { low, typical, high }
            .map(|mode: &Mode| hertz::new(mode.omega_in_moving_ground() / (2.0 * PI))),
        ground_dynamic_ratio: typical.ground_dynamic_ratio,
        damping_ratio: typical.damping_ratio,
        ground_share_ratio: ground,
        joint_share_ratio: joint,
        column_share_ratio: column,
        mount_share_ratio: mount,
        shape: typical
            .shape
            .iter()
            .map(|[height, moved]| [*height, if largest == 0.0 { 0.0 } else { moved / largest }])
            .collect(),
    }
}
